/// Where an owner's rule lets neither bore nor pit be: hatched under the road or track, and beside it.

#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

QColor zone_colour(const Scene& scene, int alpha) {
  QColor colour = scene.style.theme.stop;
  colour.setAlpha(alpha);
  return colour;
}

void fill_hatched(QPainter& painter, const Scene& scene, const QPolygonF& area, Qt::BrushStyle style) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setPen(Qt::NoPen);
  painter.setBrush(QBrush(zone_colour(scene, 90), style));
  painter.drawPolygon(area);
  painter.restore();
}

/// The ground line between two stations, `down_m` lower.
QPolygonF along_ground(const Scene& scene, double from_m, double to_m, double down_m) {
  const LevelLine& ground = scene.crossing.site.ground;
  QPolygonF line;
  const auto add = [&](double x) { line << scene.frame.side(x, elevation_at(ground, x) - down_m); };
  add(from_m);
  for (const LevelPoint& p : ground)
    if (p.station_m > from_m && p.station_m < to_m) add(p.station_m);
  add(to_m);
  return line;
}

struct ZoneName {
  QPointF at;
  QString text;
};

QFont zone_font(const Style& style) {
  return drawing_font(style.text * 0.82);
}

/// At the lower right corner of each zone that is wide enough to hold its name.
std::vector<ZoneName> zone_names(const Scene& scene) {
  const double text = scene.style.text;
  const QFontMetricsF metrics(zone_font(scene.style));
  std::vector<ZoneName> names;
  for (const RuleZone& zone : scene.assessment.zones) {
    if (!zone.cover_m) continue;
    const QString shown_text = QObject::tr("crown not above: %1 of cover wanted")
                                   .arg(text_from(format(*zone.cover_m, Dimension::length, scene.style.units)));
    const QPolygonF lower = along_ground(scene, zone.from_m, zone.to_m, *zone.cover_m);
    const double wide = metrics.horizontalAdvance(shown_text);
    if (wide + text < lower.back().x() - lower.front().x())
      names.push_back({{lower.back().x() - wide - text * 0.4, lower.back().y() - text * 0.3}, shown_text});
  }
  return names;
}

}  // namespace

std::vector<QRectF> zone_name_boxes(const Scene& scene) {
  const QFontMetricsF metrics(zone_font(scene.style));
  std::vector<QRectF> boxes;
  for (const ZoneName& name : zone_names(scene))
    boxes.emplace_back(name.at.x() - 2, name.at.y() - metrics.ascent(), metrics.horizontalAdvance(name.text) + 4,
                       metrics.height());
  return boxes;
}

void paint_zones_side(QPainter& painter, const Scene& scene) {
  for (const RuleZone& zone : scene.assessment.zones) {
    if (!zone.cover_m) continue;
    const QPolygonF lower = along_ground(scene, zone.from_m, zone.to_m, *zone.cover_m);
    QPolygonF area = along_ground(scene, zone.from_m, zone.to_m, 0);
    for (qsizetype i = lower.size(); i-- > 0;) area << lower[i];
    fill_hatched(painter, scene, area, Qt::BDiagPattern);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(zone_colour(scene, 200), scene.style.hair * 1.2, Qt::DashLine));
    painter.drawPolyline(lower);
  }
  painter.setFont(zone_font(scene.style));
  for (const ZoneName& name : zone_names(scene))
    halo_text(painter, name.at, name.text, scene.style.theme.stop, scene.style.theme.sky);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_zones_plan(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  for (const RuleZone& zone : scene.assessment.zones) {
    if (!zone.pit_setback_m) continue;
    for (const auto& [from, to] : {std::pair{zone.from_m - *zone.pit_setback_m, zone.from_m},
                                   std::pair{zone.to_m, zone.to_m + *zone.pit_setback_m}}) {
      const double left = std::max(f.px_x(from), f.plan.left()), right = std::min(f.px_x(to), f.plan.right());
      if (!(right > left)) continue;
      const QRectF band(left, f.plan.top(), right - left, f.plan.height());
      fill_hatched(painter, scene, QPolygonF(band), Qt::FDiagPattern);
    }
    painter.setFont(drawing_font(scene.style.text * 0.82));
    const QString shown_text = QObject::tr("no pit within %1")
                                   .arg(text_from(format(*zone.pit_setback_m, Dimension::length, scene.style.units)));
    const double wide = QFontMetricsF(painter.font()).horizontalAdvance(shown_text);
    for (const double x :
         {f.px_x(zone.from_m) - wide - scene.style.text * 0.5, f.px_x(zone.to_m) + scene.style.text * 0.5})
      if (x > f.plan.left() && x + wide < f.plan.right())
        halo_text(painter, QPointF(x, f.plan.top() + scene.style.text * 1.4), shown_text, scene.style.theme.stop,
                  scene.style.theme.paper);
  }
  painter.setFont(drawing_font(scene.style.text));
}

}  // namespace burrow

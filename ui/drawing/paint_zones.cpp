/// Where an owner's rule lets neither bore nor pit be: hatched under the road or track, and beside it.

#include <algorithm>

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

}  // namespace

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
  }
}

}  // namespace burrow

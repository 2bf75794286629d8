/// A crossing in small.

#include "burrow/drawing/small_picture.h"

#include <QPainterPath>
#include <algorithm>

#include "burrow/drawing/utility_chips.h"

namespace burrow {

namespace {

constexpr std::size_t most_letters = 15;  ///< more would lie over one another
constexpr double letter_px = 13;

void paint_ground_of(QPainter& painter, const OverviewScale& s, const Crossing& crossing, const Theme& theme) {
  const LevelLine& ground = crossing.site.ground;
  QPolygonF line{QPointF(s.area.left(), s.px_z(elevation_at(ground, s.from_m)))};
  for (const LevelPoint& p : ground)
    if (p.station_m > s.from_m && p.station_m < s.to_m) line << QPointF(s.px_x(p.station_m), s.px_z(p.elevation_m));
  line << QPointF(s.area.right(), s.px_z(elevation_at(ground, s.to_m)));
  QPolygonF body = line;
  body << s.area.bottomRight() << s.area.bottomLeft();
  painter.setPen(Qt::NoPen);
  const std::string soil = crossing.site.strata.empty() ? std::string() : crossing.site.strata.front().soil;
  painter.setBrush(soil_fill(soil, theme).tint);
  painter.setRenderHint(QPainter::Antialiasing, false);  // its upper edge lies under the ground line
  painter.drawPolygon(body);
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setPen(QPen(theme.ground, 1.4));
  painter.drawPolyline(line);
  // What stands on top: roads and tracks thick on the ground line.
  painter.setPen(QPen(theme.road, 3.2, Qt::SolidLine, Qt::FlatCap));
  for (const SurfaceFeature& feature : crossing.site.surface) {
    if (!feature.from || !feature.to) continue;
    const double from = std::max(feature.from->m, s.from_m), to = std::min(feature.to->m, s.to_m);
    if (from < to)
      painter.drawLine(QPointF(s.px_x(from), s.px_z(elevation_at(ground, from))),
                       QPointF(s.px_x(to), s.px_z(elevation_at(ground, to))));
  }
}

}  // namespace

void paint_small_picture(QPainter& painter, const OverviewScale& s, const Scene& scene, const std::string& selected) {
  const Theme& theme = scene.style.theme;
  const Crossing& crossing = scene.crossing;
  const Assessment& assessment = scene.assessment;
  paint_ground_of(painter, s, crossing, theme);
  painter.setPen(QPen(theme.ink, 1));
  painter.setBrush(theme.pit);
  for (const PitShape* pit : {&assessment.launch_pit, &assessment.exit_pit}) {
    QPolygonF cut;
    for (const LevelPoint& p : pit->section) cut << QPointF(s.px_x(p.station_m), s.px_z(p.elevation_m));
    painter.drawPolygon(cut);
  }
  QPolygonF path;
  for (const PathPoint& p : assessment.bore.points) path << QPointF(s.px_x(p.x_m), s.px_z(p.z_m));
  painter.setPen(QPen(theme.bore, 1.6));
  painter.drawPolyline(path);
  for (const Utility& utility : crossing.site.utilities) {
    const UtilityMark mark = utility_mark(utility);
    if (utility.path.empty() || mark.station_m < s.from_m || mark.station_m > s.to_m) continue;
    const QColor colour = utility_colour(scene, utility.kind);
    const bool picked = utility.id == selected;
    const double x = s.px_x(mark.station_m);
    if (!mark.depth_known) {
      painter.setPen(QPen(colour, 1.2, Qt::DotLine));
      painter.drawLine(QPointF(x, s.px_z(elevation_at(crossing.site.ground, mark.station_m))),
                       QPointF(x, s.area.bottom()));
      continue;
    }
    const QPointF at(x, s.px_z(mark.elevation_m));
    if (crossing.site.utilities.size() <= most_letters && !picked) {
      painter.setFont(drawing_font(letter_px * 0.62, QFont::Bold));
      paint_letter_ring(painter, scene, QRectF(at.x() - letter_px / 2, at.y() - letter_px / 2, letter_px, letter_px),
                        utility.kind, utility_letter(scene, utility.kind));
      continue;
    }
    painter.setPen(QPen(picked ? theme.focus : theme.ink, picked ? 2 : 0.8));
    painter.setBrush(colour);
    painter.drawEllipse(at, picked ? 5 : 3, picked ? 5 : 3);
  }
}

}  // namespace burrow

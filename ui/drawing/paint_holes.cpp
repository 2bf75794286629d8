/// Test holes: those that were dug with what they showed, and the first of those worth digging.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

constexpr int most_proposed = 5;

const Utility* utility_of(const Scene& scene, const std::string& id) {
  for (const Utility& utility : scene.crossing.site.utilities)
    if (utility.id == id) return &utility;
  return nullptr;
}

/// A square hole seen from above; dug ones with a cross in it.
void square(QPainter& painter, const QPointF& at, double size, bool dug) {
  const QRectF box(at.x() - size / 2, at.y() - size / 2, size, size);
  painter.drawRect(box);
  if (!dug) return;
  painter.drawLine(box.topLeft(), box.bottomRight());
  painter.drawLine(box.topRight(), box.bottomLeft());
}

/// One standard deviation to either side of the line as it is believed to lie.
void paint_believed(QPainter& painter, const Scene& scene, const UtilityAnswer& answer, const Utility& utility) {
  const Frame& f = scene.frame;
  const std::vector<PinnedVertex>& line = answer.believed;
  QPolygonF middle, left, right;
  const double half = utility.outside_diameter.value_or(Length{0}).m / 2;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const PathVertex &before = line[i > 0 ? i - 1 : i].at, &after = line[std::min(i + 1, line.size() - 1)].at;
    const double dx = after.x_m - before.x_m, dy = after.y_m - before.y_m, length = std::hypot(dx, dy);
    const double away = line[i].lateral_sd_m + half;
    const double nx = length > 0 ? -dy / length * away : 0, ny = length > 0 ? dx / length * away : 0;
    const PathVertex& at = line[i].at;
    middle << f.above(at.x_m, at.y_m);
    left << f.above(at.x_m + nx, at.y_m + ny);
    right << f.above(at.x_m - nx, at.y_m - ny);
  }
  QColor colour = utility_colour(scene, utility.kind);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colour, scene.style.hair * 0.8));
  painter.drawPolyline(middle);
  std::reverse(right.begin(), right.end());
  colour.setAlpha(50);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour);
  painter.drawPolygon(left + right);
}

}  // namespace

std::vector<const UtilityAnswer*> holes_to_dig(const Scene& scene) {
  std::vector<const UtilityAnswer*> holes;
  for (const UtilityAnswer& answer : scene.assessment.utilities)
    if (answer.expose_rank && *answer.expose_rank <= most_proposed && answer.hole_station_m && answer.hole_offset_m)
      holes.push_back(&answer);
  return holes;
}

const UtilityAnswer* answer_for(const Scene& scene, const std::string& id) {
  for (const UtilityAnswer& answer : scene.assessment.utilities)
    if (answer.id == id) return &answer;
  return nullptr;
}

void paint_holes_plan(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  for (const UtilityAnswer& answer : scene.assessment.utilities)
    if (const Utility* utility = utility_of(scene, answer.id); utility && answer.believed.size() > 1)
      paint_believed(painter, scene, answer, *utility);
  painter.setBrush(style.theme.paper);
  for (const TestHole& hole : scene.crossing.site.test_holes) {
    painter.setPen(QPen(style.theme.ink, style.hair * 1.3));
    square(painter, f.above(hole.station.m, hole.offset.m), style.text * 0.8, true);
  }
  for (const UtilityAnswer* answer : holes_to_dig(scene)) {
    const QPointF at = f.above(*answer->hole_station_m, *answer->hole_offset_m);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(style.theme.ink, style.hair * 1.3, Qt::DotLine));
    square(painter, at, style.text * 1.3, false);
  }
}

void paint_holes_side(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  const auto ground_at = [&](double station_m) {
    return f.side(station_m, elevation_at(scene.crossing.site.ground, station_m));
  };
  const double tick = style.text * 0.45;
  painter.setBrush(Qt::NoBrush);
  for (const TestHole& hole : scene.crossing.site.test_holes) {
    const QPointF top = ground_at(hole.station.m);
    painter.setPen(QPen(style.theme.ink, style.hair * 1.3));
    const QPointF end = hole.elevation ? f.side(hole.station.m, hole.elevation->m) : top + QPointF(0, style.text * 1.5);
    painter.drawLine(top + QPointF(-tick, 0), end + QPointF(-tick, 0));
    painter.drawLine(top + QPointF(tick, 0), end + QPointF(tick, 0));
    if (hole.elevation) painter.drawLine(end - QPointF(tick, 0), end + QPointF(tick, 0));
  }
  for (const UtilityAnswer* answer : holes_to_dig(scene)) {
    const double station = *answer->hole_station_m;
    const QPointF top = ground_at(station);
    painter.setPen(QPen(style.theme.ink, style.hair * 1.3, Qt::DotLine));
    if (answer->hole_depth_low_m && answer->hole_depth_high_m) {
      const double ground = elevation_at(scene.crossing.site.ground, station);
      const QPointF shallow = f.side(station, ground - std::max(*answer->hole_depth_low_m, 0.0)),
                    deep = f.side(station, ground - std::max(*answer->hole_depth_high_m, 0.0));
      for (const double side : {-tick, tick}) painter.drawLine(top + QPointF(side, 0), deep + QPointF(side, 0));
      painter.setPen(QPen(style.theme.ink, style.hair * 1.3));
      painter.drawLine(shallow - QPointF(tick, 0), shallow + QPointF(tick, 0));
      painter.drawLine(deep - QPointF(tick, 0), deep + QPointF(tick, 0));
    } else {
      for (const double side : {-tick, tick})
        painter.drawLine(top + QPointF(side, 0), top + QPointF(side, style.text * 1.5));
    }
  }
}

}  // namespace burrow

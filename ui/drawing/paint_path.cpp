/// The predicted path: the same lines in the side elevation and in the plan.

#include <boost/geometry/algorithms/simplify.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <cmath>

#include "burrow/drawing/layer_cache.h"

namespace burrow {

namespace {

/// A point of the path, `sds` standard deviations up (side elevation) or left (plan).
QPointF place(const Frame& f, const PathPoint& p, Pane pane, double sds) {
  return pane == Pane::plan ? f.above(p.x_m, p.y_m + sds * p.sd_lateral_m)
                            : f.side(p.x_m, p.z_m + sds * p.sd_vertical_m);
}

/// Without the points that stand within a tenth of a pixel of the line through the others (Douglas & Peucker 1973): a
/// path of hundreds of steps is nearly straight, and each joint of a wide or dashed line costs.
QPolygonF without_idle_points(const QPolygonF& line) {
  using Point = boost::geometry::model::d2::point_xy<double>;
  boost::geometry::model::linestring<Point> all, few;
  all.reserve(static_cast<std::size_t>(line.size()));
  for (const QPointF& p : line) all.emplace_back(p.x(), p.y());
  boost::geometry::simplify(all, few, 0.1);
  QPolygonF layer_cache;
  for (const Point& p : few) layer_cache << QPointF(p.x(), p.y());
  return layer_cache;
}

/// The clear gap, drawn as a dimension between the two axes, where it is too small.
void paint_gap(QPainter& painter, const Scene& scene, const UtilityAnswer& answer) {
  if (!answer.separation_m || !answer.required_m || !answer.on_bore || !answer.on_utility) return;
  if (*answer.separation_m >= *answer.required_m) return;
  const Frame& f = scene.frame;
  const QPointF a = f.side(answer.on_bore->x_m, answer.on_bore->z_m);
  const QPointF b = f.side(answer.on_utility->x_m, answer.on_utility->z_m);
  painter.setPen(QPen(scene.style.theme.stop, scene.style.hair * 1.4));
  painter.drawLine(a, b);
  const double tick = scene.style.text * 0.35;
  for (const QPointF& end : {a, b}) painter.drawLine(end + QPointF(-tick, 0), end + QPointF(tick, 0));
}

void paint_all(QPainter& painter, const Scene& scene, Pane pane) {
  if (scene.focus.ghost) paint_mean_path(painter, scene, *scene.focus.ghost, pane, true);
  paint_bands(painter, scene, pane);
  if (scene.layer_cache)
    scene.layer_cache->cloud(painter, scene, pane);
  else
    paint_cloud(painter, scene, pane);
  paint_mean_path(painter, scene, scene.assessment, pane, scene.layers.tried != nullptr);
  paint_read_path(painter, scene, pane);
  paint_truth(painter, scene, pane);
}

}  // namespace

void paint_bands(QPainter& painter, const Scene& scene, Pane pane) {
  const auto& points = scene.assessment.bore.points;
  if (points.size() < 2) return;
  painter.setPen(Qt::NoPen);
  painter.setRenderHint(QPainter::Antialiasing, false);  // pale areas: not seen, and several times faster
  QPolygonF shape;
  for (const BandShare& band : band_shares) {
    shape.clear();
    for (const PathPoint& p : points) shape << place(scene.frame, p, pane, band.sds);
    for (auto p = points.rbegin(); p != points.rend(); ++p) shape << place(scene.frame, *p, pane, -band.sds);
    QColor colour = scene.style.theme.band;
    colour.setAlpha(band.strength);
    painter.setBrush(colour);
    painter.drawPolygon(without_idle_points(shape));
  }
  painter.setRenderHint(QPainter::Antialiasing, true);
}

void paint_mean_path(QPainter& painter, const Scene& scene, const Assessment& assessment, Pane pane, bool ghost) {
  const Theme& theme = scene.style.theme;
  const auto& points = assessment.bore.points;
  if (points.size() < 2) return;
  QPolygonF line;
  for (const PathPoint& p : points) line << place(scene.frame, p, pane, 0);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(ghost ? QPen(theme.ghost, scene.style.hair * 1.3, Qt::DashLine)
                       : QPen(theme.bore, scene.style.hair * 2.2, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.drawPolyline(without_idle_points(line));
}

void paint_bore_side(QPainter& painter, const Scene& scene) {
  paint_all(painter, scene, Pane::elevation);
  for (const UtilityAnswer& answer : scene.assessment.utilities) paint_gap(painter, scene, answer);
}

void paint_bore_plan(QPainter& painter, const Scene& scene) {
  paint_all(painter, scene, Pane::plan);
}

}  // namespace burrow

/// The predicted path: the same lines in the side elevation and in the plan.

#include <array>
#include <boost/geometry/algorithms/simplify.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/layer_cache.h"
#include "burrow/words/trials_text.h"

namespace burrow {

namespace {

struct Band {
  double factor;  ///< standard deviations of one coordinate
  int strength;   ///< of its colour, out of 255
  const char* name;
};
constexpr std::array<Band, 3> bands{Band{2.576, 40, "99 %"}, Band{1.645, 55, "90 %"}, Band{0.674, 80, "50 %"}};

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

/// Names what a band means, at the exit end where it is widest.
void paint_band_key(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const auto& points = scene.assessment.bore.points;
  if (points.size() < 2) return;
  const PathPoint& end = points.back();
  const double text = scene.style.text * 0.85;
  const double between = (bands[0].factor - bands[1].factor) * end.sd_vertical_m * f.px_per_m * f.exaggeration;
  if (between < text * 1.05) return;
  painter.setFont(drawing_font(text));
  for (const Band& band : bands) {
    const QPointF at = place(f, end, Pane::elevation, -band.factor);
    painter.setPen(QPen(scene.style.theme.ink_soft, scene.style.hair * 0.8));
    painter.drawLine(at, at + QPointF(text * 0.7, 0));
    painter.drawText(at + QPointF(text, text * 0.35), QString::fromLatin1(band.name));
  }
  painter.setFont(drawing_font(scene.style.text));
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
  paint_mean_path(painter, scene, scene.assessment, pane, false);
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
  for (const Band& band : bands) {
    shape.clear();
    for (const PathPoint& p : points) shape << place(scene.frame, p, pane, band.factor);
    for (auto p = points.rbegin(); p != points.rend(); ++p) shape << place(scene.frame, *p, pane, -band.factor);
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
  paint_band_key(painter, scene);
  for (const UtilityAnswer& answer : scene.assessment.utilities) paint_gap(painter, scene, answer);
}

void paint_bore_plan(QPainter& painter, const Scene& scene) {
  paint_all(painter, scene, Pane::plan);
}

namespace {
QString status_text(const Scene& scene) {
  const QFontMetricsF metrics(drawing_font(scene.style.text * 0.92));
  const QString whose = text_from(model_status(scene.crossing.bore.model));
  return metrics.elidedText(QObject::tr("path: %1").arg(whose), Qt::ElideRight,
                            scene.frame.elevation.width() - scene.style.text * 2);
}
}  // namespace

QRectF model_status_box(const Scene& scene) {
  if (scene.assessment.bore.points.size() < 2 || scene.crossing.site.strata.empty()) return {};
  const double text = scene.style.text;
  const QFontMetricsF metrics(drawing_font(text * 0.92));
  const double w = metrics.horizontalAdvance(status_text(scene));
  const QRectF& pane = scene.frame.elevation;
  return {pane.right() - w - text * 0.8, pane.bottom() - text * 0.6 - metrics.ascent(), w, metrics.height()};
}

void paint_model_status(QPainter& painter, const Scene& scene) {
  const QRectF box = model_status_box(scene);
  if (box.isEmpty()) return;
  const Theme& theme = scene.style.theme;
  painter.setFont(drawing_font(scene.style.text * 0.92));
  halo_text(painter, QPointF(box.left(), box.top() + QFontMetricsF(painter.font()).ascent()), status_text(scene),
            theme.ink_soft, soil_fill(scene.crossing.site.strata.back().soil, theme).tint);
  painter.setFont(drawing_font(scene.style.text));
}

}  // namespace burrow

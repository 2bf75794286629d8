/// Why the tool turns: what the ground resists above and below it, and the curvature that comes of that and of its
/// weight, along the bore.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/along.h"

namespace burrow {

namespace {

/// A value scale on a stretch of height.
struct Scale {
  double low = 0, high = 1;  ///< SI
  QRectF area;
  [[nodiscard]] double y(double value) const { return area.bottom() - (value - low) / (high - low) * area.height(); }
  [[nodiscard]] double px_per_one() const { return area.height() / (high - low); }
};

Scale resistance_scale(const std::vector<PathPoint>& points, const QRectF& area) {
  Scale scale{1e300, -1e300, area};
  for (const PathPoint& p : points)
    for (const double q : {p.resistance_above_Pa, p.resistance_below_Pa}) {
      scale.low = std::min(scale.low, q);
      scale.high = std::max(scale.high, q);
    }
  // Not finer than 6 % of the value, so that nearly equal lines look nearly equal.
  const double wider =
      std::max({0.0, 0.06 * scale.high - (scale.high - scale.low), 1.0}) / 2 + 0.1 * (scale.high - scale.low);
  scale.low = std::max(0.0, scale.low - wider);
  scale.high += wider;
  return scale;
}

Scale curvature_scale(const std::vector<PathPoint>& points, const QRectF& area) {
  double up = 1e-4;  // straighter than 1 in 10 km is not worth a picture
  double down = 1e-4;
  for (const PathPoint& p : points) {
    up = std::max(up, p.curvature_1_m);
    down = std::max({down, -p.curvature_1_m, p.sag_curvature_1_m});
  }
  // Room on either side of the zero line for what stands there.
  return {-1.12 * std::max(down, 0.4 * up), 1.12 * std::max(up, 0.4 * down), area};
}

QPolygonF line_of(const Scene& scene, const Scale& scale, double (*value)(const PathPoint&)) {
  QPolygonF line;
  for (const PathPoint& p : scene.assessment.bore.points) line << QPointF(scene.frame.px_x(p.x_m), scale.y(value(p)));
  return line;
}

double above(const PathPoint& p) {
  return p.resistance_above_Pa;
}
double below(const PathPoint& p) {
  return p.resistance_below_Pa;
}
double turn(const PathPoint& p) {
  return p.curvature_1_m;
}
double by_weight(const PathPoint& p) {
  return -p.sag_curvature_1_m;
}

QPen above_pen(const Style& style) {
  return {style.theme.bore, style.hair * 1.8, Qt::SolidLine, Qt::FlatCap};
}
QPen below_pen(const Style& style) {
  QPen pen(style.theme.focus, style.hair * 2, Qt::CustomDashLine, Qt::FlatCap);
  pen.setDashPattern({3.5, 2});
  return pen;
}
QBrush turn_brush(const Style& style) {
  QColor fill = style.theme.band;
  fill.setAlpha(style.theme.dark ? 150 : 120);
  return fill;
}
QBrush weight_brush(const Style& style) {
  return {style.theme.ground, Qt::BDiagPattern};
}

void paint_area(QPainter& painter, const QPolygonF& line, double zero, const QBrush& brush) {
  QPolygonF area = line;
  area << QPointF(line.last().x(), zero) << QPointF(line.first().x(), zero);
  painter.setPen(Qt::NoPen);
  painter.setBrush(brush);
  painter.setRenderHint(QPainter::Antialiasing, false);  // its edge is drawn over it
  painter.drawPolygon(area);
  painter.setRenderHint(QPainter::Antialiasing, true);
}

/// A name with a sample of what it names, at the right of the bore's end or else inside the right edge.
struct Label {
  QString text;
  double y = 0;  ///< its middle
  enum class Sample { above, below, turn, weight } sample = Sample::above;
};

void paint_sample(QPainter& painter, const Scene& scene, const QRectF& box, Label::Sample sample) {
  const Style& style = scene.style;
  const QRectF patch = box.adjusted(0, box.height() * 0.2, 0, -box.height() * 0.2);
  switch (sample) {
    case Label::Sample::above:
      painter.setPen(above_pen(style));
      painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
      break;
    case Label::Sample::below:
      painter.setPen(below_pen(style));
      painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
      break;
    case Label::Sample::turn:
      painter.setPen(QPen(style.theme.band, style.hair * 1.4));
      painter.setBrush(turn_brush(style));
      painter.drawRect(patch);
      break;
    case Label::Sample::weight:
      painter.setPen(QPen(style.theme.ground, style.hair));
      painter.setBrush(weight_brush(style));
      painter.drawRect(patch);
      break;
  }
}

/// Two labels one above the other within an area, each as near to its line as the other lets it.
void paint_labels(QPainter& painter, const Scene& scene, Label upper, Label lower, const QRectF& area, double end) {
  const double text = scene.style.text;
  const QFontMetricsF metrics(painter.font());
  const double h = text * 1.15;
  if (upper.y > lower.y) std::swap(upper, lower);
  if (const double lack = h - (lower.y - upper.y); lack > 0) {
    upper.y -= lack / 2;
    lower.y += lack / 2;
  }
  upper.y = std::clamp(upper.y, area.top() + h / 2, std::max(area.top() + h / 2, area.bottom() - 1.5 * h));
  lower.y = std::clamp(lower.y, upper.y + h, std::max(upper.y + h, area.bottom() - h / 2));
  const double sample = text * 1.7;
  const double widest = std::max(metrics.horizontalAdvance(upper.text), metrics.horizontalAdvance(lower.text));
  const double x = std::min(end + text * 0.5, area.right() - sample - widest - text * 0.9);
  QColor ground = scene.style.theme.paper;
  ground.setAlpha(225);
  for (const Label& label : {upper, lower}) {
    painter.fillRect(
        QRectF(x - text * 0.2, label.y - h / 2, sample + metrics.horizontalAdvance(label.text) + text * 0.8, h),
        ground);
    paint_sample(painter, scene, QRectF(x, label.y - h / 2, sample, h), label.sample);
    painter.setPen(scene.style.theme.ink);
    painter.drawText(QPointF(x + sample + text * 0.4, label.y + metrics.ascent() * 0.36), label.text);
  }
}

/// Numbers of a scale in the gutter.
void paint_scale(QPainter& painter, const Scene& scene, const Scale& scale, double unit) {
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const double left = scene.frame.turning.left();
  painter.setFont(drawing_font(text * 0.85));
  const QFontMetricsF metrics(painter.font());
  const double step = tick_step(scale.px_per_one(), text, unit);
  for (const double v : ticks(scale.low, scale.high, step)) {
    const double y = scale.y(v);
    if (y < scale.area.top() + text * 0.3 || y > scale.area.bottom() - text * 0.3) continue;
    painter.setPen(QPen(theme.ink_soft, scene.style.hair));
    painter.drawLine(QPointF(left - text * 0.35, y), QPointF(left, y));
    const QString number = tick_text(v, step, unit);
    painter.setPen(theme.ink);
    painter.drawText(QPointF(left - text * 0.55 - metrics.horizontalAdvance(number), y + metrics.ascent() * 0.36),
                     number);
  }
}

/// The station under the pointer, and what the lines say there.
void paint_station(QPainter& painter, const Scene& scene, const Scale& resistance, const Scale& curvature) {
  const Frame& f = scene.frame;
  if (f.pane_at(scene.focus.pointer) != Pane::turning || scene.focus.pointer_lines.isEmpty()) return;
  const std::optional<PathPoint> at = path_point_at(scene.assessment, f.station_m(scene.focus.pointer.x()));
  if (!at) return;
  const Style& style = scene.style;
  const double x = f.px_x(at->x_m);
  painter.setPen(QPen(style.theme.focus, style.hair));
  painter.drawLine(QPointF(x, f.turning.top()), QPointF(x, f.turning.bottom()));
  painter.setBrush(style.theme.field);
  for (const double y :
       {resistance.y(above(*at)), resistance.y(below(*at)), curvature.y(turn(*at)), curvature.y(by_weight(*at))})
    painter.drawEllipse(QPointF(x, y), style.hair * 2.4, style.hair * 2.4);
}

void paint_resistances(QPainter& painter, const Scene& scene, const Scale& scale) {
  const Style& style = scene.style;
  const QPolygonF upper = line_of(scene, scale, above);
  const QPolygonF lower = line_of(scene, scale, below);
  QPolygonF between = upper;
  for (auto p = lower.rbegin(); p != lower.rend(); ++p) between << *p;
  QColor fill = style.theme.focus;
  fill.setAlpha(34);
  painter.setPen(Qt::NoPen);
  painter.setBrush(fill);
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.drawPolygon(between);
  painter.setRenderHint(QPainter::Antialiasing, true);
  draw_run(painter, upper, above_pen(style));
  draw_run(painter, lower, below_pen(style));
}

void paint_curvatures(QPainter& painter, const Scene& scene, const Scale& scale) {
  const Style& style = scene.style;
  const QPolygonF curve = line_of(scene, scale, turn);
  const QPolygonF weight = line_of(scene, scale, by_weight);
  paint_area(painter, curve, scale.y(0), turn_brush(style));
  paint_area(painter, weight, scale.y(0), weight_brush(style));
  draw_run(painter, weight, QPen(style.theme.ground, style.hair));
  draw_run(painter, curve, QPen(style.theme.band, style.hair * 1.8));
  painter.setPen(QPen(style.theme.ink_soft, style.hair));
  painter.drawLine(QPointF(scale.area.left(), scale.y(0)), QPointF(scale.area.right(), scale.y(0)));
}

}  // namespace

double turning_height(const Style& style) {
  return style.text * 9.5;
}

void paint_turning(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  if (!scene.layers.turning || f.turning.isEmpty()) return;
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const auto& points = scene.assessment.bore.points;
  painter.save();
  painter.fillRect(f.turning, theme.paper);
  const double cut = std::round(f.turning.top() + f.turning.height() * 0.52);
  painter.setPen(QPen(theme.ink_soft, scene.style.hair));
  painter.drawLine(f.turning.topLeft(), f.turning.topRight());
  painter.setClipRect(f.turning);
  painter.setPen(QPen(theme.grid, scene.style.hair));
  const double metre = shown_unit(Dimension::station, scene.style.units);
  for (const double s : ticks(f.left_station_m, f.right_station_m(), tick_step(f.px_per_m, text * 5, metre)))
    painter.drawLine(QPointF(f.px_x(s), f.turning.top()), QPointF(f.px_x(s), f.turning.bottom()));
  painter.drawLine(QPointF(f.turning.left(), cut), QPointF(f.turning.right(), cut));
  painter.setFont(drawing_font(text * 0.92));
  if (points.size() < 2) {
    painter.setPen(theme.ink_soft);
    painter.drawText(f.turning, Qt::AlignCenter, QObject::tr("no path yet"));
    painter.restore();
    return;
  }

  const double air = text * 0.3;
  const Scale resistance =
      resistance_scale(points, QRectF(f.turning.topLeft(), QPointF(f.turning.right(), cut)).adjusted(0, air, 0, -air));
  const Scale curvature = curvature_scale(
      points, QRectF(QPointF(f.turning.left(), cut), f.turning.bottomRight()).adjusted(0, air, 0, -air));
  paint_resistances(painter, scene, resistance);
  paint_curvatures(painter, scene, curvature);

  painter.setFont(drawing_font(text * 0.92));
  const PathPoint& end = points.back();
  const double x = f.px_x(end.x_m);
  paint_labels(painter, scene, {QObject::tr("above"), resistance.y(above(end)), Label::Sample::above},
               {QObject::tr("below"), resistance.y(below(end)), Label::Sample::below}, resistance.area, x);
  paint_labels(
      painter, scene, {QObject::tr("in all"), (curvature.y(0) + curvature.y(turn(end))) / 2, Label::Sample::turn},
      {QObject::tr("by its weight"), (curvature.y(0) + curvature.y(by_weight(end))) / 2, Label::Sample::weight},
      curvature.area, x);
  const QFontMetricsF metrics(painter.font());
  const double left = f.turning.left() + text * 0.6;
  const bool us = scene.style.units == UnitSystem::us;
  const std::string_view name = unit_name(Dimension::pressure, scene.style.units);
  const QString pressure = QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
  const auto say = [&](double baseline, const QString& words) {
    halo_text(painter, QPointF(left, baseline), words, theme.ink_soft, theme.paper);
  };
  say(f.turning.top() + metrics.ascent() + air, QObject::tr("ground resists, %1").arg(pressure));
  say(curvature.y(0) - text * 0.35, us ? QObject::tr("turns up, % in 10 ft") : QObject::tr("turns up, % in 10 m"));
  say(curvature.y(0) + metrics.ascent() + text * 0.1, QObject::tr("sags"));
  paint_station(painter, scene, resistance, curvature);

  painter.setClipping(false);
  paint_scale(painter, scene, resistance, shown_unit(Dimension::pressure, scene.style.units));
  paint_scale(painter, scene, curvature, 0.01 / (10 * metre));
  painter.restore();
}

}  // namespace burrow

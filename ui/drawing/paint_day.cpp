/// The bore by what was read on the day, and where a practice bore really ran.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

struct Band {
  double sds;
  int strength;
};
constexpr std::array<Band, 2> bands{Band{1.645, 40}, Band{0.674, 70}};  // 90 and 50 %

QPointF place(const Frame& f, const PathPoint& p, Pane pane, double sds) {
  return pane == Pane::plan ? f.above(p.x_m, p.y_m + sds * p.sd_lateral_m)
                            : f.side(p.x_m, p.z_m + sds * p.sd_vertical_m);
}

QPointF place(const Frame& f, const Point3& p, Pane pane) {
  return pane == Pane::plan ? f.above(p.x_m, p.y_m) : f.side(p.x_m, p.z_m);
}

QPolygonF line_of(const Frame& f, const std::vector<Point3>& points, Pane pane) {
  QPolygonF line;
  for (const Point3& p : points) line << place(f, p, pane);
  return line;
}

/// Light under dark, so that it stands out on any ground.
void draw_twice(QPainter& painter, const QPolygonF& line, const QColor& under, QPen pen) {
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(under, pen.widthF() * 2.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.drawPolyline(line);
  painter.setPen(pen);
  painter.drawPolyline(line);
}

}  // namespace

void paint_read_path(QPainter& painter, const Scene& scene, Pane pane) {
  if (!scene.layers.read || scene.layers.read->points.size() < 2) return;
  const auto& points = scene.layers.read->points;
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  painter.setPen(Qt::NoPen);
  for (const Band& band : bands) {
    QPolygonF shape;
    for (const PathPoint& p : points) shape << place(f, p, pane, band.sds);
    for (auto p = points.rbegin(); p != points.rend(); ++p) shape << place(f, *p, pane, -band.sds);
    QColor colour = style.theme.focus;
    colour.setAlpha(band.strength);
    painter.setBrush(colour);
    painter.drawPolygon(shape);
  }
  QPolygonF built, ahead;
  const PathPoint* nose = &points.front();
  for (const PathPoint& p : points) {
    const bool behind = p.s_m <= scene.layers.read->nose_m + 1e-6;
    if (behind) nose = &p;
    (behind ? built : ahead) << place(f, p, pane, 0);
  }
  const QPointF tip = place(f, *nose, pane, 0);
  ahead.prepend(tip);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(style.theme.focus, style.hair * 1.8, Qt::DashLine, Qt::FlatCap));
  painter.drawPolyline(ahead);
  draw_twice(painter, built, style.theme.field, QPen(style.theme.focus, style.hair * 2.4));
  // The nose: a filled point with its 90 % range upright or across.
  painter.setPen(QPen(style.theme.focus, style.hair * 1.4));
  const QPointF up = place(f, *nose, pane, 1.645), down = place(f, *nose, pane, -1.645);
  painter.drawLine(up, down);
  const double tick = style.text * 0.3;
  for (const QPointF& end : {up, down}) painter.drawLine(end - QPointF(tick, 0), end + QPointF(tick, 0));
  painter.setBrush(style.theme.focus);
  painter.setPen(QPen(style.theme.field, style.hair * 1.2));
  painter.drawEllipse(tip, style.text * 0.36, style.text * 0.36);
  painter.setBrush(Qt::NoBrush);
}

void paint_truth(QPainter& painter, const Scene& scene, Pane pane) {
  if (!scene.layers.truth || scene.layers.truth->points.empty()) return;
  const TrueLine& truth = *scene.layers.truth;
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  for (const std::vector<Point3>& service : truth.services) {
    QPen pen(style.theme.stop, style.hair * 2, Qt::DotLine);
    if (pane == Pane::plan)
      draw_twice(painter, line_of(f, service, pane), style.theme.field, pen);
    else if (!service.empty()) {
      // Where it meets the crossing line: a ring.
      const auto nearest = std::min_element(service.begin(), service.end(), [](const Point3& a, const Point3& b) {
        return std::abs(a.y_m) < std::abs(b.y_m);
      });
      painter.setPen(pen);
      painter.setBrush(Qt::NoBrush);
      painter.drawEllipse(place(f, *nearest, pane), style.text * 0.6, style.text * 0.6);
    }
  }
  draw_twice(painter, line_of(f, truth.points, pane), style.theme.field,
             QPen(style.theme.ink, style.hair * 2.4, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.setPen(QPen(style.theme.field, style.hair));
  painter.setBrush(style.theme.caution);
  for (const Point3& stone : truth.stones) {
    const QPointF at = place(f, stone, pane);
    const double r = style.text * 0.4;
    painter.drawPolygon(
        QPolygonF(QList<QPointF>{at + QPointF(0, -r), at + QPointF(r, 0), at + QPointF(0, r), at + QPointF(-r, 0)}));
  }
  painter.setBrush(style.theme.ink);
  painter.drawEllipse(place(f, truth.points.back(), pane), style.text * 0.36, style.text * 0.36);
  painter.setBrush(Qt::NoBrush);
}

}  // namespace burrow

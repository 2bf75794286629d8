/// The bore by what was read on the day, and where a practice bore really ran.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/drawing/picture.h"

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

void paint_read_path(QPainter& painter, const Picture& picture, Pane pane) {
  if (!picture.shown.read || picture.shown.read->points.size() < 2) return;
  const auto& points = picture.shown.read->points;
  const Frame& f = picture.frame;
  const Look& look = picture.look;
  painter.setPen(Qt::NoPen);
  for (const Band& band : bands) {
    QPolygonF shape;
    for (const PathPoint& p : points) shape << place(f, p, pane, band.sds);
    for (auto p = points.rbegin(); p != points.rend(); ++p) shape << place(f, *p, pane, -band.sds);
    QColor colour = look.theme.focus;
    colour.setAlpha(band.strength);
    painter.setBrush(colour);
    painter.drawPolygon(shape);
  }
  QPolygonF built, ahead;
  const PathPoint* nose = &points.front();
  for (const PathPoint& p : points) {
    const bool behind = p.s_m <= picture.shown.read->nose_m + 1e-6;
    if (behind) nose = &p;
    (behind ? built : ahead) << place(f, p, pane, 0);
  }
  const QPointF tip = place(f, *nose, pane, 0);
  ahead.prepend(tip);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(look.theme.focus, look.hair * 1.8, Qt::DashLine, Qt::FlatCap));
  painter.drawPolyline(ahead);
  draw_twice(painter, built, look.theme.field, QPen(look.theme.focus, look.hair * 2.4));
  // The nose: a filled point with its 90 % range upright or across.
  painter.setPen(QPen(look.theme.focus, look.hair * 1.4));
  const QPointF up = place(f, *nose, pane, 1.645), down = place(f, *nose, pane, -1.645);
  painter.drawLine(up, down);
  const double tick = look.text * 0.3;
  for (const QPointF& end : {up, down}) painter.drawLine(end - QPointF(tick, 0), end + QPointF(tick, 0));
  painter.setBrush(look.theme.focus);
  painter.setPen(QPen(look.theme.field, look.hair * 1.2));
  painter.drawEllipse(tip, look.text * 0.36, look.text * 0.36);
  painter.setBrush(Qt::NoBrush);
}

void paint_truth(QPainter& painter, const Picture& picture, Pane pane) {
  if (!picture.shown.truth || picture.shown.truth->points.empty()) return;
  const TrueLine& truth = *picture.shown.truth;
  const Frame& f = picture.frame;
  const Look& look = picture.look;
  for (const std::vector<Point3>& service : truth.services) {
    QPen pen(look.theme.stop, look.hair * 2, Qt::DotLine);
    if (pane == Pane::plan)
      draw_twice(painter, line_of(f, service, pane), look.theme.field, pen);
    else if (!service.empty()) {
      // Where it meets the crossing line: a ring.
      const auto nearest = std::min_element(service.begin(), service.end(), [](const Point3& a, const Point3& b) {
        return std::abs(a.y_m) < std::abs(b.y_m);
      });
      painter.setPen(pen);
      painter.setBrush(Qt::NoBrush);
      painter.drawEllipse(place(f, *nearest, pane), look.text * 0.6, look.text * 0.6);
    }
  }
  draw_twice(painter, line_of(f, truth.points, pane), look.theme.field,
             QPen(look.theme.ink, look.hair * 2.4, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.setPen(QPen(look.theme.field, look.hair));
  painter.setBrush(look.theme.caution);
  for (const Point3& stone : truth.stones) {
    const QPointF at = place(f, stone, pane);
    const double r = look.text * 0.4;
    painter.drawPolygon(
        QPolygonF(QList<QPointF>{at + QPointF(0, -r), at + QPointF(r, 0), at + QPointF(0, r), at + QPointF(-r, 0)}));
  }
  painter.setBrush(look.theme.ink);
  painter.drawEllipse(place(f, truth.points.back(), pane), look.text * 0.36, look.text * 0.36);
  painter.setBrush(Qt::NoBrush);
}

}  // namespace burrow

/// The bore with something set wrong, over the plan.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/played_text.h"
#include "burrow/drawing/scene.h"
#include "burrow/practice/try_error.h"
#include "paint_miss.h"

namespace burrow {

namespace {

QPointF place(const Frame& f, const PathPoint& p, Pane pane) {
  return pane == Pane::plan ? f.above(p.x_m, p.y_m) : f.side(p.x_m, p.z_m);
}

void paint_tried(QPainter& painter, const Scene& scene, Pane pane) {
  if (!scene.layers.tried || scene.layers.tried->points.size() < 2) return;
  const BorePath& tried = *scene.layers.tried;
  const Theme& theme = scene.style.theme;
  QPolygonF line;
  for (const PathPoint& p : tried.points) line << place(scene.frame, p, pane);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.field, scene.style.hair * 5, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.drawPolyline(line);
  painter.setPen(QPen(theme.focus, scene.style.hair * 2.8, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.drawPolyline(line);
  if (const std::optional<Miss> miss = miss_between(scene.assessment.bore, tried))
    paint_miss(painter, scene, pane, miss->planned, miss->other);
}

}  // namespace

void paint_miss(QPainter& painter, const Scene& scene, Pane pane, const PathPoint& planned, const PathPoint& other) {
  const double miss = pane == Pane::plan ? other.y_m - planned.y_m : other.z_m - planned.z_m;
  if (hardly_any_miss(miss)) return;
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const QPointF a = place(f, planned, pane), b = place(f, other, pane);
  const double x = b.x() + scene.style.text * 0.8, tick = scene.style.text * 0.4;
  painter.setPen(QPen(theme.focus, scene.style.hair * 2.2));
  painter.drawLine(QPointF(x, a.y()), QPointF(x, b.y()));
  for (const double y : {a.y(), b.y()}) painter.drawLine(QPointF(x - tick, y), QPointF(x + tick, y));
  const QString size = miss_text(miss, scene.style.units);
  const QString words = pane == Pane::plan
                            ? (miss > 0 ? QObject::tr("%1 left").arg(size) : QObject::tr("%1 right").arg(size))
                            : (miss > 0 ? QObject::tr("%1 high").arg(size) : QObject::tr("%1 low").arg(size));
  painter.setFont(drawing_font(scene.style.text * 1.3, QFont::Bold));
  const double wide = QFontMetricsF(painter.font()).horizontalAdvance(words);
  const QRectF view = pane == Pane::plan ? f.plan : f.elevation;
  const double left = x + tick * 1.5 + wide > view.right() - 4 ? x - tick * 2 - wide : x + tick * 1.5;
  halo_text(painter, {left, (a.y() + b.y()) / 2 + scene.style.text * 0.4}, words, theme.focus, theme.field);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_tried_side(QPainter& painter, const Scene& scene) {
  paint_tried(painter, scene, Pane::elevation);
}

void paint_tried_plan(QPainter& painter, const Scene& scene) {
  paint_tried(painter, scene, Pane::plan);
}

}  // namespace burrow

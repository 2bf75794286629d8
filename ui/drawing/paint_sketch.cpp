/// A thing while it is being drawn.

#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "burrow/drawing/sketch.h"

namespace burrow {

namespace {

struct SketchPicture {
  QPolygonF line;
  QRectF box;            ///< between two corners
  double radius_px = 0;  ///< about the first point
};

SketchPicture picture_of(const Scene& scene, const Sketch& sketch, const QPolygonF& points) {
  SketchPicture picture;
  const Frame& f = scene.frame;
  const bool two = points.size() > 1;
  switch (sketch.kind()) {
    case SketchKind::utility:
    case SketchKind::boundary:
    case SketchKind::stratum:
      picture.line = points;
      break;
    case SketchKind::building:
    case SketchKind::machine:
      if (two) picture.box = QRectF(points[0], points[1]).normalized();
      break;
    case SketchKind::tree:
      if (two) picture.radius_px = std::hypot(points[1].x() - points[0].x(), points[1].y() - points[0].y());
      break;
    case SketchKind::test_hole:
    case SketchKind::ground_point:
    case SketchKind::water_point:
      break;
    default: {
      const QRectF& pane = sketch.pane() == Pane::elevation ? f.elevation : f.plan;
      if (two)
        picture.box = QRectF(QPointF(points[0].x(), pane.top()), QPointF(points[1].x(), pane.bottom())).normalized();
    }
  }
  return picture;
}

}  // namespace

void paint_sketch(QPainter& painter, const Scene& scene) {
  if (!scene.focus.sketch) return;
  const Sketch& sketch = *scene.focus.sketch;
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  const Pane here = f.pane_at(scene.focus.pointer);
  const Pane pane = sketch.pane() == Pane::none ? here : sketch.pane();
  if (pane != Pane::plan && pane != Pane::elevation) return;
  const bool side = pane == Pane::elevation;
  QPolygonF points;
  for (const SketchPoint& p : sketch.points())
    points << (side ? f.side(p.station_m, p.up_m) : f.above(p.station_m, p.up_m));
  const auto clicked = points.size();
  const bool complete = sketch.kind() == SketchKind::machine && clicked == 2;
  if (here == pane && !complete) points << scene.focus.pointer;
  painter.save();
  painter.setClipRect(side ? f.elevation : f.plan);
  const SketchPicture picture = picture_of(scene, sketch, points);
  QColor tint = style.theme.focus;
  tint.setAlpha(36);
  painter.setPen(QPen(style.theme.focus, style.hair * 1.8, Qt::DashLine));
  painter.setBrush(tint);
  if (!picture.box.isNull()) painter.drawRect(picture.box);
  if (picture.radius_px > 0) painter.drawEllipse(points[0], picture.radius_px, picture.radius_px);
  painter.setBrush(Qt::NoBrush);
  if (picture.line.size() > 1) painter.drawPolyline(picture.line);
  painter.setPen(QPen(style.theme.focus, style.hair * 1.6));
  painter.setBrush(style.theme.field);
  const double r = style.text * 0.3;
  for (qsizetype i = 0; i < clicked; ++i) painter.drawRect(QRectF(points[i] - QPointF(r, r), QSizeF(2 * r, 2 * r)));
  painter.restore();
}

}  // namespace burrow

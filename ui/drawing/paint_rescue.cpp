/// The pit by which a stuck tool would be dug out: dashed, since nobody has dug it.

#include "burrow/document/text.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

QPen edge(const Scene& scene) {
  QPen pen(scene.style.theme.ink, scene.style.hair * 1.6, Qt::CustomDashLine, Qt::FlatCap);
  pen.setDashPattern({5, 3});
  return pen;
}

QBrush inside(const Scene& scene) {
  QColor pale = scene.style.theme.pit;
  pale.setAlpha(150);
  return pale;
}

QPolygonF above(const Frame& f, const PlanLine& line) {
  QPolygonF shape;
  for (const PlanPoint& p : line) shape << f.above(p.x_m, p.y_m);
  return shape;
}

void paint_name(QPainter& painter, const Scene& scene, const PitShape& pit, const QPointF& top_middle,
                const QRectF& pane) {
  const double text = scene.style.text;
  painter.setFont(drawing_font(text * 0.92, QFont::DemiBold));
  const QFontMetricsF metrics(painter.font());
  const QString name =
      QObject::tr("rescue pit %1 deep").arg(text_from(format(pit.depth_m, Dimension::length, scene.style.units)));
  const double w = metrics.horizontalAdvance(name);
  const double left =
      std::min(std::max(top_middle.x() - w / 2, pane.left() + text * 0.5), pane.right() - w - text * 0.5);
  const double y = std::min(top_middle.y() + metrics.ascent(), pane.bottom() - metrics.descent());
  halo_text(painter, QPointF(left, y), name, scene.style.theme.ink, scene.style.theme.paper);
  painter.setFont(drawing_font(text));
}

}  // namespace

void paint_rescue_side(QPainter& painter, const Scene& scene) {
  if (!scene.layers.rescue || scene.layers.rescue->section.size() < 3) return;
  const PitShape& pit = *scene.layers.rescue;
  const Frame& f = scene.frame;
  QPolygonF cut;
  for (const LevelPoint& p : pit.section) cut << f.side(p.station_m, p.elevation_m);
  painter.setPen(edge(scene));
  painter.setBrush(inside(scene));
  painter.drawPolygon(cut);
}

void paint_rescue_plan(QPainter& painter, const Scene& scene) {
  if (!scene.layers.rescue || scene.layers.rescue->footprint.size() < 3) return;
  const PitShape& pit = *scene.layers.rescue;
  const Frame& f = scene.frame;
  const QPolygonF footprint = above(f, pit.footprint);
  painter.setPen(edge(scene));
  painter.setBrush(inside(scene));
  painter.drawPolygon(footprint);
  painter.setBrush(Qt::NoBrush);
  painter.drawPolygon(above(f, pit.floor));
}

void paint_rescue_name(QPainter& painter, const Scene& scene, Pane pane) {
  if (!scene.layers.rescue || scene.layers.rescue->footprint.size() < 3) return;
  const PitShape& pit = *scene.layers.rescue;
  const Frame& f = scene.frame;
  const double middle = (pit.floor_from_m + pit.floor_to_m) / 2;
  const QPointF at = pane == Pane::plan ? f.above(middle, pit.floor_right_m) : f.side(middle, pit.floor_elevation_m);
  const QRectF& area = pane == Pane::plan ? f.plan : f.elevation;
  if (!area.contains(at)) return;
  const double text = scene.style.text;
  QPointF below = at + QPointF(0, text * 0.3);
  const QRectF around(below.x() - text * 7, below.y(), text * 14, text * 1.4);
  if (pane == Pane::elevation && (cloud_key_box(scene).intersects(around) || scene.labels->status.intersects(around)))
    below.setY((at.y() + f.px_z(pit.section.front().elevation_m)) / 2 - text);  // in the middle of the pit instead
  paint_name(painter, scene, pit, below, area);
}

}  // namespace burrow

#include "burrow/drawing/scene.h"

#include <QImage>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <functional>

#include "burrow/document/text.h"
#include "burrow/drawing/across.h"
#include "burrow/drawing/box_pick.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/layer_cache.h"
#include "burrow/drawing/paint_apart.h"
#include "burrow/drawing/sketch.h"
#include "paint_marks.h"

namespace burrow {

double gutter_width(const Style& style) {
  return style.text * 5.6;
}

LaneSizes lane_sizes(const Style& style, double height, int flag_rows, bool turning) {
  constexpr double low_texts = 48;   // below, every line counts
  constexpr double room_texts = 24;  // letters for a room: the drawing wants what is left
  const double text = style.text;
  LaneSizes lanes;
  lanes.gutter = gutter_width(style);
  lanes.flags = height < low_texts * text ? text * 2.6 : flag_rows > 1 ? text * 7.7 : text * 4.1;
  lanes.on_top = text * 1.9;
  lanes.names = text * (height < room_texts * text ? 2.1 : 3.3);
  lanes.turning = turning ? turning_height(style) : 0;
  lanes.ruler = text * 4.15;
  return lanes;
}

double bore_offset_at(const Assessment& assessment, const Crossing& crossing, double station_m) {
  const auto& points = assessment.bore.points;
  if (points.empty()) return crossing.bore.launch.offset->m;
  const auto right =
      std::lower_bound(points.begin(), points.end(), station_m, [](const PathPoint& p, double x) { return p.x_m < x; });
  if (right == points.begin()) return points.front().y_m;
  if (right == points.end()) return points.back().y_m;
  const PathPoint& a = *(right - 1);
  const double t = (station_m - a.x_m) / std::max(1e-12, right->x_m - a.x_m);
  return a.y_m + t * (right->y_m - a.y_m);
}

void halo_text(QPainter& painter, const QPointF& at, const QString& text, const QColor& ink, const QColor& halo) {
  QColor soft = halo;
  soft.setAlpha(215);
  const QFontMetricsF metrics(painter.font());
  const QRectF box(at.x() - 2, at.y() - metrics.ascent(), metrics.horizontalAdvance(text) + 4,
                   metrics.ascent() + metrics.descent());
  painter.fillRect(box, soft);
  painter.setPen(ink);
  painter.drawText(at, text);
}

namespace {
QColor row_colour(const Scene& scene, UtilityKind kind) {
  for (const UtilityKindRow& row : scene.tables.utilities)
    if (row.kind == kind) return QColor(text_from(scene.style.theme.dark ? row.colour_dark : row.colour));
  return scene.style.theme.ink;
}
}  // namespace

QColor utility_colour(const Scene& scene, UtilityKind kind) {
  return row_colour(scene, kind);
}

QPen utility_pen(const Scene& scene, UtilityKind kind, double width) {
  QPen pen(row_colour(scene, kind), width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
  for (const UtilityKindRow& row : scene.tables.utilities)
    if (row.kind == kind && !row.dash.empty()) pen.setDashPattern(QList<qreal>(row.dash.begin(), row.dash.end()));
  return pen;
}

void draw_run(QPainter& painter, const QPolygonF& line, QPen pen) {
  pen.setCapStyle(Qt::FlatCap);
  const bool dashed = pen.style() == Qt::CustomDashLine;
  double along = 0;
  for (qsizetype i = 1; i < line.size(); ++i) {
    const QLineF piece(line[i - 1], line[i]);
    if (dashed) pen.setDashOffset(along);
    painter.setPen(pen);
    painter.drawLine(piece);
    along += piece.length() / std::max(1e-9, pen.widthF());
  }
}

Scene with_labels(Scene scene) {
  if (!scene.labels) scene.labels = std::make_shared<const Labels>(place_labels(scene));
  return scene;
}

namespace {

void paint_side_view(QPainter& painter, const Scene& scene) {
  painter.save();
  painter.setClipRect(scene.frame.elevation);
  if (scene.layer_cache) {
    scene.layer_cache->ground(painter, scene);
  } else {
    painter.fillRect(scene.frame.elevation, scene.style.theme.sky);
    paint_ground(painter, scene);
    paint_surface(painter, scene);
    paint_grid(painter, scene, scene.frame.elevation);
  }
  if (scene.layers.zones) paint_zones_side(painter, scene);
  paint_pits_side(painter, scene);
  if (scene.layers.rise) paint_rise_side(painter, scene);
  paint_rescue_side(painter, scene);
  paint_neutral_line(painter, scene);
  painter.setClipping(false);
  paint_chip_leaders(painter, scene);
  painter.setClipRect(scene.frame.elevation);
  paint_bore_side(painter, scene);
  paint_marks_side(painter, scene);
  paint_holes_side(painter, scene);
  paint_utilities_side(painter, scene);  // above the bands
  paint_tried_side(painter, scene);
  paint_played_side(painter, scene);
  paint_open_ends_side(painter, scene);
  paint_rescue_name(painter, scene, Pane::elevation);
  paint_cloud_key(painter, scene);
  painter.restore();
}

void paint_plan_view(QPainter& painter, const Scene& scene) {
  painter.save();
  painter.setClipRect(scene.frame.plan);
  if (scene.layer_cache) {
    scene.layer_cache->plan_base(painter, scene);
  } else {
    painter.fillRect(scene.frame.plan, scene.style.theme.paper);
    paint_plan_base(painter, scene);
    paint_grid(painter, scene, scene.frame.plan);
  }
  if (scene.layers.zones) paint_zones_plan(painter, scene);
  paint_pits_plan(painter, scene);
  if (scene.layers.rise) paint_rise_plan(painter, scene);
  paint_rescue_plan(painter, scene);
  if (scene.layer_cache)
    scene.layer_cache->utilities_plan(painter, scene);
  else
    paint_utilities_plan(painter, scene);
  paint_picked_utility_plan(painter, scene);
  paint_ghost_utilities_plan(painter, scene);
  paint_bore_plan(painter, scene);
  paint_tried_plan(painter, scene);
  paint_played_plan(painter, scene);
  paint_holes_plan(painter, scene);
  paint_open_ends_plan(painter, scene);
  paint_rescue_name(painter, scene, Pane::plan);
  painter.restore();
}

void paint_below(QPainter& painter, const Scene& scene) {
  painter.fillRect(scene.frame.flags, scene.style.theme.raised);
  painter.fillRect(scene.frame.names, scene.style.theme.raised);
  paint_on_top(painter, scene);
}

void paint_above(QPainter& painter, const Scene& scene) {
  paint_ruler(painter, scene);
  if (scene.layer_cache)
    scene.layer_cache->axes(painter, scene);
  else
    paint_axes(painter, scene);
  paint_level_tag(painter, scene);
  paint_stops(painter, scene);
  paint_turning(painter, scene);
  paint_across_line(painter, scene);
  paint_selected(painter, scene);
  paint_several(painter, scene);
  paint_utility_chips(painter, scene);
  paint_flag_stems(painter, scene);
  paint_on_top_names(painter, scene);
  paint_corner_chips(painter, scene);
  paint_side_texts(painter, scene);
  paint_plan_texts(painter, scene);
  paint_dimension_lines(painter, scene);
  if (scene.style.handles) paint_handles(painter, scene);
  paint_flags(painter, scene);
  paint_snaps(painter, scene);
  if (!scene.frame.plan.isEmpty()) paint_across(painter, scene);
  paint_tape(painter, scene);
  paint_sketch(painter, scene);
  paint_pointer(painter, scene);
}

void set_up(QPainter& painter, const Scene& scene) {
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setRenderHint(QPainter::TextAntialiasing, true);
  painter.setFont(drawing_font(scene.style.text));
}

using Paint = void (*)(QPainter&, const Scene&);

/// Rows of an image as an image of its own, so that two threads paint on one picture.
void paint_rows(QImage& whole, int from, int to, const Scene& scene, Paint paint) {
  QImage rows(whole.scanLine(from), whole.width(), to - from, whole.bytesPerLine(), whole.format());
  rows.setDevicePixelRatio(whole.devicePixelRatio());
  QPainter painter(&rows);
  painter.translate(0, -from / whole.devicePixelRatio());
  set_up(painter, scene);
  paint(painter, scene);
}

}  // namespace

void paint_scene(QPainter& painter, const Scene& bare) {
  const Scene scene = with_labels(bare);
  set_up(painter, scene);
  paint_below(painter, scene);
  if (!scene.frame.elevation.isEmpty()) paint_side_view(painter, scene);
  if (!scene.frame.plan.isEmpty()) paint_plan_view(painter, scene);
  paint_above(painter, scene);
}

void paint_scene(QImage& pixels, const Scene& bare, const QBrush& behind) {
  const Scene scene = with_labels(bare);
  const Frame& f = scene.frame;
  const auto on_all = [&](const std::function<void(QPainter&)>& paint) {
    paint_apart([&] {
      QPainter painter(&pixels);
      set_up(painter, scene);
      paint(painter);
    });
  };
  // The side view stands above the plan, with the ruler between them.
  const int border = static_cast<int>(std::floor(f.plan.top() * pixels.devicePixelRatio()));
  const bool both = !f.elevation.isEmpty() && !f.plan.isEmpty() && border > 0 && border < pixels.height() &&
                    f.elevation.bottom() * pixels.devicePixelRatio() <= border;
  on_all([&](QPainter& painter) {
    painter.fillRect(painter.viewport().adjusted(0, 0, 1, 1), behind);
    paint_below(painter, scene);
    if (!both && !f.elevation.isEmpty()) paint_side_view(painter, scene);
    if (!both && !f.plan.isEmpty()) paint_plan_view(painter, scene);
  });
  if (both) {
    pixels.bits();  // its own before two threads write to it
    paint_apart([&] { paint_rows(pixels, 0, border, scene, &paint_side_view); },
                [&] { paint_rows(pixels, border, pixels.height(), scene, &paint_plan_view); });
  }
  on_all([&](QPainter& painter) { paint_above(painter, scene); });
}

}  // namespace burrow

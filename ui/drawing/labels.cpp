#include "burrow/drawing/labels.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/scene.h"
#include "burrow/words/trials_text.h"
#include "layout_of_dimensions.h"
#include "taken_places.h"
#include "text_width.h"

namespace burrow {

namespace {

constexpr double small_share = 0.92;
constexpr double padding_px = 4;
constexpr int path_points = 64;  ///< of the mean path, as an obstacle

/// The mean path, coarse.
QPolygonF coarse_path(const Scene& scene) {
  const auto& points = scene.assessment.bore.points;
  QPolygonF line;
  const std::size_t step = std::max<std::size_t>(1, points.size() / path_points);
  for (std::size_t i = 0; i < points.size(); i += step) line << scene.frame.side(points[i].x_m, points[i].z_m);
  if (!points.empty()) line << scene.frame.side(points.back().x_m, points.back().z_m);
  return line;
}

QPolygonF ground_line(const Scene& scene) {
  const LevelLine& ground = scene.crossing.site.ground;
  QPolygonF line;
  if (ground.empty()) return line;
  const Frame& f = scene.frame;
  const auto add = [&](double station) { line << f.side(station, elevation_at(ground, station)); };
  add(f.left_station_m);
  for (const LevelPoint& p : ground)
    if (p.station_m > f.left_station_m && p.station_m < f.right_station_m()) add(p.station_m);
  add(f.right_station_m());
  return line;
}

/// The upright face of a pit toward the bore.
QRectF face_of(const Scene& scene, const PitShape& pit) {
  if (pit.section.size() < 3 || scene.crossing.site.ground.empty()) return {};
  const Frame& f = scene.frame;
  const double x = f.px_x(pit.face_station_m), half = scene.style.text * 0.3;
  const double top = f.px_z(elevation_at(scene.crossing.site.ground, pit.face_station_m));
  return {x - half, top, 2 * half, std::max(0.0, f.px_z(pit.floor_elevation_m) - top)};
}

void take_grips(const Scene& scene, TakenPlaces& taken, Pane pane) {
  if (!scene.style.handles) return;
  for (const Handle& handle : handles(scene))
    if (handle.pane == pane) taken.take(grip_box(handle, scene.style, handle.part == scene.focus.picked));
}

/// In the lower left corner, one after the other; along the lower edge, then the upper one, where a grip stands there.
void place_corner_chips(const Scene& scene, Labels& labels, TakenPlaces& taken) {
  const QRectF& pane = scene.frame.elevation;
  const double text = scene.style.text, high = text * 1.7, edge = text * 0.5;
  const auto place = [&](const QString& words, QFont::Weight weight) {
    if (words.isEmpty()) return QRectF();
    const double wide = TextWidths(drawing_font(text * small_share, weight)).of(words) + text * 1.2;
    std::vector<QRectF> places;
    for (const double y : {pane.bottom() - edge - high, pane.top() + edge})
      for (double x = pane.left() + edge; x + wide < pane.right(); x += text) places.emplace_back(x, y, wide, high);
    const QRectF box = taken.first_free(places, pane);
    taken.take(box.adjusted(-2, -2, 2, 2));
    return box;
  };
  labels.heights = place(heights_words(scene.frame.exaggeration), QFont::DemiBold);
  labels.status = place(status_words(scene), QFont::Normal);
}

TakenPlaces side_obstacles(const Scene& scene, Labels& labels) {
  TakenPlaces taken;
  take_grips(scene, taken, Pane::elevation);
  taken.take(cloud_key_box(scene));
  const double text = scene.style.text;
  taken.take_line(coarse_path(scene), text * 0.35);
  taken.take_line(ground_line(scene), text * 0.25);
  for (const Utility& utility : scene.crossing.site.utilities) {
    const UtilityMark mark = utility_mark(utility);
    if (utility.path.empty() || !mark.depth_known) continue;
    const double half = utility.outside_diameter.value_or(Length{0}).m / 2 * scene.frame.px_per_m;
    const QPointF at = scene.frame.side(mark.station_m, mark.elevation_m);
    const double x = std::max(text * 0.4, half), y = std::max(text * 0.4, half * scene.frame.exaggeration);
    taken.take(QRectF(at.x() - x, at.y() - y, 2 * x, 2 * y));
  }
  for (const PitShape* pit : {&scene.assessment.launch_pit, &scene.assessment.exit_pit})
    taken.take(face_of(scene, *pit));
  place_corner_chips(scene, labels, taken);
  return taken;
}

void add(std::vector<PlacedText>& to, std::vector<PlacedText> more) {
  std::move(more.begin(), more.end(), std::back_inserter(to));
}

}  // namespace

QString heights_words(double exaggeration) {
  return exaggeration == 1 ? QObject::tr("true to scale") : QObject::tr("heights ×%1").arg(times_text(exaggeration));
}

QString status_words(const Scene& scene) {
  if (scene.assessment.bore.points.size() < 2) return {};
  return QObject::tr("Predicted path: %1").arg(text_from(model_status(scene.crossing.bore.model)));
}

void keep_text(std::vector<PlacedText>& all, TakenPlaces& taken, PlacedText text) {
  if (text.box.isEmpty()) return;
  taken.take(text.box);
  all.push_back(std::move(text));
}

QFont font_of(TextRole role, const Style& style) {
  switch (role) {
    case TextRole::away:
    case TextRole::letter:
    case TextRole::hole:
      return drawing_font(style.text * 0.85, QFont::DemiBold);
    case TextRole::band:
      return drawing_font(style.text * 0.85);
    default:
      return drawing_font(style.text * small_share);
  }
}

QSizeF size_of(TextRole role, const QString& text, const Style& style) {
  const TextWidths metrics(font_of(role, style));
  return {metrics.of(text) + 2 * padding_px, metrics.height() + 1};
}

Labels place_labels(const Scene& scene, const Labels* held) {
  Labels labels;
  labels.flags = place_flag_lane(scene);
  labels.on_top = place_on_top(scene);
  labels.utilities = place_utility_chips(scene);
  TakenPlaces taken = side_obstacles(scene, labels);
  TakenPlaces plan_taken;
  take_grips(scene, plan_taken, Pane::plan);
  add(labels.side, place_digs(scene, taken));
  DimensionLayout dimensions(scene, taken, plan_taken);
  dimensions.add_first();
  add(labels.side, place_first_steps(scene, taken));
  add(labels.side, place_zone_texts(scene, taken));
  dimensions.add_covers();
  labels.dimensions = dimensions.take();
  add(labels.side, place_side_notes(scene, taken));
  for (const PitShape* pit : {&scene.assessment.launch_pit, &scene.assessment.exit_pit}) {
    QPolygonF cut;
    for (const LevelPoint& p : pit->section) cut << scene.frame.side(p.station_m, p.elevation_m);
    taken.take(cut.boundingRect());
  }
  add(labels.side, place_edge_names(scene, taken));
  add(labels.side, place_away_marks(scene, taken));
  labels.plan = place_plan_texts(scene, plan_taken, held);
  return labels;
}

std::vector<WrittenBox> written_boxes(const Scene& scene, const Labels& labels) {
  std::vector<WrittenBox> boxes;
  const auto add_box = [&](const QString& what, const QRectF& box) {
    if (!box.isEmpty()) boxes.push_back({what, box});
  };
  for (const Flag& flag : labels.flags.flags) add_box(QStringLiteral("flag ") + flag.text, flag.box);
  for (const FlagDot& dot : labels.flags.dots) add_box(QStringLiteral("dot ") + dot.text, dot.box);
  for (const OnTopPart& part : labels.on_top) add_box(QStringLiteral("on top ") + part.name, part.name_box);
  for (const UtilityChip& chip : labels.utilities.chips) add_box(QStringLiteral("chip ") + chip.text, chip.box);
  add_box(QStringLiteral("heights"), labels.heights);
  add_box(QStringLiteral("status"), labels.status);
  for (const DimensionLine& line : labels.dimensions) add_box(QStringLiteral("dimension ") + line.text, line.label);
  for (const PlacedText& text : labels.side) add_box(QStringLiteral("side ") + text.text, text.box);
  for (const PlacedText& text : labels.plan) add_box(QStringLiteral("plan ") + text.text, text.box);
  add_box(QStringLiteral("cloud key"), cloud_key_box(scene));
  return boxes;
}

namespace {

QColor ink_of(TextRole role, const Theme& theme) {
  switch (role) {
    case TextRole::zone:
    case TextRole::setback:
      return theme.stop;
    case TextRole::water:
      return theme.water;
    case TextRole::away:
    case TextRole::stop:
    case TextRole::letter:
    case TextRole::hole:
    case TextRole::rescue:
    case TextRole::step:
      return theme.ink;
    default:
      return theme.ink_soft;
  }
}

/// On a plate of paper, so that it reads on any ground.
void write(QPainter& painter, const Scene& scene, const PlacedText& text) {
  const Theme& theme = scene.style.theme;
  if (!text.foot.isNull()) {
    painter.setPen(QPen(theme.ink_soft, scene.style.hair * 0.8));
    const bool right_of_it = text.foot.x() < text.box.center().x();
    painter.drawLine(text.foot, QPointF(right_of_it ? text.box.left() : text.box.right(), text.box.center().y()));
  }
  QColor plate = theme.paper;
  plate.setAlpha(240);
  painter.setPen(Qt::NoPen);
  painter.setBrush(plate);
  if (text.role == TextRole::step) painter.setPen(QPen(theme.focus, scene.style.hair));
  painter.drawRoundedRect(text.box, 4, 4);
  painter.setFont(font_of(text.role, scene.style));
  painter.setPen(ink_of(text.role, theme));
  painter.drawText(text.box, Qt::AlignCenter, text.text);
}

}  // namespace

void paint_side_texts(QPainter& painter, const Scene& scene) {
  for (const PlacedText& text : scene.labels->side) write(painter, scene, text);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_plan_texts(QPainter& painter, const Scene& scene) {
  for (const PlacedText& text : scene.labels->plan)
    if (text.role != TextRole::letter) write(painter, scene, text);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_corner_chips(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const auto chip = [&](const QRectF& box, const QString& words, bool framed, QFont::Weight weight) {
    if (box.isEmpty()) return;
    painter.setPen(framed ? QPen(theme.note, scene.style.hair) : QPen(Qt::NoPen));
    painter.setBrush(theme.paper);
    painter.drawRoundedRect(box, box.height() / 2, box.height() / 2);
    painter.setFont(drawing_font(text * small_share, weight));
    painter.setPen(framed ? theme.ink : theme.ink_soft);
    painter.drawText(box, Qt::AlignCenter, words);
  };
  chip(scene.labels->heights, heights_words(scene.frame.exaggeration), scene.style.handles, QFont::DemiBold);
  chip(scene.labels->status, status_words(scene), false, QFont::Normal);
  painter.setFont(drawing_font(text));
}

}  // namespace burrow

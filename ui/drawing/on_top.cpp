/// The lane of what lies on top of the ground: a stretch for each road, footway, track or building, a tick for what is
/// thinner than its name, and the names.

#include <QPainter>
#include <algorithm>
#include <array>

#include "burrow/document/text.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"
#include "burrow/language/say.h"
#include "taken_places.h"
#include "text_width.h"

namespace burrow {

namespace {

constexpr double least_stretch_px = 3;

QFont name_font(const Style& style) {
  return drawing_font(style.text * 0.92, QFont::DemiBold);
}

/// Its stations along the line; from > to: it has none.
std::pair<double, double> stations_of(const SurfaceFeature& feature) {
  double from = feature.from ? feature.from->m : 1e300, to = feature.to ? feature.to->m : -1e300;
  for (const PlanPoint& p : feature.outline) {
    from = std::min(from, p.x_m);
    to = std::max(to, p.x_m);
  }
  return {from, to};
}

bool is_way(SurfaceKind kind) {
  return kind == SurfaceKind::road || kind == SurfaceKind::track;
}

/// In the middle of its stretch where it fits there; else beside it, where nothing else lies.
QRectF place_name(const QRectF& stretch, const QRectF& lane, double wide, const TakenPlaces& within,
                  const TakenPlaces& around) {
  const auto at = [&](double x) { return QRectF(x, lane.top() + 1, wide, lane.height() - 2); };
  if (wide + 4 <= stretch.width()) {
    const QRectF middle = at(stretch.center().x() - wide / 2);
    if (within.free(middle)) return middle;
  }
  const std::array<QRectF, 2> beside{at(stretch.right() + 4), at(stretch.left() - wide - 4)};
  return around.first_free(beside, lane);
}

}  // namespace

std::vector<OnTopPart> place_on_top(const Scene& scene) {
  std::vector<OnTopPart> parts;
  const Frame& f = scene.frame;
  const QRectF& lane = f.on_top;
  if (lane.isEmpty()) return parts;
  const TextWidths metrics(name_font(scene.style));
  for (const SurfaceFeature& feature : scene.crossing.site.surface) {
    const auto [from, to] = stations_of(feature);
    if (!(from < to)) continue;
    const double left = std::max(f.px_x(from), lane.left()), right = std::min(f.px_x(to), lane.right());
    if (right < lane.left() || left > lane.right()) continue;
    OnTopPart part;
    part.id = feature.id;
    part.kind = feature.kind;
    part.stretch = QRectF(left, lane.top() + 3, std::max(right - left, least_stretch_px), lane.height() - 6);
    parts.push_back(part);
  }
  // The widest first: its name is the one that is looked for. No name stands on another's stretch.
  std::vector<std::size_t> order(parts.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return parts[a].stretch.width() > parts[b].stretch.width(); });
  TakenPlaces names;
  for (const std::size_t i : order) {
    TakenPlaces within = names, around = names;
    for (std::size_t k = 0; k < parts.size(); ++k) {
      if (k == i) continue;
      around.take(parts[k].stretch);
      if (parts[k].stretch.width() < parts[i].stretch.width()) within.take(parts[k].stretch);
    }
    for (const SurfaceFeature& feature : scene.crossing.site.surface)
      if (feature.id == parts[i].id)
        parts[i].name = text_from(feature.name.empty() ? translated_word(feature.kind) : feature.name);
    parts[i].name_box = place_name(parts[i].stretch, lane, metrics.of(parts[i].name) + 8, within, around);
    names.take(parts[i].name_box);
  }
  return parts;
}

void paint_on_top(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  painter.fillRect(scene.frame.on_top, theme.raised);
  painter.fillRect(QRectF(scene.frame.on_top.topLeft(), QSizeF(scene.frame.on_top.width(), 1)), theme.line);
  for (const OnTopPart& part : scene.labels->on_top) {
    QColor fill = part.kind == SurfaceKind::ditch ? theme.water : theme.road;
    fill.setAlpha(is_way(part.kind) ? 70 : 32);
    painter.fillRect(part.stretch, fill);
    painter.setPen(QPen(theme.road, scene.style.hair * 1.4));
    for (const double x : {part.stretch.left(), part.stretch.right()})
      painter.drawLine(QPointF(x, part.stretch.top()), QPointF(x, part.stretch.bottom()));
  }
}

void paint_on_top_names(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  painter.setFont(name_font(scene.style));
  for (const OnTopPart& part : scene.labels->on_top) {
    if (part.name_box.isEmpty()) continue;
    // Stems of flags break at the name.
    QColor plate = theme.raised;
    plate.setAlpha(part.stretch.contains(part.name_box.center()) ? 0 : 235);
    painter.fillRect(part.name_box, plate);
    const bool selected = scene.focus.picked.kind == ItemKind::surface && scene.focus.picked.id == part.id;
    painter.setPen(selected ? theme.focus : theme.ink);
    painter.drawText(part.name_box, Qt::AlignCenter, part.name);
  }
  painter.setFont(drawing_font(scene.style.text));
}

}  // namespace burrow

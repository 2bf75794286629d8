/// Texts within the plan: letters on the lines, numbers of test holes to dig, spoil, pits, distances kept from a road.

#include <QFontMetricsF>
#include <algorithm>
#include <array>

#include "burrow/document/text.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"
#include "taken_places.h"

namespace burrow {

namespace {

QSizeF letter_size(const Scene& scene) {
  const double side = scene.style.text * 1.5;
  return {side, side};
}

/// Where the line crosses this height of the plan.
std::optional<double> crosses_at(const Frame& f, const Utility& utility, double y) {
  for (std::size_t i = 1; i < utility.path.size(); ++i) {
    const QPointF a = f.above(utility.path[i - 1].x_m, utility.path[i - 1].y_m);
    const QPointF b = f.above(utility.path[i].x_m, utility.path[i].y_m);
    if ((a.y() - y) * (b.y() - y) > 0 || a.y() == b.y()) continue;
    return a.x() + (y - a.y()) / (b.y() - a.y()) * (b.x() - a.x());
  }
  return std::nullopt;
}

bool is_selected(const Scene& scene, const std::string& id) {
  return scene.focus.picked.kind == ItemKind::utility && scene.focus.picked.id == id;
}

/// Where they stood in the frame before.
void keep_letters(const Scene& scene, const Labels& held, TakenPlaces& taken, std::vector<PlacedText>& all) {
  for (const PlacedText& text : held.plan)
    if (text.role == TextRole::letter && !is_selected(scene, text.id)) keep_text(all, taken, text);
}

/// Near the upper end of the line and again near the lower one, each where it first finds room.
void add_letters(const Scene& scene, TakenPlaces& taken, std::vector<PlacedText>& all, bool selected_only) {
  const Frame& f = scene.frame;
  const QSizeF size = letter_size(scene);
  for (const Utility& utility : scene.crossing.site.utilities) {
    if (selected_only && !is_selected(scene, utility.id)) continue;
    for (const auto& shares :
         {std::array<double, 4>{0.14, 0.22, 0.30, 0.38}, std::array<double, 4>{0.86, 0.78, 0.70, 0.62}})
      for (const double share : shares) {
        const double y = f.plan.top() + share * f.plan.height();
        const std::optional<double> x = crosses_at(f, utility, y);
        if (!x) continue;
        const QRectF box(*x - size.width() / 2, y - size.height() / 2, size.width(), size.height());
        if (!f.plan.contains(box) || !taken.free(box)) continue;
        taken.take(box);
        all.push_back({TextRole::letter, utility_letter(scene, utility.kind), box, {}, utility.id});
        break;
      }
  }
}

std::array<QRectF, 4> around(const QPointF& at, double away, const QSizeF& size) {
  return {QRectF(QPointF(at.x() + away, at.y() + away), size),
          QRectF(QPointF(at.x() - away - size.width(), at.y() + away), size),
          QRectF(QPointF(at.x() + away, at.y() - away - size.height()), size),
          QRectF(QPointF(at.x() - away - size.width(), at.y() - away - size.height()), size)};
}

void add_holes(const Scene& scene, TakenPlaces& taken, std::vector<PlacedText>& all) {
  for (const UtilityAnswer* answer : holes_to_dig(scene)) {
    const QString words = QObject::tr("hole %1, proposed").arg(static_cast<int>(*answer->expose_rank));
    const QPointF at = scene.frame.above(*answer->hole_station_m, *answer->hole_offset_m);
    const QSizeF size = size_of(TextRole::hole, words, scene.style);
    keep_text(all, taken,
              {TextRole::hole,
               words,
               taken.first_free(around(at, scene.style.text * 0.8, size), scene.frame.plan),
               {},
               answer->id});
  }
}

/// On its heap; where the heap lies out of view, at the edge nearest to it, with an arrow.
void add_spoil(const Scene& scene, TakenPlaces& taken, std::vector<PlacedText>& all, const PitAnswer& work) {
  if (!(work.heap.volume_m3 > 0) || work.heap.outline.size() < 3) return;
  const Frame& f = scene.frame;
  QPolygonF heap;
  for (const PlanPoint& p : work.heap.outline) heap << f.above(p.x_m, p.y_m);
  const QRectF whole = heap.boundingRect();
  const QRectF seen = whole.intersected(f.plan);
  QString words =
      QObject::tr("spoil %1").arg(text_from(format(work.heap.volume_m3, Dimension::volume, scene.style.units)));
  const QRectF area = f.plan.adjusted(text_edge_px, text_edge_px, -text_edge_px, -text_edge_px);
  const bool cut = whole.top() < f.plan.top() || whole.bottom() > f.plan.bottom();
  if (cut) words = (whole.center().y() < f.plan.center().y() ? QStringLiteral("↑ ") : QStringLiteral("↓ ")) + words;
  const QSizeF size = size_of(TextRole::spoil, words, scene.style);
  if (whole.right() < f.plan.left() || whole.left() > f.plan.right()) return;
  const QPointF middle = seen.isEmpty() ? QPointF(whole.center().x(), whole.center().y() < f.plan.top()
                                                                          ? area.top() + size.height() / 2
                                                                          : area.bottom() - size.height() / 2)
                                        : seen.center();
  std::vector<QRectF> places;
  for (const double down : {0.0, 1.2, -1.2, 2.4})
    for (const double aside : {0.0, 0.6, -0.6}) {
      const double left = std::clamp(middle.x() - size.width() / 2 + aside * size.width(), area.left(),
                                     std::max(area.left(), area.right() - size.width()));
      places.emplace_back(QPointF(left, middle.y() - size.height() / 2 + down * size.height()), size);
    }
  keep_text(all, taken, {TextRole::spoil, words, taken.first_free(places, area), {}, {}});
}

void add_pit_names(const Scene& scene, TakenPlaces& taken, std::vector<PlacedText>& all) {
  const Frame& f = scene.frame;
  for (const bool launch : {true, false}) {
    const PitShape& pit = launch ? scene.assessment.launch_pit : scene.assessment.exit_pit;
    if (pit.footprint.size() < 3) continue;
    QPolygonF outline;
    for (const PlanPoint& p : pit.footprint) outline << f.above(p.x_m, p.y_m);
    const QRectF box = outline.boundingRect();
    const QString words = launch ? QObject::tr("launch pit") : QObject::tr("exit pit");
    const QSizeF size = size_of(TextRole::pit, words, scene.style);
    const double x = launch ? box.left() - size.width() - 4 : box.right() + 4, y = box.center().y();
    const std::array<QRectF, 4> places{QRectF(QPointF(x, y - size.height() / 2), size),
                                       QRectF(QPointF(box.left() + 4, box.top() + 3), size),
                                       QRectF(QPointF(box.left() + 4, box.bottom() - size.height() - 3), size),
                                       QRectF(QPointF(box.center().x() - size.width() / 2, box.bottom() + 3), size)};
    keep_text(all, taken, {TextRole::pit, words, taken.first_free(places, f.plan), {}, {}});
  }
}

void add_setbacks(const Scene& scene, TakenPlaces& taken, std::vector<PlacedText>& all) {
  if (!scene.layers.zones) return;
  const Frame& f = scene.frame;
  for (const RuleZone& zone : scene.assessment.zones) {
    if (!zone.pit_setback_m) continue;
    const QString words = QObject::tr("no pit within %1")
                              .arg(text_from(format(*zone.pit_setback_m, Dimension::length, scene.style.units)));
    const QSizeF size = size_of(TextRole::setback, words, scene.style);
    for (const double x : {f.px_x(zone.from_m) - size.width() - text_edge_px, f.px_x(zone.to_m) + text_edge_px}) {
      std::vector<QRectF> places;
      for (double y = f.plan.top() + text_edge_px; y < f.plan.bottom(); y += size.height())
        places.emplace_back(QPointF(x, y), size);
      keep_text(all, taken, {TextRole::setback, words, taken.first_free(places, f.plan), {}, zone.id});
    }
  }
}

}  // namespace

std::vector<PlacedText> place_plan_texts(const Scene& scene, TakenPlaces& taken, const Labels* held) {
  std::vector<PlacedText> all;
  const Style& style = scene.style;
  const double half = style.text * 0.7;
  for (const UtilityAnswer* answer : holes_to_dig(scene)) {
    const QPointF at = scene.frame.above(*answer->hole_station_m, *answer->hole_offset_m);
    taken.take(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half));
  }
  for (const TestHole& hole : scene.crossing.site.test_holes) {
    const QPointF at = scene.frame.above(hole.station.m, hole.offset.m);
    taken.take(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half));
  }
  if (held) keep_letters(scene, *held, taken, all);
  add_letters(scene, taken, all, held != nullptr);
  // The middle line of the bore.
  QPolygonF bore;
  for (const PathPoint& p : scene.assessment.bore.points) bore << scene.frame.above(p.x_m, p.y_m);
  taken.take_line(bore, style.text * 0.4);
  add_holes(scene, taken, all);
  add_spoil(scene, taken, all, scene.assessment.launch_pit_work);
  add_spoil(scene, taken, all, scene.assessment.exit_pit_work);
  add_setbacks(scene, taken, all);
  add_pit_names(scene, taken, all);
  return all;
}

}  // namespace burrow

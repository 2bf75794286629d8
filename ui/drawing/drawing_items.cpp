/// The items of the drawing in the order in which keys and screen readers walk them, and what is said of each.

#include <QAccessible>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/drawing/drawing_view.h"

namespace burrow {

std::vector<ItemRef> DrawingView::items() const {
  const Site& site = document_.crossing().site;
  std::vector<ItemRef> all{{ItemKind::launch, {}, -1}, {ItemKind::grade, {}, -1}, {ItemKind::exit, {}, -1}};
  all.push_back({ItemKind::bore, {}, -1});
  for (const Utility& u : site.utilities) all.push_back({ItemKind::utility, u.id, -1});
  for (const TestHole& h : site.test_holes) all.push_back({ItemKind::test_holes, h.id, -1});
  for (const SurfaceFeature& s : site.surface) all.push_back({ItemKind::surface, s.id, -1});
  const auto points = [&](ItemKind kind, const std::string& id, const LevelLine& line) {
    for (std::size_t i = 0; i < line.size(); ++i) all.push_back({kind, id, static_cast<int>(i)});
  };
  const auto beside = [&](const auto& list) {
    for (const auto& one : list) all.push_back({ItemKind::around, one.id, -1});
  };
  beside(site.boundaries);
  beside(site.trees);
  beside(site.plant);
  beside(site.strips);
  points(ItemKind::ground, {}, site.ground);
  for (const Stratum& s : site.strata)
    if (s.top) points(ItemKind::stratum, s.id, *s.top);
  if (site.water) points(ItemKind::water, {}, *site.water);
  return all;
}

QString DrawingView::item_name(const ItemRef& part) const {
  return text_from(part_name(document_.crossing(), part));
}

QString DrawingView::item_numbers(const ItemRef& part) const {
  QStringList words;
  const Assessment& assessment = document_.assessment();
  for (const LiveNumber& number :
       live_numbers(document_.crossing(), assessment, part, style_.units, {tightest_utility(assessment)}))
    words << number.what + QLatin1Char(' ') + number.value +
                 (number.limit.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(number.limit));
  return words.join(QStringLiteral(", "));
}

void DrawingView::pick_next(int direction) {
  const std::vector<ItemRef> order = items();
  const auto it = std::find(order.begin(), order.end(), focus_.picked);
  focus_.measure.reset();
  const auto n = static_cast<std::ptrdiff_t>(order.size());
  const std::ptrdiff_t at = it == order.end() ? (direction > 0 ? -1 : 0) : it - order.begin();
  pick(order[static_cast<std::size_t>(((at + direction) % n + n) % n)]);
}

/// What is selected, and what its numbers are now.
void DrawingView::tell_screen_reader(bool moved) {
  if (!QAccessible::isActive()) return;
  const std::vector<ItemRef> order = items();
  const auto it = std::find(order.begin(), order.end(), focus_.picked);
  if (it == order.end()) return;
  QAccessibleEvent event(this, moved ? QAccessible::ValueChanged : QAccessible::Focus);
  event.setChild(static_cast<int>(it - order.begin()));
  QAccessible::updateAccessibility(&event);
}

}  // namespace burrow

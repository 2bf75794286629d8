/// Several things picked at once: by a box, by Shift and a click.

#include <algorithm>

#include "burrow/drawing/box_pick.h"
#include "burrow/drawing/drawing_view.h"

namespace burrow {

std::vector<ItemRef> DrawingView::all_picked() const {
  if (!focus_.several.empty()) return focus_.several;
  return focus_.picked.none() ? std::vector<ItemRef>{} : std::vector<ItemRef>{focus_.picked};
}

void DrawingView::pick_several(std::vector<ItemRef> parts) {
  if (parts.size() < 2) {
    const bool had_several = !focus_.several.empty();
    focus_.several.clear();
    const ItemRef only = parts.empty() ? ItemRef{} : parts.front();
    if (had_several && only == focus_.picked) {
      viewport()->update();
      Q_EMIT picked_changed();
    }
    pick(only);
    return;
  }
  if (parts == focus_.several) return;
  focus_.several = std::move(parts);
  focus_.picked = {};
  focus_.measure.reset();
  viewport()->update();
  Q_EMIT picked_changed();
}

/// Shift and a click: one more, or one less.
void DrawingView::toggle_picked(const ItemRef& part) {
  if (!may_be_several(part)) return;
  const ItemRef whole{part.kind, part.id, -1};
  std::vector<ItemRef> parts = all_picked();
  std::erase_if(parts, [](const ItemRef& p) { return !may_be_several(p); });
  for (ItemRef& p : parts) p.index = -1;
  if (const auto at = std::find(parts.begin(), parts.end(), whole); at != parts.end())
    parts.erase(at);
  else
    parts.push_back(whole);
  pick_several(std::move(parts));
}

/// What the box under way holds, with what was picked before when Shift adds.
void DrawingView::take_box() {
  if (!focus_.box) return;
  const Pane pane = press_frame_.pane_at(press_at_);
  std::vector<ItemRef> parts;
  if (box_adds_)
    for (const ItemRef& p : all_picked())
      if (may_be_several(p)) parts.push_back({p.kind, p.id, -1});
  for (const ItemRef& part : items_in_box(scene(), *focus_.box, pane))
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
  focus_.box.reset();
  pick_several(std::move(parts));
}

void DrawingView::forget_gone() {
  if (!exists_in(document_.crossing(), focus_.hovered)) focus_.hovered = {};
  if (!exists_in(document_.crossing(), focus_.picked)) pick({});
  if (focus_.several.empty()) return;
  std::vector<ItemRef> left = focus_.several;
  std::erase_if(left, [&](const ItemRef& part) { return !there_is(document_.crossing(), part); });
  if (left.size() != focus_.several.size()) pick_several(std::move(left));
}

}  // namespace burrow

#pragma once
/// A box dragged over the drawing, and the several things that are picked at once.

#include <vector>

#include "burrow/document/several.h"
#include "burrow/drawing/scene.h"

namespace burrow {

/// What lies in a box of one pane: a utility or test hole when its mark or a piece of its line does, a thing on top
/// when its middle does, a stratum when a point of its top does.   Evidence: BoxPick.*
std::vector<ItemRef> items_in_box(const Scene& scene, const QRectF& box, Pane pane);

/// A broad line along what is selected or under the pointer and has no grip there that would show it.
void paint_selected(QPainter& painter, const Scene& scene);

/// Rings and broad lines about everything in `Interaction::several`, and the box under way.
void paint_several(QPainter& painter, const Scene& scene);

}  // namespace burrow

#pragma once
/// A crossing in small: ground, what stands on it, pits, path, utilities. For the overview strip and for cards.

#include <QPainter>
#include <string>

#include "burrow/drawing/overview.h"
#include "burrow/drawing/scene.h"

namespace burrow {

/// Painted within `scale.area`; `selected` is the id of a utility that stands out, empty: none. Few utilities carry
/// their letter.
void paint_small_picture(QPainter& painter, const OverviewScale& scale, const Scene& scene,
                         const std::string& selected);

}  // namespace burrow

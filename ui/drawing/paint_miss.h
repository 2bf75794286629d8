#pragma once
/// How far one bore is from another, as a dimension.

#include "burrow/drawing/scene.h"

namespace burrow {

/// Beside the second, in the words of the view: high and low, left and right.
void paint_miss(QPainter& painter, const Scene& scene, Pane pane, const PathPoint& planned, const PathPoint& other);

}  // namespace burrow

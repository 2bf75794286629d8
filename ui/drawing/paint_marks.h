#pragma once
/// Marks of the hose on the side elevation: where the nose is when one of them passes the launch face.

#include "burrow/drawing/scene.h"

namespace burrow {

/// Short ticks below the bore; none where they would run into one another.
void paint_marks_side(QPainter& painter, const Scene& scene);

}  // namespace burrow

#pragma once
/// Pictures of one pit: obliquely from above, and square across the bore. One paint code for screen and paper.

#include <QPainter>
#include <QRectF>

#include "burrow/check/assessment.h"
#include "burrow/drawing/scene.h"

namespace burrow {

struct PitPicture {
  const PitShape& shape;
  const PitAnswer& work;
  const LevelLine& ground;
  double axis_offset_m = 0;    ///< of the bore at the face
  double hole_diameter_m = 0;  ///< of the bore
  double tool_length_m = 0;    ///< 0: no tool is drawn
  Style style;
};

/// As it looks from above its near corner; the bore side and the side to the left of the tool stand at the back. Sides
/// near the viewer are drawn as thin edges, so that the floor is seen.
void paint_pit_oblique(QPainter& painter, const QRectF& area, const PitPicture& scene);

/// The section across the bore, half a tool from the face, seen as the tool drives: left is left.
void paint_pit_across(QPainter& painter, const QRectF& area, const PitPicture& scene);

}  // namespace burrow

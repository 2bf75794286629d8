#pragma once
/// How outlines meet in plan.

#include "burrow/base/geometry.h"

namespace burrow {

/// Common area of two closed outlines, of either sense of turn.
/// Source: derived. Each edge stands for the ground below it, counted for or against by its direction; the product of
/// two such regions is bounded by the lower edge, whose integral is closed. Exact for any outline that does not cross
/// itself.   Range: an outline of fewer than 3 points has no area.   Evidence: PlanOverlap.*
double overlap_area(const PlanLine& a, const PlanLine& b);

/// The nearest two points of an outline and a line.
struct PlanGap {
  double gap_m = 0;
  PlanPoint on_outline, on_line;
};

/// Least distance between a closed outline and a line, open or closed; 0 where they touch or one holds the other, both
/// points then lie where they meet.
/// Range: neither is empty.   Evidence: PlanGap.*
PlanGap gap_between(const PlanLine& outline, const PlanLine& line, bool closed);

}  // namespace burrow

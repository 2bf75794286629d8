#pragma once
/// Which sides of a pit count where in plan.

#include <vector>

#include "burrow/pit/solid.h"
#include "convex.h"

namespace burrow {

/// Convex; over it the bottom is the highest of its sides, or the floor where it has none.
struct SolidPart {
  std::vector<HalfPlane> within;
  std::vector<std::size_t> edges;
};

/// True: no inner corner.
bool is_convex(const PlanLine& corners);
/// Those of a convex floor do not overlap.
std::vector<SolidPart> parts_of(const PitFloor& floor);

}  // namespace burrow

#pragma once
/// Rise of the surface over a whole bore, seen from above: for contours.

#include <cstddef>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/base/quantity.h"

namespace burrow {

/// The bore at one place, with what the ground passes on there.
struct HoleInPlan {
  PlanPoint at;
  double axis_depth_m = 0;
  double share = 1;  ///< f_v
};

/// Nodes at origin + (column · step, row · step).
struct PlanGrid {
  PlanPoint origin;
  double step_m = 0.25;
  std::size_t columns = 0, rows = 0;
};

/// Rise at each node, row by row. The bore is a chain of straight level pieces, each a line of point sources below a
/// free surface: w = Σ (f a²/2) ∫ h/ρ³ ds, closed for each piece. So an endless bore gives f a² h/(x² + h²), a long one
/// half of it above its ends (`surface_rise_in_passing`), and up to any point of it the build-up behind the tool.
/// Source: Sagaseta 1987 (form from memory), superposed (derived). Depth and share of a piece: mean of its ends. The
/// surface is taken as level around each piece. Pieces not deeper than the radius pass nothing on (daylight).
/// Range: radius > 0, otherwise all 0.   Evidence: HeaveGrid.*
std::vector<double> heave_on_grid(const std::vector<HoleInPlan>& bore, Length radius, const PlanGrid& grid);

}  // namespace burrow

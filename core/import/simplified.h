#pragma once
/// Polylines with fewer vertices. Private to this room.

#include <vector>

#include "burrow/base/geometry.h"

namespace burrow {

/// The polyline with points left out that lie within `tolerance` of the line through their neighbours kept
/// (Ramer 1972, Douglas and Peucker 1973; from memory). Gives the indices kept.   Evidence: Simplify.*
std::vector<std::size_t> simplified(const std::vector<PlanPoint>& line, double tolerance);

}  // namespace burrow

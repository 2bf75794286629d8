#pragma once
/// A hole that was given up, as an obstacle to this bore.

#include <optional>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/check/assessment.h"
#include "burrow/check/limits.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Nothing keeps a record from being in the way of the next bore: it ended elsewhere than in the exit pit, or is said
/// to have arrived half way, and the hole was not dug out.   Evidence: Bored.*
bool leaves_a_hole(const Crossing& crossing, const DayRecord& record);

/// Fresh ground between the axes: 5 diameters of the thicker tool.   Source: from memory.
Limit fresh_ground(double old_diameter_m, double diameter_m);

/// How near this bore comes to the hole, with the place of that; none: nothing to compare.
struct NearHole {
  double apart_m = 0;
  PathPoint at;
};
std::optional<NearHole> nearest_to_hole(const std::vector<PathPoint>& hole, const std::vector<PathPoint>& now);

/// A caution where it is nearer than it may be.   Evidence: Bored.*, WithDay.*
std::optional<Finding> restart_near(const DayRecord& record, const NearHole& near, const Limit& limit);

}  // namespace burrow

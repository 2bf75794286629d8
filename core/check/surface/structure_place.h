#pragma once
/// Where a building, footing or wall stands as seen from the bore.

#include <optional>

#include "burrow/crossing/site.h"

namespace burrow {

bool stands(const SurfaceFeature& feature);

/// Distance in plan to the outline, 0 under it; without an outline to the strip between its stations. Empty: nobody
/// said where it stands.
std::optional<double> plan_distance(const SurfaceFeature& feature, double x_m, double y_m);

}  // namespace burrow

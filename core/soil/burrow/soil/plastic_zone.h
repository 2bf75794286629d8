#pragma once
/// How far the ground yields around the hole.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/soil/soil.h"

namespace burrow {

/// r_p/a of a cylinder opened from nothing in endless ground of one soil: √(G/s_u) undrained, `drained_limit` drained.
/// Where it reaches the surface, the limit pressure of endless ground is an upper bound: less soil takes part.
/// Source: Gibson & Anderson 1961; Yu & Houlsby 1991 (form from memory, derived again).
/// Symbols: mean effective stress p0′ across the axis before, not taken below `least_mean_effective_Pa`.
/// Range: as `drained_limit`.   Errors: out of range; no convergence.   Evidence: PlasticZone.*
Result<double> plastic_radius_ratio(const Soil& soil, double mean_effective_Pa);

}  // namespace burrow

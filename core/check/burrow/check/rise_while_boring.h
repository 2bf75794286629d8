#pragma once
/// The surface while the tool is still under way.

#include <vector>

#include "burrow/check/assessment.h"

namespace burrow {

/// Low estimate of the rise over the axis at each of `heave`, with the tip of the tool at a station: behind it the
/// ground has risen, ahead of it hardly. w = w_∞/2 · [1 − y/√(y² + h²)], y from the tip, ahead positive.
/// Source: Sagaseta 1987 (form from memory), with the depth at each place; what follows behind the launch face is left
/// out.   Range: depths > 0.   Evidence: Passing.*
std::vector<double> rise_with_tip_at(const std::vector<HeavePoint>& heave, double station_m);

}  // namespace burrow

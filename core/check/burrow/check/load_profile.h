#pragma once
/// Load against depth at one station, for the chart.

#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct LoadProfile {
  std::vector<LoadPoint> by_depth;     ///< crown of the hole from shallow to deep
  std::optional<double> pipe_depth_m;  ///< of the crown on the mean path there; empty: the path does not pass
};

/// What would press on the crown of the hole at a station if it lay shallower or deeper: 0.1 m to twice the depth of
/// the bore there, 3 m at least. Same rules as `Assessment::loads`.   Evidence: LoadProfile.*
LoadProfile load_profile(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                         double station_m);

}  // namespace burrow

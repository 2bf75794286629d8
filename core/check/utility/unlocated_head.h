#pragma once
/// What the German rule for displacing the ground asks where lines in service lie in the working area.

#include <optional>
#include <span>
#include <string>

#include "check_run.h"

namespace burrow {

/// A line in service in the working area: within 5 m of bore or pits, or met by the 99 % band.
struct LineNearby {
  const Utility* utility = nullptr;
  Phrase name;
  std::optional<double> station_m, offset_m, elevation_m;  ///< where the bore passes it
};

/// Under the German rules: a bore that nobody steers and whose head nobody locates all the while it runs is not allowed
/// where a line in service lies in the working area; the gap to each such line is agreed with its owner.
/// Source: DGUV Information 203-017 (02/2019) 6.4 (read); it names no distance for the working area: that is ours.
/// Evidence: UnlocatedHead.*
void check_unlocated_head(CheckRun& run, std::span<const LineNearby> in_service);

}  // namespace burrow

#pragma once
/// Where a line goes beyond what is drawn of it.

#include <optional>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/crossing/site.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// As far as a line whose record ends is taken to go on, straight.
inline constexpr double goes_on_m = 15.0;

/// By how much the line is judged beyond its two ends: one that goes on (edge of the record) by `goes_on_m`; a declared
/// end by 1.645 of its lateral standard deviation, since the end is no better known along the line than across it; an
/// end of which nobody said anything not at all (that is asked for, see `missing.utility-course`). Source: our model.
/// Evidence: UtilityCourse.*
struct LineReach {
  double first_m = 0, last_m = 0;
};
LineReach reach_of(const Utility& utility, double lateral_sd_m);
/// The same with the location error at its first vertex.
LineReach reach_of(const Utility& utility, const LevelLine& ground, const Tables& tables);

/// The line with straight pieces of that length at its ends, in the direction and slope of its first and last course. A
/// line of one vertex has no direction and stays as it is.   Evidence: UtilityCourse.*
std::vector<PathVertex> lengthened(const std::vector<PathVertex>& path, const LineReach& reach);

/// The line of the record as it is judged: lengthened by what was declared of its ends.   Evidence: UtilityCourse.*
std::vector<PathVertex> judged_line(const Utility& utility, const LevelLine& ground, const Tables& tables);

/// Something may be in it: live, not known, or said to be abandoned without proof (how, by whom, when).
/// Source: our default.   Evidence: Status.OurDefault_AbandonedCountsAsLiveUntilProved
bool may_be_live(const Utility& utility, const Tables& tables);

}  // namespace burrow

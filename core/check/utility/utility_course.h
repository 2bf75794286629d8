#pragma once
/// Where a utility lies as seen from bore and pits, and where it may go on unseen.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/clearance/clearance.h"
#include "check_run.h"

namespace burrow {

/// Questions are asked about what lies within this distance of the bore or of a pit, in plan (our default).
inline constexpr double asked_within_m = 5.0;

/// The line from the back of the launch pit to the end of the exit pit, as things are asked about along it.
struct WorkLine {
  PlanPoint from, to;
  double half_width_m = 0;  ///< of the wider pit at the top
};
WorkLine work_line(const CheckRun& run);

/// Least distance in plan of two stretches; 0 where they cross.
double plan_distance(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c, const PlanPoint& d);

/// How a utility lies to bore and pits in plan.
struct UtilityByWork {
  UtilityByWork(const CheckRun& run, const WorkLine& work, const Utility& utility);
  bool near = false;     ///< within `asked_within_m` of bore or pits
  bool crossed = false;  ///< the bore passes over or under it
};

/// An end that nobody declared and that may go on into the 99 % band or an excavation: `missing.utility-course`. From
/// an end within 5 m of bore or pit the line may go on for 15 m, up to 45° off its last course; from a lone vertex any
/// way. Source: our default.   Evidence: UtilityCourse.*
void check_course(CheckRun& run, const WorkLine& work, const Clearance& clearance, const Utility& utility);

/// Ids of holes that lie off the record by more than is to be expected, or more than a metre, and that nobody agreed
/// to.
std::vector<std::string> doubtful_holes(const Site& site, const PinnedLine& pinned, const std::optional<Date>& on);

}  // namespace burrow

#pragma once
/// Changes of the layout that mend a finding: each was tried, and is offered only if it does.

#include <stop_token>
#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

enum class RemedyKind { lower, raise, longer_floor, wider_floor };

struct Remedy {
  RemedyKind kind = RemedyKind::lower;
  double value_m = 0;  ///< level of the launch axis, or size of the floor
  Crossing after;
  std::vector<Finding> brings;  ///< what was not there before, less severe than what goes
};

/// Moves of the bore up or down, and sizes of a pit's floor, that take the finding away and bring nothing as severe
/// instead; those that bring nothing at all come before those that bring something. A level keeps 50 mm to spare and is
/// a whole centimetre; where a chance decides, it goes on until that holds too.   Range: findings about a clear gap, a
/// cover, the floor of a pit; none for others. Errors: stopped, or nothing within reach does it: empty.   Evidence:
/// Remedies.*
std::vector<Remedy> remedies(const Crossing& crossing, const Tables& tables, const Assessment& now,
                             const Finding& finding, const std::stop_token& stop);

}  // namespace burrow

#pragma once
/// An assessment to which others have something to add.

#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// The same with more findings, the mutes of the crossing upon them, all of them in order, and the verdict given anew.
/// Nothing is taken away, so that the verdict never gets better.   Evidence: ConcludeTrials.*
Assessment with_findings(const Crossing& crossing, const Tables& tables, Assessment assessment,
                         std::vector<Finding> more);

}  // namespace burrow

#pragma once
/// The verdict of a crossing whose bore is under way.

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/day/day.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Where the day says *everybody out*, *leave and expose*, *stop until exposed* or *back out*, the verdict is stop, and
/// that stands first. Nothing is taken away.   Evidence: WithDay.*
Assessment with_day(const Crossing& crossing, const Tables& tables, Assessment assessment, const DayAnswer& day);

/// The holes that were given up lie where their readings say, if that is nearer to this bore than where they were to
/// run.   Evidence: WithDay.OldHole_*
Assessment with_old_holes(const Crossing& crossing, const Tables& tables, Assessment assessment);

/// Both, for every open record with readings. `assessment`: of the crossing as it is.   Evidence: WithDay.*
Assessment with_open_record(const Crossing& crossing, const Tables& tables, Assessment assessment);

}  // namespace burrow

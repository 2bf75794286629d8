#pragma once
/// What a person enters of a utility at once: a new one of which nothing is known yet, and how it was located.

#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// A line across the middle of the bore. Depth, kind, diameter and location error are not known: nothing is made up.
/// Evidence: UtilitiesEntry.CtrlU_MakesNothingUp_*
Utility new_utility(const Crossing& crossing, std::string name);

/// The utility located in another way: with the quality level of that way where the table holds it; typed errors, which
/// were those of the old way, give way.   Evidence: UtilitiesEntry.AnotherWayOfLocating_*
Utility located_by(Utility utility, LocatedHow how, const Tables& tables);

/// Whether an error of exactly nought may stand: only of what lay open to be measured.
bool may_be_without_error(const Utility& utility);

}  // namespace burrow

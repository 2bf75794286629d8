#pragma once
/// How well a line lies where the marks say, by the way in which it was found.

#include <string_view>

#include "burrow/crossing/utility.h"

namespace burrow {

/// The row of the locating table that a way of locating stands for: exposed A, found by two methods B1, by one B2, from
/// records D; empty: nobody can tell.
/// Source: PAS 128, quality levels.   Evidence: UtilitiesEntry.AnotherWayOfLocating_*, FirstLayout.*
std::string_view quality_level_of(LocatedHow how);

}  // namespace burrow

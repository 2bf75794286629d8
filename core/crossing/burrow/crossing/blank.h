#pragma once
/// A crossing to start from.

#include "burrow/crossing/crossing.h"

namespace burrow {

/// Level ground, one guessed stratum of firm clay, a level 10 m bore with the 65 mm tool 1.2 m deep. Everything about
/// the site that only a person can know is left open, so that it is assessed as incomplete.
Crossing blank_crossing(std::string name = "New crossing");

}  // namespace burrow

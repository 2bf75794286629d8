#pragma once
/// The grounds that the trials draw from: strata that are guesses may be of the next weaker or stiffer class.

#include <cstdint>
#include <string>
#include <vector>

#include "burrow/crossing/site.h"
#include "burrow/tables/tables.h"

namespace burrow::trials {

struct DrawnGround {
  Site site;
  double chance = 1;
};

/// All of them for one or two guesses; for more, 32 drawn from the seed, in which each stratum has each of its classes
/// as often as its chance says.
std::vector<DrawnGround> grounds_of(const Site& site, const Tables& tables, std::uint64_t seed);

}  // namespace burrow::trials

#pragma once
/// The grounds that the trials draw from: strata that are guesses may be of the next weaker or stiffer class.

#include <cstdint>
#include <string>
#include <vector>

#include "burrow/crossing/site.h"
#include "burrow/crossing/tables.h"

namespace burrow::trials {

/// The class that a guess may have been mistaken for, with its chance; the class itself is among them.
/// Order of stiffness: very soft … hard clay; silt, loose … dense sand, fine gravel, cobbly ground; trench backfill,
/// made ground, engineered fill. Own class ½, each neighbour ¼; at an end of the order, or a class that stands in none,
/// what is missing falls to the class itself. Source: our model.   Evidence: Trials.Model_Guess*
struct SoilGuess {
  std::string soil;
  double chance = 1;
};
std::vector<SoilGuess> guesses_of(const std::string& soil, const Tables& tables);

struct DrawnGround {
  Site site;
  double chance = 1;
};

/// All of them for one or two guesses; for more, 32 drawn from the seed, in which each stratum has each of its classes
/// as often as its chance says.
std::vector<DrawnGround> grounds_of(const Site& site, const Tables& tables, std::uint64_t seed);

}  // namespace burrow::trials

#pragma once
/// What a stratum that nobody has seen may be instead.

#include <string>
#include <vector>

#include "burrow/crossing/tables.h"

namespace burrow {

struct SoilGuess {
  std::string soil;
  double chance = 1;
  bool operator==(const SoilGuess&) const = default;
};

/// The class that a guess may have been mistaken for, with its chance; the class itself comes first.
/// Order of stiffness: very soft … hard clay; silt, loose … dense sand, fine gravel, cobbly ground; trench backfill,
/// made ground, engineered fill. Own class ½, each neighbour ¼; at an end of the order, or a class that stands in none,
/// what is missing falls to the class itself. Source: our model.   Evidence: Trials.Model_Guess*, GuessedGround.*
std::vector<SoilGuess> guesses_of(const std::string& soil, const Tables& tables);

}  // namespace burrow

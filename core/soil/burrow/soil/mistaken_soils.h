#pragma once
/// What a stratum that nobody has seen may be instead.

#include <string>
#include <vector>

#include "burrow/tables/tables.h"

namespace burrow {

struct SoilGuess {
  std::string soil;
  double chance = 1;
  bool operator==(const SoilGuess&) const = default;
};

/// The class that a guess may have been mistaken for, with its chance; the class itself comes first. The neighbours are
/// those of its row in the table: very soft … hard clay, weathered rock, cobbly ground, fine gravel, dense … loose
/// sand, silt; peat beside the two softest clays; trench backfill, made ground, engineered fill. A row that names none
/// stands between the next weaker and the next stronger class of the same drainage: not knowing must not look safe, so
/// no class of a table is without. Own class ½, each of two neighbours ¼; where there is one, what is missing falls to
/// the class itself. Source: our model.   Range: a table of two classes of the same drainage or more; else the class
/// alone. Evidence: SoilGuesses.*, Trials.Model_Guess*, GuessedGround.*
std::vector<SoilGuess> soil_mistaken_for(const std::string& soil, const Tables& tables);

}  // namespace burrow

#include "burrow/soil/mistaken_soils.h"

#include <algorithm>

namespace burrow {

namespace {

double strength_of(const SoilClass& soil) {
  return soil.drained ? soil.friction_angle.value_or(Angle{}).rad : soil.undrained_strength.value_or(Pressure{}).Pa;
}

/// Of a class whose row names none: the next weaker and the next stronger one of the same drainage.
std::vector<std::string> by_strength(const SoilClass& own, const Tables& tables) {
  const SoilClass *weaker = nullptr, *stronger = nullptr;
  for (const SoilClass& other : tables.soils) {
    if (other.id == own.id || other.drained != own.drained) continue;
    const double strength = strength_of(other);
    if (strength < strength_of(own)) {
      if (!weaker || strength > strength_of(*weaker)) weaker = &other;
    } else if (!stronger || strength < strength_of(*stronger)) {
      stronger = &other;
    }
  }
  std::vector<std::string> found;
  for (const SoilClass* one : {weaker, stronger})
    if (one) found.push_back(one->id);
  return found;
}

}  // namespace

std::vector<SoilGuess> soil_mistaken_for(const std::string& soil, const Tables& tables) {
  std::vector<SoilGuess> guesses{{soil, 1.0}};
  const SoilClass* row = find_soil(tables, soil);
  if (!row) return guesses;
  for (const std::string& other : row->neighbours.empty() ? by_strength(*row, tables) : row->neighbours) {
    if (!find_soil(tables, other)) continue;
    guesses.push_back({other, 0.25});
    guesses.front().chance -= 0.25;
  }
  return guesses;
}

}  // namespace burrow

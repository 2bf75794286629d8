// What a guess may be instead: the neighbours of a class are part of its row.
#include "burrow/soil/mistaken_soils.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables();
  return loaded;
}

// Our model: not knowing must not look safe, so a guess of any class may be another one.
TEST(SoilGuesses, EveryClassOfTheTable_HasANeighbour) {
  ASSERT_FALSE(tables().soils.empty());
  for (const SoilClass& soil : tables().soils) {
    const std::vector<SoilGuess> guesses = soil_mistaken_for(soil.id, tables());
    ASSERT_GE(guesses.size(), 2u) << soil.id;
    EXPECT_EQ(guesses.front().soil, soil.id);
    double sum = 0;
    for (const SoilGuess& guess : guesses) {
      EXPECT_TRUE(find_soil(tables(), guess.soil)) << guess.soil;
      sum += guess.chance;
    }
    EXPECT_DOUBLE_EQ(sum, 1) << soil.id;
    EXPECT_GE(guesses.front().chance, 0.5) << soil.id;
    EXPECT_FALSE(soil.neighbours.empty()) << soil.id << ": its row says so itself";
  }
}

// Symmetry: who is mistaken for the other is so both ways. Peat lies between two soft clays, which stand together.
TEST(SoilGuesses, Symmetry_BothWays) {
  for (const SoilClass& soil : tables().soils)
    for (const std::string& other : soil.neighbours) {
      if (soil.id == "peat" && other == "soft-clay") continue;
      const std::vector<std::string>& back = find_soil(tables(), other)->neighbours;
      EXPECT_NE(std::find(back.begin(), back.end(), soil.id), back.end()) << soil.id << " and " << other;
    }
}

TEST(SoilGuesses, PeatAndWeatheredRock_StandBesideOthers) {
  EXPECT_EQ(soil_mistaken_for("peat", tables()),
            (std::vector<SoilGuess>{{"peat", 0.5}, {"very-soft-clay", 0.25}, {"soft-clay", 0.25}}));
  EXPECT_EQ(soil_mistaken_for("weathered-rock", tables()),
            (std::vector<SoilGuess>{{"weathered-rock", 0.5}, {"hard-clay", 0.25}, {"cobbly", 0.25}}));
}

// A class of the user's own that names none: the next weaker and the next stronger of the same drainage.
TEST(SoilGuesses, RowWithoutNeighbours_ByStrength) {
  Tables own = tables();
  SoilClass marl = *find_soil(tables(), "firm-clay");
  marl.id = "marl";
  marl.neighbours.clear();
  marl.undrained_strength = Pressure{100e3};
  own.soils.push_back(marl);
  EXPECT_EQ(soil_mistaken_for("marl", own),
            (std::vector<SoilGuess>{{"marl", 0.5}, {"stiff-clay", 0.25}, {"very-stiff-clay", 0.25}}));
  own.soils.back().undrained_strength = Pressure{1e6};
  EXPECT_EQ(soil_mistaken_for("marl", own), (std::vector<SoilGuess>{{"marl", 0.75}, {"weathered-rock", 0.25}}));
}

// Rejection: a class that is not there is itself alone.
TEST(SoilGuesses, Rejection_UnknownClass) {
  EXPECT_EQ(soil_mistaken_for("porridge", tables()), (std::vector<SoilGuess>{{"porridge", 1.0}}));
}

}  // namespace
}  // namespace burrow

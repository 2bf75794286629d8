#include "burrow/pit/soil_type.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

SoilSeen looked_at(ExcavationMatter matter, std::optional<Pressure> strength = std::nullopt) {
  SoilSeen seen;
  seen.matter = matter;
  seen.unconfined_strength = strength;
  seen.fissured = seen.vibrated = seen.disturbed = seen.wet = false;
  return seen;
}

TEST(SoilType, UnknownStrength_IsASetOfThree) {
  const TypeProposal open = propose_type(looked_at(ExcavationMatter::cohesive));
  EXPECT_EQ(open.best, ExcavationType::a);
  EXPECT_EQ(open.worst, ExcavationType::c);
  SoilSeen shaken = looked_at(ExcavationMatter::cohesive);
  shaken.vibrated = true;
  EXPECT_EQ(propose_type(shaken).best, ExcavationType::b);
  EXPECT_EQ(propose_type(shaken).worst, ExcavationType::c);
}

// What nobody looked for never speaks for the better type.
TEST(SoilType, UnknownSign_LeavesTheWorseTypeOpen) {
  SoilSeen seen = looked_at(ExcavationMatter::cohesive, Pressure{200e3});
  EXPECT_EQ(propose_type(seen).worst, ExcavationType::a);
  seen.fissured.reset();
  EXPECT_EQ(propose_type(seen).best, ExcavationType::a);
  EXPECT_EQ(propose_type(seen).worst, ExcavationType::b);
  seen.wet.reset();
  EXPECT_EQ(propose_type(seen).worst, ExcavationType::c);
}

TEST(SoilType, Fill_NeverBetterThanB_WithoutCohesionC) {
  EXPECT_EQ(propose_type(looked_at(ExcavationMatter::fill)).best, ExcavationType::c);
  EXPECT_EQ(propose_type(looked_at(ExcavationMatter::fill, Pressure{300e3})).best, ExcavationType::b);
  EXPECT_EQ(propose_type(looked_at(ExcavationMatter::fill, Pressure{20e3})).best, ExcavationType::c);
}

// Property: one bad sign more never gives a better type, over all combinations.
TEST(SoilType, Property_ABadSignNeverHelps) {
  for (const auto& [matter, word] : EnumNames<ExcavationMatter>::list)
    for (int strength = 0; strength < 4; ++strength)
      for (int signs = 0; signs < 81; ++signs) {
        SoilSeen seen;
        seen.matter = matter;
        if (strength > 0) seen.unconfined_strength = Pressure{strength * 60e3};
        int rest = signs;
        for (std::optional<bool>* sign : {&seen.fissured, &seen.vibrated, &seen.disturbed, &seen.wet}) {
          if (rest % 3 != 2) *sign = rest % 3 == 1;
          rest /= 3;
        }
        const TypeProposal before = propose_type(seen);
        EXPECT_LE(before.best, before.worst);
        ASSERT_FALSE(before.steps.empty());
        EXPECT_EQ(before.steps.back().best, before.best) << word;
        EXPECT_EQ(before.steps.back().worst, before.worst) << word;
        for (const int k : {0, 1, 2, 3}) {
          SoilSeen worse = seen;
          std::optional<bool>* sign[] = {&worse.fissured, &worse.vibrated, &worse.disturbed, &worse.wet};
          *sign[k] = true;
          EXPECT_GE(propose_type(worse).best, before.best) << word;
        }
      }
}

TEST(SoilType, Matter_OfAClassWithoutTheWord) {
  SoilClass soil;
  soil.drained = false;
  EXPECT_EQ(matter_of(soil), ExcavationMatter::cohesive);
  soil.drained = true;
  EXPECT_EQ(matter_of(soil), ExcavationMatter::granular);
  soil.excavation_type = ExcavationType::b;
  EXPECT_EQ(matter_of(soil), ExcavationMatter::silt);
  soil.excavation_type = ExcavationType::stable_rock;
  EXPECT_EQ(matter_of(soil), ExcavationMatter::rock);
  soil.matter = ExcavationMatter::fill;
  EXPECT_EQ(matter_of(soil), ExcavationMatter::fill);
}

}  // namespace
}  // namespace burrow

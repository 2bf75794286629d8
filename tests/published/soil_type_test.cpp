// 29 CFR 1926 Subpart P App. A (b) (read): soil types of an excavation.
#include <gtest/gtest.h>

#include "burrow/pit/soil_type.h"

namespace burrow {
namespace {

constexpr double tsf_Pa = 95760.5179607036;

/// A clay that somebody looked at and found sound, with this unconfined strength.
SoilSeen sound_clay(double tsf) {
  SoilSeen seen;
  seen.matter = ExcavationMatter::cohesive;
  seen.unconfined_strength = Pressure{tsf * tsf_Pa};
  seen.fissured = seen.vibrated = seen.disturbed = seen.wet = false;
  return seen;
}

SoilSeen sound(ExcavationMatter matter) {
  SoilSeen seen = sound_clay(0);
  seen.matter = matter;
  seen.unconfined_strength.reset();
  return seen;
}

/// The type, when only one is left.
std::optional<ExcavationType> type_of(const SoilSeen& seen) {
  const TypeProposal proposal = propose_type(seen);
  return proposal.best == proposal.worst ? std::optional(proposal.best) : std::nullopt;
}

TEST(PublishedSoilType, Cfr1926_StrengthDecides) {
  EXPECT_EQ(type_of(sound_clay(1.5)), ExcavationType::a);
  EXPECT_EQ(type_of(sound_clay(1.49)), ExcavationType::b);
  EXPECT_EQ(type_of(sound_clay(0.51)), ExcavationType::b);
  EXPECT_EQ(type_of(sound_clay(0.5)), ExcavationType::c);
}

TEST(PublishedSoilType, Cfr1926_WhatDemotesAStrongClay) {
  SoilSeen seen = sound_clay(2);
  seen.fissured = true;
  EXPECT_EQ(type_of(seen), ExcavationType::b);
  seen = sound_clay(2);
  seen.vibrated = true;
  EXPECT_EQ(type_of(seen), ExcavationType::b);
  seen = sound_clay(1.8);
  seen.disturbed = true;
  EXPECT_EQ(type_of(seen), ExcavationType::b);
  seen = sound_clay(2);
  seen.wet = true;
  EXPECT_EQ(type_of(seen), ExcavationType::c);
  seen = sound_clay(2);
  seen.dip_run_per_rise = Ratio{3};  // steeper than 4H : 1V
  EXPECT_EQ(type_of(seen), ExcavationType::c);
  seen.dip_run_per_rise = Ratio{4};
  EXPECT_EQ(type_of(seen), ExcavationType::c);
  seen.dip_run_per_rise = Ratio{4.1};
  EXPECT_EQ(type_of(seen), ExcavationType::a);
}

TEST(PublishedSoilType, Cfr1926_ByKindOfSoil) {
  EXPECT_EQ(type_of(sound(ExcavationMatter::granular)), ExcavationType::c);
  EXPECT_EQ(type_of(sound(ExcavationMatter::silt)), ExcavationType::b);
  EXPECT_EQ(type_of(sound(ExcavationMatter::cemented)), ExcavationType::a);
  EXPECT_EQ(type_of(sound(ExcavationMatter::rock)), ExcavationType::stable_rock);
  EXPECT_EQ(type_of(sound(ExcavationMatter::broken_rock)), ExcavationType::b);
  SoilSeen wet = sound(ExcavationMatter::broken_rock);
  wet.wet = true;
  EXPECT_EQ(type_of(wet), ExcavationType::c);
}

}  // namespace
}  // namespace burrow

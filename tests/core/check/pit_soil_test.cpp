// Soil type proposed for the pits, slopes by layer, benches, upright parts, the roof over a sloped bore side.

#include <gtest/gtest.h>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// The clean crossing with pits 2 m deep.
Crossing deep_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{98.0 + 0.0325};
  crossing.site.utilities.front() = water_main(4, 96.0);
  return crossing;
}

// Firm clay, q_u = 2 × 40 kPa = 80 kPa: Type B (29 CFR 1926 Subpart P App. A, read); water far below, no sign looked
// for.
TEST(PitSoil, Proposed_ForTheClassSeen) {
  Crossing crossing = deep_crossing();
  Assessment answer = judged(crossing);
  ASSERT_EQ(answer.launch_pit_work.layers.size(), 1U);
  EXPECT_EQ(answer.launch_pit_work.proposed_best, ExcavationType::b);
  EXPECT_EQ(answer.launch_pit_work.proposed_worst, ExcavationType::b);
  EXPECT_EQ(answer.launch_pit_work.layers.front().type, ExcavationType::c);  // in force until somebody confirms
  crossing.site.strata.front().known.set(StratumEvidence::guess);            // strength not known: a set
  answer = judged(crossing);
  EXPECT_EQ(answer.launch_pit_work.proposed_best, ExcavationType::b);  // beside a road: shaken
  EXPECT_EQ(answer.launch_pit_work.proposed_worst, ExcavationType::c);
  crossing.site.surface.clear();
  EXPECT_EQ(judged(crossing).launch_pit_work.proposed_best, ExcavationType::a);
  crossing.site.water = LevelLine{{-8, 99}, {20, 99}};
  EXPECT_EQ(judged(crossing).launch_pit_work.proposed_best, ExcavationType::c);
}

TEST(PitSoil, BetterThanProposed_IsAStop_UnconfirmedACaution) {
  Crossing crossing = deep_crossing();
  crossing.pits.launch.soil_type = ExcavationType::b;
  Assessment answer = judged(crossing);
  EXPECT_FALSE(find(answer, "pit.soil-type"));
  ASSERT_TRUE(find(answer, "pit.soil-unconfirmed", "launch-pit")) << listed(answer);
  crossing.pits.launch.confirmed_by = "A. Muster";
  EXPECT_FALSE(find(judged(crossing), "pit.soil-unconfirmed"));
  crossing.pits.launch.soil_type = ExcavationType::a;
  answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.soil-type", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.soil-type")->severity, Severity::stop);
}

// An old trench in plan and depth: dug before.
TEST(PitSoil, OldTrench_DisturbsItsLayer) {
  Crossing crossing = deep_crossing();
  crossing.site.surface.clear();
  crossing.site.strata.front().values.undrained_strength = Pressure{100e3};
  crossing.pits.launch.signs.fissured = crossing.pits.launch.signs.vibrated = false;
  crossing.pits.launch.signs.disturbed = crossing.pits.launch.signs.seeping = false;
  EXPECT_EQ(judged(crossing).launch_pit_work.proposed_best, ExcavationType::a);
  Strip strip;
  strip.id = "s1";
  strip.soil = "trench-backfill";
  strip.outline = {{-2, -3}, {-1, -3}, {-1, 3}, {-2, 3}};
  strip.bottom_elevation = Length{98.5};
  crossing.site.strips = {strip};
  EXPECT_EQ(judged(crossing).launch_pit_work.proposed_best, ExcavationType::b);
  crossing.site.strips.front().outline = {{-22, -3}, {-21, -3}, {-21, 3}, {-22, 3}};
  EXPECT_EQ(judged(crossing).launch_pit_work.proposed_best, ExcavationType::a);
}

// 29 CFR 1926 Subpart P App. B: no benches in Type C (read); 4 ft at most (second-hand).
TEST(PitSoil, Benches) {
  Crossing crossing = deep_crossing();
  PitSide& side = crossing.pits.launch.sides.left;
  side.kind.set(SideKind::benched);
  side.benches = {{Length{1.2}, Length{2.4}, {}, ""}};
  EXPECT_TRUE(find(judged(crossing), "pit.bench-soil", "launch-pit"));
  crossing.pits.launch.soil_type = ExcavationType::b;
  crossing.pits.launch.confirmed_by = "A. Muster";
  EXPECT_FALSE(find(judged(crossing), "pit.bench-soil"));
  EXPECT_FALSE(find(judged(crossing), "pit.bench"));
  EXPECT_FALSE(find(judged(crossing), "pit.slope"));
  side.benches = {{Length{1.3}, Length{1.0}, {}, ""}};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.bench", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.bench")->limit, 4 * 0.3048, 1e-12);
  ASSERT_TRUE(find(answer, "pit.slope", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.slope")->measured, 1.0 / 2.0, 1e-9);  // of the ground edge
}

// Fig. B-1.1: Type A, unsupported, 3 1/2 ft upright to 8 ft deep (the half from memory); B and C need a support 18 in
// above the upright part (read).
TEST(PitSoil, UprightLowerPart) {
  Crossing crossing = deep_crossing();
  PitSide& side = crossing.pits.launch.sides.left;
  side.upright = Length{1.0};
  ASSERT_TRUE(find(judged(crossing), "pit.upright-part", "launch-pit"));
  EXPECT_EQ(*find(judged(crossing), "pit.upright-part")->limit, 0.0);
  side.support_top = Length{1.4};
  EXPECT_FALSE(find(judged(crossing), "pit.upright-part"));
  ASSERT_TRUE(find(judged(crossing), "pit.support-low", "launch-pit"));
  EXPECT_NEAR(*find(judged(crossing), "pit.support-low")->limit, 1.0 + 18 * 0.0254, 1e-12);
  side.support_top = Length{1.46};
  EXPECT_FALSE(find(judged(crossing), "pit.support-low"));
  side.support_top.reset();
  crossing.site.surface.clear();
  crossing.site.strata.front().values.undrained_strength = Pressure{100e3};
  crossing.pits.launch.soil_type = ExcavationType::a;
  EXPECT_TRUE(find(judged(crossing), "pit.upright-part"));  // nobody's word
  crossing.pits.launch.confirmed_by = "A. Muster";
  EXPECT_FALSE(find(judged(crossing), "pit.upright-part"));
  side.upright = Length{1.07};
  EXPECT_TRUE(find(judged(crossing), "pit.upright-part"));
}

// DIN 4124 as in DGUV Information 201-052 s. 4.2.3 (read): slopes without calculation to 5 m.
TEST(PitSoil, GermanSlopes_ToFiveMetres) {
  Crossing crossing = deep_crossing();
  crossing.pits.rules.set(ExcavationRules::din_4124);
  EXPECT_FALSE(find(judged(crossing), "pit.slope-depth"));
  crossing.pits.launch.floor_elevation = Length{94.9};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.slope-depth", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.slope-depth")->limit, 5, 1e-12);
  EXPECT_NEAR(*find(answer, "pit.slope-depth")->measured, 5.1, 1e-9);
}

// A 1 1/2 : 1 side of a 2 m pit takes the roof away over 3 m of bore.
TEST(PitSoil, SlopedBoreSide_SaysHowFarTheRoofIsMissing) {
  Crossing crossing = deep_crossing();
  crossing.pits.launch.sides.bore.kind.set(SideKind::sloped);
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "pit.bore-side-sloped", "launch-pit");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_NEAR(*finding->measured, 3.0, 1e-9);
  EXPECT_EQ(answer.launch_pit_work.roof_missing_m, finding->measured);
  EXPECT_EQ(finding_text(*finding, UnitSystem::metric),
            "bore side of launch pit is sloped: the roof is missing over the first 3.00 m of the bore");
}

}  // namespace
}  // namespace burrow::test

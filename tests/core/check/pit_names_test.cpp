// A name confirms the soil types that the facts leave open; it never beats one (29 CFR 1926 Subpart P App. A (b)(2),
// read: classified by a competent person from at least one look and one test by hand).

#include <gtest/gtest.h>

#include <functional>

#include "support/pit_for_tests.h"

namespace burrow::test {
namespace {

using enum ExcavationType;

// Loose sand, upright, 5 m deep, water 4 m above the floor, "stable rock" by whatever name.
TEST(PitNames, StableRockOnSeepingSand_IsAStop) {
  for (const ExcavationRules rules : {ExcavationRules::us_1926, ExcavationRules::din_4124})
    for (const char* name : {"A. Muster", "", " ", "-"}) {
      Crossing c = pit_in("loose-sand", 5, stable_rock, rules);
      c.pits.launch.confirmed_by = name;
      c.pits.launch.signs.seeping = true;
      c.site.water = LevelLine{{-8, 99}, {20, 99}};
      for (PitSide* side : {&c.pits.launch.sides.left, &c.pits.launch.sides.right}) side->kind.set(SideKind::upright);
      const Assessment answer = judged(c);
      EXPECT_EQ(answer.verdict, Verdict::stop);
      EXPECT_EQ(stops(c, "pit.unprotected"), 1) << name;
      EXPECT_EQ(stops(c, "pit.soil-type"), 1) << name;
      EXPECT_EQ(answer.launch_pit.soil_type, ExcavationType::c);
    }
}

// Type A typed on a guessed clay: type C until somebody confirms it.
TEST(PitNames, TypeAOnAGuess_CountsAsCUntilConfirmed) {
  Crossing c = pit_in("firm-clay", 3, a);
  c.site.strata.front().known.set(StratumEvidence::guess);
  c.pits.launch.sides.left = sloped(0.75);
  EXPECT_EQ(stops(c, "pit.slope"), 0) << listed(judged(c));
  for (const char* name : {"", " ", "--"}) {
    c.pits.launch.confirmed_by = name;
    const Assessment answer = judged(c);
    EXPECT_EQ(answer.launch_pit.soil_type, ExcavationType::c);
    EXPECT_EQ(stops(c, "pit.slope"), 1) << name;
    EXPECT_NEAR(*find(answer, "pit.slope", "launch-pit")->limit, 1.5, 1e-12);
    EXPECT_TRUE(find(answer, "pit.soil-unconfirmed", "launch-pit"));
    EXPECT_FALSE(answer.launch_pit_work.confirmed);
  }
  c.pits.launch.sides.left = sloped();  // left to the program: cut as in type C
  EXPECT_NEAR(judged(c).launch_pit.sides.left.run_at(1), 1.5, 1e-9);
  c.pits.launch.confirmed_by = "A. Muster";
  EXPECT_NEAR(judged(c).launch_pit.sides.left.run_at(1), 0.75, 1e-9);
}

// Each fact that rules type A out: the name stands, the type does not.
TEST(PitNames, EachFactBeatsTheName) {
  const std::pair<const char*, std::function<void(Crossing&)>> facts[] = {
      {"seen weaker", [](Crossing& c) { c.site.strata.front().soil = "firm-clay"; }},
      {"sand", [](Crossing& c) { c.site.strata.front().soil = "medium-sand"; }},
      {"fill", [](Crossing& c) { c.site.strata.front().soil = "made-ground"; }},
      {"strength measured", [](Crossing& c) { c.site.strata.front().values.undrained_strength = Pressure{60e3}; }},
      {"fissured", [](Crossing& c) { c.pits.launch.signs.fissured = true; }},
      {"joints", [](Crossing& c) { c.pits.launch.signs.joints = true; }},
      {"shaken", [](Crossing& c) { c.pits.launch.signs.vibrated = true; }},
      {"dug before", [](Crossing& c) { c.pits.launch.signs.disturbed = true; }},
      {"loose fill", [](Crossing& c) { c.pits.launch.signs.loose_fill = true; }},
      {"seeping", [](Crossing& c) { c.pits.launch.signs.seeping = true; }},
      {"water level",
       [](Crossing& c) {
         c.site.water = LevelLine{{-8, 98}, {20, 98}};
       }},
      {"dip", [](Crossing& c) { c.pits.launch.signs.dip_run_per_rise = Ratio{3}; }},
      {"old trench",
       [](Crossing& c) {
         Strip strip;
         strip.id = "s1";
         strip.soil = "trench-backfill";
         strip.outline = {{-2, -3}, {-1, -3}, {-1, 3}, {-2, 3}};
         strip.bottom_elevation = Length{98.5};
         c.site.strips = {strip};
       }},
      {"road beside, nobody looked", [](Crossing& c) {
         c.pits.launch.signs.vibrated.reset();
         c.site.surface = {lane(2, 6)};
       }}};
  Crossing sound = pit_in("hard-clay", 3, a);
  sound.pits.launch.sides.left = sloped(0.75);
  ASSERT_EQ(stops(sound, "pit.soil-type"), 0) << listed(judged(sound));
  ASSERT_EQ(stops(sound, "pit.slope"), 0);
  for (const auto& [what, happens] : facts) {
    Crossing c = sound;
    happens(c);
    EXPECT_EQ(stops(c, "pit.soil-type"), 1) << what;
    EXPECT_EQ(stops(c, "pit.slope"), 1) << what;
  }
}

// Rock by the facts, and a name to it: American rules leave it upright, German ones cut it back to 80°.
TEST(PitNames, RockThatIsRock) {
  Tables with_rock = tables();
  for (SoilClass& soil : with_rock.soils)
    if (soil.id == "weathered-rock") soil.matter = ExcavationMatter::rock;
  Crossing c = pit_in("weathered-rock", 3, stable_rock);
  c.pits.launch.sides.left.kind.set(SideKind::upright);
  const auto unprotected = [&] { return find(assess(c, with_rock), "pit.unprotected", "launch-pit") != nullptr; };
  EXPECT_FALSE(unprotected());
  c.pits.launch.confirmed_by.clear();
  EXPECT_TRUE(unprotected());
  c.pits.launch.confirmed_by = "A. Muster";
  c.pits.launch.signs.distress = true;
  EXPECT_TRUE(unprotected());
  c.pits.launch.signs.distress = false;
  c.pits.rules.set(ExcavationRules::din_4124);
  EXPECT_TRUE(unprotected());
}

}  // namespace
}  // namespace burrow::test

// Benches: the slope of the soil lies on the whole benched side (29 CFR 1926 Subpart P App. B as restated,
// second-hand); berms of DIN 4124 (second-hand).

#include <gtest/gtest.h>

#include "support/pit_for_tests.h"

namespace burrow::test {
namespace {

using enum ExcavationType;
constexpr double ft = 0.3048;
constexpr auto german = ExcavationRules::din_4124;

const Finding* slope_of(const Assessment& answer) {
  return find(answer, "pit.slope", "launch-pit");
}

// Type B, 8 ft, two steps of 4 ft: the edge 4 ft back is 1/2 : 1, 1 : 1 wanted; 8 ft back holds.
TEST(PitBenches, TypeB_EightFeet) {
  Crossing c = pit_in("firm-clay", 8 * ft, b);
  c.pits.launch.sides.left = benched({{4 * ft, 4 * ft}});
  const Assessment answer = judged(c);
  ASSERT_TRUE(slope_of(answer)) << listed(answer);
  EXPECT_EQ(slope_of(answer)->severity, Severity::stop);
  EXPECT_NEAR(*slope_of(answer)->measured, 0.5, 1e-9);
  EXPECT_NEAR(*slope_of(answer)->limit, 1.0, 1e-9);
  EXPECT_NEAR(input(*working(answer, "pit.slope", "launch-pit"), "r"), 4 * ft, 1e-9);
  EXPECT_NEAR(input(*working(answer, "pit.slope", "launch-pit"), "h"), 8 * ft, 1e-9);
  c.pits.launch.sides.left = benched({{4 * ft, 7.99 * ft}});
  EXPECT_TRUE(slope_of(judged(c)));
  c.pits.launch.sides.left = benched({{4 * ft, 8 * ft}});
  EXPECT_FALSE(slope_of(judged(c))) << listed(judged(c));
  EXPECT_FALSE(find(judged(c), "pit.bench"));
  EXPECT_FALSE(find(judged(c), "pit.bench-soil"));
}

// The program's own steps keep its own rule, at each depth and in each type; by the cut itself, where the ground is.
TEST(PitBenches, Own_EdgesLieOnTheSlope) {
  for (const auto& [soil, type, run] : {std::tuple{"firm-clay", b, 1.0}, std::tuple{"hard-clay", a, 0.75}})
    for (const double feet : {5.0, 6.5, 8.0, 9.0, 12.0, 15.9, 16.1, 20.0}) {
      Crossing c = pit_in(soil, feet * ft, type);
      c.pits.launch.sides.left = benched({});
      const Assessment answer = judged(c);
      EXPECT_FALSE(slope_of(answer)) << feet << listed(answer);
      EXPECT_FALSE(find(answer, "pit.bench")) << feet;
      const SideProfile& side = answer.launch_pit.sides.left;
      EXPECT_GE(side.run_at(feet * ft), run * feet * ft - 1e-9) << feet;
      EXPECT_EQ(side.run_at(4 * ft), 0);
    }
}

// Type A, 4 + 5 ft with treads of 3/4 of the step: the edge at 9 ft is 1/3 : 1, 3/4 : 1 wanted.
TEST(PitBenches, TypeA_FourAndFiveFeet) {
  Crossing c = pit_in("hard-clay", 9 * ft, a);
  c.pits.launch.sides.left = benched({{4 * ft, 3 * ft}, {5 * ft, 3.75 * ft}});
  const Assessment answer = judged(c);
  ASSERT_TRUE(slope_of(answer)) << listed(answer);
  EXPECT_NEAR(*slope_of(answer)->measured, 1.0 / 3, 1e-9);
  EXPECT_NEAR(*slope_of(answer)->limit, 0.75, 1e-9);
  c.pits.launch.sides.left = benched({{4 * ft, 6.75 * ft}, {5 * ft, 3.75 * ft}});
  EXPECT_FALSE(slope_of(judged(c)));
  EXPECT_FALSE(find(judged(c), "pit.bench"));
  c.pits.launch.floor_elevation = Length{100 - 14 * ft};  // the third step repeats the second
  EXPECT_FALSE(slope_of(judged(c)));
  c.pits.launch.sides.left = benched({{4 * ft, 6.75 * ft}, {5 * ft, 3.7 * ft}});
  EXPECT_TRUE(slope_of(judged(c)));
  c.pits.launch.sides.left = benched({{4 * ft, 6.75 * ft}, {5.01 * ft, 4 * ft}});
  EXPECT_TRUE(find(judged(c), "pit.bench", "launch-pit"));  // a later step of 5 ft at most
  c = pit_in("firm-clay", 9 * ft, b);
  c.pits.launch.sides.left = benched({{4 * ft, 9 * ft}, {5 * ft, 9 * ft}});
  EXPECT_TRUE(find(judged(c), "pit.bench", "launch-pit"));  // in type B 4 ft
}

// A step that is all of the side is upright ground, not a bench.
TEST(PitBenches, OneStepIsNoBench) {
  Crossing c = pit_in("hard-clay", 5 * ft, a);
  c.pits.launch.sides.left = benched({{5 * ft, 9}});
  EXPECT_EQ(stops(c, "pit.bench"), 1);
  EXPECT_EQ(stops(c, "pit.slope"), 1);
  c.pits.launch.sides.left = benched({{4 * ft, 0}, {4 * ft, 9}});  // nor are two without a tread between
  EXPECT_EQ(stops(c, "pit.slope"), 1);
  c.pits.launch.floor_elevation = Length{100 - 4 * ft};
  c.pits.launch.sides.left = benched({{4 * ft, 9}});
  EXPECT_EQ(stops(c, "pit.slope"), 0);  // less than 5 ft deep
  c.pits.launch.signs.distress = true;
  EXPECT_EQ(stops(c, "pit.slope"), 1);
}

// Ground that rises behind the pit: its edge lies higher than over the floor.
TEST(PitBenches, GroundThatRisesBehind) {
  Crossing c = pit_in("firm-clay", 8 * ft, b);
  c.pits.launch.sides.back = benched({{4 * ft, 8 * ft}, {4 * ft, 0}});
  EXPECT_EQ(stops(c, "pit.slope"), 0) << listed(judged(c));
  c.site.ground = {{-8, 101.2}, {-4.5, 101.2}, {-2.3, 100}, {20, 100}};
  EXPECT_EQ(stops(c, "pit.slope"), 1) << listed(judged(c));
}

TEST(PitBenches, ByLayers) {
  Crossing c = pit_in("firm-clay", 3, b);
  Stratum under = c.site.strata.front();
  under.id = "l2";
  under.soil = "hard-clay";
  under.top = LevelLine{{-8, 99}, {20, 99}};
  c.site.strata.push_back(under);
  c.pits.launch.soil_type = a;  // the upper clay is of type B: it counts as C
  c.pits.launch.sides.left = benched({});
  EXPECT_EQ(stops(c, "pit.soil-type"), 1);
  EXPECT_EQ(stops(c, "pit.bench-soil"), 1);
}

// A 4 m "bench" in sand, 4 m deep.
TEST(PitBenches, German_FourMetresInSand) {
  Crossing c = pit_in("medium-sand", 4, std::nullopt, german);
  c.pits.launch.sides.left = benched({{4, 4}});
  EXPECT_EQ(stops(c, "pit.bench"), 1);
  EXPECT_EQ(stops(c, "pit.slope"), 1);
  c.pits.launch.sides.left = benched({{3, 1.5}});  // upright faces stand by no angle
  EXPECT_EQ(stops(c, "pit.bench"), 0);
  EXPECT_EQ(stops(c, "pit.slope"), 1);
  c.pits.launch.sides.left = benched({{3, 1.5, 1.0}});
  EXPECT_EQ(stops(c, "pit.slope"), 0) << listed(judged(c));
  EXPECT_EQ(stops(c, "pit.bench-narrow"), 0);
  c.pits.launch.sides.left = benched({{3, 1.49, 1.0}});
  EXPECT_EQ(stops(c, "pit.bench-narrow"), 1);
  c.pits.launch.sides.left = benched({{3.01, 1.5, 1.0}});
  EXPECT_EQ(stops(c, "pit.bench"), 1);
  c.pits.launch.sides.left = benched({{3, 1.5, 0.99}});
  EXPECT_EQ(stops(c, "pit.slope"), 1);
}

TEST(PitBenches, German_OnlyWalkedOn) {
  Crossing c = pit_in("medium-sand", 4, std::nullopt, german);
  c.pits.launch.sides.left = benched({{2, 0.6, 1.0}});
  EXPECT_EQ(stops(c, "pit.bench-narrow"), 1);  // nobody said that it catches nothing
  c.pits.launch.sides.left.benches_only_walked = true;
  EXPECT_EQ(stops(c, "pit.bench-narrow"), 0);
  c.pits.launch.sides.left = benched({{2, 0.59, 1.0}});
  c.pits.launch.sides.left.benches_only_walked = true;
  EXPECT_EQ(stops(c, "pit.bench-narrow"), 1);
}

TEST(PitBenches, German_OwnStandByThemselves) {
  for (const double depth : {1.3, 2.9, 3.1, 4.9}) {
    Crossing c = pit_in("hard-clay", depth, a, german);
    c.pits.launch.sides.left = benched({});
    for (const char* code : {"pit.bench", "pit.bench-narrow", "pit.slope", "pit.bench-soil"})
      EXPECT_EQ(stops(c, code), 0) << depth << listed(judged(c));
    EXPECT_NEAR(judged(c).launch_pit.sides.left.run_at(1.0), 1 / std::tan(60 * pi / 180), 1e-5);
  }
}

}  // namespace
}  // namespace burrow::test

// Pits: protection, slopes, the bore side, depth, water.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double a = 0.065 / 2;

// 29 CFR 1926.652(a)(1): protection from 5 ft (read); floor = axis − a, so depth = 1.40 + a here.
TEST(Pits, UprightAndBare_FromFiveFeet) {
  for (const double depth : {1.523, 1.524, 2.0}) {
    Crossing crossing = clean_crossing();
    crossing.bore.launch.elevation = Length{100 - depth + a};
    EXPECT_FALSE(find(judged(crossing), "pit.unprotected", "launch-pit"));
    crossing.pits.launch.sides.left.kind.set(SideKind::upright);
    const Assessment answer = judged(crossing);
    EXPECT_NEAR(answer.launch_pit.depth_m, depth, 1e-9);
    const Finding* bare = find(answer, "pit.unprotected", "launch-pit");
    EXPECT_EQ(bare != nullptr, depth > 1.5239) << depth << listed(answer);
    if (bare) {
      EXPECT_EQ(bare->severity, Severity::stop);
    }
    crossing.pits.launch.signs.distress = true;  // less deep with any sign of cave-in
    EXPECT_TRUE(find(judged(crossing), "pit.unprotected", "launch-pit")) << depth;
    crossing.pits.launch.sides.left.kind.set(SideKind::shored);
    EXPECT_FALSE(find(judged(crossing), "pit.unprotected", "launch-pit")) << depth;
  }
}

// 29 CFR 1926 Subpart P App. B Table B-1: Type C 1 1/2 : 1, Type B 1 : 1 (read).
TEST(Pits, SlopeSteeperThanItsSoil_IsAStop) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{98.2};
  crossing.pits.launch.sides.left.run_per_rise = Ratio{1.5};
  EXPECT_FALSE(find(judged(crossing), "pit.slope"));
  crossing.pits.launch.sides.left.run_per_rise = Ratio{1.2};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.slope", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.slope")->severity, Severity::stop);
  EXPECT_NEAR(*find(answer, "pit.slope")->limit, 1.5, 1e-12);
  crossing.pits.launch.soil_type = ExcavationType::b;
  EXPECT_TRUE(find(judged(crossing), "pit.slope"));  // nobody has put a name to it
  crossing.pits.launch.confirmed_by = "A. Muster";
  EXPECT_FALSE(find(judged(crossing), "pit.slope"));
}

TEST(Pits, SlopedBoreSide_IsACaution) {
  Crossing crossing = clean_crossing();
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.bore-side-sloped", "exit-pit")) << listed(answer);
  EXPECT_FALSE(find(answer, "pit.bore-side-sloped", "launch-pit"));
  EXPECT_EQ(answer.verdict, Verdict::caution);
}

// 29 CFR 1926 Subpart P: 20 ft = 6.096 m without an engineer's design (read).
TEST(Pits, DeeperThan20Feet_IsAStop) {
  Crossing crossing = clean_crossing();
  crossing.site.utilities.clear();
  crossing.site.utility_search.none_found.set(true);
  crossing.bore.launch.elevation = Length{100 - 6.09 + a};
  EXPECT_FALSE(find(judged(crossing), "pit.depth", "launch-pit"));
  crossing.bore.launch.elevation = Length{100 - 6.10 + a};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.depth", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.depth", "launch-pit")->measured, 6.10, 1e-9);
}

TEST(Pits, FloorBelowWater_IsACautionWithItsHead) {
  Crossing crossing = clean_crossing();
  crossing.site.water = LevelLine{{-8, 99.4}, {20, 97.0}};
  const Assessment answer = judged(crossing);
  const Finding* water = find(answer, "pit.water", "launch-pit");
  ASSERT_TRUE(water) << listed(answer);
  EXPECT_EQ(water->severity, Severity::caution);
  const double middle = -(1.19125 + 1.0) / 2;
  const double level = 99.4 + (middle + 8) / 28 * (97.0 - 99.4);
  EXPECT_NEAR(*water->measured, level - (98.60 - a), 1e-9);
  crossing.pits.launch.sump_depth.set(Length{0.3});
  EXPECT_NEAR(*find(judged(crossing), "pit.water", "launch-pit")->measured, *water->measured + 0.3, 1e-9);
}

}  // namespace
}  // namespace burrow::test

// One error tried: what it comes to along the bore.
#include "burrow/practice/try_error.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

// Derived: with c = 0 a level error of δ misses by x tan δ, a sight error likewise.
TEST(TryError, Derived_StraightMissGrowsWithLength) {
  Crossing crossing = clean_crossing();
  crossing.bore.model.steer_constant.set(Ratio{0});
  const TryErrorAnswer answer = try_error(crossing, tables(), {0.01, -0.02, 0, "", ""});
  ASSERT_TRUE(answer.reaches);
  for (const MissPoint& p : answer.points) {
    EXPECT_NEAR(p.up_m, p.station_m * std::tan(0.01) / std::cos(0.02), 1e-9);
    EXPECT_NEAR(p.left_m, -p.station_m * std::tan(0.02), 1e-9);
  }
}

// Second route: nothing wrong is the path of the assessment, away from its own aimed line; another soil is that of a
// crossing drawn so.
TEST(TryError, Assessment_SameSag) {
  Crossing crossing = clean_crossing();
  const TryErrorAnswer same = try_error(crossing, tables(), {});
  EXPECT_NEAR(same.points.back().up_m, *judged(crossing).arrival.elevation_m - 98.6, 1e-9);
  const TryErrorAnswer soft = try_error(crossing, tables(), {0, 0, 0.3, "soft-clay", "tool-95"});
  crossing.site.strata[0].soil = "soft-clay";
  crossing.bore.tool.tool_class = "tool-95";
  crossing.bore.launch.elevation = Length{98.3};
  EXPECT_NEAR(soft.points.back().up_m, *judged(crossing).arrival.elevation_m - 98.3, 1e-9);
}

// Too shallow in loose sand it climbs out; a launch above the ground has no path.
TEST(TryError, Daylight_SaysWhere) {
  const TryErrorAnswer out = try_error(clean_crossing(), tables(), {0.15, 0, -1.2, "loose-sand", ""});
  EXPECT_FALSE(out.reaches);
  ASSERT_TRUE(out.ends_station_m);
  EXPECT_LT(*out.ends_station_m, 8);
  EXPECT_TRUE(try_error(clean_crossing(), tables(), {0, 0, -5, "", ""}).points.empty());
}

// Second route: the crossing that is kept, assessed, is the path that was tried; nothing tried is the crossing itself.
TEST(TryError, Kept_IsWhatWasTried) {
  const Crossing crossing = clean_crossing();
  EXPECT_EQ(with_error(crossing, tables(), {}), crossing);
  const TryError error{0.5 * pi / 180, -0.01, 0.2, "soft-clay", "tool-95"};
  const TryErrorAnswer tried = try_error(crossing, tables(), error);
  const Crossing kept = with_error(crossing, tables(), error);
  const Assessment assessed = judged(kept);
  ASSERT_EQ(assessed.bore.points.size(), tried.path.points.size());
  EXPECT_NEAR(assessed.bore.points.back().z_m, tried.path.points.back().z_m, 1e-9);
  EXPECT_NEAR(assessed.bore.points.back().y_m, tried.path.points.back().y_m, 1e-9);
}

// A soil that was only tried is a guess, whatever was known of the one that was drawn.
TEST(TryError, Kept_SoilIsAGuess) {
  Crossing crossing = clean_crossing();
  for (Stratum& stratum : crossing.site.strata) stratum.known.set(StratumEvidence::seen);
  const Crossing kept = with_error(crossing, tables(), {0, 0, 0, "dense-sand", ""});
  for (const Stratum& stratum : kept.site.strata) EXPECT_EQ(stratum.known.value, StratumEvidence::guess);
}

// What somebody locked is tried, but not kept.
TEST(TryError, Locked_IsNamed_OnlyWhereItWouldChange) {
  Crossing crossing = clean_crossing();
  const TryError all{0.01, 0.01, 0.1, "soft-clay", "tool-95"};
  EXPECT_FALSE(locked_against(crossing, all));
  crossing.locks = {"/bore/launch"};
  EXPECT_EQ(locked_against(crossing, all), "/bore/launch/grade");
  EXPECT_FALSE(locked_against(crossing, {0, 0, 0, "soft-clay", "tool-95"}));
  crossing.locks = {"/bore/launch/elevation_m"};
  EXPECT_FALSE(locked_against(crossing, {0.01, 0.01, 0, "", ""}));
  EXPECT_EQ(locked_against(crossing, {0, 0, 0.1, "", ""}), "/bore/launch/elevation_m");
  crossing.locks = {"/bore/tool", "/site/strata"};
  EXPECT_EQ(locked_against(crossing, {0, 0, 0, "", "tool-95"}), "/bore/tool");
  EXPECT_EQ(locked_against(crossing, {0, 0, 0, "soft-clay", ""}), "/site/strata/" + crossing.site.strata[0].id);
}

// Derived: straight, half a degree over 12.6 m is 12.6 tan 0.5° = 0.110 m; both of equal length end together.
TEST(TryError, MissBetween_HalfADegreeIsElevenCentimetres) {
  Crossing crossing = clean_crossing();
  crossing.bore.model.steer_constant.set(Ratio{0});
  crossing.bore.launch.grade.v = 0;
  crossing.bore.exit.station.m = crossing.bore.launch.station.m + 12.6;
  const BorePath plan = try_error(crossing, tables(), {}).path;
  const auto miss = miss_between(plan, try_error(crossing, tables(), {0.5 * pi / 180, 0, 0, "", ""}).path);
  ASSERT_TRUE(miss);
  EXPECT_NEAR(miss->planned.x_m, crossing.bore.exit.station.m, 1e-9);
  EXPECT_NEAR(miss->up_m(), 12.6 * std::tan(0.5 * pi / 180), 1e-9);
  EXPECT_NEAR(miss->up_m(), 0.110, 0.0005);
  EXPECT_NEAR(miss->left_m(), 0, 1e-9);
  EXPECT_FALSE(miss_between(plan, {}));
}

// One that comes out of the ground is compared where it does.
TEST(TryError, MissBetween_EndsWithTheShorter) {
  const Crossing crossing = clean_crossing();
  const BorePath plan = try_error(crossing, tables(), {}).path;
  const TryErrorAnswer out = try_error(crossing, tables(), {0.15, 0, -1.2, "loose-sand", ""});
  const auto miss = miss_between(plan, out.path);
  ASSERT_TRUE(miss);
  EXPECT_NEAR(miss->planned.x_m, *out.ends_station_m, 1e-9);
  EXPECT_GT(miss->up_m(), 0.5);
}

// Rule of thumb of the trade: 1 mm on a level of 1.2 m is about 12 mm at 14 m (common practice, no source).
TEST(TryError, Thumb_OneMillimetreOnTheLevel) {
  EXPECT_NEAR(thumb_off_m(0.001, 1.2, 14), 0.0117, 0.0001);
  EXPECT_NEAR(thumb_off_m(0.0254 / 16, 1.2192, 14), 14 * 0.0254 / 16 / 1.2192, 1e-12);
}

}  // namespace
}  // namespace burrow::test

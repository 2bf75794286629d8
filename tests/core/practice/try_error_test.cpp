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

}  // namespace
}  // namespace burrow::test

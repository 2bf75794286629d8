// What the crew sets, by hand calculation; small errors by a second route.
#include "burrow/bore/launch_setup.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/classes_for_tests.h"

namespace burrow {
namespace {

Tool tool_65() {
  ToolChoice choice;
  choice.diameter = Length{0.065};
  choice.length = Length{1.2};
  return resolve_tool(choice, {});
}

Bore level_bore(double length, double grade = 0, double heading = 0) {
  Bore bore;
  bore.launch.elevation = {-1.5};
  bore.launch.grade = {grade};
  bore.launch.heading.set(Angle{heading});
  bore.exit.station = {length};
  return bore;
}

Ground clay() {
  return Ground::uniform(for_tests::soil("firm-clay"));
}

// By hand: 2 % is 1.1458°, and 1.2 m of body rise 23.995 mm.
TEST(LaunchSetup, Grade_ThreeReadings) {
  const GradeReadings up = grade_readings(level_bore(10, 0.02).launch, tool_65());
  EXPECT_NEAR(up.inclination.rad * 180 / pi, 1.1458, 5e-5);
  EXPECT_NEAR(up.rise.m, 0.023995, 5e-7);
  EXPECT_EQ(up.grade.v, 0.02);
  EXPECT_EQ(grade_readings(level_bore(10, -0.02).launch, tool_65()).rise.m, -up.rise.m);
  EXPECT_EQ(grade_readings(level_bore(10).launch, tool_65()).rise.m, 0);
}

TEST(LaunchSetup, Stake_OffsetOfTheHeading) {
  Launch launch = level_bore(10, 0, 1 * pi / 180).launch;
  EXPECT_FALSE(stake_offset(launch));
  launch.sight_base = Length{20};
  EXPECT_NEAR(stake_offset(launch)->m, 0.349101, 5e-7);  // 20 m · tan 1°
  launch.heading.set(Angle{0});
  EXPECT_EQ(stake_offset(launch)->m, 0);
}

// Limit: level, the underside is a radius below the axis everywhere; on 10 % the cradle rises toward the face.
TEST(LaunchSetup, Cradle_FrontThird) {
  const CradleSetup level = cradle_setup(level_bore(10).launch, tool_65(), Length{-1.7});
  EXPECT_NEAR(level.front_third.station.m, -0.4, 1e-12);
  for (const CradlePoint& p : {level.nose, level.front_third, level.tail}) {
    EXPECT_NEAR(p.elevation.m, -1.5325, 1e-12);
    EXPECT_NEAR(p.above_floor.m, 0.1675, 1e-12);
  }
  const CradleSetup steep = cradle_setup(level_bore(10, 0.1).launch, tool_65(), Length{-1.7});
  EXPECT_NEAR((steep.nose.elevation.m - steep.tail.elevation.m) / (steep.nose.station.m - steep.tail.station.m), 0.1,
              1e-12);
  const double run = steep.nose.station.m - steep.tail.station.m,
               rise = steep.nose.elevation.m - steep.tail.elevation.m;
  EXPECT_NEAR(std::hypot(run, rise), 1.2, 1e-12);
  EXPECT_NEAR((steep.nose.station.m - steep.front_third.station.m) / run, 1.0 / 3, 1e-12);
}

// Limit c = 0: straight lines. By hand on 12 m level: 1 mm over 1.2 m is 10 mm, 1 % 120 mm, 1° 209.5 mm; 1 mm at a
// stake 20 m off is 0.6 mm.
TEST(LaunchSetup, Errors_StraightWithoutSteering) {
  Bore bore = level_bore(12);
  bore.model.steer_constant.set(Ratio{0});
  bore.launch.sight_base = Length{20};
  const ErrorsAtExit errors = errors_at_exit(clay(), tool_65(), bore);
  EXPECT_TRUE(errors.reaches);
  EXPECT_NEAR(errors.level_1mm.up_m, 0.010, 1e-7);
  EXPECT_NEAR(errors.level_1_percent.up_m, 0.120, 1e-6);
  EXPECT_NEAR(errors.level_1_degree.up_m, 12 * pi / 180, 1e-6);
  EXPECT_NEAR(errors.heading_1_degree.left_m, 12 * pi / 180, 1e-6);
  ASSERT_TRUE(errors.stake_1mm);
  EXPECT_NEAR(errors.stake_1mm->left_m, 0.0006, 1e-8);
  EXPECT_NEAR(errors.stake_1mm->up_m, 0, 1e-12);
  EXPECT_NEAR(errors.straight_run_m, 12, 1e-12);
}

// Second route: in unstable ground (dense sand above its neutral cover) an error grows beyond the straight line, as the
// path's own sensitivity in `Spread` says: the level's share of the variance at the exit.
TEST(LaunchSetup, Errors_GrowAsTheSpreadOfTheLevel) {
  const Ground ground = Ground::uniform(for_tests::soil("dense-sand"));
  Bore bore = level_bore(12);
  const ErrorsAtExit errors = errors_at_exit(ground, tool_65(), bore);
  bore.model.steer_constant_sd.set(Ratio{0});
  bore.launch.position_sd.set(Length{0});
  bore.launch.level_sd.set(Angle{0});
  const double without = predict_path(ground, tool_65(), bore).points.back().sd_vertical_m;
  bore.launch.level_sd.set(Angle{0.001});
  const double with = predict_path(ground, tool_65(), bore).points.back().sd_vertical_m;
  const double one_mrad = std::sqrt(with * with - without * without);
  EXPECT_NEAR(errors.level_1_degree.up_m / (pi / 180), one_mrad / 0.001, 0.02 * one_mrad / 0.001);
  EXPECT_GT(errors.level_1_degree.up_m, 12 * pi / 180);
}

// A bore that comes up before the exit: straight lines, and said so.
TEST(LaunchSetup, Errors_PathThatDoesNotReachTheExit) {
  Bore bore = level_bore(40, 0.1);
  const ErrorsAtExit errors = errors_at_exit(clay(), tool_65(), bore);
  EXPECT_FALSE(errors.reaches);
  EXPECT_NEAR(errors.level_1_percent.up_m, 0.4, 1e-9);
  EXPECT_FALSE(errors.stake_1mm);
}

}  // namespace
}  // namespace burrow

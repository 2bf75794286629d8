#include "burrow/pit/pit_shapes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace burrow {
namespace {

Tables tables() {
  Tables t;
  ExcavationRuleSet rules;
  rules.name = "rules";
  rules.slopes = {{ExcavationType::b, {1.0}, {6.1}, {}}, {ExcavationType::c, {1.5}, {6.1}, {}}};
  t.excavation.push_back(rules);
  return t;
}

Crossing crossing() {
  Crossing c;
  c.site.ground = {{-10, 102}, {30, 102}};
  c.bore.launch.station = Length{0};
  c.bore.launch.elevation = Length{101};
  c.bore.exit.station = Length{14};
  for (Pit* pit : {&c.pits.launch, &c.pits.exit})
    for (PitSide* side : {&pit->sides.back, &pit->sides.left, &pit->sides.right}) side->kind.set(SideKind::sloped);
  return c;
}

Tool tool() {
  Tool t;
  t.diameter = Length{0.065};
  t.length = Length{1.19};
  return t;
}

BorePath arriving(double y, double z, double sd_lateral, double sd_vertical) {
  BorePath path;
  PathPoint last;
  last.x_m = 14;
  last.y_m = y;
  last.z_m = z;
  last.sd_lateral_m = sd_lateral;
  last.sd_vertical_m = sd_vertical;
  path.points = {PathPoint{}, last};
  return path;
}

TEST(LaunchPit, Proposed_FloorBehindTheFace) {
  const PitShape pit = launch_pit_shape(crossing(), tool(), tables());
  EXPECT_NEAR(pit.floor_to_m, 0, 1e-12);
  EXPECT_NEAR(pit.floor_length_m, 2.19, 1e-12);
  EXPECT_NEAR(pit.floor_width_m, 0.9, 1e-12);  // 0.865 < 0.9
  EXPECT_NEAR(pit.floor_elevation_m, 101 - 0.0325, 1e-12);
  EXPECT_NEAR(pit.depth_m, 1.0325, 1e-12);
  EXPECT_EQ(pit.soil_type, ExcavationType::c);
  EXPECT_NEAR(pit.top_length_m, 2.19 + 1.5 * 1.0325, 1e-9);  // shored at the bore, Type C behind
  EXPECT_NEAR(pit.top_width_m, 0.9 + 3 * 1.0325, 1e-9);
}

// A pipe that is pushed in lies behind the face in pieces.
// DIN 4124 as in BG BAU H 906 (read): 1.00 m wide deeper than 4.00 m.
TEST(LaunchPit, Deep_IsAMetreWide) {
  Crossing c = crossing();
  const double ground = elevation_at(c.site.ground, c.bore.launch.station.m);
  c.bore.launch.elevation = Length{ground - 3.0};
  EXPECT_DOUBLE_EQ(launch_floor_wanted(c, tool()).width.m, 0.9);
  c.bore.launch.elevation = Length{ground - 4.2};
  EXPECT_DOUBLE_EQ(launch_floor_wanted(c, tool()).width.m, 1.0);
  EXPECT_DOUBLE_EQ(exit_floor_wanted(c, tool(), {0, ground - 4.2, 0.01, 0.01}, Length{0}).width.m, 1.0);
}

TEST(LaunchPit, PushedPipe_LongestPieceFits) {
  Crossing c = crossing();
  c.pipe = Pipe{};
  c.pipe->piece_length = Length{3.0};
  EXPECT_NEAR(launch_pit_shape(c, tool(), tables()).floor_length_m, 2.19, 1e-12);  // drawn in from the other end
  c.pipe->insertion.set(Insertion::pushed);
  EXPECT_NEAR(launch_pit_shape(c, tool(), tables()).floor_length_m, 4.0, 1e-12);
  c.pipe->piece_length = Length{1.0};
  EXPECT_NEAR(launch_pit_shape(c, tool(), tables()).floor_length_m, 2.19, 1e-12);
  c.pipe->piece_length.reset();  // from a coil
  EXPECT_NEAR(launch_pit_shape(c, tool(), tables()).floor_length_m, 2.19, 1e-12);
}

TEST(LaunchPit, Typed_Wins) {
  Crossing c = crossing();
  Pit& pit = c.pits.launch;
  pit.floor_length = Length{3.0};
  pit.floor_width = Length{1.4};
  pit.floor_offset = Length{0.2};
  pit.soil_type = ExcavationType::b;
  pit.confirmed_by = "A. Muster";
  pit.cradle_height.set(Length{0.1});
  pit.slab_thickness.set(Length{0.05});
  const PitShape shape = launch_pit_shape(c, tool(), tables());
  EXPECT_NEAR(shape.floor_from_m, -3.0, 1e-12);
  EXPECT_NEAR(shape.floor_right_m, -0.5, 1e-12);
  EXPECT_NEAR(shape.floor_left_m, 0.9, 1e-12);
  EXPECT_NEAR(shape.floor_elevation_m, 101 - 0.0325 - 0.15, 1e-12);
  EXPECT_NEAR(shape.top_width_m, 1.4 + 2 * shape.depth_m, 1e-9);
  pit.floor_elevation = Length{100.5};
  EXPECT_NEAR(launch_pit_shape(c, tool(), tables()).floor_elevation_m, 100.5, 1e-12);
}

TEST(ExitPit, TakesInTheBand) {
  const PitShape pit = exit_pit_shape(crossing(), tool(), tables(), arriving(0.1, 100.8, 0.3, 0.2));
  EXPECT_NEAR(pit.floor_from_m, 14, 1e-12);
  EXPECT_NEAR(pit.floor_elevation_m, 100.8 - 1.645 * 0.2 - 0.0325 - 0.1, 1e-12);
  EXPECT_NEAR(pit.floor_width_m, 2 * (1.645 * 0.3 + 0.0325 + 0.1), 1e-12);
  EXPECT_NEAR((pit.floor_left_m + pit.floor_right_m) / 2, 0.1, 1e-12);
  EXPECT_NEAR(pit.floor_length_m, 2.19, 1e-12);
}

TEST(ExitPit, EnteredOffset_StaysAndStillTakesInTheBand) {
  Crossing c = crossing();
  c.bore.exit.offset.set(Length{0});
  const PitShape pit = exit_pit_shape(c, tool(), tables(), arriving(0.5, 100.8, 0.1, 0.1));
  EXPECT_NEAR((pit.floor_left_m + pit.floor_right_m) / 2, 0, 1e-12);
  EXPECT_NEAR(pit.floor_left_m, 0.5 + 1.645 * 0.1 + 0.0325 + 0.1, 1e-12);
}

// Never wider than the limit of the tables, or the one typed for the crossing; a typed width wins.
TEST(ExitPit, NeverProposedWiderThanTheLimit) {
  Crossing c = crossing();
  c.bore.exit.offset.set(Length{5});
  Tables t = tables();
  t.limits.push_back({"exit_widest_m", "", 3.0, "m", false, {}});
  const BorePath path = arriving(0, 100.8, 0.1, 0.1);
  EXPECT_NEAR(exit_pit_shape(c, tool(), t, path).floor_width_m, 3.0, 1e-12);
  EXPECT_NEAR(exit_floor_wanted(c, tool(), expected_arrival(c, path), Length{5}).width.m,
              2 * (5 + 1.645 * 0.1 + 0.0325 + 0.1), 1e-12);
  c.limits["exit_widest_m"].value = 4.0;
  EXPECT_NEAR(exit_pit_shape(c, tool(), t, path).floor_width_m, 4.0, 1e-12);
  c.limits["exit_widest_m"].value = -1;
  EXPECT_NEAR(exit_pit_shape(c, tool(), t, path).floor_width_m, 0.9, 1e-12);
  c.pits.exit.floor_width = Length{7};
  EXPECT_NEAR(exit_pit_shape(c, tool(), t, path).floor_width_m, 7.0, 1e-12);
}

TEST(ExitPit, NoArrival_StraightLaunchLine) {
  Crossing c = crossing();
  c.bore.launch.grade = Ratio{-0.02};
  BorePath path = arriving(0, 101.9, 0.05, 0.05);
  path.ends = PathEnd::daylight;
  const PitShape pit = exit_pit_shape(c, tool(), tables(), path);
  EXPECT_NEAR(pit.axis_elevation_m, 101 - 0.28, 1e-12);
  const double sd = std::hypot(0.005, 0.005 * 14);
  EXPECT_NEAR(pit.floor_elevation_m, 100.72 - 1.645 * sd - 0.1325, 1e-12);
}

TEST(PitPlan, NoGroundLine_NoBody) {
  Crossing c = crossing();
  c.site.ground.clear();
  const PitShape pit = launch_pit_shape(c, tool(), tables());
  EXPECT_EQ(pit.volume_m3, 0);
  EXPECT_TRUE(pit.footprint.empty());
}

// Points far from a pit say nothing about it: everything stays as it is without them, to the last bit.
TEST(PitPlan, SurveyedPointsFarOff_ChangeNothing) {
  Crossing c = crossing();
  const PitShape without = launch_pit_shape(c, tool(), tables());
  c.site.ground_points = {{14, 3, 103}, {20, -6, 99}};
  EXPECT_EQ(launch_pit_shape(c, tool(), tables()), without);
  c.site.ground_points.push_back({-1, 0.005, 140});  // on the line, where the line counts
  EXPECT_EQ(launch_pit_shape(c, tool(), tables()), without);
}

// Ground that rises to the left by 1 in 10: the line is the same, the pit is deeper at its left side and wider there.
TEST(PitPlan, SurveyedPointsNear_GroundAcross) {
  Crossing c = crossing();
  const PitShape level = launch_pit_shape(c, tool(), tables());
  for (const double x : {-12.0, -4.0, 4.0, 12.0})
    for (const double y : {-9.0, 9.0}) c.site.ground_points.push_back({x, y, 102 + 0.1 * y});
  const PitShape pit = launch_pit_shape(c, tool(), tables());
  EXPECT_TRUE(pit.ground.surveyed());
  EXPECT_NEAR(pit.depth_m, level.depth_m + 0.045, 1e-6);
  double left = 0, right = 0;
  for (const PlanPoint& p : pit.footprint) {
    left = std::max(left, p.y_m);
    right = std::min(right, p.y_m);
  }
  // 1.5 : 1 against a slope of 0.1 up, and with it down.
  EXPECT_NEAR(left - 0.45, 1.5 * (1.0325 + 0.045) / (1 - 0.15), 1e-6);
  EXPECT_NEAR(-0.45 - right, 1.5 * (1.0325 - 0.045) / (1 + 0.15), 1e-6);
  EXPECT_GT(pit.volume_m3, level.volume_m3);
  EXPECT_NEAR(pit.top_length_m, level.top_length_m, 0.5);
  EXPECT_EQ(pit.layers.front().volume_m3, pit.volume_m3);
  ASSERT_EQ(pit.section.size(), level.section.size()) << "along the line nothing changes";
  for (std::size_t i = 0; i < pit.section.size(); ++i) {
    EXPECT_NEAR(pit.section[i].station_m, level.section[i].station_m, 1e-9);
    EXPECT_NEAR(pit.section[i].elevation_m, level.section[i].elevation_m, 1e-9);
  }
  // The surface made before is taken, or made again where it does not fit; either way the same pit.
  EXPECT_EQ(launch_pit_shape(c, tool(), tables(), SiteSurface(c.site, pit.ground)), pit);
  EXPECT_EQ(launch_pit_shape(c, tool(), tables(), SiteSurface(c.site, GroundSurface({{0, 5}}, {{1, 1, 7}}))), pit);
}

// An outline instead of length and width, from the face on, about the middle of the floor, either way round.
TEST(PitPlan, FloorOutline_LiesAtTheFace) {
  Crossing c = crossing();
  const PlanLine l_shape{{0, -0.5}, {0, 0.5}, {1.5, 0.5}, {1.5, 1.4}, {3, 1.4}, {3, -0.5}};
  c.pits.launch.floor_outline = c.pits.exit.floor_outline = l_shape;
  c.pits.launch.floor_offset = Length{0.2};
  const PitShape launch = launch_pit_shape(c, tool(), tables());
  EXPECT_TRUE(launch.outlined);
  EXPECT_NEAR(launch.floor_from_m, -3, 1e-12);
  EXPECT_NEAR(launch.floor_to_m, 0, 1e-12);
  EXPECT_NEAR(launch.floor_right_m, -0.3, 1e-12);
  EXPECT_NEAR(launch.floor_left_m, 1.6, 1e-12);
  EXPECT_TRUE(inside(launch.floor, -2.9, 1.5));
  EXPECT_FALSE(inside(launch.floor, -1.4, 1.0));
  for (PitSide* side :
       {&c.pits.launch.sides.bore, &c.pits.launch.sides.back, &c.pits.launch.sides.left, &c.pits.launch.sides.right})
    *side = shored_side();
  const PitShape box = launch_pit_shape(c, tool(), tables());
  EXPECT_NEAR(box.volume_m3, (3 * 1 + 1.5 * 0.9) * 1.0325, 1e-8);
  std::reverse(c.pits.launch.floor_outline.begin(), c.pits.launch.floor_outline.end());
  EXPECT_NEAR(launch_pit_shape(c, tool(), tables()).volume_m3, box.volume_m3, 1e-9);
  const PitShape exit = exit_pit_shape(c, tool(), tables(), arriving(0, 100.8, 0.05, 0.05));
  EXPECT_NEAR(exit.floor_from_m, 14, 1e-12);
  EXPECT_NEAR(exit.floor_to_m, 17, 1e-12);
  // Only what of the floor lies against the face lets the tool in: 1 m of the 1.9 m.
  const ExitOpening opening = exit_opening(exit, Length{102});
  EXPECT_NEAR(opening.left_m - opening.right_m, 1.0, 1e-9);
}

// One that crosses itself can come by no reader; the rectangle stands in for it.
TEST(PitPlan, FloorOutlineWithAFault_IsTheRectangle) {
  Crossing c = crossing();
  const PitShape rectangle = launch_pit_shape(c, tool(), tables());
  c.pits.launch.floor_outline = {{0, 0}, {2, 1}, {2, 0}, {0, 1}};
  EXPECT_EQ(launch_pit_shape(c, tool(), tables()), rectangle);
}

PitShape window(double width, double floor) {
  PitShape pit;
  pit.floor_right_m = -width / 2;
  pit.floor_left_m = width / 2;
  pit.floor_elevation_m = floor;
  return pit;
}

// Limit: half the chance lies on either side of the mean.
TEST(ExitWindow, HalvesAndCorners) {
  EXPECT_NEAR(chance_inside(window(100, 99.9), {0, 100, 0.1, 0.1}, {200}), 0.5, 1e-12);
  EXPECT_NEAR(chance_inside(window(100, 99.9), {50, 100, 0.1, 0.1}, {200}), 0.25, 1e-12);
  EXPECT_EQ(chance_inside(window(1, 99), {0, 100, 0, 0}, {102}), 1);
  EXPECT_EQ(chance_inside(window(1, 99), {0.6, 100, 0, 0}, {102}), 0);
  EXPECT_EQ(chance_inside(window(1, 101.95), {0, 100, 0.1, 0.1}, {102}), 0);  // no window at all
}

// Second route: seeded Monte Carlo, 4 standard errors.
TEST(ExitWindow, MonteCarlo) {
  std::mt19937_64 random(4);
  std::normal_distribution<double> normal;
  int in = 0;
  const int n = 200000;
  for (int i = 0; i < n; ++i) {
    const double y = 0.1 + 0.35 * normal(random), z = 100.4 + 0.3 * normal(random);
    in += std::abs(y) < 0.45 && z > 100.1 && z < 101.5;
  }
  const double p = chance_inside(window(0.9, 100), {0.1, 100.4, 0.35, 0.3}, {101.5});
  EXPECT_NEAR(static_cast<double>(in) / n, p, 4 * std::sqrt(p * (1 - p) / n));
}

TEST(ExitWindow, LeftToTheProgram_WidestCounts) {
  const ArrivalSpread arrival{0.4, 100.5, 0.3, 0.05};
  EXPECT_GT(chance_inside(window(0.9, 100), arrival, {102}, Length{2.0}),
            chance_inside(window(0.9, 100), arrival, {102}));
  EXPECT_EQ(chance_inside(window(0.9, 100), arrival, {102}, Length{0.5}),
            chance_inside(window(0.9, 100), arrival, {102}));
}

}  // namespace
}  // namespace burrow

// The bore from the other side: half a turn of everything about its middle, launch and exit with changed places.

#include "burrow/crossing/reversed.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/crossing/blank.h"
#include "burrow/crossing/locks.h"
#include "support/random_crossing.h"

namespace burrow {
namespace {

Crossing layout() {
  Crossing c = blank_crossing();
  c.site.ground = {{-4, 100}, {3, 101}, {14, 102}};
  c.bore.launch.station = Length{1};
  c.bore.launch.offset.set(Length{0.5});
  c.bore.launch.elevation = Length{99};
  c.bore.launch.grade.v = 0.02;
  c.bore.exit.station = Length{11};
  c.bore.exit.offset.set(Length{-0.25});
  Utility u;
  u.id = "u1";
  u.path = {{4, -5, 100.0}, {5, 5, std::nullopt}};
  c.site.utilities = {u};
  SurfaceFeature road;
  road.id = "f1";
  road.from = Length{3};
  road.to = Length{7};
  road.skew.set(Angle{0.3});
  c.site.surface = {road};
  return c;
}

// By hand: stations about 6, so 1 and 11 change places; 4 becomes 8; the axis at the exit is 99 + 0.02 · 10.
TEST(Reversed, Places_ByHand) {
  const Crossing c = reversed(layout());
  EXPECT_DOUBLE_EQ(c.bore.launch.station.m, 1);
  EXPECT_DOUBLE_EQ(c.bore.exit.station.m, 11);
  EXPECT_DOUBLE_EQ(c.bore.launch.elevation.m, 99.2);
  EXPECT_DOUBLE_EQ(c.bore.launch.grade.v, -0.02);
  EXPECT_DOUBLE_EQ(c.bore.launch.offset->m, 0.25);
  EXPECT_DOUBLE_EQ(c.bore.exit.offset->m, -0.5);
  EXPECT_DOUBLE_EQ(c.site.utilities[0].path[0].x_m, 8);
  EXPECT_DOUBLE_EQ(c.site.utilities[0].path[0].y_m, 5);
  EXPECT_EQ(c.site.utilities[0].path[0].z_m, 100.0);
  EXPECT_FALSE(c.site.utilities[0].path[1].z_m) << "what was not known is not known";
  EXPECT_DOUBLE_EQ(c.site.surface[0].from->m, 5);
  EXPECT_DOUBLE_EQ(c.site.surface[0].to->m, 9);
  ASSERT_EQ(c.site.ground.size(), 3u);
  EXPECT_DOUBLE_EQ(c.site.ground[0].station_m, -2);
  EXPECT_DOUBLE_EQ(c.site.ground[0].elevation_m, 102);
  EXPECT_DOUBLE_EQ(c.site.ground[2].station_m, 16);
}

// The skewed edge of the road passes the same place of the plan as before, seen from the other end.
TEST(Reversed, SkewedRoad_LiesWhereItLay) {
  const Crossing before = layout(), after = reversed(before);
  const double y = 2;
  const double x = before.site.surface[0].from->m + std::tan(before.site.surface[0].skew->rad) * y;
  EXPECT_NEAR(after.site.surface[0].to->m + std::tan(after.site.surface[0].skew->rad) * -y, 12 - x, 1e-12);
}

// A symmetry: mirrored twice, everything is as it was, of whatever a crossing holds.
TEST(Reversed, Twice_IsAsBefore) {
  int tried = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    Crossing c = test::random_crossing(seed);
    c.locks.clear();
    c.bore.launch.station = Length{1};
    c.bore.exit.station = Length{13};
    c.alternatives.clear();
    c.site.georeference.reset();
    const Crossing twice = reversed(reversed(c));
    const auto near = [](double a, double b) { return std::abs(a - b) <= 1e-9 * std::max(1.0, std::abs(a)); };
    EXPECT_TRUE(near(twice.bore.launch.elevation.m, c.bore.launch.elevation.m)) << seed;
    EXPECT_EQ(twice.bore.launch.grade.v, c.bore.launch.grade.v);
    EXPECT_EQ(twice.bore.launch.heading, c.bore.launch.heading);
    EXPECT_EQ(twice.pits, c.pits) << seed;
    EXPECT_EQ(twice.muted, c.muted);
    ASSERT_EQ(twice.site.utilities.size(), c.site.utilities.size());
    for (std::size_t i = 0; i < c.site.utilities.size(); ++i)
      for (std::size_t k = 0; k < c.site.utilities[i].path.size(); ++k, ++tried) {
        EXPECT_TRUE(near(twice.site.utilities[i].path[k].x_m, c.site.utilities[i].path[k].x_m));
        EXPECT_EQ(twice.site.utilities[i].path[k].y_m, c.site.utilities[i].path[k].y_m);
      }
  }
  EXPECT_GT(tried, 60);
}

// Easting and northing of a point of the site stay what they were.
TEST(Reversed, PlaceInTheMap_Stays) {
  Crossing c = layout();
  Georeference map;
  map.origin = {1000, 2000};
  map.azimuth.set(Angle{0.7});
  c.site.georeference = map;
  const auto in_map = [](const Crossing& of, double x, double y) {
    const Georeference& g = *of.site.georeference;
    const double s = std::sin(g.azimuth->rad), k = std::cos(g.azimuth->rad);
    return PlanPoint{g.origin.x_m + x * s - y * k, g.origin.y_m + x * k + y * s};
  };
  const Crossing mirrored = reversed(c);
  const PathVertex &before = c.site.utilities[0].path[0], &after = mirrored.site.utilities[0].path[0];
  EXPECT_NEAR(in_map(c, before.x_m, before.y_m).x_m, in_map(mirrored, after.x_m, after.y_m).x_m, 1e-9);
  EXPECT_NEAR(in_map(c, before.x_m, before.y_m).y_m, in_map(mirrored, after.x_m, after.y_m).y_m, 1e-9);
}

TEST(Reversed, PitsAndWhatIsAboutThem_KeepTheirPlace) {
  Crossing c = layout();
  c.pits.launch.signs.seeping = true;
  c.pits.launch.sides.left.kind.set(SideKind::benched);
  c.pits.launch.spoil.side.set(PitSideName::right);
  c.pits.launch.cradle_height.set(Length{0.2});
  c.locks = {"/pits/launch/floor_width_m", "/bore/launch/elevation_m", "/bore/launch/station_m"};
  Mute mute;
  mute.subject = "launch-pit";
  c.muted = {mute};
  const Crossing mirrored = reversed(c);
  EXPECT_EQ(mirrored.pits.exit.signs.seeping, true) << "what was seen stays where it was seen";
  EXPECT_FALSE(mirrored.pits.launch.signs.seeping);
  EXPECT_EQ(*mirrored.pits.exit.sides.right.kind, SideKind::benched);
  EXPECT_EQ(*mirrored.pits.exit.spoil.side, PitSideName::left);
  EXPECT_EQ(mirrored.pits.launch.cradle_height->m, 0.2) << "the tool's cradle stands where it is launched";
  EXPECT_EQ(mirrored.muted[0].subject, "exit-pit") << "what was accepted of one pit is not accepted of the other";
  EXPECT_TRUE(lock_stands(mirrored, "/pits/exit/floor_width_m"));
  EXPECT_TRUE(lock_stands(mirrored, "/bore/exit/station_m"));
  EXPECT_FALSE(lock_stands(mirrored, "/bore/launch/elevation_m"));
}

TEST(Reversed, ReadingsOrAPracticeBore_AreNotTurned) {
  Crossing c = layout();
  EXPECT_TRUE(why_not_reversed(c).empty());
  c.record.emplace_back();
  EXPECT_FALSE(why_not_reversed(c).empty());
  c.record.clear();
  c.practice = "{}";
  EXPECT_FALSE(why_not_reversed(c).empty());
}

}  // namespace
}  // namespace burrow

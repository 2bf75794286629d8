// A best launch on the edge of the map: said, and the map made wider as far as the search goes.

#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/search/launch_map.h"
#include "burrow/words/launch_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

LaunchMapOptions of_cells(int cells) {
  LaunchMapOptions options;
  options.cells = cells;
  options.threads = 2;
  return options;
}

/// A bore that runs straight from a level that is held. The ground falls by 25 %: with −10 %, where the map ends first,
/// 0.2 m are left over the axis at the exit; with −20 % it is 1.0 m.
Crossing down_a_slope() {
  Crossing c = clean_crossing();
  c.site.surface.clear();
  c.site.ground = {{-8, 102}, {20, 95}};
  c.locks = {"/bore/launch/elevation_m"};
  c.site.water = LevelLine{{-8, 80}, {20, 80}};
  c.site.utilities = {water_main(4, 90.0)};
  c.bore.model.steer_constant.set(Ratio{0});
  c.bore.model.steer_constant_sd.set(Ratio{0});
  c.bore.launch.elevation = Length{98.6};
  return c;
}

TEST(MapEdges, BestBeyondTenPercent_MapGrows) {
  const Crossing c = down_a_slope();
  const auto [across, down] = map_axes(c, tables(), of_cells(16));
  EXPECT_EQ(across.from, -0.10);
  const LaunchMap map = search_launches(c, tables(), of_cells(16));
  ASSERT_TRUE(map.best);
  EXPECT_GE(map.widened, 1) << search_headline(map, UnitSystem::metric);
  EXPECT_LT(map.across.from, -0.10 - 1e-9);
  EXPECT_LT(map.best->place.across, -0.10) << search_headline(map, UnitSystem::metric);
  EXPECT_EQ(map.across.count, 16);
  EXPECT_EQ(map.cells.size(), 16U);
}

TEST(MapEdges, GrowthEndsAtTheBounds) {
  Crossing c = down_a_slope();
  c.site.ground = {{-8, 104.8}, {20, 88}};  // 60 %: what would do is beyond all bounds
  const LaunchMap map = search_launches(c, tables(), of_cells(10));
  const auto [across, down] = map_bounds(c, tables(), MapOver::depth_and_grade);
  EXPECT_GE(map.across.from, across.from - 1e-12);
  EXPECT_LE(map.across.to, across.to + 1e-12);
  EXPECT_GE(map.down.from, down.from - 1e-12);
  EXPECT_LE(map.down.to, down.to + 1e-12);
  EXPECT_LE(map.widened, 3);
}

TEST(MapEdges, OnTheLastEdge_SaidWithItsReason) {
  LaunchMap map;
  map.works = true;
  map.best.emplace();
  map.best->verdict = map.best->assessed = Verdict::within_limits;
  EXPECT_TRUE(edge_text(map).empty());
  EXPECT_EQ(search_headline(map, UnitSystem::metric).find("edge"), std::string::npos);
  map.edges = {{MapSide::across_to, true}};
  EXPECT_EQ(edge_text(map), "It lies on the edge of the map: steeper launches are not searched.");
  EXPECT_NE(search_headline(map, UnitSystem::metric).find(edge_text(map)), std::string::npos);
  map.edges = {{MapSide::down_from, true}};
  EXPECT_NE(edge_text(map).find("less cover"), std::string::npos);
  map.edges = {{MapSide::down_to, true}};
  EXPECT_NE(edge_text(map).find("engineer"), std::string::npos);
  map.edges = {{MapSide::down_to, false}};
  EXPECT_NE(edge_text(map).find("beyond was not searched"), std::string::npos);
  map.over = MapOver::station_and_offset;
  map.edges = {{MapSide::across_from, true}, {MapSide::down_to, true}};
  EXPECT_EQ(edge_text(map),
            "It lies on the edge of the map: launches further back are not searched; launches further aside are not "
            "searched.");
}

// Both sides of the line are alike: the best one is followed to either side, until the shorter bore, which always looks
// better, ends at the exit side of the map. Whatever is found: a best launch on a side of the map is never passed over
// in silence.
TEST(MapEdges, StationAndOffset_EdgeIsNamed) {
  Crossing c = clean_crossing();
  LaunchMapOptions options = of_cells(9);
  options.over = MapOver::station_and_offset;
  const LaunchMap map = search_launches(c, tables(), options);
  ASSERT_TRUE(map.best);
  const bool on_side = map.best->place.across == map.across.from || map.best->place.across == map.across.to ||
                       map.best->place.down == map.down.from || map.best->place.down == map.down.to;
  EXPECT_TRUE(!on_side || !map.edges.empty());
  for (const MapEdge& edge : map.edges) EXPECT_TRUE(edge.last || map.widened == 3) << edge_text(map);
  const auto [across, down] = map_bounds(c, tables(), MapOver::station_and_offset);
  EXPECT_EQ(across.from, -8);  // the ground line begins there
  EXPECT_EQ(down.to, 12);
  EXPECT_GE(map.across.from, across.from);
}

TEST(MapEdges, StoppedWhileItGrows_NothingClaimed) {
  std::stop_source source;
  int rounds = 0;
  double last = 0;
  LaunchMapOptions options = of_cells(12);
  options.threads = 1;
  const LaunchMap map = search_launches(down_a_slope(), tables(), options, source.get_token(), [&](double share) {
    if (share < last) ++rounds;  // begun again: on the wider map
    last = share;
    if (rounds > 0) source.request_stop();
  });
  EXPECT_GE(rounds, 1);
  EXPECT_TRUE(map.cancelled);
  EXPECT_TRUE(map.cells.empty());
  EXPECT_FALSE(map.best);
  EXPECT_FALSE(map.works);
}

TEST(MapEdges, LockedSide_StaysLocked) {
  Crossing c = down_a_slope();
  c.locks = {"/bore/launch/grade", "/bore/launch/elevation_m"};
  const LaunchMap map = search_launches(c, tables(), of_cells(10));
  EXPECT_EQ(map.across.count, 1);
  EXPECT_TRUE(map.across.locked);
  EXPECT_TRUE(map.edges.empty());
  EXPECT_EQ(map.widened, 0);
}

}  // namespace
}  // namespace burrow::test

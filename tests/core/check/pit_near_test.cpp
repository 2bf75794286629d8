// What a pit runs into, what loads stand beside it, what ground it takes from footings and tracks; its floor.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// Pits 2 m deep, shored all round: the footprint is the floor.
Crossing deep_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{98.0 + 0.0325};
  crossing.site.utilities.front() = water_main(4, 96.0);
  for (Pit* pit : {&crossing.pits.launch, &crossing.pits.exit})
    for (PitSide* side : {&pit->sides.bore, &pit->sides.back, &pit->sides.left, &pit->sides.right})
      *side = shored_side();
  crossing.pits.launch.floor_length = Length{2};
  crossing.pits.launch.floor_width = Length{1};
  return crossing;
}

SurfaceFeature band(SurfaceKind kind, double from_m, double to_m) {
  SurfaceFeature feature = lane(from_m, to_m);
  feature.id = "f7";
  feature.kind = kind;
  feature.name = "the thing";
  return feature;
}

TEST(PitNear, CutIntoThings_FlaggedWhereTheyAre) {
  const std::pair<SurfaceKind, std::pair<const char*, Severity>> expected[] = {
      {SurfaceKind::road, {"pit.on-road", Severity::caution}},
      {SurfaceKind::track, {"pit.on-track", Severity::stop}},
      {SurfaceKind::ditch, {"pit.on-ditch", Severity::caution}},
      {SurfaceKind::drive, {"pit.on-paving", Severity::note}},
      {SurfaceKind::building, {"pit.on-structure", Severity::stop}}};
  for (const auto& [kind, answer] : expected) {
    Crossing crossing = deep_crossing();
    crossing.site.surface = {band(kind, -4, -1.5)};
    const Assessment in = judged(crossing);
    const Finding* finding = find(in, answer.first, "f7");
    ASSERT_TRUE(finding) << answer.first << listed(in);
    EXPECT_EQ(finding->severity, answer.second);
    EXPECT_NEAR(*finding->station_m, -2, 0.51);
    crossing.site.surface = {band(kind, -4, -2.1)};
    EXPECT_FALSE(find(judged(crossing), answer.first)) << answer.first;
  }
}

TEST(PitNear, BoundaryAndHeap) {
  Crossing crossing = deep_crossing();
  Boundary fence;
  fence.id = "b1";
  fence.name = "fence";
  fence.line = {{-5, 0.4}, {5, 0.4}};
  crossing.site.boundaries = {fence};
  EXPECT_TRUE(find(judged(crossing), "pit.boundary", "b1"));
  crossing.site.boundaries.front().line = {{-5, 2}, {5, 2}};
  EXPECT_FALSE(find(judged(crossing), "pit.boundary"));
  EXPECT_TRUE(find(judged(crossing), "pit.heap-on", "b1"));  // from 1.1 m on
  crossing.pits.launch.spoil.side.set(PitSideName::right);
  crossing.pits.exit.spoil.side.set(PitSideName::right);
  EXPECT_FALSE(find(judged(crossing), "pit.heap-on"));
}

TEST(PitNear, Tree_InItsCircle) {
  Crossing crossing = deep_crossing();
  Tree lime;
  lime.id = "t1";
  lime.station = Length{-1};
  lime.offset = Length{3.5};
  lime.protection_radius = Length{3.1};
  crossing.site.trees = {lime};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.tree", "t1")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.tree")->measured, 3.0, 1e-9);
  EXPECT_NEAR(*find(answer, "pit.tree")->offset_m, 0.5, 1e-9);
  crossing.site.trees.front().protection_radius = Length{2.9};
  EXPECT_FALSE(find(judged(crossing), "pit.tree"));
}

// DIN 4124 (from memory): 1.0 m to 12 t, 2.0 m to 40 t; 29 CFR 1926.651(j)(2): 2 ft (read).
TEST(PitNear, Machines_ByMass) {
  Crossing crossing = deep_crossing();
  crossing.site.surface.clear();
  Plant digger;
  digger.id = "p1";
  digger.name = "digger";
  digger.station = Length{-1};
  digger.length = Length{3};
  digger.width = Length{2};
  digger.offset = Length{0.5 + 1.5 + 1};  // 1.5 m from the edge
  digger.load = Force{8e3 * gravity_m_s2};
  crossing.site.plant = {digger};
  crossing.pits.rules.set(ExcavationRules::din_4124);
  EXPECT_FALSE(find(judged(crossing), "pit.plant"));
  crossing.site.plant.front().load = Force{20e3 * gravity_m_s2};
  ASSERT_TRUE(find(judged(crossing), "pit.plant", "p1"));
  EXPECT_NEAR(*find(judged(crossing), "pit.plant")->measured, 1.5, 1e-9);
  EXPECT_EQ(*find(judged(crossing), "pit.plant")->limit, 2.0);
  crossing.pits.rules.set(ExcavationRules::us_1926);
  EXPECT_FALSE(find(judged(crossing), "pit.plant"));
  EXPECT_TRUE(find(judged(crossing), "pit.edge-load", "launch-pit"));  // nearer than 2 m deep
  crossing.site.plant.front().offset = Length{0.5 + 2.1 + 1};
  EXPECT_FALSE(find(judged(crossing), "pit.edge-load", "launch-pit"));
}

/// Second route: the corners of a wall, which are what is nearest here, against the excavation at many heights.
double spare_by_grid(const PitShape& pit, const PlanLine& wall, double level, double run) {
  double least = 1e300;
  for (double h = 0; h <= level - pit.floor_elevation_m + 1e-9; h += 0.0005) {
    const double from = pit.floor_from_m - pit.sides.low.run_at(h), to = pit.floor_to_m + pit.sides.high.run_at(h);
    const double right = pit.floor_right_m - pit.sides.right.run_at(h),
                 left = pit.floor_left_m + pit.sides.left.run_at(h);
    for (const PlanPoint& corner : wall) {
      const double beside = std::hypot(std::max({from - corner.x_m, corner.x_m - to, 0.0}),
                                       std::max({right - corner.y_m, corner.y_m - left, 0.0}));
      least = std::min(least, beside - run * (level - pit.floor_elevation_m - h));
    }
  }
  return least;
}

// 1 : 1 under a footing founded 1 m above the floor: a stop beside open sides, a caution beside shored ones.
TEST(PitNear, Footing_ByGrid) {
  Crossing crossing = deep_crossing();
  SurfaceFeature wall = house(1.2);
  wall.outline = {{-1, 1.2}, {-0.5, 4}, {-1.5, 4}};
  crossing.site.surface.push_back(wall);
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "pit.footing-spread", "f9");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_NEAR(*finding->measured, 0.7 - 1, 1e-9);
  EXPECT_NEAR(*finding->measured, spare_by_grid(answer.launch_pit, wall.outline, 99, 1), 1e-3);
  crossing.pits.launch.sides.left.kind.set(
      SideKind::sloped);  // 1 1/2 : 1: flatter than the spread, so that its upper part is nearer
  const Assessment open = judged(crossing);
  ASSERT_TRUE(find(open, "pit.footing-spread", "f9"));
  EXPECT_EQ(find(open, "pit.footing-spread")->severity, Severity::stop);
  EXPECT_NEAR(*find(open, "pit.footing-spread")->measured, spare_by_grid(open.launch_pit, wall.outline, 99, 1), 1e-3);
}

// 1 1/2 : 1 under a track (from memory): a floor 2 m deep stays 3 m away.
TEST(PitNear, Track_Spread) {
  Crossing crossing = deep_crossing();
  crossing.site.surface = {band(SurfaceKind::track, 2.9, 5)};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.track-spread", "f7")) << listed(answer);
  const double nearest = std::min(2.9, 8.0 - 5.0);
  EXPECT_LE(*find(answer, "pit.track-spread")->measured, nearest - 3 + 1e-9);
  // From 11 ft off the centreline, 1 1/2 : 1 down to pits 2 m deep: a railway's right-of-way requirements s. 3.2
  // (read).
  const double wanted = 11 * 0.3048 + 1.5 * 2;
  crossing.bore.exit.station = Length{16};
  crossing.pits.exit.floor_elevation = Length{98};
  crossing.site.surface = {band(SurfaceKind::track, wanted - 0.1, wanted + 0.1)};
  EXPECT_FALSE(find(judged(crossing), "pit.track-spread"));
  crossing.site.surface = {band(SurfaceKind::track, wanted - 0.3, wanted - 0.1)};
  ASSERT_TRUE(find(judged(crossing), "pit.track-spread"));
  EXPECT_NEAR(*find(judged(crossing), "pit.track-spread")->measured, -0.2, 1e-6);
}

// Bjerrum & Eide 1956 with N_c after Skempton 1951 (from memory), by hand: B = 1, L = 2, d = 2, s_u = 8 kPa,
// γ = 16 kN/m³: N_c = 5 · 1.4 · 1.1 = 7.7; F = 7.7 · 8/32 = 1.925 without a load beside.
TEST(PitNear, BaseHeave_InVerySoftClay) {
  Crossing crossing = deep_crossing();
  crossing.site.surface.clear();
  crossing.site.strata.front().soil = "very-soft-clay";
  crossing.pits.launch.floor_elevation = Length{98};
  crossing.pits.launch.spoil.setback.set(Length{5});
  Assessment answer = judged(crossing);
  EXPECT_NEAR(*answer.launch_pit_work.base_heave_safety, 1.925, 1e-9);
  EXPECT_FALSE(find(answer, "pit.base-heave", "launch-pit"));
  crossing.pits.launch.floor_elevation = Length{97};  // N_c = 5 · 1.5 · 1.1 = 8.25; F = 8.25 · 8/48 = 1.375
  answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.base-heave", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.base-heave", "launch-pit")->severity, Severity::caution);
  EXPECT_NEAR(*find(answer, "pit.base-heave", "launch-pit")->measured, 1.375, 1e-9);
  crossing.pits.launch.floor_elevation = Length{96};  // F = 8.25 · 8/64 = 1.03
  EXPECT_EQ(find(judged(crossing), "pit.base-heave", "launch-pit")->severity, Severity::stop);
  crossing.site.strata.front().soil = "medium-sand";
  EXPECT_FALSE(judged(crossing).launch_pit_work.base_heave_safety);
}

// Arithmetic: 1 m of firm clay, γ_sat = 18.5 kN/m³, over sand with 1.5 m of water: 18.5/(1.5 · 9.80665) = 1.258.
TEST(PitNear, Uplift_OfTheClayUnderTheFloor) {
  Crossing crossing = deep_crossing();
  crossing.pits.launch.floor_elevation = Length{98};
  Stratum sand = crossing.site.strata.front();
  sand.id = "l2";
  sand.soil = "medium-sand";
  sand.top = LevelLine{{-8, 97}, {20, 97}};
  crossing.site.strata.push_back(sand);
  crossing.site.water = LevelLine{{-8, 98.5}, {20, 98.5}};
  Assessment answer = judged(crossing);
  EXPECT_NEAR(*answer.launch_pit_work.uplift_safety, 18.5e3 / (1.5 * 9806.65), 1e-9);
  EXPECT_FALSE(find(answer, "pit.uplift", "launch-pit"));
  EXPECT_FALSE(find(answer, "pit.inflow"));  // clay around the pit
  crossing.site.water = LevelLine{{-8, 98.8}, {20, 98.8}};
  answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.uplift", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.uplift", "launch-pit")->severity, Severity::caution);
  crossing.site.water = LevelLine{{-8, 99}, {20, 99}};
  EXPECT_EQ(find(judged(crossing), "pit.uplift", "launch-pit")->severity, Severity::stop);
  crossing.site.strata.back().top = LevelLine{{-8, 98.4}, {20, 98.4}};
  answer = judged(crossing);
  EXPECT_FALSE(answer.launch_pit_work.uplift_safety);
  ASSERT_TRUE(find(answer, "pit.inflow", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.inflow", "launch-pit")->measured, 1.0, 1e-9);
}

}  // namespace
}  // namespace burrow::test

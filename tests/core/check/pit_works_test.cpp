// Earth dug, heap, trucks, surfacing; duties; support and published shoring.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

void shore_all(Pit& pit) {
  for (PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right}) *side = shored_side();
}

/// Launch pit a box of 2 × 1 m, 2 m deep, in 0.5 m of made ground over firm clay.
Crossing box_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{98.1};
  crossing.site.utilities.front() = water_main(4, 96.0);
  Stratum fill = crossing.site.strata.front();
  fill.id = "l0";
  fill.soil = "made-ground";
  crossing.site.strata.front().top = LevelLine{{-8, 99.5}, {20, 99.5}};
  crossing.site.strata.insert(crossing.site.strata.begin(), fill);
  Pit& pit = crossing.pits.launch;
  pit.floor_elevation = Length{98};
  pit.floor_length = Length{2};
  pit.floor_width = Length{1};
  shore_all(pit);
  return crossing;
}

const PitDuty* duty(const PitAnswer& work, std::string_view code) {
  for (const PitDuty& d : work.duties)
    if (d.code == code) return &d;
  return nullptr;
}

// Arithmetic with FM 5-434 Table 1-1 (from memory): 1 m³ of fill, loose 1.25, compacted 0.90; 3 m³ of clay, 1.43, 0.90.
TEST(PitWorks, EarthByLayer) {
  const Assessment answer = judged(box_crossing());
  const PitAnswer& work = answer.launch_pit_work;
  ASSERT_EQ(work.layers.size(), 2U);
  EXPECT_NEAR(work.layers[0].bank_m3, 1, 1e-9);
  EXPECT_NEAR(work.layers[1].bank_m3, 3, 1e-9);
  EXPECT_NEAR(*work.bank_m3, 4, 1e-9);
  EXPECT_NEAR(*work.loose_m3, 1.25 + 3 * 1.43, 1e-9);
  EXPECT_NEAR(*work.compacted_m3, 3.6, 1e-9);
  EXPECT_NEAR(*work.refill_m3, (1.25 + 3 * 1.43) / 0.9, 1e-9);
  EXPECT_EQ(*work.truck_loads, 1);
  Crossing small_truck = box_crossing();
  small_truck.limits["truck_load_m3"] = {2.0, "own truck", ""};
  EXPECT_EQ(*judged(small_truck).launch_pit_work.truck_loads, 3);
}

TEST(PitWorks, Heap_StandsAtItsSetBack) {
  Crossing crossing = box_crossing();
  PitAnswer work = judged(crossing).launch_pit_work;
  EXPECT_NEAR(work.heap.volume_m3, *work.loose_m3, 1e-9);
  EXPECT_LE(work.heap.height_m, 1.5);
  ASSERT_EQ(work.heap.outline.size(), 4U);
  EXPECT_NEAR(work.heap.outline[0].y_m, 0.5 + 0.61, 1e-9);  // left of the pit
  EXPECT_NEAR(work.heap.outline[2].y_m - work.heap.outline[0].y_m, work.heap.width_m, 1e-9);
  crossing.pits.launch.spoil.side.set(PitSideName::back);
  crossing.pits.launch.spoil.height = Length{0.8};
  work = judged(crossing).launch_pit_work;
  EXPECT_NEAR(work.heap.outline[1].x_m, -2 - 0.61, 1e-9);
  EXPECT_NEAR(work.heap.height_m, 0.8, 1e-9);
}

// 29 CFR 1926.651(j)(2): 2 ft (read); DIN 4124: 0.60 m (second-hand).
TEST(PitWorks, Spoil_TooNear) {
  Crossing crossing = box_crossing();
  EXPECT_FALSE(find(judged(crossing), "pit.spoil"));
  crossing.pits.launch.spoil.setback.set(Length{1.9 * 0.3048});
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.spoil", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.spoil")->limit, 2 * 0.3048, 1e-12);
  crossing.pits.launch.spoil.setback.set(Length{0.605});
  crossing.pits.rules.set(ExcavationRules::din_4124);
  EXPECT_FALSE(find(judged(crossing), "pit.spoil"));
  crossing.pits.launch.spoil.setback.set(Length{0.55});
  EXPECT_TRUE(find(judged(crossing), "pit.spoil", "launch-pit"));
}

// The footprint cut by a skewed footway: second route by points thrown into both.
TEST(PitWorks, SurfacingOpened_ByCounting) {
  Crossing crossing = clean_crossing();
  SurfaceFeature footway = lane(-1.5, -0.4);
  footway.id = "f2";
  footway.kind = SurfaceKind::footway;
  footway.name = "footway";
  footway.skew.set(Angle{0.3});
  crossing.site.surface.push_back(footway);
  const Assessment answer = judged(crossing);
  ASSERT_EQ(answer.launch_pit_work.cuts.size(), 2U);
  EXPECT_EQ(answer.launch_pit_work.cuts[0].id, "f2");
  EXPECT_EQ(answer.launch_pit_work.cuts[1].name, "verge");
  int footway_count = 0, all = 0;
  const double step = 0.01;
  for (double x = -6; x < 1; x += step)
    for (double y = -5; y < 5; y += step) {
      if (!inside(answer.launch_pit.footprint, x, y)) continue;
      ++all;
      const double along = x - std::tan(0.3) * y;
      footway_count += along > -1.5 && along < -0.4 ? 1 : 0;
    }
  EXPECT_NEAR(answer.launch_pit_work.cuts[0].area_m2, footway_count * step * step, 0.05);
  EXPECT_NEAR(answer.launch_pit_work.cuts[1].area_m2, (all - footway_count) * step * step, 0.05);
  EXPECT_TRUE(find(answer, "pit.on-paving", "f2"));
}

// 29 CFR 1926.651(c)(2): from 4 ft, within 25 ft (read); (g)(1): deeper than 4 ft (read); (l): 6 ft (read).
TEST(PitWorks, Duties_FromTheirDepths) {
  Crossing crossing = box_crossing();
  const auto at_depth = [&](double feet) {
    crossing.pits.launch.floor_elevation = Length{100 - feet * 0.3048};
    return judged(crossing).launch_pit_work;
  };
  EXPECT_FALSE(duty(at_depth(3.99), "ladder")->applies);
  EXPECT_TRUE(duty(at_depth(4), "ladder")->applies);
  EXPECT_FALSE(duty(at_depth(4), "air-test")->applies);
  EXPECT_TRUE(duty(at_depth(4.1), "air-test")->applies);
  EXPECT_FALSE(duty(at_depth(5.9), "guard")->applies);
  EXPECT_TRUE(duty(at_depth(6), "guard")->applies);
  EXPECT_TRUE(duty(at_depth(3), "inspection")->applies);
  crossing.pits.launch.signs.bad_air = false;
  EXPECT_FALSE(duty(at_depth(6), "air-test")->applies);
  crossing.pits.launch.signs.bad_air = true;
  EXPECT_TRUE(find(judged(crossing), "pit.air", "launch-pit"));
}

TEST(PitWorks, Ladder_TooFar) {
  Crossing crossing = box_crossing();
  crossing.pits.launch.floor_length = Length{7.7};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pit.ladder", "launch-pit")) << listed(answer);
  EXPECT_NEAR(*find(answer, "pit.ladder")->measured, std::hypot(7.7, 0.5), 1e-9);
  EXPECT_NEAR(*find(answer, "pit.ladder")->limit, 25 * 0.3048, 1e-12);
  crossing.pits.launch.ladder.side.set(PitSideName::left);
  EXPECT_FALSE(find(judged(crossing), "pit.ladder"));
  EXPECT_NEAR(*judged(crossing).launch_pit_work.ladder_travel_m, std::hypot(3.85, 1), 1e-9);
}

// 29 CFR 1926.652(e)(2)(i), (g)(2): 2 ft below the foot of a support at most (read).
TEST(PitWorks, Support_FootAndTop) {
  Crossing crossing = box_crossing();
  PitSide& side = crossing.pits.launch.sides.left;
  side.kind.set(SideKind::shielded);
  side.support_foot = Length{0.6};
  side.support_top = Length{2.0};
  EXPECT_FALSE(find(judged(crossing), "pit.support-foot"));
  EXPECT_FALSE(find(judged(crossing), "pit.support-short"));
  side.support_foot = Length{2.1 * 0.3048};
  side.support_top = Length{1.8};
  EXPECT_TRUE(find(judged(crossing), "pit.support-foot", "launch-pit"));
  EXPECT_TRUE(find(judged(crossing), "pit.support-short", "launch-pit"));
}

TEST(PitWorks, Shoring_TheSmallestRowThatFits) {
  Crossing crossing = box_crossing();
  crossing.pits.launch.sides.back.kind.set(SideKind::sloped);  // the long sides only
  PitAnswer work = judged(crossing).launch_pit_work;
  EXPECT_NEAR(*work.shoring_width_m, 1, 1e-12);
  EXPECT_EQ(work.shoring, (std::vector<std::string>{"timber-c-13x5-6", "timber-c-13x5-8", "hydraulic-c-9x4-6.5",
                                                    "hydraulic-c-9x4-10"}));
  crossing.pits.launch.floor_width = Length{4};
  const Assessment answer = judged(crossing);
  EXPECT_TRUE(answer.launch_pit_work.shoring.empty());
  ASSERT_TRUE(find(answer, "pit.shoring", "launch-pit")) << listed(answer);
  EXPECT_EQ(find(answer, "pit.shoring")->severity, Severity::note);
}

// A floor by corners: the tool lies on it, its length from the face on.
TEST(PitWorks, ToolOffAFloorWithCorners) {
  Crossing crossing = box_crossing();
  EXPECT_FALSE(find(judged(crossing), "pit.tool-off-floor"));
  crossing.pits.launch.floor_outline = {{0, -0.5}, {0, 0.5}, {2.5, 0.5}, {2.5, -0.5}};
  EXPECT_FALSE(find(judged(crossing), "pit.tool-off-floor"));
  crossing.pits.launch.floor_outline = {{0.4, -0.5}, {0.4, 0.5}, {2.5, 0.5}, {2.5, -0.5}};  // away from the face
  EXPECT_TRUE(find(judged(crossing), "pit.tool-off-floor", "launch-pit"));
  crossing.pits.launch.floor_outline = {{0, 0.1}, {0, 0.5}, {2.5, 0.5}, {2.5, 0.1}};  // beside the tool, same middle
  crossing.pits.launch.floor_offset = Length{0.0};
  EXPECT_TRUE(find(judged(crossing), "pit.tool-off-floor", "launch-pit"));
}

// Ground that was surveyed beside the pit: its earth is that of the ground across, and the working says so.
TEST(PitWorks, SurveyedGround_EarthAndWorking) {
  Crossing crossing = box_crossing();
  const Assessment level = judged(crossing);
  for (const double x : {-12.0, -4.0, 4.0, 20.0})
    for (const double y : {-9.0, 9.0}) crossing.site.ground_points.push_back({x, y, 100 + 0.1 * y});
  const Assessment answer = judged(crossing);
  EXPECT_NEAR(answer.launch_pit.volume_m3, level.launch_pit.volume_m3, 1e-6) << "as much more left as less right";
  EXPECT_NEAR(answer.launch_pit.depth_m, level.launch_pit.depth_m + 0.05, 1e-6);
  EXPECT_NEAR(answer.launch_pit.layers[0].volume_m3 + answer.launch_pit.layers[1].volume_m3,
              answer.launch_pit.volume_m3, 1e-9);
  const auto working = std::find_if(answer.working.begin(), answer.working.end(), [](const Working& w) {
    return w.code == "pit.ground" && w.subject == "launch-pit";
  });
  ASSERT_NE(working, answer.working.end());
  EXPECT_NEAR(std::abs(working->value), 0.05, 1e-6);
  EXPECT_TRUE(std::none_of(level.working.begin(), level.working.end(),
                           [](const Working& w) { return w.code == "pit.ground"; }));
  // The surface of one answer serves the next.
  EXPECT_EQ(assess(crossing, tables(), answer.ground_surface), answer);
}

}  // namespace
}  // namespace burrow::test

// German rules of a pit with their numbers: depth that stands upright, supports, widths, machines, ladder; and what of
// the American ones hangs on the same checks.

#include <gtest/gtest.h>

#include "support/pit_for_tests.h"

namespace burrow::test {
namespace {

using enum ExcavationType;
constexpr auto german = ExcavationRules::din_4124;

// DGUV Information 201-052 s. 4.2.1 (read): upright to 1.25 m, 1.25 m included.
TEST(PitGerman, Upright_ToOneMetreTwentyFive) {
  for (const auto& [depth, stop] : {std::pair{1.2, 0}, std::pair{1.25, 0}, std::pair{1.251, 1}}) {
    Crossing c = pit_in("medium-sand", depth, std::nullopt, german);
    c.pits.launch.sides.left.kind.set(SideKind::upright);
    EXPECT_EQ(stops(c, "pit.unprotected"), stop) << depth << listed(judged(c));
  }
}

// s. 4.2.2 (read): to 1.75 m with 1.25 m upright, 45° above it, in stiff cohesive soil, the ground beside 1 : 10 at
// most.
TEST(PitGerman, PartUpright_ToOneMetreSeventyFive) {
  const auto pit = [](double depth, double upright, std::optional<double> run, const char* soil, ExcavationType type) {
    Crossing c = pit_in(soil, depth, type, german);
    c.pits.launch.sides.left = sloped(run);
    c.pits.launch.sides.left.upright = Length{upright};
    return c;
  };
  const auto any = [](const Crossing& c) {
    return stops(c, "pit.upright-part") + stops(c, "pit.slope") + stops(c, "pit.slope-by-calculation");
  };
  EXPECT_EQ(any(pit(1.75, 1.25, 1.0, "hard-clay", a)), 0) << listed(judged(pit(1.75, 1.25, 1.0, "hard-clay", a)));
  EXPECT_EQ(any(pit(1.75, 1.25, std::nullopt, "hard-clay", a)), 0);
  EXPECT_GT(any(pit(1.76, 1.25, 1.0, "hard-clay", a)), 0);
  EXPECT_GT(any(pit(1.75, 1.26, 1.0, "hard-clay", a)), 0);
  EXPECT_GT(any(pit(1.75, 1.25, 0.9, "hard-clay", a)), 0);
  EXPECT_GT(any(pit(1.75, 1.25, 1.0, "firm-clay", b)), 0);
  Crossing steep = pit(1.75, 1.25, 1.0, "hard-clay", a);
  steep.site.ground = {{-10, 100.8}, {-5, 100.8}, {-0.1, 100}, {20, 100}};  // 1 : 6; the slope alone may have 1 : 2
  steep.pits.launch.floor_elevation = Length{98.6};
  EXPECT_EQ(stops(steep, "pit.slope-by-calculation"), 1) << listed(judged(steep));
}

// A sign of distress deeper than 1.25 m: nothing without support or calculation.
TEST(PitGerman, Distress_DeeperToo) {
  Crossing c = pit_in("medium-sand", 3, std::nullopt, german);
  c.pits.launch.sides.left = sloped(1.0);
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 0);
  c.pits.launch.signs.distress = true;
  EXPECT_EQ(stops(c, "pit.slope-by-calculation"), 1);
}

// s. 4.3 (read): down to the floor; 0.50 m above it in stiff cohesive soil, for a few days (three: our default).
TEST(PitGerman, SupportFoot) {
  const auto foot = [](const char* soil, std::optional<ExcavationType> type, double foot_m,
                       std::optional<double> open_days) {
    Crossing c = pit_in(soil, 3, type, german);
    c.pits.launch.sides.left.support_foot = Length{foot_m};
    if (open_days) c.pits.launch.open_time = Duration{*open_days * 86400};
    return stops(c, "pit.support-foot");
  };
  EXPECT_EQ(foot("medium-sand", std::nullopt, 2.0, std::nullopt), 1);
  EXPECT_EQ(foot("medium-sand", std::nullopt, 0.1, 1), 1);
  EXPECT_EQ(foot("medium-sand", std::nullopt, 0, 1), 0);
  EXPECT_EQ(foot("hard-clay", a, 0.5, 3), 0);
  EXPECT_EQ(foot("hard-clay", a, 0.5, 3.1), 1);
  EXPECT_EQ(foot("hard-clay", a, 0.5, std::nullopt), 1);
  EXPECT_EQ(foot("hard-clay", a, 0.51, 1), 1);
  EXPECT_EQ(foot("firm-clay", b, 0.5, 1), 1);
  Crossing c = pit_in("medium-sand", 3, std::nullopt, german);
  c.pits.launch.sides.left.support_foot = Length{2.0};
  EXPECT_NEAR(working(judged(c), "pit.support-foot", "launch-pit")->value, 2.0, 1e-9);
}

// s. 4.3 (read): 0.05 m over the ground to 2.0 m deep, 0.10 m deeper.
TEST(PitGerman, SupportStandsOverTheGround) {
  for (const auto& [depth, top, stop] :
       {std::tuple{2.0, 2.05, 0}, std::tuple{2.0, 2.04, 1}, std::tuple{2.01, 2.06, 1}, std::tuple{2.01, 2.11, 0}}) {
    Crossing c = pit_in("medium-sand", depth, std::nullopt, german);
    c.pits.launch.sides.left.support_top = Length{top};
    EXPECT_EQ(stops(c, "pit.support-short"), stop) << depth << " " << top;
    EXPECT_TRUE(working(judged(c), "pit.support-short", "launch-pit"));
  }
}

// 29 CFR 1926.652(a)(1), (e)(2)(i) (read): less than 5 ft deep and no sign of a cave-in, nothing need be held.
TEST(PitGerman, American_FootOfASupportUnderFiveFeet) {
  Crossing c = pit_in("medium-sand", 1.5);
  c.pits.launch.sides.left.support_foot = Length{1.0};
  EXPECT_EQ(stops(c, "pit.support-foot"), 0);
  c.pits.launch.signs.distress = true;
  EXPECT_EQ(stops(c, "pit.support-foot"), 1);
  c.pits.launch.signs.distress = false;
  c.pits.launch.floor_elevation = Length{100 - 1.524};
  EXPECT_EQ(stops(c, "pit.support-foot"), 1);
}

// Before the upright part of a slope the foot counts as well.
TEST(PitGerman, FootOfASupportBeforeAnUprightPart) {
  Crossing c = pit_in("medium-sand", 3);
  PitSide& side = c.pits.launch.sides.left = sloped(1.5);
  side.upright = Length{1.5};
  side.support_top = Length{2.0};
  EXPECT_EQ(stops(c, "pit.support-foot"), 0);
  side.support_foot = Length{1.0};
  EXPECT_EQ(stops(c, "pit.support-foot"), 1);
}

// BG BAU H 906 (read): 0.60 / 0.70 m to 1.75 m, 0.80 m to 4.00 m, 1.00 m deeper, 0.40 m beside what lies in it.
TEST(PitGerman, TrenchWidth) {
  const auto narrow = [](double depth, double width, bool shored = true) {
    Crossing c = pit_in("hard-clay", depth, a, german);
    c.pits.launch.floor_width = Length{width};
    if (!shored) {
      c.pits.launch.sides.left = sloped(1.0);
      c.pits.launch.sides.left.upright = Length{1.0};
    }
    return stops(c, "pit.trench-width");
  };
  EXPECT_EQ(narrow(1.25, 0.5), 0);
  EXPECT_EQ(narrow(1.7, 0.69), 1);
  EXPECT_EQ(narrow(1.75, 0.70), 0);
  EXPECT_EQ(narrow(1.75, 0.60, false), 0);
  EXPECT_EQ(narrow(1.75, 0.59, false), 1);
  EXPECT_EQ(narrow(1.76, 0.79), 1);
  EXPECT_EQ(narrow(4.0, 0.80), 0);
  EXPECT_EQ(narrow(4.01, 0.99), 1);
  EXPECT_EQ(narrow(4.01, 1.0), 0);
  Crossing wide_tool = pit_in("hard-clay", 1.7, a, german);
  wide_tool.bore.tool.diameter = Length{0.35};
  wide_tool.pits.launch.floor_width = Length{0.74};
  EXPECT_EQ(stops(wide_tool, "pit.trench-width"), 1);
}

// DGUV Regel 101-604 s. 3.5.3 (read): 0.60 m inside of shoring, 0.50 m before the foot of a slope.
TEST(PitGerman, WorkingSpaceBehindTheTool) {
  const double tool = find_tool(tables(), "tool-65")->length.m;
  for (const auto& [shored, room, stop] :
       {std::tuple{true, 0.59, 1}, std::tuple{true, 0.61, 0}, std::tuple{false, 0.51, 0}, std::tuple{false, 0.49, 1}}) {
    Crossing c = pit_in("hard-clay", 2, a, german);
    c.pits.launch.floor_length = Length{tool + room};
    if (!shored) c.pits.launch.sides.back = sloped(1.0);
    EXPECT_EQ(stops(c, "pit.working-space"), stop) << room;
  }
  const Assessment answer = judged(pit_in("hard-clay", 2, a, german));
  EXPECT_TRUE(working(answer, "pit.working-space", "launch-pit"));
  EXPECT_TRUE(working(answer, "pit.trench-width", "launch-pit"));
}

// DGUV Vorschrift 38 s. 31(2) (read): above 1.25 m.
TEST(PitGerman, Ladder_AboveOneMetreTwentyFive) {
  for (const auto& [depth, applies] : {std::pair{1.25, false}, std::pair{1.26, true}}) {
    const Assessment answer = judged(pit_in("hard-clay", depth, a, german));
    for (const PitDuty& duty : answer.launch_pit_work.duties)
      if (duty.code == "ladder") {
        EXPECT_EQ(duty.applies, applies) << depth;
      }
  }
}

// DIN 4124 as restated (second-hand): 1.0 m to 12 t, 2.0 m to 40 t; for 80 t there is none.
TEST(PitGerman, Machines) {
  const auto stop = [](double tonnes, double off_m) {
    Crossing c = pit_in("hard-clay", 2, a, german);
    Plant digger;
    digger.id = "p1";
    digger.station = Length{-1};
    digger.length = Length{3};
    digger.width = Length{2};
    digger.offset = Length{0.6 + off_m + 1};
    digger.load = Force{tonnes * 1e3 * gravity_m_s2};
    c.site.plant = {digger};
    const Assessment answer = judged(c);
    for (const char* code : {"pit.plant", "pit.plant-heaviest"})
      if (const Finding* f = find(answer, code, "p1")) return f->severity == Severity::stop ? code : "no stop";
    return "";
  };
  EXPECT_STREQ(stop(12, 1.0), "");
  EXPECT_STREQ(stop(12, 0.99), "pit.plant");
  EXPECT_STREQ(stop(12.1, 1.5), "pit.plant");
  EXPECT_STREQ(stop(40, 2.0), "");
  EXPECT_STREQ(stop(40, 1.9), "pit.plant");
  EXPECT_STREQ(stop(80, 2.1), "pit.plant-heaviest");
  EXPECT_STREQ(stop(80, 3.9), "pit.plant-heaviest");
  EXPECT_STREQ(stop(80, 4.1), "");
}

// A load nearer than the depth is no caution where all four sides are held for it, by a design that somebody vouches
// for.
TEST(PitGerman, EdgeLoad_HeldForIt) {
  Crossing c = pit_in("medium-sand", 3);
  c.site.surface = {lane(2, 6)};
  EXPECT_TRUE(find(judged(c), "pit.edge-load", "launch-pit"));
  c.pits.launch.load_design = {"sheet 4", "A. Muster", "2026-02-20", ""};
  EXPECT_FALSE(find(judged(c), "pit.edge-load", "launch-pit"));
  c.pits.launch.load_design.how.clear();
  EXPECT_TRUE(find(judged(c), "pit.edge-load", "launch-pit"));
  c.pits.launch.load_design = {"sheet 4", "A. Muster", "2026-03-20", ""};
  EXPECT_TRUE(find(judged(c), "pit.edge-load", "launch-pit"));
  c.pits.launch.load_design = {"sheet 4", "A. Muster", "2026-02-20", ""};
  c.pits.launch.sides.back = sloped();
  EXPECT_TRUE(find(judged(c), "pit.edge-load", "launch-pit"));
}

// The heap that the program plans under German rules lies no steeper than 1 : 2 beside the load-free strip (read).
TEST(PitGerman, HeapNoSteeperThanOneInTwo) {
  const Assessment answer = judged(pit_in("hard-clay", 2, a, german));
  const Working* heap = working(answer, "pit.heap", "launch-pit");
  ASSERT_TRUE(heap);
  EXPECT_GE(input(*heap, "n"), 2.0);
}

}  // namespace
}  // namespace burrow::test

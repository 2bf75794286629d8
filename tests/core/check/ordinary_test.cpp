// Ordinary, well-prepared crossings: a number without a source stops none of them.

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

struct Ordinary {
  const char* soil;
  const char* tool;
  double length_m;
  double cover_m;
  double pipe_m;
};

/// A service under a lane as a good crew prepares it: soil seen in the pit, utilities exposed, owner asked, level and
/// sight set with care, sound pits, a pipe that fits.
Crossing prepared(const Ordinary& one) {
  Crossing crossing = clean_crossing();
  crossing.site.ground = {{-12, 100}, {one.length_m + 12, 100}};
  crossing.site.water = LevelLine{{-12, 90}, {one.length_m + 12, 90}};
  crossing.site.strata[0].soil = one.soil;
  crossing.site.surface = {lane(0.35 * one.length_m, 0.65 * one.length_m)};
  crossing.bore.tool.tool_class = one.tool;
  crossing.bore.exit.station = Length{one.length_m};
  const double diameter = find_tool(tables(), one.tool)->diameter.m;
  crossing.bore.launch.elevation = Length{100 - one.cover_m - diameter / 2};
  Utility main = water_main(one.length_m / 2, 100 - one.cover_m - 1.2);
  main.located.how.set(LocatedHow::exposed);
  main.located.lateral_sd = main.located.vertical_sd = Length{0.02};
  crossing.site.utilities = {main};
  TestHole hole;  // what proves it
  hole.id = "h1";
  hole.utility = main.id;
  hole.station = Length{one.length_m / 2};
  hole.level.set(LevelMeant::centre);
  hole.elevation = Length{main.path.front().z_m.value_or(0)};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  crossing.site.test_holes = {hole};
  crossing.pipe->outside_diameter = Length{one.pipe_m};
  return crossing;
}

void expect_no_stop(const Ordinary& one) {
  const Assessment answer = judged(prepared(one));
  EXPECT_TRUE(answer.verdict == Verdict::within_limits || answer.verdict == Verdict::caution)
      << one.soil << " " << one.tool << " " << one.length_m << " m: " << listed(answer);
}

// Common practice, no source: all soil groups, five tools, 6 to 25 m, each bored every day by somebody.
constexpr Ordinary ten[] = {{"firm-clay", "tool-45", 6, 1.2, 0.032},        {"stiff-clay", "tool-65", 10, 1.5, 0.05},
                            {"very-stiff-clay", "tool-65", 12, 1.5, 0.05},  {"silt", "tool-65", 8, 1.5, 0.05},
                            {"loose-sand", "tool-95", 9, 1.8, 0.075},       {"medium-sand", "tool-65", 15, 1.5, 0.05},
                            {"dense-sand", "tool-95", 12, 1.5, 0.075},      {"fine-gravel", "tool-130", 10, 1.5, 0.11},
                            {"engineered-fill", "tool-130", 12, 1.5, 0.11}, {"stiff-clay", "tool-180", 25, 2.2, 0.14}};

TEST(Ordinary, TenCrossings_NoneIsAStop) {
  for (const Ordinary& one : ten) expect_no_stop(one);
}

// The groups that the ten leave out: soft clay, hard clay, stones, a trench's backfill, rotten rock.
TEST(Ordinary, TheOtherSoils_NoneIsAStop) {
  for (const Ordinary& one : {Ordinary{"soft-clay", "tool-65", 8, 1.5, 0.05},
                              {"hard-clay", "tool-95", 8, 1.5, 0.075},
                              {"cobbly", "tool-130", 8, 1.6, 0.11},
                              {"trench-backfill", "tool-65", 8, 1.5, 0.05},
                              {"weathered-rock", "tool-95", 6, 1.5, 0.075}})
    expect_no_stop(one);
}

// The four that were stopped by a rate without a source: everything exposed, cover 1.5 m, sound pits.
TEST(Ordinary, MediumSand_15m) {
  expect_no_stop({"medium-sand", "tool-65", 15, 1.5, 0.05});
}
TEST(Ordinary, VeryStiffClay_12m) {
  expect_no_stop({"very-stiff-clay", "tool-65", 12, 1.5, 0.05});
}
TEST(Ordinary, MadeGround_10m) {
  expect_no_stop({"made-ground", "tool-65", 10, 1.5, 0.05});
}
TEST(Ordinary, DenseSand_12m) {
  expect_no_stop({"dense-sand", "tool-65", 12, 1.5, 0.05});
}

// The kind of that fault: whatever the rates are, they stop nothing that is not calibrated.
TEST(Ordinary, AnyRefusalRate_StopsNothing) {
  for (const double rate : {0.0, 0.01, 0.1, 1.0, 100.0}) {
    Crossing crossing = prepared({"stiff-clay", "tool-65", 10, 1.5, 0.05});
    crossing.site.strata[0].values.refusal_rate = RatePerLength{rate};
    const Assessment answer = judged(crossing);
    EXPECT_NE(answer.verdict, Verdict::stop) << rate << " " << listed(answer);
    ASSERT_TRUE(find(answer, "bore.refusal")) << rate;
    EXPECT_EQ(find(answer, "bore.refusal")->severity == Severity::note, rate < 0.02) << rate << " " << listed(answer);
  }
}

// Ordinary sand is not cautioned for being above a line that the model draws.
TEST(Ordinary, MediumSand_NoCautionAboutTheNeutralCover) {
  const Assessment answer = judged(prepared({"medium-sand", "tool-95", 10, 1.5, 0.075}));
  ASSERT_TRUE(answer.neutral_cover_m);
  EXPECT_LT(*answer.cover.least_m, *answer.neutral_cover_m + 0.1);
  EXPECT_FALSE(find(answer, "bore.climb")) << listed(answer);
  EXPECT_FALSE(find(answer, "bore.neutral-cover"));
}

}  // namespace
}  // namespace burrow::test

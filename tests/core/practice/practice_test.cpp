// Practice bores: the truth is kept, the crew sees only its own, and the debrief adds up.
#include "burrow/practice/practice.h"
#include "burrow/bore/point_on_path.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

PracticeTruth plain() {
  PracticeTruth truth;
  truth.wander = truth.soil_stones = false;
  return truth;
}

double share(const Debrief& debrief, std::string_view cause, bool up) {
  for (const MissShare& s : debrief.shares)
    if (s.cause == cause) return up ? s.up_m : s.left_m;
  ADD_FAILURE() << cause;
  return 0;
}

// Limit: a truth that is as drawn arrives where it was predicted, and nothing cost anything.
TEST(Practice, Limit_NothingWrongNothingMissed) {
  const Crossing crossing = clean_crossing();
  const PracticeBore bore = practice_bore(crossing, tables(), plain());
  EXPECT_EQ(bore.end, PracticeEnd::arrived);
  EXPECT_NEAR(bore.bore.path.points.back().z_m, *judged(crossing).arrival.elevation_m, 1e-3);
  const Debrief none = debrief(crossing, tables(), plain());
  EXPECT_NEAR(none.miss_up_m, 0, 1e-12);
  for (const MissShare& s : none.shares) EXPECT_NEAR(s.up_m, 0, 1e-12) << s.cause;
}

// Property: the shares add up to the miss in both coordinates, for fifty drawn truths.
TEST(Practice, Shares_AddUp) {
  const Crossing crossing = clean_crossing();
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    const Debrief all = debrief(crossing, tables(), draw_truth(crossing, tables(), seed));
    double up = 0, left = 0;
    for (const MissShare& s : all.shares) {
      up += s.up_m;
      left += s.left_m;
    }
    EXPECT_NEAR(up, all.miss_up_m, 1e-9) << seed;
    EXPECT_NEAR(left, all.miss_left_m, 1e-9) << seed;
  }
}

// Second route: the definition itself, every one of the 720 orders walked, for three truths.
TEST(Practice, Shares_AllOrdersWalked) {
  Crossing crossing = clean_crossing();
  crossing.site.strata[0].soil = "soft-clay";
  for (const std::uint64_t seed : {3U, 8U, 14U}) {
    const PracticeTruth truth = draw_truth(crossing, tables(), seed);
    const Debrief shared = debrief(crossing, tables(), truth);
    const Crossing real = true_crossing(crossing, truth);
    const Ground drawn(crossing.site, tables()), ground(real.site, tables());
    const Tool tool = resolve_tool(crossing.bore.tool, tables());
    const auto height = [&](const std::vector<int>& in) {
      const auto has = [&](int cause) { return std::find(in.begin(), in.end(), cause) != in.end(); };
      const SetErrors errors{has(0) ? truth.errors.level_rad : 0, has(1) ? truth.errors.aim_rad : 0,
                             has(2) ? truth.errors.up_m : 0, has(2) ? truth.errors.left_m : 0};
      const TrueBore bore = true_bore(has(3) ? ground : drawn, tool, has(3) ? real.bore : crossing.bore, errors,
                                      {truth.seed, has(5), has(4)}, has(4) ? truth.stones : std::vector<StoneHit>{});
      EXPECT_EQ(bore.path.ends, PathEnd::exit);
      return bore.path.points.back().z_m;
    };
    std::vector<int> order{0, 1, 2, 3, 4, 5};
    std::vector<double> sums(6);
    int orders = 0;
    std::map<std::vector<int>, double> known;
    const auto of = [&](std::vector<int> in) {
      std::sort(in.begin(), in.end());
      const auto [it, fresh] = known.try_emplace(in, 0);
      if (fresh) it->second = height(in);
      return it->second;
    };
    do {
      std::vector<int> in;
      for (const int cause : order) {
        const double before = of(in);
        in.push_back(cause);
        sums[static_cast<std::size_t>(cause)] += of(in) - before;
      }
      ++orders;
    } while (std::next_permutation(order.begin(), order.end()));
    ASSERT_EQ(orders, 720);
    for (std::size_t cause = 0; cause < 6; ++cause)
      EXPECT_NEAR(shared.shares[cause].up_m, sums[cause] / orders, 1e-9) << seed << " " << shared.shares[cause].cause;
  }
}

// A level error alone is the whole miss.
TEST(Practice, Shares_OneCauseTakesAll) {
  PracticeTruth truth = plain();
  truth.errors.level_rad = 0.01;
  const Debrief d = debrief(clean_crossing(), tables(), truth);
  EXPECT_NEAR(share(d, "level", true), d.miss_up_m, 1e-12);
  EXPECT_GT(d.miss_up_m, 0.06);
  EXPECT_NEAR(share(d, "wander", true), 0, 1e-12);
}

// Symmetric causes get the same: two equal shifts, one of level and one of sight, in their own coordinates.
TEST(Practice, Shares_LikeCausesLikeShares) {
  PracticeTruth truth = plain();
  truth.errors.aim_rad = 0.01;
  const Debrief sight = debrief(clean_crossing(), tables(), truth);
  EXPECT_NEAR(share(sight, "sight", false), 8 * std::tan(0.01), 1e-3);
}

// Each mark is passed when the crew heard it, and the end comes when it came.
TEST(Practice, Played_PassesItsMarksInTime) {
  const Crossing crossing = clean_crossing();
  const PracticeBore bore = practice_bore(crossing, tables(), plain());
  const Tool tool = resolve_tool(crossing.bore.tool, tables());
  const Playback played = true_playback(bore, tool);
  ASSERT_FALSE(played.empty());
  EXPECT_EQ(played.tool_length_m, tool.length.m);
  EXPECT_NEAR(played.end_s(), bore.end_time_s, 1e-9);
  ASSERT_GE(played.marks_m.size(), 3u);
  for (const PracticeMark& mark : bore.marks)
    if (mark.nose_m < bore.bore.path.length_m) {
      EXPECT_NEAR(time_at(played, mark.nose_m), mark.time_s, 0.02 * bore.end_time_s) << mark.nose_m;
    }
  EXPECT_TRUE(true_playback(PracticeBore{}, tool).empty());
}

TEST(Practice, Service_MarkedOffIsStruck) {
  Crossing crossing = clean_crossing();
  crossing.site.utilities = {water_main(4, 98.9)};
  EXPECT_EQ(practice_bore(crossing, tables(), plain()).end, PracticeEnd::arrived);
  PracticeTruth truth = plain();
  truth.services = {{"u1", 0, -0.3}};
  const PracticeBore bore = practice_bore(crossing, tables(), truth);
  EXPECT_EQ(bore.end, PracticeEnd::struck);
  EXPECT_EQ(bore.struck, "u1");
  EXPECT_NEAR(bore.bore.path.length_m, 4, 0.2);
  // Moved level across its line: that of a service along y is a shift along x.
  truth.services = {{"u1", 0.3, 0}};
  const Crossing real = true_crossing(crossing, truth);
  EXPECT_NEAR(real.site.utilities[0].path[0].x_m, 4 - 0.3, 1e-12);
}

TEST(Practice, TrueCrossing_SoilsTrenchesConstant) {
  Crossing crossing = clean_crossing();
  crossing.site.strata[0].values.undrained_strength = Pressure{45e3};
  PracticeTruth truth = plain();
  truth.soils = {{"l1", "soft-clay"}};
  truth.steer_constant = 0.08;
  const Crossing real = true_crossing(crossing, truth);
  EXPECT_EQ(real.site.strata[0].soil, "soft-clay");
  EXPECT_FALSE(real.site.strata[0].values.undrained_strength);
  EXPECT_EQ(real.bore.model.steer_constant->v, 0.08);
  EXPECT_EQ(crossing.site.strata[0].soil, "firm-clay");
}

// The same seed is the same truth, another seed another; draws are as wide as the crossing's own spreads say.
TEST(Practice, Draw_SeedAndSpread) {
  const Crossing crossing = clean_crossing();
  EXPECT_EQ(draw_truth(crossing, tables(), 5), draw_truth(crossing, tables(), 5));
  EXPECT_NE(draw_truth(crossing, tables(), 5), draw_truth(crossing, tables(), 6));
  double level = 0;
  int trenches = 0, moved = 0;
  constexpr int count = 3000;
  for (std::uint64_t seed = 1; seed <= count; ++seed) {
    const PracticeTruth truth = draw_truth(crossing, tables(), seed);
    level += truth.errors.level_rad * truth.errors.level_rad / count;
    trenches += static_cast<int>(truth.trenches.size());
    moved += static_cast<int>(truth.services.size());
    for (const MovedService& m : truth.services) EXPECT_NEAR(std::abs(m.across_m) + std::abs(m.up_m), 0.3, 1e-12);
  }
  EXPECT_NEAR(std::sqrt(level), 0.005, 3 * 0.005 / std::sqrt(2.0 * count));
  for (const int n : {trenches, moved})
    EXPECT_NEAR(n / static_cast<double>(count), 1.0 / 3, 3 * std::sqrt(2.0 / 9 / count));
}

// The crew sees marks, times, readings with their own errors: nothing of the record is the truth itself.
TEST(PracticeRun, Crew_SeesMarksAndReadingsOnly) {
  const Crossing crossing = clean_crossing();
  PracticeTruth truth = draw_truth(crossing, tables(), 4);
  truth.services.clear();
  PracticeRun run(crossing, tables(), truth);
  EXPECT_EQ(run.choices(true), (std::vector{PracticeChoice::go_on, PracticeChoice::turn_level}));
  run.choose(PracticeChoice::go_on);
  const double stop_m = resolve_tool(crossing.bore.tool, tables()).length.m / 3;
  EXPECT_NEAR(run.nose_m(), stop_m, 1e-12);
  EXPECT_FALSE(run.sound().empty());
  const auto now = run.choices(true);
  EXPECT_TRUE(std::count(now.begin(), now.end(), PracticeChoice::fix));
  const auto without = run.choices(false);
  EXPECT_FALSE(std::count(without.begin(), without.end(), PracticeChoice::fix));
  run.choose(PracticeChoice::fix);
  const auto fix = std::find_if(run.record().readings.begin(), run.record().readings.end(),
                                [](const Reading& r) { return r.kind == ReadingKind::fix; });
  ASSERT_NE(fix, run.record().readings.end());
  const double found_m = fix->offset->m;
  EXPECT_EQ(run.record().readings.size(), 5u);  // start, mark, stop, fix, go
  while (!run.over()) run.choose(PracticeChoice::go_on);
  EXPECT_EQ(run.record().readings.back().kind, ReadingKind::end);
  const PathPoint real = point_at(run.truth().bore.path, stop_m);
  EXPECT_NE(found_m, real.y_m);
  EXPECT_LT(std::abs(found_m - real.y_m), 0.25);
  EXPECT_TRUE(run.choices(true).empty());
}

// Restarted with the same truth and the same choices it is the same bore to the last digit.
TEST(PracticeRun, Restart_IsTheSameBore) {
  const Crossing crossing = clean_crossing();
  const auto play = [&] {
    PracticeRun run(crossing, tables(), draw_truth(crossing, tables(), 12));
    run.choose(PracticeChoice::go_on);
    run.choose(PracticeChoice::fix);
    while (!run.over()) run.choose(PracticeChoice::go_on);
    return run.record();
  };
  EXPECT_EQ(play(), play());
}

// Decisions are judged by what the crew had seen: going on with nothing against it is right, backing out then is not.
TEST(PracticeRun, Decisions_ByWhatWasSeen) {
  const Crossing crossing = clean_crossing();
  PracticeRun on(crossing, tables(), plain());
  on.choose(PracticeChoice::turn_level);
  on.choose(PracticeChoice::go_on);
  on.choose(PracticeChoice::go_on);
  ASSERT_EQ(on.decisions().size(), 3u);
  for (const PracticeDecision& decision : on.decisions()) EXPECT_TRUE(decision.right());
  on.choose(PracticeChoice::back_out);
  EXPECT_TRUE(on.over());
  EXPECT_EQ(on.end(), PracticeEnd::stopped);
  EXPECT_FALSE(on.decisions()[3].right());
  const PracticeResult result = on.result("A", debrief(crossing, tables(), plain()));
  EXPECT_EQ(result.decisions, 4);
  EXPECT_EQ(result.right, 3);
  EXPECT_EQ(result.end, "stopped");
}

// common practice, no source: a level is turned end for end before the air is opened. Twice its own error shows, and
// what is left is how finely it reads.
TEST(PracticeRun, LevelTurned_ShowsTwiceItsErrorAndTakesItOut) {
  const Crossing crossing = clean_crossing();
  PracticeTruth truth = plain();
  truth.errors.level_rad = 0.0105;
  PracticeRun run(crossing, tables(), truth);
  EXPECT_FALSE(run.level_shown_rad());
  run.choose(PracticeChoice::turn_level);
  ASSERT_TRUE(run.level_shown_rad());
  EXPECT_NEAR(*run.level_shown_rad(), 2 * 0.0105, 0.005);
  EXPECT_EQ(run.choices(true), (std::vector{PracticeChoice::go_on})) << "once is enough";
  while (!run.over()) run.choose(PracticeChoice::go_on);
  EXPECT_LT(std::abs(run.conditions().errors.level_rad), 0.002);
  // Who does not turn it has gone on without knowing.
  PracticeRun blind(crossing, tables(), truth);
  blind.choose(PracticeChoice::go_on);
  ASSERT_EQ(blind.decisions().size(), 1u);
  EXPECT_FALSE(blind.decisions()[0].right());
  EXPECT_EQ(blind.decisions()[0].reason, PracticeReason::level_not_turned);
}

// Stops are those of the run sheet, and two before that while the tail is in the pit.
TEST(PracticeRun, Stops_AreTheRunSheets) {
  const Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  PracticeRun run(crossing, tables(), plain());
  std::vector<double> noses;
  while (!run.over()) {
    run.choose(PracticeChoice::go_on);
    if (!run.over()) noses.push_back(run.nose_m());
  }
  ASSERT_GT(noses.size(), 3u);
  for (std::size_t i = 2; i < noses.size(); ++i) {
    ASSERT_LT(i - 2, answer.marks.size());
    EXPECT_NEAR(noses[i], *answer.marks[i - 2].nose_m, 1e-9) << i;
  }
}

// Rejection: a layout without a path, an exit behind the launch, ends at once.
TEST(PracticeRun, Rejection_NoPath) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{103};
  PracticeRun run(crossing, tables(), plain());
  run.choose(PracticeChoice::go_on);
  EXPECT_TRUE(run.over());
}

}  // namespace
}  // namespace burrow::test

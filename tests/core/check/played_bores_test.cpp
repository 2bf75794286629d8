// Other bores as they happen: at the pace of the one predicted, ending where they ended, past the lines as they pass
// them.

#include "burrow/check/played_bores.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "burrow/check/predicted_playback.h"
#include "burrow/check/trials_plan.h"
#include "burrow/trials/trials.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

struct Predicted {
  Crossing crossing = clean_crossing();
  Assessment answer = judged(crossing);
  Playback bore = predicted_playback(answer, resolve_tool(crossing.bore.tool, tables()));
};

BorePath straight(double length_m, double step_m, double y_m) {
  BorePath path;
  for (double s = 0; s <= length_m + 1e-9; s += step_m) {
    PathPoint p;
    p.s_m = p.x_m = s;
    p.y_m = y_m;
    p.z_m = 99;
    path.points.push_back(p);
  }
  path.length_m = length_m;
  return path;
}

// Each metre takes as long as on the predicted bore; the times of that are the second route.
TEST(PlayedBores, Pace_IsThatOfThePrediction) {
  const Predicted p;
  ASSERT_FALSE(p.bore.empty());
  const double end_m = p.bore.path.points.back().s_m;
  const Playback shorter = at_pace_of(p.bore, straight(std::floor(end_m) - 2, 0.5, 0));
  ASSERT_FALSE(shorter.empty());
  for (std::size_t i = 0; i < shorter.time_s.size(); ++i)
    EXPECT_NEAR(shorter.time_s[i], time_at(p.bore, shorter.path.points[i].s_m), 1e-9) << i;
  EXPECT_LT(shorter.end_s(), p.bore.end_s());
  EXPECT_LT(shorter.marks_m.size(), p.bore.marks_m.size());
  // One that goes on further is as fast there as on the last metre.
  const Playback longer = at_pace_of(p.bore, straight(end_m + 3, 0.5, 0));
  const double last_metre_s = p.bore.end_s() - time_at(p.bore, end_m - 1);
  EXPECT_NEAR(longer.end_s(), p.bore.end_s() + (longer.path.points.back().s_m - end_m) * last_metre_s, 1e-6);
  EXPECT_TRUE(std::is_sorted(longer.time_s.begin(), longer.time_s.end()));
}

TEST(PlayedBores, WithoutAPath_IsEmpty) {
  const Predicted p;
  EXPECT_TRUE(at_pace_of(p.bore, {}).empty());
  EXPECT_TRUE(at_pace_of({}, straight(5, 0.5, 0)).empty());
  EXPECT_TRUE(trial_playback({}, 0, p.bore).empty());
  EXPECT_TRUE(lines_beside({}, p.crossing, tables()).empty());
}

TEST(PlayedBores, Trial_EndsWhereItEnded) {
  Predicted p;
  p.crossing.bore.trials.count = 300;
  const Trials trials = run_trials(p.crossing, tables(), trials_setup(p.crossing, tables(), p.answer));
  ASSERT_GT(trials.paths.size(), 20u);
  for (std::size_t i = 0; i < 20; ++i) {
    const Playback bore = trial_playback(trials, i, p.bore);
    if (trials.paths[i].size() < 2) continue;
    ASSERT_FALSE(bore.empty()) << i;
    const PathPoint& end = bore.path.points.back();
    EXPECT_NEAR(end.x_m, trials.outcomes[i].station_m, 0.11) << i;  // within a step
    EXPECT_NEAR(end.z_m, trials.outcomes[i].elevation_m, 0.02) << i;
    for (std::size_t k = 1; k < bore.path.points.size(); ++k)
      EXPECT_GT(bore.path.points[k].s_m, bore.path.points[k - 1].s_m);
  }
  EXPECT_TRUE(trial_playback(trials, trials.paths.size(), p.bore).empty());
}

// By hand: a line square across, 1 m above a straight bore; half of each diameter off is the clear distance.
TEST(PlayedBores, Passed_ClearDistanceIsThatOfThisBore) {
  Predicted p;
  p.crossing.site.utilities.clear();
  Utility line;
  line.id = "u1";
  line.kind = UtilityKind::gas;
  line.outside_diameter = Length{0.2};
  line.path = {{5, -10, 100}, {5, 10, 100}};
  p.crossing.site.utilities.push_back(line);
  Playback bore = at_pace_of(p.bore, straight(8, 0.5, 0));
  bore.tool_diameter_m = 0.1;
  const std::vector<UtilityAnswer> passed = lines_beside(bore, p.crossing, tables());
  ASSERT_EQ(passed.size(), 1u);
  ASSERT_TRUE(passed[0].separation_m && passed[0].required_m && passed[0].on_bore);
  EXPECT_NEAR(*passed[0].separation_m, 1 - 0.1 - 0.05, 1e-9);
  EXPECT_NEAR(passed[0].on_bore->x_m, 5, 1e-9);
  // A line whose depth nobody knows has no distance.
  for (PathVertex& v : p.crossing.site.utilities[0].path) v.z_m.reset();
  EXPECT_FALSE(lines_beside(bore, p.crossing, tables())[0].separation_m);
}

}  // namespace
}  // namespace burrow::test

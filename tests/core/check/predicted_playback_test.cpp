// The predicted bore as it happens agrees with the answer it is made of.

#include "burrow/check/predicted_playback.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

TEST(PredictedPlayback, TimesAndMarks_AreThoseOfTheAnswer) {
  const Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  const Playback bore = predicted_playback(answer, resolve_tool(crossing.bore.tool, tables()));
  ASSERT_FALSE(bore.empty());
  ASSERT_TRUE(answer.advance_time_s.p50);
  EXPECT_NEAR(bore.end_s(), *answer.advance_time_s.p50, 1e-9);
  EXPECT_EQ(bore.path.points.back(), answer.bore.points.back());
  EXPECT_TRUE(std::is_sorted(bore.time_s.begin(), bore.time_s.end()));
  ASSERT_EQ(bore.marks_m.size(), answer.marks.size());
  for (std::size_t i = 0; i < bore.marks_m.size(); ++i)
    EXPECT_NEAR(time_at(bore, bore.marks_m[i]), *answer.marks[i].time_s.p50, 1.0) << i;  // the run sheet's own
}

// A tool that would stop stays where it stops: it does not jump to the exit.
TEST(PredictedPlayback, WhereItWouldStop_ItEnds) {
  const Crossing crossing = clean_crossing();
  Assessment answer = judged(crossing);
  answer.advance.stop_s_m = answer.bore.points.back().s_m / 2;
  const Playback bore = predicted_playback(answer, resolve_tool(crossing.bore.tool, tables()));
  ASSERT_FALSE(bore.empty());
  EXPECT_LE(nose_at(bore, 1e9), *answer.advance.stop_s_m);
  EXPECT_GT(nose_at(bore, 1e9), *answer.advance.stop_s_m - 0.5) << "and not long before";
}

TEST(PredictedPlayback, WithoutAPathOrAPace_IsEmpty) {
  EXPECT_TRUE(predicted_playback(Assessment{}, Tool{}).empty());
  Assessment answer = judged(clean_crossing());
  answer.advance.points.clear();
  EXPECT_TRUE(predicted_playback(answer, Tool{}).empty());
}

}  // namespace
}  // namespace burrow::test

// The recorded day as it happens: the nose at the times that were read.

#include "burrow/day/recorded_playback.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Reading reading(ReadingKind kind, double time_s, std::optional<double> nose_m = {}) {
  Reading r;
  r.kind = kind;
  r.time = Duration{time_s};
  if (nose_m) r.nose = Length{*nose_m};
  return r;
}

struct Day {
  Crossing crossing = clean_crossing();
  DayRecord record;
  Day() {
    record.id = "r1";
    record.readings = {reading(ReadingKind::start, 0, 0), reading(ReadingKind::mark, 120, 1),
                       reading(ReadingKind::mark, 300, 2), reading(ReadingKind::mark, 420, 3)};
  }
  [[nodiscard]] Playback played() const {
    return recorded_playback(record, day_answer(crossing, tables(), record),
                             resolve_tool(crossing.bore.tool, tables()));
  }
};

TEST(RecordedPlayback, NoseIsWhereItWasRead) {
  const Day day;
  const Playback bore = day.played();
  ASSERT_FALSE(bore.empty());
  EXPECT_NEAR(nose_at(bore, 120), 1, 1e-3);
  EXPECT_NEAR(nose_at(bore, 300), 2, 1e-3);
  EXPECT_NEAR(nose_at(bore, 60), 0.5, 1e-3);  // straight in between
  EXPECT_NEAR(bore.end_s(), 420, 1e-9);
  EXPECT_NEAR(bore.path.points.back().s_m, 3, 1e-9);
  EXPECT_EQ(bore.marks_m.size(), 3u);
  EXPECT_GT(bore.tool_diameter_m, 0);
}

// A clock that starts at some hour: the bore starts at 0.
TEST(RecordedPlayback, TimeRunsFromTheStart) {
  Day day;
  for (Reading& r : day.record.readings) r.time.s += 3600;
  EXPECT_NEAR(day.played().end_s(), 420, 1e-9);
}

TEST(RecordedPlayback, WhatWasStruckThroughOrIsAskedAbout_SaysNothing) {
  Day day;
  day.record.readings.push_back(reading(ReadingKind::mark, 500, 9));
  day.record.readings.back().cancelled = "slipped finger";
  EXPECT_NEAR(day.played().path.points.back().s_m, 3, 1e-9);
  Day odd;
  odd.record.readings.push_back(reading(ReadingKind::mark, 500, 1.5));  // behind an earlier one
  odd.record.readings.push_back(reading(ReadingKind::mark, 520, 4000));
  const Playback bore = odd.played();
  EXPECT_NEAR(bore.path.points.back().s_m, 3, 1e-9);
  EXPECT_NEAR(bore.end_s(), 420, 1e-9);
}

TEST(RecordedPlayback, DrivenBack_TheFurthestStays) {
  Day day;
  day.record.readings.push_back(reading(ReadingKind::back, 600, 0.5));
  const Playback bore = day.played();
  EXPECT_NEAR(bore.path.points.back().s_m, 3, 1e-9);
  EXPECT_TRUE(std::is_sorted(bore.time_s.begin(), bore.time_s.end()));
}

TEST(RecordedPlayback, NothingBored_IsEmpty) {
  Day day;
  day.record.readings.resize(1);
  EXPECT_TRUE(day.played().empty());
  day.record.readings.clear();
  EXPECT_TRUE(day.played().empty());
  Day no_start;
  no_start.record.readings.erase(no_start.record.readings.begin());
  EXPECT_TRUE(no_start.played().empty());
}

}  // namespace
}  // namespace burrow::test

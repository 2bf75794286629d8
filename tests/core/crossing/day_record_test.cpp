// What a record says before anybody computes.
#include "burrow/crossing/day_record.h"

#include <gtest/gtest.h>

#include "burrow/crossing/blank.h"
#include "burrow/crossing/locks.h"

namespace burrow {
namespace {

Reading of_kind(ReadingKind kind) {
  Reading reading;
  reading.kind = kind;
  return reading;
}

TEST(DayRecords, StruckThrough_CountsNoMore) {
  Reading mark = of_kind(ReadingKind::mark);
  EXPECT_TRUE(counts(mark));
  mark.cancelled = "";
  EXPECT_FALSE(counts(mark));
  Reading danger = of_kind(ReadingKind::danger);
  danger.cancelled = " ";
  EXPECT_TRUE(counts(danger)) << "a danger is taken back only with a reason";
  danger.cancelled = "glove";
  EXPECT_FALSE(counts(danger));
  Reading struck = of_kind(ReadingKind::end);
  struck.how = EndHow::struck;
  struck.cancelled = "";
  EXPECT_TRUE(counts(struck));
}

TEST(DayRecords, End_TheLastThatCounts) {
  DayRecord record;
  EXPECT_FALSE(ended(record));
  Reading end = of_kind(ReadingKind::end);
  end.how = EndHow::arrived;
  end.cancelled = "";
  record.readings = {end};
  EXPECT_FALSE(ended(record));
  end.cancelled.reset();
  record.readings.push_back(end);
  EXPECT_EQ(end_of(record), EndHow::arrived);
}

TEST(DayRecords, FurthestNose_ByAnyReading) {
  DayRecord record;
  Reading mark = of_kind(ReadingKind::mark), fix = of_kind(ReadingKind::fix), wrong = mark;
  mark.nose = Length{3};
  fix.nose = Length{4.8};
  wrong.nose = Length{1e4};
  wrong.cancelled = "";
  record.readings = {mark, fix, wrong};
  EXPECT_EQ(furthest_nose(record), Length{4.8});
}

TEST(DayRecords, Layout_KeptAndCompared) {
  Crossing crossing = blank_crossing();
  DayRecord record;
  EXPECT_TRUE(layout_stands(crossing, record)) << "nobody knows better";
  record.layout = layout_of(crossing);
  const Crossing then = crossing;
  EXPECT_TRUE(layout_stands(crossing, record));
  crossing.bore.trials.count.set(100);
  EXPECT_TRUE(layout_stands(crossing, record)) << "a number of trials is no layout";
  crossing.bore.launch.elevation = Length{98.1};
  EXPECT_FALSE(layout_stands(crossing, record));
  EXPECT_EQ(as_bored(crossing, record).bore, then.bore);
  crossing = then;
  crossing.bore.tool.tool_class = "tool-95";
  EXPECT_FALSE(layout_stands(crossing, record));
  crossing = then;
  crossing.pipe = Pipe{};
  EXPECT_FALSE(layout_stands(crossing, record));
}

TEST(DayRecords, Layout_LockedWhileARecordRuns) {
  Crossing crossing = blank_crossing();
  EXPECT_FALSE(member_locked(crossing, "/bore/launch"));
  crossing.record.emplace_back().readings = {of_kind(ReadingKind::start)};
  EXPECT_TRUE(member_locked(crossing, "/bore/launch/elevation_m"));
  EXPECT_FALSE(member_locked(crossing, "/site/utilities/u1/path"));
  crossing.record[0].readings.push_back(of_kind(ReadingKind::end));
  EXPECT_FALSE(member_locked(crossing, "/bore/launch/elevation_m"));
}

}  // namespace
}  // namespace burrow

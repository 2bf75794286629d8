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

// Tapped, struck, or written down: gone only with a reason.
TEST(DayRecords, Danger_TappedStruckOrWritten) {
  Reading tapped = of_kind(ReadingKind::danger), struck = of_kind(ReadingKind::end), note = of_kind(ReadingKind::note),
          stop = of_kind(ReadingKind::stop);
  struck.how = EndHow::struck;
  note.text = "smell of gas";
  stop.why = "es zischt";
  for (Reading one : {tapped, struck, note, stop}) {
    DayRecord record;
    record.readings = {one};
    EXPECT_TRUE(danger_told(record));
    record.readings[0].confirmed = true;
    record.readings[0].cancelled = "";
    EXPECT_TRUE(danger_told(record));
    record.readings[0].cancelled = "glove";
    EXPECT_FALSE(danger_told(record));
  }
  note.text = "coffee";
  EXPECT_FALSE(tells_danger(note));
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

// By its marks it lies half way; a fix typed far ahead bears nothing out, somebody who confirms it does.
TEST(DayRecords, Arrived_HalfWayIsDoubted) {
  Crossing crossing = blank_crossing();
  crossing.bore.launch.station = Length{0};
  crossing.bore.exit.station = Length{14};
  DayRecord record;
  EXPECT_FALSE(arrival_doubted(crossing, record));
  record.readings = {of_kind(ReadingKind::start), of_kind(ReadingKind::mark), of_kind(ReadingKind::fix),
                     of_kind(ReadingKind::end)};
  Reading &mark = record.readings[1], &fix = record.readings[2], &end = record.readings[3];
  mark.nose = Length{3};
  fix.nose = Length{12};
  end.how = EndHow::arrived;
  EXPECT_TRUE(arrival_doubted(crossing, record));
  end.confirmed = true;
  EXPECT_FALSE(arrival_doubted(crossing, record));
  end.confirmed.reset();
  fix.confirmed = true;
  EXPECT_FALSE(arrival_doubted(crossing, record));
  fix.confirmed.reset();
  mark.nose = Length{1e4};
  EXPECT_TRUE(arrival_doubted(crossing, record)) << "ten kilometres";
  mark.nose = Length{11.5};
  EXPECT_FALSE(arrival_doubted(crossing, record));
  end.how = EndHow::stuck;
  mark.nose = Length{3};
  EXPECT_FALSE(arrival_doubted(crossing, record));
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

TEST(DayRecords, Layout_NotChangedUnderWay) {
  Crossing crossing = blank_crossing();
  crossing.record.emplace_back().id = "d1";
  crossing.record[0].layout = layout_of(crossing);
  crossing.record[0].readings = {of_kind(ReadingKind::start)};
  Crossing other = crossing;
  other.name = "another name";
  EXPECT_FALSE(changes_layout_under_way(crossing, other));
  other.bore.tool.tool_class = "tool-95";
  EXPECT_TRUE(changes_layout_under_way(crossing, other));
  EXPECT_FALSE(changes_layout_under_way(other, crossing)) << "put back as it was";
  other.record[0].readings.push_back(of_kind(ReadingKind::end));
  EXPECT_FALSE(changes_layout_under_way(crossing, other)) << "it has ended";
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

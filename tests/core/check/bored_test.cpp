// What was bored before: struck, lost, given up; the old hole; a layout that was changed since.
#include <gtest/gtest.h>

#include "burrow/check/peg_limits.h"
#include "burrow/crossing/day_record.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// The clean crossing with a bore of so far that ended so.
Crossing after(std::optional<EndHow> how, double nose_m = 4.9) {
  Crossing crossing = clean_crossing();
  DayRecord record;
  record.id = "d1";
  record.started = "2026-03-01T08:00:00";
  record.layout = layout_of(crossing);
  record.readings.resize(2);
  record.readings[0].kind = ReadingKind::start;
  record.readings[1].kind = ReadingKind::mark;
  record.readings[1].nose = Length{nose_m};
  if (how) {
    record.readings.emplace_back().kind = ReadingKind::end;
    record.readings.back().how = how;
  }
  crossing.record = {record};
  return crossing;
}

void release(Crossing& crossing) {
  crossing.record[0].aftermath.released = {"seen and pressure-tested", "the owner's inspector", "2026-03-02", ""};
}

TEST(Bored, StruckStuckLostDaylight_SaySoFirst) {
  const std::pair<EndHow, const char*> all[] = {{EndHow::struck, "record.struck"},
                                                {EndHow::stuck, "record.stuck"},
                                                {EndHow::lost, "record.lost"},
                                                {EndHow::daylight, "record.daylight"}};
  for (const auto& [how, code] : all) {
    Crossing crossing = after(how);
    crossing.site.surface[0].permission.set(Permission::refused);  // another stop beside it
    const Assessment answer = judged(crossing);
    EXPECT_EQ(answer.verdict, Verdict::stop);
    EXPECT_EQ(answer.findings.front().code, code) << listed(answer);
    release(crossing);
    EXPECT_FALSE(find(judged(crossing), code));
    crossing.record[0].aftermath.released.date = "2026-03-09";  // after the day of judging
    EXPECT_TRUE(find(judged(crossing), code));
    crossing.record[0].aftermath.released = {"", "x", "2026-03-02", ""};
    EXPECT_TRUE(find(judged(crossing), code)) << "not said how";
  }
}

TEST(Bored, DangerTapped_StopsLikeAStrike) {
  Crossing crossing = after(EndHow::arrived);
  EXPECT_FALSE(find(judged(crossing), "record.struck"));
  crossing.record[0].readings.emplace_back().kind = ReadingKind::danger;
  EXPECT_TRUE(find(judged(crossing), "record.struck"));
}

// What somebody wrote is not forgotten with the end: "arrived" beside "struck gas".
TEST(Bored, DangerInWords_StopsLikeAStrike) {
  for (const EndHow how : {EndHow::arrived, EndHow::backed_out}) {
    Crossing crossing = after(how);
    Reading note;
    note.text = "struck gas";
    crossing.record[0].readings.insert(crossing.record[0].readings.begin() + 2, note);
    EXPECT_TRUE(find(judged(crossing), "record.struck"));
    Reading& written = crossing.record[0].readings[2];
    written.confirmed = true;
    EXPECT_TRUE(find(judged(crossing), "record.struck")) << "it stands";
    written.cancelled = "";
    EXPECT_TRUE(find(judged(crossing), "record.struck")) << "without a reason";
    written.cancelled = "an old pipe, empty, the owner's inspector";
    EXPECT_FALSE(find(judged(crossing), "record.struck"));
  }
}

// Said to have arrived with its marks half way: incomplete, and the hole is in the way.
TEST(Bored, ArrivedHalfWay_IsAHole) {
  Crossing crossing = after(EndHow::arrived, 3);
  EXPECT_TRUE(find(judged(crossing), "missing.record-arrival"));
  EXPECT_EQ(judged(crossing).verdict, Verdict::incomplete);
  EXPECT_TRUE(find(judged(crossing), "record.restart-near"));
  crossing.record[0].readings.back().confirmed = true;
  EXPECT_FALSE(find(judged(crossing), "missing.record-arrival"));
  EXPECT_FALSE(find(judged(crossing), "record.restart-near"));
}

// An abandoned hole: its state must be known, and a restart keeps five diameters of fresh ground.
TEST(Bored, OldHole_StateAndFiveDiameters) {
  Crossing crossing = after(EndHow::backed_out);
  EXPECT_TRUE(find(judged(crossing), "missing.record-hole"));
  EXPECT_EQ(judged(crossing).verdict, Verdict::incomplete);
  crossing.record[0].aftermath.hole = HoleState::grouted;
  const Assessment same = judged(crossing);
  EXPECT_FALSE(find(same, "missing.record-hole"));
  ASSERT_TRUE(find(same, "record.restart-near"));
  EXPECT_NEAR(*find(same, "record.restart-near")->measured, 0, 1e-6);
  EXPECT_NEAR(*find(same, "record.restart-near")->limit, 5 * 0.065, 1e-12);
  for (const auto& [aside, near] : {std::pair{0.32, true}, {0.33, false}}) {
    Crossing moved = crossing;
    moved.bore.launch.offset.set(Length{aside});
    moved.bore.exit.offset.set(Length{aside});
    EXPECT_EQ(find(judged(moved), "record.restart-near") != nullptr, near) << aside;
  }
  crossing.record[0].aftermath.hole = HoleState::open;
  EXPECT_TRUE(find(judged(crossing), "record.hole-open"));
  crossing.record[0].aftermath.hole = HoleState::tool_inside;
  EXPECT_TRUE(find(judged(crossing), "record.tool-inside"));
  crossing.record[0].aftermath.hole = HoleState::dug_out;
  EXPECT_FALSE(find(judged(crossing), "record.restart-near"));
}

TEST(Bored, LayoutChanged_Warns) {
  for (const std::optional<EndHow> how : {std::optional<EndHow>(), std::optional(EndHow::arrived)}) {
    Crossing crossing = after(how);
    EXPECT_FALSE(find(judged(crossing), "record.layout-changed"));
    crossing.bore.launch.elevation.m -= 0.1;
    EXPECT_TRUE(find(judged(crossing), "record.layout-changed"));
    crossing.record[0].layout = {};  // a record of before
    EXPECT_FALSE(find(judged(crossing), "record.layout-changed"));
  }
}

TEST(Bored, NothingEnded_NothingSaid) {
  for (const Finding& finding : judged(after(std::nullopt)).findings)
    EXPECT_FALSE(finding.code.starts_with("record.")) << finding.code;
}

TEST(PegLimits, StrictestHereElseStrictestOfAllElseRoad) {
  Crossing crossing = clean_crossing();
  const auto stop = [&](double station_m) {
    return peg_limits(crossing, tables(), judged(crossing).bore.points, station_m).stop.value;
  };
  EXPECT_EQ(stop(4), 0.010);
  EXPECT_EQ(stop(-3), 0.010);
  SurfaceFeature track = lane(6.5, 7.5);
  track.id = "f2";
  track.kind = SurfaceKind::track;
  track.rule.reset();
  crossing.site.surface.push_back(track);
  EXPECT_EQ(stop(7), 0.006);
  EXPECT_EQ(stop(3), 0.010) << "in the road, away from the track";
  EXPECT_EQ(stop(-3), 0.006) << "beside everything: the strictest";
  crossing.site.surface.clear();
  EXPECT_EQ(stop(4), 0.010);
}

}  // namespace
}  // namespace burrow::test

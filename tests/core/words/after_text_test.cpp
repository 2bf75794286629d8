// What is left after a bore: what nobody entered is not done. Common practice, no source.
#include "burrow/words/after_text.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

struct Ended : Day {
  explicit Ended(EndHow how, double nose_m = 6.5) {
    mark(nose_m);
    Reading end = reading(ReadingKind::end, 3600);
    end.how = how;
    add(end);
  }
  [[nodiscard]] const AfterLine* line(const char* begins) const {
    static std::vector<AfterLine> all;
    all = after_lines(crossing, record, UnitSystem::metric);
    const auto it =
        std::find_if(all.begin(), all.end(), [&](const AfterLine& l) { return l.what.starts_with(begins); });
    return it == all.end() ? nullptr : &*it;
  }
  [[nodiscard]] std::string state() {
    crossing.record = {record};
    return record_state(crossing, UnitSystem::metric);
  }
};

TEST(AfterText, NothingEntered_NothingDone) {
  const Ended ended(EndHow::arrived);
  for (const AfterLine& line : after_lines(ended.crossing, ended.record, UnitSystem::metric))
    EXPECT_FALSE(line.done) << line.what;
  EXPECT_TRUE(ended.line("Pull-in"));
  EXPECT_TRUE(ended.line("Closed around"));
  EXPECT_FALSE(ended.line("The hole")) << "it arrived";
}

TEST(AfterText, PullIn_WhatWhenAndPullOrLink) {
  Ended ended(EndHow::arrived);
  PullIn& pull = ended.record.aftermath.pull_in;
  pull = {"2026-03-02", "crew", "8 m PE 55", {}, {}, "A. Nobody", ""};
  EXPECT_FALSE(ended.line("Pull-in")->done) << "neither pull nor link";
  pull.link_rating = Force{8000};
  EXPECT_TRUE(ended.line("Pull-in")->done);
  pull.peak = Force{9000};
  EXPECT_FALSE(ended.line("Pull-in")->done) << "more than the link is rated for";
  pull.peak = Force{2000};
  EXPECT_TRUE(ended.line("Pull-in")->done);
  pull.date.reset();
  EXPECT_FALSE(ended.line("Pull-in")->done);
  pull.date = "2026-03-02";
  pull.watched_by = " ";
  EXPECT_FALSE(ended.line("Pull-in")->done) << "nobody watched for strikes";
}

TEST(AfterText, GivenUp_TheHole) {
  Ended ended(EndHow::backed_out);
  EXPECT_FALSE(ended.line("Pull-in"));
  for (const auto& [state, word] : EnumNames<HoleState>::list) {
    ended.record.aftermath.hole = state;
    EXPECT_EQ(ended.line("The hole")->done, state == HoleState::grouted || state == HoleState::dug_out) << word;
  }
}

TEST(AfterText, State_InAFewWords) {
  Day running;
  EXPECT_EQ(record_state(running.crossing, UnitSystem::metric), "");
  running.crossing.record = {running.mark(3).record};
  EXPECT_EQ(record_state(running.crossing, UnitSystem::metric), "under way, nose 3.00 m of 8.00 m");
  running.crossing.record[0].readings.push_back(reading(ReadingKind::mark, 2000, 1e4));
  EXPECT_EQ(record_state(running.crossing, UnitSystem::metric), "under way, nose 8.00 m of 8.00 m");
  EXPECT_EQ(Ended(EndHow::struck).state(), "danger: everybody out, not released");
  EXPECT_EQ(Ended(EndHow::arrived).state().find("arrived, "), 0u) << "something is left to do";
  EXPECT_EQ(Ended(EndHow::arrived, 3).state().find("said to have arrived"), 0u) << Ended(EndHow::arrived, 3).state();
  EXPECT_TRUE(Ended(EndHow::arrived, 3).line("The hole"));
  Ended written(EndHow::backed_out);
  Reading note = reading(ReadingKind::note, 3000);
  note.text = "struck gas";
  written.add(note);
  EXPECT_EQ(written.state(), "danger: everybody out, not released");
  Ended released(EndHow::struck);
  released.record.aftermath.released = {"made safe by its owner", "A. Nobody", "2026-03-02", ""};
  EXPECT_EQ(released.state().find("struck"), 0u) << released.state();
}

}  // namespace
}  // namespace burrow::test

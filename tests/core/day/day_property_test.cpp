// No reading that makes things worse makes the advice milder, and none that is taken away either.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "burrow/bore/point_on_path.h"
#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

/// A day somewhere on the way, with a gas main somewhere about, on a crossing judged once.
struct RandomDay : Day {
  Assessment assessment;
  std::mt19937 engine;
  double nose = 0;

  explicit RandomDay(unsigned seed) : engine(seed) {
    crossing.site.utilities = {gas_beside(1 + 6 * unit(), 97.0 + 1.8 * unit())};
    if (unit() < 0.3) crossing.site.utilities[0].kind = UtilityKind::telecom;
    if (unit() < 0.3) crossing.site.utilities[0].path = {{4, -8, 96.0}, {4, 8, 96.0}};
    assessment = judged(crossing);
    const StartGate gate = start_gate(crossing, assessment, days_of(record, tables().judged_on));
    if (unit() < 0.5) record.taken_on = TakenOn{"A. Nobody", "agreed", "2026-03-02", gate.to_take_on, ""};
    nose = 0.8 + 5 * unit();
    add(reading(ReadingKind::mark, expected_s(nose), nose));
    Reading done = reading(ReadingKind::done, record.readings.back().time.s);
    for (const auto& [task, word] : EnumNames<MarkTask>::list) done.tasks.emplace_back(word);
    if (unit() < 0.7) add(done);
  }
  double unit() { return std::uniform_real_distribution<double>(0, 1)(engine); }
  [[nodiscard]] int grave(const DayRecord& of) const {
    const DayAnswer day = day_answer(crossing, tables(), of, assessment);
    return day.advice ? gravity(*day.advice) : 0;
  }
  [[nodiscard]] int grave() const { return grave(record); }
  [[nodiscard]] double last_s() const { return record.readings.back().time.s; }
  [[nodiscard]] DayRecord with(Reading r) const {
    DayRecord more = record;
    r.time.s = std::max(r.time.s, last_s() + 1);
    more.readings.push_back(std::move(r));
    return more;
  }
};

constexpr unsigned days = 60;

TEST(DayProperty, WorseReadings_NeverMilder) {
  int graver = 0;
  for (unsigned seed = 1; seed <= days; ++seed) {
    RandomDay day(seed);
    const int before = day.grave();
    std::vector<Reading> worse;
    worse.push_back(reading(ReadingKind::danger, 0));
    worse.push_back(reading(ReadingKind::back, 0, day.nose * day.unit()));
    worse.push_back(reading(ReadingKind::start, 0));
    worse.push_back(reading(ReadingKind::mark, 0, day.nose * day.unit()));
    worse.push_back(reading(ReadingKind::mark, 0, 1e4));
    worse.push_back(reading(ReadingKind::stop, 0));
    worse.push_back(reading(ReadingKind::go, 0));
    Reading peg = reading(ReadingKind::peg, 0);
    peg.station = Length{12 * day.unit() - 2};
    peg.rise = Length{0.03 * day.unit() - 0.015};
    worse.push_back(peg);
    Reading air = reading(ReadingKind::pressure, 0);
    air.pressure = Pressure{6e5 * day.unit()};
    worse.push_back(air);
    Reading words = reading(ReadingKind::note, 0);
    words.text = day.unit() < 0.5 ? "hit something" : "no news";
    worse.push_back(words);
    Reading steep = reading(ReadingKind::grade, 0, day.nose);
    steep.grade = Ratio{0.21 + 0.3 * day.unit()};
    worse.push_back(steep);
    worse.push_back(fix(0, day.nose, 2 + day.unit(), 1.4, 0.02));
    for (const Reading& one : worse) {
      const int after = day.grave(day.with(one));
      // A peg that stands is itself the task that was open.
      const bool does_the_task = one.kind == ReadingKind::peg && before == gravity(Advice::do_tasks);
      EXPECT_GE(after, does_the_task ? 0 : before) << seed << " " << word_of(one.kind);
      graver += after > before;
    }
  }
  EXPECT_GT(graver, static_cast<int>(days));
}

// The same fix, read nearer to the main.
TEST(DayProperty, FixNearerToTheMain_NeverMilder) {
  int graver = 0;
  for (unsigned seed = 1; seed <= days; ++seed) {
    RandomDay day(seed);
    const DayAnswer now = day_answer(day.crossing, tables(), day.record, day.assessment);
    const double depth = 100 - now.nose.z_m, gas_depth = 100 - *day.crossing.site.utilities[0].path[0].z_m;
    int before = day.grave(day.with(fix(0, day.nose, now.nose.y_m, depth)));
    for (const double share : {0.2, 0.4, 0.6, 0.8}) {
      const int after = day.grave(day.with(fix(0, day.nose, now.nose.y_m, depth + share * (gas_depth - depth))));
      EXPECT_GE(after, before) << seed << " " << share;
      graver += after > before;
      before = after;
    }
  }
  EXPECT_GT(graver, 2);
}

// A second fix at the same place that contradicts the first; a second mark; a pause over night without a word.
TEST(DayProperty, Contradictions_NeverMilder) {
  for (unsigned seed = 1; seed <= days; ++seed) {
    RandomDay day(seed);
    const DayAnswer now = day_answer(day.crossing, tables(), day.record, day.assessment);
    day.record = day.with(fix(0, day.nose, now.nose.y_m, 100 - now.nose.z_m));
    const int before = day.grave();
    EXPECT_GE(day.grave(day.with(fix(0, day.nose, now.nose.y_m + 1.2, 100 - now.nose.z_m))), before) << seed;
    EXPECT_GE(day.grave(day.with(reading(ReadingKind::mark, 0, day.nose))), before) << seed;
    const double further = day.nose + 0.6;
    const int on_time = day.grave(day.with(reading(ReadingKind::mark, day.expected_s(further), further)));
    const int next_day = day.grave(day.with(reading(ReadingKind::mark, 14 * 3600.0, further)));
    EXPECT_GE(next_day, on_time) << seed;
  }
}

// What is taken away, deleted or left empty.
TEST(DayProperty, LessKnown_NeverMilder) {
  for (unsigned seed = 1; seed <= days; ++seed) {
    RandomDay day(seed);
    const int before = day.grave();
    DayRecord less = day.record;
    less.taken_on.reset();
    EXPECT_GE(day.grave(less), before) << seed;
    less = day.record;
    std::erase_if(less.readings, [](const Reading& r) { return r.kind == ReadingKind::done; });
    EXPECT_GE(day.grave(less), before) << seed;
    Day unknown = day;
    unknown.crossing.site.utilities[0].located.vertical_sd.reset();
    unknown.crossing.site.utilities[0].located.level.reset();
    EXPECT_GE(gravity(unknown.advice()), before) << seed;
    unknown = day;
    for (PathVertex& v : unknown.crossing.site.utilities[0].path) v.z_m.reset();
    EXPECT_GE(gravity(unknown.advice()), before) << seed;
    unknown = day;
    unknown.crossing.site.utility_search = {};
    EXPECT_GE(gravity(unknown.advice()), before) << seed;
  }
}

}  // namespace
}  // namespace burrow::test

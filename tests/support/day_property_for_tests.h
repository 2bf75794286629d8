#pragma once
/// The promise of the day as a property: a bore under way on a crossing drawn at random, and one reading more that
/// makes things worse, or something known that is taken away; the advice must not get milder.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "support/day_for_tests.h"
#include "support/property_for_tests.h"

namespace burrow::test {

/// A day somewhere on the way. Every second one is on the clean crossing with a gas main beside it, so that there is
/// much to be mild about; the others are on crossings as crews lay them out, with up to three utilities of any kind.
struct RandomDay : Day {
  unsigned seed;
  Draw draw;
  Assessment assessment;
  double nose = 0;

  explicit RandomDay(unsigned number) : seed(number), draw(number ^ 0x9e3779b9U) {
    if (seed % 2 == 0)
      gas_main_beside();
    else
      crossing = drawn_crossing(seed);
    assessment = judged(crossing);
    if (!can_be_bored()) return;
    const StartGate gate = start_gate(crossing, assessment, days_of(record, tables().judged_on));
    if (draw.one_in(2)) record.taken_on = TakenOn{"A. Nobody", "agreed", "2026-03-02", gate.to_take_on, ""};
    nose = draw.between(0.08, 0.75) * assessment.bore.length_m;
    add(reading(ReadingKind::mark, expected_s(nose), nose));
    if (!draw.one_in(3)) add(all_tasks());
  }
  [[nodiscard]] bool can_be_bored() const { return assessment.bore.points.size() > 2; }

  [[nodiscard]] Reading all_tasks() const {
    Reading done = reading(ReadingKind::done, last_s());
    for (const auto& [task, word] : EnumNames<MarkTask>::list) done.tasks.emplace_back(word);
    return done;
  }
  /// As the assessment has it: made once, not for each reading.
  [[nodiscard]] double expected_s(double at_m) const {
    const std::vector<AdvancePoint>& points = assessment.advance.points;
    for (std::size_t i = 1; i < points.size(); ++i) {
      if (at_m > points[i].s_m) continue;
      const double share = (at_m - points[i - 1].s_m) / (points[i].s_m - points[i - 1].s_m);
      return points[i - 1].time.p50_s + share * (points[i].time.p50_s - points[i - 1].time.p50_s);
    }
    return points.empty() ? 60 * at_m : points.back().time.p50_s;
  }
  [[nodiscard]] DayAnswer answer_of(const DayRecord& of) const {
    return day_answer(crossing, tables(), of, assessment);
  }
  [[nodiscard]] int grave(const DayRecord& of) const {
    const DayAnswer day = answer_of(of);
    return day.advice ? gravity(*day.advice) : 0;
  }
  [[nodiscard]] int grave() const { return grave(record); }
  [[nodiscard]] double last_s() const { return record.readings.back().time.s; }
  [[nodiscard]] DayRecord with(Reading one) const {
    DayRecord more = record;
    one.time.s = std::max(one.time.s, last_s() + 1);
    more.readings.push_back(std::move(one));
    return more;
  }
  [[nodiscard]] std::string name() const { return "seed " + std::to_string(seed); }

 private:
  void gas_main_beside() {
    crossing.site.utilities = {gas_beside(draw.between(1, 7), draw.between(97.0, 98.8))};
    Utility& gas = crossing.site.utilities[0];
    if (draw.one_in(3)) gas.kind = UtilityKind::telecom;
    if (draw.one_in(3)) gas.path = {{4, -8, 96.0}, {4, 8, 96.0}};
  }
};

struct WorseReading {
  const char* name;
  std::function<Reading(RandomDay&)> make;
  bool may_be_the_task = false;  ///< a peg that stands, a level that was read: the task that was open
};

inline const std::vector<WorseReading>& worse_readings() {
  const auto plain = [](ReadingKind kind) { return [kind](RandomDay&) { return reading(kind, 0); }; };
  static const std::vector<WorseReading> all{
      {"danger", plain(ReadingKind::danger)},
      {"stop", plain(ReadingKind::stop)},
      {"go on", plain(ReadingKind::go)},
      {"a second start", plain(ReadingKind::start)},
      {"driven back", [](RandomDay& d) { return reading(ReadingKind::back, 0, d.nose * d.draw.between(0, 1)); }},
      {"a mark behind", [](RandomDay& d) { return reading(ReadingKind::mark, 0, d.nose * d.draw.between(0, 1)); }},
      {"10 km", [](RandomDay&) { return reading(ReadingKind::mark, 0, 1e4); }},
      {"a mark without a number", plain(ReadingKind::mark)},
      {"words",
       [](RandomDay& d) {
         Reading note = reading(ReadingKind::note, 0);
         note.text = d.draw.one_in(2) ? "hit something" : "no news";
         return note;
       }},
      {"a peg",
       [](RandomDay& d) {
         Reading peg = reading(ReadingKind::peg, 0);
         peg.station = Length{d.draw.between(-2, 14)};
         peg.rise = Length{d.draw.between(-0.02, 0.02)};
         return peg;
       },
       true},
      {"pressure",
       [](RandomDay& d) {
         Reading air = reading(ReadingKind::pressure, 0);
         air.pressure = Pressure{d.draw.between(0, 9e5)};
         return air;
       }},
      {"steep",
       [](RandomDay& d) {
         Reading grade = reading(ReadingKind::grade, 0, d.nose);
         grade.grade = Ratio{(d.draw.one_in(2) ? 1 : -1) * d.draw.between(0.21, 0.6)};
         return grade;
       }},
      {"far aside", [](RandomDay& d) { return fix(0, d.nose, d.draw.between(2, 4), 1.4, 0.02); }},
      {"a fix far ahead",
       [](RandomDay& d) {
         return fix(0, d.nose + d.draw.between(3.1, 9), d.draw.between(-0.3, 0.3), d.draw.between(0.8, 2), 0.05);
       }},
      {"an arrival half way",
       [](RandomDay& d) {
         Reading arrival = reading(ReadingKind::arrival, 0, 0.5 * d.assessment.bore.length_m);
         arrival.offset = Length{d.draw.between(-0.2, 0.2)};
         return arrival;
       }},
      {"a fix that says nothing", [](RandomDay& d) { return reading(ReadingKind::fix, 0, d.nose); }}};
  return all;
}

/// One reading more that makes things worse. Gives how often the advice became graver.
inline int expect_worse_never_milder(unsigned first, unsigned days) {
  int graver = 0;
  for (unsigned seed = first; seed < first + days; ++seed) {
    RandomDay day(seed);
    if (!day.can_be_bored()) continue;
    const int before = day.grave();
    for (const WorseReading& worse : worse_readings()) {
      const int after = day.grave(day.with(worse.make(day)));
      const bool may_fall = worse.may_be_the_task && before == gravity(Advice::do_tasks);
      EXPECT_GE(after, may_fall ? 0 : before) << day.name() << ": " << worse.name;
      graver += after > before;
    }
  }
  return graver;
}

/// The same fix at the same place, read nearer and nearer to a line that nobody has exposed.
inline int expect_nearer_never_milder(unsigned first, unsigned days) {
  int graver = 0;
  for (unsigned seed = first; seed < first + days; ++seed) {
    RandomDay day(seed);
    if (!day.can_be_bored() || day.crossing.site.utilities.empty()) continue;
    const Utility& line = day.crossing.site.utilities[0];
    if (!line.path[0].z_m || line.located.how == LocatedHow::exposed) continue;
    const DayAnswer now = day.answer_of(day.record);
    const double depth = 100 - now.nose.z_m, of_line = 100 - *line.path[0].z_m;
    int before = day.grave(day.with(fix(0, day.nose, now.nose.y_m, depth)));
    for (const double share : {0.2, 0.4, 0.6, 0.8}) {
      const int after = day.grave(day.with(fix(0, day.nose, now.nose.y_m, depth + share * (of_line - depth))));
      EXPECT_GE(after, before) << day.name() << " " << share;
      graver += after > before;
      before = after;
    }
  }
  return graver;
}

/// A second fix at the same place that contradicts the first, and the first again after it; a second mark; a nose that
/// goes back and comes again; a pause over night, with and without a word.
inline void expect_contradictions_never_milder(unsigned first, unsigned days) {
  for (unsigned seed = first; seed < first + days; ++seed) {
    RandomDay day(seed);
    if (!day.can_be_bored()) continue;
    const DayAnswer now = day.answer_of(day.record);
    const double y = now.nose.y_m, depth = 100 - now.nose.z_m;
    day.record = day.with(fix(0, day.nose, y, depth));
    const int before = day.grave();
    EXPECT_GE(day.grave(day.with(fix(0, day.nose, y + 1.2, depth))), before) << day.name();
    EXPECT_GE(day.grave(day.with(fix(0, day.nose, y, depth + 0.9))), before) << day.name();
    EXPECT_GE(day.grave(day.with(reading(ReadingKind::mark, 0, day.nose))), before) << day.name();
    DayRecord again = day.with(reading(ReadingKind::back, 0, 0.5 * day.nose));
    EXPECT_GE(day.grave(again), before) << day.name();
    again.readings.push_back(reading(ReadingKind::mark, day.last_s() + 600, day.nose));
    EXPECT_GE(day.grave(again), before) << day.name() << ": back and in again";
    const double further = std::min(day.nose + 0.6, day.assessment.bore.length_m);
    const int on_time = day.grave(day.with(reading(ReadingKind::mark, day.expected_s(further), further)));
    EXPECT_GE(day.grave(day.with(reading(ReadingKind::mark, 14 * 3600.0, further))), on_time)
        << day.name() << ": over night";
    DayRecord night = day.with(reading(ReadingKind::stop, 0));
    const int stopped = day.grave(night);
    night.readings.push_back(reading(ReadingKind::go, day.last_s() + 14 * 3600.0));
    EXPECT_GE(day.grave(night), stopped) << day.name() << ": over night, with a stop";
  }
}

/// What is taken away, deleted or left empty.
inline void expect_less_known_never_milder(unsigned first, unsigned days) {
  for (unsigned seed = first; seed < first + days; ++seed) {
    RandomDay day(seed);
    if (!day.can_be_bored()) continue;
    const int before = day.grave();
    DayRecord less = day.record;
    less.taken_on.reset();
    EXPECT_GE(day.grave(less), before) << day.name();
    less = day.record;
    std::erase_if(less.readings, [](const Reading& r) { return r.kind == ReadingKind::done; });
    EXPECT_GE(day.grave(less), before) << day.name();
    const auto expect = [&](const char* what, const std::function<void(Crossing&)>& take) {
      Day unknown = day;
      take(unknown.crossing);
      EXPECT_GE(gravity(unknown.advice()), before) << day.name() << ": " << what;
    };
    expect("ticket", [](Crossing& c) { c.site.utility_search = {}; });
    expect("validity", [](Crossing& c) { c.site.utility_search.valid_to.reset(); });
    expect("marks", [](Crossing& c) { c.site.utility_search.marks_visible.reset(); });
    if (day.crossing.site.utilities.empty()) continue;
    expect("error in height", [](Crossing& c) {
      c.site.utilities[0].located.vertical_sd.reset();
      c.site.utilities[0].located.level.reset();
    });
    expect("depth", [](Crossing& c) {
      for (PathVertex& v : c.site.utilities[0].path) v.z_m.reset();
    });
    expect("diameter", [](Crossing& c) { c.site.utilities[0].outside_diameter.reset(); });
    expect("test holes", [](Crossing& c) { c.site.test_holes.clear(); });
  }
}

/// A danger is not talked away by what comes after it: whatever is read then, everybody stays out.
inline void expect_danger_stays(unsigned first, unsigned days) {
  for (unsigned seed = first; seed < first + days; ++seed) {
    RandomDay day(seed);
    if (!day.can_be_bored()) continue;
    day.add(reading(ReadingKind::danger, day.last_s() + 1));
    for (const WorseReading& then : worse_readings())
      EXPECT_EQ(day.grave(day.with(then.make(day))), gravity(Advice::get_out)) << day.name() << ": " << then.name;
    for (const auto& [how, word] : EnumNames<EndHow>::list) {
      Reading end = reading(ReadingKind::end, 0);
      end.how = how;
      EXPECT_EQ(day.grave(day.with(end)), gravity(Advice::get_out)) << day.name() << ": " << word;
    }
  }
}

}  // namespace burrow::test

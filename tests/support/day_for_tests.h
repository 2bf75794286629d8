#pragma once
/// A day on the clean crossing: readings one after the other, and what the day says to them.

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>

#include "burrow/day/day.h"
#include "burrow/day/start_gate.h"
#include "support/clean_crossing.h"

namespace burrow::test {

inline Reading reading(ReadingKind kind, double time_s, std::optional<double> nose_m = {}) {
  Reading r;
  r.kind = kind;
  r.time = Duration{time_s};
  if (nose_m) r.nose = Length{*nose_m};
  return r;
}
inline Reading fix(double time_s, double nose_m, double offset_m, double depth_m, double sd_m = 0.05) {
  Reading r = reading(ReadingKind::fix, time_s, nose_m);
  r.offset = Length{offset_m};
  r.depth = Length{depth_m};
  r.lateral_sd = r.vertical_sd = Length{sd_m};
  return r;
}

inline Utility gas_beside(double station_m, double elevation_m, LocatedHow how = LocatedHow::traced) {
  Utility gas = water_main(station_m, elevation_m);
  gas.name = "gas main";
  gas.kind = UtilityKind::gas;
  gas.located.how.set(how);
  gas.located.lateral_sd = gas.located.vertical_sd = Length{0.05};  // better than that no tracing is
  return gas;
}

/// Dug down to where the bore passes, measured, with day and name.
inline TestHole hole_at(const Utility& utility, double station_m, double elevation_m) {
  TestHole hole;
  hole.id = "h1";
  hole.utility = utility.id;
  hole.station = Length{station_m};
  hole.level.set(LevelMeant::centre);
  hole.elevation = Length{elevation_m};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  return hole;
}

/// The clean crossing with its record, one start so far.
struct Day {
  Crossing crossing = clean_crossing();
  DayRecord record;
  Day() {
    record.id = "d1";
    record.readings = {reading(ReadingKind::start, 0)};
  }
  Day& add(Reading r) {
    record.readings.push_back(std::move(r));
    return *this;
  }
  [[nodiscard]] double expected_s(double nose_m) const {
    const Assessment a = judged(crossing);
    double time = 0;
    for (std::size_t i = 1; i < a.advance.points.size(); ++i) {
      const AdvancePoint &from = a.advance.points[i - 1], &to = a.advance.points[i];
      if (nose_m >= from.s_m && nose_m <= to.s_m)
        time = from.time.p50_s + (nose_m - from.s_m) / (to.s_m - from.s_m) * (to.time.p50_s - from.time.p50_s);
    }
    return time;
  }
  /// A mark at the time that was expected, so that nothing is odd about the rate.
  Day& mark(double nose_m) { return add(reading(ReadingKind::mark, expected_s(nose_m), nose_m)); }
  /// Every task of the mark where the nose is, ticked off at once.
  Day& done() {
    Reading r = reading(ReadingKind::done, record.readings.back().time.s);
    for (const DayTask& task : answer().tasks) r.tasks.emplace_back(word_of(task.task));
    return add(r);
  }
  /// Takes on what stands there.
  Day& taken_on() {
    const StartGate gate = start_gate(crossing, judged(crossing), days_of(record, tables().judged_on));
    record.taken_on = TakenOn{"A. Nobody", "agreed on site", "2026-03-02", gate.to_take_on, ""};
    return *this;
  }
  [[nodiscard]] DayAnswer answer() const { return day_answer(crossing, tables(), record); }
  [[nodiscard]] Advice advice() const { return answer().advice.value_or(Advice::go_on); }
};

inline const DayReason* reason(const DayAnswer& day, std::string_view code) {
  const auto it =
      std::find_if(day.reasons.begin(), day.reasons.end(), [&](const DayReason& r) { return r.code == code; });
  return it == day.reasons.end() ? nullptr : &*it;
}
inline bool broken(const DayAnswer& day, std::string_view code) {
  return std::any_of(day.reasons.begin(), day.reasons.end(),
                     [&](const DayReason& r) { return r.code == code && r.broken; });
}

}  // namespace burrow::test

/// What was noticed: danger, readings that cannot well be, pegs, pressure, how it ended.

#include <algorithm>
#include <cmath>

#include "burrow/check/peg_limits.h"
#include "burrow/crossing/danger_words.h"
#include "burrow/crossing/day_record.h"
#include "burrow/crossing/statement.h"
#include "day_work.h"

namespace burrow {

namespace {

class SignReasons {
 public:
  explicit SignReasons(DayWork& work) : work_(work) {}

  void run() {
    for (const Reading& reading : work_.record.readings) {
      if (struck_with_reason(reading)) continue;
      danger(reading);
      if (reading.kind == ReadingKind::peg && reading.rise && counts(reading)) peg(reading);
    }
    if (work_.timeline.ended) how_it_ended();
    doubtful();
    pressure();
  }

 private:
  DayReason& tell(std::string_view code, Advice leads_to) {
    DayReason& reason = add_reason(work_, code, 1, {0, false, {"what the crew noticed", SourceLabel::our_default}});
    reason.leads_to = leads_to;
    return reason;
  }

  void danger(const Reading& reading) {
    if (reading.kind == ReadingKind::danger)
      tell("day.danger", Advice::get_out).name = phrase_of_word(reading.sign.value_or(DangerSign::other));
    for (const auto& words : {reading.text, reading.why}) {
      if (!words) continue;
      const DangerWords found = danger_in(*words);
      // What may be harmless is so once somebody says it; what surely is not goes only with a name and a reason.
      if (found == DangerWords::none || (found == DangerWords::maybe && reading.confirmed.value_or(false))) continue;
      tell(found == DangerWords::surely ? "day.danger" : "day.note",
           found == DangerWords::surely ? Advice::get_out : Advice::stop_and_look)
          .name = *words;
    }
  }

  void how_it_ended() {
    const std::optional<EndHow>& how = work_.timeline.how;
    if (how == EndHow::struck) tell("day.danger", Advice::get_out).name = phrase_of_word(DangerSign::struck);
    if (how != EndHow::stuck && how != EndHow::lost && how != EndHow::daylight) return;
    tell("day.ended", if_near(work_, Advice::stop_and_look)).name = phrase_of_word(*how);
  }

  /// One that only says where the mark stood is asked about; one that says where the nose is may be right.
  void doubtful() {
    for (const ReadingQuery& query : work_.timeline.queried) {
      if (work_.record.readings[query.reading].kind == ReadingKind::end) {
        early_end(query.reading);
        continue;
      }
      const bool mark =
          query.why == QueryWhy::runs_back ||
          (query.why == QueryWhy::beyond_bore && work_.record.readings[query.reading].kind != ReadingKind::fix);
      DayReason& reason = tell("day.query", mark ? Advice::do_tasks : if_near(work_, Advice::stop_and_look));
      reason.name = phrase_of_word(work_.record.readings[query.reading].kind);
    }
  }

  /// It is said to have arrived, and the marks say that it lies half way.
  void early_end(std::size_t reading) {
    const Bore& bore = work_.crossing.bore;
    const Limit length{bore.exit.station.m - bore.launch.station.m, true, {"where the exit is", SourceLabel::derived}};
    DayReason& reason = add_reason(work_, "day.early-end", work_.timeline.nose_of[reading].value_or(0), length, "m");
    reason.broken = true;
    reason.leads_to = if_near(work_, Advice::stop_and_look);
  }

  /// Wherever it stands, also where the path cannot use it. The most that any peg ever rose or sank counts.
  void peg(const Reading& reading) {
    const double station = reading.station ? reading.station->m : work_.answer.nose.x_m;
    const PegLimits limits = peg_limits(work_.crossing, work_.tables, work_.assessment.bore.points, station);
    const double moved = std::abs(reading.rise->m);
    const bool stops = margin_of(moved, limits.stop) < 0 || !limits.caution;
    DayReason& reason =
        add_reason(work_, stops ? "day.heave" : "day.heave-caution", moved, stops ? limits.stop : *limits.caution, "m");
    reason.leads_to = stops ? Advice::stop_and_look : Advice::go_on;
    reason.subject = limits.subject;
    reason.name = limits.name;
    reason.station_m = station;
  }

  /// The last one at the tool. Too little drives a tool on the spot, or the hose has come off; too much breaks it.
  void pressure() {
    const double expected = work_.assessment.air.pressure_worked_with_Pa.value_or(work_.tool.pressure.Pa);
    const Reading* last = nullptr;
    for (const std::size_t i : work_.timeline.order) {
      const Reading& reading = work_.record.readings[i];
      if (counts(reading) && reading.kind == ReadingKind::pressure && reading.pressure &&
          reading.at.value_or("tool") == "tool")
        last = &reading;
    }
    if (!last || !(expected > 0)) return;
    const auto against = [&](std::string_view code, const Limit& share) {
      DayReason& reason =
          add_reason(work_, code, last->pressure->Pa, {share.value * expected, share.at_least, share.source}, "Pa");
      reason.leads_to = Advice::stop_and_look;
    };
    against("day.pressure-low", work_.limit("day_pressure_least"));
    against("day.pressure-high", work_.limit("day_pressure_most"));
  }

  DayWork& work_;
};

}  // namespace

void weigh_signs(DayWork& work) {
  SignReasons(work).run();
}

}  // namespace burrow

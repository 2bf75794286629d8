#include "burrow/day/day.h"

#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/check/tool_at_work.h"
#include "day_rates.h"
#include "day_work.h"

namespace burrow {

namespace {

AdvanceAsk ask_of(const DayWork& work) {
  return {work.tool.pressure, *work.crossing.bore.model.field_factor, Length{work.limit("set_least_m").value}};
}

constexpr double beyond_exit_m = 1.0;  ///< of hose that hangs through (our default)
constexpr double implausible_sd = 5;   ///< further off, a slip of the pen is likelier than the bore (our default)

/// The first in time that is further off than can well be, and that nobody has confirmed.
const TakenReading* implausible(const DayWork& work, double& in_sd) {
  for (const std::size_t reading : work.timeline.order) {
    if (work.record.readings[reading].confirmed.value_or(false)) continue;
    for (std::size_t i = 0; i < work.taken.size(); ++i) {
      if (work.taken[i].reading != reading || std::abs(work.conditioned.fits[i].in_sd()) <= implausible_sd) continue;
      in_sd = work.conditioned.fits[i].in_sd();
      return &work.taken[i];
    }
  }
  return nullptr;
}

/// What lies too far off waits for somebody to confirm it: one by one, for without it the others may lie well.
void condition_by_readings(DayWork& work) {
  const double nose = std::min(work.timeline.nose_m, work.assessment.bore.length_m);
  for (;;) {
    work.conditioned = condition(work.chain, work.readings(), {nose});
    double in_sd = 0;
    const TakenReading* far = implausible(work, in_sd);
    if (!far) break;
    const std::size_t reading = far->reading;
    work.timeline.queried.push_back({reading, QueryWhy::far_off, in_sd});
    work.answer.odd.push_back({reading, in_sd});
    std::erase_if(work.taken, [&](const TakenReading& one) { return one.reading == reading; });
  }
  note_arrival(work.taken, work.record, work.assessment.bore, work.timeline);
}

void find_odd(DayWork& work) {
  const double odd = work.limit("day_odd_sd").value;
  for (std::size_t i = 0; i < work.taken.size(); ++i) {
    const ReadingFit& fit = work.conditioned.fits[i];
    if (std::abs(fit.in_sd()) > odd) work.answer.odd.push_back({work.taken[i].reading, fit.in_sd()});
  }
}

void show_nose(DayWork& work) {
  const PathPoint& p = work.answer.nose;
  work.answer.working.push_back({"day.nose",
                                 "bore",
                                 "m = F m, P = F P Fᵀ + Q; K = P hᵀ/(h P hᵀ + r²), m = m + K (y − h m)",
                                 {{"s", work.answer.nose_m, "m"},
                                  {"n", static_cast<double>(work.taken.size()), ""},
                                  {"y", p.y_m, "m"},
                                  {"sd_lateral", p.sd_lateral_m, "m"},
                                  {"sd_vertical", p.sd_vertical_m, "m"}},
                                 "z",
                                 p.z_m,
                                 "m",
                                 std::nullopt,
                                 {"Kalman filter along the path, Joseph form", SourceLabel::derived}});
}

}  // namespace

double window_chance(const DayWork& work, const ArrivalSpread& arrival) {
  std::optional<Length> widest;
  if (!work.crossing.pits.exit.floor_width) widest = Length{work.limit("exit_widest_m").value};
  const double ground = elevation_at(work.crossing.site.ground, work.crossing.bore.exit.station.m);
  return work.arrives * chance_inside(work.assessment.exit_pit, arrival, Length{ground}, widest);
}

namespace {

/// Without a path nothing can be said of a bore under way, and that is no leave to go on.
DayAnswer without_path(DayWork& work) {
  work.answer.ended = work.timeline.ended;
  work.answer.how = work.timeline.how;
  work.answer.time_s = work.timeline.time_s;
  DayReason& reason =
      add_reason(work, "day.no-path", 0, {1, true, {"a bore of which a path is known", SourceLabel::our_default}});
  reason.leads_to = Advice::record_only;
  advise(work);
  return std::move(work.answer);
}

}  // namespace

int gravity(Advice advice) {
  switch (advice) {
    case Advice::go_on:
      return 0;
    case Advice::as_taken_on:
    case Advice::do_tasks:
      return 1;
    case Advice::stop_and_look:
    case Advice::back_out:
      return 2;
    case Advice::record_only:
      return 3;
    case Advice::stop_until_exposed:
      return 4;
    case Advice::leave_and_expose:
      return 5;
    case Advice::get_out:
      break;
  }
  return 6;
}

DayAnswer day_answer(const Crossing& crossing, const Tables& tables, const DayRecord& record,
                     const Assessment& assessment, DayPurpose purpose) {
  const BorePath& path = assessment.bore;
  const Ground ground(crossing.site, tables);
  const Tool tool = tool_at_work(crossing, tables).tool;
  const bool followed = path.points.size() >= 2;
  // In the exit pit the tool comes out whole.
  const Timeline timeline =
      followed ? timeline_of(record, path.length_m + tool.length.m + beyond_exit_m) : timeline_of(record);
  DayWork work{crossing, tables, assessment, record, ground, tool, timeline, {}, {}, {}, {}, {}, {}, 1, {}, purpose};
  work.answer.record = record.id;
  if (!followed) return without_path(work);
  work.chain = spread_chain(ground, tool, crossing.bore, path);
  TakenReadings taken = taken_readings(crossing, record, ground, tool, path, work.timeline);
  work.taken = std::move(taken.taken);
  work.places = std::move(taken.places);
  condition_by_readings(work);
  const double nose = std::min(work.timeline.nose_m, path.length_m);
  work.conditioned = condition(work.chain, work.readings(), {nose});

  DayAnswer& answer = work.answer;
  answer.ended = work.timeline.ended;
  answer.how = work.timeline.how;
  answer.time_s = work.timeline.time_s;
  answer.nose_m = work.timeline.nose_m;
  answer.furthest_m = work.timeline.furthest_m;
  answer.filtered = conditioned_path(path, work.conditioned, Knowledge::filtered);
  answer.smoothed = conditioned_path(path, work.conditioned, Knowledge::smoothed);
  answer.nose = point_at(answer.smoothed, nose);
  answer.rate = rate_answer(ground, tool, path, assessment.advance, ask_of(work), work.timeline);
  find_odd(work);
  show_nose(work);
  look_ahead(work);
  answer.restart_aside_m = 5 * tool.diameter.m;
  advise(work);
  weigh_readings(work);
  answer.left_out = work.timeline.left_out;
  answer.queried = work.timeline.queried;
  return std::move(work.answer);
}

DayAnswer day_of_record(const Crossing& crossing, const Tables& tables, const DayRecord& record,
                        const Assessment& as_it_is) {
  if (record.alternative || !layout_stands(crossing, record)) return day_answer(crossing, tables, record);
  return day_answer(crossing, tables, record, as_it_is);
}

DayAnswer day_answer(const Crossing& crossing, const Tables& tables, const DayRecord& record) {
  const Crossing bored = as_bored(crossing, record);
  DayAnswer answer = day_answer(bored, tables, record, assess(bored, tables));
  answer.layout_stands = layout_stands(crossing, record);
  return answer;
}

}  // namespace burrow

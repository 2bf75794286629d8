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

const DayRecord* open_record(const Crossing& crossing) {
  for (auto record = crossing.record.rbegin(); record != crossing.record.rend(); ++record)
    if (std::none_of(record->readings.begin(), record->readings.end(),
                     [](const Reading& r) { return r.kind == ReadingKind::end; }))
      return &*record;
  return nullptr;
}

double window_chance(const DayWork& work, const ArrivalSpread& arrival) {
  std::optional<Length> widest;
  if (!work.crossing.pits.exit.floor_width) widest = Length{work.limit("exit_widest_m").value};
  const double ground = elevation_at(work.crossing.site.ground, work.crossing.bore.exit.station.m);
  return work.arrives * chance_inside(work.assessment.exit_pit, arrival, Length{ground}, widest);
}

DayAnswer day_answer(const Crossing& crossing, const Tables& tables, const DayRecord& record,
                     const Assessment& assessment) {
  DayAnswer nothing;
  nothing.record = record.id;
  if (assessment.bore.points.size() < 2) return nothing;
  const Ground ground(crossing.site, tables);
  const Tool tool = tool_at_work(crossing, tables).tool;
  DayWork work{crossing, tables, assessment, record, ground, tool, timeline_of(record), {}, {}, {}, {}, {}, 1, nothing};
  const BorePath& path = assessment.bore;
  work.chain = spread_chain(ground, tool, crossing.bore, path);
  work.taken = taken_readings(crossing, record, ground, tool, path, work.timeline);
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
  return std::move(work.answer);
}

DayAnswer day_answer(const Crossing& crossing, const Tables& tables, const DayRecord& record) {
  const Crossing bored = record.alternative ? with_alternative(crossing, *record.alternative) : crossing;
  return day_answer(bored, tables, record, assess(bored, tables));
}

}  // namespace burrow

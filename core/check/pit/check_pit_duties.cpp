/// Duties at a pit: ladder, air, guard, inspection, spoil.

#include <algorithm>
#include <cmath>

#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

PlanPoint ladder_foot(const PitUnderCheck& pit) {
  const PitShape& shape = pit.shape;
  const Ladder& ladder = pit.entered.ladder;
  const double x = (shape.floor_from_m + shape.floor_to_m) / 2, y = (shape.floor_left_m + shape.floor_right_m) / 2;
  const double along_x = std::clamp(x + ladder.along->m, shape.floor_from_m, shape.floor_to_m);
  const double along_y = std::clamp(y + ladder.along->m, shape.floor_right_m, shape.floor_left_m);
  if (*ladder.side == PitSideName::left) return {along_x, shape.floor_left_m};
  if (*ladder.side == PitSideName::right) return {along_x, shape.floor_right_m};
  const bool at_high_end = (*ladder.side == PitSideName::bore) == shape.bore_side_high;
  return {at_high_end ? shape.floor_to_m : shape.floor_from_m, along_y};
}

void place_ladder(CheckRun& run, const PitUnderCheck& pit) {
  const PlanPoint foot = ladder_foot(pit);
  pit.work.ladder = foot;
  double along = 0, across = 0;
  for (const PlanPoint& corner : pit.shape.floor) {
    const double x = std::abs(corner.x_m - foot.x_m), y = std::abs(corner.y_m - foot.y_m);
    if (std::hypot(x, y) > std::hypot(along, across)) {
      along = x;
      across = y;
    }
  }
  const double travel = std::hypot(along, across);
  pit.work.ladder_travel_m = travel;
  const bool needed = ladder_needed(pit.rules, Length{pit.shape.depth_m});
  const DutyRow* row = find_duty(pit.rules, "ladder-travel");
  pit.work.duties.push_back({"ladder", needed, pit.shape.depth_m, pit.rules.ladder_from.m, pit.rules.source});
  if (!needed || !row) return;
  const Limit limit{row->value, false, row->source};
  Finding finding = finding_of(pit, "pit.ladder", Severity::stop);
  finding.station_m = foot.x_m;
  finding.offset_m = foot.y_m;
  require(run, std::move(finding), travel, limit);
  if (run.wants_working())
    run.add_working({"pit.ladder",
                     pit.subject,
                     "t = √(x² + y²)",
                     {{"x", along, "m"}, {"y", across, "m"}},
                     "t",
                     travel,
                     "m",
                     limit.value,
                     {"from the farthest corner of the floor to the ladder", SourceLabel::derived},
                     limit.source});
}

void test_air(CheckRun& run, const PitUnderCheck& pit) {
  const DutyRow* row = find_duty(pit.rules, "air-from");
  const bool deeper = row && pit.shape.depth_m > row->value + 1e-9;
  if (row)
    pit.work.duties.push_back(
        {"air-test", deeper && pit.entered.signs.bad_air.value_or(true), pit.shape.depth_m, row->value, row->source});
  if (!pit.entered.signs.bad_air.value_or(false)) return;
  Finding finding = finding_of(pit, "pit.air", Severity::caution);
  finding.margin = -1;
  finding.source = {"bad air gathers in shallow pits too", SourceLabel::common_practice};
  if (deeper) {
    finding.measured = pit.shape.depth_m;
    finding.limit = row->value;
    finding.at_least = false;
    finding.source = row->source;
  }
  run.add(std::move(finding));
}

void keep_spoil_back(CheckRun& run, const PitUnderCheck& pit) {
  const Limit limit{pit.rules.spoil_setback.m, true, pit.rules.source};
  const double setback = pit.entered.spoil.setback->m;
  pit.work.duties.push_back({"spoil-setback", true, setback, limit.value, limit.source});
  Finding finding = finding_of(pit, "pit.spoil", Severity::stop);
  if (!pit.work.heap.outline.empty()) {
    const PlanLine& heap = pit.work.heap.outline;
    finding.station_m = (heap[0].x_m + heap[2].x_m) / 2;
    finding.offset_m = (heap[0].y_m + heap[2].y_m) / 2;
    finding.elevation_m = elevation_at(run.crossing.site.ground, *finding.station_m);
  }
  require(run, std::move(finding), setback, limit);
}

}  // namespace

void check_pit_duties(CheckRun& run, const PitUnderCheck& pit) {
  place_ladder(run, pit);
  test_air(run, pit);
  keep_spoil_back(run, pit);
  if (const DutyRow* row = find_duty(pit.rules, "guard-from"))
    pit.work.duties.push_back(
        {"guard", pit.shape.depth_m >= row->value - 1e-9, pit.shape.depth_m, row->value, row->source});
  if (const DutyRow* row = find_duty(pit.rules, "inspection"))
    pit.work.duties.push_back({"inspection", true, std::nullopt, std::nullopt, row->source});
}

}  // namespace burrow

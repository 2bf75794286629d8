/// What was bored here before: a bore that struck something, was lost or given up, its hole as an obstacle, a layout
/// that was changed since.

#include "burrow/check/old_hole.h"

#include <algorithm>
#include <cmath>

#include "burrow/check/tool_at_work.h"
#include "burrow/crossing/day_record.h"
#include "burrow/crossing/statement.h"
#include "check_run.h"

namespace burrow {

namespace {

constexpr double first_of_all = -1e9;  ///< before what is only predicted

/// By its day and time of the day, as people speak of it.
Phrase name_of(const DayRecord& record) {
  constexpr std::size_t day = 10, minutes = 16;
  std::string started = record.started.value_or("").substr(0, minutes);
  if (started.size() < day) return record.id;
  std::replace(started.begin(), started.end(), 'T', ' ');
  return started;
}

/// The hole that a record left, as its layout predicts it, up to where the nose was furthest.
std::vector<PathPoint> old_hole(const CheckRun& run, const DayRecord& record) {
  const Crossing bored = as_bored(run.crossing, record);
  if (too_long_to_follow(bored.bore)) return {};
  BorePath path = predict_path(run.ground, tool_at_work(bored, run.tables).tool, bored.bore);
  const double furthest = furthest_nose(record).m;
  std::erase_if(path.points, [&](const PathPoint& p) { return p.s_m > furthest + 1e-9; });
  return std::move(path.points);
}

double distance_to(const PathPoint& p, const PathPoint& a, const PathPoint& b) {
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, dz = b.z_m - a.z_m, square = dx * dx + dy * dy + dz * dz;
  const double along = (p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy + (p.z_m - a.z_m) * dz;
  const double t = square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0;
  return std::hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy, p.z_m - a.z_m - t * dz);
}

Finding about_record(std::string_view code, Severity severity, const DayRecord& record) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = record.id;
  finding.name = name_of(record);
  finding.source = {"record of the day", SourceLabel::our_default};
  return finding;
}

class Bored {
 public:
  Bored(CheckRun& run, const DayRecord& record) : run_(run), record_(record), how_(end_of(record)) {}

  void judge() {
    trouble();
    if (leaves_a_hole(run_.crossing, record_)) hole();
    const bool stands_for_it = !ended(record_) || how_ == EndHow::arrived;
    if (stands_for_it && !layout_stands(run_.crossing, record_))
      run_.add(about("record.layout-changed", Severity::caution));
  }

 private:
  [[nodiscard]] Finding about(std::string_view code, Severity severity) const {
    return about_record(code, severity, record_);
  }

  /// Until a named person has released the place.
  void trouble() {
    if (vouched(record_.aftermath.released, run_.tables.judged_on)) return;
    std::string_view code;
    if (danger_told(record_))
      code = "record.struck";
    else if (how_ == EndHow::daylight)
      code = "record.daylight";
    else if (how_ == EndHow::stuck)
      code = "record.stuck";
    else if (how_ == EndHow::lost)
      code = "record.lost";
    if (code.empty()) return;
    Finding finding = about(code, Severity::stop);
    finding.station_m = as_bored(run_.crossing, record_).bore.launch.station.m + furthest_nose(record_).m;
    finding.margin = first_of_all;
    run_.add(std::move(finding));
  }

  void hole() {
    const std::optional<HoleState>& state = record_.aftermath.hole;
    if (how_ == EndHow::arrived)
      run_.missing("record-arrival", record_.id, name_of(record_));
    else if (!state)
      run_.missing("record-hole", record_.id, name_of(record_));
    if (state == HoleState::open) run_.add(about("record.hole-open", Severity::caution));
    if (state == HoleState::tool_inside) run_.add(about("record.tool-inside", Severity::caution));
    const std::optional<NearHole> near = nearest_to_hole(old_hole(run_, record_), run_.answer.bore.points);
    if (!near) return;
    const double old_diameter = tool_at_work(as_bored(run_.crossing, record_), run_.tables).tool.diameter.m;
    Finding finding = about("record.restart-near", Severity::caution);
    finding.unit = "m";
    finding.station_m = near->at.x_m;
    finding.offset_m = near->at.y_m;
    finding.elevation_m = near->at.z_m;
    run_.require(std::move(finding), near->apart_m, fresh_ground(old_diameter, run_.tool.diameter.m));
  }

  CheckRun& run_;
  const DayRecord& record_;
  std::optional<EndHow> how_;
};

}  // namespace

bool leaves_a_hole(const Crossing& crossing, const DayRecord& record) {
  if (!ended(record) || record.aftermath.hole == HoleState::dug_out) return false;
  if (end_of(record) == EndHow::arrived) return arrival_doubted(crossing, record);
  return furthest_nose(record).m > 0;
}

Limit fresh_ground(double old_diameter_m, double diameter_m) {
  constexpr double diameters = 5;
  return {diameters * std::max(old_diameter_m, diameter_m),
          true,
          {"5 tool diameters of fresh ground, or the tool follows the old hole", SourceLabel::from_memory}};
}

std::optional<NearHole> nearest_to_hole(const std::vector<PathPoint>& hole, const std::vector<PathPoint>& now) {
  std::optional<NearHole> nearest;
  for (const PathPoint& p : hole)
    for (std::size_t i = 1; i < now.size(); ++i)
      if (const double apart = distance_to(p, now[i - 1], now[i]); !nearest || apart < nearest->apart_m)
        nearest = NearHole{apart, p};
  return nearest;
}

std::optional<Finding> restart_near(const DayRecord& record, const NearHole& near, const Limit& limit) {
  const double margin = margin_of(near.apart_m, limit);
  if (margin >= 0) return std::nullopt;
  Finding finding = about_record("record.restart-near", Severity::caution, record);
  finding.unit = "m";
  finding.station_m = near.at.x_m;
  finding.offset_m = near.at.y_m;
  finding.elevation_m = near.at.z_m;
  set_numbers(finding, near.apart_m, limit);
  finding.source = limit.source;
  finding.margin = margin;
  return finding;
}

void check_bored(CheckRun& run) {
  for (const DayRecord& record : run.crossing.record) Bored(run, record).judge();
}

}  // namespace burrow

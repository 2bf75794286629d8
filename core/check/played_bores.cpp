#include "burrow/check/played_bores.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "burrow/check/limits.h"
#include "burrow/clearance/clearance.h"

namespace burrow {

namespace {

/// Arc length and direction of a line of places.
BorePath path_through(const std::vector<Point3>& places) {
  BorePath path;
  for (const Point3& at : places) {
    PathPoint p;
    p.x_m = at.x_m;
    p.y_m = at.y_m;
    p.z_m = at.z_m;
    if (!path.points.empty()) {
      const PathPoint& before = path.points.back();
      const double dx = p.x_m - before.x_m, dy = p.y_m - before.y_m, dz = p.z_m - before.z_m;
      p.s_m = before.s_m + std::hypot(dx, dy, dz);
      if (!(p.s_m > before.s_m)) continue;
      p.heading_rad = std::atan2(dy, dx);
      p.grade_rad = std::atan2(dz, std::hypot(dx, dy));
    }
    path.points.push_back(p);
  }
  if (path.points.size() > 1) {
    path.points.front().heading_rad = path.points[1].heading_rad;
    path.points.front().grade_rad = path.points[1].grade_rad;
    path.length_m = path.points.back().s_m;
  }
  return path;
}

}  // namespace

Playback at_pace_of(const Playback& predicted, const BorePath& path) {
  if (predicted.empty() || path.points.size() < 2 || !(predicted.end_s() > 0)) return {};
  constexpr double last_m = 1;
  const double end_m = predicted.path.points.back().s_m, from_m = std::max(0.0, end_m - last_m);
  const double s_per_m = (predicted.end_s() - time_at(predicted, from_m)) / std::max(1e-9, end_m - from_m);
  Playback other;
  other.path = path;
  other.tool_length_m = predicted.tool_length_m;
  other.tool_diameter_m = predicted.tool_diameter_m;
  for (const PathPoint& p : path.points)
    other.time_s.push_back(time_at(predicted, p.s_m) + std::max(0.0, p.s_m - end_m) * s_per_m);
  for (const double mark : predicted.marks_m)
    if (mark <= path.points.back().s_m) other.marks_m.push_back(mark);
  return other;
}

Playback trial_playback(const Trials& trials, std::size_t number, const Playback& predicted) {
  if (number >= trials.paths.size()) return {};
  return at_pace_of(predicted, path_through(trials.paths[number]));
}

std::vector<UtilityAnswer> lines_beside(const Playback& bore, const Crossing& crossing, const Tables& tables) {
  std::vector<UtilityAnswer> passed;
  if (bore.empty()) return passed;
  BorePath certain = bore.path;  // this one bore: nothing about its place is left to chance
  for (PathPoint& p : certain.points) p.sd_lateral_m = p.sd_vertical_m = 0;
  const LimitsInForce limits(crossing, tables);
  for (Clearance& c : clearances(certain, Length{bore.tool_diameter_m}, crossing.site.utilities, crossing.site.ground,
                                 clearance_rules(limits, tables), tables, crossing.site.test_holes)) {
    UtilityAnswer& answer = passed.emplace_back();
    answer.id = std::move(c.id);
    answer.name = std::move(c.name);
    answer.separation_m = c.separation_m;
    answer.required_m = c.required_m;
    answer.station_m = c.station_m;
    answer.offset_m = c.offset_m;
    answer.elevation_m = c.elevation_m;
    answer.on_bore = c.on_bore;
    answer.on_utility = c.on_utility;
  }
  return passed;
}

}  // namespace burrow

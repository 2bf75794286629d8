#include "burrow/practice/try_error.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/bore/path.h"
#include "burrow/bore/point_on_path.h"
#include "burrow/crossing/locks.h"

namespace burrow {

namespace {
constexpr double steepest_rad = 0.5;  ///< of an error

/// Straight between its points.   Range: a path that reaches the station.
PathPoint point_at_station(const BorePath& path, double station_m) {
  const auto after = std::lower_bound(path.points.begin(), path.points.end(), station_m,
                                      [](const PathPoint& p, double x) { return p.x_m < x; });
  if (after == path.points.begin()) return path.points.front();
  if (after == path.points.end()) return path.points.back();
  const PathPoint& before = *(after - 1);
  return point_between(before, *after, (station_m - before.x_m) / (after->x_m - before.x_m));
}
}  // namespace

Crossing with_error(const Crossing& crossing, const Tables& tables, const TryError& error) {
  Crossing made = crossing;
  if (find_soil(tables, error.soil))
    for (Stratum& stratum : made.site.strata) {
      stratum.soil = error.soil;
      stratum.values = {};
      stratum.known.set(StratumEvidence::guess);  // nobody has seen it
    }
  if (find_tool(tables, error.tool)) {
    made.bore.tool = {};
    made.bore.tool.tool_class = error.tool;
  }
  Launch& launch = made.bore.launch;
  launch.elevation.m -= error.deeper_m;
  if (error.level_rad != 0)
    launch.grade.v = std::tan(std::atan(launch.grade.v) + std::clamp(error.level_rad, -steepest_rad, steepest_rad));
  if (error.aim_rad != 0)
    launch.heading.set(Angle{launch.heading->rad + std::clamp(error.aim_rad, -steepest_rad, steepest_rad)});
  return made;
}

std::optional<std::string> locked_against(const Crossing& crossing, const TryError& error) {
  std::vector<std::string> changed;
  if (error.level_rad != 0) changed.emplace_back("/bore/launch/grade");
  if (error.aim_rad != 0) changed.emplace_back("/bore/launch/heading_rad");
  if (error.deeper_m != 0) changed.emplace_back("/bore/launch/elevation_m");
  if (!error.tool.empty()) changed.emplace_back("/bore/tool");
  if (!error.soil.empty())
    for (const Stratum& stratum : crossing.site.strata) changed.push_back("/site/strata/" + stratum.id);
  for (std::string& member : changed)
    if (member_locked(crossing, member)) return std::move(member);
  return std::nullopt;
}

std::optional<Miss> miss_between(const BorePath& planned, const BorePath& other) {
  if (planned.points.size() < 2 || other.points.size() < 2) return std::nullopt;
  const double at = std::min(planned.points.back().x_m, other.points.back().x_m);
  if (at < std::max(planned.points.front().x_m, other.points.front().x_m)) return std::nullopt;
  return Miss{point_at_station(planned, at), point_at_station(other, at)};
}

double thumb_off_m(double over_level_m, double level_length_m, double run_m) {
  BURROW_ENSURE(level_length_m > 0);
  return over_level_m / level_length_m * run_m;
}

TryErrorAnswer try_error(const Crossing& crossing, const Tables& tables, const TryError& error) {
  const Crossing made = with_error(crossing, tables, error);
  const double aimed_grade = crossing.bore.launch.grade.v, aimed_heading = crossing.bore.launch.heading->rad;
  TryErrorAnswer answer;
  answer.path = predict_path(Ground(made.site, tables), resolve_tool(made.bore.tool, tables), made.bore);
  answer.reaches = answer.path.ends == PathEnd::exit;
  if (answer.path.ends == PathEnd::daylight) answer.ends_station_m = answer.path.points.back().x_m;
  if (answer.path.points.size() < 2) return answer;
  const Launch& launch = made.bore.launch;
  for (const PathPoint& p : answer.path.points) {
    const double run = p.x_m - launch.station.m;
    answer.points.push_back({p.x_m, p.z_m - launch.elevation.m - run * aimed_grade / std::cos(aimed_heading),
                             p.y_m - launch.offset->m - run * std::tan(aimed_heading)});
  }
  return answer;
}

}  // namespace burrow

#include "burrow/check/load_profile.h"

#include <algorithm>
#include <cmath>

#include "loads_above.h"

namespace burrow {

namespace {

/// On the mean path, straight between its points.
std::optional<Point3> axis_at(const std::vector<PathPoint>& points, double station_m) {
  for (std::size_t i = 1; i < points.size(); ++i) {
    const PathPoint &a = points[i - 1], &b = points[i];
    if (station_m < a.x_m - 1e-9 || station_m > b.x_m + 1e-9 || !(b.x_m > a.x_m)) continue;
    const double part = (station_m - a.x_m) / (b.x_m - a.x_m);
    return Point3{station_m, a.y_m + part * (b.y_m - a.y_m), a.z_m + part * (b.z_m - a.z_m)};
  }
  return std::nullopt;
}

}  // namespace

LoadProfile load_profile(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                         double station_m) {
  LoadProfile profile;
  if (!std::isfinite(station_m)) return profile;
  const Ground ground(crossing.site, tables);
  const Tool tool = resolve_tool(crossing.bore.tool, tables);
  const LoadsAbove above(crossing, ground, tool.diameter, assessment.bore.points);
  const std::optional<Point3> axis = axis_at(assessment.bore.points, station_m);
  const double y = axis ? axis->y_m : 0, surface = ground.surface_m(station_m, y);
  if (axis) profile.pipe_depth_m = surface - axis->z_m - tool.diameter.m / 2;
  constexpr double shallow_m = 0.1;
  constexpr int steps = 48;
  Column column;
  const double deepest = std::max(3.0, 2 * profile.pipe_depth_m.value_or(0));
  for (int i = 0; i <= steps; ++i) {
    const double depth = shallow_m + (deepest - shallow_m) * i / steps;
    if (const auto load = above.at(station_m, y, surface - depth, column)) profile.by_depth.push_back(*load);
  }
  return profile;
}

}  // namespace burrow

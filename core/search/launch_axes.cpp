/// Sides of the map of launches, and how a place on it becomes a launch.

#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"
#include "burrow/check/limits.h"
#include "burrow/crossing/locks.h"
#include "burrow/search/launch_map.h"

namespace burrow {

namespace {

constexpr double usual_grade = 0.10, beyond_grade = 0.02, steepest = 1.0;
constexpr double usual_depth_m = 3.0, beyond_depth_m = 1.0, beside_m = 3.0, before_exit_m = 1.0;
constexpr double least_cover_diameters = 2;
constexpr double steepest_searched = 0.30, furthest_beside_m = 12.0;

double ground_at_launch(const Crossing& crossing) {
  return elevation_at(crossing.site.ground, crossing.bore.launch.station.m);
}

/// Depth of the deepest utility between launch and exit, below the ground at the launch.
double deepest_utility_m(const Crossing& crossing) {
  const double from = crossing.bore.launch.station.m, to = crossing.bore.exit.station.m;
  double deepest = 0;
  for (const Utility& utility : crossing.site.utilities)
    for (const PathVertex& v : utility.path)
      if (v.z_m && v.x_m >= from && v.x_m <= to) deepest = std::max(deepest, ground_at_launch(crossing) - *v.z_m);
  return deepest;
}

/// From cover of two diameters to where a pit needs an engineer.
MapAxis possible_depths(const Crossing& crossing, const Tables& tables) {
  const double diameter = resolve_tool(crossing.bore.tool, tables).diameter.m;
  const double least = (least_cover_diameters + 0.5) * diameter;
  return {least, std::max(limit_of(crossing, tables, "pit_depth_m").value - diameter, 2 * least)};
}

MapAxis depths(const Crossing& crossing, const Tables& tables) {
  const double here = ground_at_launch(crossing) - crossing.bore.launch.elevation.m;
  const auto [least, engineer, count, locked] = possible_depths(crossing, tables);
  const double deepest = std::min(
      std::max({usual_depth_m, here + beyond_depth_m, deepest_utility_m(crossing) + beyond_depth_m}), engineer);
  return {std::min(least, here), std::max({deepest, here, 2 * least})};
}

MapAxis grades(const Crossing& crossing) {
  const double here = crossing.bore.launch.grade.v;
  return {std::max(std::min(-usual_grade, here - beyond_grade), -steepest),
          std::min(std::max(usual_grade, here + beyond_grade), steepest)};
}

MapAxis stations(const Crossing& crossing) {
  const double here = crossing.bore.launch.station.m, exit = crossing.bore.exit.station.m;
  return {here - beside_m, std::max(here, std::min(here + beside_m, exit - before_exit_m))};
}

MapAxis offsets(const Crossing& crossing) {
  const double here = crossing.bore.launch.offset->m;
  return {here - beside_m, here + beside_m};
}

MapAxis shared_out(MapAxis axis, int count, bool locked, double here) {
  if (locked || !(axis.to > axis.from)) return {here, here, 1, locked};
  axis.count = std::clamp(count, 2, 512);
  return axis;
}

}  // namespace

double MapAxis::at(int i) const {
  if (count < 2) return from;
  return i == count - 1 ? to : from + i * step();
}

const LaunchCell& LaunchMap::cell(int across_i, int down_i) const {
  return cells[static_cast<std::size_t>(down_i) * static_cast<std::size_t>(across.count) +
               static_cast<std::size_t>(across_i)];
}

std::pair<MapAxis, MapAxis> map_axes(const Crossing& crossing, const Tables& tables, const LaunchMapOptions& options) {
  const MapPlace here = place_of(crossing, options.over);
  const auto locked = [&](const char* member) {
    return member_locked(crossing, std::string("/bore/launch/") + member);
  };
  if (options.over == MapOver::station_and_offset)
    return {shared_out(stations(crossing), options.cells, locked("station_m"), here.across),
            shared_out(offsets(crossing), options.cells, locked("offset_m"), here.down)};
  return {shared_out(grades(crossing), options.cells, locked("grade"), here.across),
          shared_out(depths(crossing, tables), options.cells, locked("elevation_m"), here.down)};
}

std::pair<MapAxis, MapAxis> map_bounds(const Crossing& crossing, const Tables& tables, MapOver over) {
  LaunchMapOptions options;
  options.over = over;
  auto [across, down] = map_axes(crossing, tables, options);
  const auto hold = [](MapAxis& axis, double from, double to) {
    if (axis.count < 2) return;
    axis.from = std::min(axis.from, from);
    axis.to = std::max(axis.to, to);
  };
  if (over == MapOver::depth_and_grade) {
    const MapAxis depth = possible_depths(crossing, tables);
    hold(across, -steepest_searched, steepest_searched);
    hold(down, depth.from, depth.to);
    return {across, down};
  }
  const double longest_m = limit_of(crossing, tables, "length_any_m").value, exit = crossing.bore.exit.station.m;
  double back = exit - longest_m;
  if (!crossing.site.ground.empty()) back = std::max(back, crossing.site.ground.front().station_m);
  hold(across, back, across.to);
  const double offset = crossing.bore.launch.offset->m;
  hold(down, offset - furthest_beside_m, offset + furthest_beside_m);
  return {across, down};
}

Launch launch_at(const Crossing& crossing, MapOver over, const MapPlace& place) {
  Launch launch = crossing.bore.launch;
  if (over == MapOver::station_and_offset) {
    launch.station.m = place.across;
    if (place.down != launch.offset->m) launch.offset.set(Length{place.down});
  } else {
    launch.grade.v = place.across;
    launch.elevation.m = ground_at_launch(crossing) - place.down;
  }
  return launch;
}

MapPlace place_of(const Crossing& crossing, MapOver over) {
  const Launch& launch = crossing.bore.launch;
  if (over == MapOver::station_and_offset) return {launch.station.m, launch.offset->m};
  return {launch.grade.v, ground_at_launch(crossing) - launch.elevation.m};
}

}  // namespace burrow

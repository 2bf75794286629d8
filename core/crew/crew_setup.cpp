#include "burrow/crew/crew_setup.h"

#include <cmath>

#include "burrow/check/limits.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/pit/pit_shapes.h"

namespace burrow {

namespace {

AdvanceAsk ask_of(const Crossing& crossing, const Tables& tables, const Tool& tool) {
  return {tool.pressure, *crossing.bore.model.field_factor, Length{limit_of(crossing, tables, "set_least_m").value}};
}

LaunchLevels launch_levels(const Crossing& crossing, const Tool& tool, const PitShape& pit) {
  const Launch& launch = crossing.bore.launch;
  LaunchLevels levels;
  levels.ground = {elevation_at(crossing.site.ground, launch.station.m)};
  levels.axis = launch.elevation;
  levels.axis_depth = {levels.ground.m - levels.axis.m};
  levels.underside = {levels.axis.m - tool.diameter.m / 2};
  levels.floor = {pit.floor_elevation_m};
  levels.slab = {levels.floor.m + crossing.pits.launch.slab_thickness->m};
  levels.bed = {levels.slab.m + crossing.pits.launch.cradle_height->m};
  levels.packing = {levels.underside.m - levels.bed.m};
  return levels;
}

std::vector<LevelRise> level_rises(const Launch& launch) {
  const double theta = std::atan(launch.grade.v);
  std::vector<LevelRise> rises;
  for (const double length_m : {0.6, 1.2, 0.6096, 1.2192}) rises.push_back({{length_m}, {length_m * std::sin(theta)}});
  return rises;
}

SightLine sight_line(const Bore& bore) {
  const Launch& launch = bore.launch;
  SightLine sight{*launch.heading, *launch.offset, {}, launch.sight_base, {}};
  const double slope = std::tan(launch.heading->rad);
  sight.at_exit = {launch.offset->m + (bore.exit.station.m - launch.station.m) * slope};
  if (launch.sight_base) sight.at_stake = Length{launch.offset->m + launch.sight_base->m * slope};
  return sight;
}

}  // namespace

CrewSetup crew_setup(const Crossing& crossing, const Tables& tables, const SiteSurface& surface) {
  const Launch& launch = crossing.bore.launch;
  const Ground ground(crossing.site, tables);
  CrewSetup setup;
  setup.tool = tool_at_work(crossing, tables).tool;
  setup.grade = grade_readings(launch, setup.tool);
  setup.stake = stake_offset(launch);
  const PitShape pit = launch_pit_shape(crossing, setup.tool, tables, surface);
  setup.cradle = cradle_setup(launch, setup.tool, Length{pit.floor_elevation_m});
  setup.levels = launch_levels(crossing, setup.tool, pit);
  setup.level_rises = level_rises(launch);
  setup.sight = sight_line(crossing.bore);
  setup.errors = errors_at_exit(ground, setup.tool, crossing.bore);
  const BorePath path = predict_path(ground, setup.tool, crossing.bore);
  setup.hold_until_m = advance_along(ground, setup.tool, path, ask_of(crossing, tables, setup.tool)).held_until_m;
  return setup;
}

std::vector<PressureEffect> pressure_choices(const Crossing& crossing, const Tables& tables,
                                             const Assessment& assessment) {
  if (assessment.bore.points.size() < 2) return {};
  const Ground ground(crossing.site, tables);
  const Tool tool = tool_at_work(crossing, tables).tool;
  return pressure_effects(ground, tool, assessment.bore, ask_of(crossing, tables, tool),
                          {Pressure{4.0e5}, Pressure{5.0e5}, Pressure{6.0e5}, Pressure{6.9e5}});
}

}  // namespace burrow

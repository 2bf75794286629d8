#include "burrow/check/crew_setup.h"

#include "burrow/check/limits.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/pit/plan.h"

namespace burrow {

namespace {

AdvanceAsk ask_of(const Crossing& crossing, const Tables& tables, const Tool& tool) {
  return {tool.pressure, *crossing.bore.model.field_factor, Length{limit_of(crossing, tables, "set_least_m").value}};
}

}  // namespace

CrewSetup crew_setup(const Crossing& crossing, const Tables& tables) {
  const Launch& launch = crossing.bore.launch;
  const Ground ground(crossing.site, tables);
  CrewSetup setup;
  setup.tool = tool_at_work(crossing, tables).tool;
  setup.grade = grade_readings(launch, setup.tool);
  setup.stake = stake_offset(launch);
  const PitShape pit = launch_pit_shape(crossing, setup.tool, tables);
  setup.cradle = cradle_setup(launch, setup.tool, Length{pit.floor_elevation_m});
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

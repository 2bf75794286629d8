#include "burrow/check/crew_setup.h"

#include "burrow/bore/advance.h"
#include "burrow/check/limits.h"
#include "burrow/pit/plan.h"

namespace burrow {

CrewSetup crew_setup(const Crossing& crossing, const Tables& tables) {
  const Launch& launch = crossing.bore.launch;
  const Ground ground(crossing.site, tables);
  CrewSetup setup;
  setup.tool = resolve_tool(crossing.bore.tool, tables);
  setup.grade = grade_readings(launch, setup.tool);
  setup.stake = stake_offset(launch);
  const PitShape pit = launch_pit_shape(crossing, setup.tool, tables);
  setup.cradle = cradle_setup(launch, setup.tool, Length{pit.floor_elevation_m});
  setup.errors = errors_at_exit(ground, setup.tool, crossing.bore);
  const BorePath path = predict_path(ground, setup.tool, crossing.bore);
  const Length least_set{limit_of(crossing, tables, "set_least_m").value};
  const AdvanceAsk ask{setup.tool.pressure, *crossing.bore.model.field_factor, least_set};
  setup.hold_until_m = advance_along(ground, setup.tool, path, ask).held_until_m;
  return setup;
}

}  // namespace burrow

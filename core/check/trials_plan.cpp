#include "burrow/check/trials_plan.h"

#include "burrow/check/limits.h"
#include "burrow/pit/pit_shapes.h"

namespace burrow {

TrialsSetup trials_setup(const Crossing& crossing, const Tables& tables, const Assessment& assessment) {
  std::optional<Length> widest;
  if (!crossing.pits.exit.floor_width) widest = Length{limit_of(crossing, tables, "exit_widest_m").value};
  const double ground = elevation_at(crossing.site.ground, crossing.bore.exit.station.m);
  const ExitOpening opening = exit_opening(assessment.exit_pit, Length{ground}, widest);
  TrialsSetup setup;
  setup.window = {opening.right_m, opening.left_m, opening.low_m, opening.high_m};
  setup.rules = clearance_rules(LimitsInForce(crossing, tables), tables);
  return setup;
}

}  // namespace burrow

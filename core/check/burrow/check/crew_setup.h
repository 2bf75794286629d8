#pragma once
/// What the crew sets at the launch, gathered for the panel and the card.

#include <vector>

#include "burrow/bore/advance.h"
#include "burrow/bore/launch_setup.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/crossing/tables.h"

namespace burrow {

struct CrewSetup {
  Tool tool;
  GradeReadings grade;
  std::optional<Length> stake;  ///< empty: no sight base entered
  CradleSetup cradle;
  ErrorsAtExit errors;
  /// The nose this far beyond the face before the ground holds the tool against its air; empty: it never does.
  std::optional<double> hold_until_m;
};

/// Follows the mean path four times more: for a panel, not for each frame of a drag.
/// Source: as `launch_setup.h`.   Evidence: CrewSetup.*
CrewSetup crew_setup(const Crossing& crossing, const Tables& tables);

/// Time, stop and grip along the path of an assessment at 4, 5, 6 and 6.9 bar at the tool (6.9 bar, 100 psi, at most:
/// common practice, no source). Empty without a path.   Evidence: CrewSetup.Pressures_*
std::vector<PressureEffect> pressure_choices(const Crossing& crossing, const Tables& tables,
                                             const Assessment& assessment);

}  // namespace burrow

#pragma once
/// What the crew sets at the launch, gathered for the panel and the card.

#include <vector>

#include "burrow/bore/advance.h"
#include "burrow/bore/launch_setup.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/site_surface.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// From the surface down to what the tool lies on, at the launch face. Levels are elevations.
struct LaunchLevels {
  Length ground;
  Length axis;
  Length axis_depth;  ///< below the ground at the face: the depth to set
  Length underside;   ///< of the body, where the cradle bears it
  Length bed;         ///< top of the cradle as entered
  Length slab;        ///< top of the slab or bedding
  Length floor;       ///< as dug
  Length packing;     ///< to be put under the tool on the cradle; negative: bed or floor is too high by so much
};

/// What a level laid on the tool shows: the nose higher than the tail over the length of the level; negative: lower.
struct LevelRise {
  Length level;
  Length rise;
};

/// Where the line aimed at passes, from the crossing line; left positive.
struct SightLine {
  Angle heading;
  Length at_launch;
  Length at_exit;
  std::optional<Length> base, at_stake;
};

struct CrewSetup {
  Tool tool;
  GradeReadings grade;
  std::optional<Length> stake;  ///< empty: no sight base entered
  CradleSetup cradle;
  ErrorsAtExit errors;
  /// The nose this far beyond the face before the ground holds the tool against its air; empty: it never does.
  std::optional<double> hold_until_m;
  LaunchLevels levels;
  std::vector<LevelRise> level_rises;  ///< of levels 0.6, 1.2 m and 2, 4 ft long
  SightLine sight;
};

/// Follows the mean path four times more: for a panel, not for each frame of a drag.
/// Source: as `launch_setup.h`; levels and sight derived. Hose marks stand in `Assessment::marks`.
/// `surface`: that of the site, if it was made before.   Evidence: CrewSetup.*
CrewSetup crew_setup(const Crossing& crossing, const Tables& tables, const SiteSurface& surface = {});

/// Time, stop and grip along the path of an assessment at 4, 5, 6 and 6.9 bar at the tool (6.9 bar, 100 psi, at most:
/// common practice, no source). Empty without a path.   Evidence: CrewSetup.Pressures_*
std::vector<PressureEffect> pressure_choices(const Crossing& crossing, const Tables& tables,
                                             const Assessment& assessment);

}  // namespace burrow

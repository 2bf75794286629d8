#pragma once
/// What the crew sets at the launch so that the bore starts as designed, and what a small error there becomes at the
/// exit.

#include <optional>

#include "burrow/bore/path.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/bore.h"

namespace burrow {

/// The grade in the three ways a crew reads it. Positive: the nose points up.
struct GradeReadings {
  Ratio grade;        ///< rise over level run; a hundred times this is per cent
  Angle inclination;  ///< of the axis
  Length rise;        ///< the nose higher than the tail, over the length of the tool along its body
};

/// grade = tan θ, rise = L_t sin θ: the level lies along the body, so that its base is L_t itself and not its level
/// run. Source: derived.   Range: any finite grade.   Evidence: LaunchSetup.Grade_*
GradeReadings grade_readings(const Launch& launch, const Tool& tool);

/// Offset of the aimed line at the sighting stake, from where a line parallel to the crossing line through the launch
/// point would pass it; positive left. Empty without a sight base.
/// Source: derived, base · tan ψ.   Range: |heading| < 90°.   Evidence: LaunchSetup.Stake_*
std::optional<Length> stake_offset(const Launch& launch);

/// Where the front third of the body is held: a point under the tool, on the cradle.
struct CradlePoint {
  Length station;
  Length elevation;    ///< underside of the body there
  Length above_floor;  ///< of the pit: height of the cradle's bed there
};

/// The nose stands at the launch face; the front third ends a third of the body behind it. Held over that third the
/// tool starts along the design line; held behind it alone it tips.
struct CradleSetup {
  CradlePoint nose;         ///< at the face
  CradlePoint front_third;  ///< a third of the body behind the face
  CradlePoint tail;
};

/// Source: derived; a third: common practice (no source).   `floor`: elevation of the pit floor.
/// Evidence: LaunchSetup.Cradle_*
CradleSetup cradle_setup(const Launch& launch, const Tool& tool, Length floor);

/// What one unit of error becomes at the exit face; positive up and left.
struct ExitShift {
  double up_m = 0;
  double left_m = 0;
};

struct ErrorsAtExit {
  ExitShift level_1mm;        ///< the nose 1 mm too high over the length of the tool
  ExitShift level_1_percent;  ///< 1 % of grade
  ExitShift level_1_degree;
  std::optional<ExitShift> stake_1mm;  ///< aimed 1 mm too far left at the stake
  ExitShift heading_1_degree;
  double straight_run_m = 0;  ///< along the axis, launch to exit
  bool reaches = true;        ///< false: the mean path does not reach the exit; the shifts are those of straight lines
};

/// Small errors carried through the ground: central differences of the mean path by 0.0005 rad, so that what the ground
/// does to a tool that runs higher is in it. Straight lines of the run, where the path does not reach the exit.
/// Source: our model (the path), derived (the differences).   Range: exit beyond the launch.
/// Evidence: LaunchSetup.Errors_*
ErrorsAtExit errors_at_exit(const Ground& ground, const Tool& tool, const Bore& bore);

}  // namespace burrow

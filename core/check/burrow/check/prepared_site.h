#pragma once
/// Many launches of one crossing judged, as the search does it: what they share is made ready once.

#include <memory>
#include <optional>
#include <vector>

#include "burrow/bore/fan_grounds.h"
#include "burrow/bore/guessed_ground.h"
#include "burrow/bore/neutral_cover.h"
#include "burrow/bore/tool.h"
#include "burrow/bore/turn_table.h"
#include "burrow/check/assessment.h"
#include "burrow/check/limits.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/site_surface.h"
#include "burrow/soil/ground.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// What `assess()` makes ready before it looks at the launch: soils with their fits, the tool, the limits in force.
/// Holds for every crossing of the same site, tool, air and limits. Only read by those who judge with it: threads share
/// it.
struct PreparedSite {
  PreparedSite(const Crossing& crossing, const Tables& tables);
  /// With tables of what the ground does to the tool, for launches within that extent: quick, paths within 2 mm and
  /// bands within 1 % of those of `assess()`. Left out where there are strips.
  PreparedSite(const Crossing& crossing, const Tables& tables, const TurnExtent& extent);
  Ground ground;
  SiteSurface surface;
  GuessedGrounds guesses;
  ToolAtWork at_work;
  Tool tool;  ///< at the pressure that stands at it
  LimitsInForce limits;
  std::optional<TurnTable> turns;
  std::optional<NeutralTable> neutral;
};

/// What the checks of one pit gave.
struct JudgedPit {
  PitAnswer work;
  std::vector<Finding> findings, passed;
};

/// What does not change while only grade changes: kept from one launch to the next by whoever judges many.
struct LaunchCache {
  Launch launch;
  std::optional<PitShape> pit;          ///< the launch pit of that launch
  std::optional<JudgedPit> launch_pit;  ///< the same judged
  std::unique_ptr<FanGrounds> fans;     ///< tables of the turning; belong to one groundwork
  std::vector<Finding> room;            ///< given back for the next `JudgedLaunch::passed`: such lists are large
};

struct JudgedLaunch {
  Assessment
      answer;  ///< as `assess()` gives it, but without working, run sheet and test holes to dig, findings unsorted
  /// Every limit judged and kept, with its margin ≥ 0 and without its source; without chances below a millionth of what
  /// is allowed, which nothing can hang on. Those that are broken are findings.
  std::vector<Finding> passed;
};

/// `assess()` of one launch on groundwork that is there already.
/// Range: groundwork of this site, tool and limits.   Evidence: JudgedLaunch.*
JudgedLaunch judge_launch(const Crossing& crossing, const Tables& tables, const PreparedSite& groundwork,
                          LaunchCache* memory = nullptr);

}  // namespace burrow

#pragma once
/// How far the ground at one place may rise or sink.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/phrase.h"
#include "burrow/bore/path.h"
#include "burrow/check/limits.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct PegLimits {
  std::optional<Limit> caution;
  Limit stop;
  std::string subject;  ///< id of the road, track, drive or footway whose limit it is; "site" where none is drawn
  Phrase name;
  bool operator==(const PegLimits& other) const { return subject == other.subject && stop.value == other.stop.value; }
};

/// The strictest of what lies within a metre of the station; where nothing does, the strictest of all that is drawn;
/// where nothing is drawn, that of a road: a peg is not judged less for standing beside.
/// Source: limits in force.   Evidence: PegLimits.*
PegLimits peg_limits(const Crossing& crossing, const Tables& tables, const std::vector<PathPoint>& path,
                     double station_m);

}  // namespace burrow

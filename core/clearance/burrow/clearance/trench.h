#pragma once
/// The trench a utility was laid in, proposed as a strip of other soil.

#include <optional>
#include <string>

#include "burrow/crossing/site.h"

namespace burrow {

/// What is taken where nobody measured the trench.
struct TrenchRule {
  std::string soil = "trench-backfill";
  Length wider{0.6};  ///< than the utility, both sides together
  Length below{0.1};  ///< bedding under it
};

/// A strip without id along the whole line of the utility, as wide as it and `wider`, from the ground down to `below`
/// its lowest underside known (a strip has one bottom). Ends are square; outer corners hold everything within half the
/// width, inner ones are cut where the sides meet.
/// Source: our default.   Range: empty without a diameter, without a known elevation, for a line of no length in plan,
/// for one whose crown lies nowhere below the ground, and where the line runs back over its own trench.
/// Evidence: Trench.*
std::optional<Strip> trench_of(const Utility& utility, const LevelLine& ground, const TrenchRule& rule = {});

}  // namespace burrow

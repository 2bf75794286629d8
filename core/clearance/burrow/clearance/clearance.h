#pragma once
/// How the bore passes each utility: clear gap, what is asked for, chance of contact and of coming too near.

#include <array>
#include <cstddef>
#include <iterator>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/base/working.h"
#include "burrow/bore/path.h"
#include "burrow/bore/path_fans.h"
#include "burrow/clearance/test_holes.h"
#include "burrow/crossing/site.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Clear gaps asked for, outside to outside: of a utility that is exposed, and of each kind that nobody has exposed.
/// Of a dangerous one (`dangerous` in the table of utilities) 1.645 s come to it.
struct ClearanceRules {
  Length exposed;
  std::array<Length, std::size(EnumNames<UtilityKind>::list)> unexposed{};  ///< by kind
  [[nodiscard]] Length of(UtilityKind kind, bool hidden) const {
    return hidden ? unexposed.at(static_cast<std::size_t>(kind)) : exposed;
  }
};

/// The larger of the rule and of what was entered for this utility or agreed with its owner.
/// Evidence: Clearance.GapWanted_LargestOfRuleOwnAndAgreed
Length clear_gap_wanted(const ClearanceRules& rules, const Utility& utility, bool unexposed);

/// Typed values win; what they leave open comes from the locating preset: the stated ± taken as one standard
/// deviation (the safe reading), the larger of its absolute part and its share of the depth.
/// Source: `resources/tables/locating.json`; reading of ±: our model.   Evidence: Clearance.Preset_*
LocationSd location_sd(const Located& located, const Tables& tables, double depth_m);

/// What a mixed chance is summed from, for the working: the bore of each followed steering constant in the ground as
/// entered, and the chance in each ground that guesses may be.
struct MixedRow {
  double constant = 0, gap_m = 0, spread_m = 0;  ///< c; δ(c) with its sign; s(c) without the utility's
  double between_ends = 1;                       ///< e(c), of the bores that pass between its ends
  bool operator==(const MixedRow&) const = default;
};
struct MixedGround {
  double share = 1;
  double contact = 0, worst = 0, encroachment = 0;
  bool operator==(const MixedGround&) const = default;
};
struct Mixture {
  std::vector<MixedRow> rows;
  std::vector<MixedGround> grounds;
  double utility_sd_m = 0;
  double worst_sd_m = 0;     ///< the location error, across, with which the chance of contact is largest
  bool ends_matter = false;  ///< the utility ends so near that its length enters
  bool operator==(const Mixture&) const = default;
};

/// Distance and spreads at the place along the run where the gap less the band is least.
struct GapLow {
  double distance_m = 0, bore_sd_m = 0, utility_sd_m = 0;
  bool operator==(const GapLow&) const = default;
};

/// Everything known about one utility. Empty optionals are unknown, never 0.
struct Clearance {
  std::string id, name;
  UtilityKind kind = UtilityKind::unknown;
  UtilityStatus status = UtilityStatus::unknown;
  LocatedHow how = LocatedHow::unknown;

  bool dangerous = false;  ///< by its kind
  bool live = true;        ///< something may be in it, see `may_be_live`
  bool unexposed = true;   ///< nobody has seen it where the bore passes and left a measured level, date and name
  bool exposure_unproved = false;      ///< said to be exposed, without such a hole: it counts as traced
  bool depth_unknown_at_bore = false;  ///< no 3-D answers; station, offset and angle are those in plan
  bool no_diameter = false;            ///< computed with a utility radius of 0
  bool no_sd = false;                  ///< computed with a location error of 0; one of 0 typed counts as none
  bool crossed_by_band = false;        ///< |δ| < R + 2.576 s: the 99 % band reaches it
  bool hole_at_bore = false;           ///< a test hole shows it where the bore crosses: it counts as exposed there
  double depth_m = 0;                  ///< below ground at the nearest place, 0: not known

  std::optional<double> axis_distance_m;              ///< δ, axis to axis
  double contact_radius_m = 0;                        ///< R, bore radius + utility radius
  std::optional<double> bore_sd_m, utility_sd_m;      ///< along the common normal
  std::optional<double> spread_m;                     ///< s, both together
  std::optional<double> lateral_sd_m, vertical_sd_m;  ///< of the utility there

  std::optional<double> separation_m;  ///< δ − R: clear gap outside to outside, negative when they overlap
  std::optional<double> gap_low_m;     ///< δ − R − 1.645 s, least along the run
  std::optional<GapLow> low_at;        ///< of what it is made
  std::optional<double> station_m, offset_m, elevation_m;  ///< nearest point of the utility's axis
  std::optional<double> angle_rad;                         ///< between the lines, π/2 for a square crossing
  std::optional<double> required_m;                        ///< all of what is asked for
  double required_fixed_m = 0;                             ///< the same without 1.645 s
  double required_exposed_m = 0;                           ///< if it were exposed

  std::optional<double> contact_chance, contact_chance_worst;
  std::optional<double> encroachment_chance;  ///< of coming nearer than `required_fixed_m`
  bool bound = false;                         ///< the chances are lower bounds: run the trials
  std::optional<Mixture> mixture;             ///< they are summed over the steering constant; rows: where it matters
  std::optional<Point3> on_bore, on_utility;
  PinnedLine pinned;  ///< by its test holes; all of the above follows this line
  bool operator==(const Clearance&) const = default;
};

/// One answer for each utility with a path, in order; a utility without one is left with its flags only.
/// Source: method derived, `separation.h` and `contact.h`. Not knowing never looks safe: the verdict uses
/// `contact_chance_worst` and `gap_low_m`.
/// The chance at the nearest place is that of the stadium; along a run that stays beside the bore the end section
/// (circle) is tried at every metre or so and the largest counts, which keeps one formula from crossing to parallel.
/// `bound`: the angle is below 20°, or the run beside it decides. The stadium takes the bore as straight, of one
/// spread, over the (R + 2s)/tan α on either side in which contact is possible; in 10 m of wander random bores agree
/// with it down to 20°, are a tenth more at 10° and twice as many at 3°. Test holes: `pinned_line`; one with level,
/// date and name within 0.5 m of the place nearest the bore, at a crossing above 20°, exposes the utility there.
/// Declared ends: `reach_of`. With `fans` the chances are summed over the steering constant and the grounds that
/// guesses may be; without them the first order counts. On `threads` threads the answers are the same. Range: ground
/// line not empty when a preset states a share of depth.   Evidence: Clearance.*, Clearance.RandomBores_*, TestHoles.*
std::vector<Clearance> clearances(const BorePath& path, Length bore_diameter, const std::vector<Utility>& utilities,
                                  const LevelLine& ground, const ClearanceRules& rules, const Tables& tables,
                                  const std::vector<TestHole>& holes = {}, const PathFans& fans = {},
                                  unsigned threads = 1);

/// The working behind one answer: codes `utility.separation`, `utility.gap-low`, `utility.contact`,
/// `utility.encroachment`. Holds the very numbers of the answer; empty where they are unknown.
std::vector<Working> working_of(const Clearance& clearance);

}  // namespace burrow

#pragma once
/// Layouts of one crossing beside one another: the one in force and the alternatives kept in the file.

#include <optional>
#include <string>
#include <vector>

#include "burrow/check/assess.h"

namespace burrow {

/// What a person compares. Lengths, volumes and chances are those of `assess()`; empty where not known.
struct LayoutSummary {
  std::string id;  ///< empty: the one in force
  std::string name;
  Verdict verdict = Verdict::incomplete;
  int stops = 0, missing = 0, cautions = 0;
  std::optional<double> length_m, launch_depth_m, grade;
  std::optional<double> least_cover_m;
  std::optional<double> least_gap_m;       ///< clear gap of the utility that comes nearest to its limit
  std::optional<double> least_gap_over_m;  ///< that gap less the gap wanted
  std::string least_gap_utility;
  std::optional<double> contact_chance, chance_inside_exit_pit;
  std::optional<double> heave_high_m;
  double dig_m3 = 0;  ///< both pits, in the bank
  std::optional<double> time_s;
  bool operator==(const LayoutSummary&) const = default;
};

/// Sums up one assessment.   Evidence: Layouts.*
LayoutSummary summary_of(const Crossing& crossing, const Assessment& assessment);

/// The layout in force first, then the alternatives in the order of the file.   Evidence: Layouts.*
std::vector<LayoutSummary> compare_layouts(const Crossing& crossing, const Assessment& in_force, const Tables& tables);

/// The layout in force as an alternative of that name, with an id of its own.
Alternative kept_layout(const Crossing& crossing, const std::string& name);

/// The alternative put in force; what was in force takes its place in the list, under the name given.
/// Range: an id of the list; otherwise nothing changes.   Evidence: Layouts.TakenInForce_*
Crossing with_layout_in_force(const Crossing& crossing, const std::string& id, const std::string& name_of_the_other);

}  // namespace burrow

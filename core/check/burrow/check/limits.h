#pragma once
/// The limits in force: the table's, or the user's own with its reason. One that is looser than the table's counts only
/// with a reason, and one that nobody may set never; both are findings, see `check_typed_limits`.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/base/source.h"
#include "burrow/clearance/clearance.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct Limit {
  double value = 0;  ///< SI
  bool at_least = true;
  Source source;
};

/// What becomes of a limit that somebody typed.
enum class TypedLimit { counts, loosened, no_reason, impossible };

/// Looser is less strict than the table's value by the sense of the row. Impossible: a chance of harm above 0.5, a
/// chance of arriving below it, a gap below 0.   Source: our default.   Evidence: Limits.*
TypedLimit judge_typed(const LimitRow& row, const LimitOverride& typed);

/// Its number is a chance, 0 to 1.   Evidence: Limits.ChanceAboveOneHalf_*
bool is_chance(const LimitRow& row);

/// The limit with this id. A typed one carries the label *owner's setting* and the user's reason.
/// Range: an id of `resources/tables/limits.json` (otherwise a bug).   Evidence: Limits.*
Limit limit_of(const Crossing& crossing, const Tables& tables, std::string_view id);

/// All limits in force, looked up once.   Evidence: Limits.*
class LimitsInForce {
 public:
  LimitsInForce(const Crossing& crossing, const Tables& tables);
  /// Range: an id of the table (otherwise a bug).
  [[nodiscard]] const Limit& of(std::string_view id) const;

 private:
  std::vector<std::pair<std::string, Limit>> all_;
};

/// The gaps to utilities in force, for bore, pits and trials alike. A kind whose row names several limits wants the
/// largest.   Evidence: TrialsPlan.*, Limits.Gap_*
ClearanceRules clearance_rules(const LimitsInForce& limits, const Tables& tables);

/// The clear gap wanted of this utility, with where it comes from: the limit of its kind, or what was entered for it or
/// agreed with its owner where that is more.   Evidence: Limits.Gap_*
Limit gap_limit(const LimitsInForce& limits, const Tables& tables, const Utility& utility, bool unexposed);

/// (limit − value)/limit with the sign of the sense: negative when the limit is broken. A limit of 0 counts as 1. What
/// is not a number breaks any limit; the margin itself is always a number, at most 1e9 either way.
/// Evidence: Require.*
double margin_of(double value, const Limit& limit);

/// A margin as it is shown and ranked: a limit missed by more than itself, or kept by more than itself, says no more
/// than that.   Range: any number.   Evidence: Limits.Margin_BoundedToOne
double bounded_margin(double margin);

}  // namespace burrow

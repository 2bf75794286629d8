#pragma once
/// The permit to bore: all that a supervisor is asked for before the first blow, line by line, with what stands there.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// `blocks`: nobody can take it on; what is done all the same is only recorded.
enum class PermitState { holds, open, blocks };
template <>
struct EnumNames<PermitState> {
  static constexpr std::pair<PermitState, std::string_view> list[] = {
      {PermitState::holds, "holds"}, {PermitState::open, "open"}, {PermitState::blocks, "blocks"}};
};

struct PermitLine {
  std::string_view code;  ///< "permit.ticket", "permit.answered", "permit.exposed", …
  Phrase what;            ///< "Positive response of the water company"
  Phrase found;           ///< what was entered, or what is missing
  PermitState state = PermitState::open;
  std::optional<double> level_m{};  ///< measured there; shown with its unit
  bool operator==(const PermitLine&) const = default;
};

/// Every line, in the order in which it is asked for; what nobody entered is open, what was looked at on another day
/// too. `on`: the day of the bore; without one nothing dated holds. Source: common practice (no source); owners and
/// local rules govern.   Evidence: PermitLines.*
std::vector<PermitLine> permit_lines(const Crossing& crossing, const Assessment& assessment,
                                     const std::optional<Date>& on);

/// How many lines do not hold.
int open_lines(const std::vector<PermitLine>& lines);

/// Somebody signed *no-go* for that day.   Evidence: PermitLines.NoGo_*
bool signed_no_go(const Permit& permit, const std::optional<Date>& on);

/// Owners of lines here, each once, in the order of the utilities; those who are only on the permit last.
std::vector<std::string> owners_here(const Crossing& crossing);

/// What was entered of an owner; empty members where nothing was.
OwnerContact contact_of(const Permit& permit, const std::string& owner);

/// "a compressor that runs and shuts down", of one item of the daily check.
Phrase words_of_daily(DailyItem item);

}  // namespace burrow

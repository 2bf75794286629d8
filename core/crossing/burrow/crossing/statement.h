#pragma once
/// Whether what somebody vouches for counts.

#include <optional>
#include <string_view>

#include "burrow/base/date.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// A letter or a digit, of any alphabet: a blank or a dash says nothing.   Evidence: Statements.*
bool says_something(std::string_view text);

/// A day of the calendar that is not after `on`; without `on` none counts.   Evidence: Statements.*
bool dated(const std::optional<std::string>& date, const std::optional<Date>& on);

/// All of it entered: how it is known, by whom, on which day.   Evidence: Statements.*
bool vouched(const Statement& statement, const std::optional<Date>& on);

/// By whom and on which day; what is declared says the rest.   Evidence: Statements.*
bool declared(const Statement& statement, const std::optional<Date>& on);

/// Whether its line was dragged since somebody located it: its day is not after that.   Evidence: Located.Moved_*
bool moved_since_located(const Located& located);

/// Whether a ticket holds on that day: from its first to its last, both as it says. Evidence: Statements.*
bool in_force(const UtilitySearch& search, const std::optional<Date>& on);

}  // namespace burrow

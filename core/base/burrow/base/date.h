#pragma once
/// A day of the calendar as files and tickets write it.

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace burrow {

struct Date {
  int year = 0, month = 0, day = 0;
  auto operator<=>(const Date&) const = default;
};

/// "2025-05-03", alone or before a time ("2025-05-03T08:12:00+02:00"); empty: no such day.
/// Source: ISO 8601, calendar dates.   Range: years 1 to 9999.   Evidence: Dates.*
std::optional<Date> date_of(std::string_view text);

/// "2025-05-03".
std::string text_of(const Date& date);

/// Whole days from the one to the other, negative backward.   Evidence: Dates.*
int days_between(const Date& from, const Date& to);

}  // namespace burrow

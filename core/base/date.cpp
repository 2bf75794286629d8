#include "burrow/base/date.h"

#include <fmt/core.h>

#include <charconv>
#include <chrono>

namespace burrow {

namespace {

std::optional<int> whole(std::string_view digits) {
  int value = 0;
  for (const char c : digits)
    if (c < '0' || c > '9') return std::nullopt;
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (read.ec != std::errc()) return std::nullopt;
  return value;
}

std::chrono::year_month_day calendar(const Date& date) {
  return {std::chrono::year(date.year), std::chrono::month(static_cast<unsigned>(date.month)),
          std::chrono::day(static_cast<unsigned>(date.day))};
}

}  // namespace

std::optional<Date> date_of(std::string_view text) {
  if (text.size() < 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  if (text.size() > 10 && text[10] != 'T' && text[10] != ' ') return std::nullopt;
  const auto year = whole(text.substr(0, 4)), month = whole(text.substr(5, 2)), day = whole(text.substr(8, 2));
  if (!year || !month || !day || *year < 1) return std::nullopt;
  const Date date{*year, *month, *day};
  return calendar(date).ok() ? std::optional(date) : std::nullopt;
}

std::string text_of(const Date& date) {
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

int days_between(const Date& from, const Date& to) {
  return static_cast<int>((std::chrono::sys_days(calendar(to)) - std::chrono::sys_days(calendar(from))).count());
}

}  // namespace burrow

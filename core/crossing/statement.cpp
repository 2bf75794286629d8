#include "burrow/crossing/statement.h"

#include <algorithm>

namespace burrow {

bool says_something(std::string_view text) {
  // Letters of other alphabets are bytes above ASCII.
  return std::any_of(text.begin(), text.end(), [](char c) {
    const auto u = static_cast<unsigned char>(c);
    return u >= 0x80 || (u >= '0' && u <= '9') || (u >= 'A' && u <= 'Z') || (u >= 'a' && u <= 'z');
  });
}

bool dated(const std::optional<std::string>& date, const std::optional<Date>& on) {
  const std::optional<Date> day = date ? date_of(*date) : std::nullopt;
  return day && on && *day <= *on;
}

bool declared(const Statement& statement, const std::optional<Date>& on) {
  return says_something(statement.by) && dated(statement.date, on);
}

bool vouched(const Statement& statement, const std::optional<Date>& on) {
  return says_something(statement.how) && declared(statement, on);
}

bool moved_since_located(const Located& located) {
  if (!located.moved) return false;
  const std::optional<Date> moved = date_of(*located.moved),
                            found = located.date ? date_of(*located.date) : std::nullopt;
  return !(moved && found && *moved < *found);
}

bool in_force(const UtilitySearch& search, const std::optional<Date>& on) {
  const std::optional<Date> to = search.valid_to ? date_of(*search.valid_to) : std::nullopt;
  return on && to && *on <= *to && dated(search.valid_from, on);
}

}  // namespace burrow

#include "landxml_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>

#include "../csv_fields.h"

namespace burrow::landxml {

std::string_view local_name(const Node& node) {
  const std::string_view name = node.name();
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

Node child(const Node& node, std::string_view name) {
  for (const Node& inner : node.children())
    if (local_name(inner) == name) return inner;
  return {};
}

std::vector<double> numbers(std::string_view text) {
  std::vector<double> all;
  while (true) {
    text.remove_prefix(std::min(text.find_first_not_of(" \t\r\n,"), text.size()));
    double value = 0;
    const char* end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc()) return all;
    all.push_back(value);
    text.remove_prefix(static_cast<std::size_t>(stop - text.data()));
  }
}

std::optional<double> number_in(const Node& node, const char* attribute) {
  const std::vector<double> all = numbers(node.attribute(attribute).value());
  if (all.size() != 1 || !std::isfinite(all[0])) return std::nullopt;
  return all[0];
}

std::optional<FileUnit> unit_from(std::string_view word) {
  const std::string text = csv::lower(word);
  for (const auto& [name, unit] : {std::pair{"meter", FileUnit::metre},
                                   {"metre", FileUnit::metre},
                                   {"millimeter", FileUnit::millimetre},
                                   {"centimeter", FileUnit::centimetre},
                                   {"foot", FileUnit::foot},
                                   {"feet", FileUnit::foot},
                                   {"ussurveyfoot", FileUnit::us_survey_foot},
                                   {"inch", FileUnit::inch}})
    if (text == name) return unit;
  return std::nullopt;
}

}  // namespace burrow::landxml

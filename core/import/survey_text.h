#pragma once
/// Numbers, headings and encodings of survey text. Private to this room.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/import/found.h"

namespace burrow::survey {

/// A number as instruments and spreadsheets write it, with groups of three set apart: "5,412,345.20", "5.412.345,20",
/// "5'412'345.2", "5 412 345,2". A mark that stands once is the decimal one: a comma only where `decimal_comma`.
std::optional<double> number(std::string_view field, bool decimal_comma);
bool is_number(std::string_view field);

/// One letter for each heading, as in an order: English and German words. Empty where north and east are not both
/// named. Where a file gives degrees beside coordinates of a plan, the plan counts.   Evidence: SurveyText.Headings_*
std::string order_of_headings(const std::vector<std::string>& headings);

/// "Latitude;Longitude": the header names no other north and east.
bool names_degrees(std::string_view header);

/// Numbers within a degree of each other that are finer than any survey in metres: none of the header's saying.
bool look_like_degrees(const Found& found);

/// UTF-8 of a text in UTF-16, either order, with its mark; nothing for any other text. What is no sign becomes U+FFFD.
std::optional<std::string> from_utf16(std::string_view bytes);

}  // namespace burrow::survey

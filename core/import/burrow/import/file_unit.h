#pragma once
/// The unit of the numbers in a foreign file.

#include <optional>
#include <string_view>

#include "burrow/base/enum_names.h"

namespace burrow {

/// US survey foot: 1200/3937 m, kept apart from the foot of 0.3048 m.
enum class FileUnit { metre, foot, us_survey_foot, millimetre, centimetre, inch };
template <>
struct EnumNames<FileUnit> {
  static constexpr std::pair<FileUnit, std::string_view> list[] = {
      {FileUnit::metre, "m"},       {FileUnit::foot, "ft"},       {FileUnit::us_survey_foot, "us-ft"},
      {FileUnit::millimetre, "mm"}, {FileUnit::centimetre, "cm"}, {FileUnit::inch, "in"}};
};

/// Source: definitions (international foot and inch of 1959, US survey foot of 1893).   Evidence: FileUnit.*
double metres_in(FileUnit unit);

/// The unit that a heading states: "Station [m]", "elevation (us survey feet)".
std::optional<FileUnit> unit_named_in(std::string_view heading);

}  // namespace burrow

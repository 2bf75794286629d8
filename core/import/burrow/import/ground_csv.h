#pragma once
/// Reads a ground line, "station, elevation" on each line, from text as levels and spreadsheets write it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/base/result.h"
#include "burrow/import/file_unit.h"

namespace burrow {

/// A line that was not read, and why.
struct LeftOutLine {
  int line = 0;  ///< from 1
  std::string text;
  std::string reason;
  bool operator==(const LeftOutLine&) const = default;
};

/// Numbers as the file has them: nothing is converted, since a file rarely says its unit.
struct GroundCsv {
  std::vector<LevelPoint> points;     ///< stations increase strictly; in the file's unit
  std::optional<FileUnit> unit_hint;  ///< what the header says ("station [m]"); empty: ask
  char delimiter = ',';               ///< ' ' stands for any number of spaces
  bool decimal_comma = false;
  std::vector<LeftOutLine> left_out;
  std::vector<std::string> notes;  ///< what was done beside reading: sorted, columns not used
  bool operator==(const GroundCsv&) const = default;
};

/// Delimiter: ";" wherever one stands, a tab if all lines have one, else ",", else spaces; a decimal comma is
/// understood with ";" and tab.
/// "#" starts a comment. A header may name the columns (station, chainage, distance, x · elevation, level, height, z);
/// without one the first two columns count, and a third column of numbers is refused. A quote opens only at the start
/// of a field. Errors: not text, nothing to read, fewer than two points, a station twice, both decimal marks, a number
/// beyond 1e6 or none at all (nan, inf); the place is the line. Evidence: GroundCsv.*
Result<GroundCsv> read_ground_csv(std::string_view text);

/// The same line in metres.
LevelLine in_metres(const std::vector<LevelPoint>& points, FileUnit unit);

}  // namespace burrow

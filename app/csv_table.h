#pragma once
/// A table from a spreadsheet: a line of names, then lines of cells.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct CsvRow {
  std::size_t line = 0;  ///< of the file, where it begins
  std::vector<std::string> cells;
};

struct CsvContent {
  std::vector<std::string> names;
  std::vector<CsvRow> rows;
};

/// Cells parted by commas, or by semicolons or tabs where the first line has these instead; in quotes a cell may hold
/// them, ends of lines and doubled quotes. Blanks around a cell that is not in quotes do not count; lines without any
/// cell do not count. UTF-8, a leading byte order mark is allowed.
/// Source: RFC 4180, rules 1 to 7 (from memory).
/// Errors (`place`: "line 12"): no line of names, a name twice or empty, quotes that do not close or do not hold the
/// whole cell.   Evidence: CsvContents.*
Result<CsvContent> read_csv_content(std::string_view text);

}  // namespace burrow

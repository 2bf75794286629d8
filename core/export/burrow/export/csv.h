#pragma once
/// Tables for a spreadsheet or a script: path, marks of the run sheet, findings, working.

#include <string>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

enum class CsvTable { path, marks, findings, working };
template <>
struct EnumNames<CsvTable> {
  static constexpr std::pair<CsvTable, std::string_view> list[] = {{CsvTable::path, "path"},
                                                                   {CsvTable::marks, "marks"},
                                                                   {CsvTable::findings, "findings"},
                                                                   {CsvTable::working, "working"}};
};

/// One field as a table wants it: in quotes where it holds a comma, a quote or the end of a line.
/// What a spreadsheet would take for a formula gets an apostrophe before it. Source: RFC 4180, rules 5 to 7; the guard
/// against formulas is common practice (both from memory).   Evidence: Csv.Field_*
std::string csv_field(std::string_view text);

/// A header line, then one line each, ended by CR LF; UTF-8; always SI with the unit in the column's name; what is
/// unknown is empty, never 0; numbers have ten digits. `units`: of the words of findings only.   Evidence: Csv.*
std::string write_csv(CsvTable table, const Crossing& crossing, const Assessment& assessment,
                      UnitSystem units = UnitSystem::metric);

/// Before a table that a spreadsheet should read as UTF-8 without being told.
constexpr const char* byte_order_mark = "\xEF\xBB\xBF";

}  // namespace burrow

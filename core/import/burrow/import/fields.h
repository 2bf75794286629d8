#pragma once
/// What the attributes of a file are: which column holds the diameter, in which unit, inside or outside, and so on.
/// Guessed by name and values, decided by a person, kept for the next file of that shape.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

enum class FieldUse {
  not_used,
  name,
  diameter,
  material,
  depth,         ///< below the ground, along all of the line
  elevation,     ///< along all of the line
  invert_start,  ///< elevation at the first vertex
  invert_end,    ///< at the last
  status,
  owner,
  date
};
template <>
struct EnumNames<FieldUse> {
  static constexpr std::pair<FieldUse, std::string_view> list[] = {{FieldUse::not_used, "not-used"},
                                                                   {FieldUse::name, "name"},
                                                                   {FieldUse::diameter, "diameter"},
                                                                   {FieldUse::material, "material"},
                                                                   {FieldUse::depth, "depth"},
                                                                   {FieldUse::elevation, "elevation"},
                                                                   {FieldUse::invert_start, "invert-start"},
                                                                   {FieldUse::invert_end, "invert-end"},
                                                                   {FieldUse::status, "status"},
                                                                   {FieldUse::owner, "owner"},
                                                                   {FieldUse::date, "date"}};
};

/// What one column is.
struct FieldChoice {
  FieldUse use = FieldUse::not_used;
  std::optional<FileUnit> unit;           ///< of a length; empty: nobody knows, and its numbers are not used
  std::optional<DiameterMeant> diameter;  ///< of a diameter; empty: taken for nominal
  std::optional<LevelMeant> level;        ///< of a depth or elevation; empty: nobody knows
  bool is_decided = false;                ///< a person said it, or the name of the column does; else it is a guess
  bool operator==(const FieldChoice&) const = default;
};

/// One for each column: by the words of its name, a unit by its name ("DIAM_MM") and else by what stands in it.
/// Source: usual names (common practice, no source).   Evidence: Fields.*
std::vector<FieldChoice> guessed_fields(const FoundTable& table);

/// The number in a cell and the unit that stands there: "150", "6 in", "8\"", "DN 100", "0,1 m".
struct CellNumber {
  double value = 0;
  std::optional<FileUnit> unit;
  bool operator==(const CellNumber&) const = default;
};
std::optional<CellNumber> number_in_cell(std::string_view text);

/// "diameter=DIAMETER:mm", "diameter=DN:mm:inside", "depth=COVER:m:crown": use, column, then unit and what it means.
/// Errors: no such use, column, unit or word.   Evidence: Fields.CommandLine_*
Result<std::vector<FieldChoice>> with_fields(const FoundTable& table, std::vector<FieldChoice> choices,
                                             const std::vector<std::string>& words);

/// What a status says of a utility, in English or German; empty: not known.
std::optional<UtilityStatus> status_in(std::string_view text);

/// Choices of a person, kept by the names of the columns of a file: JSON, one row a shape.
struct FieldShape {
  std::vector<std::string> columns;
  std::vector<FieldChoice> choices;
  bool operator==(const FieldShape&) const = default;
};
std::string write_field_shapes(const std::vector<FieldShape>& shapes);
/// Errors: with the JSON pointer of what is wrong.   Evidence: Fields.Remembered_*
Result<std::vector<FieldShape>> read_field_shapes(std::string_view json_text);
/// The newest first; an older one of the same columns goes.
std::vector<FieldShape> remembered(std::vector<FieldShape> shapes, const FoundTable& table,
                                   const std::vector<FieldChoice>& choices);
/// As remembered for these columns, else guessed.
std::vector<FieldChoice> fields_for(const FoundTable& table, const std::vector<FieldShape>& shapes);

}  // namespace burrow

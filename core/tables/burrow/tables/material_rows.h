#pragma once
/// Which row of the tables an entry means: an id of today, or the words of an older file and of a record.

#include <string>
#include <string_view>

#include "burrow/tables/tables.h"

namespace burrow {

/// As entries and words are compared: lower case, umlauts in two letters, no blanks at the ends.
std::string matched_form(std::string_view text);

/// Row of a utility's material. An id is its row. Of a free text the first row counts one of whose words stands in it:
/// "ci" as a word by itself, "*guss*" anywhere; capitals and umlauts do not matter. A row that is not made for the kind
/// of utility never counts: copper is a pipe for gas and water, a cable for power. Nothing: not known, and then the
/// most brittle counts.   Source: rows of `resources/tables/utility_materials.json` (our default). Evidence:
/// MaterialRows.*
const UtilityMaterialRow* find_material(const Tables& tables, std::string_view text, UtilityKind kind);
UtilityWall wall_of(const Tables& tables, const Utility& utility);

/// Row of a kind of building: an id, a name or a whole entry of its words, in any capitals. A text that only holds such
/// a word says more than the word, and is not known: "listed dwelling" is no dwelling. Nothing: the strictest counts.
/// Evidence: StructureRows.*
const StructureRow* find_structure(const Tables& tables, std::string_view text);

}  // namespace burrow

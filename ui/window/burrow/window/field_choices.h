#pragma once
/// The attributes of a file in a small table: what each column is, with what stands in its first rows.

#include <QWidget>
#include <optional>
#include <vector>

#include "burrow/import/into_crossing.h"

namespace burrow {

/// What a person calls a use: "diameter", "level of the invert at its end".
QString field_use_name(FieldUse use);

/// "2 of 7 attributes are used": for the button that opens the table.
QString fields_in_words(const std::vector<FieldChoice>& choices);

/// Asks; nothing where the person left it. What comes back counts as decided.
std::optional<std::vector<FieldChoice>> choose_fields(const ImportFile& file, QWidget* parent);

}  // namespace burrow

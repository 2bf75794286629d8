#pragma once
/// What the import screen says of a file: unit, extent and a measured length beside each other.

#include <QString>
#include <optional>

#include "burrow/base/quantity_text.h"
#include "burrow/import/scale.h"

namespace burrow {

/// Unit, extent, the crossing line in it, heights; then what a person should look at.
QString consequence_text(const ImportFile& file, const std::optional<CrossingLine>& line, UnitSystem units);

/// One line of what the crossing gets.
QString result_text(const Imported& imported, UnitSystem units);

/// "EPSG:25832" of what a person types, "25832" or "epsg: 25832"; empty where it is no code.
std::string crs_in(const QString& text);

}  // namespace burrow

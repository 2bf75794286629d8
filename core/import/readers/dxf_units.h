#pragma once
/// What a DXF drawing states of its units and of its place on the map. Private to the importer library.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/import/file_unit.h"

namespace burrow {

/// The variables of the HEADER section that tell units, as they stand there; a variable that is not there is empty.
struct DrawingUnits {
  std::string insunits;     ///< $INSUNITS, unit of a drawing that is put into another: 4 mm, 6 m …
  std::string measurement;  ///< $MEASUREMENT, patterns and line types: 0 inches, 1 metric
  std::string lunits;       ///< $LUNITS, how lengths are shown: 3 and 4 are feet and inches

  void take(const std::string& variable, int code, const std::string& value);
  /// By $INSUNITS; without it inches where lengths are shown in feet and inches, since these forms count them.
  [[nodiscard]] std::optional<FileUnit> unit() const;
  /// $INSUNITS names a unit that is none of those known here: yards, kilometres, decimetres …
  [[nodiscard]] bool is_foreign() const;
  /// What a person should know before believing it: a unit that is not converted, two statements that do not agree.
  [[nodiscard]] std::vector<std::string> notes() const;
};

/// The object GEODATA: the coordinate system of the drawing, where its numbers are those of the map.
/// Source: DXF reference, GEODATA; the definition is XML with <Alias id="25832" type="CoordinateSystem"> in the name
/// space "EPSG Code" (as ezdxf reads it).   Evidence: DrawingUnits.GeoData_*
struct DrawingPlace {
  int kind = 0;  ///< 2: numbers of a map projection
  std::map<int, double> numbers;
  std::string definition;

  void take(int code, const std::string& value);
  /// "EPSG:25832"; empty: none that can be used.
  [[nodiscard]] std::string crs() const;
  /// The drawing lies turned, scaled or shifted on the map, whose unit is `metres` long: one of its own units is
  /// another number of metres (group 40).
  [[nodiscard]] bool is_moved(double metres) const;
};

}  // namespace burrow

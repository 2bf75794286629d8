#pragma once
/// Reads any foreign file the program knows. Text of survey points is read here; all else by the importer library,
/// which is loaded the first time it is needed.

#include <string>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// Survey points (csv, txt, asc, pts, xyz), DXF (ASCII), GeoJSON, Shapefile (also zipped), GeoPackage, FlatGeobuf,
/// KML and KMZ, GPX, GML, MapInfo (tab, mif), file geodatabase (its folder, or any file in it), LandXML, grid of
/// heights (GeoTIFF, ASCII grid). What cannot be read says so: a binary drawing, a drawing of another format, a
/// picture. Errors: as said by each reader, in words for people; `stopped_by_person`. Evidence: ForeignFiles.*,
/// HostileFiles.*
Result<Found> read_foreign_file(const std::string& path, const ReadOptions& options);

/// Endings of the files that can be read, for a file picker: "*.csv", "*.dxf" …
const std::vector<std::string>& readable_endings();

}  // namespace burrow

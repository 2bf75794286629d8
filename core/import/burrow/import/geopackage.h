#pragma once
/// Features written as a GeoPackage, in the crossing's own coordinate system.

#include <string>

#include "burrow/base/result.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// The bytes of a GeoPackage. `features_json`: features as `write_geojson` gives them, with their places in metres of
/// the georeference's system (`map_coordinates`); a layer for each `what`, heights of `elevation_m` in the geometry
/// where all of a line are known, else none.
/// Source: OGC GeoPackage (from memory), written by GDAL.   Errors: no importer library; no coordinate system, or one
/// that PROJ does not know; no features.   Evidence: Georeferenced.GeoPackage_*
Result<std::string> geopackage(const std::string& features_json, const Georeference& georeference);

}  // namespace burrow

#pragma once
/// The way back: places of the local frame onto the map.

#include <vector>

#include "burrow/base/result.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// Longitude and latitude in degrees (WGS 84) of places of the local frame, in x and y. Lengths of the local frame are
/// those on the ground; the azimuth counts from grid north, so that the meridian convergence is taken out.
/// Errors: no importer library; a coordinate system that PROJ does not know.   Evidence: Georeferenced.*
Result<std::vector<PlanPoint>> longitude_latitude(const Georeference& georeference, std::vector<PlanPoint> local);

/// East and north in metres, in the crossing's own coordinate system; one that names none is a plain grid.
/// Errors: as above.   Evidence: Georeferenced.Map_*
Result<std::vector<PlanPoint>> map_coordinates(const Georeference& georeference, std::vector<PlanPoint> local);

}  // namespace burrow

#pragma once
/// Bore, pits and utilities for a map.

#include <functional>
#include <string>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Places of the local frame into longitude and latitude in degrees (WGS 84), in x and y.
using ToLongitudeLatitude = std::function<Result<std::vector<PlanPoint>>(std::vector<PlanPoint> local)>;

/// A collection of features, each with `what` ("bore", "band", "launch-pit", "exit-pit", "utility"). Heights in the
/// crossing's own datum stand in `elevation_m`, one for each place: the format's third coordinate means height above
/// the ellipsoid, which nobody has measured. Rings of pits go round counter-clockwise.
/// Source: RFC 7946 (from memory).   Errors: the crossing is not georeferenced, or what `place` answers.
/// Evidence: GeoJson.*
Result<std::string> write_geojson(const Crossing& crossing, const Assessment& assessment,
                                  const ToLongitudeLatitude& place);

}  // namespace burrow

#pragma once
/// Coordinate systems by PROJ. Private to the importer library.

#include "readers.h"

namespace burrow::frames {

/// A transverse Mercator projection of scale 1 through the frame's origin, on the datum of the frame's system: lengths
/// are those on the ground (a UTM zone shortens 24 m by up to 10 mm). Points far off (100 km) are still good to metres.
/// A datum shift is made only where the two systems have different datums; PROJ then says how good it is. No network.
/// Errors: a system PROJ does not know; an origin it cannot place.   Evidence: Georeferenced.*
Result<Projected> project(const std::string& crs, const LocalFrame& frame, std::vector<PlanPoint>& points);
Result<Projected> unproject(const std::string& crs, const LocalFrame& frame, std::vector<PlanPoint>& points);
/// Whether such a text may have PROJ open a file: a chain of PROJ, grids of shifts. One longer than any definition may.
bool names_file(const std::string& crs);
Result<std::string> metric_crs(const std::string& crs, double x, double y);

}  // namespace burrow::frames

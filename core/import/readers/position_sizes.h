#pragma once
/// Whether the positions of a GeoJSON file have sometimes two and sometimes three numbers. GDAL gives the missing
/// third as 0 and does not tell. Private to the importer library.

#include <string>

namespace burrow {

/// Evidence: ForeignFiles.Trap_MixedArity
bool mixes_position_sizes(const std::string& path);

}  // namespace burrow

#pragma once
/// What GeoJSON says of its coordinate system, looked at before a library believes it. Private to the importer library.

#include <optional>
#include <string>

namespace burrow {

/// The first text of a "crs" object of the file, anywhere in it, that would have PROJ open a file: a chain of PROJ, a
/// grid of shifts. Empty: there is none.   Evidence: NothingElseOpened.Traps, NothingFetched.*
std::optional<std::string> file_named_by_crs(const std::string& path);

}  // namespace burrow

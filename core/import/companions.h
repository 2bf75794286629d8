#pragma once
/// The files beside a foreign file that belong to it. Private to this room.

#include <string>
#include <vector>

namespace burrow {

/// The file itself and those beside it that its kind declares, by small and by capital ending: index, records, system
/// and code page of a Shapefile, place of a picture, system of a text grid. Nothing else is opened for it. They need
/// not be there.   Evidence: NothingElseOpened.*
std::vector<std::string> with_companions(const std::string& path);

}  // namespace burrow

#pragma once
/// A map of launches whose sides are moved out while the best launch lies on one of them.

#include <functional>
#include <stop_token>
#include <utility>
#include <vector>

#include "burrow/search/launch_map.h"

namespace burrow::launch {

/// One map with given sides. `also`: places that are weighed beside its cells. Cancelled: sides and nothing else.
LaunchMap search_within(const Crossing& crossing, const Tables& tables, const LaunchMapOptions& options,
                        const std::pair<MapAxis, MapAxis>& axes, const std::vector<MapPlace>& also,
                        const std::stop_token& stop, const std::function<void(double)>& progress);

/// On which sides of a map its best launch lies, to a sixteenth of a cell.   Evidence: MapEdges.*
std::vector<MapEdge> edges_of(const LaunchMap& map, const std::pair<MapAxis, MapAxis>& bounds);

}  // namespace burrow::launch

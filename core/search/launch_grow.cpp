#include "launch_grow.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

using namespace launch;

constexpr int most_times = 3;
constexpr int probing_cells = 16;
constexpr double by_share = 0.5;  // of the side as it was first

struct Side {
  MapSide side;
  bool across, low;  ///< of which axis, and which end of it
};
constexpr Side all_sides[] = {{MapSide::across_from, true, true},
                              {MapSide::across_to, true, false},
                              {MapSide::down_from, false, true},
                              {MapSide::down_to, false, false}};

using Axes = std::pair<MapAxis, MapAxis>;

/// The axis of a side.
const MapAxis& axis_of(const Axes& axes, const Side& side) {
  return side.across ? axes.first : axes.second;
}

double end_of(const Axes& axes, const Side& side) {
  return side.low ? axis_of(axes, side).from : axis_of(axes, side).to;
}

/// The sides moved out where the best launch lies on them; the same where none can be.
Axes wider(Axes axes, const std::vector<MapEdge>& edges, const Axes& first, const Axes& bounds) {
  for (const MapEdge& edge : edges)
    for (const Side& side : all_sides) {
      if (edge.last || side.side != edge.side) continue;
      MapAxis& axis = side.across ? axes.first : axes.second;
      const double more = by_share * (axis_of(first, side).to - axis_of(first, side).from);
      const double bound = end_of(bounds, side);
      if (side.low)
        axis.from = std::max(axis.from - more, bound);
      else
        axis.to = std::min(axis.to + more, bound);
    }
  return axes;
}

bool may_grow(const std::vector<MapEdge>& edges) {
  return std::any_of(edges.begin(), edges.end(), [](const MapEdge& edge) { return !edge.last; });
}

LaunchMap probe_of(const Crossing& crossing, const Tables& tables, LaunchMapOptions options, Axes axes,
                   const std::vector<MapPlace>& found, const std::stop_token& stop) {
  options.cells = std::min(options.cells, probing_cells);
  options.refine = false;
  for (MapAxis* axis : {&axes.first, &axes.second}) axis->count = std::min(axis->count, options.cells);
  return search_within(crossing, tables, options, axes, found, stop, {});
}

}  // namespace

std::vector<MapEdge> launch::edges_of(const LaunchMap& map, const std::pair<MapAxis, MapAxis>& bounds) {
  std::vector<MapEdge> edges;
  if (!map.best) return edges;
  const Axes axes{map.across, map.down};
  for (const Side& side : all_sides) {
    const MapAxis& axis = axis_of(axes, side);
    const double at = side.across ? map.best->place.across : map.best->place.down;
    const double end = end_of(axes, side), near = axis.step() / 16;
    if (axis.count < 2 || std::abs(at - end) > near) continue;
    edges.push_back({side.side, std::abs(end_of(bounds, side) - end) < near});
  }
  return edges;
}

LaunchMap search_launches(const Crossing& crossing, const Tables& tables, const LaunchMapOptions& options,
                          const std::stop_token& stop, const std::function<void(double)>& progress) {
  const Axes first = map_axes(crossing, tables, options), bounds = map_bounds(crossing, tables, options.over);
  LaunchMap map = search_within(crossing, tables, options, first, {}, stop, progress);
  map.edges = edges_of(map, bounds);

  // How wide it has to be is found on coarse maps; what was found before is not lost to their coarseness.
  std::vector<MapPlace> found;
  Axes axes = first;
  int times = 0;
  while (times < most_times && may_grow(map.edges)) {
    found.push_back(map.best->place);
    if (map.best_by_limits) found.push_back(map.best_by_limits->place);
    const std::int64_t judged = map.judged;
    std::vector<MapEdge> edges = map.edges;
    for (bool further = true; further && times < most_times; ++times) {
      axes = wider(axes, edges, first, bounds);
      const LaunchMap probe = probe_of(crossing, tables, options, axes, found, stop);
      if (probe.cancelled) return probe;
      edges = edges_of(probe, bounds);
      further = may_grow(edges);
      found.push_back(probe.best->place);
    }
    map = search_within(crossing, tables, options, axes, found, stop, progress);
    if (map.cancelled) return map;
    map.judged += judged;
    map.edges = edges_of(map, bounds);
    map.widened = times;
  }
  return map;
}

}  // namespace burrow

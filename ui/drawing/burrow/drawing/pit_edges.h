#pragma once
/// The edges of a pit that can be dragged: end, sides and level of its floor, the top of a sloped or stepped side.
/// What nobody typed stands in the shape that the program proposes; a dragged edge becomes a typed value.

#include <optional>
#include <string>
#include <vector>

#include "burrow/drawing/live_number.h"
#include "burrow/drawing/move.h"
#include "burrow/drawing/scene.h"

namespace burrow {

struct PitEdgePlace {
  ItemRef part;
  Pane pane = Pane::none;
  QPointF at;
};

/// Edges of the picked pit, in both views. Upright, shored and shielded sides stand over the floor's edge: no top.
std::vector<PitEdgePlace> pit_edge_places(const Scene& scene);

/// Whether the pit ("launch", "exit") or an edge of it is picked.
bool pit_picked(const Scene& scene, const std::string& pit);

/// The change that moves the edge. `Move::pit` must hold the pit at the press. The floor keeps 0.3 m each
/// way, lies under the ground; a slope stays between upright and 1 in 20. Empty: does not move in this view.
/// Evidence: PitEdges.*
Edit moved_pit_edge(const Crossing& before, const ItemRef& part, const Move& move);

/// The numbers beside the pointer: size of the floor, depth, slope beside the rules' slope, earth to dig.
std::vector<LiveNumber> pit_edge_numbers(const Crossing& crossing, const Assessment& assessment, const ItemRef& part,
                                         UnitSystem units);

}  // namespace burrow

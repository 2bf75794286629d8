#pragma once
/// Lines near the crossing, in its local frame. Private to this room.

#include "placed_plan.h"

namespace burrow {

/// What lies within; edges belong to it.
struct NearBox {
  double low_x = 0, high_x = 0, low_y = 0, high_y = 0;
};

/// The parts of a line inside the box, cut at its edges; a height at a cut is that of the straight piece, none where
/// one of its ends has none (Liang and Barsky 1984, from memory).   Evidence: NearLines.*
std::vector<std::vector<PathVertex>> inside_box(const std::vector<PathVertex>& line, const NearBox& box);

/// Least distance in plan of a line from the crossing line, which runs from (0, 0) to (length, 0).
/// Evidence: NearLines.Distance_ByManyPoints
double distance_from_crossing_m(const std::vector<PathVertex>& line, double length_m);

struct LayerLine {
  const FoundFeature* feature = nullptr;
  std::vector<PathVertex> path;  ///< heights in metres, as the file means them
};
/// Lines of a layer: its lines, its areas closed, and its single points joined where that was asked for. Those with a
/// vertex that has no place in the local frame are counted alone.
struct LayerLines {
  std::vector<LayerLine> lines;
  std::size_t without_place = 0;
  std::vector<std::uint32_t> alone;  ///< points to be joined that stand farther than 30 m from their neighbours
  std::vector<std::vector<PathVertex>> gaps;  ///< straight from one to the next, where they stand too far apart
};
LayerLines lines_of_layer(const PlacedFile& file, std::uint32_t layer, const std::vector<std::uint32_t>& features);

/// Triangles of the surfaces on a layer, closed, heights in metres as the file means them; without those that have no
/// place in the local frame.
std::vector<std::vector<PathVertex>> faces_of_layer(const PlacedFile& file, std::uint32_t layer);

/// Numbers of the features on each layer, in the order of the file.
std::vector<std::vector<std::uint32_t>> features_by_layer(const Found& found);

}  // namespace burrow

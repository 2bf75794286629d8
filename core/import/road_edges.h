#pragma once
/// Edges of roads where the crossing line meets them. Private to this room.

#include <optional>
#include <vector>

#include "burrow/crossing/site.h"

namespace burrow {

class RoadEdges {
 public:
  /// Takes where the line crosses offset 0 between two stations.
  void add(const std::vector<PathVertex>& path, double from_m, double to_m);
  /// Neighbours along the line, two by two; the same edge drawn twice is one.
  std::vector<SurfaceFeature> paired();
  /// After `paired`: how many edges there were, and the one that found no other.
  [[nodiscard]] std::size_t count() const { return edges_.size(); }
  [[nodiscard]] std::optional<double> alone_m() const;

 private:
  struct Edge {
    double station_m = 0;
    double skew_rad = 0;
  };
  std::vector<Edge> edges_;
};

}  // namespace burrow

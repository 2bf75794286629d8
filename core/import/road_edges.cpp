#include "road_edges.h"

#include <algorithm>
#include <cmath>

namespace burrow {

void RoadEdges::add(const std::vector<PathVertex>& path, double from_m, double to_m) {
  for (std::size_t i = 1; i < path.size(); ++i) {
    const PathVertex &a = path[i - 1], &b = path[i];
    if ((a.y_m >= 0) == (b.y_m >= 0)) continue;
    const double station = a.x_m + (b.x_m - a.x_m) * a.y_m / (a.y_m - b.y_m);
    // Square to the line is 0; the edge's direction has no sense, so it is turned to point to the left.
    const double turn = b.y_m > a.y_m ? 1 : -1;
    const double skew = std::atan2(turn * (b.x_m - a.x_m), std::abs(b.y_m - a.y_m));
    if (station >= from_m && station <= to_m) edges_.push_back({station, skew});
  }
}

std::vector<SurfaceFeature> RoadEdges::paired() {
  std::sort(edges_.begin(), edges_.end(), [](const Edge& a, const Edge& b) { return a.station_m < b.station_m; });
  const auto same = [](const Edge& a, const Edge& b) { return b.station_m - a.station_m < 0.05; };
  edges_.erase(std::unique(edges_.begin(), edges_.end(), same), edges_.end());
  std::vector<SurfaceFeature> roads;
  for (std::size_t i = 0; i + 1 < edges_.size(); i += 2) {
    SurfaceFeature road;
    road.kind = SurfaceKind::road;
    road.name = "road";
    road.from = Length{edges_[i].station_m};
    road.to = Length{edges_[i + 1].station_m};
    road.skew.set(Angle{(edges_[i].skew_rad + edges_[i + 1].skew_rad) / 2});
    roads.push_back(std::move(road));
  }
  return roads;
}

std::optional<double> RoadEdges::alone_m() const {
  return edges_.size() % 2 == 1 ? std::optional(edges_.back().station_m) : std::nullopt;
}

}  // namespace burrow

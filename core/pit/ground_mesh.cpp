#include "ground_mesh.h"

#include <algorithm>
#include <boost/polygon/voronoi.hpp>
#include <cmath>
#include <cstdint>
#include <map>
#include <unordered_set>
#include <utility>

#include "convex.h"

namespace burrow {

namespace {

constexpr double on_the_line_m = 0.01;
constexpr double finest_grid_m = 1e-4;
constexpr double beyond_the_line_m = 30;  ///< so far the line is held level past everything that is surveyed

using GridPoint = boost::polygon::point_data<std::int32_t>;

/// Nodes on their grid, each place once.
class Places {
 public:
  Places(const LevelLine& line, const std::vector<Point3>& points, GroundMesh& mesh) : mesh_(mesh) {
    double y_high = 0;
    x_low_ = line.front().station_m;
    x_high_ = line.back().station_m;
    for (const Point3& p : points) {
      x_low_ = std::min(x_low_, p.x_m);
      x_high_ = std::max(x_high_, p.x_m);
      y_high = std::max(y_high, p.y_m);
    }
    x_low_ -= beyond_the_line_m;
    x_high_ += beyond_the_line_m;
    grid_ = std::max(finest_grid_m, std::max(x_high_ - x_low_, y_high) / 1e9);
    middle_ = std::round((x_low_ + x_high_) / 2 / grid_) * grid_;
    taken_.reserve(2 * (points.size() + line.size() + 2));
    add_points(points);
    if (!mesh_.points.empty()) add_line(line);
  }
  [[nodiscard]] const std::vector<GridPoint>& all() const { return places_; }

 private:
  [[nodiscard]] std::int32_t column(double x) const {
    return static_cast<std::int32_t>(std::lround((x - middle_) / grid_));
  }
  [[nodiscard]] std::int32_t row(double y) const { return static_cast<std::int32_t>(std::lround(y / grid_)); }

  bool add(const Point3& node, std::int32_t i, std::int32_t k) {
    const std::uint64_t place = std::uint64_t{static_cast<std::uint32_t>(i)} << 32 | static_cast<std::uint32_t>(k);
    if (!taken_.insert(place).second) return false;
    mesh_.nodes.push_back(node);
    places_.emplace_back(i, k);
    return true;
  }
  void add_points(const std::vector<Point3>& points) {
    for (const Point3& p : points) {
      if (!(p.y_m >= on_the_line_m)) continue;
      const std::int32_t i = column(p.x_m), k = row(p.y_m);
      const Point3 put{middle_ + grid_ * i, grid_ * k, p.z_m};
      if (add(put, i, k)) mesh_.points.push_back(put);
    }
  }
  void add_line(const LevelLine& line) {
    for (const LevelPoint& p : line) add({p.station_m, 0, p.elevation_m}, column(p.station_m), 0);
    add({x_low_, 0, line.front().elevation_m}, column(x_low_), 0);
    add({x_high_, 0, line.back().elevation_m}, column(x_high_), 0);
  }

  GroundMesh& mesh_;
  double x_low_ = 0, x_high_ = 0, grid_ = 1, middle_ = 0;
  std::vector<GridPoint> places_;
  std::unordered_set<std::uint64_t> taken_;
};

double area_of(const std::array<std::size_t, 3>& triangle, const std::vector<Point3>& nodes) {
  const auto at = [&](std::size_t i) { return PlanPoint{nodes[triangle[i]].x_m, nodes[triangle[i]].y_m}; };
  const std::array<PlanPoint, 3> corners{at(0), at(1), at(2)};
  return signed_area(corners);
}

/// After Delaunay: the places around a corner of their cells lie on one circle: a triangle, or more of them in a fan.
void find_triangles(const std::vector<GridPoint>& places, GroundMesh& mesh) {
  boost::polygon::voronoi_diagram<double> diagram;
  boost::polygon::construct_voronoi(places.begin(), places.end(), &diagram);
  mesh.triangles.reserve(2 * places.size());
  std::vector<std::size_t> around;
  for (const auto& vertex : diagram.vertices()) {
    around.clear();
    const auto* edge = vertex.incident_edge();
    do {
      around.push_back(edge->cell()->source_index());
      edge = edge->rot_next();
    } while (edge != vertex.incident_edge());
    for (std::size_t i = 1; i + 1 < around.size(); ++i) {
      std::array<std::size_t, 3> triangle{around[0], around[i], around[i + 1]};
      const double area = area_of(triangle, mesh.nodes);
      if (area < 0) std::swap(triangle[1], triangle[2]);
      if (area != 0) mesh.triangles.push_back(triangle);
    }
  }
}

/// Edges that one triangle alone has, off the line, in a chain.
void find_rim(GroundMesh& mesh) {
  // Where the edges from a node go, node after node.
  std::vector<std::size_t> first(mesh.nodes.size() + 1), ends(3 * mesh.triangles.size());
  for (const auto& t : mesh.triangles)
    for (const std::size_t node : t) ++first[node + 1];
  for (std::size_t n = 0; n < mesh.nodes.size(); ++n) first[n + 1] += first[n];
  std::vector<std::size_t> filled(first.begin(), first.end() - 1);
  for (const auto& t : mesh.triangles)
    for (std::size_t i = 0; i < 3; ++i) ends[filled[t[i]]++] = t[(i + 1) % 3];
  const auto goes = [&](std::size_t from, std::size_t to) {
    const auto begin = ends.begin();
    const auto of = [&](std::size_t n) { return begin + static_cast<std::ptrdiff_t>(first[n]); };
    return std::find(of(from), of(from + 1), to) != of(from + 1);
  };
  std::map<std::size_t, std::size_t> next;  // of several the last
  for (std::size_t from = 0; from < mesh.nodes.size(); ++from)
    for (std::size_t i = first[from]; i < first[from + 1]; ++i)
      if (const std::size_t to = ends[i]; (mesh.nodes[from].y_m > 0 || mesh.nodes[to].y_m > 0) && !goes(to, from)) {
        const auto known = next.try_emplace(from, to).first;
        known->second = std::max(known->second, to);
      }
  std::size_t at = mesh.nodes.size() - 1;  // the line's far end
  for (std::size_t i = 0; i <= next.size(); ++i) {
    mesh.rim.push_back(at);
    const auto onward = next.find(at);
    if (onward == next.end()) break;
    at = onward->second;
  }
}

}  // namespace

GroundMesh mesh_beside(const LevelLine& line, const std::vector<Point3>& points) {
  GroundMesh mesh;
  const Places places(line, points, mesh);
  if (mesh.points.empty()) return {};
  find_triangles(places.all(), mesh);
  find_rim(mesh);
  return mesh;
}

}  // namespace burrow

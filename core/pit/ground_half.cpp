#include "ground_half.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <utility>

#include "ground_mesh.h"

namespace burrow {

namespace {

constexpr double clear_m = 1e-6;  ///< so far from a wall rounding does not count

GroundPlane through(const Point3& a, const Point3& b, const Point3& c) {
  const double ux = b.x_m - a.x_m, uy = b.y_m - a.y_m, uz = b.z_m - a.z_m;
  const double vx = c.x_m - a.x_m, vy = c.y_m - a.y_m, vz = c.z_m - a.z_m;
  const double d = ux * vy - uy * vx;
  const double p = (uz * vy - uy * vz) / d, q = (ux * vz - uz * vx) / d;
  return {p, q, a.z_m - p * a.x_m - q * a.y_m};
}

PlanPoint in_plan(const Point3& p) {
  return {p.x_m, p.y_m};
}

std::array<PlanPoint, 4> outline_of(const PlanBox& box) {
  return {{{box.x_low_m, box.y_low_m},
           {box.x_high_m, box.y_low_m},
           {box.x_high_m, box.y_high_m},
           {box.x_low_m, box.y_high_m}}};
}

/// All of the corners on the wrong side of one of the half-planes.
bool shut_out(Corners corners, std::span<const HalfPlane> keep) {
  return std::any_of(keep.begin(), keep.end(), [&](const HalfPlane& half) {
    return std::all_of(corners.begin(), corners.end(), [&](const PlanPoint& p) { return half.at(p) < 0; });
  });
}

double side_of(const PlanPoint& a, const PlanPoint& b, const PlanPoint& p) {
  return (b.x_m - a.x_m) * (p.y_m - a.y_m) - (b.y_m - a.y_m) * (p.x_m - a.x_m);
}

}  // namespace

GroundHalf::GroundHalf(LevelLine line, std::vector<Point3> points)
    : line_(std::move(line)), entered_(std::move(points)) {
  const GroundMesh mesh = mesh_beside(line_, entered_);
  if (mesh.points.empty()) return;
  highest_point_m_ = mesh.points.front().z_m;
  by_station_.reserve(mesh.points.size());
  for (const Point3& p : mesh.points) {
    by_station_.push_back(in_plan(p));
    highest_point_m_ = std::max(highest_point_m_, p.z_m);
  }
  std::sort(by_station_.begin(), by_station_.end(),
            [](const PlanPoint& a, const PlanPoint& b) { return a.x_m < b.x_m; });
  keep_triangles(mesh);
  go_beyond(mesh);
}

void GroundHalf::keep_triangles(const GroundMesh& mesh) {
  constexpr std::size_t triangles_a_bin = 8, most_bins = 512;
  bins_ = std::clamp<std::size_t>(mesh.triangles.size() / triangles_a_bin, 1, most_bins);
  bins_from_m_ = by_station_.front().x_m;
  bin_m_ = std::max((by_station_.back().x_m - bins_from_m_) / static_cast<double>(bins_), 1e-3);
  // Numbered by their bins, in each as they were found.
  const auto box_of = [&](const std::array<std::size_t, 3>& t) {
    const Point3 &a = mesh.nodes[t[0]], &b = mesh.nodes[t[1]], &c = mesh.nodes[t[2]];
    return HighBox{{std::min({a.x_m, b.x_m, c.x_m}), std::max({a.x_m, b.x_m, c.x_m}), std::min({a.y_m, b.y_m, c.y_m}),
                    std::max({a.y_m, b.y_m, c.y_m})},
                   std::max({a.z_m, b.z_m, c.z_m})};
  };
  std::vector<std::uint64_t> order;
  order.reserve(mesh.triangles.size());
  for (const auto& t : mesh.triangles)
    order.push_back(std::uint64_t{bin_of(box_of(t).plan.x_low_m)} << 32 | order.size());
  std::sort(order.begin(), order.end());
  std::vector<HighBox> boxes;
  boxes.reserve(order.size());
  bin_ends_.resize(bins_);
  triangles_.reserve(order.size());
  for (const std::uint64_t one : order) {
    const auto found = static_cast<std::uint32_t>(one);
    const auto& t = mesh.triangles[found];
    const Point3 &a = mesh.nodes[t[0]], &b = mesh.nodes[t[1]], &c = mesh.nodes[t[2]];
    boxes.push_back(box_of(t));
    triangles_.push_back({{in_plan(a), in_plan(b), in_plan(c)}, through(a, b, c), found});
    bin_ends_[static_cast<std::size_t>(one >> 32)] = static_cast<std::uint32_t>(triangles_.size());
  }
  for (std::size_t bin = 1; bin < bins_; ++bin) bin_ends_[bin] = std::max(bin_ends_[bin], bin_ends_[bin - 1]);
  tree_ = BoxTree(boxes);
}

/// What lies before the first bin or behind the last one belongs to it.
std::uint32_t GroundHalf::bin_of(double x_m) const {
  const double at = (x_m - bins_from_m_) / bin_m_;
  return at > 0 ? static_cast<std::uint32_t>(std::min(static_cast<std::size_t>(std::min(at, 1e6)), bins_ - 1)) : 0;
}

/// Beyond the rim: square to an edge of it as the edge is, about a corner level.
void GroundHalf::go_beyond(const GroundMesh& mesh) {
  // Along a direction from a point on.
  const auto ahead = [](const PlanPoint& at, double x, double y) {
    return HalfPlane{x, y, -(x * at.x_m + y * at.y_m)};
  };
  double before_x = 1, before_y = 0;  // along the line, beyond its end
  for (std::size_t i = 0; i < mesh.rim.size(); ++i) {
    const Point3& node = mesh.nodes[mesh.rim[i]];
    const PlanPoint at = in_plan(node);
    double along_x = 1, along_y = 0, length = 0;
    if (i + 1 < mesh.rim.size()) {
      const Point3& next = mesh.nodes[mesh.rim[i + 1]];
      length = std::hypot(next.x_m - at.x_m, next.y_m - at.y_m);
      along_x = (next.x_m - at.x_m) / length;
      along_y = (next.y_m - at.y_m) / length;
      const double rise = (next.z_m - node.z_m) / length;
      const GroundPlane plane{rise * along_x, rise * along_y, node.z_m - rise * (along_x * at.x_m + along_y * at.y_m)};
      beyond_.push_back(
          {{left_of(in_plan(next), at), ahead(at, along_x, along_y), ahead(in_plan(next), -along_x, -along_y)},
           3,
           plane,
           std::max(node.z_m, next.z_m)});
    }
    beyond_.push_back({{ahead(at, before_x, before_y), ahead(at, -along_x, -along_y)}, 2, {0, 0, node.z_m}, node.z_m});
    before_x = along_x;
    before_y = along_y;
  }
}

void GroundHalf::each_level_piece(const PlanBox& walls, const TakePiece& take) const {
  std::vector<double> stations{walls.x_low_m, walls.x_high_m};
  for (const LevelPoint& p : line_)
    if (p.station_m > walls.x_low_m && p.station_m < walls.x_high_m) stations.push_back(p.station_m);
  std::sort(stations.begin(), stations.end());
  for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
    const double a = stations[i], b = stations[i + 1];
    if (!(b > a)) continue;
    take(outline_of({a, b, walls.y_low_m, walls.y_high_m}), level_plane(a, b));
  }
}

GroundPlane GroundHalf::level_plane(double from_m, double to_m) const {
  const double from = elevation_at(line_, from_m), slope = (elevation_at(line_, to_m) - from) / (to_m - from_m);
  return {slope, 0, from - slope * from_m};
}

/// By the bin in which they begin within the walls, in each in the order in which they were found.
std::vector<std::uint32_t> GroundHalf::triangles_in(const PlanBox& walls, const PlanBox& within) const {
  const std::uint32_t first = bin_of(walls.x_low_m);
  const std::uint32_t later_from = bin_ends_[first];
  std::vector<std::uint32_t> numbers, later;
  std::uint32_t low = std::numeric_limits<std::uint32_t>::max(), high = 0;
  tree_.each_touching(within, [&](std::uint32_t i) {
    if (i < later_from) {
      numbers.push_back(i);
      return;
    }
    later.push_back(i);
    low = std::min(low, i);
    high = std::max(high, i);
  });
  std::sort(numbers.begin(), numbers.end(),
            [&](std::uint32_t a, std::uint32_t b) { return triangles_[a].found < triangles_[b].found; });
  if (later.empty()) return numbers;
  // The others by their numbers: each marked in a list of all between the lowest and the highest.
  std::vector<std::uint64_t> marks((high - low) / 64 + 1);
  for (const std::uint32_t i : later) marks[(i - low) / 64] |= std::uint64_t{1} << (i - low) % 64;
  numbers.reserve(numbers.size() + later.size());
  for (std::size_t word = 0; word < marks.size(); ++word)
    for (std::uint64_t rest = marks[word]; rest != 0; rest &= rest - 1)
      numbers.push_back(low + static_cast<std::uint32_t>(64 * word) +
                        static_cast<std::uint32_t>(std::countr_zero(rest)));
  return numbers;
}

void GroundHalf::each_piece(const PlanBox& walls, const PlanBox& within, const TakePiece& take) const {
  if (!(walls.x_high_m > walls.x_low_m && walls.y_high_m > walls.y_low_m)) return;
  const PlanBox look{std::max(walls.x_low_m, within.x_low_m), std::min(walls.x_high_m, within.x_high_m),
                     std::max(walls.y_low_m, within.y_low_m), std::min(walls.y_high_m, within.y_high_m)};
  if (!(look.x_high_m >= look.x_low_m && look.y_high_m >= look.y_low_m)) return;
  if (!surveyed()) return each_level_piece(walls, take);
  const std::array<PlanPoint, 4> all = outline_of(walls), near = outline_of(look);
  const std::vector<HalfPlane> sides = bounds_of(all);
  OutlineStore store;
  const auto inside = [&](const PlanPoint& p) {
    return p.x_m > walls.x_low_m + clear_m && p.x_m < walls.x_high_m - clear_m && p.y_m > walls.y_low_m + clear_m &&
           p.y_m < walls.y_high_m - clear_m;
  };
  for (const std::uint32_t i : triangles_in(walls, look)) {
    const Triangle& t = triangles_[i];
    if (inside(t.corners[0]) && inside(t.corners[1]) && inside(t.corners[2])) {
      take(t.corners, t.plane);
      continue;
    }
    store.clear();
    const StoredOutline outline = store.clipped(store.add(t.corners), sides);
    if (!outline.empty()) take(store.corners(outline), t.plane);
  }
  for (const Beyond& beyond : beyond_) {
    const std::span<const HalfPlane> keep(beyond.keep.data(), beyond.bounds);
    if (shut_out(near, keep)) continue;
    store.clear();
    const StoredOutline outline = store.clipped(store.add(all), keep);
    if (!outline.empty()) take(store.corners(outline), beyond.plane);
  }
}

std::optional<GroundPlane> GroundHalf::plane_over(const PlanBox& box) const {
  if (!surveyed()) {
    const auto within = [&](const LevelPoint& p) { return p.station_m > box.x_low_m && p.station_m < box.x_high_m; };
    if (std::any_of(line_.begin(), line_.end(), within)) return std::nullopt;
    return level_plane(box.x_low_m, box.x_high_m);
  }
  const std::array<PlanPoint, 4> corners = outline_of(box);
  const Triangle* only = nullptr;
  bool one = true;
  tree_.each_touching(box, [&](std::uint32_t i) {
    const std::array<PlanPoint, 3>& t = triangles_[i].corners;
    bool holds = true;
    for (std::size_t k = 0; k < 3; ++k) {
      std::size_t inside = 0;
      for (const PlanPoint& p : corners) inside += side_of(t[k], t[(k + 1) % 3], p) >= 0 ? 1 : 0;
      if (inside == 0) return;
      holds = holds && inside == corners.size();
    }
    one = one && holds && !only;
    only = &triangles_[i];
  });
  return one && only ? std::optional(only->plane) : std::nullopt;
}

double GroundHalf::highest_in(const PlanBox& box) const {
  double highest = -1e300;
  if (!surveyed()) {
    highest = std::max(elevation_at(line_, box.x_low_m), elevation_at(line_, box.x_high_m));
    for (const LevelPoint& p : line_)
      if (p.station_m > box.x_low_m && p.station_m < box.x_high_m) highest = std::max(highest, p.elevation_m);
    return highest;
  }
  const std::array<PlanPoint, 4> corners = outline_of(box);
  for (const Beyond& beyond : beyond_)
    if (beyond.high_m > highest && !shut_out(corners, {beyond.keep.data(), beyond.bounds})) highest = beyond.high_m;
  return tree_.highest_touching(box, highest);
}

}  // namespace burrow

#pragma once
/// The ground as it was looked at before there was an index: every triangle of a bin and every edge of the rim, each
/// with lists of its own. Slow, and the second route to `GroundSurface`: what both give is the same to the last bit.

#include <algorithm>
#include <array>
#include <boost/polygon/voronoi.hpp>
#include <cmath>
#include <cstdint>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "burrow/pit/ground_surface.h"
#include "burrow/pit/plan_overlap.h"

namespace burrow::test::slow {

/// a x + b y + c ≥ 0.
struct Bound {
  double a = 0, b = 0, c = 0;
  [[nodiscard]] double at(const PlanPoint& p) const { return a * p.x_m + b * p.y_m + c; }
  [[nodiscard]] Bound opposite() const { return {-a, -b, -c}; }
};

inline double cross(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c) {
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}
inline Bound bound_left_of(const PlanPoint& from, const PlanPoint& to) {
  const double dx = to.x_m - from.x_m, dy = to.y_m - from.y_m, length = std::hypot(dx, dy);
  const double a = -dy / length, b = dx / length;
  return {a, b, -(a * from.x_m + b * from.y_m)};
}

inline double signed_area(const PlanLine& outline) {
  double area = 0;  // about the first corner: stations may be large
  for (std::size_t i = 1; i + 1 < outline.size(); ++i) area += cross(outline[0], outline[i], outline[i + 1]);
  return area / 2;
}

inline PlanLine clipped(const PlanLine& convex, const Bound& keep) {
  bool all = true, none = true;
  for (const PlanPoint& p : convex) (keep.at(p) >= 0 ? none : all) = false;
  if (all) return convex;
  PlanLine inside;
  if (none) return inside;
  inside.reserve(convex.size() + 1);
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const PlanPoint &p = convex[i], &q = convex[(i + 1) % convex.size()];
    const double at_p = keep.at(p), at_q = keep.at(q);
    if (at_p >= 0) inside.push_back(p);
    if ((at_p > 0 && at_q < 0) || (at_p < 0 && at_q > 0)) {
      const double t = at_p / (at_p - at_q);
      inside.push_back({p.x_m + t * (q.x_m - p.x_m), p.y_m + t * (q.y_m - p.y_m)});
    }
  }
  if (signed_area(inside) < 1e-9) inside.clear();
  return inside;
}

inline PlanLine clipped(PlanLine convex, const std::vector<Bound>& keep) {
  for (const Bound& half : keep) {
    if (convex.empty()) break;
    convex = clipped(convex, half);
  }
  return convex;
}

inline std::vector<Bound> bounds_of(const PlanLine& convex) {
  std::vector<Bound> bounds;
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const PlanPoint &p = convex[i], &q = convex[(i + 1) % convex.size()];
    if (!(p == q)) bounds.push_back(bound_left_of(p, q));
  }
  return bounds;
}

constexpr double on_the_line_m = 0.01;
constexpr double finest_grid_m = 1e-4;
constexpr double beyond_the_line_m = 30;  ///< so far the line is held level past everything that is surveyed

inline GroundPlane through(const Point3& a, const Point3& b, const Point3& c) {
  const double ux = b.x_m - a.x_m, uy = b.y_m - a.y_m, uz = b.z_m - a.z_m;
  const double vx = c.x_m - a.x_m, vy = c.y_m - a.y_m, vz = c.z_m - a.z_m;
  const double d = ux * vy - uy * vx;
  const double p = (uz * vy - uy * vz) / d, q = (ux * vz - uz * vx) / d;
  return {p, q, a.z_m - p * a.x_m - q * a.y_m};
}

inline PlanPoint in_plan(const Point3& p) {
  return {p.x_m, p.y_m};
}

inline PlanLine outline_of(const PlanBox& box) {
  return {{box.x_low_m, box.y_low_m},
          {box.x_high_m, box.y_low_m},
          {box.x_high_m, box.y_high_m},
          {box.x_low_m, box.y_high_m}};
}

inline bool boxes_apart(const PlanBox& a, const PlanBox& b) {
  return a.x_high_m < b.x_low_m || b.x_high_m < a.x_low_m || a.y_high_m < b.y_low_m || b.y_high_m < a.y_low_m;
}

using GridPoint = boost::polygon::point_data<std::int32_t>;

inline PlanBox box_around(const std::array<std::size_t, 3>& corners, const std::vector<Point3>& nodes) {
  PlanBox box{1e300, -1e300, 1e300, -1e300};
  for (const std::size_t n : corners) {
    box.x_low_m = std::min(box.x_low_m, nodes[n].x_m);
    box.x_high_m = std::max(box.x_high_m, nodes[n].x_m);
    box.y_low_m = std::min(box.y_low_m, nodes[n].y_m);
    box.y_high_m = std::max(box.y_high_m, nodes[n].y_m);
  }
  return box;
}

/// Everything as if it lay to the left of the line: y ≥ 0.
class SlowHalf {
 public:
  /// `points` with y > 0.
  SlowHalf(LevelLine line, const std::vector<Point3>& points);
  /// Adds what covers the box, which lies in y ≥ 0.
  void add_pieces(const PlanBox& box, std::vector<GroundPiece>& pieces) const;
  [[nodiscard]] const std::vector<Point3>& points() const { return points_; }

 private:
  struct Triangle {
    std::array<std::size_t, 3> node;
    PlanBox box;
  };
  void add_level(const PlanBox& box, std::vector<GroundPiece>& pieces) const;
  void add_beyond(const PlanBox& box, std::vector<GroundPiece>& pieces) const;
  void find_rim();
  void sort_into_bins();
  [[nodiscard]] std::size_t bin_of(double x_m) const;

  LevelLine line_;
  std::vector<Point3> points_;  ///< those that count
  std::vector<Point3> nodes_;
  std::vector<Triangle> triangles_;
  std::vector<std::vector<std::size_t>> bins_;  ///< triangles by station, so that few have to be looked at
  double bins_from_m_ = 0, bin_m_ = 1;
  std::vector<std::size_t> rim_;  ///< nodes from the line's far end over the outermost points back to its near end
};

inline SlowHalf::SlowHalf(LevelLine line, const std::vector<Point3>& points) : line_(std::move(line)) {
  double x_low = line_.front().station_m, x_high = line_.back().station_m, y_high = 0;
  for (const Point3& p : points) {
    x_low = std::min(x_low, p.x_m);
    x_high = std::max(x_high, p.x_m);
    y_high = std::max(y_high, p.y_m);
  }
  x_low -= beyond_the_line_m;
  x_high += beyond_the_line_m;
  const double grid = std::max(finest_grid_m, std::max(x_high - x_low, y_high) / 1e9);
  const double middle = std::round((x_low + x_high) / 2 / grid) * grid;
  const auto column = [&](double x) { return static_cast<std::int32_t>(std::lround((x - middle) / grid)); };
  const auto row = [&](double y) { return static_cast<std::int32_t>(std::lround(y / grid)); };

  std::vector<GridPoint> places;
  std::set<std::pair<std::int32_t, std::int32_t>> taken;
  const auto add = [&](const Point3& node, std::int32_t i, std::int32_t k) {
    if (!taken.insert({i, k}).second) return false;
    nodes_.push_back(node);
    places.emplace_back(i, k);
    return true;
  };
  for (const Point3& p : points) {
    if (!(p.y_m >= on_the_line_m)) continue;
    const std::int32_t i = column(p.x_m), k = row(p.y_m);
    const Point3 put{middle + grid * i, grid * k, p.z_m};
    if (add(put, i, k)) points_.push_back(put);
  }
  if (points_.empty()) {
    nodes_.clear();
    return;
  }
  for (const LevelPoint& p : line_) add({p.station_m, 0, p.elevation_m}, column(p.station_m), 0);
  add({x_low, 0, line_.front().elevation_m}, column(x_low), 0);
  add({x_high, 0, line_.back().elevation_m}, column(x_high), 0);

  boost::polygon::voronoi_diagram<double> diagram;
  boost::polygon::construct_voronoi(places.begin(), places.end(), &diagram);
  for (const auto& vertex : diagram.vertices()) {
    // The places around a corner of their cells lie on one circle: a triangle, or more of them in a fan.
    std::vector<std::size_t> around;
    const auto* edge = vertex.incident_edge();
    do {
      around.push_back(edge->cell()->source_index());
      edge = edge->rot_next();
    } while (edge != vertex.incident_edge());
    for (std::size_t i = 1; i + 1 < around.size(); ++i) {
      Triangle triangle{{around[0], around[i], around[i + 1]}, {}};
      const double area =
          signed_area({in_plan(nodes_[around[0]]), in_plan(nodes_[around[i]]), in_plan(nodes_[around[i + 1]])});
      if (area < 0) std::swap(triangle.node[1], triangle.node[2]);
      if (area == 0) continue;
      triangle.box = box_around(triangle.node, nodes_);
      triangles_.push_back(triangle);
    }
  }
  find_rim();
  sort_into_bins();
}

inline void SlowHalf::sort_into_bins() {
  double low = 1e300, high = -1e300;
  for (const Point3& p : points_) {
    low = std::min(low, p.x_m);
    high = std::max(high, p.x_m);
  }
  constexpr std::size_t triangles_a_bin = 8, most_bins = 512;
  bins_.resize(std::clamp<std::size_t>(triangles_.size() / triangles_a_bin, 1, most_bins));
  bins_from_m_ = low;
  bin_m_ = std::max((high - low) / static_cast<double>(bins_.size()), 1e-3);
  for (std::size_t t = 0; t < triangles_.size(); ++t)
    for (std::size_t b = bin_of(triangles_[t].box.x_low_m); b <= bin_of(triangles_[t].box.x_high_m); ++b)
      bins_[b].push_back(t);
}

/// What lies before the first bin or behind the last one belongs to it.
inline std::size_t SlowHalf::bin_of(double x_m) const {
  const double at = (x_m - bins_from_m_) / bin_m_;
  return at > 0 ? std::min(static_cast<std::size_t>(std::min(at, 1e6)), bins_.size() - 1) : 0;
}

/// Edges that one triangle alone has, off the line, in a chain.
inline void SlowHalf::find_rim() {
  std::set<std::pair<std::size_t, std::size_t>> edges;
  for (const Triangle& t : triangles_)
    for (std::size_t i = 0; i < 3; ++i) edges.insert({t.node[i], t.node[(i + 1) % 3]});
  std::map<std::size_t, std::size_t> next;
  for (const auto& [from, to] : edges)
    if (edges.count({to, from}) == 0 && (nodes_[from].y_m > 0 || nodes_[to].y_m > 0)) next[from] = to;
  std::size_t at = nodes_.size() - 1;  // the line's far end
  for (std::size_t i = 0; i <= next.size(); ++i) {
    rim_.push_back(at);
    const auto onward = next.find(at);
    if (onward == next.end()) break;
    at = onward->second;
  }
}

inline void SlowHalf::add_level(const PlanBox& box, std::vector<GroundPiece>& pieces) const {
  std::vector<double> stations{box.x_low_m, box.x_high_m};
  for (const LevelPoint& p : line_)
    if (p.station_m > box.x_low_m && p.station_m < box.x_high_m) stations.push_back(p.station_m);
  std::sort(stations.begin(), stations.end());
  for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
    const double a = stations[i], b = stations[i + 1];
    if (!(b > a)) continue;
    const double slope = (elevation_at(line_, b) - elevation_at(line_, a)) / (b - a);
    pieces.push_back({outline_of({a, b, box.y_low_m, box.y_high_m}), {slope, 0, elevation_at(line_, a) - slope * a}});
  }
}

/// Beyond the rim: square to an edge of it as the edge is, about a corner level.
inline void SlowHalf::add_beyond(const PlanBox& box, std::vector<GroundPiece>& pieces) const {
  const PlanLine all = outline_of(box);
  const auto add = [&](const std::vector<Bound>& keep, const GroundPlane& plane) {
    PlanLine outline = clipped(all, keep);
    if (!outline.empty()) pieces.push_back({std::move(outline), plane});
  };
  // Along a direction from a point on.
  const auto ahead = [](const PlanPoint& at, double x, double y) { return Bound{x, y, -(x * at.x_m + y * at.y_m)}; };
  double before_x = 1, before_y = 0;  // along the line, beyond its end
  for (std::size_t i = 0; i < rim_.size(); ++i) {
    const Point3& node = nodes_[rim_[i]];
    const PlanPoint at = in_plan(node);
    double along_x = 1, along_y = 0, length = 0;
    if (i + 1 < rim_.size()) {
      const Point3& next = nodes_[rim_[i + 1]];
      length = std::hypot(next.x_m - at.x_m, next.y_m - at.y_m);
      along_x = (next.x_m - at.x_m) / length;
      along_y = (next.y_m - at.y_m) / length;
      const double rise = (next.z_m - node.z_m) / length;
      const GroundPlane plane{rise * along_x, rise * along_y, node.z_m - rise * (along_x * at.x_m + along_y * at.y_m)};
      add({bound_left_of(in_plan(next), at), ahead(at, along_x, along_y), ahead(in_plan(next), -along_x, -along_y)},
          plane);
    }
    add({ahead(at, before_x, before_y), ahead(at, -along_x, -along_y)}, {0, 0, node.z_m});
    before_x = along_x;
    before_y = along_y;
  }
}

inline void SlowHalf::add_pieces(const PlanBox& box, std::vector<GroundPiece>& pieces) const {
  if (!(box.x_high_m > box.x_low_m && box.y_high_m > box.y_low_m)) return;
  if (points_.empty()) {
    add_level(box, pieces);
    return;
  }
  const PlanLine all = outline_of(box);
  const std::vector<Bound> walls = bounds_of(all);
  const std::size_t first = bin_of(box.x_low_m), last = bin_of(box.x_high_m);
  const auto add = [&](const Triangle& t) {
    const Point3 &a = nodes_[t.node[0]], &b = nodes_[t.node[1]], &c = nodes_[t.node[2]];
    PlanLine outline = clipped({in_plan(a), in_plan(b), in_plan(c)}, walls);
    if (!outline.empty()) pieces.push_back({std::move(outline), through(a, b, c)});
  };
  for (std::size_t bin = first; bin <= last; ++bin)
    for (const std::size_t i : bins_[bin]) {
      const Triangle& t = triangles_[i];
      if (bin == std::max(bin_of(t.box.x_low_m), first) && !boxes_apart(t.box, box))
        add(t);  // in each bin it reaches into
    }
  add_beyond(box, pieces);
}

inline std::vector<Point3> on_side(const std::vector<Point3>& points, double sign) {
  std::vector<Point3> side;
  for (const Point3& p : points)
    if (sign * p.y_m > 0) side.push_back({p.x_m, sign * p.y_m, p.z_m});
  return side;
}

/// As seen in a mirror along the line, and still counter-clockwise.
inline void mirror(GroundPiece& piece) {
  for (PlanPoint& p : piece.outline) p.y_m = -p.y_m;
  std::reverse(piece.outline.begin(), piece.outline.end());
  piece.plane.b = -piece.plane.b;
}

class SlowSurface {
 public:
  SlowSurface(const LevelLine& line, const std::vector<Point3>& points)
      : line_(line), left_(line, on_side(points, 1)), right_(line, on_side(points, -1)) {
    highest_m = line.front().elevation_m;
    for (const LevelPoint& p : line) highest_m = std::max(highest_m, p.elevation_m);
    for (const SlowHalf* half : {&left_, &right_})
      for (const Point3& p : half->points()) highest_m = std::max(highest_m, p.z_m);
  }
  double highest_m;

  [[nodiscard]] bool surveyed_near(const PlanLine& outline, double reach_m) const {
    const auto near = [&](const SlowHalf& half, double sign) {
      return std::any_of(half.points().begin(), half.points().end(), [&](const Point3& p) {
        return gap_between(outline, {{p.x_m, sign * p.y_m}}, false).gap_m <= reach_m;
      });
    };
    return near(left_, 1) || near(right_, -1);
  }
  [[nodiscard]] std::vector<GroundPiece> pieces_in(const PlanBox& box) const {
    std::vector<GroundPiece> pieces;
    right_.add_pieces({box.x_low_m, box.x_high_m, std::max(-box.y_high_m, 0.0), -box.y_low_m}, pieces);
    for (GroundPiece& piece : pieces) mirror(piece);
    left_.add_pieces({box.x_low_m, box.x_high_m, std::max(box.y_low_m, 0.0), box.y_high_m}, pieces);
    return pieces;
  }
  [[nodiscard]] LevelLine along(const PlanPoint& from, const PlanPoint& to) const {
    const double dx = to.x_m - from.x_m, dy = to.y_m - from.y_m, length = std::hypot(dx, dy);
    constexpr double beside_m = 1e-3;  // the pieces need some width
    LevelLine line;
    for (const GroundPiece& piece :
         pieces_in({std::min(from.x_m, to.x_m) - beside_m, std::max(from.x_m, to.x_m) + beside_m,
                    std::min(from.y_m, to.y_m) - beside_m, std::max(from.y_m, to.y_m) + beside_m})) {
      double low = 0, high = 1;
      for (const Bound& half : bounds_of(piece.outline)) {
        const double a = half.at(from), b = half.at(to);
        if (a < 0 && b < 0) high = -1;
        if (a < 0 && b >= 0) low = std::max(low, a / (a - b));
        if (a >= 0 && b < 0) high = std::min(high, a / (a - b));
      }
      if (!(high > low)) continue;
      for (const double t : {low, high})
        line.push_back({t * length, piece.plane.at(from.x_m + t * dx, from.y_m + t * dy)});
    }
    std::sort(line.begin(), line.end(),
              [](const LevelPoint& a, const LevelPoint& b) { return a.station_m < b.station_m; });
    line.erase(std::unique(line.begin(), line.end(),
                           [](const LevelPoint& a, const LevelPoint& b) { return b.station_m - a.station_m < 1e-7; }),
               line.end());
    return line;
  }
  [[nodiscard]] double height_at(double x_m, double y_m) const {
    if (y_m == 0) return elevation_at(line_, x_m);
    // Half a step to either side: the place itself may lie on an edge.
    const LevelLine line = along({x_m - 1e-3, y_m}, {x_m + 1e-3, y_m});
    return elevation_at(line, 1e-3);
  }

 private:
  LevelLine line_;
  SlowHalf left_, right_;
};

}  // namespace burrow::test::slow

#include "burrow/clearance/separation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace burrow {

namespace {

struct Vector {
  double x, y, z;
};
Vector operator-(const Point3& a, const Point3& b) {
  return {a.x_m - b.x_m, a.y_m - b.y_m, a.z_m - b.z_m};
}
double dot(const Vector& a, const Vector& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
Point3 along(const Point3& a, const Point3& b, double share) {
  return {a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m), a.z_m + share * (b.z_m - a.z_m)};
}
/// sin² of the angle above which the interior solution needs no comparison with the ends.
constexpr double well_crossed = 1e-6;

double share_of(double numerator, double length2) {
  return length2 > 0 ? std::clamp(numerator / length2, 0.0, 1.0) : 0.0;
}

}  // namespace

SegmentApproach nearest(const Point3& a0, const Point3& a1, const Point3& b0, const Point3& b1) {
  const Vector u = a1 - a0, v = b1 - b0, w = a0 - b0;
  const double uu = dot(u, u), uv = dot(u, v), vv = dot(v, v), uw = dot(u, w), vw = dot(v, w);
  SegmentApproach best{std::numeric_limits<double>::infinity(), 0, 0};
  const auto consider = [&](double s, double t) {
    const Vector gap{w.x + s * u.x - t * v.x, w.y + s * u.y - t * v.y, w.z + s * u.z - t * v.z};
    const double squared = dot(gap, gap);
    if (squared < best.squared_distance_m2) best = {squared, s, t};
  };
  const double determinant = uu * vv - uv * uv;
  if (determinant > 0) {
    const double s = (uv * vw - vv * uw) / determinant;
    const double t = (uu * vw - uv * uw) / determinant;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) {
      consider(s, t);
      if (determinant > well_crossed * uu * vv) return best;  // the least of a convex function, and exact enough
    }
  }
  consider(0, share_of(vw, vv));
  consider(1, share_of(vw + uv, vv));
  consider(share_of(-uw, uu), 0);
  consider(share_of(uv - uw, uu), 1);
  return best;
}

/// The best pair so far, in space or in plan.
struct BoreAxis::Query {
  const std::vector<PathVertex>& utility;
  bool in_plan = false;
  double best2 = std::numeric_limits<double>::infinity();
  std::size_t bore_segment = 0, utility_segment = 0;
  SegmentApproach approach{};

  [[nodiscard]] Point3 vertex(std::size_t i) const {
    const PathVertex& v = utility[std::min(i, utility.size() - 1)];
    return {v.x_m, v.y_m, in_plan ? 0 : *v.z_m};
  }
  /// No point of the box is nearer to the segment: to the middle, less half the diagonal. A segment that leans fills
  /// its own box badly, so that boxes alone would tell little.
  [[nodiscard]] double gap2(const Node& node, const Point3& u0, const Point3& u1) const {
    Point3 middle = node.middle;
    if (in_plan) middle.z_m = 0;
    const Vector along_u = u1 - u0, to = middle - u0;
    const double share = share_of(dot(along_u, to), dot(along_u, along_u));
    const Vector off{to.x - share * along_u.x, to.y - share * along_u.y, to.z - share * along_u.z};
    const double gap = std::sqrt(dot(off, off)) - node.half_m;
    return gap > 0 ? gap * gap * (1 - 1e-12) : 0;  // rounding must not hide the nearest pair
  }
};

BoreAxis::BoreAxis(const BorePath& path) {
  points_.reserve(path.points.size());
  for (const PathPoint& p : path.points) points_.push_back({p.x_m, p.y_m, p.z_m});
  if (points_.empty()) return;
  nodes_.reserve(2 * segment_count());
  build(0, segment_count());
}

std::size_t BoreAxis::segment_count() const {
  return std::max<std::size_t>(points_.size(), 2) - 1;
}

/// A bore of a single point is one segment of no length.
const Point3& BoreAxis::segment_end(std::size_t segment) const {
  return points_[std::min(segment + 1, points_.size() - 1)];
}

std::size_t BoreAxis::build(std::size_t from, std::size_t to) {
  const std::size_t index = nodes_.size();
  constexpr double far = std::numeric_limits<double>::infinity();
  nodes_.push_back({Box{{far, far, far}, {-far, -far, -far}}, {}, 0, from, to, 0});
  Box& box = nodes_[index].box;
  for (std::size_t i = from; i <= to && i < points_.size(); ++i) {
    const std::array<double, 3> p{points_[i].x_m, points_[i].y_m, points_[i].z_m};
    for (std::size_t k = 0; k < 3; ++k) {
      box.low[k] = std::min(box.low[k], p[k]);
      box.high[k] = std::max(box.high[k], p[k]);
    }
  }
  const auto& [low, high] = box;
  nodes_[index].middle = {(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2};
  nodes_[index].half_m = std::hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) / 2;
  if (to - from > 2) {
    const std::size_t middle = from + (to - from) / 2;
    build(from, middle);
    nodes_[index].second = build(middle, to);
  }
  return index;
}

/// Branch and bound: the nearer half first, nothing that lies farther than the best pair so far.
void BoreAxis::search(Query& query, std::size_t utility_segment) const {
  const Point3 u0 = query.vertex(utility_segment), u1 = query.vertex(utility_segment + 1);
  struct Open {
    std::size_t node;
    double gap2;
  };
  std::array<Open, 64> open;
  std::size_t count = 0;
  open[count++] = {0, query.gap2(nodes_[0], u0, u1)};
  while (count > 0) {
    const Open next = open[--count];
    if (!(next.gap2 < query.best2)) continue;
    const Node& node = nodes_[next.node];
    if (node.second != 0) {
      Open near{next.node + 1, query.gap2(nodes_[next.node + 1], u0, u1)};
      Open far{node.second, query.gap2(nodes_[node.second], u0, u1)};
      if (far.gap2 < near.gap2) std::swap(near, far);
      open[count++] = far;
      open[count++] = near;
      continue;
    }
    for (std::size_t i = node.from; i < node.to; ++i) {
      Point3 a = points_[i], b = segment_end(i);
      if (query.in_plan) a.z_m = b.z_m = 0;
      const SegmentApproach found = nearest(a, b, u0, u1);
      if (!(found.squared_distance_m2 < query.best2)) continue;
      query.best2 = found.squared_distance_m2;
      query.approach = found;
      query.bore_segment = i;
      query.utility_segment = utility_segment;
    }
  }
}

namespace {

/// Direction of the utility at a segment; a segment of no length takes that of a neighbour.
std::optional<Vector> direction(const std::vector<PathVertex>& path, std::size_t segment, bool in_plan) {
  const auto between = [&](std::size_t i) -> Vector {
    const PathVertex& a = path[i];
    const PathVertex& b = path[i + 1];
    return {b.x_m - a.x_m, b.y_m - a.y_m, in_plan || !a.z_m || !b.z_m ? 0 : *b.z_m - *a.z_m};
  };
  for (std::size_t step = 0; step < path.size(); ++step) {
    for (const bool forward : {true, false}) {
      if (!forward && step > segment) continue;
      const std::size_t there = forward ? segment + step : segment - step;
      if (there + 1 >= path.size()) continue;
      const Vector d = between(there);
      if (dot(d, d) > 0) return d;
    }
  }
  return std::nullopt;
}

/// atan2 keeps its digits near 0 and near π/2, where acos of the cosine does not.
double angle_between(const Vector& a, const Vector& b) {
  const Vector cross{a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
  return std::atan2(std::sqrt(dot(cross, cross)), std::abs(dot(a, b)));
}

}  // namespace

std::optional<Approach> BoreAxis::nearest_to(const std::vector<PathVertex>& utility) const {
  if (points_.empty() || utility.empty()) return std::nullopt;
  const std::size_t segments = std::max<std::size_t>(utility.size(), 2) - 1;
  const auto known = [&](std::size_t i) {
    return utility[i].z_m.has_value() && utility[std::min(i + 1, utility.size() - 1)].z_m.has_value();
  };

  Query space{utility}, plan{utility, true};
  // How far each stretch is from the box around the whole bore: the nearest first, it prunes the rest.
  const Box& whole = nodes_[0].box;
  const auto apart = [](double a, double b, double low, double high) {
    const double gap = std::max(low - std::max(a, b), std::min(a, b) - high);
    return gap > 0 ? gap : 0;
  };
  std::vector<double> gaps2(segments);
  std::size_t first = 0;
  for (std::size_t i = 0; i < segments; ++i) {
    const PathVertex &a = utility[i], &b = utility[std::min(i + 1, utility.size() - 1)];
    const double x = apart(a.x_m, b.x_m, whole.low[0], whole.high[0]),
                 y = apart(a.y_m, b.y_m, whole.low[1], whole.high[1]),
                 z = known(i) ? apart(*a.z_m, *b.z_m, whole.low[2], whole.high[2]) : 0;
    gaps2[i] = x * x + y * y + z * z;
    if (gaps2[i] < gaps2[first]) first = i;
  }
  const auto look = [&](std::size_t i) {
    Query& query = known(i) ? space : plan;
    if (gaps2[i] < query.best2) search(query, i);
  };
  look(first);
  for (std::size_t i = 0; i < segments; ++i)
    if (i != first) look(i);

  const bool depth_unknown = plan.best2 < space.best2;
  const Query& query = depth_unknown ? plan : space;
  const std::size_t u = query.utility_segment, b = query.bore_segment;
  const PathVertex& from = utility[u];
  const PathVertex& to = utility[std::min(u + 1, utility.size() - 1)];
  Approach answer;
  answer.distance_m = std::sqrt(query.best2);
  answer.depth_unknown = depth_unknown;
  answer.bore_segment = b;
  answer.utility_segment = u;
  answer.on_bore_share = query.approach.on_first;
  answer.on_utility_share = query.approach.on_second;
  answer.on_bore = along(points_[b], segment_end(b), answer.on_bore_share);
  answer.on_utility.x_m = from.x_m + answer.on_utility_share * (to.x_m - from.x_m);
  answer.on_utility.y_m = from.y_m + answer.on_utility_share * (to.y_m - from.y_m);
  if (!depth_unknown) answer.on_utility.z_m = *from.z_m + answer.on_utility_share * (*to.z_m - *from.z_m);
  Vector bore = segment_end(b) - points_[b];
  if (depth_unknown) bore.z = 0;
  if (const auto d = direction(utility, u, depth_unknown)) answer.angle_rad = angle_between(bore, *d);
  return answer;
}

}  // namespace burrow

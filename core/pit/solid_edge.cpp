/// The edge of a body that was dug out, from the edges of its pieces.

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

#include "burrow/pit/solid.h"
#include "convex.h"

namespace burrow {

namespace {

constexpr double one_line_m = 1e-7;  ///< so near are edges of two pieces that are one

struct Edge {
  PlanPoint from, to;
  double length = 0;
  [[nodiscard]] double x_low() const { return std::min(from.x_m, to.x_m); }
  [[nodiscard]] double x_high() const { return std::max(from.x_m, to.x_m); }
  [[nodiscard]] double y_low() const { return std::min(from.y_m, to.y_m); }
  [[nodiscard]] double y_high() const { return std::max(from.y_m, to.y_m); }
  [[nodiscard]] double along(const PlanPoint& p) const {
    return ((p.x_m - from.x_m) * (to.x_m - from.x_m) + (p.y_m - from.y_m) * (to.y_m - from.y_m)) / length;
  }
  [[nodiscard]] double beside(const PlanPoint& p) const {
    return ((to.x_m - from.x_m) * (p.y_m - from.y_m) - (to.y_m - from.y_m) * (p.x_m - from.x_m)) / length;
  }
  [[nodiscard]] PlanPoint at(double distance) const {
    const double t = distance / length;
    return {from.x_m + t * (to.x_m - from.x_m), from.y_m + t * (to.y_m - from.y_m)};
  }
};

Edge edge_between(const PlanPoint& from, const PlanPoint& to) {
  return {from, to, std::hypot(to.x_m - from.x_m, to.y_m - from.y_m)};
}

std::vector<Edge> edges_of(const std::vector<SolidPiece>& body) {
  std::vector<Edge> edges;
  for (const SolidPiece& piece : body)
    for (std::size_t i = 0; i < piece.outline.size(); ++i) {
      const Edge edge = edge_between(piece.outline[i], piece.outline[(i + 1) % piece.outline.size()]);
      if (edge.length > one_line_m) edges.push_back(edge);
    }
  std::sort(edges.begin(), edges.end(), [](const Edge& a, const Edge& b) { return a.x_low() < b.x_low(); });
  return edges;
}

/// Edges by where they lie, so that few have to be looked at: a net of square fields over all of them, about as many as
/// there are edges. An edge stands in each field that it passes.
class EdgeNet {
 public:
  explicit EdgeNet(const std::vector<Edge>& edges) : edges_(edges) {
    if (edges.empty()) return;
    x_low_ = x_high_ = edges.front().from.x_m;
    y_low_ = y_high_ = edges.front().from.y_m;
    for (const Edge& e : edges) {
      x_low_ = std::min(x_low_, e.x_low());
      x_high_ = std::max(x_high_, e.x_high());
      y_low_ = std::min(y_low_, e.y_low());
      y_high_ = std::max(y_high_, e.y_high());
    }
    const double area = std::max(x_high_ - x_low_, one_line_m) * std::max(y_high_ - y_low_, one_line_m);
    field_m_ = std::max(std::sqrt(area / static_cast<double>(edges.size())),
                        std::max(x_high_ - x_low_, y_high_ - y_low_) / most_a_side);
    columns_ = at(x_high_ - x_low_) + 1;
    rows_ = at(y_high_ - y_low_) + 1;
    first_.resize(columns_ * rows_ + 1);
    for (const Edge& e : edges) each_field(e, [&](std::size_t field) { ++first_[field + 1]; });
    for (std::size_t f = 1; f < first_.size(); ++f) first_[f] += first_[f - 1];
    std::vector<std::uint32_t> filled(first_.begin(), first_.end() - 1);
    numbers_.resize(first_.back());
    for (std::size_t i = 0; i < edges.size(); ++i)
      each_field(edges[i], [&](std::size_t field) { numbers_[filled[field]++] = static_cast<std::uint32_t>(i); });
  }

  /// Each edge near this one, perhaps more than once.
  template <class Look>
  void near(const Edge& edge, const Look& look) const {
    each_field(edge, [&](std::size_t field) {
      for (std::uint32_t i = first_[field]; i < first_[field + 1]; ++i) look(edges_[numbers_[i]]);
    });
  }
  /// Whether the same edge the other way round is there: most edges are those of two triangles of the ground.
  [[nodiscard]] bool holds_opposite(const Edge& edge) const {
    const PlanPoint& end = edge.from.x_m < edge.to.x_m || (edge.from.x_m == edge.to.x_m && edge.from.y_m < edge.to.y_m)
                               ? edge.from
                               : edge.to;
    const std::size_t field = at(end.y_m - y_low_) * columns_ + at(end.x_m - x_low_);
    for (std::uint32_t i = first_[field]; i < first_[field + 1]; ++i)
      if (edges_[numbers_[i]].from == edge.to && edges_[numbers_[i]].to == edge.from) return true;
    return false;
  }

 private:
  static constexpr double most_a_side = 1000;

  [[nodiscard]] std::size_t at(double off_m) const { return static_cast<std::size_t>(std::max(off_m, 0.0) / field_m_); }
  /// The fields that the edge passes, row by row; a long slanted one passes few of those in the rectangle round it.
  template <class Visit>
  void each_field(const Edge& edge, const Visit& visit) const {
    const std::size_t low = at(edge.y_low() - one_line_m - y_low_),
                      high = std::min(at(edge.y_high() + one_line_m - y_low_), rows_ - 1);
    const double rise = edge.to.y_m - edge.from.y_m, run = edge.to.x_m - edge.from.x_m;
    for (std::size_t row = low; row <= high; ++row) {
      double x_low = edge.x_low(), x_high = edge.x_high();
      if (low < high && rise != 0) {
        const double y = y_low_ + static_cast<double>(row) * field_m_;
        const double into = std::clamp((y - one_line_m - edge.from.y_m) / rise, 0.0, 1.0);
        const double out = std::clamp((y + field_m_ + one_line_m - edge.from.y_m) / rise, 0.0, 1.0);
        x_low = edge.from.x_m + std::min(into * run, out * run);
        x_high = edge.from.x_m + std::max(into * run, out * run);
      }
      const std::size_t first = at(x_low - 2 * one_line_m - x_low_),
                        last = std::min(at(x_high + 2 * one_line_m - x_low_), columns_ - 1);
      for (std::size_t column = first; column <= last; ++column) visit(row * columns_ + column);
    }
  }

  const std::vector<Edge>& edges_;
  double x_low_ = 0, x_high_ = 0, y_low_ = 0, y_high_ = 0, field_m_ = 1;
  std::size_t columns_ = 1, rows_ = 1;
  std::vector<std::uint32_t> first_, numbers_;  ///< of edges, field after field, row after row
};

/// Parts of an edge along which no other piece lies on its right.
void add_open(const Edge& edge, const EdgeNet& all, std::vector<std::pair<double, double>>& covered,
              std::vector<Edge>& open) {
  if (all.holds_opposite(edge)) return;
  covered.clear();
  const double x_low = edge.x_low() - one_line_m, x_high = edge.x_high() + one_line_m;
  const double y_low = edge.y_low() - one_line_m, y_high = edge.y_high() + one_line_m;
  all.near(edge, [&](const Edge& other) {
    if (other.x_high() < x_low || other.x_low() > x_high || other.y_high() < y_low || other.y_low() > y_high) return;
    if (std::abs(edge.beside(other.from)) > one_line_m || std::abs(edge.beside(other.to)) > one_line_m) return;
    const double a = edge.along(other.to), b = edge.along(other.from);
    if (b > a) covered.emplace_back(std::max(a, 0.0), std::min(b, edge.length));
  });
  std::sort(covered.begin(), covered.end());
  double reached = 0;
  const auto upto = [&](double to) {
    if (to - reached > 3 * one_line_m) open.push_back(edge_between(edge.at(reached), edge.at(to)));
  };
  for (const auto& [from, to] : covered) {
    if (!(to > from)) continue;
    upto(from);
    reached = std::max(reached, to);
  }
  upto(edge.length);
}

/// Corners on a straight line, and those in one place, say nothing.
PlanLine tidy(const PlanLine& ring) {
  PlanLine out;
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    const PlanPoint &before = out.empty() ? ring[n - 1] : out.back(), &p = ring[i], &after = ring[(i + 1) % n];
    const Edge across = edge_between(before, after);
    if (std::hypot(p.x_m - before.x_m, p.y_m - before.y_m) < 10 * one_line_m) continue;
    if (across.length > 10 * one_line_m && std::abs(across.beside(p)) < 10 * one_line_m && across.along(p) > 0 &&
        across.along(p) < across.length)
      continue;
    out.push_back(p);
  }
  return out;
}

}  // namespace

PlanLine edge_of(const std::vector<SolidPiece>& body) {
  const std::vector<Edge> all = edges_of(body);
  const EdgeNet net(all);
  std::vector<Edge> open;
  std::vector<std::pair<double, double>> covered;
  for (const Edge& edge : all) add_open(edge, net, covered, open);
  PlanLine best;
  while (!open.empty()) {
    PlanLine ring{open.back().from};
    PlanPoint end = open.back().to;
    open.pop_back();
    const auto squared = [&](const PlanPoint& p) {
      const double x = p.x_m - end.x_m, y = p.y_m - end.y_m;
      return x * x + y * y;
    };
    while (!open.empty()) {
      auto next = open.begin();
      double least = squared(next->from);
      for (auto at = next + 1; at != open.end(); ++at)
        if (const double there = squared(at->from); there < least) {
          next = at;
          least = there;
        }
      if (squared(ring.front()) <= least) break;
      ring.push_back(next->from);
      end = next->to;
      open.erase(next);
    }
    if (signed_area(ring) > signed_area(best)) best = std::move(ring);
  }
  return tidy(best);
}

}  // namespace burrow

/// The edge of a body that was dug out, from the edges of its pieces.

#include <algorithm>
#include <cmath>
#include <limits>

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

/// Parts of an edge along which no other piece lies on its right. `all` by `x_low`, none longer than `longest` along x.
void add_open(const Edge& edge, const std::vector<Edge>& all, double longest, std::vector<Edge>& open) {
  std::vector<std::pair<double, double>> covered;
  const double x_low = edge.x_low() - one_line_m, x_high = edge.x_high() + one_line_m;
  const double y_low = std::min(edge.from.y_m, edge.to.y_m) - one_line_m,
               y_high = std::max(edge.from.y_m, edge.to.y_m) + one_line_m;
  const auto first =
      std::lower_bound(all.begin(), all.end(), x_low - longest, [](const Edge& e, double x) { return e.x_low() < x; });
  for (auto at = first; at != all.end() && at->x_low() <= x_high; ++at) {
    const Edge& other = *at;
    if (other.x_high() < x_low || std::max(other.from.y_m, other.to.y_m) < y_low ||
        std::min(other.from.y_m, other.to.y_m) > y_high)
      continue;
    if (std::abs(edge.beside(other.from)) > one_line_m || std::abs(edge.beside(other.to)) > one_line_m) continue;
    const double a = edge.along(other.to), b = edge.along(other.from);
    if (b > a) covered.emplace_back(std::max(a, 0.0), std::min(b, edge.length));
  }
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
  double longest = 0;
  for (const Edge& edge : all) longest = std::max(longest, edge.x_high() - edge.x_low());
  std::vector<Edge> open;
  for (const Edge& edge : all) add_open(edge, all, longest, open);
  PlanLine best;
  while (!open.empty()) {
    PlanLine ring{open.back().from};
    PlanPoint end = open.back().to;
    open.pop_back();
    const auto distance = [&](const PlanPoint& p) { return std::hypot(p.x_m - end.x_m, p.y_m - end.y_m); };
    while (!open.empty()) {
      const auto next = std::min_element(
          open.begin(), open.end(), [&](const Edge& a, const Edge& b) { return distance(a.from) < distance(b.from); });
      if (distance(ring.front()) <= distance(next->from)) break;
      ring.push_back(next->from);
      end = next->to;
      open.erase(next);
    }
    if (signed_area(ring) > signed_area(best)) best = std::move(ring);
  }
  return tidy(best);
}

}  // namespace burrow

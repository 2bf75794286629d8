#pragma once
/// The edge of a body with every edge of its pieces looked at: slow, and the second route to `edge_of`. What both give
/// is the same to the last bit.

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "slow_solid.h"

namespace burrow::test::slow {

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

inline Edge edge_between(const PlanPoint& from, const PlanPoint& to) {
  return {from, to, std::hypot(to.x_m - from.x_m, to.y_m - from.y_m)};
}

inline std::vector<Edge> edges_of(const std::vector<SolidPiece>& body) {
  std::vector<Edge> edges;
  for (const SolidPiece& piece : body)
    for (std::size_t i = 0; i < piece.outline.size(); ++i) {
      const Edge edge = edge_between(piece.outline[i], piece.outline[(i + 1) % piece.outline.size()]);
      if (edge.length > one_line_m) edges.push_back(edge);
    }
  std::sort(edges.begin(), edges.end(), [](const Edge& a, const Edge& b) { return a.x_low() < b.x_low(); });
  return edges;
}

/// Parts of an edge along which no other piece lies on its right.
inline void add_open(const Edge& edge, const std::vector<Edge>& all, std::vector<Edge>& open) {
  std::vector<std::pair<double, double>> covered;
  const double x_low = edge.x_low() - one_line_m, x_high = edge.x_high() + one_line_m;
  const double y_low = edge.y_low() - one_line_m, y_high = edge.y_high() + one_line_m;
  for (const Edge& other : all) {
    if (other.x_high() < x_low || other.x_low() > x_high || other.y_high() < y_low || other.y_low() > y_high) continue;
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
inline PlanLine tidy(const PlanLine& ring) {
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

inline PlanLine edge_of(const std::vector<SolidPiece>& body) {
  const std::vector<Edge> all = edges_of(body);
  std::vector<Edge> open;
  for (const Edge& edge : all) add_open(edge, all, open);
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

}  // namespace burrow::test::slow

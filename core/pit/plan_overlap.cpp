#include "burrow/pit/plan_overlap.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {

struct Edge {
  PlanPoint from, to;  // rising x
  double sign;
};

/// Edges that have a width in x, signed so that their areas down to the x axis add up to the outline's, positive.
std::vector<Edge> edges_of(const PlanLine& outline) {
  std::vector<Edge> edges;
  double area = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    area += 0.5 * (p.y_m + q.y_m) * (p.x_m - q.x_m);
    if (p.x_m < q.x_m) edges.push_back({p, q, -1});
    if (p.x_m > q.x_m) edges.push_back({q, p, 1});
  }
  if (area < 0)
    for (Edge& edge : edges) edge.sign = -edge.sign;
  return edges;
}

double height(const Edge& edge, double x) {
  const double t = (x - edge.from.x_m) / (edge.to.x_m - edge.from.x_m);
  return edge.from.y_m + t * (edge.to.y_m - edge.from.y_m);
}

/// ∫ min of both edges above `base` where they stand over the same x.
double below_both(const Edge& a, const Edge& b, double base) {
  const double low = std::max(a.from.x_m, b.from.x_m), high = std::min(a.to.x_m, b.to.x_m);
  if (!(high > low)) return 0;
  const double a0 = height(a, low) - base, a1 = height(a, high) - base;
  const double b0 = height(b, low) - base, b1 = height(b, high) - base;
  const double d0 = a0 - b0, d1 = a1 - b1;
  if (d0 * d1 >= 0) return 0.5 * (high - low) * (d0 + d1 < 0 ? a0 + a1 : b0 + b1);
  const double t = d0 / (d0 - d1), crossing = a0 + t * (a1 - a0);
  const double first = std::min(a0, b0) + crossing, second = crossing + std::min(a1, b1);
  return 0.5 * (high - low) * (t * first + (1 - t) * second);
}

PlanPoint foot_on(const PlanPoint& p, const PlanPoint& a, const PlanPoint& b) {
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length2 = dx * dx + dy * dy;
  const double t = length2 > 0 ? std::clamp(((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / length2, 0.0, 1.0) : 0.0;
  return {a.x_m + t * dx, a.y_m + t * dy};
}

PlanGap gap_of(const PlanPoint& on_outline, const PlanPoint& on_line) {
  return {std::hypot(on_outline.x_m - on_line.x_m, on_outline.y_m - on_line.y_m), on_outline, on_line};
}

double side_of(const PlanPoint& a, const PlanPoint& b, const PlanPoint& p) {
  return (b.x_m - a.x_m) * (p.y_m - a.y_m) - (b.y_m - a.y_m) * (p.x_m - a.x_m);
}

/// Of two segments: ab of the outline, cd of the line.
PlanGap between_segments(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c, const PlanPoint& d) {
  const double c_side = side_of(a, b, c), d_side = side_of(a, b, d);
  if (c_side * d_side < 0 && side_of(c, d, a) * side_of(c, d, b) < 0) {
    const double t = c_side / (c_side - d_side);
    const PlanPoint meeting{c.x_m + t * (d.x_m - c.x_m), c.y_m + t * (d.y_m - c.y_m)};
    return {0, meeting, meeting};
  }
  const PlanGap ends[] = {gap_of(a, foot_on(a, c, d)), gap_of(b, foot_on(b, c, d)), gap_of(foot_on(c, a, b), c),
                          gap_of(foot_on(d, a, b), d)};
  return *std::min_element(std::begin(ends), std::end(ends),
                           [](const PlanGap& p, const PlanGap& q) { return p.gap_m < q.gap_m; });
}

}  // namespace

double overlap_area(const PlanLine& a, const PlanLine& b) {
  const std::vector<Edge> of_a = edges_of(a), of_b = edges_of(b);
  if (of_a.empty() || of_b.empty()) return 0;
  const double base = of_a.front().from.y_m;
  double area = 0;
  for (const Edge& i : of_a)
    for (const Edge& j : of_b) area += i.sign * j.sign * below_both(i, j, base);
  return std::max(area, 0.0);
}

PlanGap gap_between(const PlanLine& outline, const PlanLine& line, bool closed) {
  BURROW_ENSURE(!outline.empty() && !line.empty());
  if (inside(outline, line.front().x_m, line.front().y_m)) return {0, line.front(), line.front()};
  if (closed && inside(line, outline.front().x_m, outline.front().y_m)) return {0, outline.front(), outline.front()};
  PlanGap nearest{std::numeric_limits<double>::infinity(), outline.front(), line.front()};
  const std::size_t segments = closed || line.size() == 1 ? line.size() : line.size() - 1;
  for (std::size_t i = 0; i < outline.size(); ++i)
    for (std::size_t k = 0; k < segments; ++k) {
      const PlanGap gap =
          between_segments(outline[i], outline[(i + 1) % outline.size()], line[k], line[(k + 1) % line.size()]);
      if (gap.gap_m < nearest.gap_m) nearest = gap;
    }
  return nearest;
}

}  // namespace burrow

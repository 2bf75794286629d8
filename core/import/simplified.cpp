#include "simplified.h"

#include <algorithm>
#include <cmath>

namespace burrow {

std::vector<std::size_t> simplified(const std::vector<PlanPoint>& line, double tolerance) {
  std::vector<bool> keep(line.size(), false);
  if (line.empty()) return {};
  keep.front() = keep.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> open{{0, line.size() - 1}};  // not by recursion: lines are long
  while (!open.empty()) {
    const auto [from, to] = open.back();
    open.pop_back();
    const PlanPoint &a = line[from], &b = line[to];
    const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length = std::hypot(dx, dy);
    double farthest = tolerance;
    std::size_t at = 0;
    for (std::size_t i = from + 1; i < to; ++i) {
      const double px = line[i].x_m - a.x_m, py = line[i].y_m - a.y_m;
      const double t = length > 0 ? std::clamp((px * dx + py * dy) / (length * length), 0.0, 1.0) : 0;
      const double away = std::hypot(px - t * dx, py - t * dy);
      if (away > farthest) {
        farthest = away;
        at = i;
      }
    }
    if (at == 0) continue;
    keep[at] = true;
    open.push_back({from, at});
    open.push_back({at, to});
  }
  std::vector<std::size_t> indices;
  for (std::size_t i = 0; i < keep.size(); ++i)
    if (keep[i]) indices.push_back(i);
  return indices;
}

}  // namespace burrow

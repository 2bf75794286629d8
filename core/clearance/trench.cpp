#include "burrow/clearance/trench.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace burrow {

namespace {

PlanPoint plus(const PlanPoint& a, const PlanPoint& b, double times) {
  return {a.x_m + times * b.x_m, a.y_m + times * b.y_m};
}
PlanPoint minus(const PlanPoint& a, const PlanPoint& b) {
  return {a.x_m - b.x_m, a.y_m - b.y_m};
}
double cross(const PlanPoint& a, const PlanPoint& b) {
  return a.x_m * b.y_m - a.y_m * b.x_m;
}
double dot(const PlanPoint& a, const PlanPoint& b) {
  return a.x_m * b.x_m + a.y_m * b.y_m;
}
PlanPoint left_of(const PlanPoint& direction) {
  return {-direction.y_m, direction.x_m};
}

/// In plan, without stretches of no length.
PlanLine in_plan(const std::vector<PathVertex>& path) {
  PlanLine line;
  for (const PathVertex& v : path)
    if (line.empty() || std::hypot(v.x_m - line.back().x_m, v.y_m - line.back().y_m) > 1e-6)
      line.push_back({v.x_m, v.y_m});
  return line;
}

/// The side of the line to the left, `half` away, with loops at inner corners.
PlanLine raw_side(const PlanLine& line, double half) {
  std::vector<PlanPoint> directions;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const PlanPoint d = minus(line[i + 1], line[i]);
    directions.push_back(plus({}, d, 1 / std::sqrt(dot(d, d))));
  }
  PlanLine side{plus(line.front(), left_of(directions.front()), half)};
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const PlanPoint &before = directions[i - 1], &after = directions[i];
    const double turn = std::atan2(cross(before, after), dot(before, after));
    const PlanPoint from = plus(line[i], left_of(before), half), to = plus(line[i], left_of(after), half);
    if (turn > 1e-9) {
      side.insert(side.end(), {from, line[i], to});
    } else if (turn > -1.6) {
      side.push_back(plus(from, before, half * std::tan(-turn / 2)));
    } else {  // a sharp corner is cut square to its middle, just outside the round one
      side.push_back(plus(from, before, half * std::tan(-turn / 4)));
      side.push_back(plus(to, after, -half * std::tan(-turn / 4)));
    }
  }
  side.push_back(plus(line.back(), left_of(directions.back()), half));
  return side;
}

/// Where two stretches cross, if they do.
std::optional<PlanPoint> meeting(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c, const PlanPoint& d) {
  const PlanPoint u = minus(b, a), v = minus(d, c), w = minus(c, a);
  const double area = cross(u, v);
  if (std::abs(area) < 1e-15) return std::nullopt;
  const double s = cross(w, v) / area, t = cross(w, u) / area;
  if (s < 0 || s > 1 || t < 0 || t > 1) return std::nullopt;
  return plus(a, u, s);
}

/// Cuts off loops: from a stretch straight on to the last one soon after it that crosses it.
PlanLine without_loops(const PlanLine& side, double longest_m) {
  PlanLine cut;
  PlanPoint here = side.front();
  for (std::size_t i = 0; i + 1 < side.size();) {
    cut.push_back(here);
    std::size_t next = i + 1;
    PlanPoint there = side[i + 1];
    double run = 0;
    for (std::size_t k = i + 2; k + 1 < side.size() && run <= longest_m; ++k) {
      if (const auto point = meeting(here, side[i + 1], side[k], side[k + 1])) {
        next = k;
        there = *point;
      }
      run += std::hypot(side[k + 1].x_m - side[k].x_m, side[k + 1].y_m - side[k].y_m);
    }
    if (next != i + 1) {
      here = there;
      i = next;
    } else {
      i = i + 1;
      here = side[i];
    }
  }
  cut.push_back(side.back());
  return cut;
}

bool crosses_itself(const PlanLine& outline) {
  const std::size_t n = outline.size();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = i + 2; k < n; ++k) {
      if (i == 0 && k + 1 == n) continue;  // neighbours round the end
      if (meeting(outline[i], outline[i + 1], outline[k], outline[(k + 1) % n])) return true;
    }
  return false;
}

}  // namespace

std::optional<Strip> trench_of(const Utility& utility, const LevelLine& ground, const TrenchRule& rule) {
  const PlanLine line = in_plan(utility.path);
  if (!utility.outside_diameter || line.size() < 2 || ground.empty()) return std::nullopt;
  const double radius = utility.outside_diameter->m / 2;
  std::optional<double> lowest;
  bool buried = false;
  for (const PathVertex& v : utility.path) {
    if (!v.z_m) continue;
    lowest = std::min(lowest.value_or(*v.z_m), *v.z_m);
    buried = buried || *v.z_m + radius < elevation_at(ground, v.x_m);
  }
  if (!lowest || !buried) return std::nullopt;

  const double half = radius + rule.wider.m / 2;
  PlanLine back(line.rbegin(), line.rend());
  Strip strip;
  strip.name = "trench of " + (utility.name.empty() ? std::string(word_of(utility.kind)) : utility.name);
  strip.soil = rule.soil;
  strip.bottom_elevation = Length{*lowest - radius - rule.below.m};
  strip.outline = without_loops(raw_side(line, half), 12 * half);
  for (const PlanPoint& p : without_loops(raw_side(back, half), 12 * half)) strip.outline.push_back(p);
  if (crosses_itself(strip.outline)) return std::nullopt;
  return strip;
}

}  // namespace burrow

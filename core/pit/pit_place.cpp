#include "burrow/pit/pit_place.h"

#include <algorithm>
#include <vector>

#include "burrow/pit/proposal.h"

namespace burrow {

namespace {

constexpr double flattest_run = 1.5;
constexpr double rise_over_m = 2, step_m = 0.25;

bool cut_back(const PitSide& side) {
  // What is left to the program stands straight.
  return !left_to_program(side) && (*side.kind == SideKind::sloped || *side.kind == SideKind::benched);
}

}  // namespace

PitPlace place_of(const PitShape& shape) {
  return {{shape.floor_from_m, shape.floor_to_m, shape.floor_right_m, shape.floor_left_m, shape.floor_elevation_m},
          shape.depth_m,
          shape.bore_side_high,
          shape.ground.there() ? &shape.ground : nullptr};
}

FloorRectangle reach_of(const Pit& pit, const PitPlace& place) {
  const double back = flattest_run * std::max(place.depth_m, 0.0);
  const auto by = [&](const PitSide& side) { return cut_back(side) ? back : 0.0; };
  const PitSides& s = pit.sides;
  FloorRectangle reach = place.floor;
  reach.from_m -= by(place.bore_side_high ? s.back : s.bore);
  reach.to_m += by(place.bore_side_high ? s.bore : s.back);
  reach.right_m -= by(s.right);
  reach.left_m += by(s.left);
  return reach;
}

PlanLine outline_of(const FloorRectangle& r) {
  return {{r.from_m, r.right_m}, {r.to_m, r.right_m}, {r.to_m, r.left_m}, {r.from_m, r.left_m}};
}

double steepest_rise_beside(const Site& site, const Pit& pit, const PitPlace& place) {
  if (site.ground.empty()) return 0;
  const FloorRectangle &floor = place.floor, reach = reach_of(pit, place);
  const double beyond = 2 * std::max(place.depth_m, 0.0);
  const auto height = [&](double x, double y) {
    return place.ground ? place.ground->height_at(x, y) : elevation_at(site.ground, x);
  };
  double steepest = 0;
  std::vector<double> heights;  // a step apart, each to be looked at from either end
  constexpr auto steps_over = static_cast<std::size_t>(rise_over_m / step_m);
  static_assert(static_cast<double>(steps_over) * step_m == rise_over_m);
  const auto go = [&](PlanPoint edge, double ex, double ey, double far) {
    if (!(far >= 0)) return;
    heights.assign(static_cast<std::size_t>(far / step_m) + 1 + steps_over, 0);
    for (std::size_t i = 0; i < heights.size(); ++i) {
      const double d = static_cast<double>(i) * step_m;
      heights[i] = height(edge.x_m + d * ex, edge.y_m + d * ey);
      if (i >= steps_over) steepest = std::max(steepest, (heights[i] - heights[i - steps_over]) / rise_over_m);
    }
  };
  for (const double t : {0.0, 0.5, 1.0}) {
    const double x = floor.from_m + t * (floor.to_m - floor.from_m);
    const double y = floor.right_m + t * (floor.left_m - floor.right_m);
    go({floor.from_m, y}, -1, 0, floor.from_m - reach.from_m + beyond);
    go({floor.to_m, y}, 1, 0, reach.to_m - floor.to_m + beyond);
    if (!place.ground) continue;  // level across
    go({x, floor.right_m}, 0, -1, floor.right_m - reach.right_m + beyond);
    go({x, floor.left_m}, 0, 1, reach.left_m - floor.left_m + beyond);
  }
  return steepest;
}

}  // namespace burrow

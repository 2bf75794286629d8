#include "burrow/check/utilities_in_pit.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

struct Box {
  double x_low = 1e300, x_high = -1e300, y_low = 1e300, y_high = -1e300;
};

Box box_of(const PlanLine& outline) {
  Box box;
  for (const PlanPoint& p : outline)
    box = {std::min(box.x_low, p.x_m), std::max(box.x_high, p.x_m), std::min(box.y_low, p.y_m),
           std::max(box.y_high, p.y_m)};
  return box;
}

/// Shares of a stretch between which one coordinate lies in a range; none where from > to.
struct Shares {
  double from = 0, to = 1;
  void hold(double start, double end, double low, double high) {
    const double d = end - start;
    if (d == 0) {
      if (start < low || start > high) to = -1;
      return;
    }
    const double a = (low - start) / d, b = (high - start) / d;
    from = std::max(from, std::min(a, b));
    to = std::min(to, std::max(a, b));
  }
};

constexpr double piece_m = 0.05;

}  // namespace

bool enters_pit(const Utility& utility, const PitShape& pit) {
  const Box box = box_of(pit.footprint);
  const double radius = utility.outside_diameter.value_or(Length{0}).m / 2;
  for (std::size_t i = 0; i < utility.path.size(); ++i) {
    const PathVertex& a = utility.path[i];
    const PathVertex& b = utility.path[std::min(i + 1, utility.path.size() - 1)];
    if (std::max(a.x_m, b.x_m) < box.x_low || std::min(a.x_m, b.x_m) > box.x_high ||
        std::max(a.y_m, b.y_m) < box.y_low || std::min(a.y_m, b.y_m) > box.y_high)
      continue;
    Shares within;
    within.hold(a.x_m, b.x_m, box.x_low, box.x_high);
    within.hold(a.y_m, b.y_m, box.y_low, box.y_high);
    if (within.from > within.to) continue;
    const double length = std::hypot(b.x_m - a.x_m, b.y_m - a.y_m) * (within.to - within.from);
    const int pieces = std::clamp(static_cast<int>(length / piece_m), 1, 4000);
    for (int k = 0; k <= pieces; ++k) {
      const double t = within.from + (within.to - within.from) * k / pieces;
      if (!inside(pit.footprint, a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m))) continue;
      if (!a.z_m || !b.z_m || *a.z_m + t * (*b.z_m - *a.z_m) + radius > pit.floor_elevation_m) return true;
    }
  }
  return false;
}

}  // namespace burrow

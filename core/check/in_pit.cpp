#include "burrow/check/in_pit.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

/// Cheap first look: boxes in plan.
bool near(const Utility& utility, const PitShape& pit) {
  double x_low = 1e300, x_high = -1e300, y_low = 1e300, y_high = -1e300;
  for (const PlanPoint& p : pit.footprint) {
    x_low = std::min(x_low, p.x_m);
    x_high = std::max(x_high, p.x_m);
    y_low = std::min(y_low, p.y_m);
    y_high = std::max(y_high, p.y_m);
  }
  double from = 1e300, to = -1e300, right = 1e300, left = -1e300;
  for (const PathVertex& v : utility.path) {
    from = std::min(from, v.x_m);
    to = std::max(to, v.x_m);
    right = std::min(right, v.y_m);
    left = std::max(left, v.y_m);
  }
  return from <= x_high && to >= x_low && right <= y_high && left >= y_low;
}

}  // namespace

bool enters_pit(const Utility& utility, const PitShape& pit) {
  if (!near(utility, pit)) return false;
  const double radius = utility.outside_diameter.value_or(Length{0}).m / 2;
  for (std::size_t i = 0; i < utility.path.size(); ++i) {
    const PathVertex& a = utility.path[i];
    const PathVertex& b = utility.path[std::min(i + 1, utility.path.size() - 1)];
    const int pieces = std::clamp(static_cast<int>(std::hypot(b.x_m - a.x_m, b.y_m - a.y_m) / 0.05), 1, 4000);
    for (int k = 0; k <= pieces; ++k) {
      const double t = static_cast<double>(k) / pieces;
      if (!inside(pit.footprint, a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m))) continue;
      if (!a.z_m || !b.z_m || *a.z_m + t * (*b.z_m - *a.z_m) + radius > pit.floor_elevation_m) return true;
    }
  }
  return false;
}

}  // namespace burrow

#include "burrow/base/geometry.h"

#include <algorithm>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {
/// First point whose station is greater than `station_m`.
auto beyond(const LevelLine& line, double station_m) {
  return std::upper_bound(line.begin(), line.end(), station_m,
                          [](double s, const LevelPoint& p) { return s < p.station_m; });
}
}  // namespace

double elevation_at(const LevelLine& line, double station_m) {
  BURROW_ENSURE(!line.empty());
  const auto right = beyond(line, station_m);
  if (right == line.begin()) return line.front().elevation_m;
  if (right == line.end()) return line.back().elevation_m;
  const LevelPoint& a = *(right - 1);
  const LevelPoint& b = *right;
  const double t = (station_m - a.station_m) / (b.station_m - a.station_m);
  return a.elevation_m + t * (b.elevation_m - a.elevation_m);
}

double slope_at(const LevelLine& line, double station_m) {
  const auto right = beyond(line, station_m);
  if (right == line.begin() || right == line.end()) return 0;
  const LevelPoint& a = *(right - 1);
  const LevelPoint& b = *right;
  return (b.elevation_m - a.elevation_m) / (b.station_m - a.station_m);
}

bool inside(const PlanLine& outline, double x_m, double y_m) {
  if (outline.size() < 3) return false;
  bool in = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const PlanPoint& a = outline[i];
    const PlanPoint& b = outline[j];
    if ((a.y_m > y_m) != (b.y_m > y_m) && x_m < a.x_m + (y_m - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m)) in = !in;
  }
  return in;
}

}  // namespace burrow

#include "station.h"

#include <algorithm>

namespace burrow::clearance {

Station station_on(const BorePath& path, const BoreAxis& axis, std::size_t segment, double share) {
  const PathPoint& a = path.points[segment];
  const PathPoint& b = path.points[std::min(segment + 1, path.points.size() - 1)];
  const auto between = [&](double from, double to) { return from + share * (to - from); };
  Station s;
  s.at = {between(a.x_m, b.x_m), between(a.y_m, b.y_m), between(a.z_m, b.z_m)};
  s.forward = unit(axis.segment_end(segment) - axis.points()[segment], {1, 0, 0});
  s.left = across(s.forward);
  s.up = cross(s.forward, s.left);
  s.sd_lateral_m = between(a.sd_lateral_m, b.sd_lateral_m);
  s.sd_vertical_m = between(a.sd_vertical_m, b.sd_vertical_m);
  return s;
}

Station station_at(const BorePath& path, const BoreAxis& axis, double x_m) {
  const auto& points = path.points;
  const auto right =
      std::upper_bound(points.begin(), points.end(), x_m, [](double x, const PathPoint& p) { return x < p.x_m; });
  if (points.size() < 2 || right == points.begin()) return station_on(path, axis, 0, 0);
  if (right == points.end()) return station_on(path, axis, points.size() - 2, 1);
  const auto segment = static_cast<std::size_t>(right - points.begin()) - 1;
  const double span = points[segment + 1].x_m - points[segment].x_m;
  return station_on(path, axis, segment, (x_m - points[segment].x_m) / span);
}

}  // namespace burrow::clearance

#include "burrow/bore/point_on_path.h"

#include <algorithm>

#include "burrow/base/ensure.h"

namespace burrow {

PathPoint point_between(const PathPoint& from, const PathPoint& to, double share) {
  PathPoint p = from;
  for (double PathPoint::*member :
       {&PathPoint::s_m, &PathPoint::x_m, &PathPoint::y_m, &PathPoint::z_m, &PathPoint::grade_rad,
        &PathPoint::heading_rad, &PathPoint::sd_lateral_m, &PathPoint::sd_vertical_m, &PathPoint::cover_m,
        &PathPoint::resistance_above_Pa, &PathPoint::resistance_below_Pa, &PathPoint::curvature_1_m,
        &PathPoint::sag_curvature_1_m, &PathPoint::yaw_curvature_1_m, &PathPoint::limit_pressure_Pa,
        &PathPoint::roof_cap_Pa})
    p.*member = from.*member + share * (to.*member - from.*member);
  return p;
}

PathPoint point_at(const BorePath& path, double s_m) {
  BURROW_ENSURE(!path.points.empty());
  const auto next = std::upper_bound(path.points.begin(), path.points.end(), s_m,
                                     [](double s, const PathPoint& p) { return s < p.s_m; });
  if (next == path.points.begin()) return path.points.front();
  if (next == path.points.end()) return path.points.back();
  const PathPoint &a = *(next - 1), &b = *next;
  return point_between(a, b, (s_m - a.s_m) / (b.s_m - a.s_m));
}

}  // namespace burrow

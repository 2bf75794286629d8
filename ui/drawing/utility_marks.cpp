/// Where utilities meet the plane of the side elevation.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

std::optional<UtilityMark> mark_between(const PathVertex& a, const PathVertex& b) {
  if ((a.y_m > 0) == (b.y_m > 0)) return std::nullopt;
  const double t = a.y_m / (a.y_m - b.y_m);
  UtilityMark mark;
  mark.meets_line = true;
  mark.station_m = a.x_m + t * (b.x_m - a.x_m);
  mark.depth_known = a.z_m && b.z_m;
  if (mark.depth_known) mark.elevation_m = *a.z_m + t * (*b.z_m - *a.z_m);
  return mark;
}

/// Of a line that never meets it: its nearest vertex.
UtilityMark mark_beside(const Utility& utility) {
  UtilityMark mark;
  if (utility.path.empty()) return mark;
  const auto nearest =
      std::min_element(utility.path.begin(), utility.path.end(),
                       [](const PathVertex& a, const PathVertex& b) { return std::abs(a.y_m) < std::abs(b.y_m); });
  mark.station_m = nearest->x_m;
  mark.depth_known = nearest->z_m.has_value();
  mark.elevation_m = nearest->z_m.value_or(0);
  return mark;
}

}  // namespace

UtilityMark utility_mark(const Utility& utility) {
  for (std::size_t i = 1; i < utility.path.size(); ++i)
    if (const auto mark = mark_between(utility.path[i - 1], utility.path[i])) return *mark;
  return mark_beside(utility);
}

std::vector<UtilityMark> utility_marks(const Utility& utility) {
  std::vector<UtilityMark> marks;
  for (std::size_t i = 1; i < utility.path.size(); ++i)
    if (const auto mark = mark_between(utility.path[i - 1], utility.path[i])) marks.push_back(*mark);
  if (marks.empty()) marks.push_back(mark_beside(utility));
  return marks;
}

}  // namespace burrow

#pragma once
/// Where the bore goes: the mean path with its spread.

#include <string_view>
#include <vector>

#include "burrow/base/words.h"

namespace burrow {

enum class PathEnd { exit, daylight, longest };
template <>
struct Words<PathEnd> {
  static constexpr std::pair<PathEnd, std::string_view> list[] = {
      {PathEnd::exit, "exit"}, {PathEnd::daylight, "daylight"}, {PathEnd::longest, "longest"}};
};

/// One point of the mean path. Plain suffixed doubles: this is the inner loop's own record.
struct PathPoint {
  double s_m = 0;  ///< arc length from the launch face
  double x_m = 0, y_m = 0, z_m = 0;
  double grade_rad = 0;    ///< θ, inclination of the axis, positive up
  double heading_rad = 0;  ///< ψ, positive left
  double sd_lateral_m = 0, sd_vertical_m = 0;
  double cover_m = 0;  ///< crown of the hole to the surface
  double resistance_above_Pa = 0, resistance_below_Pa = 0;
  double curvature_1_m = 0;  ///< dθ/ds
  double limit_pressure_Pa = 0;  ///< p_L at the axis
  double roof_cap_Pa = 0;
  bool operator==(const PathPoint&) const = default;
};

struct BorePath {
  std::vector<PathPoint> points;
  double length_m = 0;
  PathEnd ends = PathEnd::exit;
  bool operator==(const BorePath&) const = default;
};

}  // namespace burrow

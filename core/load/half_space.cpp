#include "burrow/load/half_space.h"

#include <cmath>

namespace burrow {

namespace {

Result<void> check_depth(Length depth) {
  if (!(depth.m > 0) || !std::isfinite(depth.m)) return out_of_range("depth", depth.m, "> 0 m");
  return {};
}

/// Of a corner at (x, y) from the point asked for.
double corner(double x_m, double y_m, double z_m) {
  const double size = corner_influence(std::abs(x_m) / z_m, std::abs(y_m) / z_m);
  return (x_m < 0) != (y_m < 0) ? -size : size;
}

}  // namespace

double corner_influence(double m, double n) {
  if (!(m > 0) || !(n > 0)) return 0;
  constexpr double endless = 1e6;  // 1/4 to 1e-12 there, and the squares stay finite
  m = std::min(m, endless);
  n = std::min(n, endless);
  const double a = m * m + n * n + 1, b = m * m * n * n;
  const double t = 2 * m * n * std::sqrt(a);
  return (t / (a + b) * (a + 1) / a + std::atan2(t, a - b)) / (4 * pi);
}

Result<Pressure> rectangle_stress(const RectangleLoad& load, const PlanPoint& below, Length depth) {
  if (const Result<void> sound = check_depth(depth); !sound) return tl::unexpected(sound.error());
  if (!(load.from_x_m <= load.to_x_m)) return out_of_range("length", load.to_x_m - load.from_x_m, ">= 0 m");
  if (!(load.from_y_m <= load.to_y_m)) return out_of_range("width", load.to_y_m - load.from_y_m, ">= 0 m");
  if (!std::isfinite(load.pressure_Pa)) return out_of_range("pressure", load.pressure_Pa, "a number");
  if (!std::isfinite(below.x_m) || !std::isfinite(below.y_m)) return out_of_range("place", below.x_m, "a number");
  const double x1 = load.from_x_m - below.x_m, x2 = load.to_x_m - below.x_m;
  const double y1 = load.from_y_m - below.y_m, y2 = load.to_y_m - below.y_m, z = depth.m;
  // Far away the four corners cancel but for rounding.
  const double sum = corner(x2, y2, z) - corner(x1, y2, z) - corner(x2, y1, z) + corner(x1, y1, z);
  return Pressure{load.pressure_Pa * std::max(sum, 0.0)};
}

Result<Pressure> rectangles_stress(std::span<const RectangleLoad> loads, const PlanPoint& below, Length depth) {
  if (const Result<void> sound = check_depth(depth); !sound) return tl::unexpected(sound.error());
  Pressure sum;
  for (const RectangleLoad& load : loads) {
    const Result<Pressure> one = rectangle_stress(load, below, depth);
    if (!one) return one;
    sum.Pa += one->Pa;
  }
  return sum;
}

Result<Pressure> point_stress(Force load, Length aside, Length depth) {
  if (const Result<void> sound = check_depth(depth); !sound) return tl::unexpected(sound.error());
  if (!(aside.m >= 0)) return out_of_range("distance aside", aside.m, ">= 0 m");
  if (!std::isfinite(load.N)) return out_of_range("load", load.N, "a number");
  const double slope = aside.m / depth.m;
  return Pressure{load.N / (depth.m * depth.m) * 1.5 / pi / std::pow(1 + slope * slope, 2.5)};
}

Result<Pressure> circle_stress(Pressure load, Length radius, Length depth) {
  if (const Result<void> sound = check_depth(depth); !sound) return tl::unexpected(sound.error());
  if (!(radius.m >= 0)) return out_of_range("radius", radius.m, ">= 0 m");
  if (!std::isfinite(load.Pa)) return out_of_range("pressure", load.Pa, "a number");
  const double slope = radius.m / depth.m;
  return Pressure{load.Pa * (1 - std::pow(1 + slope * slope, -1.5))};
}

Result<Pressure> strip_stress(Pressure load, Length width, Length aside, Length depth) {
  if (const Result<void> sound = check_depth(depth); !sound) return tl::unexpected(sound.error());
  if (!(width.m >= 0)) return out_of_range("width", width.m, ">= 0 m");
  if (!std::isfinite(aside.m) || !std::isfinite(load.Pa)) return out_of_range("place", aside.m, "a number");
  const double x = std::abs(aside.m);
  const double near = std::atan2(x - width.m / 2, depth.m);  // δ: negative under the strip
  const double seen = std::atan2(x + width.m / 2, depth.m) - near;
  return Pressure{load.Pa / pi * (seen + std::sin(seen) * std::cos(seen + 2 * near))};
}

Result<Ratio> segment_share(Length pipe_diameter, Length effective_length, Length cover) {
  if (!(cover.m > 0) || !std::isfinite(cover.m)) return out_of_range("cover", cover.m, "> 0 m");
  if (!(pipe_diameter.m >= 0)) return out_of_range("diameter", pipe_diameter.m, ">= 0 m");
  if (!(effective_length.m >= 0)) return out_of_range("effective length", effective_length.m, ">= 0 m");
  return Ratio{4 * corner_influence(pipe_diameter.m / 2 / cover.m, effective_length.m / 2 / cover.m)};
}

}  // namespace burrow

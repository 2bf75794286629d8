#pragma once
/// The bore at one place, as the clearance needs it: direction, the view along it, spread.

#include <cmath>
#include <cstddef>

#include "burrow/base/geometry.h"
#include "burrow/bore/path.h"
#include "burrow/clearance/contact.h"
#include "burrow/clearance/separation.h"

namespace burrow::clearance {

struct Vector {
  double x = 0, y = 0, z = 0;
};
inline Vector operator-(const Point3& a, const Point3& b) {
  return {a.x_m - b.x_m, a.y_m - b.y_m, a.z_m - b.z_m};
}
inline double dot(const Vector& a, const Vector& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline Vector cross(const Vector& a, const Vector& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(const Vector& a) {
  return std::sqrt(dot(a, a));
}
inline Vector unit(const Vector& a, const Vector& otherwise) {
  const double l = length(a);
  return l > 1e-12 ? Vector{a.x / l, a.y / l, a.z / l} : otherwise;
}
inline Vector across(const Vector& line) {
  return unit({-line.y, line.x, 0}, {0, 1, 0});
}

/// The bore at one place: direction, the axes of the view along it, spread.
struct Station {
  Point3 at;
  Vector forward, left, up;
  double sd_lateral_m = 0, sd_vertical_m = 0;

  [[nodiscard]] ViewVector seen(const Vector& v) const { return {dot(v, left), dot(v, up)}; }
  [[nodiscard]] ViewSpread spread() const {
    const ViewVector z = seen({0, 0, sd_vertical_m});
    return {sd_lateral_m * sd_lateral_m + z.across_m * z.across_m, z.up_m * z.up_m, z.across_m * z.up_m};
  }
  [[nodiscard]] double variance_along(const Vector& n) const {
    const double l = sd_lateral_m * dot(n, left), v = sd_vertical_m * n.z;
    return l * l + v * v;
  }
};

/// Between the two points of a segment of the path.
Station station_on(const BorePath& path, const BoreAxis& axis, std::size_t segment, double share);

/// Stations increase along the path; beyond its ends the end counts.
Station station_at(const BorePath& path, const BoreAxis& axis, double x_m);

}  // namespace burrow::clearance

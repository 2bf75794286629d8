#include "burrow/bore/steering.h"

#include <algorithm>
#include <cmath>

namespace burrow {

Steering::Steering(const Ground& ground, const Tool& tool)
    : ground_(&ground),
      diameter_(tool.diameter.m),
      radius_(0.5 * tool.diameter.m),
      length_(tool.length.m),
      weight_(tool.mass.kg * gravity_m_s2),
      lever_(2 * 1.5 * tool.diameter.m / tool.length.m) {}

double Steering::outer(double depth_m) const {
  return std::min(2 * diameter_, depth_m);
}

Steer Steering::pitch(const Column& column, double z_m, double grade_rad) const {
  Steer steer;
  const double rho = outer(column.surface_m() - z_m);
  steer.cap_Pa = column.roof_cap(z_m, diameter_);
  steer.below_Pa = column.resistance_below(z_m, radius_, rho);
  steer.above_Pa = column.roof_resistance(z_m, radius_, rho, steer.cap_Pa);
  steer.limit_Pa = column.limit_pressure(z_m);
  const double sum = steer.below_Pa + steer.above_Pa;
  const double asymmetry = sum > 0 ? (steer.below_Pa - steer.above_Pa) / sum : 0;
  const double bearing = steer.limit_Pa * diameter_ * length_;
  const double sag = bearing > 0 ? weight_ * std::cos(grade_rad) / bearing : 0;
  steer.sag_1_m = sag / length_;
  steer.pitch_1_m = (asymmetry * lever_ - sag) / length_;
  return steer;
}

double Steering::yaw(const Column& column, const Point3& axis, double heading_rad) const {
  if (!ground_->strip_near(axis.x_m, axis.y_m, reach_m())) return 0;
  const double rho = outer(column.surface_m() - axis.z_m);
  const double left_x = -std::sin(heading_rad), left_y = std::cos(heading_rad);
  const double left = ground_->resistance_beside(column, axis, left_x, left_y, radius_, rho);
  const double right = ground_->resistance_beside(column, axis, -left_x, -left_y, radius_, rho);
  const double sum = right + left;
  return sum > 0 ? (right - left) / sum * lever_ / length_ : 0;
}

Steer Steering::at(const Column& column, const Point3& axis, double grade_rad, double heading_rad) const {
  Steer steer = pitch(column, axis.z_m, grade_rad);
  steer.yaw_1_m = yaw(column, axis, heading_rad);
  return steer;
}

}  // namespace burrow

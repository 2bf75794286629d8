#pragma once
/// How the ground turns the tool: the curvature of the path at one place.

#include "burrow/bore/tool.h"
#include "burrow/soil/ground.h"

namespace burrow {

/// Turning for c = 1, with what it comes from. Multiply by the steering constant c.
struct Steer {
  double pitch_1_m = 0;  ///< dθ/ds ÷ c, positive up
  double yaw_1_m = 0;    ///< dψ/ds ÷ c, positive left
  double above_Pa = 0;   ///< lesser of the resistance above and the roof cap
  double below_Pa = 0;
  double limit_Pa = 0;  ///< q at the axis
  double cap_Pa = 0;
  double sag_1_m = 0;  ///< the part of `pitch_1_m` by the weight, downward positive
};

/// The tool turns toward the side that resists less, and sags under its weight where the ground beneath is weak:
///   dθ/ds = (c/L_t) [A_v 2 ℓ_n/L_t − W cosθ/(q D L_t)],   dψ/ds = (c/L_t) A_h 2 ℓ_n/L_t,   ℓ_n = 1.5 D
///   A_v = (q_below − q_above)/(q_below + q_above),   A_h = (q_right − q_left)/(q_right + q_left)
/// q of a side from r = a to min(2 D, d); q_above at most the roof cap.
/// Source: help page Method (our model).   Range: an axis below the surface; at and above it the roof carries nothing.
/// Evidence: Steering.*, NeutralCover.*
class Steering {
 public:
  Steering(const Ground& ground, const Tool& tool);

  /// At a point and inclination, in the column that was filled there.
  [[nodiscard]] Steer at(const Column& column, const Point3& axis, double grade_rad, double heading_rad) const;
  /// Pitch alone: no look at what lies beside.
  [[nodiscard]] Steer pitch(const Column& column, double z_m, double grade_rad) const;
  [[nodiscard]] double yaw(const Column& column, const Point3& axis, double heading_rad) const;

  /// Turning for c = 1 where one side alone resists: 2 ℓ_n/L_t².
  [[nodiscard]] double greatest_1_m() const { return lever_ / length_; }
  /// How far the tool feels: 2 D.
  [[nodiscard]] double reach_m() const { return 2 * diameter_; }
  [[nodiscard]] const Ground& ground() const { return *ground_; }

 private:
  [[nodiscard]] double outer(double depth_m) const;

  const Ground* ground_;
  double diameter_, radius_, length_, weight_;
  double lever_;  // 2 ℓ_n/L_t
};

}  // namespace burrow

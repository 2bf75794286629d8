#pragma once
/// How uncertainty grows along a path: position and heading across the axis, one plane at a time.

namespace burrow {

/// Position w across the axis and heading φ in one plane: dw = φ ds, dφ = (κ + g w) ds + σ_e dW, with g = ∂κ/∂w.
/// Covariance: transition exp([[0, 1], [g, 0]] h), noise σ_e² [[h³/3, h²/2], [h²/2, h]].
/// For g = 0: Var w = s₀² + θ₀² L² + σ_e² L³/3 exactly.
/// Source: help page Method (derived).   Evidence: Wander.*, PathSpread.*
class Spread {
 public:
  Spread(double position_sd_m, double heading_sd_rad)
      : position_(position_sd_m * position_sd_m), heading_(heading_sd_rad * heading_sd_rad) {}

  /// Onward by h. `steer_1_m`: curvature for c = 1, by which a wrong c turns the path.
  void advance(double h_m, double gradient_1_m2, double noise_rad2_m, double steer_1_m);

  [[nodiscard]] double position_variance() const { return position_; }
  [[nodiscard]] double covariance() const { return both_; }
  [[nodiscard]] double heading_variance() const { return heading_; }
  /// ∂w/∂c, the shift for one unit of the steering constant.
  [[nodiscard]] double shift_by_constant() const { return shift_; }
  /// Standard deviation of w with that of c in it.
  [[nodiscard]] double sd(double constant_sd) const;

 private:
  double position_ = 0, both_ = 0, heading_ = 0;
  double shift_ = 0, turn_ = 0;  // ∂w/∂c, ∂φ/∂c
};

}  // namespace burrow

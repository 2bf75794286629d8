#pragma once
/// Force to bring the pipe into the hole.

#include <span>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// A piece of the hole.
struct HolePiece {
  double length_m = 0;
  double turn_rad = 0;    ///< of the axis over it, in whatever direction
  double weight_N_m = 0;  ///< of the pipe, less what floats it; either sign
  double grade_rad = 0;
  double grip_N_m = 0;  ///< what presses on the pipe all round, on each metre
  double friction = 0;  ///< μ
};

/// Friction of a pipe in a hole: 0.3 where it is wet or greased, 0.5 on dry ground (from memory).
inline constexpr double friction_wet = 0.3, friction_dry = 0.5;

/// At the pulling end: T grows by e^(μ Δθ) over a turn and by (μ (|w| cos θ + grip) + |w sin θ|) on each metre, both
/// together exactly over a piece: T₂ = T₁ e^(μΔ) + f ds (e^(μΔ) − 1)/(μΔ). The greater of the two directions.
/// Straight and open it is μ w L.
/// Source: belt friction; Najafi, Trenchless Technology Piping, p 262 uses 1.6 for each 90°, which is μ = 0.3 (read).
/// Range: lengths ≥ 0, turns ≥ 0, μ ≥ 0.   Errors: out_of_range.   Evidence: PullIn.*
Result<Force> pull_force(std::span<const HolePiece> pieces);

/// F = 2 √(E I w/r): a pipe pushed into a hole lies straight up to here, r the gap on one side.
/// Source: Dawson & Paslay 1984, straight level hole (from memory).   Range: all > 0.   Evidence: PullIn.Push_*
Result<Force> push_limit(double bending_stiffness_N_m2, double weight_N_m, Length gap);

/// ΔL = T L/(A E) where the pull is the same all along; half of it where it grows evenly from nothing.
Result<Length> stretch(Force pull, Length length, double area_m2, Pressure modulus);

}  // namespace burrow

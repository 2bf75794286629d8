#pragma once
/// What a pipe does along its length: bends with the hole, shortens as it cools, floats, follows the ground.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// Strain in the outer fibre of a bend, κ D/2.   Range: curvature ≥ 0, diameter > 0.   Evidence: Along.Bend_*
Result<Ratio> bending_strain(double curvature_1_m, Length diameter);

/// α L ΔT.   Range: length ≥ 0, α ≥ 0.   Evidence: Along.Thermal_*
Result<Length> thermal_shortening(double expansion_1_K, Length length, double cooling_K);

/// Weight of an empty pipe on each metre less the water it pushes aside; negative: it floats.
/// Range: area ≥ 0, diameter > 0.   Evidence: Along.Floating_*
struct Floating {
  double weight_N_m = 0;
  double uplift_N_m = 0;  ///< γ_w π D²/4
};
Result<Floating> floating(UnitWeight material, double area_m2, Length diameter);

/// Curvature of a pipe that follows ground sinking by `gap` in a trough with its inflection at half the depth: s/i²,
/// i = 0.5 h, the greatest of a Gaussian.   Source: Peck 1969 form (from memory), an upper bound: a pipe bends less.
/// Range: gap ≥ 0, depth > 0.   Evidence: Along.Settling_*
Result<double> settling_curvature_1_m(Length gap, Length depth);

}  // namespace burrow

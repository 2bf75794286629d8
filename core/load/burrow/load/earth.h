#pragma once
/// What the ground above weighs on a pipe in a hole: the whole of it, or less where it arches.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/soil/soil.h"

namespace burrow {

/// γ H.   Range: both ≥ 0.   Errors: out_of_range.   Evidence: Earth.Prism
Result<Pressure> prism_pressure(UnitWeight unit_weight, Length cover);

/// C = (1 − e^(−2 Kμ′ H/B))/(2 Kμ′), at most 1/(2 Kμ′).   Source: Marston (Moser & Folkman, Buried Pipe Design, p 44).
/// Range: Kμ′ ≥ 0 (0: H/B), cover ≥ 0, width > 0.   Errors: out_of_range.   Evidence: Earth.Marston_*
Result<Ratio> silo_coefficient(double k_mu, Length cover, Length width);

struct SiloPressure {
  double pressure_Pa = 0;
  double coefficient = 0;
  bool cohesion_clamped = false;  ///< γ B − 2c was below nothing: the ground carries itself on paper, 0 is taken
};
/// Of a hole opened without a trench: p = C (γ B − 2c).
/// Source: Marston, tunnel form (read). A trap: in a hole of 100 mm any cohesion from 1 kPa on makes it negative; it is
/// clamped and said so, and the checks of a pipe take c = 0.   Range: as above, γ ≥ 0, c ≥ 0.
/// Evidence: Earth.Silo_*
Result<SiloPressure> silo_pressure(UnitWeight unit_weight, Length cover, Length hole, double k_mu, Pressure cohesion);

/// p = κ γ H, κ = (1 − e^(−x))/x, x = 2 K (H/B) tan(φ/2), K = tan²(45° − φ/2).
/// Source: Terzaghi's arch as ASTM F1962 puts it (from memory).   Range: 0 ≤ φ < 90°, cover ≥ 0, width > 0.
/// Evidence: Earth.Terzaghi_*
Result<Pressure> arched_pressure(UnitWeight unit_weight, Length cover, Length width, Angle friction);

/// Kμ′ for a soil: drained 0.165 (sand and gravel), undrained 0.110 (saturated clay): the rows of the printed table
/// that let the least arch form (second-hand); which row belongs to which of our soils is our model.
/// Evidence: Earth.KMu_*
double k_mu_of(const Soil& soil);

}  // namespace burrow

#pragma once
/// Older answers to the same question as `cavity.h`: second routes for checks and for the working.

#include "burrow/soil/cavity.h"

namespace burrow {

/// Drained limit with small elastic strain in the plastic zone.
/// Source: Carter, Booker & Yeung 1986 (abstract read; equations derived again: the expansion is self-similar, so the
/// rate form integrates to 2G/(σ_R − p0) = T ρ^g − Z ρ).
/// Range, errors: as `drained_limit`.   Evidence: CavityDrained.Carter1986_*
Result<CavityLimit> carter_limit(Cavity cavity, const FrictionalGround& ground);

/// Factors of Vesic: p = c F_c + p0 F_q.
struct CavityFactors {
  double cohesion = 0;        ///< F_c
  double stress = 1;          ///< F_q
  double plastic_radius = 1;  ///< r_p/a
};

/// Source: Vesic 1972 (form from memory, derived again; Vesic drops the numerator 1 + Δ of the volume balance).
/// Symbols: I_r = G/(c + p0 tan φ) = rigidity, Δ = volumetric_strain, the average loss of volume in the plastic zone.
/// Range: 0 ≤ φ ≤ 55°, I_r > 0, Δ ≥ 0, reduced rigidity > 1.   Errors: out of range.   Evidence: CavityVesic.*
Result<CavityFactors> vesic_factors(Cavity cavity, Angle friction_angle, double rigidity, Ratio volumetric_strain);

/// Factors of the tip resistance of a deep point: q = c N_c + σ N_σ.
/// Source: Vesic 1977 (formula read). The printed form in UFC 3-220-20, Eq. 6-23, lacks tan²(π/4 + φ/2) and gives a
/// third of this at φ = 30°.
/// Range, errors: as `vesic_factors`.   Evidence: CavityVesic.Vesic1977_DeepTip
Result<CavityFactors> deep_tip_factors(Angle friction_angle, double reduced_rigidity);

}  // namespace burrow

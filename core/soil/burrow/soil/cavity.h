#pragma once
/// Limit pressure of a long hole (cylinder) or a bulb (sphere) opened from nothing in uniform ground: what the ground
/// asks of the tool that opens it.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// The number is k of the papers.
enum class Cavity { cylinder = 1, sphere = 2 };

struct CavityLimit {
  Pressure pressure;          ///< p_L
  double plastic_radius = 1;  ///< r_p/a
  int steps = 0;              ///< of the iteration; 0 for a closed form
  double residual = 0;        ///< relative, of the equation solved
};

/// Undrained clay: Tresca, no change of volume.
///   cylinder p_L = p0 + s_u (1 + ln I_r), r_p/a = √I_r;   sphere p_L = p0 + 4/3 s_u (1 + ln I_r), r_p/a = ∛I_r
/// Source: Hill 1950; Gibson & Anderson 1961; Yu 2000 (form from memory, derived again).
/// Symbols: p0 stress across the axis before, s_u = strength, I_r = G/s_u.
/// Range: p0 ≥ 0, s_u > 0, I_r ≥ 1.   Errors: out of range.   Evidence: CavityUndrained.*
Result<CavityLimit> undrained_limit(Cavity cavity, Pressure initial, Pressure strength, Pressure shear_modulus);

/// Pressure in an undrained cavity whose volume grew so that (V − V0)/V = growth; growth 1 is the limit pressure.
/// Source: Gibson & Anderson 1961: p = p0 + κ s_u (1 + ln I_r + ln ΔV/V), κ = 1 or 4/3 (form from memory, derived
/// again). Range: as above, growth in (1/I_r, 1]: below it the ground is still elastic.   Errors: out of range.
/// Evidence: CavityUndrained.GibsonAnderson1961_LoadingCurve
Result<Pressure> undrained_pressure(Cavity cavity, Pressure initial, Pressure strength, Pressure shear_modulus,
                                    Ratio growth);

/// Ground that holds by friction, at large strain.
struct FrictionalGround {
  Pressure shear_modulus;
  Ratio poisson_ratio{0.3};
  Pressure cohesion;
  Angle friction_angle;
  Angle dilation_angle;
  Pressure initial;  ///< p0′, mean effective stress across the axis before
};

/// Drained ground: Mohr–Coulomb with dilation, strains of any size. The method of this program; `cavity_other.h` holds
/// what it is checked against. Chosen over Vesic 1972 because it needs no guess of the volume lost in the plastic zone.
/// Source: Yu & Houlsby 1991 (form from memory; checked against a quadrature that uses no series).
/// Range: G > 0, 0 ≤ ν < 0.5, c ≥ 0, 1° ≤ φ ≤ 55°, −20° ≤ ψ ≤ φ, p0 ≥ 0, p0 + c cot φ > 0.
/// Errors: out of range; no convergence (a modulus too low for the stress).
/// Evidence: CavityDrained.YuHoulsby1991_*, CavityDrained.Quadrature_Agrees
Result<CavityLimit> drained_limit(Cavity cavity, const FrictionalGround& ground);

}  // namespace burrow

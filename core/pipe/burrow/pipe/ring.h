#pragma once
/// The ring of a pipe under load from outside: how far it flattens, what presses it together, when it buckles.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/soil/soil.h"

namespace burrow {

/// A ring: ratio of diameter to wall, modulus.
struct Ring {
  double ratio = 0;
  double modulus_Pa = 0;
  double poisson = 0;
};

/// ΔX/D = K P/((2/3) E/(DR − 1)³ + 0.061 E′), K = 0.1.
/// Source: modified Iowa; with PS = 4.47 E/(DR − 1)³ the first term is 0.149 PS (second-hand); K for usual bedding:
/// Buried Pipe Design Table 3.3 (read). Lag factor 1, as it goes with the whole weight above.
/// Range: ratio > 2, modulus > 0, P ≥ 0, E′ ≥ 0.   Errors: out_of_range.   Evidence: Ring.Iowa_*
Result<Ratio> supported_deflection(const Ring& ring, Pressure load, Pressure soil_modulus);
inline constexpr double bedding_constant = 0.1;

/// ΔY/D = 0.0125 P/(E/(12 (DR − 1)³)): the ground has not closed on the pipe.
/// Source: ASTM F1962 (from memory).   Range: as above.   Evidence: Ring.Unsupported_*
Result<Ratio> bare_deflection(const Ring& ring, Pressure load);

/// S = P DR/2.   Range: as above.   Evidence: Ring.Compression
Result<Pressure> ring_compression(double ratio, Pressure load);

/// f_o = [(1 − d)/(1 + d)²]³, d the deflection as a share.
/// Source: form of ASTM F1216 (second-hand).   Range: 0 ≤ d < 1.   Evidence: Ring.Ovality_*
Result<Ratio> ovality_factor(Ratio deflection);

/// P_cr = 2 E f_o/((1 − ν²)(DR − 1)³).
/// Source: Levy, as ASTM F1962; Najafi, Trenchless Technology Piping, eq. 6.6 (read).   Range: as above, 0 ≤ ν < 1,
/// 0 < f_o ≤ 1.   Evidence: PublishedRing.Najafi_CollapseHeads
Result<Pressure> collapse_pressure(const Ring& ring, Ratio ovality);

/// Elastic support of the ring by the ground. Two forms circulate; the smaller is used:
/// B′ = 1/(1 + 4 e^(−0.065 H)), H cover in ft (second-hand); B′ = 4 (h² + D h)/(1.5 (2h + D)²), Luscher, ν = ½ (read).
/// Range: cover ≥ 0, diameter > 0.   Evidence: Ring.Support_*
struct ElasticSupport {
  double value = 0;
  double by_cover = 0, by_luscher = 0;
};
Result<ElasticSupport> elastic_support(Length cover, Length diameter);

/// R_w = 1 − 0.33 h_w/h, water above the crown as a share of the cover, 0 to 1.
Result<Ratio> buoyancy_factor(Length water_above, Length cover);

/// q = (5.65/N) √(R_w B′ E′ E/(12 (DR − 1)³)): the ground has closed on the pipe.
/// Source: AWWA/Luscher, Buried Pipe Design p 139 (read); with 5.65: PE form (from memory). √32 = 5.657, so both are
/// one. Range: as above, N > 0.   Evidence: Ring.Buckling_*
Result<Pressure> supported_buckling(const Ring& ring, double support, double buoyancy, Pressure soil_modulus,
                                    double safety);

/// Cover over outside diameter from which the lesser safety against buckling holds: 2.5 from two on, 3.0 below.
/// Source: Moser & Folkman, Buried Pipe Design, p 113 (read).   Evidence: PipeChecks.Buckling_*
inline constexpr double deep_cover_diameters = 2;

/// E′ of the ground round a hole that was pushed open. No value is published; taken are those of native soil by
/// strength (AWWA M45, from memory), a class lower, and at most the 700 psi that was long assumed (our model).
/// Evidence: Ring.SoilModulus_*
Pressure soil_support_modulus(const Soil& soil);

}  // namespace burrow

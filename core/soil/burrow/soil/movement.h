#pragma once
/// How the ground moves aside for the bore: field below ground, rise of the surface.

#include <optional>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// A hole of radius a opened from nothing at depth h. `share` f_v is the part of its volume that the ground passes on:
/// below 1 in compressible ground.
struct OpenedHole {
  Length radius;      ///< a
  Length axis_depth;  ///< h
  Ratio share{1.0};   ///< f_v
};

struct Movement {
  double outward_m = 0;  ///< away from the upright plane through the bore
  double rise_m = 0;     ///< positive up
};

/// `linear`: a²/(2r), good beyond about 3 a. `exact`: √(r² + a²) − r for the source, which keeps the volume at any
/// strain; `r` is where the grain lay before.
enum class SourceTerm { linear, exact };

/// Movement beside and below or above an endless bore: incompressible half-plane, free surface.
/// Source: Sagaseta 1987; Verruijt & Booker 1996 with ν = ½ and ε R² = −a²/2 (from memory; satisfies equilibrium and
/// zero traction at the surface, derived).
///   u_x = (f a²/2)(x/r1² + x/r2²) − 2 f a² x z z2/r2⁴
///   u_z = (f a²/2)(z1/r1² − z2/r2²) + f a² z (x² − z2²)/r2⁴, down positive; z1 = z − h, z2 = z + h
/// The ν = ½ form on purpose: with a drained ν the same field moves 2(1 − ν) as much, more than the hole holds.
/// Range: radius > 0, axis_depth > radius, depth ≥ 0, not on the axis itself.   Errors: out_of_range.
/// Evidence: PublishedHeave.*, Movement.*
Result<Movement> ground_movement(const OpenedHole& hole, Length beside, Length depth,
                                 SourceTerm source = SourceTerm::linear);

/// Rise of the surface beside the bore: w = f a² h/(x² + h²).   Range: as above.
Result<Length> surface_rise(const OpenedHole& hole, Length beside);

/// The same while the tool passes, `ahead` of its tip positive:
/// w = (f a² h/2)/(x² + h²) · [1 − y/√(x² + y² + h²)].   Source: Sagaseta 1987 (form from memory), derived.
Result<Length> surface_rise_in_passing(const OpenedHole& hole, Length beside, Length ahead);

/// Rise over the bore if the same volume lay under a Gaussian trough of i = 0.5 h: f π a²/(√(2π) i).
/// Source: Peck 1969 form turned upside down (from memory).
Result<Length> gaussian_rise(const OpenedHole& hole);

/// Movement and strain of a utility that crosses over or under at a clear axis offset c, following the ground.
/// Source: derived, w(x) = (f a²/2) c/(x² + c²): peak f a²/(2c), bending f a²/c³ · D_p/2, direct f a²/(2c²).
/// An upper bound: a stiff pipe follows less.   Range: axis_offset > 0, utility_diameter ≥ 0.
struct UtilityMovement {
  double movement_m = 0;
  double bending_strain = 0;
  double direct_strain = 0;
};
Result<UtilityMovement> utility_movement(const OpenedHole& hole, Length axis_offset, Length utility_diameter);

/// Between what the rise of the surface above the bore is expected to lie.
struct HeaveEstimate {
  double low_m = 0;               ///< endless bore, f a²/h
  double gaussian_m = 0;          ///< same volume, i = 0.5 h
  std::optional<double> block_m;  ///< where the roof gives way (cap < p_L): f π a²/(D + 2 C tan 20°)
  double high_m = 0;              ///< the larger of the last two
};

/// Source: low as `surface_rise`; block: our model, a block rising over the crown between lines at 20° to the upright.
/// Range: radius > 0, axis_depth > radius, heave_share ≥ 0.   Errors: out_of_range.   Evidence: Heave.*
Result<HeaveEstimate> surface_heave(Length radius, Length axis_depth, Ratio heave_share, double roof_cap_Pa,
                                    double limit_pressure_Pa);

}  // namespace burrow

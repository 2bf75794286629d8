#pragma once
/// What the moving ground does to a utility that follows it: movement of its axis, bending and stretch.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/soil/movement.h"

namespace burrow {

/// A straight level utility near an endless bore, by the place of its axis nearest to that of the bore.
struct UtilityPlace {
  Length beside;      ///< x, horizontal distance of the two axes there
  Length depth;       ///< z, below the surface
  Angle crossing{};   ///< β between the lines: π/2 crosses squarely, 0 runs beside
  Length diameter{};  ///< d, outside
};

/// How the ground bends and stretches along a line, before its angle counts.
struct GroundAlong {
  double curvature_1_m = 0;
  double stretch = 0;
};

struct UtilityStrain {
  double outward_m = 0, rise_m = 0;
  double movement_m = 0;  ///< √(outward² + rise²)
  GroundAlong square;     ///< along a level line square to the endless bore: |u″|, |u′|
  GroundAlong front;      ///< along a line beside the bore while the tool passes
  double bending = 0;     ///< (sin²β |u″| + cos²β κ_f) d/2
  double stretch = 0;     ///< sin²β |u′| + cos²β ε_f
};

/// The utility moves with the ground: an upper bound, since a stiff pipe follows less and a pipe slips along its axis.
///   movement: `ground_movement` with the exact source (at a place by the linear field it would exceed the hole)
///   square crossing, with ζ₁ = x + i(z − h), ζ = x + i(z + h):
///     u_x + i u_z = (f a²/2)/ζ̄₁ + (f a²/2)/ζ + i f a² z/ζ̄²; u′, u″ by x at level z; their moduli are taken, which in
///     endless ground are f a²/(2c²) and f a²/c³ whatever the direction of the distance c
///   any angle: along the line d/ds = sin β d/dx, hence sin²β for both
///   passing front, endless ground: line beside the bore κ_f = 0.2147 f a²/c³ (at c/2 from the tip) and
///     ε_f = 0.0962 f a²/c² (at c/√2), each times what the surface adds to the movement there, at least 1
///   between the two: sin²β of the one plus cos²β of the other. Continuous; not less than bending and stretch of random
///   directions in the front's own field.
/// Source: half-plane as `ground_movement`; derivatives, front and bound derived; surface factor of the front our
/// model. Range: hole as `ground_movement`, depth ≥ 0, c > radius, 0 ≤ β ≤ π/2, d ≥ 0.   Errors: out_of_range.
/// Evidence: UtilityStrain.*, PublishedHeave.Derived_PipeCrossing
Result<UtilityStrain> utility_strain(const OpenedHole& hole, const UtilityPlace& place);

}  // namespace burrow

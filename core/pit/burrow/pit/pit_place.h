#pragma once
/// Where a pit lies, before its sides are cut.

#include "burrow/base/geometry.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/cut.h"
#include "burrow/pit/ground_surface.h"
#include "burrow/pit/shape.h"

namespace burrow {

struct PitPlace {
  FloorRectangle floor;  ///< or the one round its outline
  double depth_m = 0;
  bool bore_side_high = true;
  const GroundSurface* ground = nullptr;  ///< none: the ground line, level across
  [[nodiscard]] double middle_m() const { return (floor.from_m + floor.to_m) / 2; }
};

/// That of a pit, which has to outlive it.
PitPlace place_of(const PitShape& shape);

/// As far as the flattest slope of the rules, 1 1/2 : 1, would cut it back, on the sides that are sloped or benched.
FloorRectangle reach_of(const Pit& pit, const PitPlace& place);
PlanLine outline_of(const FloorRectangle& rectangle);

/// The steepest rise of the ground beside the pit, going away from the edge of its floor: over 2 m at a time, to twice
/// its depth beyond `reach_of`. 0 where none rises.
/// Source: our default; a kerb is no slope.   Evidence: SlopeConditions.SteepGround_*
double steepest_rise_beside(const Site& site, const Pit& pit, const PitPlace& place);

}  // namespace burrow

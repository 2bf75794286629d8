#pragma once
/// A pit cut into lines, for pictures of it.

#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/pit/shape.h"

namespace burrow {

/// The section square to the line at a station of the floor: from the surface at the right down, along the floor and up
/// again at the left. `station_m` of each point holds the offset. The ground is level across, or the surface that the
/// pit is cut out of.
/// Range: a station of the floor; empty where the ground lies below the floor.   Evidence: PitOutlines.Section_*
LevelLine cross_section(const PitShape& shape, const LevelLine& ground, double station_m);

/// Corners in this order: low station right, high station right, high station left, low station left.
using PitRing = std::vector<Point3>;

/// From the floor up: at every height at which a side bends (twice where it steps back by a bench), last the outline at
/// the surface, its long edges taken as straight.   Evidence: PitOutlines.Rings_*
std::vector<PitRing> pit_rings(const PitShape& shape, const LevelLine& ground);

}  // namespace burrow

#pragma once
/// The body dug out above a floor of any simple outline, below ground of any shape.

#include <optional>
#include <vector>

#include "burrow/pit/ground_surface.h"
#include "burrow/pit/shape.h"
#include "burrow/pit/side.h"

namespace burrow {

/// Corners counter-clockwise; the side over the edge from corner i to the next has the profile i.
struct PitFloor {
  PlanLine corners;
  std::vector<const SideProfile*> sides;
  double elevation_m = 0;
};

/// That of a pit, which has to outlive it.
PitFloor floor_of(const PitShape& shape);

/// A part of the body over a convex place in plan, between two planes.
struct SolidPiece {
  PlanLine outline;  ///< counter-clockwise
  GroundPlane ground, bottom;
};

/// Each side stands back from its edge, square to it, as its profile has it. About an outer corner both its sides count
/// and the higher one is left standing (a mitre); about an inner corner, and wherever the sides of two edges meet, what
/// either of them takes away is gone. A side ends where it comes upon the floor again. Pieces do not overlap; there are
/// none where the ground lies below the bottom.
/// Source: derived. Clipping of convex outlines by straight lines: the floor's edges, the bends of its sides, the edges
/// of the ground's triangles and the lines in which two planes meet.
/// Range: floor simple, at least 3 corners, no two alike; surface not empty.
/// Evidence: PitSolid.*
std::vector<SolidPiece> dig_out(const PitFloor& floor, const GroundSurface& ground);
/// Those of its pieces that may be cut by the plane square to the line at a station, in the same order.
std::vector<SolidPiece> dig_out_at(const PitFloor& floor, const GroundSurface& ground, double station_m);
/// `volume_of` what is dug out, which is not kept.   Evidence: PitSolid.Dug_*
double volume_dug(const PitFloor& floor, const GroundSurface& ground);

/// Exact: over each piece both planes are straight.
double volume_of(const std::vector<SolidPiece>& body);
/// Of what lies below a line, level across, too.
double volume_below(const std::vector<SolidPiece>& body, const LevelLine& line);
/// Greatest height of the ground over the floor.
double depth_of(const std::vector<SolidPiece>& body, const PitFloor& floor);
/// The edge at the surface, counter-clockwise: edges of pieces that no other piece takes away. Of several rings the one
/// that holds most.
PlanLine edge_of(const std::vector<SolidPiece>& body);
double area_of(const std::vector<SolidPiece>& body);

}  // namespace burrow

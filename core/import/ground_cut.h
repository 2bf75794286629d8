#pragma once
/// The ground line along the crossing line. Private to this room.

#include "placed_plan.h"

namespace burrow {

struct GroundCut {
  LevelLine line;              ///< empty: no ground along the line
  std::vector<Point3> points;  ///< ground near the line, off it
  std::vector<std::string> notes;
};

/// From surfaces, else grids, else points, whichever first reaches from pit to pit; else the one that reaches farthest.
/// Evidence: GroundCut.*
Result<GroundCut> cut_ground(const PlacedPlan& plan, const ImportBounds& bounds, const std::function<bool()>& go_on);

/// Where triangles cross the line offset = 0: pieces from station to station with their heights.
struct CutPiece {
  LevelPoint from, to;
};
std::optional<CutPiece> cut_triangle(const std::array<Point3, 3>& corners);

}  // namespace burrow

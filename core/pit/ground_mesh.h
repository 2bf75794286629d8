#pragma once
/// Triangles on one side of the ground line, as they are found.

#include <array>
#include <vector>

#include "burrow/base/geometry.h"

namespace burrow {

/// Everything as if it lay to the left of the line: y ≥ 0.
struct GroundMesh {
  std::vector<Point3> points;  ///< those that count, as they were put on the grid
  std::vector<Point3> nodes;
  std::vector<std::array<std::size_t, 3>> triangles;  ///< counter-clockwise
  std::vector<std::size_t> rim;  ///< nodes from the line's far end over the outermost points back to its near end
};

/// Empty where no point counts. `points` with y > 0.   Evidence: GroundSurface.Delaunay_*, GroundSurface.Index_*
GroundMesh mesh_beside(const LevelLine& line, const std::vector<Point3>& points);

}  // namespace burrow

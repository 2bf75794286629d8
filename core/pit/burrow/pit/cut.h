#pragma once
/// The body of ground cut out above a pit floor: outline at the surface, section, volume.

#include "burrow/base/geometry.h"
#include "burrow/pit/side.h"

namespace burrow {

struct FloorRectangle {
  double from_m = 0, to_m = 0;     ///< stations, increasing
  double right_m = 0, left_m = 0;  ///< offsets, increasing
  double elevation_m = 0;
};

struct Cut {
  double depth_m = 0;           ///< deepest, ground to floor
  double from_m = 0, to_m = 0;  ///< stations where it comes out at the surface
  double top_length_m = 0, top_width_m = 0;
  double volume_m3 = 0;
  PlanLine footprint;
  LevelLine section;
};

/// The ground is level across, straight between its points along the line.
/// Source: derived. Over each stretch in which ground, ends and sides are all straight, the area of the cross-section
/// is a quadratic of the station, so that two Gauss points give the volume exactly; for a floor L × W, depth D and run
/// r on all sides it is L W D + r D² (L + W) + (4/3) r² D³.
/// Range: ground not empty. Where the ground lies below the floor nothing is cut.
/// Evidence: Cut.Prismoid_Volume, Cut.Mesh_Volume*
Cut cut_out(const FloorRectangle& floor, const CutSides& sides, const LevelLine& ground);

/// The part of that body below another surface that nowhere rises above the ground: the same integral, equally exact.
/// `from_m` and `to_m` are those of the cut.
/// Range: surface not empty.   Evidence: PitLayers.Mesh_VolumeOfEachLayer
double volume_below(const FloorRectangle& floor, const CutSides& sides, const LevelLine& surface, double from_m,
                    double to_m);

}  // namespace burrow

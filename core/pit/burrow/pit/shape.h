#pragma once
/// What a pit looks like: floor, cut sides, footprint at the surface, volume.

#include <cstddef>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/crossing/pits.h"
#include "burrow/pit/ground_surface.h"
#include "burrow/pit/side.h"

namespace burrow {

/// A layer of the ground that the pit is dug through.
struct PitLayer {
  std::size_t stratum = 0;                  ///< number in `Site::strata`
  double top_m = 0, bottom_m = 0;           ///< elevations at the middle of the floor
  ExcavationType type = ExcavationType::c;  ///< in force: typed, else Type C
  double run_per_rise = 0;                  ///< of a simple slope cut by the rules
  double compound_run_per_rise = 0;  ///< of benches and of a slope over an upright part: never the short-term one
  double volume_m3 = 0;              ///< in the bank
  bool operator==(const PitLayer&) const = default;
};

/// What holds each side: as entered, else as proposed.
struct HeldSides {
  SideKind bore = SideKind::shored, back = SideKind::sloped, left = SideKind::sloped, right = SideKind::sloped;
  bool proposed = false;  ///< at least one of them by the program
  bool operator==(const HeldSides&) const = default;
};

struct PitShape {
  double face_station_m = 0;                   ///< plane where the tool enters or leaves
  double floor_from_m = 0, floor_to_m = 0;     ///< stations of the floor, increasing
  double floor_right_m = 0, floor_left_m = 0;  ///< offsets of the floor, increasing
  double floor_elevation_m = 0;
  double axis_elevation_m = 0;
  double depth_m = 0;  ///< deepest, ground to floor
  double floor_length_m = 0, floor_width_m = 0;
  double top_length_m = 0, top_width_m = 0;
  double volume_m3 = 0;   ///< in the bank
  PlanLine floor;         ///< corners of the floor, counter-clockwise
  bool outlined = false;  ///< no rectangle: from, to, right and left are those of the rectangle round it
  PlanLine footprint;     ///< outline at the surface
  LevelLine section;      ///< outline of the cut along the crossing line, from the surface down and up again
  ExcavationType soil_type = ExcavationType::c;  ///< typed, else the worst of the layers
  std::vector<PitLayer> layers;                  ///< from the ground down; their volumes add up to the volume
  CutSides sides;
  HeldSides held;
  GroundSurface ground;        ///< it is cut out of; none: the ground line alone, level across
  bool bore_side_high = true;  ///< the side that the tool passes stands at the larger station
  bool operator==(const PitShape&) const = default;
};

/// The side that stands over the edge of the floor from corner i to the next: the one it looks at most.
PitSideName side_name(const PitShape& shape, std::size_t edge);
const SideProfile& side_over(const PitShape& shape, std::size_t edge);

}  // namespace burrow

#pragma once
/// A floor cut out of the ground.

#include "burrow/crossing/crossing.h"
#include "burrow/pit/cut.h"
#include "burrow/pit/shape.h"
#include "burrow/pit/site_surface.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct PlacedFloor {
  FloorRectangle floor;  ///< typed or proposed; an outline that was entered lies about its middle, from the face on
  double face_station_m = 0, axis_elevation_m = 0;
  bool bore_side_high = true;
};

PitShape excavate(const Crossing& crossing, const Pit& pit, const Tables& tables, const PlacedFloor& placed,
                  const SiteSurface& surface);

/// `volume_m3` of that, without what is not asked: the edge, and what lies in each stratum.
double excavated_m3(const Crossing& crossing, const Pit& pit, const Tables& tables, const PlacedFloor& placed,
                    const SiteSurface& surface);

}  // namespace burrow

#pragma once
/// The pit by which a stuck tool would be dug out.

#include "burrow/bore/path.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/shape.h"
#include "burrow/pit/site_surface.h"

namespace burrow {

/// For a nose at the arc length `nose` of the mean path: floor 0.5 m longer than the tool at either end, by
/// max(0.9 m, D + 0.8 m), 0.2 m below its lowest underside, so that it can be lifted level; all sides sloped for the
/// soil type typed and confirmed for the launch pit, with what was seen there, else Type C. Where the ground does not
/// let a tool be dug out (road, track, building) is not asked here.
/// Source: our model; slopes as `least_run_per_rise`.   Range: a path with points; the nose is held within it.
/// Evidence: RescuePit.*
PitShape rescue_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                          Length nose, const SiteSurface& surface = {});

}  // namespace burrow

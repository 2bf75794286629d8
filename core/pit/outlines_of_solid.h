#pragma once
/// `cross_section` and `pit_rings` of a pit that is cut out of a surface.

#include "burrow/pit/outlines.h"

namespace burrow {

LevelLine section_of_solid(const PitShape& shape, double station_m);
std::vector<PitRing> rings_of_solid(const PitShape& shape);

}  // namespace burrow

#pragma once
/// The crossing as a drawing file: plan and side elevation, in metres.

#include <string>

#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// How far the side elevation is moved up on the drawing: its y is elevation plus this, a whole number of 10 m, so that
/// it stands at least 2 m clear above the plan.   Evidence: Dxf.SideElevation_*
double side_elevation_shift_m(const Crossing& crossing, const Assessment& assessment);

/// Plan in the local frame (x station, y offset to the left; bore and utilities whose depth is known as lines in
/// space), above it the side elevation (x station, y elevation plus the shift, which is written beside it). Layers:
/// what starts with PLAN- and SIDE-; pits and bands are closed. Numbers in words in the units asked for.
/// Evidence: Dxf.*
std::string write_dxf(const Crossing& crossing, const Tables& tables, const Assessment& assessment, UnitSystem units);

}  // namespace burrow

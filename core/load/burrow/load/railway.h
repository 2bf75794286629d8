#pragma once
/// Cooper E80 trains above a pipe.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// By the printed table, impact in it: never add impact again. Straight between its rows, 2 to 30 ft.
/// Source: handbook tables of E80 against cover (second-hand). Cover from the bottom of the ties.
/// Range: 2 ft ≤ cover ≤ 30 ft.   Errors: out_of_range.   Evidence: Railway.E80_Table
Result<Pressure> rail_table_pressure(Length cover);

/// 40 % at the track, falling straight to nothing at 10 ft.   Source: AREMA (from memory).   Range: cover ≥ 0.
Result<Ratio> rail_impact(Length cover);

/// By the half-space: four 80 kip axles over 8 × 20 ft and 200 lb/ft of track over 8 ft, together 2025 lb/ft², under
/// their middle, with `rail_impact` on the axles and the track alike.
/// Source: AREMA (from memory).   Range: cover > 0.   Errors: out_of_range.   Evidence: Railway.E80_HalfSpace
Result<Pressure> rail_half_space_pressure(Length cover);

struct RailPressure {
  double pressure_Pa = 0;
  bool by_table = false;
  double half_space_Pa = 0, impact = 0;
};
/// The larger of the two. Above 2 ft the table's value there counts, below 30 ft the half-space alone.
/// Range: cover > 0.   Errors: out_of_range.   Evidence: Railway.E80_TheLarger
Result<RailPressure> rail_pressure(Length cover);

}  // namespace burrow

#pragma once
/// Settlement that comes later: what of the hole the pipe leaves open closes in time.

#include <cstdint>

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// Open part of the hole beside `count` pipes, π/4 (D² − n d²), not less than nothing. d = 0: the whole hole, as where
/// it is given up. Range: D > 0, d ≥ 0, n ≥ 0.   Errors: out_of_range.   Evidence: Settlement.*
Result<double> open_area_m2(Length hole, Length pipe, std::int64_t count);

/// Sinking of the surface `beside` the bore when `share` of an open area has closed: a Gaussian trough of that volume,
/// s = f A/(√(2π) i) exp(−x²/(2 i²)), i = 0.5 h.
/// Source: Peck 1969 form (from memory); i of clay, taken everywhere: a sand trough is narrower and deeper.
/// Range: area ≥ 0, depth > 0, share ≥ 0.   Errors: out_of_range.   Evidence: Settlement.*
Result<Length> later_settlement(double area_m2, Length axis_depth, Ratio share, Length beside = {});

}  // namespace burrow

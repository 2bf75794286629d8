#pragma once
/// How far beside the bore the surface rises by a given amount.

#include <optional>

#include "burrow/base/quantity.h"

namespace burrow {

/// Half-width at which the rise w(x) = w_0 h²/(x² + h²) has fallen to `level`: h √(w_0/level − 1). Empty where the
/// crest itself does not reach it. Source: Sagaseta 1987, surface of the half-plane, turned round (derived).   Range:
/// crest, depth and level > 0. Evidence: RiseContour.*
std::optional<Length> half_width_where(Length crest, Length axis_depth, Length level);

}  // namespace burrow

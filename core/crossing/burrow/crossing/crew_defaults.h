#pragma once
/// What a crew brings to every crossing.

#include "burrow/crossing/crossing.h"

namespace burrow {

/// The new crossing with the tool, the compressor with its line, oil and hose marks, and the limits of `own`; the
/// weather and the height of the place stay its own. Limits typed for it already stay.   Evidence: CrewDefaults.*
Crossing with_own_start(Crossing fresh, const Crossing& own);

/// The crossing with the tool and the compressor with its line, oil and hose marks of `own`, and nothing else: picked
/// for one job.   Evidence: CrewDefaults.*
Crossing with_own_tool(Crossing crossing, const Crossing& own);

/// Only what `with_own_start` takes, on a blank site: what is kept between crossings.
Crossing own_start_of(const Crossing& crossing);

}  // namespace burrow

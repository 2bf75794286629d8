#pragma once
/// Which utilities an excavation would lay bare.

#include "burrow/crossing/site.h"
#include "burrow/pit/shape.h"

namespace burrow {

/// Whether a utility enters an excavation: over the footprint in plan and above the floor. Errs to the safe side, since
/// the slopes leave some ground standing; an unknown level counts as inside.
/// Source: derived.   Evidence: PitUtility.*
bool enters_pit(const Utility& utility, const PitShape& pit);

}  // namespace burrow

#pragma once
/// The predicted bore as it happens.

#include "burrow/bore/playback.h"
#include "burrow/bore/tool.h"
#include "burrow/check/assessment.h"

namespace burrow {

/// The mean path at the pace of the advance model (its median time), with the hose marks; it ends where the tool would
/// stop. Empty where there is no path or no pace is known.
/// Source: our model, not calibrated.   Evidence: PredictedPlayback.*
Playback predicted_playback(const Assessment& assessment, const Tool& tool);

}  // namespace burrow

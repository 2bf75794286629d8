#pragma once
/// Other bores than the predicted one as they happen, and what lines they pass at which distance.

#include <vector>

#include "burrow/bore/playback.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"
#include "burrow/trials/trials.h"

namespace burrow {

/// Another path at the pace of the one predicted: each metre as long as there, beyond its end as fast as on its last
/// metre. With the hose marks it reaches.   Range: both have two points or more; else empty.   Evidence: PlayedBores.*
Playback at_pace_of(const Playback& predicted, const BorePath& path);

/// One of the random trials whose path was kept. It ends where that trial ended.
/// Range: a number below `paths.size()`; else empty.   Evidence: PlayedBores.Trial_*
Playback trial_playback(const Trials& trials, std::size_t number, const Playback& predicted);

/// Each utility as this bore passes it: clear distance, where, and the distance that is wanted. What of it is not known
/// stays empty. No chances: this is one bore, not what might be.   Evidence: PlayedBores.Passed_*
std::vector<UtilityAnswer> lines_beside(const Playback& bore, const Crossing& crossing, const Tables& tables);

}  // namespace burrow

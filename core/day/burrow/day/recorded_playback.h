#pragma once
/// The recorded day as it happened.

#include "burrow/bore/playback.h"
#include "burrow/bore/tool.h"
#include "burrow/day/day.h"

namespace burrow {

/// The line as it is believed to have been bored, up to where the nose has been furthest, with the nose at the times
/// that were read and straight in between; a stop is a stretch that takes its time. Driving back is not played.
/// Readings that were struck through or wait to be confirmed say nothing. Range: a record with a start and one place of
/// the nose after it; else empty.   Evidence: RecordedPlayback.*
Playback recorded_playback(const DayRecord& record, const DayAnswer& answer, const Tool& tool);

}  // namespace burrow

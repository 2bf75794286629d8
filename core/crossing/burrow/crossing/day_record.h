#pragma once
/// What a record says before anybody computes: which readings count, how it ended, what was bored.

#include <optional>

#include "burrow/crossing/crossing.h"

namespace burrow {

/// Not struck through. A danger, or something struck, is struck through only with a reason.   Evidence: DayRecords.*
bool counts(const Reading& reading);

/// How it ended, by the last end that counts.   Evidence: DayRecords.*
std::optional<EndHow> end_of(const DayRecord& record);
bool ended(const DayRecord& record);
/// Somebody tapped danger, and nobody took it back.
bool danger_tapped(const DayRecord& record);

/// The furthest that any reading puts the nose.   Evidence: DayRecords.*
Length furthest_nose(const DayRecord& record);

/// The newest record without an end, or none.
const DayRecord* open_record(const Crossing& crossing);

/// Bore and pipe as they are now, to be kept with a record that starts.   Evidence: DayRecords.Layout_*
KeptLayout layout_of(const Crossing& crossing);
/// The crossing as a record bored it: with the layout kept at its start, else that of the alternative it names.
Crossing as_bored(const Crossing& crossing, const DayRecord& record);
/// Tool, launch, exit and pipe are those that were kept. True where none were: nobody knows better.
bool layout_stands(const Crossing& crossing, const DayRecord& record);

}  // namespace burrow

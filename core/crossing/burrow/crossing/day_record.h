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
/// Struck through, with a reason: it says nothing any more, words of danger included.
bool struck_with_reason(const Reading& reading);
/// Danger was tapped, something was struck, or words that surely say so: struck through only with a reason.
/// Evidence: DayRecords.Danger_*
bool tells_danger(const Reading& reading);
/// One of its readings does, and nobody took it back.
bool danger_told(const DayRecord& record);

/// The furthest that any reading puts the nose.   Evidence: DayRecords.*
Length furthest_nose(const DayRecord& record);

/// So far in of a bore of that length nobody comes out: two marks and what the hose stretches, of a short one two
/// fifths.   Source: our default.   Evidence: DayRecords.Arrived_*
bool too_early_to_arrive(double bored_m, double length_m);
/// It ended as *arrived* half way, by its marks and what was read near them, and nobody has confirmed that.
bool arrival_doubted(const Crossing& crossing, const DayRecord& record);

/// The newest record without an end, or none.
const DayRecord* open_record(const Crossing& crossing);

/// Bore and pipe as they are now, to be kept with a record that starts.   Evidence: DayRecords.Layout_*
KeptLayout layout_of(const Crossing& crossing);
/// The crossing as a record bored it: with the layout kept at its start, else that of the alternative it names.
Crossing as_bored(const Crossing& crossing, const DayRecord& record);
/// Another layout than that of a bore that is under way: nobody changes it before its record has ended.
/// Evidence: DayRecords.Layout_*
bool changes_layout_under_way(const Crossing& now, const Crossing& wanted);
/// Tool, launch, exit and pipe are those that were kept. True where none were: nobody knows better.
bool layout_stands(const Crossing& crossing, const DayRecord& record);

}  // namespace burrow

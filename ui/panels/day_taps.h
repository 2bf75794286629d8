#pragma once
/// What a tap or a typed line on the site log becomes.

#include <QDateTime>
#include <QUndoStack>
#include <optional>

#include "burrow/day/day.h"
#include "burrow/tables/tables.h"
#include "reading_entry.h"

namespace burrow {

/// Seconds since the start of a record; never before what stands in it.
double seconds_since_start(const DayRecord& record, const QDateTime& now);

/// A record that begins now, with the layout as it is.
DayRecord new_record(const Crossing& crossing, const QDateTime& now, std::optional<TakenOn> taken_on);

/// Tapped at that time; a mark puts the nose where the next one is.
Reading tapped(ReadingKind kind, double time_s, const Crossing& crossing, const Tables& tables,
               const DayRecord& record);

/// The start, a danger, tapped or in words, a strike, and anything while everybody is out: struck through only with a
/// reason.
bool wants_reason(const Reading& reading, const DayAnswer& day);

/// The reading of danger that undoing the last step would take out of the record without a word, if there is one.
std::optional<std::size_t> danger_undone(const QUndoStack& steps, const DayRecord& record);

/// All that is open at the present mark, ticked off; empty: nothing is.
std::optional<Reading> tasks_done(const DayAnswer& day, double time_s);

/// Errors: what is wrong, in a sentence for the entry.
Result<Reading> typed_reading(const ReadingEntry& entry, double now_s, const Crossing& crossing, const Tables& tables,
                              const DayRecord& record, UnitSystem units);

}  // namespace burrow

#include "burrow/crossing/day_record.h"

#include <algorithm>

#include "burrow/crossing/statement.h"

namespace burrow {

bool counts(const Reading& reading) {
  if (!reading.cancelled) return true;
  const bool grave =
      reading.kind == ReadingKind::danger || (reading.kind == ReadingKind::end && reading.how == EndHow::struck);
  return grave && !says_something(*reading.cancelled);
}

std::optional<EndHow> end_of(const DayRecord& record) {
  std::optional<EndHow> how;
  for (const Reading& reading : record.readings)
    if (reading.kind == ReadingKind::end && counts(reading)) how = reading.how;
  return how;
}

bool ended(const DayRecord& record) {
  return std::any_of(record.readings.begin(), record.readings.end(),
                     [](const Reading& reading) { return reading.kind == ReadingKind::end && counts(reading); });
}

bool danger_tapped(const DayRecord& record) {
  return std::any_of(record.readings.begin(), record.readings.end(),
                     [](const Reading& reading) { return reading.kind == ReadingKind::danger && counts(reading); });
}

Length furthest_nose(const DayRecord& record) {
  Length furthest;
  for (const Reading& reading : record.readings)
    if (reading.nose && counts(reading)) furthest = std::max(furthest, *reading.nose);
  return furthest;
}

const DayRecord* open_record(const Crossing& crossing) {
  const auto open = std::find_if(crossing.record.rbegin(), crossing.record.rend(),
                                 [](const DayRecord& record) { return !ended(record); });
  return open == crossing.record.rend() ? nullptr : &*open;
}

KeptLayout layout_of(const Crossing& crossing) {
  return {crossing.bore, crossing.pipe, {}};
}

Crossing as_bored(const Crossing& crossing, const DayRecord& record) {
  Crossing bored = record.alternative ? with_alternative(crossing, *record.alternative) : crossing;
  if (!record.layout.bore) return bored;
  bored.bore = *record.layout.bore;
  bored.pipe = record.layout.pipe;
  return bored;
}

bool layout_stands(const Crossing& crossing, const DayRecord& record) {
  if (!record.layout.bore) return true;
  const Crossing now = record.alternative ? with_alternative(crossing, *record.alternative) : crossing;
  const Bore &kept = *record.layout.bore, &bore = now.bore;
  return kept.tool == bore.tool && kept.launch == bore.launch && kept.exit == bore.exit &&
         record.layout.pipe == now.pipe;
}

}  // namespace burrow

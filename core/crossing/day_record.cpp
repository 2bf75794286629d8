#include "burrow/crossing/day_record.h"

#include <algorithm>

#include "burrow/crossing/danger_words.h"
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

bool struck_with_reason(const Reading& reading) {
  return reading.cancelled && says_something(*reading.cancelled);
}

bool tells_danger(const Reading& reading) {
  if (struck_with_reason(reading)) return false;
  if (reading.kind == ReadingKind::danger) return true;
  if (reading.kind == ReadingKind::end && reading.how == EndHow::struck) return true;
  return danger_in(reading.text.value_or("")) == DangerWords::surely ||
         danger_in(reading.why.value_or("")) == DangerWords::surely;
}

bool danger_told(const DayRecord& record) {
  return std::any_of(record.readings.begin(), record.readings.end(), tells_danger);
}

Length furthest_nose(const DayRecord& record) {
  Length furthest;
  for (const Reading& reading : record.readings)
    if (reading.nose && counts(reading)) furthest = std::max(furthest, *reading.nose);
  return furthest;
}

bool too_early_to_arrive(double bored_m, double length_m) {
  constexpr double before_exit_m = 3.0, least_share = 0.6;
  return bored_m + before_exit_m < length_m || bored_m < least_share * length_m;
}

bool arrival_doubted(const Crossing& crossing, const DayRecord& record) {
  if (end_of(record) != EndHow::arrived) return false;
  constexpr double slip_m = 3.0;  // so far ahead of what was read before, a number is a slip of the pen
  const Bore bore = as_bored(crossing, record).bore;
  const double length = bore.exit.station.m - bore.launch.station.m;
  double bored = 0;
  for (const Reading& reading : record.readings) {
    if (!counts(reading)) continue;
    const bool out = reading.kind == ReadingKind::arrival || reading.kind == ReadingKind::end;
    const bool confirmed = reading.confirmed.value_or(false);
    if (out && confirmed) return false;
    if (!reading.nose || out) continue;
    const bool mark = reading.kind == ReadingKind::mark || reading.kind == ReadingKind::stop;
    const double most = mark ? length + slip_m : bored + slip_m;
    if (confirmed || reading.nose->m <= most) bored = std::max(bored, reading.nose->m);
  }
  return too_early_to_arrive(bored, length);
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

bool changes_layout_under_way(const Crossing& now, const Crossing& wanted) {
  return std::any_of(wanted.record.begin(), wanted.record.end(), [&](const DayRecord& record) {
    if (ended(record) || record.readings.empty() || layout_stands(wanted, record)) return false;
    const auto was =
        std::find_if(now.record.begin(), now.record.end(), [&](const DayRecord& one) { return one.id == record.id; });
    return was != now.record.end() && layout_stands(now, *was);
  });
}

bool layout_stands(const Crossing& crossing, const DayRecord& record) {
  if (!record.layout.bore) return true;
  const Crossing now = record.alternative ? with_alternative(crossing, *record.alternative) : crossing;
  const Bore &kept = *record.layout.bore, &bore = now.bore;
  return kept.tool == bore.tool && kept.launch == bore.launch && kept.exit == bore.exit &&
         record.layout.pipe == now.pipe;
}

}  // namespace burrow

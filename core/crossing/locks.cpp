#include "burrow/crossing/locks.h"

#include <algorithm>

#include "burrow/crossing/day_record.h"

namespace burrow {

namespace {

/// While a bore is under way its layout is not dragged, nor changed by a remedy or a search.
bool held_by_record(const Crossing& crossing, const std::string& pointer) {
  if (!pointer.starts_with("/bore") && !pointer.starts_with("/pipe")) return false;
  const DayRecord* open = open_record(crossing);
  return open && !open->readings.empty();
}

}  // namespace

bool member_locked(const Crossing& crossing, const std::string& pointer) {
  if (held_by_record(crossing, pointer)) return true;
  return std::any_of(crossing.locks.begin(), crossing.locks.end(), [&](const std::string& lock) {
    return pointer == lock ||
           (pointer.size() > lock.size() && pointer.starts_with(lock) && pointer[lock.size()] == '/');
  });
}

}  // namespace burrow

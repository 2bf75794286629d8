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

/// The place itself or anything in it.
bool covers(const std::string& lock, const std::string& pointer) {
  return pointer == lock || (pointer.size() > lock.size() && pointer.starts_with(lock) && pointer[lock.size()] == '/');
}

}  // namespace

bool lock_stands(const Crossing& crossing, const std::string& pointer) {
  return std::any_of(crossing.locks.begin(), crossing.locks.end(),
                     [&](const std::string& lock) { return covers(lock, pointer); });
}

bool member_locked(const Crossing& crossing, const std::string& pointer) {
  return held_by_record(crossing, pointer) || lock_stands(crossing, pointer);
}

std::vector<std::string> lockable(const Crossing& crossing) {
  std::vector<std::string> all;
  for (const char* member : {"station_m", "elevation_m", "grade", "heading_rad", "offset_m"})
    all.push_back(std::string("/bore/launch/") + member);
  for (const char* member : {"station_m", "offset_m"}) all.push_back(std::string("/bore/exit/") + member);
  for (const char* pit : {"launch", "exit"})
    for (const char* member : {"floor_length_m", "floor_width_m", "floor_elevation_m", "floor_offset_m",
                               "floor_outline", "sides/bore", "sides/back", "sides/left", "sides/right"})
      all.push_back(std::string("/pits/") + pit + '/' + member);
  const Site& site = crossing.site;
  for (const char* line : {"ground", "water"}) all.push_back(std::string("/site/") + line);
  const auto each = [&](const char* list, const auto& all_of_it, const char* member) {
    for (const auto& one : all_of_it) all.push_back(std::string("/site/") + list + '/' + one.id + member);
  };
  each("strata", site.strata, "/top");
  each("utilities", site.utilities, "/path");
  each("test_holes", site.test_holes, "");
  each("surface", site.surface, "");
  each("boundaries", site.boundaries, "");
  each("trees", site.trees, "");
  each("plant", site.plant, "");
  each("strips", site.strips, "");
  return all;
}

void set_lock(Crossing& crossing, const std::string& pointer, bool locked) {
  if (locked) {
    if (lock_stands(crossing, pointer)) return;
    std::erase_if(crossing.locks, [&](const std::string& lock) { return covers(pointer, lock); });
    crossing.locks.push_back(pointer);
    return;
  }
  std::vector<std::string> wider;
  for (const std::string& lock : crossing.locks)
    if (lock != pointer && covers(lock, pointer)) wider.push_back(lock);
  std::erase_if(crossing.locks,
                [&](const std::string& lock) { return covers(lock, pointer) || covers(pointer, lock); });
  for (const std::string& place : lockable(crossing)) {
    if (covers(pointer, place) || covers(place, pointer) || lock_stands(crossing, place)) continue;
    if (std::any_of(wider.begin(), wider.end(), [&](const std::string& lock) { return covers(lock, place); }))
      crossing.locks.push_back(place);
  }
}

}  // namespace burrow

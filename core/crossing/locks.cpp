#include "burrow/crossing/locks.h"

#include <algorithm>

namespace burrow {

bool member_locked(const Crossing& crossing, const std::string& pointer) {
  return std::any_of(crossing.locks.begin(), crossing.locks.end(), [&](const std::string& lock) {
    return pointer == lock ||
           (pointer.size() > lock.size() && pointer.starts_with(lock) && pointer[lock.size()] == '/');
  });
}

}  // namespace burrow

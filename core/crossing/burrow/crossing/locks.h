#pragma once
/// What somebody has locked against dragging and searching; typing is always allowed.

#include <string>

#include "burrow/crossing/crossing.h"

namespace burrow {

/// Whether a member ("/bore/launch/elevation_m") or anything it lies in is locked.   Evidence: Locks.*
bool member_locked(const Crossing& crossing, const std::string& pointer);

}  // namespace burrow

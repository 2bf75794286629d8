#pragma once
/// What somebody has locked against dragging and searching; typing is always allowed.

#include <string>
#include <vector>

#include "burrow/crossing/crossing.h"

namespace burrow {

/// Whether a member ("/bore/launch/elevation_m") or anything it lies in is locked.   Evidence: Locks.*
bool member_locked(const Crossing& crossing, const std::string& pointer);

/// The same, as it stands in the file: a bore under way holds its layout besides, and no lock of it can be opened.
bool lock_stands(const Crossing& crossing, const std::string& pointer);

/// Every place that can be locked: what is dragged or searched.
std::vector<std::string> lockable(const Crossing& crossing);

/// Locks a place, or opens it. Of a lock on more than that the rest stays locked.   Evidence: Locks.*
void set_lock(Crossing& crossing, const std::string& pointer, bool locked);

}  // namespace burrow

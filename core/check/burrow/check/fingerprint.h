#pragma once
/// What a finding was about when somebody muted it, as a short text: another layout, location or tool gives another
/// one.

#include <string>
#include <string_view>

#include "burrow/base/finding.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Sixteen hexadecimal digits of launch, exit, tool and pits and of where the subject lies and how that is known: a
/// utility with its test holes, or a thing on top; of any other subject all that lies on site. Of a pit's finding a
/// dash and eight digits of its place follow, since both pits may meet the same thing. Names, owners and notes do not
/// count. Source: FNV-1a with 64 bit (Fowler, Noll, Vo; from memory) of lengths rounded to 1 mm and of other numbers to
/// five digits after the point.   Evidence: Fingerprint.*
std::string fingerprint_of(const Crossing& crossing, const Finding& finding);

/// Whether both were given for the same layout, location and tool, at two places of it.   Evidence: Fingerprint.*
bool beside_each_other(std::string_view one, std::string_view other);

}  // namespace burrow

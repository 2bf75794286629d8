#pragma once
/// What a trainer types about the hidden truth of a practice bore.

#include <string>
#include <vector>

#include "burrow/crossing/tables.h"
#include "burrow/document/fields.h"
#include "burrow/plan/practice.h"

namespace burrow {

inline const PartRef practice_part{PartKind::practice, {}, -1};

/// The practice bore of a crossing; an empty one where there is none or it cannot be read.
Practice practice_of(const Crossing& crossing, const Tables& tables);
/// The same as a value of PartKind::practice.
PartValue practice_value(const Practice& practice);

/// Errors of the set-up, constants and seed of the truth.   Evidence: PracticePanel.*
std::vector<Field> truth_fields(const Crossing& crossing, const Tables& tables);

}  // namespace burrow

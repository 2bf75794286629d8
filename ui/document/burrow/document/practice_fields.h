#pragma once
/// What a trainer types about the hidden truth of a practice bore.

#include <string>
#include <vector>

#include "burrow/document/fields.h"
#include "burrow/practice/practice.h"
#include "burrow/tables/tables.h"

namespace burrow {

inline const ItemRef practice_part{ItemKind::practice, {}, -1};

/// The practice bore of a crossing; an empty one where there is none or it cannot be read.
Practice practice_of(const Crossing& crossing, const Tables& tables);

/// Errors of the set-up, constants and seed of the truth.   Evidence: PracticePanel.*
std::vector<Field> truth_fields(const Crossing& crossing, const Tables& tables);
/// What hides in the ground: how far the service that is marked wrong lies off its mark; stones; an old trench.
std::vector<Field> hidden_fields(const Crossing& crossing, const Tables& tables);

/// Services can be that far off.
inline constexpr double most_off_mark_m = 10;
/// A stone half way, that turns the nose by a hundredth up; and an old trench 0.6 m wide there, to below the bore.
StoneHit stone_half_way(const Crossing& crossing);
Strip trench_half_way(const Crossing& crossing, const std::string& soil);

}  // namespace burrow

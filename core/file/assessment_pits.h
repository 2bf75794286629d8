#pragma once
/// The pits in the JSON of an assessment.

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "json_tree.h"

namespace burrow {

/// A pit without a floor was not worked out: its numbers are unknown, its lists empty.
Json pit_json(const PitShape& shape, const PitAnswer& work);

}  // namespace burrow

#pragma once
/// The member `day` of the JSON of answers.

#include "burrow/crossing/crossing.h"
#include "burrow/day/day.h"
#include "json_tree.h"

namespace burrow {

/// Without a day every number is null and every list empty.
Json day_json(const DayAnswer* day, const Crossing& crossing);

}  // namespace burrow

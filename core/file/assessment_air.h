#pragma once
/// Air line and run sheet in the JSON of an assessment.

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "json_tree.h"

namespace burrow {

Json quantiles_json(const Quantiles& q);

/// `along`: one for each part of the line as entered; empty where the line is not worked out.
Json air_json(const AirAnswer& air, const Air& entered);

Json marks_json(const std::vector<Mark>& marks);

}  // namespace burrow

#pragma once
/// The plan of the crossing as a drawing in the coordinates of the map, to be laid over the survey it came from.

#include <functional>
#include <string>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Bore, band and pits, utilities: layers MAP-BORE, MAP-BAND, MAP-LAUNCH-PIT, MAP-EXIT-PIT, MAP-GAS …, in metres, east
/// and north; lines whose heights are all known lie in space, those of utilities without depth on a layer of their own
/// (MAP-GAS-NO-DEPTH), flat. The name of the coordinate system stands beside the launch. `place`: of the local frame
/// on the map.   Errors: the crossing has no place on the map, or what `place` answers.   Evidence: MapDxf.*
Result<std::string> write_map_dxf(
    const Crossing& crossing, const Assessment& assessment,
    const std::function<Result<std::vector<PlanPoint>>(std::vector<PlanPoint> local)>& place);

}  // namespace burrow

#pragma once
/// The tool with the pressure that stands at it while it works.

#include "burrow/bore/tool.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct ToolAtWork {
  Tool tool;      ///< `pressure`: what advance, grip and vibration are computed with
  AirAnswer air;  ///< supply and pressures; water and oil come later
};

/// A pressure typed for the tool stands: somebody read a gauge, turned the air down or has the maker's plate. Without
/// one, what compressor and line give at the tool, not more than its class (the rest is turned down) and not less than
/// 0.1 bar (below, nothing moves, and the blow formulas need a pressure). Where compressor or line are not known, the
/// class. Free air of a class is that at the class's own pressure, whatever is typed.
/// Evidence: ToolAtWork.*
ToolAtWork tool_at_work(const Crossing& crossing, const Tables& tables);

/// The tool as rated: free air and the pressure it belongs to.   Evidence: ToolAtWork.Rated_*
Tool rated_tool(const ToolChoice& choice, const Tables& tables);

}  // namespace burrow

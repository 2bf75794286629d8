#include "burrow/check/tool_at_work.h"

#include <algorithm>

namespace burrow {

namespace {
constexpr double least_Pa = 1e4;
}

Tool rated_tool(const ToolChoice& choice, const Tables& tables) {
  Tool tool = resolve_tool(choice, tables);
  const ToolClass* row = find_tool(tables, choice.tool_class);
  if (row && !choice.free_air) tool.pressure = row->pressure;
  return tool;
}

ToolAtWork tool_at_work(const Crossing& crossing, const Tables& tables) {
  ToolAtWork at_work;
  const ToolChoice& choice = crossing.bore.tool;
  at_work.tool = resolve_tool(choice, tables);
  AirAnswer& air = at_work.air;
  air.pressure_typed = choice.pressure.has_value();
  if (const auto standing = standing_pressure(crossing.air.compressor)) air.standing_Pa = standing->Pa;
  Result<AirSupply> supply = supply_tool(crossing.air, rated_tool(choice, tables));
  if (supply) {
    air.pressure_at_tool_Pa = supply->at_tool.Pa;
    air.free_air_m3_s = supply->free_air.m3_s;
    if (!air.pressure_typed)
      at_work.tool.pressure.Pa = std::max(least_Pa, std::min(at_work.tool.pressure.Pa, supply->at_tool.Pa));
    air.supply = std::move(*supply);
  } else {
    air.not_judged = supply.error().place;
    air.not_entered = supply.error().code;
  }
  air.pressure_worked_with_Pa = at_work.tool.pressure.Pa;
  return at_work;
}

}  // namespace burrow

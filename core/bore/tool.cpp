#include "burrow/bore/tool.h"

#include <algorithm>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {
constexpr double steel_kg_m3 = 7850;
constexpr double air_pressure_Pa = 101325;

/// What a generic tool of this diameter has, where neither class nor plate says. `known` holds what the plate gives.
/// Source: help page Method (our model).
Tool by_diameter(const ToolChoice& known) {
  const double D = known.diameter->m;
  Tool tool;
  tool.diameter = {D};
  tool.length = known.length.value_or(Length{0.72 + 6.6 * D + 10 * D * D});
  tool.mass = known.mass.value_or(Mass{0.60 * steel_kg_m3 * pi * D * D * tool.length.m / 4});
  tool.piston_diameter = known.piston_diameter.value_or(Length{0.70 * D});
  tool.stroke = known.stroke.value_or(Length{0.08 + 0.5 * D});
  tool.striker_mass = known.striker_mass.value_or(Mass{0.28 * tool.mass.kg});
  const double between = std::clamp((D - 0.045) / (0.180 - 0.045), 0.0, 1.0);
  tool.blow_rate = known.blow_rate.value_or(Frequency{8.5 - 4.0 * between});
  tool.pressure = known.pressure.value_or(Pressure{6.9e5});
  const double piston_area = pi * tool.piston_diameter.m * tool.piston_diameter.m / 4;
  const double compressed = (tool.pressure.Pa + air_pressure_Pa) / air_pressure_Pa;
  tool.free_air =
      known.free_air.value_or(VolumeFlow{1.15 * piston_area * tool.stroke.m * compressed * tool.blow_rate.Hz});
  return tool;
}
}  // namespace

Tool resolve_tool(const ToolChoice& choice, const Tables& tables) {
  if (choice.tool_class.empty()) {
    BURROW_ENSURE(choice.diameter.has_value());
    return by_diameter(choice);
  }
  const ToolClass* row = find_tool(tables, choice.tool_class);
  BURROW_ENSURE(row != nullptr);
  Tool tool;
  tool.diameter = choice.diameter.value_or(row->diameter);
  tool.length = choice.length.value_or(row->length);
  tool.mass = choice.mass.value_or(row->mass);
  tool.piston_diameter = choice.piston_diameter.value_or(row->piston_diameter);
  tool.stroke = choice.stroke.value_or(row->stroke);
  tool.striker_mass = choice.striker_mass.value_or(row->striker_mass);
  tool.blow_rate = choice.blow_rate.value_or(row->blow_rate);
  tool.pressure = choice.pressure.value_or(row->pressure);
  tool.free_air = choice.free_air.value_or(row->free_air);
  return tool;
}

}  // namespace burrow

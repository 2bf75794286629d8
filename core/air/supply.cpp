#include "burrow/air/supply.h"
#include "burrow/base/phrase.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

struct Root {
  double at = 0;
  Iteration iteration;
};

/// Illinois' method (regula falsi that halves the value kept twice) for a function that grows from ≤ 0 to ≥ 0.
template <class Function>
Root grow_to_zero(double low, double high, double f_low, double f_high, double scale, Function f) {
  constexpr int most = 100;
  Root root{high, {IterationEnd::out_of_steps, 0, std::abs(f_high) / scale}};
  int side = 0;
  for (int step = 1; step <= most; ++step) {
    double x = (low * f_high - high * f_low) / (f_high - f_low);
    if (!(x > low && x < high)) x = 0.5 * (low + high);
    const double value = f(x);
    root = {x, {IterationEnd::out_of_steps, step, std::abs(value) / scale}};
    if (std::abs(value) <= 1e-11 * scale) {
      root.iteration.ended = IterationEnd::residual_small;
      return root;
    }
    if (value < 0) {
      low = x;
      f_low = value;
      if (side == -1) f_high *= 0.5;
      side = -1;
    } else {
      high = x;
      f_high = value;
      if (side == 1) f_low *= 0.5;
      side = 1;
    }
    if (high - low <= 1e-13 * scale) {
      root.iteration.ended = IterationEnd::step_small;
      return root;
    }
  }
  return root;
}

/// Gauge pressure at which the tool takes this much.
double pressure_for(const Tool& tool, double free_air_m3_s, double ambient_Pa) {
  return free_air_m3_s * ambient_Pa * (tool.pressure.Pa + sea_level_Pa) / (tool.free_air.m3_s * sea_level_Pa) -
         ambient_Pa;
}

}  // namespace

VolumeFlow tool_demand(const Tool& tool, Pressure gauge, Pressure ambient) {
  return {tool.free_air.m3_s * sea_level_Pa * (gauge.Pa + ambient.Pa) /
          (ambient.Pa * (tool.pressure.Pa + sea_level_Pa))};
}

Pressure compressor_pressure(Pressure rated, Pressure ambient) {
  return {rated.Pa * std::min(1.0, ambient.Pa / sea_level_Pa)};
}

std::optional<Pressure> standing_pressure(const Compressor& compressor) {
  if (!compressor.pressure) return compressor.regulator;
  if (!compressor.regulator) return compressor.pressure;
  return std::min(*compressor.pressure, *compressor.regulator);
}

Result<AirSupply> supply_tool(const Air& air, const Tool& tool) {
  const Compressor& compressor = air.compressor;
  if (!compressor.free_air || !(compressor.free_air->m3_s > 0) || !compressor.pressure ||
      !(compressor.pressure->Pa > 0))
    return fail(translatable("compressor"), "no free air or no pressure", "free air and pressure above 0",
                "no-compressor");
  if (!(compressor.pressure->Pa <= 1e8))
    return out_of_range(translatable("pressure of the compressor"), compressor.pressure->Pa, "up to 1e8 Pa");
  if (!(compressor.free_air->m3_s <= 1e3))
    return out_of_range(translatable("free air of the compressor"), compressor.free_air->m3_s, "to 1000 m³/s");
  if (!(tool.pressure.Pa > 0 && tool.pressure.Pa <= 1e8))
    return out_of_range(translatable("tool"), tool.pressure.Pa, "to 1e8 Pa");
  if (!(tool.free_air.m3_s >= 0 && tool.free_air.m3_s <= 1e3))
    return out_of_range(translatable("tool"), tool.free_air.m3_s, "0 to 1000 m³/s");
  const Result<std::vector<LinePart>> parts = line_parts(air.line);
  if (!parts) return tl::unexpected(parts.error());
  const Result<SiteAir> site = site_air(*air.altitude, *air.air_temperature);
  if (!site) return tl::unexpected(site.error());

  AirSupply supply;
  supply.ambient = site->ambient;
  const double ambient = site->ambient.Pa;
  supply.compressor_most = compressor_pressure(*compressor.pressure, site->ambient);
  supply.compressor_gives = *compressor.free_air;
  supply.wanted = tool_demand(tool, tool.pressure, site->ambient);
  supply.line_most = std::min(supply.compressor_most, compressor.regulator.value_or(supply.compressor_most));
  const double full = supply.line_most.Pa;
  const auto mass_at = [&](double gauge) {
    return tool_demand(tool, {gauge}, site->ambient).m3_s * site->density_kg_m3;
  };
  const auto too_much = [&](double gauge) {
    return inlet_for(*parts, *site, {gauge + ambient}, mass_at(gauge)).Pa - ambient - full;
  };
  double at_tool = 0;
  const double none = too_much(0), all = too_much(full);
  if (!(all > 0)) {
    at_tool = full;  // nothing flows, or nothing resists
  } else if (none < 0) {
    const Root root = grow_to_zero(0, full, none, all, full, too_much);
    at_tool = root.at;
    supply.iteration = root.iteration;
  }
  supply.would_take = tool_demand(tool, {at_tool}, site->ambient);
  if (supply.would_take.m3_s > supply.compressor_gives.m3_s) {
    at_tool = std::max(0.0, pressure_for(tool, supply.compressor_gives.m3_s, ambient));
    supply.held_by = AirHeldBy::compressor;
    supply.iteration = {};
  }
  supply.at_tool = {at_tool};
  supply.free_air = {std::min(tool_demand(tool, {at_tool}, site->ambient).m3_s, supply.compressor_gives.m3_s)};
  supply.mass_kg_s = supply.free_air.m3_s * site->density_kg_m3;
  supply.along = flow_back(*parts, *site, {at_tool + ambient}, supply.mass_kg_s);
  supply.at_compressor = {std::min(supply.along.front().inlet_Pa - ambient, full)};
  for (const PartFlow& part : supply.along)
    if (part.choked && supply.held_by == AirHeldBy::line) supply.held_by = AirHeldBy::choked;
  return supply;
}

}  // namespace burrow

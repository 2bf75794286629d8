#pragma once
/// Compressor, line and tool together: the pressure that stands at the tool while it works.

#include <optional>
#include <string_view>
#include <vector>

#include "burrow/air/line.h"
#include "burrow/base/enum_names.h"
#include "burrow/bore/tool.h"

namespace burrow {

/// How an iteration ended.
enum class IterationEnd { residual_small, step_small, out_of_steps };
struct Iteration {
  IterationEnd ended = IterationEnd::residual_small;
  int steps = 0;
  double residual = 0;  ///< of the equation solved, relative
  bool operator==(const Iteration&) const = default;
};

/// What keeps the pressure at the tool from being higher.
enum class AirHeldBy {
  line,        ///< the compressor stands at its full pressure, the line takes the rest
  compressor,  ///< it gives less air than the tool would take, and its pressure falls until both agree
  choked       ///< a part of the line passes no more air, however high the pressure before it
};
template <>
struct EnumNames<AirHeldBy> {
  static constexpr std::pair<AirHeldBy, std::string_view> list[] = {
      {AirHeldBy::line, "line"}, {AirHeldBy::compressor, "compressor"}, {AirHeldBy::choked, "choked"}};
};

/// Pressures are gauge, at the place of work; free air is the volume drawn in there.
struct AirSupply {
  Pressure ambient;             ///< absolute
  Pressure compressor_most;     ///< what the compressor can hold at this height
  Pressure line_most;           ///< the same, or what a regulator behind it lets through
  VolumeFlow compressor_gives;  ///< free air
  VolumeFlow wanted;            ///< free air of the tool at its own pressure, at this height
  VolumeFlow would_take;        ///< free air with an endless compressor at the same pressure
  Pressure at_compressor, at_tool;
  VolumeFlow free_air;  ///< what flows
  double mass_kg_s = 0;
  AirHeldBy held_by = AirHeldBy::line;
  std::vector<PartFlow> along;  ///< compressor first; one for each part of the line
  Iteration iteration;
  bool operator==(const AirSupply&) const = default;
};

/// Free air that a tool takes at a gauge pressure: it fills the same space at each blow and keeps its blow rate, so
/// that Q = Q_n (p_0/p_h) (p + p_h)/(p_n + p_0), Q_n rated at p_n and sea level. Source: derived; the usual factors for
/// height follow from it.   Range: rated pressure > 0, gauge ≥ 0. Evidence: PublishedAir.Altitude_*
VolumeFlow tool_demand(const Tool& tool, Pressure gauge, Pressure ambient);

/// At a height the compressor draws in the volume it is rated for, and holds its rated ratio of pressures: gauge
/// pressure times p_h/p_0, never more than rated (our model; the trade says 3 to 4 % for each 1000 ft, second-hand).
Pressure compressor_pressure(Pressure rated, Pressure ambient);

/// What stands all along the line, and at the tool, once it stalls and no air flows: what the compressor is set to, or
/// its regulator where that lets through less. Nothing where neither is entered.
/// Source: no flow, no loss (derived).   Evidence: AirStanding.*
std::optional<Pressure> standing_pressure(const Compressor& compressor);

/// The pressure at the tool where what the line needs for the flow is what compressor and regulator hold: Illinois'
/// method on `inlet_for(p, demand(p)) = p_line`, monotone and continuous even where the line chokes. Where that flow is
/// more than the compressor gives, the pressure at which the tool takes just as much as it gives. 0: no pressure is
/// left. Source: our model of compressor and tool; the line as `line.h`. Errors: `place` as in `line.h` and
/// `atmosphere.h`, "compressor" (not entered or 0), "pressure of the compressor", "free air of the compressor", "tool"
/// (above 1e8 Pa or 1e3 m³/s, each of the three).   Evidence: AirSupply.*
Result<AirSupply> supply_tool(const Air& air, const Tool& tool);

}  // namespace burrow

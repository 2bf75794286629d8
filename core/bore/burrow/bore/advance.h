#pragma once
/// How fast the tool gets on, whether the ground holds it against its own blow, and where it would stop.

#include <optional>
#include <vector>

#include "burrow/base/working.h"
#include "burrow/bore/path.h"
#include "burrow/bore/tool.h"
#include "burrow/soil/soil.h"

namespace burrow {

/// The constants of the blow balance, all in one place.   Source: our model unless said.
struct BlowConstants {
  double energy_share = 0.55;                  ///< of p A_p stroke that reaches the anvil
  double restitution = 0.55;                   ///< e, steel on steel (from memory: 0.5–0.6)
  double nose_half_angle_rad = 15 * pi / 180;  ///< α
  double nose_adhesion_ratio = 0.5;            ///< of s_u on the cone
  double speed_m_s = 1.0;                      ///< v of the tool under the blow
  double damping_clay_s_m = 0.6;               ///< J, Smith 1960 (from memory: 0.5–0.65)
  double damping_sand_s_m = 0.15;              ///< J, Smith 1960 (from memory)
  double rebound_m = 0.00125;                  ///< r_e, half of a quake of 2.5 mm (from memory)
  double factor_low = 0.1, factor_high = 0.5;  ///< the uncalibrated range, whose width the spread takes
};

/// One blow of the tool at a gauge pressure.
struct Blow {
  double energy_J = 0;    ///< E = 0.55 p A_p stroke
  double efficiency = 0;  ///< η = (m_r + e² m_t)/(m_r + m_t), m_t = tool less striker
  double reaction_N = 0;  ///< p A_p, by which the air pushes the tool back
  bool operator==(const Blow&) const = default;
};

/// Source: impact of two free bodies (textbook), Hiley form of η; share of energy our model.
/// Range: pressure > 0, striker lighter than the tool.   Evidence: PublishedAdvance.GenericTools_BlowEnergy
Blow blow_of(const Tool& tool, Pressure gauge, const BlowConstants& constants = {});

/// The ground at one place of the bore.
struct GroundAtTool {
  const Soil& soil;
  double limit_Pa = 0;  ///< q at the axis, total
  double pore_Pa = 0;
};

/// Resistance of the cone: undrained A (q + 0.5 s_u cot α), drained A (q + p_L′ tan δ cot α).
double nose_resistance_N(const GroundAtTool& at, const Tool& tool, const BlowConstants& constants = {});

/// Friction on the body for each metre of it: π D times s_u or p_L′ tan δ, each times the soil's adhesion ratio (0.2:
/// the hole stands back from the body behind the cone).
double side_resistance_N_m(const GroundAtTool& at, const Tool& tool);

/// Advance at one blow, before the field factor: set = η E/(R (1 + J v)) − r_e; negative where the blow only springs
/// back. Source: Hiley form with Smith's damping, our model.   Range: resistance > 0. Evidence:
/// PublishedAdvance.GenericTools_SetInClay, .GenericTools_RateInSand
double set_m(const Blow& blow, double resistance_N, bool drained, const BlowConstants& constants = {});

/// Tenth, half and nine tenths of all bores take no longer.
struct TimeSpread {
  double p10_s = 0, p50_s = 0, p90_s = 0;
  bool operator==(const TimeSpread&) const = default;
};

struct AdvancePoint {
  double s_m = 0, x_m = 0;
  double nose_N = 0, side_N = 0;  ///< together the resistance
  bool drained = false;           ///< the soil at the nose
  double set_m = 0;               ///< at one blow, before the field factor
  double rate_m_s = 0;            ///< set × blow rate × field factor; 0 from the stop on
  double grip = 0;                ///< friction on the body in the ground over p A_p
  TimeSpread time;                ///< since the start; at and beyond a stop that of the stop
  bool operator==(const AdvancePoint&) const = default;
};

struct AdvanceAsk {
  Pressure gauge;            ///< at the tool
  Ratio field_factor{0.3};   ///< median
  Length least_set{0.0002};  ///< below it the tool would stop
};

struct Advance {
  Blow blow;
  std::vector<AdvancePoint> points;                ///< one for each point of the path
  std::optional<TimeSpread> time;                  ///< to the end of the path; empty where the tool would stop before
  std::optional<double> stop_s_m, stop_station_m;  ///< where the set first falls below the least
  /// Least grip with the whole body in the ground (at the end of a path shorter than the tool), where that is, and how
  /// far in the nose is when friction first outweighs the air: up to there the tool has to be held.
  double least_grip = 0, least_grip_station_m = 0;
  std::optional<double> held_until_m;
  bool operator==(const Advance&) const = default;
};

/// Advance along a path. The nose meets the soil at each point, the body the soils over the tool's length behind it; no
/// friction in the launch pit.
/// Time is ∫ ds/rate. Its spread comes from the field factor alone: lognormal about the one given, as wide as from 0.1
/// to 0.5 (the uncalibrated range) between its 10 and 90 %, so that P90/P50 = P50/P10 = √5: about 0.3 a tenth of all
/// bores lies below 0.134 and a tenth above 0.67. Spreads of soil and path
/// are not in it. The blow rate is that of the tool, whatever the pressure. It says too much in soft ground, where the
/// tool slips back (grip below 1) and the air is throttled.
///
/// Source: help page Method (our model, not calibrated).
/// Range: path with at least one point, gauge > 0, field factor > 0.
/// Evidence: Advance.*, PublishedAdvance.*
Advance advance_along(const Ground& ground, const Tool& tool, const BorePath& path, const AdvanceAsk& ask,
                      const BlowConstants& constants = {});

/// What another pressure would do.
struct PressureEffect {
  Pressure gauge;
  std::optional<double> time_p50_s;
  std::optional<double> stop_station_m;
  double least_grip = 0;
  bool operator==(const PressureEffect&) const = default;
};
std::vector<PressureEffect> pressure_effects(const Ground& ground, const Tool& tool, const BorePath& path,
                                             const AdvanceAsk& ask, const std::vector<Pressure>& gauges);

/// The working where the set is least: codes `bore.set`, `bore.grip`, `bore.time`.
std::vector<Working> working_of(const Advance& advance, const Tool& tool, const AdvanceAsk& ask,
                                const BlowConstants& constants = {});

}  // namespace burrow

#pragma once
/// Water in the air line, and whether it may freeze in the tool's exhaust.

#include <optional>
#include <string_view>

#include "burrow/air/atmosphere.h"
#include "burrow/base/enum_names.h"

namespace burrow {

/// Pressure of saturated vapour, t in °C: over water p = 611.2 exp(17.62 t/(243.12 + t)), below 0 °C over ice
/// p = 611.2 exp(22.46 t/(272.62 + t)).
/// Source: Magnus' form with the constants of the WMO guide (from memory).   Range: 200 to 340 K.
/// Errors: out_of_range.   Evidence: Moisture.*, PublishedAir.Vapour_*
Result<Pressure> saturation_pressure(Temperature temperature);
/// Over water at any temperature, supercooled below 0 °C: what relative humidity is a share of (WMO, from memory).
Result<Pressure> saturation_over_water(Temperature temperature);

enum class Icing {
  none,      ///< no water comes out in the line
  possible,  ///< water comes out, and air that expands freely would cool below freezing
  likely     ///< the same, with air that is cold to begin with
};
template <>
struct EnumNames<Icing> {
  static constexpr std::pair<Icing, std::string_view> list[] = {
      {Icing::none, "none"}, {Icing::possible, "possible"}, {Icing::likely, "likely"}};
};

struct AirWater {
  double humidity = 1;  ///< taken for the air drawn in
  bool humidity_known = false;
  double drawn_in_kg_s = 0;   ///< vapour in the free air
  double comes_out_kg_s = 0;  ///< once compressed and cooled to the temperature of the day
  double parallel_for = 0;
  Temperature exhaust_ideal;  ///< lowest that expanding air could reach; a real exhaust is far warmer
  Icing icing = Icing::none;
  bool operator==(const AirWater&) const = default;
};

/// Compressed, and cooled back in the line, air of pressure p holds p_sat/(p − p_sat) of vapour for its own volume of
/// dry air, p_sat over ice below 0 °C, while the humidity drawn in is a share of that over water; what was drawn in
/// beyond that comes out as water. Free expansion: T (p_h/p)^((γ−1)/γ), γ = 1.4. Source: derived (perfect gases).
/// `cold_below`: where `possible` turns `likely` (common practice, no source). Range: gauge ≥ 0, flow ≥ 0, humidity 0
/// to 1 (empty: taken as saturated, the worst).   Errors: out_of_range. Evidence: Moisture.*
Result<AirWater> water_in_line(const SiteAir& air, std::optional<Ratio> humidity, Pressure gauge, VolumeFlow free_air,
                               Temperature cold_below);

}  // namespace burrow

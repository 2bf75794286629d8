#include "burrow/air/moisture.h"
#include "burrow/base/phrase.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {
constexpr double freezing_K = 273.15;
constexpr double vapour_to_air = 0.62198;  ///< masses of a mole, water over dry air
}  // namespace

Result<Pressure> saturation_over_water(Temperature temperature) {
  if (!(temperature.K >= 200 && temperature.K <= 340))
    return out_of_range(translatable("air temperature"), temperature.K, "200 to 340 K");
  const double t = temperature.K - freezing_K;
  return Pressure{611.2 * std::exp(17.62 * t / (243.12 + t))};
}

Result<Pressure> saturation_pressure(Temperature temperature) {
  const Result<Pressure> over_water = saturation_over_water(temperature);
  const double t = temperature.K - freezing_K;
  if (!over_water || !(t < 0)) return over_water;
  return Pressure{611.2 * std::exp(22.46 * t / (272.62 + t))};
}

Result<AirWater> water_in_line(const SiteAir& air, std::optional<Ratio> humidity, Pressure gauge, VolumeFlow free_air,
                               Temperature cold_below) {
  if (humidity && !(humidity->v >= 0 && humidity->v <= 1))
    return out_of_range(translatable("humidity"), humidity->v, "0 to 1");
  if (!(gauge.Pa >= 0)) return out_of_range(translatable("pressure"), gauge.Pa, "0 or more");
  if (!(free_air.m3_s >= 0)) return out_of_range(translatable("free air"), free_air.m3_s, "0 or more");
  const Result<Pressure> saturated = saturation_pressure(air.temperature);
  if (!saturated) return tl::unexpected(saturated.error());
  const Pressure over_water = *saturation_over_water(air.temperature);
  AirWater water;
  water.humidity_known = humidity.has_value();
  water.humidity = humidity.value_or(Ratio{1}).v;
  const double absolute = air.ambient.Pa + gauge.Pa;
  const double vapour = std::min(water.humidity * over_water.Pa, 0.99 * air.ambient.Pa);
  const double held = std::min(saturated->Pa, 0.99 * absolute);
  const double drawn = vapour / (air.ambient.Pa - vapour), kept = held / (absolute - held);
  const double dry_kg_s = (air.ambient.Pa - vapour) / (air_gas_constant_J_kg_K * air.temperature.K) * free_air.m3_s;
  water.drawn_in_kg_s = vapour_to_air * drawn * dry_kg_s;
  water.comes_out_kg_s = vapour_to_air * std::max(drawn - kept, 0.0) * dry_kg_s;
  water.parallel_for = drawn > 0 ? std::max(drawn - kept, 0.0) / drawn : 0;
  water.exhaust_ideal = {air.temperature.K * std::pow(air.ambient.Pa / absolute, 0.4 / 1.4)};
  if (water.comes_out_kg_s > 0 && water.exhaust_ideal.K < freezing_K)
    water.icing = air.temperature.K <= cold_below.K ? Icing::likely : Icing::possible;
  return water;
}

}  // namespace burrow

#include "burrow/air/atmosphere.h"
#include "burrow/base/phrase.h"

#include <cmath>

namespace burrow {

Result<Pressure> standard_pressure(Length altitude) {
  if (!(altitude.m >= -5000 && altitude.m <= 11000))
    return out_of_range(translatable("altitude"), altitude.m, "-5000 to 11000 m");
  return Pressure{sea_level_Pa * std::pow(1 - 2.25577e-5 * altitude.m, 5.2559)};
}

Result<SiteAir> site_air(Length altitude, Temperature temperature) {
  const Result<Pressure> ambient = standard_pressure(altitude);
  if (!ambient) return tl::unexpected(ambient.error());
  const double T = temperature.K;
  if (!(T >= 200 && T <= 340)) return out_of_range(translatable("air temperature"), T, "200 to 340 K");
  SiteAir air{*ambient, temperature, ambient->Pa / (air_gas_constant_J_kg_K * T), 0};
  air.viscosity_Pa_s = 1.716e-5 * std::pow(T / 273.15, 1.5) * (273.15 + 110.4) / (T + 110.4);
  return air;
}

}  // namespace burrow

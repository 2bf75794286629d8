#pragma once
/// The air that the compressor draws in.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// Standard air at sea level, by which free air is rated.
inline constexpr double sea_level_Pa = 101325;
inline constexpr double air_gas_constant_J_kg_K = 287.05;

/// Pressure of the standard atmosphere at a height: p = p_0 (1 − 2.25577e-5 h)^5.2559, h in metres.
/// Source: ICAO standard atmosphere, troposphere (restated on a trade page, second-hand).
/// Range: −5000 to 11 000 m.   Errors: out_of_range.   Evidence: Atmosphere.*
Result<Pressure> standard_pressure(Length altitude);

/// Air at the place of work, at the temperature of the day. The line takes on that temperature throughout.
struct SiteAir {
  Pressure ambient;
  Temperature temperature;
  double density_kg_m3 = 0;   ///< of the free air drawn in
  double viscosity_Pa_s = 0;  ///< hardly depends on pressure
  bool operator==(const SiteAir&) const = default;
};

/// Viscosity after Sutherland, μ = 1.716e-5 (T/273.15)^1.5 (273.15 + 110.4)/(T + 110.4) (from memory).
/// Range: altitude as above, 200 to 340 K.   Errors: out_of_range, `place` "altitude" or "air temperature".
/// Evidence: Atmosphere.*
Result<SiteAir> site_air(Length altitude, Temperature temperature);

}  // namespace burrow

#pragma once
/// The ranges a number of the file must lie in: what could stand on a site, with room to spare, so that no entry that
/// somebody measured is refused and no arithmetic meets a number it cannot carry. A range is written so that NaN fails
/// it. Values of the fields of the workbench lie within these.
/// Source: our default; the reason stands beside each.   Evidence: Refusals.Ranges_*, AnyNumber.*

#include <string_view>

#include "burrow/base/quantity.h"

namespace burrow {

struct Range {
  double low = 0;
  double high = 0;
  bool above_low = false;  ///< `low` itself does not belong to it
  std::string_view words;

  [[nodiscard]] constexpr bool contains(double value) const {
    return (above_low ? value > low : value >= low) && value <= high;
  }
};

namespace range {
// Place. A site lies within 100 km of its own zero; the highest ground is 8.8 km up, the deepest pit 4 km down.
inline constexpr Range station{-1e5, 1e5, false, "a station from -100000 to 100000 m"};
inline constexpr Range offset{-1e5, 1e5, false, "an offset from -100000 to 100000 m"};
inline constexpr Range elevation{-1e4, 1e4, false, "an elevation from -10000 to 10000 m"};
inline constexpr Range rise{-1e4, 1e4, false, "a rise from -10000 to 10000 m"};
inline constexpr Range foreign{-1e9, 1e9, false,
                               "a coordinate from -1e9 to 1e9 m"};  // zone prefixes stand before 1e7 m

// Direction.
inline constexpr Range grade{-1, 1, false, "a grade from -1 to 1 (rise over run)"};
inline constexpr Range heading{-pi / 2, pi / 2, false, "a heading from -pi/2 to pi/2 rad"};
inline constexpr Range angle{-pi / 2, pi / 2, false, "an angle from -pi/2 to pi/2 rad"};
inline constexpr Range turn{-2 * pi, 2 * pi, false, "an angle from -2 pi to 2 pi rad"};
inline constexpr Range slope_angle{0, pi / 2, false, "an angle from 0 to pi/2 rad"};
inline constexpr Range run_per_rise{0, 1e4, false, "a run from 0 to 10000 for each unit of rise"};  // flatter is level

// Size. Nothing on a crossing is longer than the site; the thinnest cable is some millimetres across, the widest
// culvert 5 m; a wall of a hundredth of a millimetre is foil.
inline constexpr Range size{0, 1e5, false, "a size from 0 to 100000 m"};
inline constexpr Range diameter{0.001, 5, false, "a diameter from 0.001 to 5 m"};
inline constexpr Range wall{1e-5, 2.5, false, "a wall from 0.00001 to 2.5 m"};
inline constexpr Range roughness{0, 1, false, "a roughness from 0 to 1 m"};
inline constexpr Range tool_length{0.01, 100, false, "a length from 0.01 to 100 m"};
inline constexpr Range stroke{0.001, 100, false, "a stroke from 0.001 to 100 m"};
inline constexpr Range sight_base{0.001, 1e5, false, "a length from 0.001 to 100000 m"};
inline constexpr Range wall_ratio{2, 1e4, true, "a ratio above 2 and up to 10000"};  // at 2 the bore is gone

// Uncertainty. Twice round is no direction at all.
inline constexpr Range sd{0, 1e5, false, "a standard deviation from 0 to 100000 m"};
inline constexpr Range angle_sd{0, 2 * pi, false, "a standard deviation from 0 to 2 pi rad"};

// Ground. Snow weighs 1 kN/m³, iron ore 40; the strongest rock bears 0.5 GPa, diamond has a shear modulus of 0.5 TPa;
// less than 1 Pa is a liquid.
inline constexpr Range unit_weight{100, 1e5, false, "a unit weight from 100 to 100000 N/m3"};
inline constexpr Range strength{1, 1e9, false, "a strength from 1 to 1e9 Pa"};
inline constexpr Range cohesion{0, 1e9, false, "a cohesion from 0 to 1e9 Pa"};
inline constexpr Range modulus{100, 1e12, false, "a modulus from 100 to 1e12 Pa"};
inline constexpr Range poisson{0, 0.5, false, "a Poisson ratio from 0 to 0.5"};
inline constexpr Range earth_pressure{0, 100, false, "a ratio from 0 to 100"};  // passive in the densest sand: some 30
inline constexpr Range adhesion{0, 10, false, "a ratio from 0 to 10"};
inline constexpr Range swell{0, 10, false, "a swell from 0 to 10 of the volume"};  // rock: below 1
inline constexpr Range wander{0, 10, false, "a wander from 0 to 10 rad over the root of a metre"};
inline constexpr Range rate_by_length{0, 100, false, "a rate from 0 to 100 in a metre"};
inline constexpr Range rate_by_area{0, 1e3, false, "a rate from 0 to 1000 in a square metre"};

// Machines. The heaviest piercing tool weighs some tonnes; compressors give a few MPa and some m³/s; the heaviest crane
// 100 MN.
inline constexpr Range mass{0.001, 1e5, false, "a mass from 0.001 to 100000 kg"};
inline constexpr Range blow_rate{0.001, 1e3, false, "a blow rate from 0.001 to 1000 Hz"};
inline constexpr Range tool_pressure{1e3, 1e8, false, "a pressure from 1000 to 1e8 Pa"};
inline constexpr Range pressure{0, 1e9, false, "a pressure from 0 to 1e9 Pa"};
inline constexpr Range flow{0, 100, false, "a flow from 0 to 100 m3/s"};
inline constexpr Range volume{0, 1e3, false, "a volume from 0 to 1000 m3"};
inline constexpr Range force{0, 1e9, false, "a force from 0 to 1e9 N"};
inline constexpr Range dynamic_factor{0, 100, false, "a factor from 0 to 100"};
inline constexpr Range temperature{100, 1e3, false, "a temperature from 100 to 1000 K"};

// Time. A pit may stay open for years, 1e9 s are thirty.
inline constexpr Range time{0, 1e9, false, "a time from 0 to 1e9 s"};
inline constexpr Range positive_time{0.01, 1e10, false, "a time from 0.01 to 1e10 s"};  // a pipe lies a hundred years

// Model of this program: c is 0.04, the field factor 0.3.
inline constexpr Range steer{0, 10, false, "a constant from 0 to 10"};
inline constexpr Range field_factor{0.001, 100, false, "a factor from 0.001 to 100"};

inline constexpr Range share{0, 1, false, "a share from 0 to 1"};
inline constexpr Range positive{0, 1e12, true, "a number above 0 and up to 1e12"};
inline constexpr Range logarithm{-100, 100, false, "a logarithm from -100 to 100"};
inline constexpr Range of_a_finding{-1e15, 1e15, false, "a number from -1e15 to 1e15"};  // any unit
inline constexpr Range sheet_scale{0.001, 1e6, false, "a scale from 0.001 to 1000000"};
inline constexpr Range exaggeration{0.001, 1e3, false, "a factor from 0.001 to 1000"};

// Numbers of things.
inline constexpr Range count{0, 9e15, false, "a whole number, 0 or more"};
inline constexpr Range pieces{0, 1e4, false, "a whole number from 0 to 10000"};
inline constexpr Range pipes{1, 1e3, false, "a whole number from 1 to 1000"};
inline constexpr Range bores{0, 1e6, false, "a whole number, 0 or more, up to 1000000"};
inline constexpr Range trials{0, 1e6, false, "a whole number of trials from 0 to 1000000"};
inline constexpr Range whole{-1e19, 1e19, false, "a whole number"};

/// Where no number is meant; a number without a range of its own lies in it all the same.
inline constexpr Range any{-1e15, 1e15, false, "a number from -1e15 to 1e15"};

/// Typed limits by the unit of their row: as the things they limit; 0 is a limit.
inline constexpr Range limit_length{0, 1e5, false, "a limit from 0 to 100000 m, 0 or more"};
inline constexpr Range limit_gap{-1e5, 1e5, false, "a limit from -100000 to 100000 m"};
inline constexpr Range limit_speed{0, 1e3, false, "a limit from 0 to 1000 m/s, 0 or more"};
inline constexpr Range limit_pressure{0, 1e9, false, "a limit from 0 to 1e9 Pa, 0 or more"};
inline constexpr Range limit_temperature{0, 1e3, false, "a limit from 0 to 1000 K, 0 or more"};
inline constexpr Range limit_volume{0, 1e6, false, "a limit from 0 to 1000000 m3, 0 or more"};
inline constexpr Range limit_number{0, 1e6, false, "a limit from 0 to 1000000, 0 or more"};

constexpr const Range& limit_in(std::string_view unit) {
  if (unit == "m") return limit_length;
  if (unit == "m/s") return limit_speed;
  if (unit == "Pa") return limit_pressure;
  if (unit == "K") return limit_temperature;
  return unit == "m3" ? limit_volume : limit_number;
}
}  // namespace range

/// Lines of levels. A drop that stands upright is entered as two stations a millimetre apart, as the workbench does; a
/// cliff of 10 m over it is a slope of 10000.
inline constexpr double least_station_step_m = 1e-3 * (1 - 1e-6);
inline constexpr double steepest_level_line = 1e4 * (1 + 1e-6);

}  // namespace burrow

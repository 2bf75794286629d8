#pragma once
/// The one formatter and parser of quantities. Asks no locale; the decimal mark is that of `decimal_mark.h`, and a
/// comma typed is understood with either.

#include <string>
#include <string_view>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

enum class UnitSystem { metric, us };
template <>
struct EnumNames<UnitSystem> {
  static constexpr std::pair<UnitSystem, std::string_view> list[] = {{UnitSystem::metric, "metric"},
                                                                     {UnitSystem::us, "us"}};
};

/// What a number measures: decides the unit shown, the digits, and how typed text is read.
enum class Dimension {
  length,        ///< m · ft and in ("3.42 m" · "11 ft 2.6 in"); distances and depths
  station,       ///< m · decimal ft ("12.30 m" · "40.35 ft"); stations, offsets and elevations
  small_length,  ///< mm · in; diameters, heave, spreads
  grade,         ///< % ; also typed in degrees, ratio "1:50", "mm/m", "in/ft"
  angle,         ///< degrees; also typed in rad, mrad
  pressure,      ///< kPa · psi
  big_pressure,  ///< MPa · ksi
  air_pressure,  ///< bar · psi
  unit_weight,   ///< kN/m³ · lb/ft³
  force,         ///< kN · lbf
  mass,          ///< kg · lb
  duration,      ///< "1 h 12 min", "8 min", "35 s"
  volume,        ///< m³ · yd³
  small_volume,  ///< mL · fl oz (US)
  flow,          ///< m³/min · ft³/min
  small_flow,    ///< mL/h · fl oz/h
  temperature,   ///< °C · °F; SI is K, which is read too
  blow_rate,     ///< "480 /min", blows per minute; SI is Hz, which is read too
  chance,        ///< % ; "0.03 %", "< 0.01 %"
  ratio,         ///< plain
  count
};

/// Text with its unit: format(0.31, Dimension::length, metric) = "0.31 m". `value` is SI. Not a number gives "–";
/// the sign is a true minus ("−0.31 m"), and nothing that shows as zero has one. Never a thousands separator.
/// Evidence: Format.*
std::string format(double value, Dimension dimension, UnitSystem units);
inline std::string format(Length v, UnitSystem u, Dimension d = Dimension::length) {
  return format(v.m, d, u);
}

/// The unit a bare typed number is taken in: "m", "ft", "mm", "in", "%", "°".
std::string_view unit_name(Dimension dimension, UnitSystem units);

/// SI value of what a person typed: "1.37 m", "4' 6\"", "4 ft 6 in", "4-6 1/2\"", "2 %", "1.15 deg", "1:50", "450mm",
/// "65 psi", "480 /min", "SDR 11", "DN 63", a sum "1.2 + 0.35", a bare number in the unit shown (a diameter with a
/// fraction: inches). Accepts "," as decimal mark where it cannot part thousands, or where people write it so. A tight
/// hyphen after feet is no difference ("4'-6\""); what could be either is refused. Errors: empty, no number, unknown
/// unit, wrong dimension, NaN or infinite; `expected` gives an example. Evidence: Parse.*, RoundTrip.*
Result<double> parse(std::string_view text, Dimension dimension, UnitSystem units);

/// Shortest text that reads back as the same double, locale-free: for files, never for people.
std::string exact_text(double value);

}  // namespace burrow

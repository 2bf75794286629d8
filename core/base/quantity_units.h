#pragma once
/// The units a person may write, and the one shown for each dimension. Private to the formatter and the parser.

#include <span>
#include <string_view>

#include "burrow/base/quantity_text.h"

namespace burrow::quantity_units {

inline constexpr double inch_m = 0.0254;
inline constexpr double foot_m = 0.3048;
inline constexpr double us_survey_foot_m = 1200.0 / 3937.0;
inline constexpr double yard_m = 0.9144;
inline constexpr double foot3_m3 = foot_m * foot_m * foot_m;
inline constexpr double yard3_m3 = yard_m * yard_m * yard_m;
inline constexpr double fluid_ounce_m3 = 2.95735295625e-5;  ///< US
inline constexpr double pound_kg = 0.45359237;
inline constexpr double pound_N = pound_kg * gravity_m_s2;
inline constexpr double pound_ft3_N_m3 = pound_N / foot3_m3;
inline constexpr double psi_Pa = pound_N / (inch_m * inch_m);
inline constexpr double degree_rad = pi / 180;

struct UnitShown {
  std::string_view unit;
  double factor = 1;  ///< SI value of one unit
  double zero = 0;    ///< added before: SI = (number + zero) · factor; of a temperature alone
};
UnitShown shown(Dimension dimension, UnitSystem units);

enum class Group {
  length,
  percent,
  slope,
  turn,
  pressure,
  unit_weight,
  force,
  mass,
  time,
  volume,
  flow,
  frequency,
  temperature
};

struct Unit {
  std::string_view name;  ///< lower case
  Group group = Group::length;
  double factor = 1;  ///< SI value of one unit
  double zero = 0;    ///< as in `UnitShown`
};
std::span<const Unit> known_units();

/// "a length", "a pressure": what a group or a dimension is called.
struct Noun {
  const char* name;  ///< "length"
  const char* one;   ///< "a length"
};
Noun noun(Group group);
Noun noun(Dimension dimension);
bool accepts(Dimension dimension, Group group);
/// Something that may be typed: "1.37 m".
std::string_view example(Dimension dimension, UnitSystem units);

}  // namespace burrow::quantity_units

#include "quantity_units.h"

#include "burrow/base/phrase.h"

namespace burrow::quantity_units {

namespace {
constexpr Unit units[] = {
    {"mm", Group::length, 1e-3},
    {"cm", Group::length, 1e-2},
    {"dm", Group::length, 1e-1},
    {"m", Group::length, 1},
    {"km", Group::length, 1e3},
    {"in", Group::length, inch_m},
    {"inch", Group::length, inch_m},
    {"inches", Group::length, inch_m},
    {"\"", Group::length, inch_m},
    {"ft", Group::length, foot_m},
    {"foot", Group::length, foot_m},
    {"feet", Group::length, foot_m},
    {"'", Group::length, foot_m},
    {"us-ft", Group::length, us_survey_foot_m},
    {"yd", Group::length, yard_m},
    {"%", Group::percent, 1e-2},
    {"percent", Group::percent, 1e-2},
    {"‰", Group::percent, 1e-3},
    {"mm/m", Group::slope, 1e-3},
    {"cm/m", Group::slope, 1e-2},
    {"m/m", Group::slope, 1},
    {"in/ft", Group::slope, inch_m / foot_m},
    {"\"/ft", Group::slope, inch_m / foot_m},
    {"\"/'", Group::slope, inch_m / foot_m},
    {"ft/ft", Group::slope, 1},
    {"°", Group::turn, degree_rad},
    {"deg", Group::turn, degree_rad},
    {"degree", Group::turn, degree_rad},
    {"degrees", Group::turn, degree_rad},
    {"rad", Group::turn, 1},
    {"mrad", Group::turn, 1e-3},
    {"pa", Group::pressure, 1},
    {"n/m2", Group::pressure, 1},
    {"kpa", Group::pressure, 1e3},
    {"kn/m2", Group::pressure, 1e3},
    {"mpa", Group::pressure, 1e6},
    {"n/mm2", Group::pressure, 1e6},
    {"mn/m2", Group::pressure, 1e6},
    {"gpa", Group::pressure, 1e9},
    {"mbar", Group::pressure, 1e2},
    {"bar", Group::pressure, 1e5},
    {"psi", Group::pressure, psi_Pa},
    {"ksi", Group::pressure, 1e3 * psi_Pa},
    {"psf", Group::pressure, pound_N / (foot_m * foot_m)},
    {"tsf", Group::pressure, 2000 * pound_N / (foot_m * foot_m)},
    {"n/m3", Group::unit_weight, 1},
    {"kn/m3", Group::unit_weight, 1e3},
    {"lb/ft3", Group::unit_weight, pound_ft3_N_m3},
    {"lbf/ft3", Group::unit_weight, pound_ft3_N_m3},
    {"pcf", Group::unit_weight, pound_ft3_N_m3},
    {"n", Group::force, 1},
    {"kn", Group::force, 1e3},
    {"mn", Group::force, 1e6},
    {"lbf", Group::force, pound_N},
    {"lb", Group::force, pound_N},
    {"kip", Group::force, 1e3 * pound_N},
    {"kgf", Group::force, gravity_m_s2},
    {"g", Group::mass, 1e-3},
    {"kg", Group::mass, 1},
    {"t", Group::mass, 1e3},
    {"lb", Group::mass, pound_kg},
    {"lbs", Group::mass, pound_kg},
    {"s", Group::time, 1},
    {"sec", Group::time, 1},
    {"second", Group::time, 1},
    {"seconds", Group::time, 1},
    {"min", Group::time, 60},
    {"minute", Group::time, 60},
    {"minutes", Group::time, 60},
    {"h", Group::time, 3600},
    {"hr", Group::time, 3600},
    {"hrs", Group::time, 3600},
    {"hour", Group::time, 3600},
    {"hours", Group::time, 3600},
    {"m3", Group::volume, 1},
    {"l", Group::volume, 1e-3},
    {"ml", Group::volume, 1e-6},
    {"cm3", Group::volume, 1e-6},
    {"ft3", Group::volume, foot3_m3},
    {"yd3", Group::volume, yard3_m3},
    {"cy", Group::volume, yard3_m3},
    {"m3/min", Group::flow, 1.0 / 60},
    {"m3/s", Group::flow, 1},
    {"m3/h", Group::flow, 1.0 / 3600},
    {"l/s", Group::flow, 1e-3},
    {"l/min", Group::flow, 1e-3 / 60},
    {"ft3/min", Group::flow, foot3_m3 / 60},
    {"cfm", Group::flow, foot3_m3 / 60},
    {"scfm", Group::flow, foot3_m3 / 60},
    {"/min", Group::frequency, 1.0 / 60},
    {"1/min", Group::frequency, 1.0 / 60},
    {"per min", Group::frequency, 1.0 / 60},
    {"per minute", Group::frequency, 1.0 / 60},
    {"blows/min", Group::frequency, 1.0 / 60},
    {"blows per minute", Group::frequency, 1.0 / 60},
    {"/s", Group::frequency, 1},
    {"1/s", Group::frequency, 1},
    {"hz", Group::frequency, 1},
    {"fl oz", Group::volume, fluid_ounce_m3},
    {"floz", Group::volume, fluid_ounce_m3},
    {"ml/h", Group::flow, 1e-6 / 3600},
    {"l/h", Group::flow, 1e-3 / 3600},
    {"fl oz/h", Group::flow, fluid_ounce_m3 / 3600},
    {"floz/h", Group::flow, fluid_ounce_m3 / 3600},
    {"°c", Group::temperature, 1, 273.15},
    {"c", Group::temperature, 1, 273.15},
    {"°f", Group::temperature, 1 / 1.8, 459.67},
    {"f", Group::temperature, 1 / 1.8, 459.67},
    {"k", Group::temperature, 1},
};
}  // namespace

std::span<const Unit> known_units() {
  return units;
}

Noun noun(Group group) {
  switch (group) {
    case Group::length:
      return {translatable("length"), translatable("a length")};
    case Group::percent:
      return {translatable("share"), translatable("a share")};
    case Group::slope:
      return {translatable("grade"), translatable("a grade")};
    case Group::turn:
      return {translatable("angle"), translatable("an angle")};
    case Group::pressure:
      return {translatable("pressure"), translatable("a pressure")};
    case Group::unit_weight:
      return {translatable("unit weight"), translatable("a unit weight")};
    case Group::force:
      return {translatable("force"), translatable("a force")};
    case Group::mass:
      return {translatable("mass"), translatable("a mass")};
    case Group::time:
      return {translatable("time"), translatable("a time")};
    case Group::volume:
      return {translatable("volume"), translatable("a volume")};
    case Group::flow:
      return {translatable("flow"), translatable("a flow")};
    case Group::frequency:
      return {translatable("blow rate"), translatable("a blow rate")};
    case Group::temperature:
      return {translatable("temperature"), translatable("a temperature")};
  }
  return {translatable("number"), translatable("a number")};
}

Noun noun(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
    case Dimension::station:
    case Dimension::small_length:
      return {translatable("length"), translatable("a length")};
    case Dimension::grade:
      return {translatable("grade"), translatable("a grade")};
    case Dimension::angle:
      return {translatable("angle"), translatable("an angle")};
    case Dimension::pressure:
    case Dimension::big_pressure:
    case Dimension::air_pressure:
      return {translatable("pressure"), translatable("a pressure")};
    case Dimension::unit_weight:
      return {translatable("unit weight"), translatable("a unit weight")};
    case Dimension::force:
      return {translatable("force"), translatable("a force")};
    case Dimension::mass:
      return {translatable("mass"), translatable("a mass")};
    case Dimension::duration:
      return {translatable("time"), translatable("a time")};
    case Dimension::volume:
    case Dimension::small_volume:
      return {translatable("volume"), translatable("a volume")};
    case Dimension::flow:
    case Dimension::small_flow:
      return {translatable("flow"), translatable("a flow")};
    case Dimension::temperature:
      return {translatable("temperature"), translatable("a temperature")};
    case Dimension::blow_rate:
      return {translatable("blow rate"), translatable("a blow rate")};
    case Dimension::chance:
      return {translatable("chance"), translatable("a chance")};
    case Dimension::ratio:
      return {translatable("number"), translatable("a number")};
    case Dimension::count:
      return {translatable("whole number"), translatable("a whole number")};
  }
  return {translatable("number"), translatable("a number")};
}

bool accepts(Dimension dimension, Group group) {
  switch (dimension) {
    case Dimension::length:
    case Dimension::station:
    case Dimension::small_length:
      return group == Group::length;
    case Dimension::grade:
    case Dimension::angle:
      return group == Group::percent || group == Group::slope || group == Group::turn;
    case Dimension::pressure:
    case Dimension::big_pressure:
    case Dimension::air_pressure:
      return group == Group::pressure;
    case Dimension::unit_weight:
      return group == Group::unit_weight;
    case Dimension::force:
      return group == Group::force;
    case Dimension::mass:
      return group == Group::mass;
    case Dimension::duration:
      return group == Group::time;
    case Dimension::volume:
    case Dimension::small_volume:
      return group == Group::volume;
    case Dimension::flow:
    case Dimension::small_flow:
      return group == Group::flow;
    case Dimension::temperature:
      return group == Group::temperature;
    case Dimension::blow_rate:
      return group == Group::frequency;
    case Dimension::chance:
    case Dimension::ratio:
      return group == Group::percent;
    case Dimension::count:
      return false;
  }
  return false;
}

std::string_view example(Dimension dimension, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  switch (dimension) {
    case Dimension::length:
      return us ? "4' 6\"" : "1.37 m";
    case Dimension::station:
      return us ? "40.35 ft" : "12.30 m";
    case Dimension::small_length:
      return us ? "2.5 in" : "63 mm";
    case Dimension::grade:
      return us ? "0.25 in/ft" : "2 %";
    case Dimension::angle:
      return "1.15°";
    case Dimension::pressure:
      return us ? "6.5 psi" : "45 kPa";
    case Dimension::big_pressure:
      return us ? "1.2 ksi" : "8 MPa";
    case Dimension::air_pressure:
      return us ? "100 psi" : "6.9 bar";
    case Dimension::unit_weight:
      return us ? "115 lb/ft3" : "18 kN/m3";
    case Dimension::force:
      return us ? "900 lbf" : "4 kN";
    case Dimension::mass:
      return us ? "40 lb" : "18 kg";
    case Dimension::duration:
      return "1 h 12 min";
    case Dimension::volume:
      return us ? "3.5 yd3" : "2.7 m3";
    case Dimension::flow:
      return us ? "90 ft3/min" : "2.5 m3/min";
    case Dimension::small_volume:
      return us ? "4 fl oz" : "120 mL";
    case Dimension::small_flow:
      return us ? "0.5 fl oz/h" : "15 mL/h";
    case Dimension::temperature:
      return us ? "59 °F" : "15 °C";
    case Dimension::blow_rate:
      return "480 /min";
    case Dimension::chance:
      return "0.1 %";
    case Dimension::ratio:
      return "0.25";
    case Dimension::count:
      return "2";
  }
  return "1";
}

}  // namespace burrow::quantity_units

#include "burrow/base/quantity_text.h"
#include "burrow/base/quantity_apart.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <charconv>
#include <cmath>

#include "burrow/base/decimal_mark.h"
#include "burrow/base/display_precision.h"
#include "quantity_units.h"

namespace burrow {

namespace quantity_units {

UnitShown shown(Dimension dimension, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  switch (dimension) {
    case Dimension::length:
    case Dimension::station:
      return us ? UnitShown{"ft", foot_m} : UnitShown{"m", 1};
    case Dimension::small_length:
      return us ? UnitShown{"in", inch_m} : UnitShown{"mm", 1e-3};
    case Dimension::grade:
    case Dimension::chance:
      return {"%", 1e-2};
    case Dimension::angle:
      return {"°", degree_rad};
    case Dimension::pressure:
      return us ? UnitShown{"psi", psi_Pa} : UnitShown{"kPa", 1e3};
    case Dimension::big_pressure:
      return us ? UnitShown{"ksi", 1e3 * psi_Pa} : UnitShown{"MPa", 1e6};
    case Dimension::air_pressure:
      return us ? UnitShown{"psi", psi_Pa} : UnitShown{"bar", 1e5};
    case Dimension::unit_weight:
      return us ? UnitShown{"lb/ft³", pound_ft3_N_m3} : UnitShown{"kN/m³", 1e3};
    case Dimension::force:
      return us ? UnitShown{"lbf", pound_N} : UnitShown{"kN", 1e3};
    case Dimension::mass:
      return us ? UnitShown{"lb", pound_kg} : UnitShown{"kg", 1};
    case Dimension::duration:
      return {"min", 60};
    case Dimension::volume:
      return us ? UnitShown{"yd³", yard3_m3} : UnitShown{"m³", 1};
    case Dimension::flow:
      return us ? UnitShown{"ft³/min", foot3_m3 / 60} : UnitShown{"m³/min", 1.0 / 60};
    case Dimension::small_volume:
      return us ? UnitShown{"fl oz", fluid_ounce_m3} : UnitShown{"mL", 1e-6};
    case Dimension::small_flow:
      return us ? UnitShown{"fl oz/h", fluid_ounce_m3 / 3600} : UnitShown{"mL/h", 1e-6 / 3600};
    case Dimension::temperature:
      return us ? UnitShown{"°F", 1 / 1.8, 459.67} : UnitShown{"°C", 1, 273.15};
    case Dimension::blow_rate:
      return {"/min", 1.0 / 60};
    case Dimension::ratio:
    case Dimension::count:
      return {"", 1};
  }
  return {"", 1};
}

}  // namespace quantity_units

namespace {

using quantity_units::shown;

constexpr std::string_view minus = "−";
constexpr std::string_view unknown = "–";
constexpr double beyond_plain_digits = 1e12;  ///< from here on "1.5e+12", so that no number fills the screen

std::atomic<DisplayPrecision> fineness = DisplayPrecision::usual;
std::atomic<DecimalMark> mark = DecimalMark::point;

/// The first point of a number just written, as people write it.
std::string as_written(std::string digits) {
  if (mark.load() == DecimalMark::point) return digits;
  if (const std::size_t point = digits.find('.'); point != std::string::npos) digits[point] = ',';
  return digits;
}

thread_local int further = 0;  ///< digits, within one call of `format_apart`

/// One digit more where it is fine.
int more() {
  return (fineness.load() == DisplayPrecision::fine ? 1 : 0) + further;
}

/// Digits behind the mark for a magnitude already in the unit shown.
int decimals(double magnitude, Dimension dimension, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  switch (dimension) {
    case Dimension::length:
    case Dimension::station:
    case Dimension::grade:
    case Dimension::angle:
      return 2 + more();
    case Dimension::small_length:
      return (us ? 2 : 1) + more();
    case Dimension::pressure:
      return magnitude < 100 ? 1 : 0;
    case Dimension::big_pressure:
      return us || magnitude < 10 ? 2 : 1;
    case Dimension::air_pressure:
      return us ? 0 : 1;
    case Dimension::unit_weight:
      return 1;
    case Dimension::force:
      return us ? 0 : (magnitude < 10 ? 2 : 1);
    case Dimension::mass:
      return magnitude < 100 ? 1 : 0;
    case Dimension::volume:
      return magnitude < 10 ? 2 : 1;
    case Dimension::flow:
      return us ? (magnitude < 10 ? 1 : 0) : 2;
    case Dimension::small_volume:
    case Dimension::small_flow:
      return us ? 2 : (magnitude < 10 ? 1 : 0);
    case Dimension::temperature:
      return 1;
    case Dimension::chance:
      return magnitude < 1 ? 2 : 1;
    case Dimension::ratio:
      return std::clamp(3 - static_cast<int>(std::floor(std::log10(magnitude))), 0, 8);
    case Dimension::blow_rate:
    case Dimension::count:
    case Dimension::duration:
      return 0;
  }
  return 2;
}

std::string without_trailing_zeros(std::string digits) {
  if (digits.find('.') == std::string::npos) return digits;
  digits.erase(digits.find_last_not_of('0') + 1);
  if (digits.back() == '.') digits.pop_back();
  return digits;
}

std::string fixed(double magnitude, int digits) {
  if (magnitude >= beyond_plain_digits) return fmt::format("{:.6g}", magnitude);
  return fmt::format("{:.{}f}", magnitude, digits);
}

std::string feet_and_inches(double magnitude_m) {
  const int digits = 1 + more();
  const double parts_of_inch = std::pow(10, digits);
  const double parts = std::round(magnitude_m / quantity_units::inch_m * parts_of_inch);
  const double feet = std::floor(parts / (12 * parts_of_inch));
  const double inches = (parts - 12 * parts_of_inch * feet) / parts_of_inch;
  return feet > 0 ? fmt::format("{:.0f} ft {:.{}f} in", feet, inches, digits)
                  : fmt::format("{:.{}f} in", inches, digits);
}

std::string hours_minutes_seconds(double magnitude_s) {
  const double seconds = std::round(magnitude_s);
  if (seconds < 60) return fmt::format("{:.0f} s", seconds);
  if (seconds < 600 && std::fmod(seconds, 60) != 0)
    return fmt::format("{:.0f} min {:.0f} s", std::floor(seconds / 60), std::fmod(seconds, 60));
  const double minutes = std::round(magnitude_s / 60);
  if (minutes < 60) return fmt::format("{:.0f} min", minutes);
  return std::fmod(minutes, 60) == 0
             ? fmt::format("{:.0f} h", minutes / 60)
             : fmt::format("{:.0f} h {:.0f} min", std::floor(minutes / 60), std::fmod(minutes, 60));
}

/// A chance that is neither none nor certain never reads as if it were.
std::string percent_of_chance(double chance) {
  if (chance == 0) return "0 %";
  if (chance == 1) return "100 %";
  if (chance < 0.00005) return "< 0.01 %";
  if (chance > 0.9995 && chance < 1) return "> 99.9 %";
  return fixed(chance * 100, decimals(chance * 100, Dimension::chance, UnitSystem::metric)) + " %";
}

std::string magnitude_text(double magnitude, Dimension dimension, UnitSystem units) {
  const auto [unit, factor, zero] = shown(dimension, units);
  const double number = magnitude / factor - zero;
  if (!(number < beyond_plain_digits)) return fmt::format("{:.6g}{}{}", number, unit.empty() ? "" : " ", unit);
  if (dimension == Dimension::duration) return hours_minutes_seconds(magnitude);
  if (dimension == Dimension::chance) return percent_of_chance(magnitude);
  if (dimension == Dimension::length && units == UnitSystem::us) return feet_and_inches(magnitude);
  if (number == 0 && dimension == Dimension::ratio) return "0";
  std::string digits = fixed(number, decimals(number, dimension, units));
  const bool plain =
      dimension == Dimension::ratio || (dimension == Dimension::small_length && units == UnitSystem::metric);
  if (plain) digits = without_trailing_zeros(std::move(digits));
  if (unit.empty() || dimension == Dimension::angle) return digits + std::string(unit);
  return digits + " " + std::string(unit);
}

/// Whether a text shows anything but zeros; its unit may hold no digit 1 to 9 ("m³" is not ASCII).
bool shows_something(std::string_view text) {
  return text.find_first_of("123456789") != std::string_view::npos;
}

/// The one quantity whose zero is not that of SI.
std::string degrees(double kelvin, UnitSystem units) {
  const auto [unit, factor, zero] = shown(Dimension::temperature, units);
  const double number = kelvin / factor - zero;
  if (!std::isfinite(number)) return std::string(unknown);
  const std::string digits =
      without_trailing_zeros(fixed(std::abs(number), decimals(std::abs(number), Dimension::temperature, units)));
  return std::string(number < 0 && shows_something(digits) ? minus : "") + digits + " " + std::string(unit);
}

}  // namespace

void set_display_precision(DisplayPrecision wanted) {
  fineness = wanted;
}

DisplayPrecision shown_fineness() {
  return fineness;
}

void set_decimal_mark(DecimalMark wanted) {
  mark = wanted;
}

DecimalMark decimal_mark() {
  return mark;
}

std::string fixed_text(double value, int decimals) {
  return std::isfinite(value) ? as_written(fmt::format("{:.{}f}", value, decimals)) : std::string(unknown);
}

std::string significant_text(double value, int digits) {
  return std::isfinite(value) ? as_written(fmt::format("{:.{}g}", value, digits)) : std::string(unknown);
}

std::string format(double value, Dimension dimension, UnitSystem units) {
  if (dimension == Dimension::temperature) return as_written(degrees(value, units));
  if (!std::isfinite(value) || !std::isfinite(value / shown(dimension, units).factor)) return std::string(unknown);
  std::string text = as_written(magnitude_text(std::abs(value), dimension, units));
  return value < 0 && shows_something(text) ? std::string(minus) + text : text;
}

std::string format_apart(double value, double other, Dimension dimension, UnitSystem units) {
  constexpr int most_further = 3;
  std::string usual = format(value, dimension, units);
  if (value == other || usual != format(other, dimension, units)) return usual;
  std::string finer;
  for (further = 1; further <= most_further; ++further) {
    finer = format(value, dimension, units);
    if (finer != format(other, dimension, units)) break;
  }
  const bool apart = further <= most_further;
  further = 0;
  return apart ? finer : usual;
}

std::string_view unit_name(Dimension dimension, UnitSystem units) {
  return shown(dimension, units).unit;
}

std::string exact_text(double value) {
  std::array<char, 32> room{};
  const auto [end, code] = std::to_chars(room.data(), room.data() + room.size(), value);
  return {room.data(), end};
}

}  // namespace burrow

#include "burrow/words/pipe_text.h"
#include "burrow/base/decimal_mark.h"
#include "burrow/language/say.h"

#include <fmt/format.h>

#include <cmath>

namespace burrow {

namespace {

std::string number_text(const PipeCheck& check, double value, UnitSystem units) {
  const double size = std::max(std::abs(check.value.value_or(0)), std::abs(check.limit.value_or(0)));
  if (check.unit == "Pa") return format(value, size < 1e6 ? Dimension::pressure : Dimension::big_pressure, units);
  if (check.unit == "N") return format(value, Dimension::force, units);
  constexpr double far_m = 100;  // a radius: nobody wants its inches
  if (check.unit == "m" && value >= far_m)
    return units == UnitSystem::us ? say("{:.0f} ft", value / 0.3048) : fmt::format("{:.0f} m", value);
  if (check.unit == "m") return format(value, size < 0.5 ? Dimension::small_length : Dimension::length, units);
  const bool share = check.code.starts_with("pipe.deflection") || check.code == "pipe.strain";
  return share ? fixed_text(value * 100, 2) + " %" : fixed_text(value, 2);
}

}  // namespace

std::string value_text(const PipeCheck& check, UnitSystem units) {
  return check.value ? number_text(check, *check.value, units) : std::string();
}

std::string limit_text(const PipeCheck& check, UnitSystem units) {
  if (!check.value || !check.limit) return {};
  const std::string limit = number_text(check, *check.limit, units);
  return check.at_least ? say("{} at least", limit) : say("{} at most", limit);
}

std::string utilisation_text(const PipeCheck& check) {
  if (!check.utilisation) return {};
  const double percent = *check.utilisation * 100;
  if (percent > 999) return "> 999 %";
  return percent < 0.5 ? std::string("< 1 %") : fmt::format("{:.0f} %", percent);
}

}  // namespace burrow

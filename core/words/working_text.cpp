#include "burrow/words/working_text.h"
#include "burrow/base/decimal_mark.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace burrow {

namespace {
constexpr double cubic_foot_m3 = 0.3048 * 0.3048 * 0.3048;
constexpr double cubic_yard_m3 = 27 * cubic_foot_m3;
constexpr double pound_N = 4.4482216152605;
constexpr double pound_per_cubic_foot_N_m3 = pound_N / cubic_foot_m3;

/// Four digits; a number of five to seven before the point in full, as people read it.
std::string with_unit(std::string_view unit, double value) {
  const bool plain = std::abs(value) >= 1e4 && std::abs(value) < 1e7;
  return (plain ? fmt::format("{:.0f}", value) : significant_text(value, 4)) + std::string(unit);
}
}  // namespace

std::string working_number(double value, std::string_view unit, UnitSystem units, std::string_view symbol) {
  const bool us = units == UnitSystem::us;
  if (unit.empty() && symbol.starts_with('P')) return format(value, Dimension::chance, units);
  if (unit == "m") return us ? with_unit(" ft", value / 0.3048) : with_unit(" m", value);
  constexpr double stiff_Pa = 1e7;  // moduli
  if (unit == "Pa" && std::abs(value) >= stiff_Pa)
    return us ? with_unit(" ksi", value / 6894757.293168361) : with_unit(" MPa", value / 1e6);
  if (unit == "Pa") return us ? with_unit(" psi", value / 6894.757293168361) : with_unit(" kPa", value / 1e3);
  if (unit == "m/s") {
    if (us) return with_unit(" in/s", value / 0.0254);
    return value < 0.1 ? with_unit(" mm/s", value * 1e3) : with_unit(" m/s", value);
  }
  if (unit == "m³") return us ? with_unit(" yd³", value / cubic_yard_m3) : with_unit(" m³", value);
  if (unit == "N/m³")
    return us ? with_unit(" lb/ft³", value / pound_per_cubic_foot_N_m3) : with_unit(" kN/m³", value / 1e3);
  if (unit == "N") return us ? with_unit(" lbf", value / pound_N) : with_unit(" N", value);
  if (unit == "N/m") return us ? with_unit(" lb/ft", value / pound_N * 0.3048) : with_unit(" N/m", value);
  if (unit == "m²") return us ? with_unit(" in²", value / 0.0254 / 0.0254) : with_unit(" cm²", value * 1e4);
  if (unit == "1/m") return us ? with_unit(" 1/ft", value * 0.3048) : with_unit(" 1/m", value);
  if (unit == "K" && symbol.starts_with("Δ"))  // a difference
    return us ? with_unit(" °F", value * 1.8) : with_unit(" K", value);
  if (unit == "1/K") return us ? with_unit(" 1/°F", value / 1.8) : with_unit(" 1/K", value);
  if (unit == "m³/s") return us ? with_unit(" ft³/min", value * 60 / cubic_foot_m3) : with_unit(" m³/min", value * 60);
  if (unit == "K") return format(value, Dimension::temperature, units);
  if (unit == "rad") return with_unit("°", value * 180.0 / pi);
  if (unit.empty()) return with_unit("", value);
  return with_unit(" " + std::string(unit), value);
}

std::string limit_number(double value, std::string_view unit, UnitSystem units) {
  constexpr double small_m = 0.1;
  if (unit == "m" && std::abs(value) < small_m) return format(value, Dimension::small_length, units);
  return working_number(value, unit, units);
}

namespace {

/// "DIN 4150-3 (1999) Table 1 [read]"
std::string source_text(const Source& source) {
  const std::string label = fmt::format("[{}]", label_text(source.label));
  return source.text.empty() ? label : translated_phrase(source.text) + " " + label;
}

}  // namespace

std::string working_text(const Working& working, UnitSystem units) {
  std::string text = translated(working.formula) + "\n";
  for (const WorkingInput& input : working.inputs)
    text += fmt::format("  {} = {}\n", input.symbol, working_number(input.value, input.unit, units, input.symbol));
  text += fmt::format("{} = {}\n", working.symbol, working_number(working.value, working.unit, units, working.symbol));
  if (working.limit) {
    const std::string limit = working_number(*working.limit, working.unit, units, working.symbol);
    text += (working.limit_source ? say("limit {}, from: {}", limit, source_text(*working.limit_source))
                                  : say("limit {}", limit)) +
            "\n";
  }
  return text + say("from: {}", source_text(working.source));
}

const Working* working_of(const Assessment& assessment, const Finding& finding) {
  const auto step = [&](std::string_view code) -> const Working* {
    const auto& all = assessment.working;
    const auto it = std::find_if(all.begin(), all.end(),
                                 [&](const Working& w) { return w.code == code && w.subject == finding.subject; });
    return it == all.end() ? nullptr : &*it;
  };
  if (finding.code == "utility.contact") return step("utility.contact-worst");
  if (const Working* own = step(finding.code)) return own;
  constexpr std::pair<std::string_view, std::string_view> shared[] = {
      {"pipe.floats", "pipe.float"},    {"pit.unprotected", "pit.depth"}, {"pit.shoring", "pit.depth"},
      {"pit.slope-depth", "pit.depth"}, {"pit.inflow", "pit.water"},      {"utility.wall-unknown", "utility.strain"}};
  for (const auto& [code, plain] : shared)
    if (finding.code == code) return step(plain);
  if (!finding.about_check.empty()) return step(finding.about_check);
  for (const std::string_view end : {"-high", "-wide"})
    if (finding.code.ends_with(end)) return step(std::string_view(finding.code).substr(0, finding.code.size() - 5));
  return nullptr;
}

}  // namespace burrow

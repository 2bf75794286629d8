#include "burrow/words/working_text.h"
#include "burrow/base/decimal_mark.h"
#include "burrow/language/say.h"
#include "burrow/words/source_text.h"

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

/// How finely: a result has four digits, what is put in six, so that the result comes out again from what is printed,
/// to its last digit (WorkingText.Printed_*). Levels and lengths have at least three decimals, a millimetre; a result
/// has no more than four, what is put in one more.
struct Fineness {
  int digits = 4, least_decimals_of_length = 3, most_decimals_of_length = 4;
};
constexpr Fineness of_result{4, 3, 4}, of_input{6, 5, 6};
constexpr double small_length = 0.01;      // an input below it has its six digits whatever that takes
constexpr double tiny = 1e-4, huge = 1e7;  // beyond them "1.2e-05", so that no number fills the line

/// Without the zeros at its end, but for so many decimals.
std::string shortened(std::string digits, std::size_t least_decimals) {
  const std::size_t mark = digits.find_first_of(".,");
  if (mark == std::string::npos) return digits;
  const std::size_t least = least_decimals == 0 ? mark : mark + 1 + least_decimals;
  digits.erase(std::max(digits.find_last_not_of('0') + 1, std::min(least, digits.size())));
  if (digits.size() == mark + 1) digits.pop_back();
  return digits;
}

class NumberText {
 public:
  explicit NumberText(Fineness fineness) : fineness_(fineness) {}

  [[nodiscard]] std::string length(std::string_view unit, double value) const {
    const bool result = fineness_.digits == of_result.digits;
    if (std::abs(value) >= huge || (value != 0 && std::abs(value) < tiny && !result)) return plain(unit, value);
    const bool small = fineness_.digits == of_input.digits && std::abs(value) < small_length;
    const int most = small ? 9 : fineness_.most_decimals_of_length;
    const int decimals = std::clamp(decimals_for(value), fineness_.least_decimals_of_length, most);
    return shortened(fixed_text(value + 0.0, decimals), 3) + std::string(unit);
  }
  [[nodiscard]] std::string plain(std::string_view unit, double value) const {
    if (value == 0) return "0" + std::string(unit);
    if (std::abs(value) >= huge || std::abs(value) < tiny)
      return significant_text(value, fineness_.digits) + std::string(unit);
    return shortened(fixed_text(value, decimals_for(value)), 0) + std::string(unit);
  }
  /// Neither none nor certain where it is neither.
  [[nodiscard]] std::string chance(double value, UnitSystem units) const {
    const bool in_words = fineness_.digits == of_result.digits && (value < 0.00005 || value > 0.9995);
    return in_words || value == 0 || value == 1 ? format(value, Dimension::chance, units) : plain(" %", value * 100);
  }

 private:
  [[nodiscard]] int decimals_for(double value) const {
    const int before = value == 0 ? 1 : static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
    return std::max(0, fineness_.digits - before);
  }
  Fineness fineness_;
};

std::string number_with_unit(double value, std::string_view unit, UnitSystem units, std::string_view symbol,
                             Fineness fineness) {
  const NumberText in(fineness);
  const bool us = units == UnitSystem::us;
  if (unit.empty() && symbol.starts_with('P')) return in.chance(value, units);
  if (unit == "m") return us ? in.length(" ft", value / 0.3048) : in.length(" m", value);
  constexpr double stiff_Pa = 1e7;  // moduli
  if (unit == "Pa" && std::abs(value) >= stiff_Pa)
    return us ? in.plain(" ksi", value / 6894757.293168361) : in.plain(" MPa", value / 1e6);
  if (unit == "Pa") return us ? in.plain(" psi", value / 6894.757293168361) : in.plain(" kPa", value / 1e3);
  if (unit == "m/s") {
    if (us) return in.plain(" in/s", value / 0.0254);
    return value < 0.1 ? in.plain(" mm/s", value * 1e3) : in.plain(" m/s", value);
  }
  if (unit == "m³") return us ? in.plain(" yd³", value / cubic_yard_m3) : in.plain(" m³", value);
  if (unit == "N/m³")
    return us ? in.plain(" lb/ft³", value / pound_per_cubic_foot_N_m3) : in.plain(" kN/m³", value / 1e3);
  constexpr double strong_N = 1000;
  if (unit == "N" && !us && std::abs(value) >= strong_N) return in.plain(" kN", value / 1e3);
  if (unit == "N") return us ? in.plain(" lbf", value / pound_N) : in.plain(" N", value);
  if (unit == "N/m") return us ? in.plain(" lb/ft", value / pound_N * 0.3048) : in.plain(" N/m", value);
  if (unit == "m²") return us ? in.plain(" in²", value / 0.0254 / 0.0254) : in.plain(" cm²", value * 1e4);
  if (unit == "1/m") {  // a radius of kilometres is told to the millimetre
    const NumberText bent({fineness.digits + (fineness.digits == of_input.digits ? 3 : 0), 3, 9});
    return us ? bent.plain(" 1/ft", value * 0.3048) : bent.plain(" 1/m", value);
  }
  if (unit == "K" && symbol.starts_with("Δ"))  // a difference
    return us ? in.plain(" °F", value * 1.8) : in.plain(" K", value);
  if (unit == "1/K") return us ? in.plain(" 1/°F", value / 1.8) : in.plain(" 1/K", value);
  if (unit == "m³/s") return us ? in.plain(" ft³/min", value * 60 / cubic_foot_m3) : in.plain(" m³/min", value * 60);
  if (unit == "K") return us ? in.plain(" °F", value * 1.8 - 459.67) : in.plain(" °C", value - 273.15);
  if (unit == "rad") return in.plain("°", value * 180.0 / pi);
  if (unit.empty()) return in.plain("", value);
  return in.plain(" " + std::string(unit), value);
}
}  // namespace

std::string working_number(double value, std::string_view unit, UnitSystem units, std::string_view symbol) {
  return number_with_unit(value, unit, units, symbol, of_result);
}

std::string working_input(const WorkingInput& input, UnitSystem units) {
  return number_with_unit(input.value, input.unit, units, input.symbol, of_input);
}

std::string limit_number(double value, std::string_view unit, UnitSystem units) {
  constexpr double small_m = 0.1;
  if (unit == "m" && std::abs(value) < small_m) return format(value, Dimension::small_length, units);
  return working_number(value, unit, units);
}

std::string working_formula(const Working& working) {
  std::string formula = translated(working.formula);
  const auto is_digit = [&](std::size_t at) { return at < formula.size() && formula[at] >= '0' && formula[at] <= '9'; };
  if (decimal_mark() == DecimalMark::comma)
    for (std::size_t i = 1; i < formula.size(); ++i)
      if (formula[i] == '.' && is_digit(i - 1) && is_digit(i + 1)) formula[i] = ',';
  return formula;
}

std::string working_text(const Working& working, UnitSystem units) {
  std::string text = working_formula(working) + "\n";
  for (const WorkingInput& input : working.inputs)
    text += fmt::format("  {} = {}\n", input.symbol, working_input(input, units));
  text += fmt::format("{} = {}\n", working.symbol, working_number(working.value, working.unit, units, working.symbol));
  if (working.limit) {
    const std::string limit = working_number(*working.limit, working.unit, units, working.symbol);
    text += (working.limit_source ? say("limit {}, from: {}", limit, limit_source_text(*working.limit_source))
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

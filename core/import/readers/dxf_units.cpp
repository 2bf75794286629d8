#include "dxf_units.h"

#include <charconv>
#include <cmath>

#include "../found_builder.h"
#include "burrow/language/say.h"

namespace burrow {

void DrawingUnits::take(const std::string& variable, int code, const std::string& value) {
  if (code != 70) return;
  if (variable == "$INSUNITS") insunits = value;
  if (variable == "$MEASUREMENT") measurement = value;
  if (variable == "$LUNITS") lunits = value;
}

namespace {

std::optional<FileUnit> stated(const std::string& insunits) {
  static const std::map<std::string, FileUnit, std::less<>> units{
      {"1", FileUnit::inch},       {"2", FileUnit::foot},  {"4", FileUnit::millimetre},
      {"5", FileUnit::centimetre}, {"6", FileUnit::metre}, {"21", FileUnit::us_survey_foot}};
  const auto it = units.find(insunits);
  return it == units.end() ? std::nullopt : std::optional(it->second);
}

bool shows_feet_and_inches(const std::string& lunits) {
  return lunits == "3" || lunits == "4";
}

bool is_metric(FileUnit unit) {
  return unit == FileUnit::metre || unit == FileUnit::millimetre || unit == FileUnit::centimetre;
}

double number_or(const std::string& text, double otherwise) {
  double value = 0;
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc() && std::isfinite(value) ? value : otherwise;
}

}  // namespace

std::optional<FileUnit> DrawingUnits::unit() const {
  if (const auto unit = stated(insunits)) return unit;
  const bool silent = insunits.empty() || insunits == "0";
  if (silent && shows_feet_and_inches(lunits)) return FileUnit::inch;
  return std::nullopt;
}

bool DrawingUnits::is_foreign() const {
  return !insunits.empty() && insunits != "0" && !stated(insunits);
}

std::vector<std::string> DrawingUnits::notes() const {
  std::vector<std::string> notes;
  const bool silent = insunits.empty() || insunits == "0";
  if (is_foreign())
    notes.push_back(
        say("the drawing states unit {}, which is none of m, mm, cm, ft, in, US survey ft", as_utf8(insunits)));
  if (silent && shows_feet_and_inches(lunits))
    notes.emplace_back(
        translated("the drawing shows lengths in feet and inches, so that its unit is taken for inches"));
  if (silent && !shows_feet_and_inches(lunits) && !measurement.empty())
    notes.emplace_back(measurement == "1" ? translated("the drawing says metric, and not whether metres or millimetres")
                                          : translated("the drawing says inches or feet, and not which"));
  if (const auto unit = stated(insunits); unit && !measurement.empty() && is_metric(*unit) != (measurement == "1"))
    notes.push_back(measurement == "1"
                        ? say("the drawing states unit {}, and metric patterns beside it", word_of(*unit))
                        : say("the drawing states unit {}, and patterns in inches beside it", word_of(*unit)));
  return notes;
}

void DrawingPlace::take(int code, const std::string& value) {
  constexpr std::size_t longest = 1u << 16u;
  if (code == 70) kind = static_cast<int>(number_or(value, 0));
  if (code == 10 || code == 20 || code == 11 || code == 21 || code == 12 || code == 22 || code == 40)
    numbers[code] = number_or(value, 0);
  if ((code == 301 || code == 303) && definition.size() < longest) definition += value;
}

bool DrawingPlace::is_moved(double metres) const {
  const auto at = [&](int code, double otherwise) {
    const auto it = numbers.find(code);
    return it == numbers.end() ? otherwise : it->second;
  };
  const bool shifted = std::hypot(at(10, 0) - at(11, 0), at(20, 0) - at(21, 0)) > 1e-3;
  const bool turned = std::abs(at(12, 0)) > 1e-9 || at(22, 1) <= 0;
  const bool scaled = !(std::abs(at(40, metres) / metres - 1) < 1e-3);
  return shifted || turned || scaled;
}

std::string DrawingPlace::crs() const {
  constexpr int of_a_projection = 2;
  if (kind != of_a_projection) return {};
  std::size_t at = 0;
  while ((at = definition.find("<Alias", at)) != std::string::npos) {
    const std::size_t end = definition.find("</Alias>", at);
    const std::string alias = definition.substr(at, end == std::string::npos ? end : end - at);
    at += 6;
    const std::size_t id = alias.find("id=\"");
    if (id == std::string::npos || alias.find("type=\"CoordinateSystem\"") == std::string::npos ||
        alias.find("EPSG Code") == std::string::npos)
      continue;
    const std::string digits = alias.substr(id + 4, alias.find('"', id + 4) - id - 4);
    const bool is_number =
        !digits.empty() && digits.size() < 8 && digits.find_first_not_of("0123456789") == std::string::npos;
    if (is_number) return "EPSG:" + digits;
  }
  return {};
}

}  // namespace burrow

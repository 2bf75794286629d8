#include "burrow/words/learn_text.h"
#include "burrow/base/decimal_mark.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

std::string digits_text(double value) {
  return significant_text(value, 3);
}

std::string value_text(const LearnedValue& v) {
  return say("{} ({} to {})", digits_text(v.likeliest), digits_text(v.low), digits_text(v.high));
}

std::string bores_text(std::int64_t bores) {
  return say_count("{} bore", "{} bores", bores);
}

std::string rate_text(const LearnedRate& rate) {
  return say("{} ({} to {})", digits_text(100 * rate.mean_1_m), digits_text(100 * rate.low_1_m),
             digits_text(100 * rate.high_1_m));
}

/// Too few metres are said: such a rate stays out of a crossing.
std::string stops_text(const LearnedSoil& soil) {
  std::string text = say_count("{} stop in {:.0f} m", "{} stops in {:.0f} m", soil.refusals, soil.bored_m);
  if (!outweighs_table(soil.refusal_rate, soil.bored_m))
    text += ", " + say("not taken over below {:.0f} m", soil.refusal_rate->length_m - soil.bored_m);
  return text;
}

}  // namespace

std::vector<LearnRow> learn_rows(const LearnLibrary& library, const Tables& tables) {
  std::vector<LearnRow> rows;
  const ModelConstants defaults;
  for (const LearnedSoil& soil : library.soils) {
    const SoilClass* row = find_soil(tables, soil.soil);
    const std::string name = row ? translated_phrase(row->name) : soil.soil;
    rows.push_back({name, translated("steering constant"), value_text(soil.steer_constant),
                    digits_text(defaults.steer_constant->v), bores_text(soil.bores)});
    rows.push_back({name, translated("wander, rad/√m"), value_text(soil.wander_rad_sqrt_m),
                    row ? digits_text(row->wander.rad_sqrt_m) : std::string("–"), bores_text(soil.bores)});
    rows.push_back({name, translated("field factor"), value_text(soil.field_factor),
                    digits_text(defaults.field_factor->v), bores_text(soil.timed_bores)});
    if (soil.bored_m > 0 && soil.refusal_rate)
      rows.push_back({name, translated("stops by the ground in 100 m"), rate_text(*soil.refusal_rate),
                      row ? digits_text(100 * row->refusal_rate.per_m) : std::string("–"), stops_text(soil)});
  }
  return rows;
}

}  // namespace burrow

#include "burrow/plan/learn_text.h"
#include "burrow/base/say.h"

#include <fmt/format.h>

namespace burrow {

namespace {

std::string value_text(const LearnedValue& v) {
  return say("{:.3g} ({:.3g} to {:.3g})", v.likeliest, v.low, v.high);
}

std::string bores_text(std::int64_t bores) {
  return fmt::format("{} {}", bores, bores == 1 ? said("bore") : said("bores"));
}

}  // namespace

std::vector<LearnRow> learn_rows(const LearnLibrary& library, const Tables& tables) {
  std::vector<LearnRow> rows;
  const ModelConstants defaults;
  for (const LearnedSoil& soil : library.soils) {
    const SoilClass* row = find_soil(tables, soil.soil);
    const std::string name = row ? row->name : soil.soil;
    rows.push_back({name, said("steering constant"), value_text(soil.steer_constant),
                    fmt::format("{:.3g}", defaults.steer_constant->v), bores_text(soil.bores)});
    rows.push_back({name, said("wander, rad/√m"), value_text(soil.wander_rad_sqrt_m),
                    row ? fmt::format("{:.3g}", row->wander.rad_sqrt_m) : std::string("–"), bores_text(soil.bores)});
    rows.push_back({name, said("field factor"), value_text(soil.field_factor),
                    fmt::format("{:.3g}", defaults.field_factor->v), bores_text(soil.timed_bores)});
  }
  return rows;
}

}  // namespace burrow

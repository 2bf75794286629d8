/// The air line: pressure at the tool, what holds it down, water, oil.

#include <algorithm>

#include "air_workings.h"
#include "burrow/base/phrase.h"
#include "burrow/check/tool_at_work.h"
#include "check_run.h"

namespace burrow {

namespace {

Finding about_air(std::string_view code, Severity severity, std::string_view unit,
                  Phrase name = translatable("air line")) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = "air";
  finding.name = std::move(name);
  finding.unit = unit;
  return finding;
}

/// Nothing to compute with: said once, with what is missing. The contract's list of what caps the verdict does not hold
/// the compressor; the tool's own pressure is then taken as given, and that is said.
void add_not_judged(CheckRun& run) {
  const AirAnswer& air = run.answer.air;
  Finding finding =
      about_air(air.not_entered.empty() ? "air.outside-method" : "air.not-entered", Severity::note, "", air.not_judged);
  finding.source = {"the tool's own pressure is taken instead", SourceLabel::our_default};
  run.add(std::move(finding));
}

void judge_pressure(CheckRun& run, const AirSupply& supply, const Tool& wanted) {
  const double at_tool = supply.at_tool.Pa;
  Limit limit = run.limit("air_pressure_share_stop");
  const Limit caution = run.limit("air_pressure_share_caution");
  const bool stops = !(at_tool >= limit.value * wanted.pressure.Pa);
  if (!stops) limit = caution;
  limit.value *= wanted.pressure.Pa;
  run.require(about_air("air.pressure-low", stops ? Severity::stop : Severity::caution, "Pa"), at_tool, limit);
  run.add_working(
      {"air.pressure-low",
       "air",
       "p = p_compressor − Δp",
       {{"p_compressor", supply.at_compressor.Pa, "Pa"}, {"Δp", supply.at_compressor.Pa - at_tool, "Pa"}},
       "p",
       at_tool,
       "Pa",
       limit.value,
       {"pressure at which the line needs as much at its inlet as the compressor holds, for what the tool takes",
        SourceLabel::our_model},
       limit.source});
}

void judge_supply(CheckRun& run, const AirSupply& supply) {
  run.require(about_air("air.loss", Severity::caution, "Pa"), supply.at_compressor.Pa - supply.at_tool.Pa,
              run.limit("air_loss_pa"));
  if (supply.held_by == AirHeldBy::compressor) {
    const Limit take{supply.would_take.m3_s,
                     true,
                     {"free air the tool takes at the pressure this line would leave it", SourceLabel::our_model}};
    run.require(about_air("air.compressor-small", Severity::caution, "m³/s", translatable("compressor")),
                supply.compressor_gives.m3_s, take);
  }
  const auto choked =
      std::find_if(supply.along.begin(), supply.along.end(), [](const PartFlow& p) { return p.choked; });
  if (choked == supply.along.end()) return;
  Finding finding =
      about_air("air.choked", Severity::caution, "m/s", phrase_of_word(run.crossing.air.line[choked->entered].kind));
  finding.measured = choked->speed_m_s;
  finding.source = {"isothermal flow reaches √(R T) and no more", SourceLabel::derived};
  run.add(std::move(finding));
}

/// Not above the limit, neither typed nor as the line gives it.
void judge_high(CheckRun& run) {
  const AirAnswer& air = run.answer.air;
  const double measured =
      air.pressure_typed ? run.tool.pressure.Pa : air.pressure_at_tool_Pa.value_or(run.tool.pressure.Pa);
  run.require(about_air("air.pressure-high", Severity::caution, "Pa"), measured, run.limit("air_pressure_most_pa"));
}

/// "hose 1": its kind and which of its kind it is, from the compressor on.
Phrase name_of_part(const std::vector<AirPart>& line, const AirPart& part) {
  const auto same = std::count_if(line.data(), &part, [&](const AirPart& one) { return one.kind == part.kind; });
  return phrase("{} {}", phrase_of_word(part.kind), std::to_string(same + 1));
}

/// A tool that stalls takes no air, and all that the compressor is set to stands at it and in every part of the line.
void judge_standing(CheckRun& run) {
  const std::optional<double>& standing = run.answer.air.standing_Pa;
  if (!standing) return;
  const Limit most = run.limit("air_pressure_most_pa");
  Limit stop = run.limit("air_standing_stop_pa");
  if (most.value > stop.value) stop = most;  // the maker's plate, typed
  if (run.require(about_air("air.standing", Severity::stop, "Pa"), *standing, stop) >= 0)
    run.require(about_air("air.standing", Severity::caution, "Pa"), *standing, most);
  const Compressor& compressor = run.crossing.air.compressor;
  std::vector<WorkingInput> inputs;
  if (compressor.pressure) inputs.push_back({"p_compressor", compressor.pressure->Pa, "Pa"});
  if (compressor.regulator) inputs.push_back({"p_regulator", compressor.regulator->Pa, "Pa"});
  run.add_working(
      {"air.standing",
       "air",
       "p = min(p_compressor, p_regulator)",
       std::move(inputs),
       "p",
       *standing,
       "Pa",
       most.value,
       {"no air flows through a tool that stands still, so nothing is lost on the way", SourceLabel::derived},
       most.source});
}

/// Each part is rated for what may stand in it. What is not entered is asked for.
void judge_ratings(CheckRun& run) {
  const std::optional<double>& standing = run.answer.air.standing_Pa;
  const std::vector<AirPart>& line = run.crossing.air.line;
  if (!standing) return;
  const AirPart *weakest = nullptr, *unrated = nullptr;
  std::vector<WorkingInput> inputs;
  for (const AirPart& part : line) {
    if (*part.count == 0) continue;
    if (!part.rating && !unrated) unrated = &part;
    if (part.rating) inputs.push_back({"p_rated", part.rating->Pa, "Pa"});
    if (part.rating && !(weakest && *weakest->rating <= *part.rating)) weakest = &part;
  }
  if (weakest) {
    const Limit standing_in_it{
        *standing,
        true,
        {"what stands in the line when the tool stalls; rating as entered", SourceLabel::owners_setting}};
    run.require(about_air("air.rating", Severity::stop, "Pa", name_of_part(line, *weakest)), weakest->rating->Pa,
                standing_in_it);
    run.add_working({"air.rating",
                     "air",
                     "p = min(p_rated)",
                     std::move(inputs),
                     "p",
                     weakest->rating->Pa,
                     "Pa",
                     *standing,
                     {"rating of each part by its maker, the weakest counts", SourceLabel::owners_setting},
                     standing_in_it.source});
  }
  if (!unrated) return;
  Finding finding = about_air("air.rating-unknown", Severity::caution, "Pa", name_of_part(line, *unrated));
  finding.measured = *standing;
  finding.source = {"hose and couplings bear what their maker rates them for", SourceLabel::common_practice};
  run.add(std::move(finding));
}

void judge_water(CheckRun& run, const AirSupply& supply) {
  const Limit cold = run.limit("air_cold_k");
  const Result<SiteAir> site = site_air(*run.crossing.air.altitude, *run.crossing.air.air_temperature);
  if (!site) return;
  const auto water = water_in_line(*site, run.crossing.air.relative_humidity, supply.at_tool, supply.free_air,
                                   Temperature{cold.value});
  if (!water) return;
  run.answer.air.water = *water;
  if (water->icing == Icing::likely) {
    Finding finding = about_air("air.icing", Severity::caution, "K");
    finding.measured = site->temperature.K;
    finding.limit = cold.value;
    finding.source = cold.source;
    finding.margin = margin_of(site->temperature.K, cold);
    run.add(std::move(finding));
  }
  show_water(run, *site, supply);
}

void plan_oil(CheckRun& run, double free_air_m3_s) {
  Assessment& answer = run.answer;
  const Oil& oil = run.crossing.air.oil;
  answer.air.oil = oil_plan(oil, {free_air_m3_s}, answer.advance_time_s.p50, answer.advance_time_s.p90);
  show_oil(run);
}

}  // namespace

void check_air(CheckRun& run) {
  const ToolChoice& choice = run.crossing.bore.tool;
  const Tool rated = rated_tool(choice, run.tables);
  judge_high(run);
  judge_standing(run);
  judge_ratings(run);
  if (!run.answer.air.supply) {
    add_not_judged(run);
    plan_oil(run, rated.free_air.m3_s);
    return;
  }
  const AirSupply& supply = *run.answer.air.supply;
  judge_pressure(run, supply, resolve_tool(choice, run.tables));
  judge_supply(run, supply);
  show_demand(run, supply, rated);
  show_line(run, supply);
  judge_water(run, supply);
  plan_oil(run, supply.free_air.m3_s);
}

}  // namespace burrow

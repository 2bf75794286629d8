/// The air line: pressure at the tool, what holds it down, water, oil.

#include <algorithm>
#include <cmath>

#include "burrow/check/tool_at_work.h"
#include "judge.h"

namespace burrow {

namespace {

constexpr double foot_m = 0.3048, inch_m = 0.0254;

Finding about_air(std::string_view code, Severity severity, std::string_view unit, std::string name = "air line") {
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
void say_not_judged(Judge& judge) {
  const std::string& what = judge.answer.air.not_judged;
  const bool entered = what != "compressor" && what != "hose";
  Finding finding = entered ? about_air("air.outside-method", Severity::note, "", what)
                            : about_air("air.not-entered", Severity::note, "", what);
  finding.source = {"the tool's own pressure is taken instead", SourceLabel::our_default};
  judge.say(std::move(finding));
}

void judge_pressure(Judge& judge, const AirSupply& supply, const Tool& wanted) {
  const double at_tool = supply.at_tool.Pa;
  Limit limit = judge.limit("air_pressure_share_stop");
  const Limit caution = judge.limit("air_pressure_share_caution");
  const bool stops = at_tool < limit.value * wanted.pressure.Pa;
  if (!stops) limit = caution;
  limit.value *= wanted.pressure.Pa;
  judge.demand(about_air("air.pressure-low", stops ? Severity::stop : Severity::caution, "Pa"), at_tool, limit);
  judge.show({"air.pressure-low",
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

void judge_supply(Judge& judge, const AirSupply& supply) {
  judge.demand(about_air("air.loss", Severity::note, "Pa"), supply.at_compressor.Pa - supply.at_tool.Pa,
               judge.limit("air_loss_pa"));
  if (supply.held_by == AirHeldBy::compressor) {
    const Limit take{supply.would_take.m3_s,
                     true,
                     {"free air the tool takes at the pressure this line would leave it", SourceLabel::our_model}};
    judge.demand(about_air("air.compressor-small", Severity::note, "m³/s", "compressor"), supply.compressor_gives.m3_s,
                 take);
  }
  const auto choked =
      std::find_if(supply.along.begin(), supply.along.end(), [](const PartFlow& p) { return p.choked; });
  if (choked == supply.along.end()) return;
  Finding finding = about_air("air.choked", Severity::caution, "m/s",
                              std::string(word_of(judge.crossing.air.line[choked->entered].kind)));
  finding.measured = choked->speed_m_s;
  finding.source = {"isothermal flow reaches √(R T) and no more", SourceLabel::derived};
  judge.say(std::move(finding));
}

/// Not above the limit, neither typed nor as the line gives it.
void judge_high(Judge& judge) {
  const AirAnswer& air = judge.answer.air;
  const double measured =
      air.pressure_typed ? judge.tool.pressure.Pa : air.pressure_at_tool_pa.value_or(judge.tool.pressure.Pa);
  judge.demand(about_air("air.pressure-high", Severity::caution, "Pa"), measured, judge.limit("air_pressure_most_pa"));
}

void show_demand(Judge& judge, const AirSupply& supply, const Tool& rated) {
  if (supply.held_by == AirHeldBy::compressor) return;
  judge.show({"air.demand",
              "air",
              "Q = Q_n (p_0/p_h) (p + p_h)/(p_n + p_0)",
              {{"Q_n", rated.free_air.m3_s, "m³/s"},
               {"p_n", rated.pressure.Pa, "Pa"},
               {"p_0", sea_level_Pa, "Pa"},
               {"p_h", supply.ambient.Pa, "Pa"},
               {"p", supply.at_tool.Pa, "Pa"}},
              "Q",
              supply.free_air.m3_s,
              "m³/s",
              std::nullopt,
              {"the tool fills the same space at each blow, at the same blow rate", SourceLabel::our_model}});
}

/// The part that loses most, and the older formula for the whole line.
void show_line(Judge& judge, const AirSupply& supply) {
  const Result<std::vector<LinePart>> parts = line_parts(judge.crossing.air.line);
  const Result<SiteAir> site = site_air(*judge.crossing.air.altitude, *judge.crossing.air.air_temperature);
  if (!parts || !site || parts->empty()) return;
  const auto most = std::max_element(
      supply.along.begin(), supply.along.end(),
      [](const PartFlow& a, const PartFlow& b) { return a.inlet_Pa - a.outlet_Pa < b.inlet_Pa - b.outlet_Pa; });
  const LinePart& part = (*parts)[static_cast<std::size_t>(most - supply.along.begin())];
  const double area = pi * part.bore.m * part.bore.m / 4, G = supply.mass_kg_s / area;
  if (G > 0)
    judge.show({"air.line",
                "air",
                "p1² − p2² = G² R T (f L/D + 2 ln(p1/p2)), 1/√f = −2 log(ε/(3.7 D) + 2.51/(Re √f))",
                {{"p2", most->outlet_Pa, "Pa"},
                 {"G", G, "kg/(m² s)"},
                 {"R", air_gas_constant_J_kg_K, "J/(kg K)"},
                 {"T", site->temperature.K, "K"},
                 {"ε", part.roughness.m, "m"},
                 {"Re", G * part.bore.m / site->viscosity_Pa_s, ""},
                 {"f", friction_factor(G * part.bore.m / site->viscosity_Pa_s, part.roughness.m / part.bore.m), ""},
                 {"L", part.length.m, "m"},
                 {"D", part.bore.m, "m"}},
                "p1",
                most->inlet_Pa,
                "Pa",
                std::nullopt,
                {"isothermal flow in the part that loses most, absolute pressures; Colebrook 1939 as usually printed",
                 SourceLabel::from_memory}});
  const VolumeFlow standard{supply.mass_kg_s * air_gas_constant_J_kg_K * 288.15 / sea_level_Pa};
  const Pressure inlet{supply.at_compressor.Pa + supply.ambient.Pa};
  const auto outlet = harris_outlet(*parts, inlet, standard);
  if (!outlet) return;
  judge.answer.air.loss_harris_pa = inlet.Pa - outlet->Pa;
  double sum = 0;
  for (const LinePart& p : *parts) sum += p.length.m / foot_m / std::pow(p.bore.m / inch_m, 5.31);
  judge.show({"air.harris",
              "air",
              "Δp = p1 − √(p1² − 2 S Q²/2390) in psi and ft³/min, S = Σ L/d^5.31 in ft and in",
              {{"p1", inlet.Pa, "Pa"}, {"S", sum, ""}, {"Q", standard.m3_s, "m³/s"}},
              "Δp",
              *judge.answer.air.loss_harris_pa,
              "Pa",
              std::nullopt,
              {"Harris' formula for iron pipe, for comparison only", SourceLabel::read}});
}

void judge_water(Judge& judge, const AirSupply& supply) {
  const Limit cold = judge.limit("air_cold_k");
  const Result<SiteAir> site = site_air(*judge.crossing.air.altitude, *judge.crossing.air.air_temperature);
  if (!site) return;
  const auto water = water_in_line(*site, judge.crossing.air.relative_humidity, supply.at_tool, supply.free_air,
                                   Temperature{cold.value});
  if (!water) return;
  judge.answer.air.water = *water;
  if (water->icing == Icing::likely) {
    Finding finding = about_air("air.icing", Severity::caution, "K");
    finding.measured = site->temperature.K;
    finding.limit = cold.value;
    finding.source = cold.source;
    finding.margin = margin_of(site->temperature.K, cold);
    judge.say(std::move(finding));
  }
  judge.show({"air.water",
              "air",
              "m = 0.62198 (φ p_s/(p_h − φ p_s) − p_s/(p_h + p − p_s)) (p_h − φ p_s) Q/(R T), not below 0",
              {{"φ", water->humidity, ""},
               {"p_s", saturation_pressure(site->temperature)->Pa, "Pa"},
               {"p_h", supply.ambient.Pa, "Pa"},
               {"p", supply.at_tool.Pa, "Pa"},
               {"Q", supply.free_air.m3_s, "m³/s"},
               {"R", air_gas_constant_J_kg_K, "J/(kg K)"},
               {"T", site->temperature.K, "K"}},
              "m",
              water->comes_out_kg_s,
              "kg/s",
              std::nullopt,
              {"vapour drawn in, less what the compressed air holds once it has cooled; p_s by Magnus' form",
               SourceLabel::derived}});
}

void plan_oil(Judge& judge, double free_air_m3_s) {
  Assessment& answer = judge.answer;
  const Oil& oil = judge.crossing.air.oil;
  answer.air.oil = oil_plan(oil, {free_air_m3_s}, answer.advance_time_s.p50, answer.advance_time_s.p90);
  if (!answer.air.oil.for_nine_in_ten) return;
  judge.show({"air.oil",
              "air",
              "V = r t",
              {{"r", answer.air.oil.rate.m3_s, "m³/s"}, {"t", *answer.advance_time_s.p90, "s"}},
              "V",
              answer.air.oil.for_nine_in_ten->m3,
              "m³",
              std::nullopt,
              {oil.rate ? "rate entered, time that nine bores in ten take"
                        : "a fluid ounce an hour for 100 ft³/min of free air, time that nine bores in ten take",
               oil.rate ? SourceLabel::owners_setting : SourceLabel::from_memory}});
}

}  // namespace

void check_air(Judge& judge) {
  const ToolChoice& choice = judge.crossing.bore.tool;
  const Tool rated = rated_tool(choice, judge.tables);
  judge_high(judge);
  if (!judge.answer.air.supply) {
    say_not_judged(judge);
    plan_oil(judge, rated.free_air.m3_s);
    return;
  }
  const AirSupply& supply = *judge.answer.air.supply;
  judge_pressure(judge, supply, resolve_tool(choice, judge.tables));
  judge_supply(judge, supply);
  show_demand(judge, supply, rated);
  show_line(judge, supply);
  judge_water(judge, supply);
  plan_oil(judge, supply.free_air.m3_s);
}

}  // namespace burrow

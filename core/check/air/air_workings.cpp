#include "air_workings.h"

#include <algorithm>
#include <cmath>
#include "burrow/base/phrase.h"

namespace burrow {

namespace {
constexpr double foot_m = 0.3048, inch_m = 0.0254;
}

void show_demand(CheckRun& run, const AirSupply& supply, const Tool& rated) {
  if (supply.held_by == AirHeldBy::compressor) return;
  run.add_working({"air.demand",
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

void show_line(CheckRun& run, const AirSupply& supply) {
  const Result<std::vector<LinePart>> parts = line_parts(run.crossing.air.line);
  const Result<SiteAir> site = site_air(*run.crossing.air.altitude, *run.crossing.air.air_temperature);
  if (!parts || !site || parts->empty()) return;
  const auto most = std::max_element(
      supply.along.begin(), supply.along.end(),
      [](const PartFlow& a, const PartFlow& b) { return a.inlet_Pa - a.outlet_Pa < b.inlet_Pa - b.outlet_Pa; });
  const LinePart& part = (*parts)[static_cast<std::size_t>(most - supply.along.begin())];
  const double area = pi * part.bore.m * part.bore.m / 4, G = supply.mass_kg_s / area;
  if (G > 0)
    run.add_working(
        {"air.line",
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
  run.answer.air.loss_harris_Pa = inlet.Pa - outlet->Pa;
  double sum = 0;
  for (const LinePart& p : *parts) sum += p.length.m / foot_m / std::pow(p.bore.m / inch_m, 5.31);
  run.add_working({"air.harris",
                   "air",
                   translatable("Δp = p1 − √(p1² − 2 S Q²/2390) in psi and ft³/min, S = Σ L/d^5.31 in ft and in"),
                   {{"p1", inlet.Pa, "Pa"}, {"S", sum, ""}, {"Q", standard.m3_s, "m³/s"}},
                   "Δp",
                   *run.answer.air.loss_harris_Pa,
                   "Pa",
                   std::nullopt,
                   {"Harris' formula for iron pipe, for comparison only", SourceLabel::read}});
}

void show_water(CheckRun& run, const SiteAir& site, const AirSupply& supply) {
  const auto saturated = saturation_pressure(site.temperature), over_water = saturation_over_water(site.temperature);
  if (!run.answer.air.water || !saturated || !over_water) return;
  const AirWater& water = *run.answer.air.water;
  run.add_working(
      {"air.water",
       "air",
       translatable("m = 0.62198 (φ p_w/(p_h − φ p_w) − p_s/(p_h + p − p_s)) (p_h − φ p_w) Q/(R T), not below 0"),
       {{"φ", water.humidity, ""},
        {"p_w", over_water->Pa, "Pa"},
        {"p_s", saturated->Pa, "Pa"},
        {"p_h", supply.ambient.Pa, "Pa"},
        {"p", supply.at_tool.Pa, "Pa"},
        {"Q", supply.free_air.m3_s, "m³/s"},
        {"R", air_gas_constant_J_kg_K, "J/(kg K)"},
        {"T", site.temperature.K, "K"}},
       "m",
       water.comes_out_kg_s,
       "kg/s",
       std::nullopt,
       {"vapour drawn in, less what the compressed air holds once it has cooled; p_w over water, p_s over ice below "
        "0 °C, Magnus' form",
        SourceLabel::derived}});
}

void show_oil(CheckRun& run) {
  const Oil& oil = run.crossing.air.oil;
  if (!run.answer.air.oil.for_nine_in_ten) return;
  run.add_working(
      {"air.oil",
       "air",
       "V = r t",
       {{"r", run.answer.air.oil.rate.m3_s, "m³/s"}, {"t", *run.answer.advance_time_s.p90, "s"}},
       "V",
       run.answer.air.oil.for_nine_in_ten->m3,
       "m³",
       std::nullopt,
       {oil.rate ? translatable("rate entered, time that nine bores in ten take")
                 : translatable("a fluid ounce an hour for 100 ft³/min of free air, time that nine bores in ten take"),
        oil.rate ? SourceLabel::owners_setting : SourceLabel::from_memory}});
}

void show_mark(CheckRun& run, const Mark& mark) {
  run.add_working(
      {"air.mark",
       "air",
       "s = m + L_t + t",
       {{"m", *mark.hose_m, "m"}, {"L_t", run.tool.length.m, "m"}, {"t", run.crossing.air.tail_fitting->m, "m"}},
       "s",
       *mark.nose_m,
       "m",
       std::nullopt,
       {"the nose is a tool and its tail fitting ahead of the hose", SourceLabel::derived}});
}

}  // namespace burrow

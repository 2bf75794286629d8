#include "burrow/air/line.h"
#include "burrow/base/phrase.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

/// What does not change from one trial of the flow to the next.
struct PartNumbers {
  double area_m2 = 0, over_bore = 0, rough = 0;
};

PartNumbers numbers_of(const LinePart& part) {
  return {pi * part.bore.m * part.bore.m / 4, part.length.m / part.bore.m, part.roughness.m / part.bore.m};
}

/// p1 from (p1/p2)² − 1 = m (F + 2 ln(p1/p2)), m = K/p2² ≤ 1, F = f L/D. With p1 = p2 (1 + δ) and ln(1 + δ) ≤ δ the
/// root lies below δ = m F/((1 − m) + √((1 − m)² + m F)). From there Newton comes down on it: the equation bends
/// upward.
double inlet_of(double p2, double K, double friction) {
  if (!(K > 0) || !(friction > 0)) return p2;
  const double m = std::min(K / (p2 * p2), 1.0), short_of = 1 - m;
  double d = m * friction / (short_of + std::sqrt(short_of * short_of + m * friction));
  for (int step = 0; step < 40; ++step) {
    const double h = d * (2 + d) - m * (friction + 2 * std::log1p(d));
    const double next = d - h / (2 * (1 + d - m / (1 + d)));
    if (!(next > 0 && next < d)) break;  // as near as rounding lets it come
    const bool done = d - next <= 1e-14 * (1 + d);
    d = next;
    if (done) break;
  }
  return p2 * (1 + d);
}

PartFlow back_through(const LinePart& part, const SiteAir& air, double outlet_Pa, double mass_kg_s) {
  const PartNumbers n = numbers_of(part);
  const double G = mass_kg_s / n.area_m2, RT = air_gas_constant_J_kg_K * air.temperature.K, K = G * G * RT;
  PartFlow flow;
  flow.entered = part.entered;
  const double sonic = std::sqrt(K);
  flow.choked = outlet_Pa < sonic;
  flow.outlet_Pa = std::max(outlet_Pa, sonic);
  flow.speed_m_s = G * RT / flow.outlet_Pa;
  const double reynolds = G * part.bore.m / air.viscosity_Pa_s;
  flow.inlet_Pa =
      reynolds > 0 ? inlet_of(flow.outlet_Pa, K, friction_factor(reynolds, n.rough) * n.over_bore) : flow.outlet_Pa;
  return flow;
}

double equivalent_m(const AirPart& part) {
  const double usual = part.kind == AirPartKind::coupling ? coupling_equivalent_m : lubricator_equivalent_m;
  return part.equivalent_length.value_or(Length{usual}).m * static_cast<double>(*part.count);
}

}  // namespace

Result<std::vector<LinePart>> line_parts(const std::vector<AirPart>& entered) {
  const auto first = std::find_if(entered.begin(), entered.end(),
                                  [](const AirPart& p) { return p.kind == AirPartKind::hose && p.bore; });
  if (first == entered.end())
    return fail(translatable("hose"), "none with a bore", "a hose with length and bore", "no-hose");
  std::vector<LinePart> parts;
  parts.reserve(entered.size());
  LinePart hose;
  hose.bore = *first->bore;
  hose.roughness = *first->roughness;
  for (std::size_t i = 0; i < entered.size(); ++i) {
    const AirPart& part = entered[i];
    LinePart one;
    one.entered = i;
    if (part.kind == AirPartKind::hose) {
      if (!part.length || !part.bore)
        return fail(translatable("hose"), "no length or no bore", "a hose with length and bore", "no-hose");
      one.length = *part.length;
      one.bore = *part.bore;
      one.roughness = *part.roughness;
      hose = one;
    } else {
      one.length = Length{equivalent_m(part)};
      one.bore = part.bore.value_or(hose.bore);
      one.roughness = part.roughness.entered ? *part.roughness : hose.roughness;
    }
    if (!(one.bore.m >= 0.001 && one.bore.m <= 5))
      return out_of_range(translatable("hose bore"), one.bore.m, "0.001 to 5 m");
    if (!(one.roughness.m >= 0 && one.roughness.m <= 0.05 * one.bore.m))
      return out_of_range(translatable("roughness"), one.roughness.m, "0 to a twentieth of the bore");
    if (!(one.length.m >= 0 && one.length.m <= 1e5))
      return out_of_range(translatable("length"), one.length.m, "0 to 100000 m");
    parts.push_back(one);
  }
  return parts;
}

double friction_factor(double reynolds, double relative_roughness) {
  const double laminar = 64 / reynolds;
  if (reynolds < 500) return laminar;  // there 64/Re is the greater one
  const double a = relative_roughness / 3.7, b = 2.51 / reynolds;
  double x = -1.8 * std::log10(std::pow(a, 1.11) + 6.9 / reynolds);
  for (int step = 0; step < 2; ++step) {
    const double inside = a + b * x;
    x -= (x + 2 * std::log10(inside)) / (1 + 2 * b / (std::log(10.0) * inside));
  }
  return std::max(laminar, 1 / (x * x));
}

std::vector<PartFlow> flow_back(const std::vector<LinePart>& parts, const SiteAir& air, Pressure outlet_absolute,
                                double mass_kg_s) {
  std::vector<PartFlow> flows(parts.size());
  double outlet = outlet_absolute.Pa;
  for (std::size_t i = parts.size(); i-- > 0;) {
    flows[i] = back_through(parts[i], air, outlet, mass_kg_s);
    outlet = flows[i].inlet_Pa;
  }
  return flows;
}

Pressure inlet_for(const std::vector<LinePart>& parts, const SiteAir& air, Pressure outlet_absolute, double mass_kg_s) {
  double outlet = outlet_absolute.Pa;
  for (std::size_t i = parts.size(); i-- > 0;) outlet = back_through(parts[i], air, outlet, mass_kg_s).inlet_Pa;
  return {outlet};
}

std::optional<Pressure> harris_outlet(const std::vector<LinePart>& parts, Pressure inlet_absolute,
                                      VolumeFlow free_air) {
  constexpr double foot_m = 0.3048, inch_m = 0.0254, psi_Pa = 6894.757293168361;
  const double q_ft3_min = free_air.m3_s * 60 / (foot_m * foot_m * foot_m);
  double squared = std::pow(inlet_absolute.Pa / psi_Pa, 2);
  for (const LinePart& part : parts)
    squared -= 2 * part.length.m / foot_m * q_ft3_min * q_ft3_min / (2390 * std::pow(part.bore.m / inch_m, 5.31));
  if (!(squared > 0)) return std::nullopt;
  return Pressure{std::sqrt(squared) * psi_Pa};
}

}  // namespace burrow

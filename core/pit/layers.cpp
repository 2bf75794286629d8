#include "layers.h"

#include <algorithm>

#include "burrow/pit/slope.h"

namespace burrow {

namespace {

/// Upper or lower of two lines, with the points where they cross.
LevelLine outer(const LevelLine& a, const LevelLine& b, bool upper, double from_m, double to_m) {
  std::vector<double> stations{from_m, to_m};
  for (const LevelLine* line : {&a, &b})
    for (const LevelPoint& p : *line)
      if (p.station_m > from_m && p.station_m < to_m) stations.push_back(p.station_m);
  std::sort(stations.begin(), stations.end());
  stations.erase(std::unique(stations.begin(), stations.end()), stations.end());
  LevelLine line;
  double za_before = 0, zb_before = 0;
  for (const double x : stations) {
    const double za = elevation_at(a, x), zb = elevation_at(b, x);
    if (!line.empty() && (za_before - zb_before) * (za - zb) < 0) {
      const double t = (za_before - zb_before) / ((za_before - zb_before) - (za - zb));
      const double crossing = line.back().station_m + t * (x - line.back().station_m);
      if (crossing > line.back().station_m && crossing < x)
        line.push_back({crossing, za_before + t * (za - za_before)});
    }
    line.push_back({x, upper ? std::max(za, zb) : std::min(za, zb)});
    za_before = za;
    zb_before = zb;
  }
  return line;
}

double top_at(const Site& site, std::size_t stratum, double station_m, double ground) {
  const std::optional<LevelLine>& top = site.strata[stratum].top;
  return stratum == 0 || !top || top->empty() ? ground : std::min(elevation_at(*top, station_m), ground);
}

double flattest(const ExcavationRuleSet& rules) {
  double run = 0;
  for (const SlopeRow& row : rules.slopes) run = std::max(run, row.run_per_rise.v);
  return run;
}

}  // namespace

std::vector<PitLayer> layers_at(const Site& site, double station_m, double ground_m, double floor_elevation_m) {
  std::vector<PitLayer> layers;
  const auto add = [&](std::size_t stratum, double top, double bottom) {
    if (bottom < top) layers.push_back({stratum, top, bottom});
  };
  if (site.strata.size() < 2) {
    add(0, ground_m, floor_elevation_m);
    return layers;
  }
  // From the lowest up: a stratum begins where those below it end.
  double below = floor_elevation_m;
  for (std::size_t i = site.strata.size(); i-- > 0;) {
    const double top = top_at(site, i, station_m, ground_m);
    add(i, top, below);
    below = std::max(below, top);
  }
  std::reverse(layers.begin(), layers.end());
  return layers;
}

void slope_layers(std::vector<PitLayer>& layers, const ExcavationRuleSet& rules, double depth_m, const Pit& pit) {
  const Length depth{std::max(depth_m, 0.0)};
  // The short-term slope stands in the rules for one soil only.
  const std::optional<Duration> open_time = layers.size() == 1 ? pit.open_time : std::nullopt;
  const DutyRow* distress = pit.signs.distress.value_or(false) ? find_duty(rules, "distress-flatter") : nullptr;
  const double flatter = distress ? distress->value : 0.0;
  double flattest_below = 0, compound_below = 0;
  for (std::size_t i = layers.size(); i-- > 0;) {
    const Result<Ratio> allowed = least_run_per_rise(rules, layers[i].type, depth, open_time);
    const Result<Ratio> compound = least_run_per_rise(rules, layers[i].type, depth);
    flattest_below = std::max(flattest_below, (allowed ? allowed->v : flattest(rules)) + flatter);
    compound_below = std::max(compound_below, (compound ? compound->v : flattest(rules)) + flatter);
    layers[i].run_per_rise = flattest_below;
    layers[i].compound_run_per_rise = compound_below;
  }
}

std::vector<SlopeStep> steps_of(const std::vector<PitLayer>& layers, const PitSide& side,
                                const ExcavationRuleSet& rules, double floor_elevation_m, double depth_m) {
  const bool over_upright = *side.kind == SideKind::sloped && side.upright && side.upright->m > 0;
  const bool compound = over_upright || *side.kind == SideKind::benched;
  ExcavationType worst = ExcavationType::stable_rock;
  for (const PitLayer& layer : layers) worst = std::max(worst, layer.type);
  const UprightPartRow* row =
      over_upright && !side.support_top ? upright_part_row(rules, worst, Length{std::max(depth_m, 0.0)}) : nullptr;
  std::vector<SlopeStep> steps;
  for (std::size_t i = layers.size(); i-- > 0;) {
    const double run = compound ? layers[i].compound_run_per_rise : layers[i].run_per_rise;
    steps.push_back({layers[i].top_m - floor_elevation_m, row ? std::max(run, row->run_above.v) : run});
  }
  return steps;
}

std::optional<LevelLine> top_of(const Site& site, std::size_t stratum, double from_m, double to_m) {
  if (stratum == 0 || site.strata.size() < 2) return std::nullopt;
  LevelLine line;
  for (std::size_t i = site.strata.size(); i-- > stratum;) {
    const std::optional<LevelLine>& top = site.strata[i].top;
    if (!top || top->empty()) return std::nullopt;
    line = line.empty() ? *top : outer(line, *top, true, from_m, to_m);
  }
  return line;
}

LevelLine surface_of(const Site& site, std::size_t stratum, double from_m, double to_m) {
  const std::optional<LevelLine> top = top_of(site, stratum, from_m, to_m);
  return top ? outer(*top, site.ground, false, from_m, to_m) : site.ground;
}

}  // namespace burrow

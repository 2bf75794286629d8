#pragma once
/// The clean crossing with a launch pit to be changed, and what the tests of its sides ask.

#include "support/clean_crossing.h"

namespace burrow::test {

inline void shore_all(Pit& pit) {
  for (PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right}) *side = shored_side();
}

/// Launch pit so deep in one soil that somebody saw, dry, every sign looked for, its type typed and confirmed; nothing
/// beside it; shored all round.
inline Crossing pit_in(std::string soil, double depth_m, std::optional<ExcavationType> type = std::nullopt,
                       ExcavationRules rules = ExcavationRules::us_1926) {
  Crossing c = clean_crossing();
  c.site.surface.clear();
  c.site.utilities.front() = water_main(4, 90.0);
  c.site.water = LevelLine{{-8, 85}, {20, 85}};
  c.site.strata.front().soil = std::move(soil);
  c.pits.rules.set(rules);
  Pit& pit = c.pits.launch;
  pit.floor_elevation = Length{100 - depth_m};
  pit.floor_width = Length{1.2};
  pit.soil_type = type;
  pit.confirmed_by = "A. Muster";
  PitSigns& s = pit.signs;
  s.fissured = s.vibrated = s.disturbed = s.seeping = s.distress = false;
  s.joints = s.dips_inward = s.loose_fill = s.soft_deposit = s.open_drainage = s.flowing = s.steep_heap = false;
  s.steep_ground = false;
  shore_all(pit);
  shore_all(c.pits.exit);
  return c;
}

inline PitSide sloped(std::optional<double> run = std::nullopt) {
  PitSide side;
  side.kind.set(SideKind::sloped);
  if (run) side.run_per_rise = Ratio{*run};
  return side;
}

struct Step {
  double rise_m, tread_m;
  std::optional<double> run_per_rise = std::nullopt;
};
inline PitSide benched(const std::vector<Step>& steps) {
  PitSide side;
  side.kind.set(SideKind::benched);
  for (const Step& step : steps) {
    Bench& bench = side.benches.emplace_back();
    bench.rise = Length{step.rise_m};
    bench.tread = Length{step.tread_m};
    if (step.run_per_rise) bench.run_per_rise = Ratio{*step.run_per_rise};
  }
  return side;
}

/// Stops of the launch pit whose codes begin so.
inline int stops(const Crossing& crossing, std::string_view code) {
  const Assessment answer = judged(crossing);
  return static_cast<int>(std::count_if(answer.findings.begin(), answer.findings.end(), [&](const Finding& f) {
    return f.subject == "launch-pit" && f.severity == Severity::stop && f.code == code;
  }));
}

}  // namespace burrow::test

#pragma once
/// A bore in one soil under level ground at 0, with everything that is random switched off.

#include "burrow/bore/steering.h"
#include "burrow/file/tables_file.h"
#include "burrow/trials/trials.h"

namespace burrow::for_tests {

inline const Tables& all_tables() {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  return tables;
}

inline Stratum known_stratum(const char* soil, std::optional<LevelLine> top = std::nullopt) {
  Stratum stratum;
  stratum.soil = soil;
  stratum.known.set(StratumEvidence::seen);
  stratum.top = std::move(top);
  return stratum;
}

struct TrialCase {
  Crossing crossing;
  TrialsSetup setup;

  explicit TrialCase(const char* soil, double z = -1.5, double length = 15) {
    crossing.site.ground = {{-5, 0}, {60, 0}};
    crossing.site.strata = {known_stratum(soil)};
    crossing.bore.tool.tool_class = "tool-65";
    crossing.bore.launch.elevation = {z};
    crossing.bore.exit.station = {length};
    setup.window = {-0.5, 0.5, z - 0.5, z + 0.5};
    setup.rules = {Length{0.3}, Length{0.6}, Length{0.6}, {}, {}};
    certain();
  }
  /// Nothing random: no spread, no wander, no stones, no refusal.
  void certain() {
    Bore& bore = crossing.bore;
    bore.launch.position_sd.set(Length{0});
    bore.launch.level_sd.set(Angle{0});
    bore.launch.aim_sd.set(Angle{0});
    bore.model.steer_constant_sd.set(Ratio{0});
    for (Stratum& stratum : crossing.site.strata) quiet(stratum.values);
    for (Strip& strip : crossing.site.strips) quiet(strip.values);
  }
  static void quiet(SoilOverrides& values) {
    values.wander = Wander{0};
    values.stone_rate = RatePerLength{0};
    values.refusal_rate = RatePerLength{0};
  }
  void straight() {
    crossing.bore.model.steer_constant.set(Ratio{0});
    crossing.bore.model.steer_constant_sd.set(Ratio{0});
  }
  [[nodiscard]] Trials run(std::int64_t count, unsigned threads = 0) const {
    Crossing asked = crossing;
    asked.bore.trials.count.set(count);
    return run_trials(asked, all_tables(), setup, {}, {}, threads);
  }
  [[nodiscard]] BorePath path() const {
    return predict_path(Ground(crossing.site, all_tables()), tool(), crossing.bore);
  }
  [[nodiscard]] Tool tool() const { return resolve_tool(crossing.bore.tool, all_tables()); }
};

inline Utility crossing_utility(double x, double z, double lateral_sd, double vertical_sd) {
  Utility utility;
  utility.id = "u1";
  utility.kind = UtilityKind::water;
  utility.outside_diameter = Length{0.11};
  utility.located.lateral_sd = Length{lateral_sd};
  utility.located.vertical_sd = Length{vertical_sd};
  utility.path = {{x, -20, z}, {x, 20, z}};
  return utility;
}

}  // namespace burrow::for_tests

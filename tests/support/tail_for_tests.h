#pragma once
/// Crossings in which the tail of the steering constant decides, and what the closed forms and the trials say of them.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "burrow/check/trials_plan.h"
#include "support/clean_crossing.h"

namespace burrow::test {

inline constexpr std::int64_t tail_trials = 400000;

/// One chance by both.
struct BothWays {
  std::string what;
  double closed = 0, trials = 0;
  [[nodiscard]] double ratio() const { return closed / trials; }
  /// The trials give between 0.05 % and 50 %.
  [[nodiscard]] bool counts() const { return trials >= 0.0005 && trials <= 0.5; }
};

inline Utility duct(const std::string& id, double station_m, double elevation_m, double lean, double sd_m) {
  Utility u = water_main(station_m, elevation_m);
  u.id = id;
  u.located.lateral_sd = Length{sd_m};
  u.located.vertical_sd = Length{sd_m};
  u.path = {{station_m - 12 * lean, -12, elevation_m}, {station_m + 12 * lean, 12, elevation_m}};
  return u;
}

/// Dense sand, a tool of 130 mm, a duct 0.83 m above the bore.
inline Crossing dense_sand_under_a_duct() {
  Crossing c = clean_crossing();
  c.site.strata[0].soil = "dense-sand";
  c.bore.tool.tool_class = "tool-130";
  c.bore.launch.elevation = Length{98.2};
  c.bore.exit.station = Length{15};
  c.site.utilities = {duct("u1", 12.4, 98.2 + 0.83, 0, 0.05)};
  return c;
}

/// Soil, tool, depth, grade, length, water, guesses and utilities by a seed; no two alike. One in four has a second
/// stratum, its top `below_m` and up to 0.9 m more under the launch.
inline Crossing tail_crossing(std::uint32_t seed, double below_m = 0.8) {
  std::mt19937 engine(seed * 7919 + 17);
  const auto any = [&](double from, double to) {
    return from + (to - from) * (static_cast<double>(engine()) / 4294967296.0);
  };
  constexpr std::array soils{"dense-sand", "medium-sand", "loose-sand", "firm-clay",
                             "soft-clay",  "stiff-clay",  "silt",       "made-ground"};
  constexpr std::array tools{"tool-55", "tool-65", "tool-95", "tool-130"};
  Crossing c = clean_crossing();
  c.site.strata[0].soil = soils[engine() % soils.size()];
  c.bore.tool.tool_class = tools[engine() % tools.size()];
  const double length = any(6, 20), depth = any(0.9, 2.4);
  c.bore.launch.elevation = Length{100 - depth};
  c.bore.launch.grade = Ratio{any(-0.03, 0.02)};
  c.bore.exit.station = Length{length};
  c.site.ground = {{-8, 100}, {length / 2, 100 + any(-0.2, 0.2)}, {length + 12, 100 + any(-0.3, 0.3)}};
  c.site.water = LevelLine{{-8, 100 - any(0.5, 8)}, {length + 12, 100 - any(0.5, 8)}};
  if (seed % 3 != 0) c.site.strata[0].known.set(StratumEvidence::guess);
  if (seed % 4 == 1) {
    Stratum lower = c.site.strata[0];
    lower.id = "l2";
    lower.soil = soils[engine() % soils.size()];
    lower.top =
        LevelLine{{-8, 100 - depth - below_m - any(0, 0.9)}, {length + 12, 100 - depth - below_m - any(0, 0.9)}};
    lower.known.set(seed % 8 == 1 ? StratumEvidence::guess : StratumEvidence::seen);
    c.site.strata.push_back(lower);
  }
  c.site.utilities.clear();
  c.site.surface.clear();
  for (int i = 0; i < 6; ++i) {
    const double station = any(0.25, 0.97) * length, away = any(0.15, 1.3) * (i % 2 ? 1 : -1);
    const double level = 100 - depth + c.bore.launch.grade.v * station;
    const double in_the_ground = std::min(level + away, elevation_at(c.site.ground, station) - 0.35);
    c.site.utilities.push_back(
        duct("u" + std::to_string(i + 1), station, in_the_ground, any(-0.7, 0.7), any(0.01, 0.2)));
  }
  return c;
}

/// Each utility alone, refusal off; cases marked `bound` are left out.
inline std::vector<BothWays> both_ways(Crossing crossing, std::int64_t count = tail_trials) {
  crossing.bore.trials.count.set(count);
  const Assessment answer = judged(crossing);
  TrialsSetup setup = trials_setup(crossing, tables(), answer);
  setup.each_alone = true;
  setup.refusal = false;
  setup.paths_kept = 0;
  const Trials trials = run_trials(crossing, tables(), setup);
  std::vector<BothWays> all;
  const std::string where = crossing.site.strata[0].soil + " " + crossing.bore.tool.tool_class + " ";
  for (std::size_t i = 0; i < answer.utilities.size(); ++i) {
    const UtilityAnswer& u = answer.utilities[i];
    if (u.by == ContactBy::bound) continue;
    all.push_back({where + "contact " + u.id, *u.contact_chance, trials.utilities[i].contact.chance()});
    all.push_back({where + "encroachment " + u.id, *u.encroachment_chance, trials.utilities[i].encroachment.chance()});
  }
  all.push_back({where + "daylight", *answer.chance_of_daylight, trials.daylight.chance()});
  if (answer.arrival.chance_inside_exit_pit) {
    const double inside = *answer.arrival.chance_inside_exit_pit;
    all.push_back({where + "outside the window", 1 - inside, 1 - trials.inside_window.chance()});
    all.push_back({where + "inside the window", inside, trials.inside_window.chance()});
  }
  return all;
}

struct RatioRange {
  int crossings = 0, compared = 0;
  double least = 1e9, most = 0;
  std::string least_at, most_at;
  void take(const BothWays& both) {
    if (!both.counts()) return;
    ++compared;
    if (both.ratio() < least) least_at = both.what;
    if (both.ratio() > most) most_at = both.what;
    least = std::min(least, both.ratio());
    most = std::max(most, both.ratio());
  }
};

}  // namespace burrow::test

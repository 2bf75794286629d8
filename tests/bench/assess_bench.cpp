/// How long one assessment takes. The baseline of the ratio is the same crossing without its utilities, made in the
/// same run.

#include <benchmark/benchmark.h>

#include <chrono>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/crossing/blank.h"
#include "burrow/file/tables_file.h"
#include "kept_memory.h"

namespace {

using namespace burrow;

const bool kept = keep_freed_memory();  // as the program does

const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

/// A bore of `length` in four strata, crossed by `count` utilities of `segments` segments each at changing angles, from
/// `near_m` to 2.5 m further off.
Crossing crossing_with(int count, int segments, double length, double near_m, StratumEvidence known) {
  Crossing c = blank_crossing();
  c.site.ground = {{-10, 100}, {0, 100}, {length / 2, 100.4}, {length + 10, 100.1}};
  const char* soils[] = {"made-ground", "loose-sand", "firm-clay", "medium-sand"};
  c.site.strata.clear();
  for (int i = 0; i < 4; ++i) {
    Stratum s;
    s.id = "l" + std::to_string(i + 1);
    s.soil = soils[i];
    s.known.set(known);
    if (i > 0) s.top = LevelLine{{-10, 100 - 0.5 * i}, {length + 10, 100.1 - 0.5 * i}};
    c.site.strata.push_back(s);
  }
  c.site.water = LevelLine{{-10, 97.5}, {length + 10, 97.5}};
  c.bore.launch.elevation = Length{98.4};
  c.bore.exit.station = Length{length};
  for (int i = 0; i < count; ++i) {
    Utility u;
    u.id = "u" + std::to_string(i + 1);
    u.kind = static_cast<UtilityKind>(i % 8);
    u.outside_diameter = Length{0.1};
    u.located.lateral_sd = Length{0.1};
    u.located.vertical_sd = Length{0.08};
    const double x = length * (i + 0.5) / count;
    const double lean = 0.6 * std::sin(0.7 * i);
    const double away = near_m + 2.5 * std::abs(std::sin(1.3 * i));
    const double z = 98.4 + (i % 2 ? away : -away);
    for (int k = 0; k <= segments; ++k) {
      const double y = -10 + 20.0 * k / segments;
      u.path.push_back({x + lean * y, y, z + 0.01 * y});
    }
    c.site.utilities.push_back(u);
  }
  return c;
}

double seconds_of_one(const Crossing& crossing) {
  double best = 1e9;
  for (int i = 0; i < 30; ++i) {
    const auto start = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(assess(crossing, tables()));
    best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  return best;
}

void assess_crossing(benchmark::State& state) {
  const Crossing crossing = crossing_with(
      static_cast<int>(state.range(0)), static_cast<int>(state.range(1)), static_cast<double>(state.range(2)),
      static_cast<double>(state.range(3)) / 100, state.range(4) ? StratumEvidence::guess : StratumEvidence::seen);
  for (auto _ : state) benchmark::DoNotOptimize(assess(crossing, tables()));
  Crossing bare = crossing;
  bare.site.utilities.clear();
  state.counters["ratio_to_no_utilities"] = seconds_of_one(crossing) / seconds_of_one(bare);
}
BENCHMARK(assess_crossing)
    ->ArgNames({"utilities", "segments", "length", "near", "guessed"})
    ->Args({0, 1, 15, 50, 0})
    ->Args({0, 1, 15, 50, 1})
    ->Args({6, 1, 15, 50, 0})
    ->Args({60, 1, 15, 50, 0})
    ->Args({200, 1, 15, 50, 0})
    ->Args({60, 1, 15, 50, 1})
    ->Args({0, 1, 45, 50, 0})
    ->Args({0, 1, 45, 50, 1})
    ->Args({200, 1, 45, 50, 0})
    ->Args({200, 50, 45, 50, 0})
    ->Args({200, 1, 45, 5, 0})
    ->Unit(benchmark::kMicrosecond);

/// 200 utilities along the bore, 0.3 to 1.8 m from it, at up to three degrees.
void assess_parallel(benchmark::State& state) {
  Crossing crossing = crossing_with(static_cast<int>(state.range(0)), 1, 15, 0.5, StratumEvidence::seen);
  int i = 0;
  for (Utility& u : crossing.site.utilities) {
    const double turn = 2.4 * i, away = 0.3 + 1.5 * std::abs(std::sin(1.3 * i)), lean = 0.05 * std::sin(0.7 * i);
    const double y = away * std::cos(turn), z = 98.4 + away * std::sin(turn);
    u.path = {{-2, y - 8 * lean, z}, {17, y + 8 * lean, z + 0.02}};
    ++i;
  }
  for (auto _ : state) benchmark::DoNotOptimize(assess(crossing, tables()));
}
BENCHMARK(assess_parallel)->ArgName("utilities")->Arg(200)->Unit(benchmark::kMicrosecond);

/// One line beside the bore, dug for every few centimetres or every metre.
Crossing crossing_with_holes(int holes) {
  Crossing crossing = crossing_with(1, 1, 15, 0.5, StratumEvidence::seen);
  Utility& u = crossing.site.utilities.front();
  u.path = {{-2, 0.9, 99.0}, {17, 1.1, 99.1}};
  crossing.site.test_holes.clear();
  for (int i = 0; i < holes; ++i) {
    TestHole hole;
    hole.id = "h" + std::to_string(i + 1);
    hole.utility = u.id;
    const double share = holes > 1 ? static_cast<double>(i) / (holes - 1) : 0.5;
    hole.station = Length{-2 + 19 * share};
    hole.offset = Length{0.9 + 0.2 * share + 0.02 * std::sin(1.7 * i)};
    hole.level.set(LevelMeant::centre);
    hole.elevation = Length{99.0 + 0.1 * share + 0.02 * std::cos(2.3 * i)};
    hole.date = "2026-02-26";
    hole.by = "A. Nobody";
    crossing.site.test_holes.push_back(hole);
  }
  return crossing;
}

/// 400 holes are to cost no more than 20.
void assess_holes(benchmark::State& state) {
  const Crossing crossing = crossing_with_holes(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(assess(crossing, tables()));
  state.counters["ratio_to_20_holes"] = seconds_of_one(crossing) / seconds_of_one(crossing_with_holes(20));
}
BENCHMARK(assess_holes)->ArgName("holes")->Arg(20)->Arg(400)->Unit(benchmark::kMicrosecond);

/// Six utilities, and surveyed points over 31 m by 20 m beside the line.
Crossing surveyed_crossing(std::int64_t count, bool sloped) {
  Crossing crossing = crossing_with(6, 1, 15, 0.5, StratumEvidence::seen);
  for (std::int64_t i = 0; i < count; ++i) {
    const double x = -8 + 31 * std::fmod(0.618034 * static_cast<double>(i), 1.0);
    const double y = -10 + 20 * (static_cast<double>(i) + 0.5) / static_cast<double>(count);
    crossing.site.ground_points.push_back({x, y, 100 + 0.08 * y + 0.1 * std::sin(x)});
  }
  if (!sloped) return crossing;
  for (Pit* pit : {&crossing.pits.launch, &crossing.pits.exit})
    for (PitSide* side : {&pit->sides.back, &pit->sides.left, &pit->sides.right}) side->kind.set(SideKind::sloped);
  return crossing;
}

/// As in a drag of the bore: the surface of the last answer is taken on. `sloped`: all sides but the bore's cut back.
/// The baseline is the same crossing without the points, in the same run.
void assess_surveyed(benchmark::State& state) {
  const Crossing crossing = surveyed_crossing(state.range(0), state.range(1) != 0);
  GroundSurface surface = assess(crossing, tables()).ground_surface;
  double best = 1e9;
  for (auto _ : state) {
    const auto start = std::chrono::steady_clock::now();
    const Assessment answer = assess(crossing, tables(), surface);
    best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    surface = answer.ground_surface;
    benchmark::DoNotOptimize(answer.launch_pit.volume_m3);
  }
  Crossing plain = crossing;
  plain.site.ground_points.clear();
  state.counters["ratio_to_ground_line"] = best / seconds_of_one(plain);
}
BENCHMARK(assess_surveyed)
    ->ArgNames({"points", "sloped"})
    ->ArgsProduct({{0, 20, 200, 5000, 50000}, {0, 1}})
    ->Unit(benchmark::kMicrosecond);

/// As in a drag of one of the points, the last but one on the left: the other side is taken on. Made afresh: without.
void assess_point_moved(benchmark::State& state) {
  Crossing crossing = surveyed_crossing(state.range(0), false);
  Point3& moved = crossing.site.ground_points[crossing.site.ground_points.size() - 2];
  GroundSurface surface;
  for (auto _ : state) {
    moved.x_m += 0.001;
    const Assessment answer = assess(crossing, tables(), surface);
    if (state.range(1)) surface = answer.ground_surface;
    benchmark::DoNotOptimize(answer.launch_pit.volume_m3);
  }
}
BENCHMARK(assess_point_moved)
    ->ArgNames({"points", "kept"})
    ->ArgsProduct({{200, 5000, 50000}, {0, 1}})
    ->Unit(benchmark::kMicrosecond);

}  // namespace

/// How long a map of launches takes, against as many plain assess() calls on the same cores in the same run.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <thread>

#include "burrow/base/parallel_for.h"
#include "burrow/check/assess.h"
#include "burrow/crossing/blank.h"
#include "burrow/file/tables_file.h"
#include "burrow/search/launch_map.h"

namespace {

using namespace burrow;

const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

/// A street: four strata, a road with two footways, and that many utilities across, at usual depths.
Crossing street(int count, bool guessed) {
  Crossing c = blank_crossing();
  c.site.ground = {{-10, 100}, {0, 100}, {7, 100.2}, {24, 100.1}};
  const char* soils[] = {"made-ground", "loose-sand", "firm-clay", "medium-sand"};
  c.site.strata.clear();
  for (int i = 0; i < 4; ++i) {
    Stratum s;
    s.id = "l" + std::to_string(i + 1);
    s.soil = soils[i];
    s.known.set(guessed ? StratumEvidence::guess : StratumEvidence::seen);
    if (i > 0) s.top = LevelLine{{-10, 100 - 0.6 * i}, {24, 100.1 - 0.6 * i}};
    c.site.strata.push_back(s);
  }
  c.site.water = LevelLine{{-10, 96.5}, {24, 96.5}};
  SurfaceFeature road;
  road.id = "f1";
  road.kind = SurfaceKind::road;
  road.from = Length{3};
  road.to = Length{11};
  c.site.surface = {road};
  c.bore.launch.elevation = Length{98.4};
  c.bore.exit.station = Length{14};
  for (int i = 0; i < count; ++i) {
    Utility u;
    u.id = "u" + std::to_string(i + 1);
    u.kind = static_cast<UtilityKind>(i % 8);
    u.outside_diameter = Length{0.1};
    u.located.lateral_sd = Length{0.1};
    u.located.vertical_sd = Length{0.08};
    const double x = 13.5 * (i + 0.5) / count, lean = 0.3 * std::sin(0.7 * i);
    const double z = i % 3 == 0 ? 96.6 - 0.1 * (i % 4) : 99.2 + 0.15 * (i % 3);
    for (int k = 0; k <= 2; ++k) {
      const double y = -8 + 8.0 * k;
      u.path.push_back({x + lean * y, y, z + 0.01 * y});
    }
    c.site.utilities.push_back(u);
  }
  return c;
}

double seconds(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// The same launches by plain assess(), on the same number of threads.
double plain_seconds(const Crossing& crossing, int cells, unsigned threads) {
  LaunchMapOptions options;
  options.cells = cells;
  const auto [across, down] = map_axes(crossing, tables(), options);
  std::vector<Crossing> copies(threads, crossing);
  return seconds([&, &across = across, &down = down] {
    parallel_for(threads, static_cast<std::size_t>(down.count), {}, [&](std::size_t worker, std::size_t row) {
      for (int i = 0; i < across.count; ++i) {
        copies[worker].bore.launch = launch_at(crossing, options.over, {across.at(i), down.at(static_cast<int>(row))});
        benchmark::DoNotOptimize(assess(copies[worker], tables()));
      }
    });
  });
}

void launch_map(benchmark::State& state) {
  const Crossing crossing = street(static_cast<int>(state.range(1)), state.range(2) != 0);
  LaunchMapOptions options;
  options.cells = static_cast<int>(state.range(0));
  options.refine = state.range(3) != 0;
  options.threads = std::max(1U, std::thread::hardware_concurrency());
  double best = 1e9;
  for (auto _ : state)
    best = std::min(best, seconds([&] { benchmark::DoNotOptimize(search_launches(crossing, tables(), options)); }));
  double plain = 1e9;
  for (int i = 0; i < 2; ++i) plain = std::min(plain, plain_seconds(crossing, options.cells, options.threads));
  state.counters["threads"] = options.threads;
  state.counters["plain_ms"] = plain * 1e3;
  state.counters["ratio_to_plain"] = best / plain;
}
BENCHMARK(launch_map)
    ->ArgNames({"cells", "utilities", "guessed", "refine"})
    ->Args({16, 30, 0, 0})
    ->Args({64, 30, 0, 0})
    ->Args({64, 30, 0, 1})
    ->Args({16, 30, 1, 0})
    ->Args({64, 30, 1, 1})
    ->Args({64, 0, 0, 1})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace

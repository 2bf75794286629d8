// Random trials against a floor that only draws the same normals with the same generator on the same threads.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <ctime>
#include <thread>

#include "../../core/trials/random.h"
#include "burrow/file/tables_file.h"
#include "burrow/trials/trials.h"

namespace {

using namespace burrow;

/// 20 m under level firm clay, and `utilities` crossing it square, each 2 m, below the bore.
Crossing bore_of_20_m(int utilities, bool dipping = false, bool guess = false, bool trench = false) {
  Crossing crossing;
  crossing.site.ground = {{-5, 0}, {8, 0}, {25, dipping ? -0.8 : 0}};
  Stratum stratum;
  stratum.soil = "firm-clay";
  if (!guess) stratum.known.set(StratumEvidence::seen);
  crossing.site.strata = {stratum};
  if (dipping) {
    stratum.soil = "medium-sand";
    stratum.top = LevelLine{{-5, -0.8}, {25, -2.2}};
    crossing.site.strata.push_back(stratum);
  }
  if (trench) {
    Strip strip;
    strip.soil = "trench-backfill";
    strip.outline = {{9, -5}, {10, -5}, {10, 5}, {9, 5}};
    strip.bottom_elevation = {-2};
    crossing.site.strips = {strip};
  }
  crossing.bore.tool.tool_class = "tool-65";
  crossing.bore.launch.elevation = {-1.3};
  crossing.bore.exit.station = {20};
  for (int i = 0; i < utilities; ++i) {
    Utility utility;
    utility.id = "u" + std::to_string(i + 1);
    utility.kind = UtilityKind::water;
    utility.outside_diameter = Length{0.11};
    utility.located.lateral_sd = Length{0.15};
    utility.located.vertical_sd = Length{0.15};
    const double x = 1.0 + 2.0 * i;
    utility.path = {{x, -5, -2.2}, {x, 5, -2.2}};
    crossing.site.utilities.push_back(utility);
  }
  return crossing;
}

TrialsSetup setup() {
  TrialsSetup setup;
  setup.window = {-0.6, 0.6, -1.9, 0};
  setup.rules = {Length{0.3}, Length{0.6}, Length{0.6}, {}, {}};
  return setup;
}

const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

/// 200 steps with two normals each for every trial, by block as the trials draw them.
void draw_normals(unsigned threads) {
  const auto work = [&](unsigned first) {
    double sum = 0;
    for (std::uint64_t block = first; block < 625; block += threads) {
      trials::Draws draws(1, block);
      for (int i = 0; i < 200 * 2 * 32; ++i) sum += draws.normal();
    }
    benchmark::DoNotOptimize(sum);
  };
  std::vector<std::jthread> helpers;
  for (unsigned i = 1; i < threads; ++i) helpers.emplace_back(work, i);
  work(0);
}

/// The least seen, on the wall and on the processors together; the latter hardly minds a busy machine.
struct Best {
  double wall_ms = 1e9, processor_ms = 1e9;

  template <class Work>
  double take(Work&& work) {
    const auto begin = std::chrono::steady_clock::now();
    const std::clock_t ticks = std::clock();
    work();
    const double wall = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    wall_ms = std::min(wall_ms, 1e3 * wall);
    processor_ms = std::min(processor_ms, 1e3 * static_cast<double>(std::clock() - ticks) / CLOCKS_PER_SEC);
    return wall;
  }
};

/// Trials and floor in turns, so that both meet the same machine.
void against_floor(benchmark::State& state, const Crossing& crossing) {
  const unsigned threads = std::max(1U, std::thread::hardware_concurrency());
  Best floor, trials;
  for (auto _ : state) {
    floor.take([&] { draw_normals(threads); });
    state.SetIterationTime(trials.take([&] { benchmark::DoNotOptimize(run_trials(crossing, tables(), setup())); }));
  }
  state.counters["threads"] = threads;
  state.counters["floor_ms"] = floor.wall_ms;
  state.counters["trials_ms"] = trials.wall_ms;
  state.counters["ratio"] = trials.wall_ms / floor.wall_ms;
  state.counters["processor_ratio"] = trials.processor_ms / floor.processor_ms;
}

BENCHMARK_CAPTURE(against_floor, trials / 20000x20m, bore_of_20_m(0))->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(against_floor, trials / 20000x20m / ten_utilities, bore_of_20_m(10))
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(against_floor, trials / 20000x20m / dipping_strata, bore_of_20_m(10, true))
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(against_floor, trials / 20000x20m / guess, bore_of_20_m(10, true, true))
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(against_floor, trials / 20000x20m / old_trench, bore_of_20_m(10, false, false, true))
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace

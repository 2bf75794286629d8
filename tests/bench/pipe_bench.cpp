/// What judging the pipe and its loads adds to one assessment: the same crossing with and without its pipe, in one run.

#include <benchmark/benchmark.h>

#include "burrow/check/assess.h"
#include "burrow/check/load_profile.h"
#include "burrow/crossing/blank.h"
#include "burrow/file/tables_file.h"

namespace {

using namespace burrow;

const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

/// A bore of this length under a road with this traffic, in four strata, an excavator beside.
Crossing crossing_with(double length, const char* traffic, bool pipe) {
  Crossing c = blank_crossing();
  c.site.ground = {{-10, 100}, {0, 100}, {length + 10, 100.1}};
  const char* soils[] = {"made-ground", "loose-sand", "firm-clay", "medium-sand"};
  c.site.strata.clear();
  for (int i = 0; i < 4; ++i) {
    Stratum s;
    s.id = "l" + std::to_string(i + 1);
    s.soil = soils[i];
    s.known.set(StratumEvidence::seen);
    if (i > 0) s.top = LevelLine{{-10, 100 - 0.5 * i}, {length + 10, 100.1 - 0.5 * i}};
    c.site.strata.push_back(s);
  }
  c.site.water = LevelLine{{-10, 97.5}, {length + 10, 97.5}};
  SurfaceFeature road;
  road.id = "f1";
  road.from = Length{1};
  road.to = Length{length - 1};
  road.traffic = traffic;
  c.site.surface = {road};
  c.bore.launch.elevation = Length{98.4};
  c.bore.exit.station = Length{length};
  if (!pipe) return c;
  c.pipe = Pipe{};
  c.pipe->material = "pe100";
  c.pipe->outside_diameter = Length{0.063};
  c.pipe->sdr = Ratio{11};
  return c;
}

void assess_with_pipe(benchmark::State& state) {
  const char* words[] = {"highway", "en-1991-2", "cooper-e80"};
  const Crossing crossing = crossing_with(static_cast<double>(state.range(0)), words[state.range(1)], state.range(2));
  for (auto _ : state) benchmark::DoNotOptimize(assess(crossing, tables()));
}
BENCHMARK(assess_with_pipe)
    ->ArgNames({"length", "traffic", "pipe"})
    ->ArgsProduct({{15, 45}, {0, 1, 2}, {0, 1}})
    ->Unit(benchmark::kMicrosecond);

void load_by_depth(benchmark::State& state) {
  const Crossing crossing = crossing_with(15, "en-1991-2", true);
  const Assessment answer = assess(crossing, tables());
  for (auto _ : state) benchmark::DoNotOptimize(load_profile(crossing, tables(), answer, 7));
}
BENCHMARK(load_by_depth)->Unit(benchmark::kMicrosecond);

}  // namespace

/// A drag as a person makes it: real mouse events on the offscreen window, each frame with its assessment and its
/// paint. Prints median and 99th percentile of a frame, and the share of the assessment in one frame.

#include <benchmark/benchmark.h>

#include <QTemporaryDir>

#include <algorithm>
#include <chrono>
#include <vector>

#include "burrow/check/trials_plan.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "kept_memory.h"
#include "support/window_for_tests.h"

namespace {

const bool kept = burrow::keep_freed_memory();  // as the program does

using Clock = std::chrono::steady_clock;

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

/// The sample of sixty with each of its utilities five times, a hand's breadth further along and lower each time.
bool open_three_hundred(burrow::TestWindow& w, const QTemporaryDir& folder) {
  burrow::Crossing crossing = w.crossing();
  const std::vector<burrow::Utility> sixty = crossing.site.utilities;
  for (int copy = 1; copy < 5; ++copy)
    for (burrow::Utility utility : sixty) {
      utility.id += "-" + std::to_string(copy);
      for (auto& p : utility.path) {
        p.x_m += 0.11 * copy;
        if (p.z_m) *p.z_m -= 0.07 * copy;
      }
      crossing.site.utilities.push_back(std::move(utility));
    }
  const QString path = folder.filePath(QStringLiteral("300.crossing"));
  return burrow::save_atomically(path.toStdString(), burrow::write_crossing(crossing)).has_value() &&
         w.window.document().open(path).has_value();
}

/// The sample with the points of a survey to both sides of the line.
void survey(burrow::TestWindow& w, int points) {
  w.window.document().change(QStringLiteral("survey"), [points](burrow::Crossing& c) {
    const double from = c.bore.launch.station.m, step = (c.bore.exit.station.m - from) / points;
    for (int i = 0; i < points; ++i) {
      const double x = from + step * i;
      c.site.ground_points.push_back({x, i % 41 - 20.5, burrow::elevation_at(c.site.ground, x) + 0.002 * (i % 7)});
    }
  });
}

void drag_frame(benchmark::State& state, burrow::ItemKind kind, bool all_shown = false, bool many = false,
                int points = 0) {
  burrow::TestWindow w("sixty-utilities");
  const QTemporaryDir folder;
  if (points > 0) survey(w, points);
  if (many && !open_three_hundred(w, folder)) {
    state.SkipWithError("the crossing of 300 utilities was not opened");
    return;
  }
  burrow::Trials trials;
  if (all_shown) {
    const burrow::Tables& tables = w.window.document().tables();
    trials = burrow::run_trials(w.crossing(), tables,
                                burrow::trials_setup(w.crossing(), tables, w.window.document().assessment()));
    w.window.drawing().set_turning_strip(true);
    w.window.drawing().set_cloud(true);
    w.window.drawing().set_trials(&trials, false);
    QCoreApplication::processEvents();
  }
  const burrow::ItemRef part{
      kind, kind == burrow::ItemKind::utility ? w.crossing().site.utilities.front().id : std::string(), -1};
  const QPointF from = w.window.drawing().place_of(part);
  std::vector<double> frames;
  w.press(from);
  int step = 0;
  for (auto _ : state) {
    ++step;
    const QPointF to = from + QPointF(6 + step % 40, 10.0 + (step * 7) % 60);
    const auto start = Clock::now();
    w.move(to);  // event, one assessment, one paint
    frames.push_back(ms_since(start));
  }
  w.release(from);
  std::sort(frames.begin(), frames.end());
  const auto at = [&](double share) {
    return frames[static_cast<std::size_t>(share * static_cast<double>(frames.size() - 1))];
  };
  state.counters["p50_ms"] = at(0.5);
  state.counters["p99_ms"] = at(0.99);
  double best = 1e9;
  for (int i = 0; i < 20; ++i) {
    const auto start = Clock::now();
    benchmark::DoNotOptimize(burrow::assess(w.crossing(), w.window.document().tables()));
    best = std::min(best, ms_since(start));
  }
  state.counters["assess_share_of_frame"] = best / at(0.5);
}

void drag_launch(benchmark::State& state) {
  drag_frame(state, burrow::ItemKind::launch);
}
void drag_utility(benchmark::State& state) {
  drag_frame(state, burrow::ItemKind::utility);
}
/// With the strip and the trials' paths on.
void drag_launch_all_shown(benchmark::State& state) {
  drag_frame(state, burrow::ItemKind::launch, true);
}
void drag_launch_300(benchmark::State& state) {
  drag_frame(state, burrow::ItemKind::launch, false, true);
}
void drag_launch_surveyed(benchmark::State& state) {
  drag_frame(state, burrow::ItemKind::launch, false, false, static_cast<int>(state.range(0)));
}
BENCHMARK(drag_launch)->Unit(benchmark::kMillisecond)->Iterations(400);
BENCHMARK(drag_utility)->Unit(benchmark::kMillisecond)->Iterations(400);
BENCHMARK(drag_launch_300)->Unit(benchmark::kMillisecond)->Iterations(400);
BENCHMARK(drag_launch_surveyed)->Arg(5000)->Arg(50000)->Unit(benchmark::kMillisecond)->Iterations(100);
BENCHMARK(drag_launch_all_shown)->Unit(benchmark::kMillisecond)->Iterations(400);

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  QApplication::setStyle(QStringLiteral("Fusion"));
  QApplication::setFont(QFont(burrow::register_typeface(), 10));
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}

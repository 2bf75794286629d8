/// Distances of utilities from the bore against those of a general-purpose geometry library for the same pairs of
/// stretches, in the same run; and utilities beside the bore, where the chances take longest.

#include <CGAL/Simple_cartesian.h>
#include <CGAL/squared_distance_3.h>
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include "burrow/check/assess.h"
#include "burrow/clearance/separation.h"
#include "burrow/crossing/blank.h"
#include "burrow/file/tables_file.h"

namespace {

using namespace burrow;
using Kernel = CGAL::Simple_cartesian<double>;

template <class F>
double best_seconds(F work) {
  double best = 1e9;
  for (int i = 0; i < 9; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  return best;
}

struct Pairs {
  std::vector<Point3> points;  // four for each pair
  std::vector<std::pair<Kernel::Segment_3, Kernel::Segment_3>> theirs;
};

Pairs random_pairs(int count) {
  Pairs pairs;
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> place(0, 5);
  for (int i = 0; i < count; ++i) {
    Kernel::Point_3 p[4];
    for (Kernel::Point_3& q : p) {
      pairs.points.push_back({place(random), place(random), place(random)});
      q = Kernel::Point_3(pairs.points.back().x_m, pairs.points.back().y_m, pairs.points.back().z_m);
    }
    pairs.theirs.push_back({{p[0], p[1]}, {p[2], p[3]}});
  }
  return pairs;
}

/// One pair of stretches after another.
void distance_of_pairs(benchmark::State& state) {
  const Pairs pairs = random_pairs(10000);
  const auto ours = [&] {
    double sum = 0;
    for (std::size_t i = 0; i < pairs.points.size(); i += 4)
      sum +=
          nearest(pairs.points[i], pairs.points[i + 1], pairs.points[i + 2], pairs.points[i + 3]).squared_distance_m2;
    benchmark::DoNotOptimize(sum);
  };
  const auto theirs = [&] {
    double sum = 0;
    for (const auto& [a, b] : pairs.theirs) sum += CGAL::squared_distance(a, b);
    benchmark::DoNotOptimize(sum);
  };
  for (auto _ : state) ours();
  state.counters["ratio_to_cgal"] = best_seconds(ours) / best_seconds(theirs);
}
BENCHMARK(distance_of_pairs)->Unit(benchmark::kMicrosecond);

/// 200 utilities of 50 stretches against a bore of 45 m: our search, and the other library over every pair.
void nearest_of_200(benchmark::State& state) {
  BorePath path;
  for (int i = 0; i <= 900; ++i) {
    PathPoint p;
    p.x_m = 0.05 * i;
    p.z_m = 98 - 0.001 * i;
    path.points.push_back(p);
  }
  std::vector<std::vector<PathVertex>> lines;
  for (int i = 0; i < 200; ++i) {
    auto& line = lines.emplace_back();
    for (int k = 0; k <= 50; ++k) {
      const double y = -10 + 0.4 * k;
      line.push_back({45.0 * (i + 0.5) / 200 + 0.6 * std::sin(0.7 * i) * y, y, 98 + 2.5 * std::sin(1.3 * i)});
    }
  }
  const auto ours = [&] {
    const BoreAxis axis(path);
    double sum = 0;
    for (const auto& line : lines) sum += axis.nearest_to(line)->distance_m;
    return sum;
  };
  const auto theirs = [&] {
    const auto point = [](const auto& p, double z) { return Kernel::Point_3(p.x_m, p.y_m, z); };
    std::vector<Kernel::Segment_3> bore;
    for (std::size_t i = 0; i + 1 < path.points.size(); ++i)
      bore.emplace_back(point(path.points[i], path.points[i].z_m), point(path.points[i + 1], path.points[i + 1].z_m));
    double sum = 0;
    for (const auto& line : lines) {
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t k = 0; k + 1 < line.size(); ++k) {
        const Kernel::Segment_3 stretch(point(line[k], *line[k].z_m), point(line[k + 1], *line[k + 1].z_m));
        for (const Kernel::Segment_3& b : bore) least = std::min(least, CGAL::squared_distance(stretch, b));
      }
      sum += std::sqrt(least);
    }
    return sum;
  };
  double sum = 0;
  for (auto _ : state) benchmark::DoNotOptimize(sum = ours());
  const auto start = std::chrono::steady_clock::now();
  const double other = theirs();
  const double their_seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  state.counters["ratio_to_cgal_every_pair"] = best_seconds([&] { benchmark::DoNotOptimize(ours()); }) / their_seconds;
  state.counters["sums_differ_m"] = std::abs(sum - other);
}
BENCHMARK(nearest_of_200)->Unit(benchmark::kMicrosecond);

/// Utilities that run beside the bore within reach of it, at up to a few degrees; the ratio is to the same number that
/// cross it.
void assess_beside(benchmark::State& state) {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  const auto crossing = [&](bool beside) {
    Crossing c = blank_crossing();
    c.site.ground = {{-10, 100}, {60, 100}};
    c.site.water = LevelLine{{-10, 95}, {60, 95}};
    c.bore.launch.elevation = Length{98.4};
    c.bore.exit.station = Length{45};
    for (int i = 0; i < state.range(0); ++i) {
      Utility u;
      u.id = "u" + std::to_string(i + 1);
      u.kind = static_cast<UtilityKind>(i % 8);
      u.outside_diameter = Length{0.1};
      u.located.lateral_sd = Length{0.1};
      u.located.vertical_sd = Length{0.08};
      const double away = 0.3 + 0.5 * std::abs(std::sin(1.3 * i)), up = std::sin(2.1 * i),
                   lean = 0.02 * std::sin(0.7 * i);
      if (beside)
        for (int k = 0; k <= 4; ++k) {
          const double x = 11.0 * k;
          u.path.push_back({x, away * std::sqrt(1 - up * up) + lean * (x - 22), 98.4 + away * up});
        }
      else
        u.path = {{45.0 * (i + 0.5) / static_cast<double>(state.range(0)), -10, 98.4 + away},
                  {45.0 * (i + 0.5) / static_cast<double>(state.range(0)), 10, 98.4 + away}};
      c.site.utilities.push_back(u);
    }
    return c;
  };
  const Crossing along = crossing(true), across = crossing(false);
  for (auto _ : state) benchmark::DoNotOptimize(assess(along, tables));
  state.counters["ratio_to_crossing_ones"] = best_seconds([&] { benchmark::DoNotOptimize(assess(along, tables)); }) /
                                             best_seconds([&] { benchmark::DoNotOptimize(assess(across, tables)); });
}
BENCHMARK(assess_beside)->Arg(10)->Arg(60)->Arg(200)->Unit(benchmark::kMicrosecond);

}  // namespace

#include "burrow/pit/side.h"

#include <algorithm>
#include <limits>

namespace burrow {

namespace {
constexpr double bench_rise_m = 4 * 0.3048;  // second-hand: greatest step of a simple bench
}

SideProfile::SideProfile(const PitSide& side, double run_per_rise, double height_m)
    : SideProfile(side, std::vector<SlopeStep>{{height_m, run_per_rise}}, height_m) {}

SideProfile::SideProfile(const PitSide& side, const std::vector<SlopeStep>& slopes, double height_m) {
  const double needed = std::max(height_m, 0.0) + 1.0;
  const double uppermost = side.run_per_rise ? side.run_per_rise->v : slopes.back().run_per_rise;
  if (*side.kind == SideKind::sloped) {
    double reached = side.upright ? std::max(side.upright->m, 0.0) : 0;
    if (reached > 0) pieces_.push_back({reached, 0});
    for (std::size_t i = 0; !side.run_per_rise && i + 1 < slopes.size(); ++i) {
      const double rise = slopes[i].top_height_m - reached;
      if (!(rise > 0)) continue;
      pieces_.push_back({rise, rise * slopes[i].run_per_rise});
      reached = slopes[i].top_height_m;
    }
    pieces_.push_back({needed, needed * uppermost});
    return;
  }
  if (*side.kind != SideKind::benched) {
    pieces_.push_back({needed, 0});
    return;
  }
  std::vector<Bench> steps;
  for (const Bench& bench : side.benches)
    if (bench.rise.m > 0) steps.push_back(bench);
  if (steps.empty()) steps = benches_within(uppermost, bench_rise_m);
  constexpr std::size_t most_steps = 200;  // a rise of millimetres is no bench: the side then goes on upright
  double reached = 0;
  for (std::size_t i = 0; reached < needed && i < most_steps; ++i) {
    const Bench& step = steps[std::min(i, steps.size() - 1)];
    pieces_.push_back({step.rise.m, step.rise.m * step.run_per_rise.value_or(Ratio{0}).v});
    pieces_.push_back({0, step.tread.m});
    reached += step.rise.m;
  }
  pieces_.push_back({needed, 0});
}

std::vector<Bench> benches_within(double run_per_rise, double rise_m) {
  Bench first, next;
  first.rise = next.rise = Length{rise_m};
  first.tread = Length{2 * rise_m * run_per_rise};
  next.tread = Length{rise_m * run_per_rise};
  return {first, next};
}

double SideProfile::run_at(double height_m) const {
  double run = 0, height = 0;
  for (const SidePiece& piece : pieces_) {
    if (height_m <= height + piece.rise_m)
      return piece.rise_m > 0 ? run + piece.run_m * std::max(height_m - height, 0.0) / piece.rise_m : run;
    height += piece.rise_m;
    run += piece.run_m;
  }
  return run;
}

double SideProfile::height_at(double run_m) const {
  if (run_m <= 0) return 0;
  double run = 0, height = 0;
  for (const SidePiece& piece : pieces_) {
    if (run_m <= run + piece.run_m) return height + piece.rise_m * (run_m - run) / piece.run_m;
    run += piece.run_m;
    height += piece.rise_m;
  }
  return std::numeric_limits<double>::infinity();
}

std::vector<double> SideProfile::bends() const {
  std::vector<double> heights;
  double height = 0;
  for (const SidePiece& piece : pieces_) heights.push_back(height += piece.rise_m);
  return heights;
}

}  // namespace burrow

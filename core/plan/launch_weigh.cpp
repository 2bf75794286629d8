#include "launch_weigh.h"

#include <cmath>

namespace burrow::launch {

namespace {

constexpr double as_good = 0.001;

int rank(Verdict verdict) {
  return verdict == Verdict::stop ? 2 : verdict == Verdict::caution ? 1 : 0;
}

void bind(LaunchCell& cell, const Entry& entry) {
  cell.margin = entry.margin;
  cell.binds = entry.key;
  cell.measured = entry.measured;
  cell.limit = entry.limit;
  cell.limit_base = entry.limit_base;
}

/// Shallower pits, then the shorter bore; a millimetre decides.
bool easier(const LaunchCell& a, const LaunchCell& b) {
  const double pit_a = std::round(a.pit_depth_m * 1e3), pit_b = std::round(b.pit_depth_m * 1e3);
  if (pit_a != pit_b) return pit_a < pit_b;
  return std::round(a.length_m * 1e3) < std::round(b.length_m * 1e3);
}

}  // namespace

LaunchCell weigh(const Judged& judged, const Limits& limits) {
  LaunchCell cell;
  cell.place = judged.place;
  cell.chance_clean = judged.chance_clean;
  cell.pit_depth_m = judged.pit_depth_m;
  cell.length_m = judged.length_m;
  cell.margin = 1;
  for (const Entry& entry : judged.entries) {
    if (!entry.broken || !limits.counts(entry)) continue;
    if (entry.stop) {
      cell.verdict = Verdict::stop;
    } else {
      if (cell.verdict != Verdict::stop) cell.verdict = Verdict::caution;
      if (!entry.measurable() && (cell.also < 0 || entry.key < cell.also)) cell.also = entry.key;
    }
  }
  for (const Entry& entry : judged.entries) {
    if (!limits.counts(entry)) continue;
    if (cell.verdict == Verdict::stop ? !(entry.broken && entry.stop) : !entry.measurable()) continue;
    const bool less = entry.margin < cell.margin || (entry.margin == cell.margin && entry.key < cell.binds);
    if (cell.binds < 0 || less) bind(cell, entry);
  }
  return cell;
}

bool better(const LaunchCell& a, const LaunchCell& b) {
  if (rank(a.verdict) != rank(b.verdict)) return rank(a.verdict) < rank(b.verdict);
  return a.margin > b.margin;
}

const LaunchCell* best_of(const std::vector<LaunchCell>& cells) {
  const LaunchCell* greatest = nullptr;
  for (const LaunchCell& cell : cells)
    if (!greatest || better(cell, *greatest)) greatest = &cell;
  const LaunchCell* best = greatest;
  for (const LaunchCell& cell : cells)
    if (rank(cell.verdict) == rank(greatest->verdict) && cell.margin >= greatest->margin - as_good &&
        easier(cell, *best))
      best = &cell;
  return best;
}

std::string unit_of(const Finding& limit) {
  if (limit.code.starts_with("utility.") || limit.code.starts_with("pit.utility")) return limit.subject;
  return limit.code + "\n" + limit.subject;
}

}  // namespace burrow::launch

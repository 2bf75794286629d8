#include "launch_weigh.h"

#include <cmath>

#include "burrow/check/limits.h"

namespace burrow::launch {

namespace {

constexpr double as_good = 0.001;
constexpr double per_tier = 10;  // more than margin and chance together can make up

int rank(Verdict verdict) {
  switch (verdict) {
    case Verdict::within_limits:
      return 0;
    case Verdict::caution:
      return 1;
    case Verdict::incomplete:
      return 2;
    case Verdict::stop:
      break;
  }
  return 3;
}

void bind(LaunchCell& cell, const Entry& entry) {
  cell.margin = entry.margin;
  cell.binds = entry.key;
  cell.measured = entry.measured;
  cell.limit = entry.limit;
  cell.limit_base = entry.limit_base;
}

/// Less earth, then shallower pits, then the shorter bore; ten litres or a millimetre decide.
bool easier(const LaunchCell& a, const LaunchCell& b) {
  const double earth_a = std::round(a.earth_m3 * 1e2), earth_b = std::round(b.earth_m3 * 1e2);
  if (earth_a != earth_b) return earth_a < earth_b;
  const double pit_a = std::round(a.pit_depth_m * 1e3), pit_b = std::round(b.pit_depth_m * 1e3);
  if (pit_a != pit_b) return pit_a < pit_b;
  return std::round(a.length_m * 1e3) < std::round(b.length_m * 1e3);
}

bool ends_early(const Finding& limit) {
  return limit.code == "bore.daylight" || limit.code == "bore.no-arrival";
}

void count_broken(LaunchCell& cell, const Judged& judged, const Limits& limits) {
  for (const Entry& entry : judged.entries) {
    if (!entry.broken || !limits.counts(entry)) continue;
    if (entry.stop) {
      cell.verdict = Verdict::stop;
    } else {
      if (cell.verdict != Verdict::stop) cell.verdict = Verdict::caution;
      if (!entry.measurable() && (cell.also < 0 || entry.key < cell.also)) cell.also = entry.key;
    }
  }
}

/// Where the path does not arrive that binds, whatever else is broken: the rest of it is nobody's path.
void find_binding(LaunchCell& cell, const Judged& judged, const Limits& limits) {
  for (const Entry& entry : judged.entries) {
    if (!limits.counts(entry)) continue;
    if (!judged.arrives && entry.broken && ends_early(limits.of(entry.key))) {
      bind(cell, entry);
      return;
    }
    if (cell.verdict == Verdict::stop ? !(entry.broken && entry.stop) : !entry.measurable()) continue;
    const bool less = entry.margin < cell.margin || (entry.margin == cell.margin && entry.key < cell.binds);
    if (cell.binds < 0 || less) bind(cell, entry);
  }
}

}  // namespace

LaunchCell weigh(const Judged& judged, const Limits& limits) {
  LaunchCell cell;
  cell.place = judged.place;
  cell.assessed = judged.verdict;
  cell.missing = static_cast<int>(judged.missing.size());
  cell.arrives = judged.arrives;
  cell.chance_clean = judged.chance_clean;
  cell.earth_m3 = judged.earth_m3;
  cell.pit_depth_m = judged.pit_depth_m;
  cell.length_m = judged.length_m;
  cell.margin = 1;
  count_broken(cell, judged, limits);
  find_binding(cell, judged, limits);
  cell.margin = judged.arrives ? bounded_margin(cell.margin) : -1;
  return cell;
}

int tier(const LaunchCell& cell, const LeastClean& least) {
  const bool clean = !least || (cell.chance_clean && *cell.chance_clean >= *least);
  return (cell.arrives ? 0 : 32) + (clean ? 0 : 16) + 4 * rank(cell.assessed) + rank(cell.verdict);
}

double worth(const LaunchCell& cell, const LeastClean& least) {
  const bool used_up = cell.verdict == Verdict::stop && cell.margin <= -1 + as_good;
  // A stop missed by all of it: the chance of a clean bore takes the place of the margin, below all that are less far
  // short.
  const double within = used_up ? cell.chance_clean.value_or(0) - 2 : cell.margin;
  return -per_tier * tier(cell, least) + within;
}

bool better(const LaunchCell& a, const LaunchCell& b, const LeastClean& least) {
  return worth(a, least) > worth(b, least);
}

const LaunchCell* best_of(const std::vector<LaunchCell>& cells, const LeastClean& least) {
  const LaunchCell* greatest = nullptr;
  for (const LaunchCell& cell : cells)
    if (!greatest || better(cell, *greatest, least)) greatest = &cell;
  if (!greatest) return nullptr;
  const double enough = worth(*greatest, least) - as_good;
  const LaunchCell* best = greatest;
  for (const LaunchCell& cell : cells)
    if (worth(cell, least) >= enough && easier(cell, *best)) best = &cell;
  return best;
}

std::string unit_of(const Finding& limit) {
  if (limit.code.starts_with("utility.") || limit.code.starts_with("pit.utility")) return limit.subject;
  return limit.code + "\n" + limit.subject;
}

}  // namespace burrow::launch

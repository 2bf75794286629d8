#pragma once
/// What a judged launch is worth, and which of two is better.

#include <optional>
#include <vector>

#include "burrow/search/launch_rank.h"
#include "launch_judge.h"

namespace burrow::launch {

/// Limits told apart once for a whole map, and which of them are the same at every launch.
struct Limits {
  Keys keys;
  std::vector<bool> everywhere;  ///< by number; those met later are not
  [[nodiscard]] bool counts(const Entry& entry) const {
    const auto number = static_cast<std::size_t>(entry.key);
    return number >= everywhere.size() || !everywhere[number];
  }
  [[nodiscard]] const Finding& of(int number) const { return keys.limits()[static_cast<std::size_t>(number)]; }
};

LaunchCell weigh(const Judged& judged, const Limits& limits);

/// 0 is the best: arrives, has that chance, verdict of the whole, verdict without what is missing or the same
/// everywhere.
int tier(const LaunchCell& cell, const LeastClean& least);

/// Greater is better; within a tier by margin, and where a stop is missed by all of it by the chance of a clean bore.
double worth(const LaunchCell& cell, const LeastClean& least);

/// The best of all; of those within 0.001 of its worth the least earth, then the shallower pits, then the shorter bore,
/// then the first. Null: none.
const LaunchCell* best_of(const std::vector<LaunchCell>& cells, const LeastClean& least);

}  // namespace burrow::launch

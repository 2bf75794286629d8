#pragma once
/// What a judged launch is worth, and which of two is better.

#include <vector>

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

/// No stop before no caution before the greater least margin.
bool better(const LaunchCell& a, const LaunchCell& b);

/// The best of all; of those within 0.001 of its margin the shallower pits, then the shorter bore, then the first.
const LaunchCell* best_of(const std::vector<LaunchCell>& cells);

/// What gives way together: the limits about one utility, else the limit alone.
std::string unit_of(const Finding& limit);

}  // namespace burrow::launch

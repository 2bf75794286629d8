#include "burrow/import/likely_system.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr double farthest_m = 1000;

/// In metres of its plan.
std::optional<PlanExtent> extent_m(const ImportFile& file) {
  auto extent = extent_of(*file.found);
  if (!extent) return std::nullopt;
  const double metres = metres_in(plan_unit(file));
  for (double* side : {&extent->low_x, &extent->high_x, &extent->low_y, &extent->high_y}) *side *= metres;
  return extent;
}

double gap(double low1, double high1, double low2, double high2) {
  return std::max({0.0, low2 - high1, low1 - high2});
}

}  // namespace

std::optional<LikelySystem> likely_system(const std::vector<ImportFile>& files) {
  for (std::size_t i = 0; i < files.size(); ++i) {
    const FoundFrame& frame = frame_of(files[i]);
    const auto there = extent_m(files[i]);
    if (frame.crs.empty() || frame.geographic || !there) continue;
    // Around the origin lie plans of no system too.
    if (std::hypot(there->low_x, there->low_y) < 10 * farthest_m) continue;
    LikelySystem likely{frame.crs, i, {}};
    for (std::size_t k = 0; k < files.size(); ++k) {
      const auto here = extent_m(files[k]);
      if (!frame_of(files[k]).crs.empty() || !here) continue;
      const double away = std::hypot(gap(there->low_x, there->high_x, here->low_x, here->high_x),
                                     gap(there->low_y, there->high_y, here->low_y, here->high_y));
      if (away <= farthest_m) likely.files.push_back(k);
    }
    if (!likely.files.empty()) return likely;
  }
  return std::nullopt;
}

}  // namespace burrow

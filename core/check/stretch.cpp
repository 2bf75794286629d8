/// Where along the crossing line a road, track or other thing on top is met.

#include <algorithm>
#include <cmath>

#include "judge.h"

namespace burrow {

namespace {

/// Stations of the path points that lie under an outline in plan.
std::optional<Stretch> under(const PlanLine& outline, const std::vector<PathPoint>& points) {
  std::optional<Stretch> stretch;
  for (const PathPoint& p : points) {
    if (!inside(outline, p.x_m, p.y_m)) continue;
    if (!stretch) stretch = Stretch{p.x_m, p.x_m};
    stretch->to_m = p.x_m;
  }
  return stretch;
}

}  // namespace

std::optional<Stretch> stretch_of(const SurfaceFeature& feature, const std::vector<PathPoint>& points) {
  if (feature.from && feature.to)
    return Stretch{std::min(feature.from->m, feature.to->m), std::max(feature.from->m, feature.to->m)};
  return under(feature.outline, points);
}

bool place_known(const SurfaceFeature& feature) {
  return (feature.from && feature.to) || feature.outline.size() > 2;
}

std::vector<const PathPoint*> points_within(const std::vector<PathPoint>& points, const Stretch& stretch) {
  std::vector<const PathPoint*> within;
  const PathPoint* nearest = nullptr;
  const double middle = (stretch.from_m + stretch.to_m) / 2;
  for (const PathPoint& p : points) {
    if (p.x_m >= stretch.from_m - 1e-9 && p.x_m <= stretch.to_m + 1e-9) within.push_back(&p);
    if (!nearest || std::abs(p.x_m - middle) < std::abs(nearest->x_m - middle)) nearest = &p;
  }
  const bool met = !points.empty() && points.front().x_m <= stretch.to_m && points.back().x_m >= stretch.from_m;
  if (within.empty() && met) within.push_back(nearest);
  return within;
}

}  // namespace burrow

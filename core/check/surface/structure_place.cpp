#include "structure_place.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

double to_segment(const PlanPoint& a, const PlanPoint& b, double x_m, double y_m) {
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m;
  const double length2 = dx * dx + dy * dy;
  const double t = length2 > 0 ? std::clamp(((x_m - a.x_m) * dx + (y_m - a.y_m) * dy) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(x_m - a.x_m - t * dx, y_m - a.y_m - t * dy);
}

}  // namespace

bool stands(const SurfaceFeature& feature) {
  return feature.kind == SurfaceKind::building || feature.kind == SurfaceKind::footing ||
         feature.kind == SurfaceKind::wall;
}

std::optional<double> plan_distance(const SurfaceFeature& feature, double x_m, double y_m) {
  const PlanLine& outline = feature.outline;
  if (outline.empty()) {
    if (!feature.from || !feature.to) return std::nullopt;
    const auto [low, high] = std::minmax(feature.from->m, feature.to->m);
    return std::max({low - x_m, x_m - high, 0.0});
  }
  if (inside(outline, x_m, y_m)) return 0.0;
  double nearest = to_segment(outline.back(), outline.front(), x_m, y_m);
  for (std::size_t i = 1; i < outline.size(); ++i)
    nearest = std::min(nearest, to_segment(outline[i - 1], outline[i], x_m, y_m));
  return nearest;
}

}  // namespace burrow

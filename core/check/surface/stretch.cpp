/// Where along the crossing line a road, track or other thing on top is met.

#include <algorithm>
#include <cmath>
#include <limits>

#include "check_run.h"

namespace burrow {

namespace {

/// Where a segment of the path enters or leaves an outline, as shares of it, its ends with them. `cuts` is room to
/// work.
void cut(std::vector<double>& cuts, const PlanLine& outline, const PathPoint& a, const PathPoint& b) {
  cuts.assign({0, 1});
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    const double ex = q.x_m - p.x_m, ey = q.y_m - p.y_m, cross = dx * ey - dy * ex;
    if (cross == 0) continue;
    const double along = ((p.x_m - a.x_m) * ey - (p.y_m - a.y_m) * ex) / cross;
    const double on_edge = ((p.x_m - a.x_m) * dy - (p.y_m - a.y_m) * dx) / cross;
    if (along > 0 && along < 1 && on_edge >= 0 && on_edge <= 1) cuts.push_back(along);
  }
  std::sort(cuts.begin(), cuts.end());
}

/// Stations between which the path lies under an outline in plan, cut at its edges.
std::optional<Stretch> under(const PlanLine& outline, const std::vector<PathPoint>& points) {
  std::optional<Stretch> stretch;
  const auto take = [&](double x_m) {
    if (!stretch) stretch = Stretch{x_m, x_m};
    stretch->from_m = std::min(stretch->from_m, x_m);
    stretch->to_m = std::max(stretch->to_m, x_m);
  };
  if (outline.size() < 3) return stretch;
  std::vector<double> cuts;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const PathPoint& a = points[i];
    if (inside(outline, a.x_m, a.y_m)) take(a.x_m);
    if (i + 1 == points.size()) break;
    const PathPoint& b = points[i + 1];
    cut(cuts, outline, a, b);
    for (std::size_t k = 0; cuts.size() > 2 && k + 1 < cuts.size(); ++k) {
      const double middle = (cuts[k] + cuts[k + 1]) / 2;
      if (!inside(outline, a.x_m + middle * (b.x_m - a.x_m), a.y_m + middle * (b.y_m - a.y_m))) continue;
      take(a.x_m + cuts[k] * (b.x_m - a.x_m));
      take(a.x_m + cuts[k + 1] * (b.x_m - a.x_m));
    }
  }
  return stretch;
}

/// Longest piece of the line y = y_m between the first and the last edge of an outline.
double chord_m(const PlanLine& outline, double y_m) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    if ((p.y_m < y_m && q.y_m < y_m) || (p.y_m > y_m && q.y_m > y_m)) continue;
    const bool level = p.y_m == q.y_m;
    const double x = level ? p.x_m : p.x_m + (y_m - p.y_m) / (q.y_m - p.y_m) * (q.x_m - p.x_m);
    low = std::min({low, x, level ? q.x_m : x});
    high = std::max({high, x, level ? q.x_m : x});
  }
  return high > low ? high - low : 0;
}

}  // namespace

std::optional<Stretch> stretch_of(const SurfaceFeature& feature, const std::vector<PathPoint>& points) {
  if (feature.from && feature.to)
    return Stretch{std::min(feature.from->m, feature.to->m), std::max(feature.from->m, feature.to->m)};
  return under(feature.outline, points);
}

double road_width_m(const SurfaceFeature& feature, const Stretch& stretch) {
  double width = stretch.to_m - stretch.from_m;
  for (const PlanPoint& corner : feature.outline) width = std::max(width, chord_m(feature.outline, corner.y_m));
  return width;
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

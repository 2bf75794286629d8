#include "convex.h"

#include <cmath>

namespace burrow {

namespace {
constexpr double least_area_m2 = 1e-9;

double cross(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c) {
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

/// Gives each corner of what lies inside in turn.
template <class Give>
void cut_across(Corners convex, const HalfPlane& keep, const Give& give) {
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const PlanPoint p = convex[i], q = convex[i + 1 < convex.size() ? i + 1 : 0];
    const double at_p = keep.at(p), at_q = keep.at(q);
    if (at_p >= 0) give(p);
    if ((at_p > 0 && at_q < 0) || (at_p < 0 && at_q > 0)) {
      const double t = at_p / (at_p - at_q);
      give({p.x_m + t * (q.x_m - p.x_m), p.y_m + t * (q.y_m - p.y_m)});
    }
  }
}
}  // namespace

HalfPlane left_of(const PlanPoint& from, const PlanPoint& to) {
  const double dx = to.x_m - from.x_m, dy = to.y_m - from.y_m, length = std::hypot(dx, dy);
  const double a = -dy / length, b = dx / length;
  return {a, b, -(a * from.x_m + b * from.y_m)};
}

double signed_area(Corners outline) {
  double area = 0;  // about the first corner: stations may be large
  for (std::size_t i = 1; i + 1 < outline.size(); ++i) area += cross(outline[0], outline[i], outline[i + 1]);
  return area / 2;
}

PlanLine clipped(const PlanLine& convex, const HalfPlane& keep) {
  bool all = true, none = true;
  for (const PlanPoint& p : convex) (keep.at(p) >= 0 ? none : all) = false;
  if (all) return convex;
  PlanLine inside;
  if (none) return inside;
  inside.reserve(convex.size() + 1);
  cut_across(convex, keep, [&](const PlanPoint& p) { inside.push_back(p); });
  if (signed_area(inside) < least_area_m2) inside.clear();
  return inside;
}

PlanLine clipped(PlanLine convex, const std::vector<HalfPlane>& keep) {
  for (const HalfPlane& half : keep) {
    if (convex.empty()) break;
    convex = clipped(convex, half);
  }
  return convex;
}

std::vector<HalfPlane> bounds_of(Corners convex) {
  std::vector<HalfPlane> bounds;
  for (std::size_t i = 0; i < convex.size(); ++i) {
    const PlanPoint &p = convex[i], &q = convex[(i + 1) % convex.size()];
    if (!(p == q)) bounds.push_back(left_of(p, q));
  }
  return bounds;
}

std::vector<PlanLine> without(const PlanLine& convex, const PlanLine& other) {
  std::vector<PlanLine> pieces;
  PlanLine rest = convex;
  for (const HalfPlane& half : bounds_of(other)) {
    PlanLine outside = clipped(rest, half.opposite());
    if (!outside.empty()) pieces.push_back(std::move(outside));
    rest = clipped(rest, half);
    if (rest.empty()) break;
  }
  return pieces;
}

double prism_volume(Corners convex, const GroundPlane& upper, const GroundPlane& lower) {
  double volume = 0;
  const auto height = [&](const PlanPoint& p) { return upper.at(p.x_m, p.y_m) - lower.at(p.x_m, p.y_m); };
  for (std::size_t i = 1; i + 1 < convex.size(); ++i)
    volume += cross(convex[0], convex[i], convex[i + 1]) / 2 *
              (height(convex[0]) + height(convex[i]) + height(convex[i + 1])) / 3;
  return volume;
}

PlanPoint middle_of(Corners outline) {
  PlanPoint sum;
  for (const PlanPoint& p : outline) {
    sum.x_m += p.x_m;
    sum.y_m += p.y_m;
  }
  const double n = static_cast<double>(outline.size());
  return {sum.x_m / n, sum.y_m / n};
}

StoredOutline OutlineStore::add(Corners outline) {
  const StoredOutline stored{static_cast<std::uint32_t>(corners_.size()), static_cast<std::uint32_t>(outline.size())};
  corners_.insert(corners_.end(), outline.begin(), outline.end());
  return stored;
}

StoredOutline OutlineStore::cut(StoredOutline outline, const HalfPlane& keep) {
  const std::size_t first = corners_.size();
  if (const std::size_t most = first + 2 * outline.count; corners_.capacity() < most)
    corners_.reserve(2 * most);  // what is cut stays where it is
  cut_across(corners(outline), keep, [&](const PlanPoint& p) { corners_.push_back(p); });
  const StoredOutline inside{static_cast<std::uint32_t>(first), static_cast<std::uint32_t>(corners_.size() - first)};
  if (!(signed_area(corners(inside)) < least_area_m2)) return inside;
  corners_.resize(first);
  return {};
}

}  // namespace burrow

#pragma once
/// Convex outlines in plan, counter-clockwise, cut by straight lines. Slivers below a thousandth of a square millimetre
/// are dropped.

#include <cstdint>
#include <span>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/pit/ground_surface.h"

namespace burrow {

/// a x + b y + c ≥ 0.
struct HalfPlane {
  double a = 0, b = 0, c = 0;
  [[nodiscard]] double at(const PlanPoint& p) const { return a * p.x_m + b * p.y_m + c; }
  [[nodiscard]] HalfPlane opposite() const { return {-a, -b, -c}; }
};

/// To the left of the line from one point to the other; `at` is the distance.
HalfPlane left_of(const PlanPoint& from, const PlanPoint& to);
/// Where one plane stands above another.
inline HalfPlane above(const GroundPlane& upper, const GroundPlane& lower) {
  return {upper.a - lower.a, upper.b - lower.b, upper.c - lower.c};
}

using Corners = std::span<const PlanPoint>;

/// What of a convex outline lies in the half-plane; empty: nothing.
PlanLine clipped(const PlanLine& convex, const HalfPlane& keep);
PlanLine clipped(PlanLine convex, const std::vector<HalfPlane>& keep);
/// Half-planes that hold a convex outline.
std::vector<HalfPlane> bounds_of(Corners convex);
/// A convex outline less another, as convex pieces.
std::vector<PlanLine> without(const PlanLine& convex, const PlanLine& other);

/// Positive counter-clockwise.
double signed_area(Corners outline);
/// ∫ (upper − lower) over a convex outline; both are straight, so that the mean of each triangle's corners is exact.
double prism_volume(Corners convex, const GroundPlane& upper, const GroundPlane& lower);
PlanPoint middle_of(Corners outline);

/// Where an outline stands in an `OutlineStore`.
struct StoredOutline {
  std::uint32_t first = 0, count = 0;
  [[nodiscard]] bool empty() const { return count == 0; }
};

/// Convex outlines, their corners in one list that grows until it is cleared, so that cutting thousands of them takes
/// no memory of its own. Cuts as `clipped` does, to the last bit.   Evidence: PitSolid.Dug_*
class OutlineStore {
 public:
  void clear() { corners_.clear(); }
  [[nodiscard]] StoredOutline add(Corners outline);
  /// What of it lies in the half-plane; the outline itself where that is all of it.
  [[nodiscard]] StoredOutline clipped(StoredOutline outline, const HalfPlane& keep) {
    bool all = true, none = true;
    for (const PlanPoint& p : corners(outline)) (keep.at(p) >= 0 ? none : all) = false;
    return all ? outline : none ? StoredOutline{} : cut(outline, keep);
  }
  [[nodiscard]] StoredOutline clipped(StoredOutline outline, std::span<const HalfPlane> keep) {
    for (const HalfPlane& half : keep) {
      if (outline.empty()) break;
      outline = clipped(outline, half);
    }
    return outline;
  }
  /// Valid until the next outline.
  [[nodiscard]] Corners corners(StoredOutline outline) const {
    return {corners_.data() + outline.first, outline.count};
  }

 private:
  [[nodiscard]] StoredOutline cut(StoredOutline outline, const HalfPlane& keep);

  std::vector<PlanPoint> corners_;
};

}  // namespace burrow

#pragma once
/// Convex outlines in plan, counter-clockwise, cut by straight lines. Slivers below a thousandth of a square millimetre
/// are dropped.

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
HalfPlane above(const GroundPlane& upper, const GroundPlane& lower);

/// What of a convex outline lies in the half-plane; empty: nothing.
PlanLine clipped(const PlanLine& convex, const HalfPlane& keep);
PlanLine clipped(PlanLine convex, const std::vector<HalfPlane>& keep);
/// Half-planes that hold a convex outline.
std::vector<HalfPlane> bounds_of(const PlanLine& convex);
/// A convex outline less another, as convex pieces.
std::vector<PlanLine> without(const PlanLine& convex, const PlanLine& other);

/// Positive counter-clockwise.
double signed_area(const PlanLine& outline);
/// ∫ (upper − lower) over a convex outline; both are straight, so that the mean of each triangle's corners is exact.
double prism_volume(const PlanLine& convex, const GroundPlane& upper, const GroundPlane& lower);
PlanPoint middle_of(const PlanLine& outline);

}  // namespace burrow

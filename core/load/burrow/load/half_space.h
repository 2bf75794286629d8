#pragma once
/// Vertical stress that loads on the surface cause below it, in an elastic half-space. Weightless, so these are added
/// to what the ground itself weighs.

#include <span>

#include "burrow/base/geometry.h"
#include "burrow/base/quantity.h"
#include "burrow/base/result.h"

namespace burrow {

/// Influence I of a rectangle under one of its corners, σ = q I, m = B/z, n = L/z, either may be infinite.
///   I = (1/4π) [2mn√a/(a + b) · (a + 1)/a + atan2(2mn√a, a − b)],  a = m² + n² + 1, b = m² n²
/// Source: Newmark 1935, chart Fadum 1948. With a plain arctangent the answer is short by exactly 1/4 where b > a.
/// Range: m, n ≥ 0, else it is taken as 0.   Evidence: Newmark.*, PublishedLoad.*
double corner_influence(double m, double n);

/// A rectangle on the surface under an even pressure, sides along the axes of the crossing.
struct RectangleLoad {
  double from_x_m = 0, to_x_m = 0;
  double from_y_m = 0, to_y_m = 0;
  double pressure_Pa = 0;
  bool operator==(const RectangleLoad&) const = default;
};

/// Under any point, by adding and taking away corners.   Range: depth > 0, from ≤ to.   Errors: out_of_range.
/// Evidence: RectangleStress.*
Result<Pressure> rectangle_stress(const RectangleLoad& load, const PlanPoint& below, Length depth);
/// Of several, added.
Result<Pressure> rectangles_stress(std::span<const RectangleLoad> loads, const PlanPoint& below, Length depth);

/// σ = 3 P z³/(2π R⁵), R² = r² + z².   Source: Boussinesq 1885.   Range: depth > 0, aside ≥ 0.
/// Evidence: PointStress.*
Result<Pressure> point_stress(Force load, Length aside, Length depth);

/// Under the centre of a circle of radius R: σ = q [1 − (1 + (R/z)²)^−1.5].   Range: radius ≥ 0, depth > 0.
/// Evidence: CircleStress.*
Result<Pressure> circle_stress(Pressure load, Length radius, Length depth);

/// Under a strip of width B without end, at x from its middle:
/// σ = (q/π) [α + sin α cos(α + 2δ)], α the angle it is seen under, δ from the plumb line to its nearer edge.
/// Range: width ≥ 0, depth > 0.   Evidence: StripStress.*
Result<Pressure> strip_stress(Pressure load, Length width, Length aside, Length depth);

/// Share C_s of a wheel that a length of pipe bears (Holl's integral): W = C_s P F/L. C_s = 4 I(Bc/2H, L/2H).
/// Source: WPCF/ASCE manual; Moser & Folkman, Buried Pipe Design, p 57.   Range: cover > 0, sizes ≥ 0.
/// Evidence: SegmentShare.*
Result<Ratio> segment_share(Length pipe_diameter, Length effective_length, Length cover);

}  // namespace burrow

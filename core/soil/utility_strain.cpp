#include "burrow/soil/utility_strain.h"

#include <algorithm>
#include <cmath>
#include <complex>

namespace burrow {

namespace {

/// Greatest |d²/dy²| of (1 − y/√(1 + y²))/4, at y = 1/2.
const double front_curvature = 0.375 * std::pow(0.8, 2.5);
/// Greatest |d/dy| of 1/(4 √(1 + y²)), at y = 1/√2.
const double front_stretch = 1 / (6 * std::sqrt(3.0));

}  // namespace

Result<UtilityStrain> utility_strain(const OpenedHole& hole, const UtilityPlace& place) {
  const auto movement = ground_movement(hole, place.beside, place.depth, SourceTerm::exact);
  if (!movement) return tl::unexpected(movement.error());
  const double beta = place.crossing.rad, d = place.diameter.m;
  if (!(beta >= 0 && beta <= pi / 2 + 1e-9)) return out_of_range("angle of crossing", beta, "0 to 90 degrees");
  if (!(d >= 0) || !std::isfinite(d)) return out_of_range("utility diameter", d, ">= 0 m");
  using Complex = std::complex<double>;
  const double a2 = hole.share.v * hole.radius.m * hole.radius.m;
  const double x = place.beside.m, z = place.depth.m, h = hole.axis_depth.m;
  const Complex source{x, z - h}, image{x, z + h}, i{0, 1};
  const double c = std::abs(source);
  if (!(c > hole.radius.m)) return out_of_range("distance of the axes", c, "more than the radius of the hole");

  UtilityStrain answer;
  answer.outward_m = movement->outward_m;
  answer.rise_m = movement->rise_m;
  answer.movement_m = std::hypot(movement->outward_m, movement->rise_m);
  const Complex s1 = 1.0 / std::conj(source), m1 = 1.0 / image;
  const Complex moved = a2 / 2 * (s1 + m1) + i * a2 * z * std::conj(m1 * m1);
  const Complex first = -a2 / 2 * (s1 * s1 + m1 * m1) - 2.0 * i * a2 * z * std::conj(m1 * m1 * m1);
  const Complex second = a2 * (s1 * s1 * s1 + m1 * m1 * m1) + 6.0 * i * a2 * z * std::conj(m1 * m1 * m1 * m1);
  answer.square = {std::abs(second), std::abs(first)};
  const double surface = a2 > 0 ? std::max(1.0, std::abs(moved) / (a2 / (2 * c))) : 1.0;
  answer.front = {surface * front_curvature * a2 / (c * c * c), surface * front_stretch * a2 / (c * c)};
  const double sin2 = std::sin(beta) * std::sin(beta), cos2 = 1 - sin2;
  answer.bending = (sin2 * answer.square.curvature_1_m + cos2 * answer.front.curvature_1_m) * d / 2;
  answer.stretch = sin2 * answer.square.stretch + cos2 * answer.front.stretch;
  return answer;
}

}  // namespace burrow

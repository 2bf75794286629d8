#include "burrow/soil/cavity_alternatives.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

namespace burrow {

namespace {
Result<double> checked_angle(Angle friction_angle) {
  const double phi = friction_angle.rad;
  if (!(phi >= 0 && phi <= 55.0001 * pi / 180)) return out_of_range("friction_angle", phi, "0 to 55 degrees");
  return phi;
}
}  // namespace

Result<CavityLimit> carter_limit(Cavity cavity, const FrictionalGround& ground) {
  // The range is that of the other method: ask it.
  const auto range = drained_limit(cavity, ground);
  if (!range) return tl::unexpected(range.error());
  const double phi = ground.friction_angle.rad, psi = ground.dilation_angle.rad, nu = ground.poisson_ratio.v;
  const double G = ground.shear_modulus.Pa, p0 = ground.initial.Pa;
  const double k = static_cast<double>(cavity);
  const double N = (1 + std::sin(phi)) / (1 - std::sin(phi));
  const double M = (1 + std::sin(psi)) / (1 - std::sin(psi));
  const double shift = ground.cohesion.Pa / std::tan(phi);    // c cot φ
  const double yield = (k + 1) * N * (p0 + shift) / (N + k);  // σ′_R, shifted
  const double excess = yield - shift - p0;                   // σ_R − p0
  const double s = k * (N - 1) / N;
  const double chi = cavity == Cavity::cylinder ? M * ((1 - nu) - nu / N) + ((1 - nu) / N - nu)
                                                : (M * (1 - 2 * nu / N) + 2 * ((1 - nu) / N - nu)) / (1 + nu);
  const double Z = chi * s * yield / (excess * (M * (1 - s) + k));
  const double T = (k + 1) / k + Z;
  const double g = (1 + k / M) / s;
  const auto miss = [&](double log_rho) {
    return std::log((T * std::exp((g - 1) * log_rho) - Z) * std::exp(log_rho) * excess / (2 * G));
  };
  // T − Z = (k+1)/k: at ρ = 1 the logarithm stands well; it grows without bound with ρ.
  double high = 1;
  while (miss(high) < 0) high *= 2;
  if (!(miss(0) < 0)) return out_of_range("shear_modulus", G, "a modulus well above the strength");
  std::uintmax_t steps = 100;
  const auto [low, top] =
      boost::math::tools::toms748_solve(miss, 0.0, high, boost::math::tools::eps_tolerance<double>(50), steps);
  const double log_rho = 0.5 * (low + top);
  return CavityLimit{
      {std::exp(log_rho) * yield - shift}, std::exp(log_rho / s), static_cast<int>(steps), std::abs(miss(log_rho))};
}

Result<CavityFactors> vesic_factors(Cavity cavity, Angle friction_angle, double rigidity, Ratio volumetric_strain) {
  const auto phi = checked_angle(friction_angle);
  if (!phi) return tl::unexpected(phi.error());
  if (!(rigidity > 0 && std::isfinite(rigidity))) return out_of_range("rigidity", rigidity, "rigidity > 0");
  const double loss = volumetric_strain.v;
  if (!(loss >= 0 && std::isfinite(loss))) return out_of_range("volumetric_strain", loss, "volumetric_strain >= 0");
  const double sine = std::sin(*phi), secant = 1 / std::cos(*phi), cotangent = 1 / std::tan(*phi);
  const bool cylinder = cavity == Cavity::cylinder;
  const double reduced = rigidity / (1 + rigidity * loss * (cylinder ? secant : 1.0));
  if (!(reduced > 1)) return out_of_range("volumetric_strain", loss, "a reduced rigidity above 1");

  CavityFactors factors;
  if (cylinder) {
    factors.plastic_radius = std::sqrt(reduced * secant);
    factors.stress = (1 + sine) * std::pow(reduced * secant, sine / (1 + sine));
    factors.cohesion = 1 + std::log(reduced);
  } else {
    factors.plastic_radius = std::cbrt(reduced);
    factors.stress = 3 * (1 + sine) / (3 - sine) * std::pow(reduced, 4 * sine / (3 * (1 + sine)));
    factors.cohesion = 4.0 / 3.0 * (1 + std::log(reduced));
  }
  if (sine > 1e-6) factors.cohesion = (factors.stress - 1) * cotangent;
  return factors;
}

Result<CavityFactors> deep_tip_factors(Angle friction_angle, double reduced_rigidity) {
  const auto phi = checked_angle(friction_angle);
  if (!phi) return tl::unexpected(phi.error());
  if (!(reduced_rigidity > 1 && std::isfinite(reduced_rigidity)))
    return out_of_range("reduced_rigidity", reduced_rigidity, "reduced_rigidity > 1");
  const double sine = std::sin(*phi), tangent = std::tan(*phi);
  const double wedge = std::tan(pi / 4 + *phi / 2);
  CavityFactors factors;
  factors.plastic_radius = std::cbrt(reduced_rigidity);
  factors.stress = 3 / (3 - sine) * std::exp((pi / 2 - *phi) * tangent) * wedge * wedge *
                   std::pow(reduced_rigidity, 4 * sine / (3 * (1 + sine)));
  factors.cohesion =
      sine > 1e-6 ? (factors.stress - 1) / tangent : 4.0 / 3.0 * (std::log(reduced_rigidity) + 1) + pi / 2 + 1;
  return factors;
}

}  // namespace burrow

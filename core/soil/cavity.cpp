#include "burrow/soil/cavity.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {
constexpr double degree = pi / 180.0;

/// 1 for the cylinder, 4/3 for the sphere.
double shape_factor(Cavity cavity) {
  return cavity == Cavity::cylinder ? 1.0 : 4.0 / 3.0;
}

Result<double> undrained_rigidity(Pressure initial, Pressure strength, Pressure shear_modulus) {
  if (!(initial.Pa >= 0 && std::isfinite(initial.Pa))) return out_of_range("initial", initial.Pa, "initial >= 0 Pa");
  if (!(strength.Pa > 0 && std::isfinite(strength.Pa))) return out_of_range("strength", strength.Pa, "strength > 0 Pa");
  const double rigidity = shear_modulus.Pa / strength.Pa;
  if (!(rigidity >= 1 && std::isfinite(rigidity)))
    return out_of_range("shear_modulus", shear_modulus.Pa, "shear_modulus >= strength");
  return rigidity;
}

/// Λ(R, ξ) = ∫₁ᴿ x^(−γ−1) e^(ξx) dx as the series of the paper, with w = R^−γ.
double expansion_series(double log_R, double w, double xi, double gamma) {
  const double R = std::exp(log_R);
  double power = w;   // R^(n−γ)
  double factor = 1;  // ξⁿ/n!
  double sum = 0;
  for (int n = 0; n < 80; ++n) {
    const double exponent = n - gamma;
    // Trap: the term is 0/0 where n meets γ; its limit is ln R.
    const double term = std::abs(exponent) < 1e-6 ? log_R * (1 + 0.5 * exponent * log_R) : (power - 1) / exponent;
    sum += factor * term;
    if (n > gamma && std::abs(factor * term) < 1e-17 * std::abs(sum)) break;
    power *= R;
    factor *= xi / (n + 1);
  }
  return sum;
}
}  // namespace

Result<CavityLimit> undrained_limit(Cavity cavity, Pressure initial, Pressure strength, Pressure shear_modulus) {
  const auto rigidity = undrained_rigidity(initial, strength, shear_modulus);
  if (!rigidity) return tl::unexpected(rigidity.error());
  const double p_L = initial.Pa + shape_factor(cavity) * strength.Pa * (1 + std::log(*rigidity));
  const double r_p = cavity == Cavity::cylinder ? std::sqrt(*rigidity) : std::cbrt(*rigidity);
  return CavityLimit{.pressure = {p_L}, .plastic_radius = r_p};
}

Result<Pressure> undrained_pressure(Cavity cavity, Pressure initial, Pressure strength, Pressure shear_modulus,
                                    Ratio growth) {
  const auto rigidity = undrained_rigidity(initial, strength, shear_modulus);
  if (!rigidity) return tl::unexpected(rigidity.error());
  if (!(growth.v > 1 / *rigidity && growth.v <= 1)) return out_of_range("growth", growth.v, "1/I_r < growth <= 1");
  return Pressure{initial.Pa + shape_factor(cavity) * strength.Pa * (1 + std::log(*rigidity * growth.v))};
}

Result<CavityLimit> drained_limit(Cavity cavity, const FrictionalGround& ground) {
  const double G = ground.shear_modulus.Pa, nu = ground.poisson_ratio.v, c = ground.cohesion.Pa;
  const double phi = ground.friction_angle.rad, psi = ground.dilation_angle.rad, p0 = ground.initial.Pa;
  if (!(G > 0 && std::isfinite(G))) return out_of_range("shear_modulus", G, "shear_modulus > 0 Pa");
  if (!(nu >= 0 && nu < 0.5)) return out_of_range("poisson_ratio", nu, "0 <= poisson_ratio < 0.5");
  if (!(c >= 0 && std::isfinite(c))) return out_of_range("cohesion", c, "cohesion >= 0 Pa");
  if (!(phi >= 0.9999 * degree && phi <= 55.0001 * degree))
    return out_of_range("friction_angle", phi, "1 to 55 degrees");
  if (!(psi >= -20.0001 * degree && psi <= phi)) return out_of_range("dilation_angle", psi, "-20 degrees to phi");
  if (!(p0 >= 0 && std::isfinite(p0) && p0 + c > 0)) return out_of_range("initial", p0, "initial > 0 Pa, or cohesion");

  const double k = static_cast<double>(cavity);
  const double E = 2 * G * (1 + nu);
  const double Y = 2 * c * std::cos(phi) / (1 - std::sin(phi));
  const double alpha = (1 + std::sin(phi)) / (1 - std::sin(phi));
  const double beta = (1 + std::sin(psi)) / (1 - std::sin(psi));
  const double yield = Y + (alpha - 1) * p0;
  const double gamma = alpha * (beta + k) / (k * (alpha - 1) * beta);
  const double delta = yield / (2 * (k + alpha) * G);
  if (!(delta < 1)) return out_of_range("shear_modulus", G, "a modulus well above the strength");
  const double eta = std::exp((beta + k) * (1 - 2 * nu) * yield * (1 + (2 - k) * nu) / (E * (alpha - 1) * beta));
  const double xi = (1 - nu * nu * (2 - k)) * (1 + k) * delta / ((1 + nu) * (alpha - 1) * beta) *
                    (alpha * beta + k * (1 - 2 * nu) + 2 * nu - k * nu * (alpha + beta) / (1 - nu * (2 - k)));
  const double target = eta / gamma * std::pow(1 - delta, (beta + k) / beta);

  // Newton in w = R^−γ, in which Λ is nearly a straight line (dΛ/dw = −e^(ξR)/γ); bisection in ln R where it leaves
  // the bracket.
  constexpr int most_steps = 60;
  double low = 0, high = std::log(1e4);
  double log_R = std::clamp(-std::log(std::max(1 - gamma * target, 1e-9)) / gamma, std::log(1.001), 0.99 * high);
  for (int step = 1; step <= most_steps; ++step) {
    const double w = std::exp(-gamma * log_R);
    const double miss = expansion_series(log_R, w, xi, gamma) - target;
    (miss > 0 ? high : low) = log_R;
    const double next_w = w + miss * gamma * std::exp(-xi * std::exp(log_R));
    double next = next_w > 0 ? -std::log(next_w) / gamma : 2 * high;
    // A converged step lands on an end of the bracket: that is no reason to leave it.
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    const double change = std::abs(next - log_R);
    log_R = next;
    if (change > 1e-13 * (1 + log_R) && std::abs(miss) > 1e-15 * target) continue;
    const double R = std::exp(log_R);
    const double p_L = (R * alpha * (1 + k) * yield / (k + alpha) - Y) / (alpha - 1);
    const double r_p = std::exp(log_R * alpha / (k * (alpha - 1)));
    if (!(log_R < std::log(0.9e4))) break;
    return CavityLimit{{p_L}, r_p, step, std::abs(miss) / target};
  }
  return fail("shear_modulus", std::to_string(G), "a modulus for which the limit pressure converges");
}

}  // namespace burrow

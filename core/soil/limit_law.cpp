#include "burrow/soil/limit_law.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

#include "burrow/soil/cavity.h"

namespace burrow {

namespace {
constexpr double degree = pi / 180.0;

/// The soil moved into the range of the cavity methods.
Soil within_range(Soil soil) {
  double& phi = soil.friction_angle.rad;
  phi = std::clamp(phi, degree, 55 * degree);
  soil.dilation_angle.rad = std::clamp(soil.dilation_angle.rad, -20 * degree, phi);
  soil.poisson_ratio.v = std::clamp(soil.poisson_ratio.v, 0.0, 0.495);
  soil.cohesion.Pa = std::max(soil.cohesion.Pa, 0.0);
  return soil;
}
}  // namespace

LimitLaw::LimitLaw(const Soil& soil, Pressure deepest) : soil_(within_range(soil)) {
  mean_share_ = 0.5 * (1 + soil.earth_pressure_ratio.v);
  if (!soil.drained) {
    const double s_u = soil.undrained_strength.Pa;
    if (s_u > 0) strength_part_ = s_u * (1 + std::log(std::max(soil.shear_modulus.Pa / s_u, 1.0)));
    return;
  }
  friction_tangent_ = std::tan(soil.friction_angle.rad);
  shift_ = soil_.cohesion.Pa / std::tan(soil_.friction_angle.rad);
  deepest_ = std::max(deepest.Pa, 2 * least_mean_effective_Pa);
  // The fit ends a little outside the range, so that rounding at its ends stays inside.
  fit_.emplace(std::log(0.99 * least_mean_effective_Pa + shift_), std::log(1.01 * deepest_ + shift_),
               [this](double log_p) { return std::log(solve(std::exp(log_p) - shift_) + shift_); });
}

double LimitLaw::solve(double mean_effective_Pa) const {
  FrictionalGround ground{.shear_modulus = soil_.shear_modulus,
                          .poisson_ratio = soil_.poisson_ratio,
                          .cohesion = soil_.cohesion,
                          .friction_angle = soil_.friction_angle,
                          .dilation_angle = soil_.dilation_angle,
                          .initial = {std::max(mean_effective_Pa, 0.0)}};
  // A modulus too low for its strength does not converge: such ground is taken a little stiffer until it does.
  ground.shear_modulus.Pa = std::max(ground.shear_modulus.Pa, 5 * (mean_effective_Pa + shift_));
  for (int attempt = 0; attempt < 40; ++attempt) {
    if (const auto limit = drained_limit(Cavity::cylinder, ground)) return limit->pressure.Pa;
    ground.shear_modulus.Pa *= 1.5;
  }
  return mean_effective_Pa;
}

double LimitLaw::effective_limit_Pa(double mean_effective_Pa) const {
  const double p0 = std::max(mean_effective_Pa, least_mean_effective_Pa);
  if (p0 > deepest_) return solve(p0);
  return std::exp((*fit_)(std::log(p0 + shift_))) - shift_;
}

template <std::size_t N>
void LimitLaw::effective_limits(std::array<double, N>& p) const {
  // Along a side the stress changes one way only: its ends hold its greatest value.
  if (std::max(p.front(), p.back()) > deepest_) {
    for (double& value : p) value = effective_limit_Pa(value);
    return;
  }
  // Eigen's logarithm and exponential take several values in one go.
  Eigen::Map<Eigen::Array<double, static_cast<int>(N), 1>> values(p.data());
  values = (values.max(least_mean_effective_Pa) + shift_).log();
  fit_->evaluate(p);
  values = values.exp() - shift_;
}
template void LimitLaw::effective_limits(std::array<double, 6>&) const;
template void LimitLaw::effective_limits(std::array<double, 12>&) const;

}  // namespace burrow

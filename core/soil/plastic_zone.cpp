#include "burrow/soil/plastic_zone.h"

#include <algorithm>
#include <cmath>

#include "burrow/soil/cavity.h"
#include "burrow/soil/limit_law.h"

namespace burrow {

Result<double> plastic_radius_ratio(const Soil& soil, double mean_effective_Pa) {
  if (!std::isfinite(mean_effective_Pa)) return out_of_range("mean effective stress", mean_effective_Pa, "a pressure");
  const double p0 = std::max(mean_effective_Pa, least_mean_effective_Pa);
  const auto limit = soil.drained
                         ? drained_limit(Cavity::cylinder, {soil.shear_modulus, soil.poisson_ratio, soil.cohesion,
                                                            soil.friction_angle, soil.dilation_angle, Pressure{p0}})
                         : undrained_limit(Cavity::cylinder, Pressure{p0}, soil.undrained_strength, soil.shear_modulus);
  if (!limit) return tl::unexpected(limit.error());
  return limit->plastic_radius;
}

}  // namespace burrow

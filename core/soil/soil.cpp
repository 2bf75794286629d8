#include "burrow/soil/soil.h"

#include <cmath>

namespace burrow {

Soil resolve_soil(const SoilClass& row, const SoilOverrides& values) {
  Soil soil;
  soil.unit_weight = values.unit_weight.value_or(row.unit_weight);
  soil.saturated_unit_weight = values.saturated_unit_weight.value_or(row.saturated_unit_weight);
  soil.undrained_strength = values.undrained_strength.value_or(row.undrained_strength.value_or(Pressure{}));
  soil.friction_angle = values.friction_angle.value_or(row.friction_angle.value_or(Angle{}));
  soil.cohesion = values.cohesion.value_or(row.cohesion);
  soil.dilation_angle = values.dilation_angle.value_or(row.dilation_angle);
  soil.shear_modulus = values.shear_modulus.value_or(row.shear_modulus);
  soil.poisson_ratio = values.poisson_ratio.value_or(row.poisson_ratio);
  soil.adhesion_ratio = values.adhesion_ratio.value_or(row.adhesion_ratio);
  soil.interface_angle = values.interface_angle.value_or(row.interface_angle);
  soil.wander = values.wander.value_or(row.wander);
  soil.stone_rate = values.stone_rate.value_or(row.stone_rate);
  soil.stone_kick = values.stone_kick.value_or(row.stone_kick);
  soil.refusal_rate = values.refusal_rate.value_or(row.refusal_rate);
  soil.heave_share = values.heave_share.value_or(row.heave_share);
  soil.swell = values.swell.value_or(row.swell);
  soil.excavation_type = values.excavation_type.value_or(row.excavation_type);

  // `drained` decides where strength and friction are both known; it cannot ask for one that is not there.
  const bool has_strength = soil.undrained_strength.Pa > 0;
  const bool has_friction = soil.friction_angle.rad > 0;
  soil.drained = has_strength && has_friction ? values.drained.value_or(row.drained) : has_friction;

  // A K0 of the class counts only for the way of draining that the class has.
  const double usual = soil.drained ? 1 - std::sin(soil.friction_angle.rad) : 0.7;
  const bool class_ratio_counts = row.earth_pressure_ratio && soil.drained == row.drained;
  soil.earth_pressure_ratio =
      values.earth_pressure_ratio.value_or(class_ratio_counts ? *row.earth_pressure_ratio : Ratio{usual});
  return soil;
}

}  // namespace burrow

#pragma once
/// The soil of one stratum: its class with the user's own values laid over it.

#include <optional>

#include "burrow/crossing/site.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Every member decided. Undrained: `undrained_strength` counts; drained: friction angle, cohesion, dilation.
struct Soil {
  bool drained = false;
  UnitWeight unit_weight, saturated_unit_weight;
  Pressure undrained_strength;
  Angle friction_angle;
  Pressure cohesion;
  Angle dilation_angle;
  Pressure shear_modulus;
  Ratio poisson_ratio;
  Ratio earth_pressure_ratio;  ///< K0: total stresses in undrained, effective in drained soil
  Ratio adhesion_ratio;
  Angle interface_angle;
  Wander wander;
  RatePerLength stone_rate;
  Angle stone_kick;
  RatePerLength refusal_rate;
  Ratio heave_share;
  Ratio swell;
  ExcavationType excavation_type = ExcavationType::c;
  bool operator==(const Soil&) const = default;
};

/// Source: `resources/tables/soils.json` (our default); K0 = 0.7 undrained, 1 − sin φ′ drained (Jaky 1944, from
/// memory). Evidence: ResolveSoil.*
Soil resolve_soil(const SoilClass& soil_class, const SoilOverrides& values);

}  // namespace burrow

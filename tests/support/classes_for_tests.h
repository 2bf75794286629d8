#pragma once
/// Soil classes written out by hand, so that the tests of ground and path stand without the loader of tables.
/// Every value: our default.

#include "burrow/soil/soil.h"
#include "burrow/tables/tables.h"

namespace burrow::for_tests {

struct ClassRow {
  const char* id;
  double gamma_kN_m3, saturated_kN_m3, strength_kPa, phi_deg, psi_deg, modulus_MPa, wander, stone_rate, stone_kick,
      refusal_rate, heave_share;
};

inline SoilClass soil_class(const ClassRow& row) {
  SoilClass soil;
  soil.id = row.id;
  soil.name = row.id;
  soil.unit_weight = {1e3 * row.gamma_kN_m3};
  soil.saturated_unit_weight = {1e3 * row.saturated_kN_m3};
  soil.drained = row.phi_deg > 0;
  if (soil.drained)
    soil.friction_angle = Angle{row.phi_deg * pi / 180};
  else
    soil.undrained_strength = Pressure{1e3 * row.strength_kPa};
  soil.dilation_angle = {row.psi_deg * pi / 180};
  soil.shear_modulus = {1e6 * row.modulus_MPa};
  soil.interface_angle = {25 * pi / 180};
  soil.wander = {row.wander};
  soil.stone_rate = {row.stone_rate};
  soil.stone_kick = {row.stone_kick};
  soil.refusal_rate = {row.refusal_rate};
  soil.heave_share = {row.heave_share};
  return soil;
}

inline Tables tables() {
  Tables tables;
  const ClassRow rows[] = {
      {"very-soft-clay", 16, 16.5, 8, 0, 0, 0.8, 0.0035, 0, 0, 0, 1.0},
      {"soft-clay", 17, 17.5, 18, 0, 0, 1.8, 0.0030, 0, 0, 0, 1.0},
      {"firm-clay", 18, 18.5, 40, 0, 0, 4, 0.0025, 0, 0, 0.001, 1.0},
      {"stiff-clay", 19.5, 20, 80, 0, 0, 8, 0.0025, 0, 0, 0.002, 1.0},
      {"very-stiff-clay", 20.5, 21, 150, 0, 0, 15, 0.0030, 0.01, 0.003, 0.01, 1.0},
      {"hard-clay", 21.5, 22, 250, 0, 0, 25, 0.0035, 0.02, 0.004, 0.05, 1.0},
      {"silt", 17.5, 19, 0, 29, 0, 4, 0.0035, 0, 0, 0.002, 0.7},
      {"loose-sand", 16, 19, 0, 30, 0, 4, 0.0040, 0, 0, 0.002, 0.4},
      {"medium-sand", 17.5, 20, 0, 34, 2, 10, 0.0040, 0.01, 0.003, 0.005, 0.7},
      {"dense-sand", 19, 21, 0, 38, 6, 25, 0.0045, 0.02, 0.003, 0.03, 1.1},
      {"fine-gravel", 19, 21, 0, 38, 6, 30, 0.0060, 0.10, 0.004, 0.03, 0.9},
      {"made-ground", 17.5, 19.5, 0, 30, 0, 5, 0.0070, 0.15, 0.008, 0.02, 0.7},
      {"trench-backfill", 17, 19, 0, 31, 0, 5, 0.0050, 0.03, 0.004, 0.005, 0.6},
  };
  for (const ClassRow& row : rows) tables.soils.push_back(soil_class(row));
  return tables;
}

inline Soil soil(const char* id) {
  const Tables all = tables();
  return resolve_soil(*find_soil(all, id), {});
}

}  // namespace burrow::for_tests

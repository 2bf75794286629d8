#include "burrow/pipe/along.h"

#include <cmath>

namespace burrow {

Result<Ratio> bending_strain(double curvature_1_m, Length diameter) {
  if (!(curvature_1_m >= 0) || !std::isfinite(curvature_1_m))
    return out_of_range("curvature", curvature_1_m, ">= 0 1/m");
  if (!(diameter.m > 0)) return out_of_range("diameter", diameter.m, "> 0 m");
  return Ratio{curvature_1_m * diameter.m / 2};
}

Result<Length> thermal_shortening(double expansion_1_K, Length length, double cooling_K) {
  if (!(expansion_1_K >= 0)) return out_of_range("expansion", expansion_1_K, ">= 0 1/K");
  if (!(length.m >= 0)) return out_of_range("length", length.m, ">= 0 m");
  if (!std::isfinite(cooling_K)) return out_of_range("cooling", cooling_K, "a number");
  return Length{expansion_1_K * length.m * cooling_K};
}

Result<Floating> floating(UnitWeight material, double area_m2, Length diameter) {
  if (!(material.N_m3 >= 0)) return out_of_range("unit weight", material.N_m3, ">= 0 N/m3");
  if (!(area_m2 >= 0)) return out_of_range("area", area_m2, ">= 0 m2");
  if (!(diameter.m > 0)) return out_of_range("diameter", diameter.m, "> 0 m");
  return Floating{material.N_m3 * area_m2, water_unit_weight_N_m3 * pi / 4 * diameter.m * diameter.m};
}

Result<double> settling_curvature_1_m(Length gap, Length depth) {
  if (!(gap.m >= 0) || !std::isfinite(gap.m)) return out_of_range("gap", gap.m, ">= 0 m");
  if (!(depth.m > 0)) return out_of_range("depth", depth.m, "> 0 m");
  const double inflection_m = 0.5 * depth.m;
  return gap.m / (inflection_m * inflection_m);
}

}  // namespace burrow

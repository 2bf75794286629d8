#include "burrow/load/railway.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "burrow/load/half_space.h"

namespace burrow {

namespace {

constexpr double foot_m = 0.3048, psf_Pa = 4.4482216152605 / (foot_m * foot_m);

/// Cover in ft, pressure in lb/ft², impact included.
constexpr std::array<std::pair<double, double>, 18> e80{{{2, 3800},
                                                         {3, 3400},
                                                         {4, 2650},
                                                         {5, 2400},
                                                         {6, 2250},
                                                         {7, 1750},
                                                         {8, 1600},
                                                         {10, 1100},
                                                         {12, 800},
                                                         {14, 600},
                                                         {16, 500},
                                                         {18, 400},
                                                         {20, 300},
                                                         {22, 275},
                                                         {24, 250},
                                                         {26, 200},
                                                         {28, 150},
                                                         {30, 100}}};

}  // namespace

Result<Pressure> rail_table_pressure(Length cover) {
  const double ft = cover.m / foot_m;
  constexpr double hair = 1e-9;  // 2 ft typed in metres
  if (!(ft >= e80.front().first - hair && ft <= e80.back().first + hair))
    return out_of_range("cover", cover.m, "0.6096 to 9.144 m (2 to 30 ft)");
  const auto above = std::find_if(e80.begin() + 1, e80.end() - 1, [&](const auto& row) { return row.first >= ft; });
  const auto& [x1, y1] = *above;
  const auto& [x0, y0] = *(above - 1);
  return Pressure{(y0 + (y1 - y0) * (ft - x0) / (x1 - x0)) * psf_Pa};
}

Result<Ratio> rail_impact(Length cover) {
  if (!(cover.m >= 0)) return out_of_range("cover", cover.m, ">= 0 m");
  return Ratio{0.40 * std::max(0.0, 1 - cover.m / (10 * foot_m))};
}

Result<Pressure> rail_half_space_pressure(Length cover) {
  constexpr double half_length_m = 10 * foot_m, half_width_m = 4 * foot_m, load_Pa = 2025 * psf_Pa;
  const RectangleLoad train{-half_length_m, half_length_m, -half_width_m, half_width_m, load_Pa};
  Result<Pressure> stress = rectangle_stress(train, {0, 0}, cover);
  if (stress) stress->Pa *= 1 + rail_impact(cover)->v;
  return stress;
}

Result<RailPressure> rail_pressure(Length cover) {
  const Result<Pressure> half_space = rail_half_space_pressure(cover);
  if (!half_space) return tl::unexpected(half_space.error());
  RailPressure rail{half_space->Pa, false, half_space->Pa, rail_impact(cover)->v};
  const Length in_table{std::max(cover.m, e80.front().first * foot_m)};
  const Result<Pressure> table = rail_table_pressure(in_table);
  if (table && table->Pa > rail.pressure_Pa) {
    rail.pressure_Pa = table->Pa;
    rail.by_table = true;
  }
  return rail;
}

}  // namespace burrow

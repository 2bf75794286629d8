#include "burrow/bore/neutral_cover.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "burrow/bore/steering.h"

namespace burrow {

std::optional<double> neutral_cover(const Soil& soil, const Tool& tool) {
  const Ground ground = Ground::uniform(soil);
  const Steering steering(ground, tool);
  const Column column = ground.column(0, 0);
  const auto climb = [&](double cover_diameters) {
    return steering.pitch(column, -(cover_diameters + 0.5) * tool.diameter.m, 0).pitch_1_m;
  };
  constexpr double least = 0.2, most = 60, growth = 1.12;
  double low = least;
  if (!(climb(low) > 0)) return std::nullopt;
  while (low < most) {
    const double high = low * growth;
    if (climb(high) <= 0) {
      std::uintmax_t steps = 60;
      const auto root =
          boost::math::tools::toms748_solve(climb, low, high, boost::math::tools::eps_tolerance<double>(30), steps);
      return 0.5 * (root.first + root.second);
    }
    low = high;
  }
  return std::nullopt;
}

std::optional<double> neutral_cover(const Ground& ground, const Tool& tool, const Launch& launch) {
  return neutral_cover(ground.soil_at(launch.station.m, launch.offset->m, launch.elevation.m), tool);
}

}  // namespace burrow

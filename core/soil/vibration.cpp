#include "burrow/soil/vibration.h"

#include <array>
#include <cmath>
#include <span>
#include <utility>

namespace burrow {

namespace {

constexpr double degree = pi / 180, mm_s = 1e-3;

Result<void> check(double energy_J, Length distance) {
  if (!(energy_J >= 0) || !std::isfinite(energy_J)) return out_of_range("blow energy", energy_J, ">= 0 J");
  if (!(distance.m > 0) || !std::isfinite(distance.m)) return out_of_range("distance", distance.m, "> 0 m");
  return {};
}

/// Even between the points, held beyond the last.
double between(std::span<const std::pair<double, double>> points, double at) {
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto& [x0, y0] = points[i - 1];
    const auto& [x1, y1] = points[i];
    if (at <= x1) return at <= x0 ? y0 : y0 + (y1 - y0) * (at - x0) / (x1 - x0);
  }
  return points.back().second;
}

}  // namespace

BlowGround blow_ground(const Soil& soil) {
  constexpr BlowGround weak{1, 1.4}, stiff{1.5, 1.3}, hard{3, 1.1}, refusing{5, 1.0};
  if (!soil.drained) {
    if (soil.undrained_strength.Pa < 40e3) return weak;
    if (soil.undrained_strength.Pa < 150e3) return stiff;
    return soil.undrained_strength.Pa < 400e3 ? hard : refusing;
  }
  const double phi = soil.friction_angle.rad;
  if (phi < 32 * degree) return weak;
  if (phi < 36 * degree) return stiff;
  return phi < 39.5 * degree ? hard : refusing;
}

Result<double> percussive_vibration_m_s(double energy_J, Length distance, double scale) {
  if (auto ok = check(energy_J, distance); !ok) return tl::unexpected(ok.error());
  return scale * std::sqrt(energy_J) / std::pow(distance.m, 1.3) * mm_s;
}

Result<double> distance_vibration_m_s(double energy_J, Length distance, double exponent, ReferenceBlow reference) {
  if (auto ok = check(energy_J, distance); !ok) return tl::unexpected(ok.error());
  if (!(reference.energy_J > 0)) return out_of_range("reference energy", reference.energy_J, "> 0 J");
  constexpr double reference_distance_m = 25 * 0.3048;
  return reference.velocity_m_s * std::pow(reference_distance_m / distance.m, exponent) *
         std::sqrt(energy_J / reference.energy_J);
}

Result<double> tunnelling_bound_m_s(Length distance) {
  if (auto ok = check(0, distance); !ok) return tl::unexpected(ok.error());
  return 180 / std::pow(distance.m, 1.3) * mm_s;
}

Result<double> din_4150_limit_m_s(int line, Frequency frequency) {
  if (line < 1 || line > 3) return out_of_range("line", line, "1, 2 or 3");
  if (!(frequency.Hz > 0)) return out_of_range("frequency", frequency.Hz, "> 0 Hz");
  using Points = std::array<std::pair<double, double>, 3>;
  static constexpr std::array<Points, 3> lines{
      {{{{10, 20}, {50, 40}, {100, 50}}}, {{{10, 5}, {50, 15}, {100, 20}}}, {{{10, 3}, {50, 8}, {100, 10}}}}};
  return between(lines[static_cast<std::size_t>(line - 1)], frequency.Hz) * mm_s;
}

Result<double> bs_7385_limit_m_s(Frequency frequency) {
  if (!(frequency.Hz >= 4)) return out_of_range("frequency", frequency.Hz, ">= 4 Hz");
  static constexpr std::array<std::pair<double, double>, 3> points{{{4, 15}, {15, 20}, {40, 50}}};
  return between(points, frequency.Hz) * mm_s;
}

}  // namespace burrow

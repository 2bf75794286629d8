#include "burrow/bore/launch_setup.h"

#include <cmath>

namespace burrow {

namespace {
constexpr double small_rad = 0.0005;
constexpr double degree_rad = pi / 180;

/// Shift of the arrival for one radian of level or of heading.
std::optional<ExitShift> shift_for(const Ground& ground, const Tool& tool, const Bore& bore, double level_rad,
                                   double heading_rad) {
  const auto arrival = [&](double sign) -> std::optional<PathPoint> {
    Bore tilted = bore;
    tilted.launch.grade.v = std::tan(std::atan(bore.launch.grade.v) + sign * level_rad);
    tilted.launch.heading.value.rad += sign * heading_rad;
    const BorePath path = predict_path(ground, tool, tilted);
    if (path.ends != PathEnd::exit) return std::nullopt;
    return path.points.back();
  };
  const auto more = arrival(1), less = arrival(-1);
  if (!more || !less) return std::nullopt;
  const double by = 2 * (level_rad + heading_rad);
  return ExitShift{(more->z_m - less->z_m) / by, (more->y_m - less->y_m) / by};
}

ExitShift times(const ExitShift& shift, double factor) {
  return {shift.up_m * factor, shift.left_m * factor};
}

/// Of a straight line: z = x tan θ / cos ψ, y = x tan ψ.
ExitShift straight(const Launch& launch, double length, bool level) {
  const double theta = std::atan(launch.grade.v), psi = launch.heading->rad;
  const double cos2_theta = std::cos(theta) * std::cos(theta), cos2_psi = std::cos(psi) * std::cos(psi);
  if (level) return {length / (cos2_theta * std::cos(psi)), 0};
  return {length * std::tan(theta) * std::sin(psi) / cos2_psi, length / cos2_psi};
}
}  // namespace

GradeReadings grade_readings(const Launch& launch, const Tool& tool) {
  const double theta = std::atan(launch.grade.v);
  return {launch.grade, {theta}, {tool.length.m * std::sin(theta)}};
}

std::optional<Length> stake_offset(const Launch& launch) {
  if (!launch.sight_base) return std::nullopt;
  return Length{launch.sight_base->m * std::tan(launch.heading->rad)};
}

CradleSetup cradle_setup(const Launch& launch, const Tool& tool, Length floor) {
  const double theta = std::atan(launch.grade.v), psi = launch.heading->rad;
  // The underside lies a radius square to the axis below it: a/cos θ straight below.
  const double below = 0.5 * tool.diameter.m / std::cos(theta);
  const auto behind = [&](double along) -> CradlePoint {
    const double elevation = launch.elevation.m - along * std::sin(theta) - below;
    return {{launch.station.m - along * std::cos(theta) * std::cos(psi)}, {elevation}, {elevation - floor.m}};
  };
  return {behind(0), behind(tool.length.m / 3), behind(tool.length.m)};
}

ErrorsAtExit errors_at_exit(const Ground& ground, const Tool& tool, const Bore& bore) {
  const Launch& launch = bore.launch;
  const double length = bore.exit.station.m - launch.station.m;
  const double theta = std::atan(launch.grade.v), psi = launch.heading->rad;
  ErrorsAtExit errors;
  errors.straight_run_m = length / (std::cos(theta) * std::cos(psi));
  const auto level = shift_for(ground, tool, bore, small_rad, 0);
  const auto heading = shift_for(ground, tool, bore, 0, small_rad);
  errors.reaches = level.has_value() && heading.has_value();
  const ExitShift by_level = errors.reaches ? *level : straight(launch, length, true);
  const ExitShift by_heading = errors.reaches ? *heading : straight(launch, length, false);
  errors.level_1mm = times(by_level, 0.001 / (tool.length.m * std::cos(theta)));       // d(L sin θ) = L cos θ dθ
  errors.level_1_percent = times(by_level, 0.01 * std::cos(theta) * std::cos(theta));  // d(tan θ) = dθ / cos² θ
  errors.level_1_degree = times(by_level, degree_rad);
  errors.heading_1_degree = times(by_heading, degree_rad);
  if (launch.sight_base)
    errors.stake_1mm = times(by_heading, 0.001 * std::cos(psi) * std::cos(psi) / launch.sight_base->m);
  return errors;
}

}  // namespace burrow

#include "landxml_lines.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "burrow/base/quantity.h"

namespace burrow {

void add_arc(std::vector<PlanPoint>& line, const ArcTurn& arc, double sagitta) {
  const double radius = std::hypot(arc.start.x_m - arc.centre.x_m, arc.start.y_m - arc.centre.y_m);
  const double from = std::atan2(arc.start.y_m - arc.centre.y_m, arc.start.x_m - arc.centre.x_m);
  double turn = std::atan2(arc.end.y_m - arc.centre.y_m, arc.end.x_m - arc.centre.x_m) - from;
  if (arc.clockwise && turn > 0) turn -= 2 * pi;
  if (!arc.clockwise && turn < 0) turn += 2 * pi;
  if (!std::isfinite(radius) || !std::isfinite(turn)) return line.push_back(arc.end);
  const double step = radius > sagitta ? 2 * std::acos(1 - sagitta / radius) : pi / 8;
  const double most_steps = 2000;
  const auto steps = static_cast<int>(std::clamp(std::ceil(std::abs(turn) / std::max(step, 1e-9)), 1.0, most_steps));
  for (int i = 1; i < steps; ++i) {
    const double at = from + turn * i / steps;
    line.push_back({arc.centre.x_m + radius * std::cos(at), arc.centre.y_m + radius * std::sin(at)});
  }
  line.push_back(arc.end);
}

void add_spiral(std::vector<PlanPoint>& line, const SpiralTurn& spiral, std::size_t steps) {
  const double heading = std::atan2(spiral.towards.y_m - spiral.start.y_m, spiral.towards.x_m - spiral.start.x_m);
  const double growth = (spiral.curvature_end - spiral.curvature_start) / (2 * spiral.length);
  const auto direction = [&](double s) { return heading + spiral.curvature_start * s + growth * s * s; };
  const double h = spiral.length / static_cast<double>(steps);
  PlanPoint p = spiral.start;
  for (std::size_t i = 1; i < steps; ++i) {
    const double a = h * static_cast<double>(i - 1);
    const double d0 = direction(a), d1 = direction(a + h / 2), d2 = direction(a + h);
    p.x_m += h / 6 * (std::cos(d0) + 4 * std::cos(d1) + std::cos(d2));
    p.y_m += h / 6 * (std::sin(d0) + 4 * std::sin(d1) + std::sin(d2));
    line.push_back(p);
  }
  line.push_back(spiral.end);
}

std::optional<double> profile_height(const std::vector<ProfilePoint>& profile, double station) {
  if (profile.empty() || !(station >= profile.front().station && station <= profile.back().station))
    return std::nullopt;
  if (profile.size() == 1) return profile.front().z;
  const auto grade_after = [&](std::size_t i) {
    return (profile[i + 1].z - profile[i].z) / (profile[i + 1].station - profile[i].station);
  };
  std::size_t i = 0;
  while (i + 2 < profile.size() && station > profile[i + 1].station) ++i;
  double z = profile[i].z + grade_after(i) * (station - profile[i].station);
  for (const std::size_t k : {i, i + 1}) {
    if (k == 0 || k + 1 >= profile.size()) continue;
    const ProfilePoint& p = profile[k];
    const double whole = p.curve_in + p.curve_out;
    const double bend = grade_after(k) - grade_after(k - 1);
    const double from = p.station - p.curve_in, to = p.station + p.curve_out;
    if (!(whole > 0) || !(station > from && station < to)) continue;
    if (station <= p.station && p.curve_in > 0) {
      z += bend / (2 * whole) * p.curve_out / p.curve_in * (station - from) * (station - from);
    } else if (station > p.station && p.curve_out > 0) {
      z += bend / (2 * whole) * p.curve_in / p.curve_out * (to - station) * (to - station);
    }
  }
  return z;
}

}  // namespace burrow

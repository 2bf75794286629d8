#include "burrow/bore/advance.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {

double circle(double diameter) {
  return pi * diameter * diameter / 4;
}

double effective(const GroundAtTool& at) {
  return std::max(at.limit_Pa - at.pore_Pa, 0.0);
}

/// P90/P50 of the field factor, and so of the time.
double spread_ratio(const BlowConstants& c) {
  return std::sqrt(c.factor_high / c.factor_low);
}

/// Friction on the body summed from the launch face: sums[i] up to point i.
std::vector<double> friction_sums(const std::vector<PathPoint>& points, const std::vector<double>& friction_N_m) {
  std::vector<double> sums{0.0};
  for (std::size_t i = 1; i < points.size(); ++i)
    sums.push_back(sums.back() + 0.5 * (friction_N_m[i - 1] + friction_N_m[i]) * (points[i].s_m - points[i - 1].s_m));
  return sums;
}

/// The sum at any s, the friction straight between points.
double sum_at(const std::vector<PathPoint>& points, const std::vector<double>& friction_N_m,
              const std::vector<double>& sums, double s) {
  if (!(s > 0)) return 0;
  const auto next =
      std::upper_bound(points.begin(), points.end(), s, [](double value, const PathPoint& p) { return value < p.s_m; });
  if (next == points.end()) return sums.back();
  const auto i = static_cast<std::size_t>(next - points.begin());
  const double h = s - points[i - 1].s_m, share = h / (points[i].s_m - points[i - 1].s_m);
  const double here = friction_N_m[i - 1] + share * (friction_N_m[i] - friction_N_m[i - 1]);
  return sums[i - 1] + 0.5 * (friction_N_m[i - 1] + here) * h;
}

/// Nose, side and set at every point of the path.
void fill_driving(Advance& advance, const Ground& ground, const Tool& tool, const std::vector<PathPoint>& points,
                  const BlowConstants& constants) {
  std::vector<double> friction_N_m;
  Column column;
  for (const PathPoint& p : points) {
    ground.fill(column, p.x_m, p.y_m);
    const GroundAtTool at{*column.layer_at(p.z_m).properties, column.limit_pressure(p.z_m),
                          column.pore_pressure(p.z_m)};
    friction_N_m.push_back(side_resistance_N_m(at, tool));
    AdvancePoint point;
    point.s_m = p.s_m;
    point.x_m = p.x_m;
    point.drained = at.soil.drained;
    point.nose_N = nose_resistance_N(at, tool, constants);
    advance.points.push_back(point);
  }
  const std::vector<double> sums = friction_sums(points, friction_N_m);
  for (std::size_t i = 0; i < points.size(); ++i) {
    AdvancePoint& point = advance.points[i];
    point.side_N = sums[i] - sum_at(points, friction_N_m, sums, point.s_m - tool.length.m);
    point.set_m = set_m(advance.blow, point.nose_N + point.side_N, point.drained, constants);
    point.grip = point.side_N / advance.blow.reaction_N;
  }
}

void fill_time(Advance& advance, const Tool& tool, const AdvanceAsk& ask, const BlowConstants& constants) {
  double time = 0;
  const double ratio = spread_ratio(constants);
  for (std::size_t i = 0; i < advance.points.size(); ++i) {
    AdvancePoint& point = advance.points[i];
    if (!advance.stop_s_m && !(point.set_m >= ask.least_set.m)) {
      advance.stop_s_m = point.s_m;
      advance.stop_station_m = point.x_m;
    }
    if (!advance.stop_s_m) {
      point.rate_m_s = point.set_m * tool.blow_rate.Hz * ask.field_factor.v;
      if (i > 0) {
        const AdvancePoint& before = advance.points[i - 1];
        time += 0.5 * (point.s_m - before.s_m) * (1 / before.rate_m_s + 1 / point.rate_m_s);
      }
    }
    point.time = {time / ratio, time, time * ratio};
  }
  if (!advance.stop_s_m) advance.time = advance.points.back().time;
}

void find_grip(Advance& advance, const Tool& tool) {
  const AdvancePoint* least = nullptr;
  for (std::size_t i = 0; i < advance.points.size(); ++i) {
    const AdvancePoint& point = advance.points[i];
    if (!advance.held_until_m && point.grip >= 1) {
      // Between two points the friction grows almost straight.
      const AdvancePoint& before = advance.points[i > 0 ? i - 1 : 0];
      const double share = i > 0 ? (1 - before.grip) / (point.grip - before.grip) : 0;
      advance.held_until_m = before.s_m + share * (point.s_m - before.s_m);
    }
    if (point.s_m >= tool.length.m && (!least || point.grip < least->grip)) least = &point;
  }
  if (!least) least = &advance.points.back();
  advance.least_grip = least->grip;
  advance.least_grip_station_m = least->x_m;
}

}  // namespace

Blow blow_of(const Tool& tool, Pressure gauge, const BlowConstants& constants) {
  const double striker = tool.striker_mass.kg, rest = tool.mass.kg - striker;
  BURROW_ENSURE(gauge.Pa > 0 && striker > 0 && rest > 0);
  const double e2 = constants.restitution * constants.restitution;
  Blow blow;
  blow.reaction_N = gauge.Pa * circle(tool.piston_diameter.m);
  blow.energy_J = constants.energy_share * blow.reaction_N * tool.stroke.m;
  blow.efficiency = (striker + e2 * rest) / (striker + rest);
  return blow;
}

double nose_resistance_N(const GroundAtTool& at, const Tool& tool, const BlowConstants& constants) {
  const double cot = 1 / std::tan(constants.nose_half_angle_rad);
  const double along = at.soil.drained ? effective(at) * std::tan(at.soil.interface_angle.rad)
                                       : constants.nose_adhesion_ratio * at.soil.undrained_strength.Pa;
  return circle(tool.diameter.m) * (at.limit_Pa + along * cot);
}

double side_resistance_N_m(const GroundAtTool& at, const Tool& tool) {
  const double full =
      at.soil.drained ? effective(at) * std::tan(at.soil.interface_angle.rad) : at.soil.undrained_strength.Pa;
  return pi * tool.diameter.m * at.soil.adhesion_ratio.v * full;
}

double set_m(const Blow& blow, double resistance_N, bool drained, const BlowConstants& constants) {
  const double damping = drained ? constants.damping_sand_s_m : constants.damping_clay_s_m;
  return blow.efficiency * blow.energy_J / (resistance_N * (1 + damping * constants.speed_m_s)) - constants.rebound_m;
}

Advance advance_along(const Ground& ground, const Tool& tool, const BorePath& path, const AdvanceAsk& ask,
                      const BlowConstants& constants) {
  BURROW_ENSURE(!path.points.empty() && ask.field_factor.v > 0);
  Advance advance;
  advance.blow = blow_of(tool, ask.gauge, constants);
  fill_driving(advance, ground, tool, path.points, constants);
  fill_time(advance, tool, ask, constants);
  find_grip(advance, tool);
  return advance;
}

std::vector<PressureEffect> pressure_effects(const Ground& ground, const Tool& tool, const BorePath& path,
                                             const AdvanceAsk& ask, const std::vector<Pressure>& gauges) {
  std::vector<PressureEffect> effects;
  for (const Pressure gauge : gauges) {
    AdvanceAsk other = ask;
    other.gauge = gauge;
    const Advance advance = advance_along(ground, tool, path, other);
    effects.push_back({gauge, std::nullopt, advance.stop_station_m, advance.least_grip});
    if (advance.time) effects.back().time_p50_s = advance.time->p50_s;
  }
  return effects;
}

namespace {

Working working_of_time(const TimeSpread& time, const Tool& tool, const AdvanceAsk& ask, const BlowConstants& constants,
                        const Source& source) {
  return {"bore.time",
          "bore",
          "t = ∫ ds / (set · f · F); P10, P90 = t / k, t · k; k = √(F_high / F_low)",
          {{"f", tool.blow_rate.Hz, "Hz"},
           {"F", ask.field_factor.v, ""},
           {"F_low", constants.factor_low, ""},
           {"F_high", constants.factor_high, ""},
           {"k", spread_ratio(constants), ""},
           {"P10", time.p10_s, "s"},
           {"P90", time.p90_s, "s"}},
          "t",
          time.p50_s,
          "s",
          std::nullopt,
          source};
}

}  // namespace

std::vector<Working> working_of(const Advance& advance, const Tool& tool, const AdvanceAsk& ask,
                                const BlowConstants& constants) {
  const auto hardest = std::min_element(advance.points.begin(), advance.points.end(),
                                        [](const AdvancePoint& a, const AdvancePoint& b) { return a.set_m < b.set_m; });
  const Blow& blow = advance.blow;
  const Source source{"blow balance of this program, Hiley form with Smith's damping; not calibrated",
                      SourceLabel::our_model};
  const double damping = hardest->drained ? constants.damping_sand_s_m : constants.damping_clay_s_m;
  std::vector<Working> working;
  working.push_back({"bore.set",
                     "bore",
                     "set = η E / (R (1 + J v)) − r_e, R = R_nose + R_side, E = share p A_piston stroke",
                     {{"p", ask.gauge.Pa, "Pa"},
                      {"d_piston", tool.piston_diameter.m, "m"},
                      {"stroke", tool.stroke.m, "m"},
                      {"share", constants.energy_share, ""},
                      {"E", blow.energy_J, "J"},
                      {"e", constants.restitution, ""},
                      {"m_striker", tool.striker_mass.kg, "kg"},
                      {"m_tool", tool.mass.kg, "kg"},
                      {"η", blow.efficiency, ""},
                      {"α", constants.nose_half_angle_rad, "rad"},
                      {"R_nose", hardest->nose_N, "N"},
                      {"R_side", hardest->side_N, "N"},
                      {"J", damping, "s/m"},
                      {"v", constants.speed_m_s, "m/s"},
                      {"r_e", constants.rebound_m, "m"},
                      {"x", hardest->x_m, "m"}},
                     "set",
                     hardest->set_m,
                     "m",
                     ask.least_set.m,
                     source});
  working.push_back(
      {"bore.efficiency",
       "bore",
       "η = (m_striker + e² (m_tool − m_striker))/m_tool",
       {{"m_striker", tool.striker_mass.kg, "kg"}, {"m_tool", tool.mass.kg, "kg"}, {"e", constants.restitution, ""}},
       "η",
       blow.efficiency,
       "",
       std::nullopt,
       {"energy left by a blow of one body on another at rest, Hiley form", SourceLabel::our_model}});
  working.push_back({"bore.grip",
                     "bore",
                     "grip = R_side / (p A_piston)",
                     {{"R_side", advance.least_grip * blow.reaction_N, "N"},
                      {"p A_piston", blow.reaction_N, "N"},
                      {"x", advance.least_grip_station_m, "m"}},
                     "grip",
                     advance.least_grip,
                     "",
                     1.0,
                     source});
  if (advance.time) working.push_back(working_of_time(*advance.time, tool, ask, constants, source));
  return working;
}

}  // namespace burrow

#include "flight.h"

#include <cmath>

namespace burrow::trials {

namespace {
constexpr double never = std::numeric_limits<double>::infinity();
}

Course::Course(const Bore& the_bore, const Tool& tool, Length step)
    : bore(the_bore),
      radius_m(0.5 * tool.diameter.m),
      step_m(step.m),
      longest_m(1.5 * (the_bore.exit.station.m - the_bore.launch.station.m) + 5),
      constant(the_bore.model.steer_constant->v) {
  const double sd = the_bore.model.steer_constant_sd->v;
  if (!(sd > 0 && constant > 0)) return;
  const double log_variance = std::log1p(sd * sd / (constant * constant));
  constant_log_sd = std::sqrt(log_variance);
  constant_log_mean = std::log(constant) - 0.5 * log_variance;
}

void Flight::launch(const Course& course, Draws& draws, std::size_t count) {
  const Launch& launch = course.bore.launch;
  const double position = launch.position_sd->m;
  for (std::size_t i = 0; i < lanes; ++i) {
    const double drawn = draws.normal();
    constant_[i] = course.step_m * (course.constant_log_sd > 0
                                        ? std::exp(course.constant_log_mean + course.constant_log_sd * drawn)
                                        : course.constant);
    x_[i] = launch.station.m;
    y_[i] = launch.offset->m + position * draws.normal();
    z_[i] = launch.elevation.m + position * draws.normal();
    const double grade = std::atan(launch.grade.v) + launch.level_sd->rad * draws.normal();
    const double heading = launch.heading->rad + launch.aim_sd->rad * draws.normal();
    cos_grade_[i] = std::cos(grade);
    sin_grade_[i] = std::sin(grade);
    cos_heading_[i] = std::cos(heading);
    sin_heading_[i] = std::sin(heading);
    stone_left_[i] = draws.exponential();
    const double until_refusal = draws.exponential();  // drawn either way, so that the other draws stay the same
    refusal_left_[i] = course.refusal ? until_refusal : never;
    exit_[i] = course.bore.exit.station.m;
    least_depth_[i] = course.radius_m;
    if (i >= count) finish(i, TrialEnd::lost, {x_[i], y_[i], z_[i]}, 0);
  }
  flying_ = count;
}

/// Straight on by h.
void Flight::drift(double h) {
  for (std::size_t i = 0; i < lanes; ++i) {
    const double level = h * cos_grade_[i];
    x_[i] += level * cos_heading_[i];
    y_[i] += level * sin_heading_[i];
    z_[i] += h * sin_grade_[i];
  }
}

void Flight::record() {
  if (step_count_ == x_at_.size()) {
    x_at_.emplace_back();
    y_at_.emplace_back();
    z_at_.emplace_back();
  }
  x_at_[step_count_] = x_;
  y_at_[step_count_] = y_;
  z_at_[step_count_] = z_;
  ++step_count_;
}

/// What turns each bore over this step. True: one of them ended, or met a stone.
bool Flight::look(const Course& course, const Terrain& terrain, Draws& draws) {
  for (std::size_t i = 0; i < lanes; ++i) {
    normal_pitch_[i] = draws.normal();
    normal_yaw_[i] = draws.normal();
  }
  const TurnTable& table = terrain.plain();
  table.look(x_, z_, depth_, asymmetry_, sag_, soil_);
  const double h = course.step_m, root_h = std::sqrt(h);
  const auto turn_by = [&](std::size_t i, const SoilChance& chance) {
    const double noise = chance.wander_rad_sqrt_m * root_h;
    pitch_[i] = constant_[i] * (static_cast<double>(asymmetry_[i]) - static_cast<double>(sag_[i]) * cos_grade_[i]) +
                noise * normal_pitch_[i];
    yaw_[i] = noise * normal_yaw_[i];
    stone_left_[i] -= chance.stone_rate_1_m * h;
    refusal_left_[i] -= chance.refusal_rate_1_m * h;
    stone_kick_[i] = chance.stone_kick_rad;
  };
  if (table.one_soil()) {
    const SoilChance chance = table.chances()[table.soil({}, 0)];
    for (std::size_t i = 0; i < lanes; ++i) turn_by(i, chance);
  } else {
    const SoilChance* chances = table.chances().data();
    for (std::size_t i = 0; i < lanes; ++i) turn_by(i, chances[soil_[i]]);
  }
  if (terrain.has_strips()) look_beside_strips(course, terrain);
  double least = never;
  for (std::size_t i = 0; i < lanes; ++i) {
    const double left =
        std::min(std::min(depth_[i] - least_depth_[i], exit_[i] - x_[i]), std::min(stone_left_[i], refusal_left_[i]));
    least = std::min(least, left);
  }
  return least <= 0;
}

/// The bores near a strip once more, piece by piece.
void Flight::look_beside_strips(const Course& course, const Terrain& terrain) {
  const double h = course.step_m, root_h = std::sqrt(h);
  for (std::size_t i = 0; i < lanes; ++i) {
    if (!terrain.strip_near(x_[i], y_[i])) continue;
    const Terrain::Turn turn = terrain.beside_strips(x_[i], y_[i], depth_[i], cos_heading_[i], sin_heading_[i]);
    const double noise = turn.chance.wander_rad_sqrt_m * root_h;
    const double asymmetry = static_cast<double>(turn.pitch.asymmetry_1_m),
                 sag = static_cast<double>(turn.pitch.sag_1_m);
    pitch_[i] = constant_[i] * (asymmetry - sag * cos_grade_[i]) + noise * normal_pitch_[i];
    yaw_[i] = constant_[i] * turn.yaw_1_m + noise * normal_yaw_[i];
    // What `look` took off for the ground without strips is given back.
    const SoilChance plain =
        terrain.plain()
            .chances()[terrain.plain().one_soil() ? terrain.plain().soil({}, 0) : static_cast<std::size_t>(soil_[i])];
    stone_left_[i] -= (turn.chance.stone_rate_1_m - plain.stone_rate_1_m) * h;
    refusal_left_[i] -= (turn.chance.refusal_rate_1_m - plain.refusal_rate_1_m) * h;
    stone_kick_[i] = turn.chance.stone_kick_rad;
  }
}

/// Turns by small angles as a rotation, so that no sine is called: the series err by less than 1e-9 up to 0.1 rad.
void Flight::turn() {
  const auto rotate = [](double& cosine, double& sine, double angle) {
    const double q = angle * angle;
    const double c = 1 - q * (0.5 - q * (1.0 / 24)), s = angle * (1 - q * (1.0 / 6 - q * (1.0 / 120)));
    const double next_cosine = cosine * c - sine * s;
    sine = sine * c + cosine * s;
    cosine = next_cosine;
  };
  for (std::size_t i = 0; i < lanes; ++i) rotate(cos_grade_[i], sin_grade_[i], pitch_[i]);
  for (std::size_t i = 0; i < lanes; ++i) rotate(cos_heading_[i], sin_heading_[i], yaw_[i]);
}

void Flight::finish(std::size_t lane, TrialEnd how, const Point3& at, double arc) {
  end_[lane] = how;
  end_at_[lane] = at;
  end_arc_[lane] = arc;
  last_[lane] = step_count_ == 0 ? 0 : step_count_ - 1;
  exit_[lane] = never;
  least_depth_[lane] = -never;
  stone_left_[lane] = refusal_left_[lane] = never;
  --flying_;
}

/// Bore by bore, what happened at the newest point or on the way to it.
void Flight::settle(const Course& course, const Terrain& terrain, Draws& draws) {
  const std::size_t now = step_count_ - 1;
  const double arc = (static_cast<double>(now) - 0.5) * step_;
  const double before = now == 1 ? 0 : arc - step_;
  const TurnTable& table = terrain.plain();
  for (std::size_t i = 0; i < lanes; ++i) {
    const auto between = [&](double share) -> Point3 {
      const auto at = [&](const std::vector<Lane>& v) { return v[now - 1][i] + share * (v[now][i] - v[now - 1][i]); };
      return {at(x_at_), at(y_at_), at(z_at_)};
    };
    if (x_[i] >= exit_[i]) {
      const double from = x_at_[now - 1][i], share = (exit_[i] - from) / (x_[i] - from);
      Point3 at = between(share);
      at.x_m = exit_[i];
      const bool out = table.place(at.x_m).surface_m - at.z_m <= course.radius_m;
      finish(i, out ? TrialEnd::daylight : TrialEnd::arrived, at, before + share * (arc - before));
    } else if (depth_[i] <= least_depth_[i]) {
      const double was = table.place(x_at_[now - 1][i]).surface_m - z_at_[now - 1][i];
      const double share = was > depth_[i] ? std::clamp((was - course.radius_m) / (was - depth_[i]), 0.0, 1.0) : 1;
      finish(i, TrialEnd::daylight, between(share), before + share * (arc - before));
    } else if (refusal_left_[i] <= 0) {
      finish(i, TrialEnd::refused, {x_[i], y_[i], z_[i]}, arc);
    } else {
      while (stone_left_[i] <= 0) {
        pitch_[i] += stone_kick_[i] * draws.normal();
        yaw_[i] += stone_kick_[i] * draws.normal();
        stone_left_[i] += draws.exponential();
      }
    }
  }
}

void Flight::run(const Course& course, const Terrain& terrain, Draws& draws, std::size_t count) {
  step_ = course.step_m;
  step_count_ = 0;
  launch(course, draws, count);
  record();
  drift(0.5 * step_);
  record();
  while (flying_ > 0) {
    if (look(course, terrain, draws)) settle(course, terrain, draws);
    if (flying_ == 0) break;
    const double arc = (static_cast<double>(step_count_) - 1.5) * step_;
    if (arc > course.longest_m) {
      for (std::size_t i = 0; i < lanes; ++i)
        if (exit_[i] != never) finish(i, TrialEnd::lost, {x_[i], y_[i], z_[i]}, arc);
      break;
    }
    turn();
    drift(step_);
    record();
  }
}

}  // namespace burrow::trials

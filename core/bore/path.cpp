#include "burrow/bore/path.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "burrow/base/ensure.h"
#include "burrow/bore/spread.h"
#include "burrow/bore/steering.h"
#include "burrow/bore/turn_table.h"

namespace burrow {

namespace {
struct Pose {
  double s = 0;
  Point3 at;
  double grade = 0, heading = 0;
};

/// What the spread needs of one step already taken.
struct Taken {
  double h, noise, pitch_1_m, yaw_1_m;
};

/// From across the axis to along a coordinate at a station. A tool that runs nearly square to the line crosses no
/// station any more; there the factor stays at 20.
double at_a_station(double sd, double angle) {
  return sd / std::max(std::cos(angle), 0.05);
}

class Tracer {
 public:
  Tracer(const Ground& ground, const Tool& tool, const Bore& bore, PathSteps steps, const TurnTable* turns);
  BorePath run();

 private:
  void look();  // fills column and steer at the pose
  [[nodiscard]] Steer looked_up(double by_m) const;
  [[nodiscard]] SoilChance chance() const;
  [[nodiscard]] Pose moved(double h) const;
  [[nodiscard]] double cover(const Pose& pose) const {
    return ground_.surface_m(pose.at.x_m, pose.at.y_m) - pose.at.z_m - radius_;
  }
  [[nodiscard]] double step_to_exit(double h) const;
  [[nodiscard]] double step_to_daylight(double h) const;
  void step(double h);
  void take_gradients();
  void spread_over_block();
  void record();

  const Ground& ground_;
  const TurnTable* turns_;
  Steering steering_;
  double radius_, diameter_, c_, c_sd_, step_, recorded_every_m_, exit_x_, longest_;
  Pose pose_;
  Column column_;
  Steer steer_;
  Steer last_steer_;
  std::optional<double> last_h_;
  Spread vertical_, lateral_;
  double pitch_gradient_ = 0, yaw_gradient_ = 0;  // ∂κ/∂z, ∂κ_h/∂y in the block being taken
  std::vector<Taken> block_;
  std::optional<PathEnd> ended_;
  BorePath path_;
};

Tracer::Tracer(const Ground& ground, const Tool& tool, const Bore& bore, PathSteps steps, const TurnTable* turns)
    : ground_(ground),
      turns_(turns),
      steering_(ground, tool),
      radius_(0.5 * tool.diameter.m),
      diameter_(tool.diameter.m),
      c_(bore.model.steer_constant->v),
      c_sd_(bore.model.steer_constant_sd->v),
      step_(steps.step.m),
      recorded_every_m_(steps.recorded_every.m),
      exit_x_(bore.exit.station.m),
      longest_(1.5 * (bore.exit.station.m - bore.launch.station.m) + 5),
      vertical_(bore.launch.position_sd->m, bore.launch.level_sd->rad),
      lateral_(bore.launch.position_sd->m, bore.launch.aim_sd->rad) {
  BURROW_ENSURE(step_ > 0 && step_ <= recorded_every_m_);
  const Launch& launch = bore.launch;
  pose_.at = {launch.station.m, launch.offset->m, launch.elevation.m};
  pose_.grade = std::atan(launch.grade.v);
  pose_.heading = launch.heading->rad;
}

/// Pitch and its sag from the table, at the pose raised by `by_m`.
Steer Tracer::looked_up(double by_m) const {
  const TurnTable::Place place = turns_->place(pose_.at.x_m);
  const TurnNode node = turns_->turn(place, place.surface_m - pose_.at.z_m - by_m);
  Steer steer;
  steer.sag_1_m = static_cast<double>(node.sag_1_m) * std::cos(pose_.grade);
  steer.pitch_1_m = static_cast<double>(node.asymmetry_1_m) - steer.sag_1_m;
  return steer;
}

void Tracer::look() {
  if (turns_) {
    steer_ = looked_up(0);
    return;
  }
  ground_.fill(column_, pose_.at.x_m, pose_.at.y_m);
  steer_ = steering_.at(column_, pose_.at, pose_.grade, pose_.heading);
}

/// Midpoint rule: direction and curvature of the middle of the step.
Pose Tracer::moved(double h) const {
  const double forward = last_h_ ? 0.5 * h / *last_h_ : 0;
  const double pitch = c_ * (steer_.pitch_1_m + forward * (steer_.pitch_1_m - last_steer_.pitch_1_m));
  const double yaw = c_ * (steer_.yaw_1_m + forward * (steer_.yaw_1_m - last_steer_.yaw_1_m));
  const double grade = pose_.grade + 0.5 * h * c_ * steer_.pitch_1_m;
  const double heading = pose_.heading + 0.5 * h * c_ * steer_.yaw_1_m;
  const double level = h * std::cos(grade);
  return {.s = pose_.s + h,
          .at = {pose_.at.x_m + level * std::cos(heading), pose_.at.y_m + level * std::sin(heading),
                 pose_.at.z_m + h * std::sin(grade)},
          .grade = pose_.grade + h * pitch,
          .heading = pose_.heading + h * yaw};
}

/// The part of a step that ends on the exit face.
double Tracer::step_to_exit(double h) const {
  const double wanted = exit_x_ - pose_.at.x_m;
  for (int i = 0; i < 6; ++i) h *= wanted / (moved(h).at.x_m - pose_.at.x_m);
  return h;
}

/// The part of a step after which no cover is left.
double Tracer::step_to_daylight(double h) const {
  double under = 0, out = h;
  for (int i = 0; i < 48; ++i) {
    const double middle = 0.5 * (under + out);
    (cover(moved(middle)) > 0 ? under : out) = middle;
  }
  return out;
}

/// What the soil at the axis does by chance.
SoilChance Tracer::chance() const {
  // Not by the table's nodes: a bore along the top of a layer would have the other layer's wander for a node's depth.
  const Soil& soil =
      turns_ ? ground_.soil_at(pose_.at.x_m, pose_.at.y_m, pose_.at.z_m) : *column_.layer_at(pose_.at.z_m).properties;
  return {soil.wander.rad_sqrt_m, soil.stone_rate.per_m, soil.stone_kick.rad, soil.refusal_rate.per_m};
}

void Tracer::step(double h) {
  if (pose_.s + h >= longest_ * (1 - 1e-12)) {
    h = longest_ - pose_.s;
    ended_ = PathEnd::longest;
  }
  Pose next = moved(h);
  if (next.at.x_m >= exit_x_) {
    h = step_to_exit(h);
    next = moved(h);
    next.at.x_m = exit_x_;
    ended_ = PathEnd::exit;
  }
  if (!(cover(next) > 0)) {
    h = step_to_daylight(h);
    next = moved(h);
    ended_ = PathEnd::daylight;
  }
  const SoilChance soil = chance();
  const double sigma = soil.wander_rad_sqrt_m, kick = soil.stone_kick_rad;
  block_.push_back({h, sigma * sigma + soil.stone_rate_1_m * kick * kick, steer_.pitch_1_m, steer_.yaw_1_m});
  last_steer_ = steer_;
  last_h_ = h;
  pose_ = next;
}

/// ∂κ/∂z and, where a strip is near, ∂κ_h/∂y by differences over half a diameter.
void Tracer::take_gradients() {
  const double delta = 0.25 * diameter_;
  if (turns_) {
    pitch_gradient_ = c_ * (looked_up(delta).pitch_1_m - looked_up(-delta).pitch_1_m) / (2 * delta);
    return;
  }
  const double up = steering_.pitch(column_, pose_.at.z_m + delta, pose_.grade).pitch_1_m;
  const double down = steering_.pitch(column_, pose_.at.z_m - delta, pose_.grade).pitch_1_m;
  pitch_gradient_ = c_ * (up - down) / (2 * delta);
  yaw_gradient_ = 0;
  if (!ground_.strip_near(pose_.at.x_m, pose_.at.y_m, steering_.reach_m() + delta)) return;
  const auto yaw_at = [&](double aside) {
    const Point3 point{pose_.at.x_m - aside * std::sin(pose_.heading), pose_.at.y_m + aside * std::cos(pose_.heading),
                       pose_.at.z_m};
    return steering_.yaw(ground_.column(point.x_m, point.y_m), point, pose_.heading);
  };
  yaw_gradient_ = c_ * (yaw_at(delta) - yaw_at(-delta)) / (2 * delta);
}

void Tracer::spread_over_block() {
  for (const Taken& taken : block_) {
    vertical_.advance(taken.h, pitch_gradient_, taken.noise, taken.pitch_1_m);
    lateral_.advance(taken.h, yaw_gradient_, taken.noise, taken.yaw_1_m);
  }
  block_.clear();
}

void Tracer::record() {
  if (turns_) {  // what others ask of a point
    ground_.fill(column_, pose_.at.x_m, pose_.at.y_m);
    steer_.limit_Pa = column_.limit_pressure(pose_.at.z_m);
    steer_.cap_Pa = column_.roof_cap(pose_.at.z_m, diameter_);
  }
  path_.points.push_back({.s_m = pose_.s,
                          .x_m = pose_.at.x_m,
                          .y_m = pose_.at.y_m,
                          .z_m = pose_.at.z_m,
                          .grade_rad = pose_.grade,
                          .heading_rad = pose_.heading,
                          .sd_lateral_m = at_a_station(lateral_.sd(c_sd_), pose_.heading),
                          .sd_vertical_m = at_a_station(vertical_.sd(c_sd_), pose_.grade),
                          .cover_m = cover(pose_),
                          .resistance_above_Pa = steer_.above_Pa,
                          .resistance_below_Pa = steer_.below_Pa,
                          .curvature_1_m = c_ * steer_.pitch_1_m,
                          .sag_curvature_1_m = c_ * steer_.sag_1_m,
                          .yaw_curvature_1_m = c_ * steer_.yaw_1_m,
                          .limit_pressure_Pa = steer_.limit_Pa,
                          .roof_cap_Pa = steer_.cap_Pa});
}

BorePath Tracer::run() {
  look();
  record();
  if (!(exit_x_ > pose_.at.x_m) || !(exit_x_ - pose_.at.x_m <= longest_followed.m)) {
    path_.ends = PathEnd::longest;
    return path_;
  }
  if (!(cover(pose_) > 0)) {
    path_.ends = PathEnd::daylight;
    return path_;
  }
  path_.points.reserve(static_cast<std::size_t>(longest_ / recorded_every_m_) + 3);
  const int steps_a_block = static_cast<int>(std::ceil(recorded_every_m_ / step_ * (1 - 1e-9)));
  const double h = recorded_every_m_ / steps_a_block;
  while (!ended_) {
    for (int i = 0; i < steps_a_block && !ended_; ++i) {
      if (i == steps_a_block / 2) take_gradients();
      step(h);
      look();
    }
    spread_over_block();
    record();
  }
  path_.length_m = pose_.s;
  path_.ends = *ended_;
  return path_;
}
}  // namespace

bool too_long_to_follow(const Bore& bore) {
  return !(bore.exit.station.m - bore.launch.station.m <= longest_followed.m);
}

BorePath predict_path(const Ground& ground, const Tool& tool, const Bore& bore, PathSteps steps,
                      const TurnTable* turns) {
  return Tracer(ground, tool, bore, steps, turns).run();
}

double chance_of_refusal(const Ground& ground, const BorePath& path, Length up_to) {
  double expected = 0;  // number of refusals
  for (std::size_t i = 1; i < path.points.size(); ++i) {
    const PathPoint &from = path.points[i - 1], &to = path.points[i];
    const double length = std::min(to.s_m, up_to.m) - from.s_m;
    if (!(length > 0)) break;
    const Soil& soil = ground.soil_at(0.5 * (from.x_m + to.x_m), 0.5 * (from.y_m + to.y_m), 0.5 * (from.z_m + to.z_m));
    expected += soil.refusal_rate.per_m * length;
  }
  return -std::expm1(-expected);
}

double chance_of_refusal(const Ground& ground, const BorePath& path) {
  return chance_of_refusal(ground, path, {path.length_m});
}

}  // namespace burrow

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/bore/conditioning.h"
#include "burrow/bore/spread.h"
#include "burrow/bore/steering.h"

namespace burrow {

namespace {

constexpr double looked_every_m = 0.05;  ///< the step of `predict_path`

/// Below this share of the variance a wider band is only the rounding of two ways to sum it.
constexpr double least_guess_share = 0.01;

class ChainMaker {
 public:
  ChainMaker(const Ground& ground, const Tool& tool, const Bore& bore, const BorePath& path)
      : ground_(ground),
        steering_(ground, tool),
        diameter_m_(tool.diameter.m),
        c_(bore.model.steer_constant->v),
        c_sd_(bore.model.steer_constant_sd->v),
        path_(path) {}

  SpreadStep step(std::size_t i) {
    const PathPoint &from = path_.points[i], &to = path_.points[i + 1];
    SpreadStep step;
    step.h_m = to.s_m - from.s_m;
    const int looks = std::max(1, static_cast<int>(std::ceil(step.h_m / looked_every_m * (1 - 1e-9))));
    for (int k = 0; k < looks; ++k) {
      const PathPoint p = point_at(path_, from.s_m + step.h_m * k / looks);
      const Soil& soil = ground_.soil_at(p.x_m, p.y_m, p.z_m);
      const double sigma = soil.wander.rad_sqrt_m, kick = soil.stone_kick.rad;
      step.noise_rad2_m += (sigma * sigma + soil.stone_rate.per_m * kick * kick) / looks;
    }
    const PathPoint middle = point_at(path_, from.s_m + step.h_m * (looks / 2) / looks);  // NOLINT: as the path does
    ground_.fill(column_, middle.x_m, middle.y_m);
    const double delta = 0.25 * diameter_m_;
    const auto pitch = [&](double z) { return steering_.pitch(column_, z, middle.grade_rad).pitch_1_m; };
    step.pitch_gradient_1_m2 = c_ * (pitch(middle.z_m + delta) - pitch(middle.z_m - delta)) / (2 * delta);
    step.pitch_by_constant_1_m = c_sd_ * pitch(middle.z_m);
    if (ground_.strip_near(middle.x_m, middle.y_m, steering_.reach_m() + delta)) {
      step.yaw_gradient_1_m2 = c_ * (yaw(middle, delta) - yaw(middle, -delta)) / (2 * delta);
      step.yaw_by_constant_1_m = c_sd_ * yaw(middle, 0);
    }
    return step;
  }

 private:
  [[nodiscard]] double yaw(const PathPoint& p, double aside) const {
    const Point3 at{p.x_m - aside * std::sin(p.heading_rad), p.y_m + aside * std::cos(p.heading_rad), p.z_m};
    return steering_.yaw(ground_.column(at.x_m, at.y_m), at, p.heading_rad);
  }

  const Ground& ground_;
  Steering steering_;
  double diameter_m_, c_, c_sd_;
  const BorePath& path_;
  Column column_;
};

struct Shape {
  double shift_m = 0, turn_rad = 0;
};

/// What is left of the band's variance, as a shift along the bore with its slope.
std::vector<Shape> guess_shape(const SpreadChain& chain, const BorePath& path, DeviationMember member) {
  std::vector<Shape> shapes;
  DeviationCovariance known = chain.start;
  for (std::size_t i = 0; i < path.points.size(); ++i) {
    if (i > 0) {
      const DeviationCovariance f = chain.steps[i - 1].onward();
      known = f * known * f.transpose() + chain.steps[i - 1].noise();
    }
    const PathPoint& p = path.points[i];
    const double band = member == up_m ? p.sd_vertical_m * std::max(std::cos(p.grade_rad), 0.05)
                                       : p.sd_lateral_m * std::max(std::cos(p.heading_rad), 0.05);
    const double rest = band * band - known(member, member);
    shapes.push_back({rest > least_guess_share * known(member, member) ? std::sqrt(rest) : 0.0, 0});
  }
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    const std::size_t a = i > 0 ? i - 1 : i, b = std::min(i + 1, shapes.size() - 1);
    if (b > a) shapes[i].turn_rad = (shapes[b].shift_m - shapes[a].shift_m) / (path.points[b].s_m - path.points[a].s_m);
  }
  return shapes;
}

void put_guess(SpreadChain& chain, const std::vector<Shape>& shapes, DeviationMember member) {
  for (std::size_t i = 0; i < chain.steps.size(); ++i) {
    SpreadStep& step = chain.steps[i];
    const DeviationCovariance f = step.onward();
    const Shape &from = shapes[i], &to = shapes[i + 1];
    const double shift = to.shift_m - f(member, member) * from.shift_m - f(member, member + 1) * from.turn_rad;
    const double turn = to.turn_rad - f(member + 1, member) * from.shift_m - f(member + 1, member + 1) * from.turn_rad;
    (member == up_m ? step.guess_up_m : step.guess_left_m) = shift;
    (member == up_m ? step.guess_pitch_rad : step.guess_yaw_rad) = turn;
  }
}

bool any(const std::vector<Shape>& shapes) {
  return std::any_of(shapes.begin(), shapes.end(), [](const Shape& s) { return s.shift_m > 0; });
}

}  // namespace

SpreadChain spread_chain(const Ground& ground, const Tool& tool, const Bore& bore, const BorePath& path) {
  BURROW_ENSURE(!path.points.empty());
  const Launch& launch = bore.launch;
  const auto square = [](double v) { return v * v; };
  SpreadChain chain;
  chain.from_s_m = path.points.front().s_m;
  chain.start(up_m, up_m) = chain.start(left_m, left_m) = square(launch.position_sd->m);
  chain.start(pitch_rad, pitch_rad) = square(launch.level_sd->rad);
  chain.start(yaw_rad, yaw_rad) = square(launch.aim_sd->rad);
  chain.start(constant, constant) = 1;
  ChainMaker maker(ground, tool, bore, path);
  chain.steps.reserve(path.points.size());
  for (std::size_t i = 0; i + 1 < path.points.size(); ++i) chain.steps.push_back(maker.step(i));
  const std::vector<Shape> up = guess_shape(chain, path, up_m), left = guess_shape(chain, path, left_m);
  if (any(up)) {
    put_guess(chain, up, up_m);
    chain.start(guess_up, guess_up) = 1;
  }
  if (any(left)) {
    put_guess(chain, left, left_m);
    chain.start(guess_left, guess_left) = 1;
  }
  return chain;
}

}  // namespace burrow

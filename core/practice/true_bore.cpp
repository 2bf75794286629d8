#include "burrow/practice/true_bore.h"

#include <algorithm>
#include <boost/random/exponential_distribution.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/bore/steering.h"

namespace burrow {

namespace {

/// The same on every machine, unlike the distributions of the standard library.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double normal() { return normal_(engine_); }
  double exponential() { return exponential_(engine_); }

 private:
  boost::random::mt19937_64 engine_;
  boost::random::normal_distribution<double> normal_;
  boost::random::exponential_distribution<double> exponential_;
};

class Follower {
 public:
  Follower(const Ground& ground, const Tool& tool, const Bore& bore, const SetErrors& errors, const Chance& chance,
           const std::vector<StoneHit>& given, Length step)
      : ground_(ground),
        steering_(ground, tool),
        radius_m_(0.5 * tool.diameter.m),
        c_(bore.model.steer_constant->v),
        exit_x_m_(bore.exit.station.m),
        longest_m_(1.5 * (bore.exit.station.m - bore.launch.station.m) + 5),
        step_m_(step.m),
        chance_(chance),
        wander_(chance.seed),
        stone_(chance.seed ^ 0x9e3779b97f4a7c15U),
        given_(given) {
    const Launch& launch = bore.launch;
    at_.x_m = launch.station.m;
    at_.y_m = launch.offset->m + errors.left_m;
    at_.z_m = launch.elevation.m + errors.up_m;
    at_.grade_rad = std::atan(launch.grade.v) + errors.level_rad;
    at_.heading_rad = launch.heading->rad + errors.aim_rad;
    std::sort(given_.begin(), given_.end(), [](const StoneHit& a, const StoneHit& b) { return a.s_m < b.s_m; });
    stone_left_ = stone_.exponential();
  }

  TrueBore run() {
    look();
    record();
    bore_.path.ends = PathEnd::longest;
    if (!(exit_x_m_ > at_.x_m) || !(exit_x_m_ - at_.x_m <= longest_followed.m)) return std::move(bore_);
    if (!(at_.cover_m > 0)) {
      bore_.path.ends = PathEnd::daylight;
      return std::move(bore_);
    }
    while (step()) {
    }
    bore_.path.length_m = bore_.path.points.back().s_m;
    return std::move(bore_);
  }

 private:
  void look() {
    ground_.fill(column_, at_.x_m, at_.y_m);
    at_.cover_m = column_.surface_m() - at_.z_m - radius_m_;
  }
  void record() { bore_.path.points.push_back(at_); }

  void drift(double h) {
    const double level = h * std::cos(at_.grade_rad);
    at_.s_m += h;
    at_.x_m += level * std::cos(at_.heading_rad);
    at_.y_m += level * std::sin(at_.heading_rad);
    at_.z_m += h * std::sin(at_.grade_rad);
  }

  /// What ground and chance turn over a step, in its middle.
  void turn(double h) {
    const Point3 axis{at_.x_m, at_.y_m, at_.z_m};
    const Steer steer = steering_.at(column_, axis, at_.grade_rad, at_.heading_rad);
    const Soil& soil = *column_.layer_at(at_.z_m).properties;
    at_.grade_rad += c_ * steer.pitch_1_m * h;
    at_.heading_rad += c_ * steer.yaw_1_m * h;
    const double up = wander_.normal(), left = wander_.normal();  // drawn whether they count or not
    if (chance_.wander) {
      const double noise = soil.wander.rad_sqrt_m * std::sqrt(h);
      at_.grade_rad += noise * up;
      at_.heading_rad += noise * left;
    }
    if (chance_.stones) stone_left_ -= soil.stone_rate.per_m * h;
    while (stone_left_ <= 0) {
      hit({at_.s_m, soil.stone_kick.rad * stone_.normal(), soil.stone_kick.rad * stone_.normal()});
      stone_left_ += stone_.exponential();
    }
    for (; next_given_ < given_.size() && given_[next_given_].s_m <= at_.s_m; ++next_given_) hit(given_[next_given_]);
  }
  void hit(const StoneHit& stone) {
    at_.grade_rad += stone.up_rad;
    at_.heading_rad += stone.left_rad;
    bore_.stones.push_back(stone);
  }

  /// Straight back along the last half step to where it ended.
  void end_at(double back_m, PathEnd how) {
    drift(-back_m);
    look();
    bore_.path.ends = how;
    record();
  }

  bool step() {
    drift(0.5 * step_m_);
    look();
    if (at_.x_m < exit_x_m_ && at_.cover_m > 0) turn(step_m_);
    drift(0.5 * step_m_);
    look();
    const double along = std::max(0.05, std::cos(at_.grade_rad) * std::cos(at_.heading_rad));
    if (at_.x_m >= exit_x_m_) {
      end_at((at_.x_m - exit_x_m_) / along, PathEnd::exit);
      bore_.path.points.back().x_m = exit_x_m_;
      return false;
    }
    if (!(at_.cover_m > 0)) {
      const double rise = std::max(1e-3, std::sin(at_.grade_rad));
      end_at(std::min(step_m_, -at_.cover_m / rise), PathEnd::daylight);
      return false;
    }
    if (at_.s_m >= longest_m_) {
      record();
      return false;
    }
    record();
    return true;
  }

  const Ground& ground_;
  Steering steering_;
  double radius_m_, c_, exit_x_m_, longest_m_, step_m_;
  Chance chance_;
  Dice wander_, stone_;
  std::vector<StoneHit> given_;
  std::size_t next_given_ = 0;
  double stone_left_ = 0;
  PathPoint at_;
  Column column_;
  TrueBore bore_;
};

}  // namespace

TrueBore true_bore(const Ground& ground, const Tool& tool, const Bore& bore, const SetErrors& errors,
                   const Chance& chance, const std::vector<StoneHit>& given, Length step) {
  BURROW_ENSURE(step.m > 0);
  return Follower(ground, tool, bore, errors, chance, given, step).run();
}

}  // namespace burrow

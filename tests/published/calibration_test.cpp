// Whether the bands hold what they promise: ten thousand random bores, counted before and after readings.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "burrow/bore/conditioning.h"
#include "support/trials_for_tests.h"

namespace burrow {
namespace {

constexpr double half_widths_sd[] = {0.674, 1.645, 2.576};
constexpr double promised[] = {0.50, 0.90, 0.99};

/// Where a random bore is at an arc length, and which way it points. Its path runs straight between points half a step,
/// then whole steps apart.
struct Place {
  double y_m, z_m, grade_rad, heading_rad;
};
Place place_at(const std::vector<Point3>& bore, double s_m, double step_m) {
  const double along = s_m / step_m + 0.5;
  const auto i = std::min(static_cast<std::size_t>(along), bore.size() - 2);
  const double share = i == 0 ? s_m / (0.5 * step_m) : along - static_cast<double>(i);
  const Point3 &a = bore[i], &b = bore[i + 1];
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, dz = b.z_m - a.z_m;
  return {a.y_m + share * dy, a.z_m + share * dz, std::atan2(dz, std::hypot(dx, dy)), std::atan2(dy, dx)};
}

struct Counts {
  int up[3] = {}, left[3] = {};
  void add(double up_in_sd, double left_in_sd) {
    for (int k = 0; k < 3; ++k) {
      up[k] += std::abs(up_in_sd) <= half_widths_sd[k];
      left[k] += std::abs(left_in_sd) <= half_widths_sd[k];
    }
  }
  void expect_promised(int of, const char* soil, const char* when) const {
    for (int k = 0; k < 3; ++k) {
      EXPECT_NEAR(static_cast<double>(up[k]) / of, promised[k], 0.015) << soil << " up, " << when;
      EXPECT_NEAR(static_cast<double>(left[k]) / of, promised[k], 0.015) << soil << " left, " << when;
    }
  }
};

/// The mean arrival is linear in the readings: what one unit of each adds, found once.
class Readings {
 public:
  Readings(const SpreadChain& chain, std::vector<PathReading> readings)
      : chain_(chain), readings_(std::move(readings)) {
    const Conditioned none = condition(chain_, readings_);
    covariance_ = none.points.back().filtered_cov;
    for (std::size_t r = 0; r < readings_.size(); ++r) {
      std::vector<PathReading> one = readings_;
      one[r].value = 1;
      weights_.push_back(condition(chain_, one).points.back().filtered);
    }
  }
  [[nodiscard]] const DeviationCovariance& covariance() const { return covariance_; }
  [[nodiscard]] Deviation mean(const std::vector<double>& values) const {
    Deviation m = Deviation::Zero();
    for (std::size_t r = 0; r < values.size(); ++r) m += values[r] * weights_[r];
    return m;
  }
  [[nodiscard]] const std::vector<PathReading>& all() const { return readings_; }

 private:
  const SpreadChain& chain_;
  std::vector<PathReading> readings_;
  DeviationCovariance covariance_;
  std::vector<Deviation> weights_;
};

struct Layout {
  const char* soil;
  double z_m, length_m;
};

/// Bores with everything uncertain but what stops or kicks the tool.
void calibrate(const Layout& layout, int count) {
  for_tests::TrialCase c(layout.soil, layout.z_m, layout.length_m);
  Bore& bore = c.crossing.bore;
  bore.launch.position_sd.set(Length{0.005});
  bore.launch.level_sd.set(Angle{0.005});
  bore.launch.aim_sd.set(Angle{0.005});
  bore.model.steer_constant_sd.set(Ratio{0.03});
  SoilOverrides& values = c.crossing.site.strata.front().values;
  values.wander.reset();
  values.stone_rate = RatePerLength{0};
  c.setup.paths_kept = static_cast<std::size_t>(count);
  const BorePath path = c.path();
  ASSERT_EQ(path.ends, PathEnd::exit);
  const PathPoint& end = path.points.back();
  const Ground ground(c.crossing.site, for_tests::all_tables());
  const SpreadChain chain = spread_chain(ground, c.tool(), bore, path);
  // What the spread of c makes of the variance of the height at the exit.
  const double whole = end.sd_vertical_m * std::cos(end.grade_rad);
  Bore known = bore;
  known.model.steer_constant_sd.set(Ratio{0});
  const PathPoint without = predict_path(ground, c.tool(), known).points.back();
  const double rest = without.sd_vertical_m * std::cos(without.grade_rad);
  ASSERT_LT(1 - rest * rest / (whole * whole), 0.30) << "beyond this the bands come from the trials";

  const double s_level = 2.0, s_fix = 0.55 * layout.length_m;
  const Readings readings(chain, {reading_of(pitch_rad, s_level, 0, 0.002), reading_of(yaw_rad, s_level, 0, 0.003),
                                  reading_of(up_m, s_fix, 0, 0.06), reading_of(left_m, s_fix, 0, 0.05)});
  const double sd_up = std::sqrt(readings.covariance()(up_m, up_m)),
               sd_left = std::sqrt(readings.covariance()(left_m, left_m));
  EXPECT_LT(sd_up, 0.9 * whole) << layout.soil;

  const Trials trials = c.run(count);
  ASSERT_EQ(trials.arrived.n, count) << layout.soil;  // no daylight, none stopped
  const PathPoint level = point_at(path, s_level), fix = point_at(path, s_fix);
  std::mt19937_64 engine(11);
  std::normal_distribution<double> normal;
  Counts before, after;
  for (int i = 0; i < count; ++i) {
    const TrialOutcome& outcome = trials.outcomes[static_cast<std::size_t>(i)];
    before.add((outcome.elevation_m - end.z_m) / end.sd_vertical_m, (outcome.offset_m - end.y_m) / end.sd_lateral_m);
    const auto& bored = trials.paths[static_cast<std::size_t>(i)];
    const Place at_level = place_at(bored, s_level, c.setup.step.m), at_fix = place_at(bored, s_fix, c.setup.step.m);
    const Deviation mean = readings.mean({at_level.grade_rad - level.grade_rad + 0.002 * normal(engine),
                                          at_level.heading_rad - level.heading_rad + 0.003 * normal(engine),
                                          (at_fix.z_m - fix.z_m) * std::cos(fix.grade_rad) + 0.06 * normal(engine),
                                          (at_fix.y_m - fix.y_m) + 0.05 * normal(engine)});
    after.add(((outcome.elevation_m - end.z_m) * std::cos(end.grade_rad) - mean[up_m]) / sd_up,
              (outcome.offset_m - end.y_m - mean[left_m]) / sd_left);
  }
  before.expect_promised(count, layout.soil, "before readings");
  after.expect_promised(count, layout.soil, "after readings");
}

// 10⁴ bores each, seed 1: 50, 90 and 99 % bands hold 50, 90 and 99 % of the arrivals within 1.5 points in either
// coordinate (three standard errors of the count at 50 %), before and after a level, a heading and a fix.
TEST(BandCalibration, Trials_TenThousandBores) {
  for (const Layout& layout : {Layout{"firm-clay", -1.5, 12}, Layout{"stiff-clay", -1.2, 10}, Layout{"silt", -1.6, 10},
                               Layout{"medium-sand", -1.9, 9}})
    calibrate(layout, 10'000);
}

}  // namespace
}  // namespace burrow

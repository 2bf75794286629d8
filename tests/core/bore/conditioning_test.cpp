// Readings of the day in the path: the chain is the path's own spread, filter and batch agree, nothing loses its sign.
#include "burrow/bore/conditioning.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>

#include "burrow/bore/guessed_ground.h"
#include "support/classes_for_tests.h"

namespace burrow {
namespace {

struct Case {
  Site site;
  Bore bore;
  Tool tool;
  explicit Case(const char* soil, double z = -1.5, double length = 12) {
    site.ground = {{-5, 0}, {60, 0}};
    Stratum stratum;
    stratum.soil = soil;
    stratum.known.set(StratumEvidence::seen);
    site.strata = {stratum};
    ToolChoice choice;
    choice.diameter = Length{0.065};
    tool = resolve_tool(choice, {});
    bore.launch.elevation = {z};
    bore.exit.station = {length};
  }
  [[nodiscard]] Ground ground() const { return {site, for_tests::tables()}; }
  [[nodiscard]] BorePath path() const { return predict_path(ground(), tool, bore); }
  [[nodiscard]] SpreadChain chain(const BorePath& path) const { return spread_chain(ground(), tool, bore, path); }
};

// Second route: without readings the bands are those of the path, which sums the same spread on its own way.
TEST(SpreadChain, Path_SameBands) {
  for (const char* soil : {"soft-clay", "firm-clay", "medium-sand", "made-ground"}) {
    Case c(soil, -1.8);
    c.bore.launch.grade = {-0.05};
    const BorePath path = c.path();
    const BorePath same = conditioned_path(path, condition(c.chain(path), {}), Knowledge::smoothed);
    ASSERT_EQ(same.points.size(), path.points.size());
    for (std::size_t i = 0; i < path.points.size(); ++i) {
      EXPECT_NEAR(same.points[i].sd_vertical_m / path.points[i].sd_vertical_m, 1, 2e-3) << soil << " " << i;
      EXPECT_NEAR(same.points[i].sd_lateral_m / path.points[i].sd_lateral_m, 1, 2e-3) << soil << " " << i;
      EXPECT_EQ(same.points[i].z_m, path.points[i].z_m);
    }
  }
}

// Guessed ground: its share of the band is an unknown of its own, and a reading takes it in.
TEST(SpreadChain, Guess_BandsOfThePathAndReadable) {
  Case c("soft-clay", -1.3);
  c.site.strata.front().known.set(StratumEvidence::guess);
  const BorePath plain = c.path();
  const BorePath path = path_with_mistakes(c.site, for_tests::tables(), c.tool, c.bore, plain).path;
  ASSERT_GT(path.points.back().sd_vertical_m, 1.05 * plain.points.back().sd_vertical_m);
  const SpreadChain chain = c.chain(path);
  const BorePath same = conditioned_path(path, condition(chain, {}), Knowledge::smoothed);
  EXPECT_NEAR(same.points.back().sd_vertical_m / path.points.back().sd_vertical_m, 1, 5e-3);
  const Conditioned read = condition(chain, {reading_of(up_m, 8, 0.1, 0.02)});
  EXPECT_LT(read.points.back().smoothed_cov(guess_up, guess_up), 0.95);
  EXPECT_NE(read.points.back().smoothed[guess_up], 0);
}

/// All places at once: the joint covariance of every member at every point, conditioned by one solution.
struct Batch {
  Eigen::VectorXd mean;
  Eigen::MatrixXd covariance;
};
Batch batch(const SpreadChain& chain, const std::vector<std::pair<std::size_t, PathReading>>& readings) {
  constexpr Eigen::Index m = deviation_members;
  const auto n = static_cast<Eigen::Index>(chain.steps.size()) + 1;
  Eigen::MatrixXd prior = Eigen::MatrixXd::Zero(n * m, n * m);
  prior.block(0, 0, m, m) = chain.start;
  for (Eigen::Index k = 1; k < n; ++k) {
    const SpreadStep& step = chain.steps[static_cast<std::size_t>(k - 1)];
    const DeviationCovariance f = step.onward();
    prior.block(k * m, 0, m, k * m) = f * prior.block((k - 1) * m, 0, m, k * m);
    prior.block(0, k * m, k * m, m) = prior.block(k * m, 0, m, k * m).transpose();
    prior.block(k * m, k * m, m, m) = f * prior.block((k - 1) * m, (k - 1) * m, m, m) * f.transpose() + step.noise();
  }
  const auto r = static_cast<Eigen::Index>(readings.size());
  Eigen::MatrixXd h = Eigen::MatrixXd::Zero(r, n * m), noise = Eigen::MatrixXd::Zero(r, r);
  Eigen::VectorXd y(r);
  for (Eigen::Index i = 0; i < r; ++i) {
    const auto& [node, reading] = readings[static_cast<std::size_t>(i)];
    h.block(i, static_cast<Eigen::Index>(node) * m, 1, m) = reading.row.transpose();
    noise(i, i) = reading.sd * reading.sd;
    y[i] = reading.value;
  }
  const Eigen::MatrixXd cross = prior * h.transpose();
  const Eigen::LDLT<Eigen::MatrixXd> solver(h * cross + noise);
  return {cross * solver.solve(y), prior - cross * solver.solve(cross.transpose())};
}

// Second route: filter and smoother against the batch, with gradients, the spread of c and a strip on one side.
TEST(Conditioning, Batch_WholeState) {
  Case c("soft-clay", -1.2);
  Strip trench;
  trench.id = "t1";
  trench.soil = "trench-backfill";
  trench.outline = {{4, 0.1}, {9, 0.1}, {9, 1.2}, {4, 1.2}};
  trench.bottom_elevation = Length{-2.5};
  c.site.strips = {trench};
  const BorePath path = c.path();
  const SpreadChain chain = c.chain(path);
  std::vector<std::pair<std::size_t, PathReading>> readings;
  const auto read = [&](std::size_t i, DeviationMember member, double value, double sd) {
    readings.emplace_back(i, reading_of(member, path.points[i].s_m, value, sd));
  };
  read(8, pitch_rad, 0.006, 0.002);
  read(8, yaw_rad, -0.004, 0.003);
  read(24, up_m, 0.04, 0.05);
  read(24, left_m, -0.03, 0.06);
  read(40, up_m, 0.02, 0.01);
  std::vector<PathReading> given;
  for (const auto& [i, reading] : readings) given.push_back(reading);
  const Conditioned filtered = condition(chain, given);
  const Batch all = batch(chain, readings);
  constexpr Eigen::Index m = deviation_members;
  for (std::size_t i = 0; i < filtered.points.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i) * m;
    const ConditionedPoint& p = filtered.points[i];
    for (Eigen::Index k = 0; k < m; ++k) {
      EXPECT_NEAR(p.smoothed[k], all.mean[at + k], 1e-8) << i << " " << k;
      for (Eigen::Index l = 0; l < m; ++l)
        EXPECT_NEAR(p.smoothed_cov(k, l), all.covariance(at + k, at + l), 1e-8) << i << " " << k << " " << l;
    }
  }
  EXPECT_LT(all.covariance(constant, constant), 1);  // c was learnt from
}

// The joint covariance of readings is that of the batch, in any order and at places between points.
TEST(Conditioning, Joint_IsThatOfTheBatch) {
  Case c("soft-clay", -1.2);
  const BorePath path = c.path();
  const SpreadChain chain = c.chain(path);
  const std::vector<PathReading> readings{reading_of(up_m, path.points[30].s_m, 0, 0.1),
                                          reading_of(pitch_rad, path.points[8].s_m, 0, 0.1),
                                          reading_of(left_m, path.points[30].s_m, 0, 0.1)};
  const Eigen::MatrixXd joint = joint_covariance(chain, readings);
  // Conditioning on one alone takes Cov²/(Var + r²) off the other.
  const Conditioned none = condition(chain, {}), one = condition(chain, {readings[1]});
  const double before = none.points[30].smoothed_cov(up_m, up_m), after = one.points[30].smoothed_cov(up_m, up_m);
  EXPECT_NEAR(joint(0, 0), before, 1e-12);
  EXPECT_NEAR(joint(0, 1) * joint(0, 1) / (joint(1, 1) + 0.01), before - after, 1e-12);
  EXPECT_EQ(joint(0, 1), joint(1, 0));
  EXPECT_NEAR(joint(2, 1), 0, 1e-15);
}

// Limit: no reading widens a band, and no variance loses its sign, even after a reading all but exact and a start all
// but unknown (where the textbook form fails).
TEST(Conditioning, Limit_NeverWiderNeverNegative) {
  Case c("firm-clay");
  c.bore.launch.level_sd.set(Angle{1});
  c.bore.launch.aim_sd.set(Angle{1});
  const BorePath path = c.path();
  const SpreadChain chain = c.chain(path);
  const Conditioned before = condition(chain, {});
  const Conditioned after =
      condition(chain, {reading_of(up_m, path.length_m, 0.1, 1e-7), reading_of(left_m, path.length_m, 0.1, 1e-7),
                        reading_of(pitch_rad, 3.0, 0.0, 1e-7)});
  for (const ConditionedPoint& p : after.points) {
    for (int k = 0; k < deviation_members; ++k) EXPECT_GE(p.smoothed_cov(k, k), 0) << p.s_m;
    if (!p.path_point) continue;
    const ConditionedPoint& was = before.points[*p.path_point];
    EXPECT_LE(p.smoothed_cov(up_m, up_m), was.smoothed_cov(up_m, up_m) * (1 + 1e-9) + 1e-12) << p.s_m;
    EXPECT_LE(p.filtered_cov(up_m, up_m), was.filtered_cov(up_m, up_m) * (1 + 1e-9) + 1e-12) << p.s_m;
  }
}

// Limit: everything known exactly leaves nothing to condition, and nothing that is not a number.
TEST(Conditioning, Limit_NothingUncertain) {
  Case c("firm-clay");
  c.site.strata.front().values.wander = Wander{0};
  c.site.strata.front().values.stone_rate = RatePerLength{0};
  c.bore.launch.position_sd.set(Length{0});
  c.bore.launch.level_sd.set(Angle{0});
  c.bore.launch.aim_sd.set(Angle{0});
  c.bore.model.steer_constant_sd.set(Ratio{0});
  const BorePath path = c.path();
  const BorePath after =
      conditioned_path(path, condition(c.chain(path), {reading_of(up_m, 6, 0.3, 0.05)}), Knowledge::smoothed);
  for (const PathPoint& p : after.points) {
    EXPECT_EQ(p.sd_vertical_m, 0);
    EXPECT_TRUE(std::isfinite(p.z_m));
  }
}

// Rejection: a reading beyond the path is left out and says nothing.
TEST(Conditioning, Rejection_BeyondThePath) {
  Case c("firm-clay");
  const BorePath path = c.path();
  const Conditioned far =
      condition(c.chain(path), {reading_of(up_m, path.length_m + 1, 5, 0.01), reading_of(up_m, -1, 5, 0.01)});
  EXPECT_EQ(far.fits[0].sd, 0);
  EXPECT_EQ(far.fits[1].sd, 0);
  EXPECT_EQ(far.points.back().smoothed[up_m], 0);
}

// The innovation of a reading is in its own sd: what was expected gives about 0, five sd off gives about 5.
TEST(Conditioning, Innovation_InSd) {
  Case c("firm-clay");
  const BorePath path = c.path();
  const SpreadChain chain = c.chain(path);
  const double sd = condition(chain, {reading_of(up_m, 6, 0, 0.05)}).fits.front().sd;
  EXPECT_NEAR(condition(chain, {reading_of(up_m, 6, 5 * sd, 0.05)}).fits.front().in_sd(), 5, 1e-9);
  EXPECT_GT(sd, 0.05);
}

}  // namespace
}  // namespace burrow

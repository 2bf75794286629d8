// Readings taken into the path: closed forms of bridges, and a batch of joint normal numbers as second route.
#include "burrow/bore/conditioning.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>

namespace burrow {
namespace {

constexpr double sigma = 0.005, start_m = 0.010, level_rad = 0.005, length_m = 10;

/// Uniform ground, `n` equal steps, no gradient, c known.
SpreadChain uniform(double position_sd, double heading_sd, int n = 10) {
  SpreadChain chain;
  chain.start(up_m, up_m) = chain.start(left_m, left_m) = position_sd * position_sd;
  chain.start(pitch_rad, pitch_rad) = chain.start(yaw_rad, yaw_rad) = heading_sd * heading_sd;
  SpreadStep step;
  step.h_m = length_m / n;
  step.noise_rad2_m = sigma * sigma;
  chain.steps.assign(static_cast<std::size_t>(n), step);
  return chain;
}

const ConditionedPoint& at(const Conditioned& c, double s) {
  for (const ConditionedPoint& p : c.points)
    if (std::abs(p.s_m - s) < 1e-9) return p;
  ADD_FAILURE() << "no point at " << s;
  return c.points.front();
}

double sd(const DeviationCovariance& c, DeviationMember m) {
  return std::sqrt(c(m, m));
}

// Derived (checked by a program of its own): L 10 m, 1 m steps, start 10 mm, level 5 mrad, wander 5 mrad/√m; exit read
// at 100 ± 20 mm. Smoothed x5 34.890 mm sd 19.674, θ5 .010478, x0 .882 mm; filtered x10 96.471 sd 19.644.
TEST(PublishedConditioning, Derived_ExitReadAlone) {
  const Conditioned c = condition(uniform(start_m, level_rad), {reading_of(up_m, 10, 0.100, 0.020)});
  EXPECT_NEAR(1e3 * at(c, 5).smoothed[up_m], 34.890, 5e-4);
  EXPECT_NEAR(1e3 * sd(at(c, 5).smoothed_cov, up_m), 19.674, 5e-4);
  EXPECT_NEAR(at(c, 5).smoothed[pitch_rad], 0.010478, 5e-7);
  EXPECT_NEAR(1e3 * at(c, 0).smoothed[up_m], 0.882, 5e-4);
  EXPECT_NEAR(1e3 * at(c, 10).filtered[up_m], 96.471, 5e-4);
  EXPECT_NEAR(1e3 * sd(at(c, 10).filtered_cov, up_m), 19.644, 5e-4);
}

// The same with a level read at 5 m, .010 ± .003: x5 34.569 mm sd 19.275, x10 95.891 mm.
TEST(PublishedConditioning, Derived_ExitAndLevel) {
  const Conditioned c = condition(uniform(start_m, level_rad),
                                  {reading_of(up_m, 10, 0.100, 0.020), reading_of(pitch_rad, 5, 0.010, 0.003)});
  EXPECT_NEAR(1e3 * at(c, 5).smoothed[up_m], 34.569, 5e-4);
  EXPECT_NEAR(1e3 * sd(at(c, 5).smoothed_cov, up_m), 19.275, 5e-4);
  EXPECT_NEAR(1e3 * at(c, 10).smoothed[up_m], 95.891, 5e-4);
}

// Derived: the variance of a bridge is σ² times the deflection of a beam under a unit load there (EI = 1): clamped and
// pinned 7/768 L³, pinned at both ends (heading at the start all but unknown) L³/48, clamped at both 1/192 L³, at the
// middle.
TEST(PublishedConditioning, Derived_BridgesAreBeams) {
  const double unit = sigma * sigma * std::pow(length_m, 3);
  const auto middle = [&](const SpreadChain& chain, const std::vector<PathReading>& readings) {
    return at(condition(chain, readings), 5).smoothed_cov(up_m, up_m) / unit;
  };
  EXPECT_NEAR(middle(uniform(0, 0), {reading_of(up_m, 10, 0, 0)}), 7.0 / 768, 1e-7);
  EXPECT_NEAR(middle(uniform(0, 100), {reading_of(up_m, 10, 0, 0)}), 1.0 / 48, 1e-7);
  EXPECT_NEAR(middle(uniform(0, 0), {reading_of(up_m, 10, 0, 0), reading_of(pitch_rad, 10, 0, 0)}), 1.0 / 192, 1e-7);
}

// Derived: pinned at both ends the variance at s is σ² s² (L − s)²/(3 L).
TEST(PublishedConditioning, Derived_PinnedBridgeAlongTheBore) {
  const Conditioned c = condition(uniform(0, 100), {reading_of(up_m, 10, 0, 0)});
  for (const double s : {1.0, 3.0, 8.0})
    EXPECT_NEAR(at(c, s).smoothed_cov(up_m, up_m), sigma * sigma * s * s * (10 - s) * (10 - s) / 30, 1e-8);
}

// Derived: launch known, exit off by e: the mean runs e s² (3L − s)/(2 L³), its heading at the exit 3e/(2L).
TEST(PublishedConditioning, Derived_MeanOfABridge) {
  const double e = 0.2;
  const Conditioned c = condition(uniform(0, 0), {reading_of(up_m, 10, e, 0)});
  for (const double s : {2.0, 5.0, 9.0}) EXPECT_NEAR(at(c, s).smoothed[up_m], e * s * s * (30 - s) / 2000, 1e-7);
  EXPECT_NEAR(at(c, 10).smoothed[pitch_rad], 3 * e / 20, 1e-7);
}

/// Closed covariance of position and heading at two places of a uniform bore.
struct Kernel {
  double s0 = start_m, t0 = level_rad;
  [[nodiscard]] double operator()(bool heading_a, double a, bool heading_b, double b) const {
    if (heading_a && heading_b) return t0 * t0 + sigma * sigma * std::min(a, b);
    if (heading_a) return (*this)(heading_b, b, heading_a, a);
    if (heading_b)  // position at a, heading at b
      return t0 * t0 * a + sigma * sigma * (a <= b ? a * a / 2 : a * b - b * b / 2);
    const double s = std::min(a, b), t = std::max(a, b);
    return s0 * s0 + t0 * t0 * s * t + sigma * sigma * s * s * (3 * t - s) / 6;
  }
};

// Second route: all readings at once, conditioning of joint normal numbers by the closed covariances. Places between
// the points of the chain, readings out of order, two at one place.
TEST(PublishedConditioning, Batch_ClosedCovariance) {
  struct Read {
    bool heading;
    double s, value, sd;
  };
  const std::vector<Read> reads{{false, 7.3, 0.081, 0.05},
                                {true, 1.9, -0.004, 0.002},
                                {false, 10, 0.12, 0.01},
                                {true, 7.3, 0.02, 0.003},
                                {false, 4.0, 0.01, 0.06}};
  std::vector<PathReading> given;
  for (const Read& r : reads) given.push_back(reading_of(r.heading ? yaw_rad : left_m, r.s, r.value, r.sd));
  const std::vector<double> places{0, 1.9, 3.33, 7.3, 9, 10};
  const Conditioned filtered = condition(uniform(start_m, level_rad), given, places);
  const Kernel kernel;
  const auto n = static_cast<Eigen::Index>(reads.size());
  Eigen::MatrixXd s(n, n);
  Eigen::VectorXd y(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const Read& a = reads[static_cast<std::size_t>(i)];
    y[i] = a.value;
    for (Eigen::Index j = 0; j < n; ++j) {
      const Read& b = reads[static_cast<std::size_t>(j)];
      s(i, j) = kernel(a.heading, a.s, b.heading, b.s) + (i == j ? a.sd * a.sd : 0);
    }
  }
  const Eigen::LDLT<Eigen::MatrixXd> solver(s);
  for (const double place : places)
    for (const bool heading : {false, true}) {
      Eigen::VectorXd k(n);
      for (Eigen::Index i = 0; i < n; ++i)
        k[i] = kernel(heading, place, reads[static_cast<std::size_t>(i)].heading, reads[static_cast<std::size_t>(i)].s);
      const double mean = k.dot(solver.solve(y));
      const double variance = kernel(heading, place, heading, place) - k.dot(solver.solve(k));
      const ConditionedPoint& p = at(filtered, place);
      const DeviationMember member = heading ? yaw_rad : left_m;
      EXPECT_NEAR(p.smoothed[member], mean, 1e-9) << place;
      EXPECT_NEAR(p.smoothed_cov(member, member), variance, 1e-10) << place;
    }
}

}  // namespace
}  // namespace burrow

// Random growth of heading along a bore: closed forms.
#include <gtest/gtest.h>

#include <cmath>

#include "burrow/bore/spread.h"

namespace burrow {
namespace {

Spread after(Spread spread, double length, int steps, double sigma) {
  for (int i = 0; i < steps; ++i) spread.advance(length / steps, 0, sigma * sigma, 0);
  return spread;
}

// Derived: random walk of heading alone, σ 0.005 rad/√m over 10 m: sd 91.287 mm.
TEST(Wander, Derived_WalkAlone) {
  const Spread end = after(Spread(0, 0), 10, 7, 0.005);
  EXPECT_NEAR(1e3 * std::sqrt(end.position_variance()), 91.287, 5e-4);
}

// Derived: with aim error 5 mrad and start error 10 mm: 104.563 mm; covariance [[.010933, .0015], [.0015, .000275]].
TEST(Wander, Derived_TotalAndCovariance) {
  const Spread end = after(Spread(0.010, 0.005), 10, 200, 0.005);
  EXPECT_NEAR(1e3 * end.sd(0), 104.563, 5e-4);
  EXPECT_NEAR(end.position_variance(), 0.010933, 5e-7);
  EXPECT_NEAR(end.covariance(), 0.0015, 5e-8);
  EXPECT_NEAR(end.heading_variance(), 0.000275, 5e-10);
}

// Derived: totals at 5, 15 and 20 m: 42.0, 184.0, 277.1 mm.
TEST(Wander, Derived_TotalAtOtherLengths) {
  EXPECT_NEAR(1e3 * after(Spread(0.010, 0.005), 5, 100, 0.005).sd(0), 42.0, 0.05);
  EXPECT_NEAR(1e3 * after(Spread(0.010, 0.005), 15, 300, 0.005).sd(0), 184.0, 0.05);
  EXPECT_NEAR(1e3 * after(Spread(0.010, 0.005), 20, 400, 0.005).sd(0), 277.1, 0.05);
}

// Limit: the closed form does not depend on how the length is cut.
TEST(Wander, Derived_StepsDoNotMatter) {
  const Spread one = after(Spread(0.010, 0.005), 10, 1, 0.005), many = after(Spread(0.010, 0.005), 10, 1000, 0.005);
  EXPECT_NEAR(one.position_variance() / many.position_variance(), 1, 1e-12);
  EXPECT_NEAR(one.heading_variance() / many.heading_variance(), 1, 1e-12);
}

}  // namespace
}  // namespace burrow

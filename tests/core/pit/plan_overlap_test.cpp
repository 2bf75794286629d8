#include "burrow/pit/plan_overlap.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace burrow {
namespace {

const PlanLine square{{0, 0}, {2, 0}, {2, 2}, {0, 2}};

TEST(PlanOverlap, Squares) {
  EXPECT_NEAR(overlap_area(square, square), 4, 1e-12);
  EXPECT_NEAR(overlap_area(square, {{1, 1}, {3, 1}, {3, 3}, {1, 3}}), 1, 1e-12);
  EXPECT_NEAR(overlap_area(square, {{1, 1}, {1, 3}, {3, 3}, {3, 1}}), 1, 1e-12);  // the other sense of turn
  EXPECT_NEAR(overlap_area(square, {{3, 0}, {4, 0}, {4, 1}}), 0, 1e-12);
  EXPECT_NEAR(overlap_area(square, {{-1, 1}, {1, -1}, {3, 1}, {1, 3}}), 4, 1e-12);  // touches the corners
  EXPECT_NEAR(overlap_area(square, {{0, 0}, {2, 0}, {0, 2}}), 2, 1e-12);
  EXPECT_EQ(overlap_area(square, {{0, 0}, {1, 1}}), 0);
}

// Second route: points thrown at random into two outlines with a notch.
TEST(PlanOverlap, Random_NotchedOutlines) {
  const PlanLine a{{0, 0}, {5, 1}, {4, 4}, {2, 1.5}, {1, 4}};
  const PlanLine b{{1, -1}, {6, 2}, {3, 5}, {2.5, 2}, {0.5, 3}};
  std::mt19937 random(5);
  std::uniform_real_distribution<double> x(-1, 7), y(-2, 6);
  const int n = 1000000;
  int both = 0;
  for (int i = 0; i < n; ++i) {
    const double px = x(random), py = y(random);
    both += inside(a, px, py) && inside(b, px, py) ? 1 : 0;
  }
  const double share = static_cast<double>(both) / n, sd = 64 * std::sqrt(share * (1 - share) / n);
  EXPECT_NEAR(overlap_area(a, b), 64 * share, 5 * sd);
  EXPECT_NEAR(overlap_area(a, b), overlap_area(b, a), 1e-12);
}

TEST(PlanGap, LinesAndOutlines) {
  const PlanGap beside = gap_between(square, {{3, -5}, {3, 1}}, false);
  EXPECT_NEAR(beside.gap_m, 1, 1e-12);
  EXPECT_NEAR(beside.on_outline.x_m, 2, 1e-12);
  EXPECT_NEAR(beside.on_line.x_m, 3, 1e-12);
  const PlanGap across = gap_between(square, {{1, -5}, {1, 5}}, false);
  EXPECT_EQ(across.gap_m, 0);
  EXPECT_NEAR(across.on_line.x_m, 1, 1e-12);
  EXPECT_EQ(gap_between(square, {{0.5, 0.5}, {0.6, 0.6}}, false).gap_m, 0);
  EXPECT_EQ(gap_between(square, {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}}, true).gap_m, 0);
  EXPECT_NEAR(gap_between(square, {{5, 6}, {9, 9}}, false).gap_m, 5, 1e-12);
  EXPECT_NEAR(gap_between(square, {{5, 6}}, false).gap_m, 5, 1e-12);  // a point
}

}  // namespace
}  // namespace burrow

#include "burrow/clearance/separation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace burrow {
namespace {

BorePath straight_bore(double length_m, double z_m, int segments) {
  BorePath path;
  for (int i = 0; i <= segments; ++i) {
    PathPoint p;
    p.x_m = length_m * i / segments;
    p.z_m = z_m;
    path.points.push_back(p);
  }
  return path;
}

/// A bore that wanders: the second route must not lean on straightness.
BorePath wandering_bore(std::mt19937_64& random, int segments) {
  BorePath path;
  std::normal_distribution<double> kick(0, 0.02);
  double y = 0, z = 100;
  for (int i = 0; i <= segments; ++i) {
    PathPoint p;
    p.x_m = 0.25 * i;
    p.y_m = y += kick(random);
    p.z_m = z += kick(random);
    path.points.push_back(p);
  }
  return path;
}

double by_every_pair(const BorePath& path, const std::vector<PathVertex>& utility) {
  double best2 = 1e300;
  for (std::size_t i = 0; i + 1 < path.points.size(); ++i)
    for (std::size_t k = 0; k + 1 < utility.size(); ++k) {
      const auto& a = path.points[i];
      const auto& b = path.points[i + 1];
      best2 = std::min(best2, nearest({a.x_m, a.y_m, a.z_m}, {b.x_m, b.y_m, b.z_m},
                                      {utility[k].x_m, utility[k].y_m, *utility[k].z_m},
                                      {utility[k + 1].x_m, utility[k + 1].y_m, *utility[k + 1].z_m})
                                  .squared_distance_m2);
    }
  return std::sqrt(best2);
}

// Derived: a square crossing 0.7 m above.
TEST(Separation, SquareCrossing_DistanceStationAngle) {
  const BoreAxis axis(straight_bore(14, 101, 56));
  const auto near = axis.nearest_to({{6.1, -5, 101.7}, {6.1, 5, 101.7}});
  ASSERT_TRUE(near);
  EXPECT_NEAR(near->distance_m, 0.7, 1e-12);
  EXPECT_NEAR(near->on_utility.x_m, 6.1, 1e-12);
  EXPECT_NEAR(near->on_utility.y_m, 0, 1e-12);
  EXPECT_NEAR(near->on_bore.x_m, 6.1, 1e-12);
  EXPECT_NEAR(*near->angle_rad, 1.5707963267948966, 1e-12);
  EXPECT_FALSE(near->depth_unknown);
}

// Derived: lines at 0.01 rad keep their digits.
TEST(Separation, NearlyParallel_Angle) {
  const BoreAxis axis(straight_bore(10, 0, 10));
  const auto near = axis.nearest_to({{0, 1, 0}, {10, 1 + 10 * std::tan(0.01), 0}});
  EXPECT_NEAR(*near->angle_rad, 0.01, 1e-14);
  EXPECT_NEAR(near->distance_m, 1, 1e-14);
}

// Second route: every pair of segments.
TEST(Separation, EveryPair_SameDistance) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> place(-3, 3), along(-2, 27);
  for (int trial = 0; trial < 200; ++trial) {
    const BorePath path = wandering_bore(random, 100);
    const BoreAxis axis(path);
    std::vector<PathVertex> utility;
    for (int i = 0; i < 12; ++i) utility.push_back({along(random), place(random), 100 + place(random)});
    const auto near = axis.nearest_to(utility);
    ASSERT_TRUE(near);
    EXPECT_NEAR(near->distance_m, by_every_pair(path, utility), 1e-12);
    const double between =
        std::hypot(near->on_bore.x_m - near->on_utility.x_m, near->on_bore.y_m - near->on_utility.y_m,
                   near->on_bore.z_m - *near->on_utility.z_m);
    EXPECT_NEAR(between, near->distance_m, 1e-12);
  }
}

TEST(Separation, UnknownElevationAtBore_PlanOnly) {
  const BoreAxis axis(straight_bore(14, 101, 56));
  const auto near = axis.nearest_to({{6.0, -5, 101.15}, {6.2, 5, std::nullopt}});
  ASSERT_TRUE(near);
  EXPECT_TRUE(near->depth_unknown);
  EXPECT_NEAR(near->distance_m, 0, 1e-12);
  EXPECT_NEAR(near->on_utility.x_m, 6.1, 1e-12);
  EXPECT_FALSE(near->on_utility.z_m);
}

// An unknown stretch farther off in plan than the known distance cannot be nearer: the depth counts as known.
TEST(Separation, UnknownElevationFarOff_StillKnown) {
  const BoreAxis axis(straight_bore(14, 101, 56));
  const auto near = axis.nearest_to({{6, -5, 101.6}, {6, 3, 101.6}, {6, 9, std::nullopt}});
  ASSERT_TRUE(near);
  EXPECT_FALSE(near->depth_unknown);
  EXPECT_NEAR(near->distance_m, 0.6, 1e-12);
}

TEST(Separation, SinglePointAndNothing) {
  const BoreAxis axis(straight_bore(14, 101, 56));
  const auto near = axis.nearest_to({{3, 0.3, 101.4}});
  ASSERT_TRUE(near);
  EXPECT_NEAR(near->distance_m, 0.5, 1e-12);
  EXPECT_FALSE(near->angle_rad);
  const auto blind = axis.nearest_to({{3, 0.3, std::nullopt}});
  ASSERT_TRUE(blind);
  EXPECT_TRUE(blind->depth_unknown);
  EXPECT_FALSE(axis.nearest_to({}));
  EXPECT_FALSE(BoreAxis(BorePath{}).nearest_to({{3, 0, 101.0}}));
}

TEST(Separation, BoreOfOnePoint) {
  BorePath path;
  path.points.push_back({});
  const auto near = BoreAxis(path).nearest_to({{-1, 2, 0}, {1, 2, 0}});
  ASSERT_TRUE(near);
  EXPECT_NEAR(near->distance_m, 2, 1e-14);
}

// Symmetry: turning a pair of segments round and swapping them changes nothing.
TEST(SegmentDistance, SwapAndReverse_Same) {
  std::mt19937_64 random(3);
  std::uniform_real_distribution<double> place(-1, 1);
  for (int i = 0; i < 500; ++i) {
    Point3 p[4];
    for (Point3& q : p) q = {place(random), place(random), place(random)};
    const double d = nearest(p[0], p[1], p[2], p[3]).squared_distance_m2;
    EXPECT_NEAR(nearest(p[2], p[3], p[0], p[1]).squared_distance_m2, d, 1e-12);
    EXPECT_NEAR(nearest(p[1], p[0], p[2], p[3]).squared_distance_m2, d, 1e-12);
  }
}

}  // namespace
}  // namespace burrow

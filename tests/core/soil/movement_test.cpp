#include "burrow/soil/movement.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

const OpenedHole hole{{0.05}, {1.2}, {0.8}};

// Limit: at the surface the field is the closed form of the rise, and outward a² x/(x² + h²).
TEST(Movement, SurfaceLimit_ClosedForm) {
  for (const double x : {0.0, 0.3, 1.2, 4.0}) {
    EXPECT_NEAR(ground_movement(hole, {x}, {0})->rise_m, surface_rise(hole, {x})->m, 1e-15);
    EXPECT_NEAR(ground_movement(hole, {x}, {0})->outward_m, 0.8 * 0.0025 * x / (x * x + 1.44), 1e-15);
  }
}

TEST(Movement, Mirror_LeftIsRight) {
  const auto left = ground_movement(hole, {-0.4}, {0.7}), right = ground_movement(hole, {0.4}, {0.7});
  EXPECT_DOUBLE_EQ(left->outward_m, -right->outward_m);
  EXPECT_DOUBLE_EQ(left->rise_m, right->rise_m);
}

// Second route: the field keeps its volume everywhere (ν = ½), by differences.
TEST(Movement, Divergence_IsZero) {
  const double d = 1e-5;
  for (const double x : {0.2, 0.9})
    for (const double z : {0.3, 0.8, 1.9}) {
      const double dx = ground_movement(hole, {x + d}, {z})->outward_m - ground_movement(hole, {x - d}, {z})->outward_m;
      const double dz = ground_movement(hole, {x}, {z + d})->rise_m - ground_movement(hole, {x}, {z - d})->rise_m;
      EXPECT_NEAR((dx - dz) / (2 * d), 0, 1e-8);
    }
}

// Second route: no shear at the surface, du_x/dz + du_z/dx = 0, by one-sided differences.
TEST(Movement, SurfaceShear_IsZero) {
  const double d = 1e-6;
  for (const double x : {0.3, 1.0, 2.5}) {
    const double ux = (ground_movement(hole, {x}, {d})->outward_m - ground_movement(hole, {x}, {0})->outward_m) / d;
    const double uz = -(surface_rise(hole, {x + d})->m - surface_rise(hole, {x - d})->m) / (2 * d);
    EXPECT_NEAR(ux + uz, 0, 1e-6);
  }
}

// The exact source stays bounded where the linear one runs away.
TEST(Movement, NearSource_ExactIsBounded) {
  const auto exact = ground_movement(hole, {0.001}, {1.2}, SourceTerm::exact);
  EXPECT_LT(exact->outward_m, 0.05);
  EXPECT_GT(ground_movement(hole, {0.001}, {1.2}, SourceTerm::linear)->outward_m, 0.5);
}

TEST(Movement, OutOfRange_Refused) {
  EXPECT_FALSE(ground_movement(hole, {0}, {1.2}));
  EXPECT_FALSE(ground_movement(hole, {0}, {-0.1}));
  EXPECT_FALSE(surface_rise({{0.05}, {0.04}, {1}}, {0}));
  EXPECT_FALSE(surface_rise({{std::nan("")}, {1}, {1}}, {0}));
  EXPECT_FALSE(utility_movement(hole, {0}, {0.1}));
}

TEST(Heave, BlockCountsOnlyWhereTheRoofGivesWay) {
  const auto held = surface_heave({0.065}, {1.3}, {1}, 400e3, 300e3);
  ASSERT_TRUE(held);
  EXPECT_FALSE(held->block_m);
  EXPECT_DOUBLE_EQ(held->high_m, held->gaussian_m);
  const auto lifted = surface_heave({0.065}, {1.3}, {1}, 100e3, 300e3);
  // By hand: π 0.065² / (0.13 + 2·1.235·0.36397) = 0.0132732 / 1.029006 = 12.899 mm.
  EXPECT_NEAR(*lifted->block_m * 1e3, 12.899, 5e-4);
  EXPECT_DOUBLE_EQ(lifted->high_m, *lifted->block_m);
  EXPECT_LT(lifted->low_m, lifted->gaussian_m);
}

TEST(Heave, ShareScalesEverything) {
  const auto full = surface_heave({0.05}, {0.8}, {1}, 0, 1), half = surface_heave({0.05}, {0.8}, {0.5}, 0, 1);
  EXPECT_NEAR(half->low_m, full->low_m / 2, 1e-15);
  EXPECT_NEAR(half->high_m, full->high_m / 2, 1e-15);
}

TEST(Heave, OutOfRange_Refused) {
  EXPECT_FALSE(surface_heave({0}, {1}, {1}, 0, 1));
  EXPECT_FALSE(surface_heave({0.05}, {0.05}, {1}, 0, 1));
  EXPECT_FALSE(surface_heave({0.05}, {1}, {-1}, 0, 1));
  EXPECT_FALSE(surface_heave({0.05}, {1}, {1}, std::nan(""), 1));
}

}  // namespace
}  // namespace burrow

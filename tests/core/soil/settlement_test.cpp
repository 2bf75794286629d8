#include "burrow/soil/settlement.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/soil/movement.h"

namespace burrow {
namespace {

// By hand: π/4 (0.130² − 0.110²) = 0.0037699 m²; four ducts of 50 mm leave 0.0054192 m² of it.
TEST(Settlement, OpenArea_ByHand) {
  EXPECT_NEAR(*open_area_m2({0.130}, {0.110}, 1), 0.0037699, 5e-8);
  EXPECT_NEAR(*open_area_m2({0.130}, {0.050}, 4), 0.0054192, 5e-8);
  EXPECT_EQ(*open_area_m2({0.1}, {0.2}, 1), 0);
  EXPECT_DOUBLE_EQ(*open_area_m2({0.1}, {0}, 1), pi * 0.0025);
}

// Second route: the volume under the trough is what closed.
TEST(Settlement, Trough_HoldsTheVolume) {
  double volume = 0;
  for (double x = -8; x < 8; x += 0.01) volume += 0.01 * later_settlement(0.005, {1.4}, {0.7}, {x + 0.005})->m;
  EXPECT_NEAR(volume, 0.7 * 0.005, 1e-9);
}

// The whole hole closing sinks as much as the Gaussian estimate of its opening lifts.
TEST(Settlement, WholeHole_IsTheGaussianRise) {
  const double area = *open_area_m2({0.13}, {0}, 0);
  EXPECT_NEAR(later_settlement(area, {1.3}, {1})->m, gaussian_rise({{0.065}, {1.3}, {1}})->m, 1e-15);
}

TEST(Settlement, OutOfRange_Refused) {
  EXPECT_FALSE(open_area_m2({0}, {0.1}, 1));
  EXPECT_FALSE(open_area_m2({0.1}, {-0.1}, 1));
  EXPECT_FALSE(open_area_m2({0.1}, {0.1}, -1));
  EXPECT_FALSE(later_settlement(-1, {1}, {1}));
  EXPECT_FALSE(later_settlement(0.01, {0}, {1}));
  EXPECT_FALSE(later_settlement(0.01, {1}, {-1}));
  EXPECT_FALSE(later_settlement(0.01, {1}, {1}, {std::nan("")}));
}

}  // namespace
}  // namespace burrow

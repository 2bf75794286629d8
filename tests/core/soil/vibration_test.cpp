#include "burrow/soil/vibration.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

// Both forms fall with distance and rise with the square root of the energy.
TEST(Vibration, Forms_ScaleWithEnergyAndDistance) {
  EXPECT_NEAR(*percussive_vibration_m_s(400, {3}, 1.5) / *percussive_vibration_m_s(100, {3}, 1.5), 2, 1e-12);
  EXPECT_NEAR(*distance_vibration_m_s(400, {3}, 1.1) / *distance_vibration_m_s(100, {3}, 1.1), 2, 1e-12);
  EXPECT_NEAR(*percussive_vibration_m_s(100, {2}, 1) / *percussive_vibration_m_s(100, {4}, 1), std::pow(2, 1.3), 1e-12);
  EXPECT_NEAR(*distance_vibration_m_s(100, {2}, 1.4) / *distance_vibration_m_s(100, {4}, 1.4), std::pow(2, 1.4), 1e-12);
}

// Limits of the lines: held below the first and beyond the last point, line 1 above 2 above 3.
TEST(Vibration, Limits_HeldAtTheirEnds) {
  EXPECT_NEAR(*din_4150_limit_m_s(2, {1}), 0.005, 1e-15);
  EXPECT_NEAR(*din_4150_limit_m_s(3, {300}), 0.010, 1e-15);
  EXPECT_NEAR(*bs_7385_limit_m_s({90}), 0.050, 1e-15);
  for (const double f : {2.0, 20.0, 60.0, 200.0}) {
    EXPECT_GT(*din_4150_limit_m_s(1, {f}), *din_4150_limit_m_s(2, {f}));
    EXPECT_GT(*din_4150_limit_m_s(2, {f}), *din_4150_limit_m_s(3, {f}));
  }
}

TEST(Vibration, Ground_OfTheClasses) {
  const auto scale = [](bool drained, double strength_Pa, double phi_degrees) {
    Soil soil;
    soil.drained = drained;
    soil.undrained_strength.Pa = strength_Pa;
    soil.friction_angle.rad = phi_degrees * pi / 180;
    return blow_ground(soil).scale;
  };
  EXPECT_EQ(scale(false, 18e3, 0), 1);
  EXPECT_EQ(scale(false, 40e3, 0), 1.5);
  EXPECT_EQ(scale(false, 150e3, 0), 3);
  EXPECT_EQ(scale(false, 500e3, 0), 5);
  EXPECT_EQ(scale(true, 0, 30), 1);
  EXPECT_EQ(scale(true, 0, 34), 1.5);
  EXPECT_EQ(scale(true, 0, 38), 3);
  EXPECT_EQ(scale(true, 0, 40), 5);
}

TEST(Vibration, OutOfRange_Refused) {
  EXPECT_FALSE(percussive_vibration_m_s(-1, {1}, 1));
  EXPECT_FALSE(percussive_vibration_m_s(1, {0}, 1));
  EXPECT_FALSE(distance_vibration_m_s(std::nan(""), {1}, 1));
  EXPECT_FALSE(distance_vibration_m_s(1, {1}, 1, {0.01, 0}));
  EXPECT_FALSE(tunnelling_bound_m_s({-1}));
  EXPECT_FALSE(din_4150_limit_m_s(4, {10}));
  EXPECT_FALSE(din_4150_limit_m_s(1, {0}));
  EXPECT_FALSE(bs_7385_limit_m_s({3.9}));
}

}  // namespace
}  // namespace burrow

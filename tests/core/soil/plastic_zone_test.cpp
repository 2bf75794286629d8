#include "burrow/soil/plastic_zone.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

constexpr double degree = pi / 180;

Soil sand() {
  Soil soil;
  soil.drained = true;
  soil.friction_angle.rad = 30 * degree;
  soil.shear_modulus.Pa = 20e6 / 2.6;
  soil.poisson_ratio.v = 0.3;
  return soil;
}

// Yu & Houlsby 1991 (derived): E 20 MPa, ν 0.3, φ 30°, p0 50 kPa gives r_p/a 14.982.
TEST(PlasticZone, YuHoulsby1991_Sand) {
  EXPECT_NEAR(*plastic_radius_ratio(sand(), 50e3), 14.982, 5e-4);
}

// Gibson & Anderson 1961 (derived): G/s_u = 100 gives 10, whatever the stress.
TEST(PlasticZone, GibsonAnderson1961_Clay) {
  Soil clay;
  clay.undrained_strength.Pa = 25e3;
  clay.shear_modulus.Pa = 2.5e6;
  EXPECT_NEAR(*plastic_radius_ratio(clay, 20e3), 10, 1e-12);
  EXPECT_NEAR(*plastic_radius_ratio(clay, 80e3), 10, 1e-12);
}

// The less the ground is pressed together, the further it yields; not below the least stress of the method.
TEST(PlasticZone, LessStress_ReachesFurther) {
  EXPECT_GT(*plastic_radius_ratio(sand(), 10e3), *plastic_radius_ratio(sand(), 50e3));
  EXPECT_EQ(*plastic_radius_ratio(sand(), 0), *plastic_radius_ratio(sand(), 500));
}

TEST(PlasticZone, OutOfRange_Refused) {
  EXPECT_FALSE(plastic_radius_ratio(sand(), std::nan("")));
  Soil soil = sand();
  soil.friction_angle.rad = 0;
  EXPECT_FALSE(plastic_radius_ratio(soil, 10e3));
}

}  // namespace
}  // namespace burrow

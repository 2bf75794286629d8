// Limit pressures against published and recomputed values. Rows are numbered as in the list of checks the values were
// kept in; tolerance is half the last printed digit throughout.
#include <gtest/gtest.h>

#include <cmath>

#include "burrow/soil/cavity_alternatives.h"

namespace burrow {
namespace {
constexpr double degree = pi / 180;

FrictionalGround sand(double young_MPa, double cohesion_kPa, double phi_deg, double psi_deg, double p0_kPa) {
  return {.shear_modulus = {1e6 * young_MPa / 2.6},  // G = E/2(1 + ν), ν = 0.3
          .poisson_ratio = {0.3},
          .cohesion = {1e3 * cohesion_kPa},
          .friction_angle = {phi_deg * degree},
          .dilation_angle = {psi_deg * degree},
          .initial = {1e3 * p0_kPa}};
}

// Gibson & Anderson 1961 (form from memory, value derived): su 25 kPa, G 2500 kPa, p0 20 kPa: 160.129 kPa, r_p/a 10.
TEST(CavityUndrained, GibsonAnderson1961_CylinderIr100) {
  const auto limit = undrained_limit(Cavity::cylinder, {20e3}, {25e3}, {2500e3});
  ASSERT_TRUE(limit);
  EXPECT_NEAR(limit->pressure.Pa / 1e3, 160.129, 5e-4);
  EXPECT_NEAR(limit->plastic_radius, 10, 1e-12);
}

// Yu 2000 (form from memory, value derived): the same, sphere: 206.839 kPa, 4.6416.
TEST(CavityUndrained, Yu2000_SphereIr100) {
  const auto limit = undrained_limit(Cavity::sphere, {20e3}, {25e3}, {2500e3});
  ASSERT_TRUE(limit);
  EXPECT_NEAR(limit->pressure.Pa / 1e3, 206.839, 5e-4);
  EXPECT_NEAR(limit->plastic_radius, 4.6416, 5e-5);
}

// Derived: su 10 kPa, G 500 kPa, p0 15 kPa: 64.120 and 80.494 kPa.
TEST(CavityUndrained, Derived_Ir50) {
  EXPECT_NEAR(undrained_limit(Cavity::cylinder, {15e3}, {10e3}, {500e3})->pressure.Pa / 1e3, 64.120, 5e-4);
  EXPECT_NEAR(undrained_limit(Cavity::sphere, {15e3}, {10e3}, {500e3})->pressure.Pa / 1e3, 80.494, 5e-4);
}

// Derived: without the logarithm's small-strain step the plastic radius at Ir 100 is 1/√(1 − (1 − 1/2Ir)²) = 10.01252;
// the closed form √Ir stands within 0.13 % of it.
TEST(CavityUndrained, Derived_ExactPlasticRadius) {
  const double elastic = 1 - 1 / (2.0 * 100);
  const double exact = 1 / std::sqrt(1 - elastic * elastic);
  EXPECT_NEAR(exact, 10.01252, 5e-6);
  EXPECT_NEAR(undrained_limit(Cavity::cylinder, {0}, {1e3}, {100e3})->plastic_radius / exact, 1, 1.3e-3);
}

// Gibson & Anderson 1961 (form from memory, value derived): ΔV/V 0.2 at Ir 100: (p − p0)/su = 3.99573.
TEST(CavityUndrained, GibsonAnderson1961_LoadingCurve) {
  const auto pressure = undrained_pressure(Cavity::cylinder, {20e3}, {25e3}, {2500e3}, {0.2});
  ASSERT_TRUE(pressure);
  EXPECT_NEAR((pressure->Pa - 20e3) / 25e3, 3.99573, 5e-6);
}

struct VesicCase {
  Cavity cavity;
  double phi_deg, rigidity, strain, cohesion, cohesion_digit, stress, stress_digit;
};

// Vesic 1972 (from memory; rederived): the rows of the list of checks, printed digits as given there.
TEST(CavityVesic, Vesic1972_Factors) {
  const VesicCase cases[] = {{Cavity::cylinder, 30, 100, 0, 10.919, 5e-4, 7.304, 5e-4},
                             {Cavity::cylinder, 0, 100, 0, 5.605, 5e-4, 1, 1e-9},
                             {Cavity::cylinder, 40, 500, 0, 23.53, 5e-3, 20.75, 5e-3},
                             {Cavity::sphere, 30, 100, 0, 22.407, 5e-4, 13.937, 5e-4},
                             {Cavity::sphere, 0, 10, 0, 4.40, 5e-3, 1, 1e-9},
                             {Cavity::cylinder, 30, 100, 0.02, 6.758, 5e-4, 4.902, 5e-4},
                             {Cavity::sphere, 35, 50, 0.03, 10.488, 5e-4, 8.344, 5e-4},
                             {Cavity::sphere, 30, 100, 0.02, 13.082, 5e-4, 8.553, 5e-4},
                             {Cavity::cylinder, 35, 50, 0.03, 5.455, 5e-4, 4.820, 5e-4}};
  for (const VesicCase& c : cases) {
    const auto factors = vesic_factors(c.cavity, {c.phi_deg * degree}, c.rigidity, {c.strain});
    ASSERT_TRUE(factors);
    EXPECT_NEAR(factors->cohesion, c.cohesion, c.cohesion_digit) << "phi " << c.phi_deg << " Ir " << c.rigidity;
    EXPECT_NEAR(factors->stress, c.stress, c.stress_digit) << "phi " << c.phi_deg << " Ir " << c.rigidity;
  }
  EXPECT_NEAR(vesic_factors(Cavity::cylinder, {30 * degree}, 100, {0.02})->plastic_radius, 5.907, 5e-4);
  EXPECT_NEAR(vesic_factors(Cavity::sphere, {30 * degree}, 100, {0.02})->plastic_radius, 3.218, 5e-4);
}

// Vesic 1977 (formula read): N_sigma at φ 30°, Irr 100: 51.02; Nc at φ 0, Irr 100: 10.04. UFC 3-220-20 Eq. 6-23 as
// printed (read) lacks tan²(π/4 + φ/2) = 3 and gives 17.01: a misprint.
TEST(CavityVesic, Vesic1977_DeepTip) {
  const auto sand_tip = deep_tip_factors({30 * degree}, 100);
  ASSERT_TRUE(sand_tip);
  EXPECT_NEAR(sand_tip->stress, 51.02, 5e-3);
  EXPECT_NEAR(sand_tip->stress / 3, 17.01, 5e-3);
  EXPECT_NEAR(deep_tip_factors({0}, 100)->cohesion, 10.04, 5e-3);
}

struct DrainedCase {
  Cavity cavity;
  double young_MPa, cohesion_kPa, phi_deg, psi_deg, p0_kPa;
  double yu_houlsby_kPa, radius, carter_kPa, vesic_kPa;
};
// Yu & Houlsby 1991, Carter et al. 1986, Vesic 1972 with Δ = 0: one comparison, recomputed (derived).
const DrainedCase drained_cases[] = {{Cavity::cylinder, 20, 0, 30, 0, 50, 455.79, 14.982, 453.79, 506.33},
                                     {Cavity::cylinder, 20, 0, 35, 5, 20, 358.51, 28.141, 356.94, 337.42},
                                     {Cavity::cylinder, 40, 0, 40, 10, 20, 697.64, 49.631, 694.07, 525.97},
                                     {Cavity::cylinder, 10, 5, 25, 0, 20, 204.98, 14.687, 204.18, 226.30},
                                     {Cavity::cylinder, 30, 0, 35, 0, 15, 289.19, 31.097, 288.58, 325.80},
                                     {Cavity::sphere, 20, 0, 30, 0, 50, 874.13, 5.502, 864.39, 1077.23},
                                     {Cavity::sphere, 20, 0, 35, 5, 20, 892.17, 8.571, 879.49, 834.90},
                                     {Cavity::sphere, 40, 0, 40, 10, 20, 2283.81, 12.883, 2233.50, 1468.08}};

TEST(CavityDrained, YuHoulsby1991_LimitAndRadius) {
  for (const DrainedCase& c : drained_cases) {
    const auto limit = drained_limit(c.cavity, sand(c.young_MPa, c.cohesion_kPa, c.phi_deg, c.psi_deg, c.p0_kPa));
    ASSERT_TRUE(limit) << limit.error().english();
    EXPECT_NEAR(limit->pressure.Pa / 1e3, c.yu_houlsby_kPa, 5e-3);
    EXPECT_NEAR(limit->plastic_radius, c.radius, 5e-4);
    EXPECT_LT(limit->residual, 1e-12);
    EXPECT_LE(limit->steps, 12);
  }
}

// Carter, Booker & Yeung 1986 (abstract read, equations derived again).
TEST(CavityDrained, Carter1986_Limit) {
  for (const DrainedCase& c : drained_cases) {
    const auto limit = carter_limit(c.cavity, sand(c.young_MPa, c.cohesion_kPa, c.phi_deg, c.psi_deg, c.p0_kPa));
    ASSERT_TRUE(limit) << limit.error().english();
    EXPECT_NEAR(limit->pressure.Pa / 1e3, c.carter_kPa, 5e-3);
  }
  EXPECT_NEAR(carter_limit(Cavity::cylinder, sand(20, 0, 30, 0, 50))->plastic_radius, 14.883, 5e-4);
}

TEST(CavityVesic, Vesic1972_LimitWithoutVolumeLoss) {
  for (const DrainedCase& c : drained_cases) {
    const FrictionalGround ground = sand(c.young_MPa, c.cohesion_kPa, c.phi_deg, c.psi_deg, c.p0_kPa);
    const double p0 = ground.initial.Pa, cohesion = ground.cohesion.Pa;
    const double rigidity = ground.shear_modulus.Pa / (cohesion + p0 * std::tan(ground.friction_angle.rad));
    const auto factors = vesic_factors(c.cavity, ground.friction_angle, rigidity, {0});
    ASSERT_TRUE(factors);
    EXPECT_NEAR((cohesion * factors->cohesion + p0 * factors->stress) / 1e3, c.vesic_kPa, 5e-3);
  }
  EXPECT_NEAR(vesic_factors(Cavity::cylinder, {30 * degree}, 1e6 * 20 / 2.6 / (50e3 * std::tan(30 * degree)), {0})
                  ->plastic_radius,
              17.541, 5e-4);
}

}  // namespace
}  // namespace burrow

// The blow balance: two generic tools, numbers chosen for the check and worked out beside this program. Label of all
// values here: derived (Hiley form with Smith's damping; printed digits as given).
#include "burrow/bore/advance.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/soil/cavity.h"

namespace burrow {
namespace {

constexpr Pressure six_bar{6e5};

Tool generic(double diameter, double length, double striker, double rest, double piston, double stroke, double rate) {
  Tool tool;
  tool.diameter = {diameter};
  tool.length = {length};
  tool.mass = {striker + rest};
  tool.striker_mass = {striker};
  tool.piston_diameter = {piston};
  tool.stroke = {stroke};
  tool.blow_rate = {rate};
  return tool;
}
Tool tool_a() {
  return generic(0.065, 1.2, 4.5, 12, 0.045, 0.10, 8);
}
Tool tool_b() {
  return generic(0.130, 1.6, 30, 75, 0.095, 0.15, 5.5);
}

Soil clay(double strength_kPa) {
  Soil soil;
  soil.undrained_strength = {1e3 * strength_kPa};
  soil.adhesion_ratio = {0.2};
  return soil;
}

double set_mm(const Tool& tool, const Soil& soil, double limit_Pa) {
  const GroundAtTool at{soil, limit_Pa, 0};
  const double resistance = nose_resistance_N(at, tool) + side_resistance_N_m(at, tool) * tool.length.m;
  return 1e3 * set_m(blow_of(tool, six_bar), resistance, soil.drained);
}
double metres_a_minute(const Tool& tool, double set_in_mm) {
  return 60e-3 * set_in_mm * tool.blow_rate.Hz;
}

// Row 44: E 52.5 and 350.9 J; η .493 and .502; recoil 954 and 4253 N.
TEST(PublishedAdvance, GenericTools_BlowEnergy) {
  const Blow a = blow_of(tool_a(), six_bar), b = blow_of(tool_b(), six_bar);
  EXPECT_NEAR(a.energy_J, 52.5, 0.05);
  EXPECT_NEAR(b.energy_J, 350.9, 0.05);
  EXPECT_NEAR(a.efficiency, 0.493, 0.0005);
  EXPECT_NEAR(b.efficiency, 0.502, 0.0005);
  EXPECT_NEAR(a.reaction_N, 954, 0.5);
  EXPECT_NEAR(b.reaction_N, 4253, 0.5);
}

// Rows 45, 46 and the table they stand in: clay, I_r = 100, p0 = 20 kPa, set in mm and rate in m/min.
TEST(PublishedAdvance, GenericTools_SetInClay) {
  struct Row {
    double strength_kPa, limit_kPa;
    double a_mm, a_digit, a_m_min, b_mm, b_digit, b_m_min;
  };
  const Row rows[] = {{20, 132, 9.23, 0.01, 4.43, 21.4, 0.1, 7.06},
                      {50, 300, 3.05, 0.01, 1.47, 8.11, 0.01, 2.68},
                      {75, 440, 1.64, 0.01, 0.79, 5.04, 0.01, 1.66},
                      {100, 581, 0.92, 0.01, 0.44, 3.48, 0.01, 1.15},
                      {150, 861, 0.20, 0.01, 0.10, 1.92, 0.01, 0.63}};
  for (const Row& row : rows) {
    SCOPED_TRACE(row.strength_kPa);
    const Soil soil = clay(row.strength_kPa);
    const auto limit =
        undrained_limit(Cavity::cylinder, {20e3}, soil.undrained_strength, {100 * soil.undrained_strength.Pa});
    ASSERT_TRUE(limit);
    EXPECT_NEAR(limit->pressure.Pa / 1e3, row.limit_kPa, 0.5);
    const double a = set_mm(tool_a(), soil, limit->pressure.Pa), b = set_mm(tool_b(), soil, limit->pressure.Pa);
    EXPECT_NEAR(a, row.a_mm, row.a_digit / 2);
    EXPECT_NEAR(b, row.b_mm, row.b_digit / 2);
    EXPECT_NEAR(metres_a_minute(tool_a(), a), row.a_m_min, 0.005);
    EXPECT_NEAR(metres_a_minute(tool_b(), b), row.b_m_min, 0.005);
  }
  // 200 and 300 kPa: tool A is refused, tool B makes 1.13 and 0.34 mm.
  for (const auto& [strength, b_mm] : {std::pair{200.0, 1.13}, {300.0, 0.34}}) {
    const Soil soil = clay(strength);
    const double limit = 20e3 + soil.undrained_strength.Pa * (1 + std::log(100.0));
    EXPECT_LT(set_mm(tool_a(), soil, limit), 0);
    EXPECT_NEAR(set_mm(tool_b(), soil, limit), b_mm, 0.005);
  }
}

// Sand, p0′ = 12 kPa, δ = 25°: rate in m/min of A and B; E in MPa, ν = 0.3, so that G = E/2.6.
TEST(PublishedAdvance, GenericTools_RateInSand) {
  struct Row {
    double phi_deg, psi_deg, modulus_MPa, limit_kPa, a_m_min, b_m_min;
  };
  const Row rows[] = {{30, 0, 8, 129, 2.01, 3.60}, {34, 0, 15, 188, 1.20, 2.35}, {39, 5, 45, 429, 0.19, 0.80}};
  const auto limit_of = [](double phi_deg, double psi_deg, double modulus_MPa) {
    FrictionalGround ground;
    ground.shear_modulus = {1e6 * modulus_MPa / 2.6};
    ground.friction_angle = {phi_deg * pi / 180};
    ground.dilation_angle = {psi_deg * pi / 180};
    ground.initial = {12e3};
    return drained_limit(Cavity::cylinder, ground).value().pressure.Pa;
  };
  Soil sand;
  sand.drained = true;
  sand.adhesion_ratio = {0.2};
  sand.interface_angle = {25 * pi / 180};
  for (const Row& row : rows) {
    SCOPED_TRACE(row.phi_deg);
    const double limit = limit_of(row.phi_deg, row.psi_deg, row.modulus_MPa);
    EXPECT_NEAR(limit / 1e3, row.limit_kPa, 0.5);
    EXPECT_NEAR(metres_a_minute(tool_a(), set_mm(tool_a(), sand, limit)), row.a_m_min, 0.005);
    EXPECT_NEAR(metres_a_minute(tool_b(), set_mm(tool_b(), sand, limit)), row.b_m_min, 0.005);
  }
  // Very dense, φ 42°, ψ 10°, E 80 MPa: p_L 787 kPa; A is refused, B makes 0.25 m/min.
  const double limit = limit_of(42, 10, 80);
  EXPECT_NEAR(limit / 1e3, 787, 0.5);
  EXPECT_LT(set_mm(tool_a(), sand, limit), 0);
  EXPECT_NEAR(metres_a_minute(tool_b(), set_mm(tool_b(), sand, limit)), 0.25, 0.005);
}

}  // namespace
}  // namespace burrow

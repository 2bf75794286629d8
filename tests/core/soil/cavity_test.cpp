// Cavity limits: an independent second route, limits, and what is refused. Published values: tests/published.
#include <gtest/gtest.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <limits>

#include "burrow/soil/cavity_alternatives.h"

namespace burrow {
namespace {
constexpr double degree = pi / 180;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

FrictionalGround sand(double modulus_MPa, double cohesion_kPa, double phi_deg, double psi_deg, double p0_kPa) {
  return {.shear_modulus = {1e6 * modulus_MPa},
          .poisson_ratio = {0.3},
          .cohesion = {1e3 * cohesion_kPa},
          .friction_angle = {phi_deg * degree},
          .dilation_angle = {psi_deg * degree},
          .initial = {1e3 * p0_kPa}};
}

/// Limit pressure without the series: with r_p = 1 the flow rule β ε_r + k ε_θ = elastic part, in logarithmic strain,
/// integrates to (1 − δ)^m = m ∫ r^(k/β) exp(e_el/β) dr from a to 1, m = 1 + k/β; solved for a.
double limit_by_quadrature(Cavity cavity, const FrictionalGround& ground) {
  const double k = static_cast<double>(cavity), nu = ground.poisson_ratio.v, G = ground.shear_modulus.Pa;
  const double E = 2 * G * (1 + nu), phi = ground.friction_angle.rad, psi = ground.dilation_angle.rad;
  const double N = (1 + std::sin(phi)) / (1 - std::sin(phi)), beta = (1 + std::sin(psi)) / (1 - std::sin(psi));
  const double shift = ground.cohesion.Pa / std::tan(phi), p0 = ground.initial.Pa + shift;
  const double s = k * (N - 1) / N, at_yield = (k + 1) * N * p0 / (N + k);
  const double delta = (at_yield - p0) / (2 * k * G);
  const auto elastic = [&](double r) {  // β ε_r + k ε_θ of the change of stress, compression positive
    const double radial = at_yield * std::pow(r, -s) - p0, hoop = at_yield * std::pow(r, -s) / N - p0;
    const double along = k == 1 ? nu * (radial + hoop) : hoop;
    const double e_r = (radial - nu * (hoop + along)) / E;
    const double e_t = (hoop - nu * (radial + along)) / E;
    return beta * e_r + k * e_t;
  };
  const double m = 1 + k / beta;
  const auto miss = [&](double log_a) {
    // In ln r the integrand stays smooth down to the cavity.
    const auto f = [&](double log_r) {
      const double r = std::exp(log_r);
      return r * std::pow(r, k / beta) * std::exp(elastic(r) / beta);
    };
    const double integral = boost::math::quadrature::gauss_kronrod<double, 61>::integrate(f, log_a, 0.0, 12, 1e-13);
    return m * integral - std::pow(1 - delta, m);
  };
  std::uintmax_t steps = 200;
  const auto root = boost::math::tools::toms748_solve(miss, std::log(1e-3), std::log(0.9),
                                                      boost::math::tools::eps_tolerance<double>(48), steps);
  return at_yield * std::exp(-s * 0.5 * (root.first + root.second)) - shift;
}

TEST(CavityDrained, Quadrature_Agrees) {
  for (const Cavity cavity : {Cavity::cylinder, Cavity::sphere})
    for (const FrictionalGround& ground : {sand(7.7, 0, 30, 0, 50), sand(7.7, 0, 35, 5, 20), sand(15, 0, 40, 10, 20),
                                           sand(4, 5, 25, 0, 20), sand(12, 0, 35, 0, 15), sand(25, 2, 38, 6, 5)}) {
      const auto limit = drained_limit(cavity, ground);
      ASSERT_TRUE(limit) << limit.error().english();
      EXPECT_NEAR(limit->pressure.Pa / limit_by_quadrature(cavity, ground), 1, 1e-6);
    }
}

// Limit: with hardly any elastic strain the three methods become one (ψ = 0, Δ = 0).
TEST(CavityDrained, Limit_StiffGroundMakesMethodsOne) {
  const FrictionalGround ground = sand(1e3, 0, 30, 0, 20);
  const double ours = drained_limit(Cavity::sphere, ground)->pressure.Pa;
  EXPECT_NEAR(carter_limit(Cavity::sphere, ground)->pressure.Pa / ours, 1, 2e-3);
}

// Theorem of corresponding states: cohesion acts as a stress c cot φ all around.
TEST(CavityDrained, Symmetry_CohesionShiftsStress) {
  const FrictionalGround cohesive = sand(8, 5, 30, 3, 20);
  FrictionalGround plain = sand(8, 0, 30, 3, 0);
  const double shift = 5e3 / std::tan(30 * degree);
  plain.initial.Pa = 20e3 + shift;
  EXPECT_NEAR(drained_limit(Cavity::cylinder, cohesive)->pressure.Pa + shift,
              drained_limit(Cavity::cylinder, plain)->pressure.Pa, 1e-6);
}

TEST(CavityDrained, Rejects_OutOfRange) {
  const auto refused = [](FrictionalGround ground, const char* place) {
    const auto limit = drained_limit(Cavity::cylinder, ground);
    const auto other = carter_limit(Cavity::cylinder, ground);
    EXPECT_FALSE(other);
    ASSERT_FALSE(limit) << place;
    EXPECT_EQ(limit.error().place, place);
  };
  refused(sand(nan, 0, 30, 0, 20), "shear_modulus");
  refused(sand(0, 0, 30, 0, 20), "shear_modulus");
  refused(sand(8, nan, 30, 0, 20), "cohesion");
  refused(sand(8, -1, 30, 0, 20), "cohesion");
  refused(sand(8, 0, nan, 0, 20), "friction_angle");
  refused(sand(8, 0, 0, 0, 20), "friction_angle");
  refused(sand(8, 0, 56, 0, 20), "friction_angle");
  refused(sand(8, 0, 30, nan, 20), "dilation_angle");
  refused(sand(8, 0, 30, 31, 20), "dilation_angle");
  refused(sand(8, 0, 30, 0, nan), "initial");
  refused(sand(8, 0, 30, 0, 0), "initial");
  refused(sand(0.005, 0, 30, 0, 20), "shear_modulus");
  FrictionalGround ground = sand(8, 0, 30, 0, 20);
  ground.poisson_ratio.v = 0.5;
  refused(ground, "poisson_ratio");
  ground.poisson_ratio.v = nan;
  refused(ground, "poisson_ratio");
}

TEST(CavityUndrained, Rejects_OutOfRange) {
  EXPECT_EQ(undrained_limit(Cavity::cylinder, {nan}, {1e3}, {1e5}).error().place, "initial");
  EXPECT_EQ(undrained_limit(Cavity::cylinder, {-1}, {1e3}, {1e5}).error().place, "initial");
  EXPECT_EQ(undrained_limit(Cavity::cylinder, {1}, {nan}, {1e5}).error().place, "strength");
  EXPECT_EQ(undrained_limit(Cavity::cylinder, {1}, {0}, {1e5}).error().place, "strength");
  EXPECT_EQ(undrained_limit(Cavity::cylinder, {1}, {1e3}, {nan}).error().place, "shear_modulus");
  EXPECT_EQ(undrained_limit(Cavity::sphere, {1}, {1e3}, {900}).error().place, "shear_modulus");
  EXPECT_EQ(undrained_pressure(Cavity::sphere, {1}, {1e3}, {1e5}, {nan}).error().place, "growth");
  EXPECT_EQ(undrained_pressure(Cavity::sphere, {1}, {1e3}, {1e5}, {1e-3}).error().place, "growth");
}

// Limit: fully grown, the loading curve is the limit pressure.
TEST(CavityUndrained, Limit_LoadingCurveEndsAtLimit) {
  EXPECT_DOUBLE_EQ(undrained_pressure(Cavity::sphere, {2e3}, {1e3}, {1e5}, {1})->Pa,
                   undrained_limit(Cavity::sphere, {2e3}, {1e3}, {1e5})->pressure.Pa);
}

TEST(CavityVesic, Rejects_OutOfRange) {
  EXPECT_EQ(vesic_factors(Cavity::cylinder, {nan}, 100, {0}).error().place, "friction_angle");
  EXPECT_EQ(vesic_factors(Cavity::cylinder, {0.5}, nan, {0}).error().place, "rigidity");
  EXPECT_EQ(vesic_factors(Cavity::cylinder, {0.5}, 100, {nan}).error().place, "volumetric_strain");
  EXPECT_EQ(vesic_factors(Cavity::cylinder, {0.5}, 100, {2}).error().place, "volumetric_strain");
  EXPECT_EQ(deep_tip_factors({nan}, 100).error().place, "friction_angle");
  EXPECT_EQ(deep_tip_factors({0.5}, 1).error().place, "reduced_rigidity");
}

}  // namespace
}  // namespace burrow

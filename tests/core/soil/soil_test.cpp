// One soil: class and overrides, and the fitted limit pressure.
#include "burrow/soil/soil.h"

#include <gtest/gtest.h>

#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

#include "burrow/soil/cavity.h"
#include "burrow/soil/limit_law.h"
#include "support/classes_for_tests.h"

namespace burrow {
namespace {

SoilClass class_of(const char* id) {
  return *find_soil(for_tests::tables(), id);
}

// Our default: K0 0.7 in clay; Jaky 1944 (from memory), 1 − sin φ′ in sand: 1 − sin 30° = 0.5.
TEST(ResolveSoil, Default_EarthPressureRatio) {
  EXPECT_DOUBLE_EQ(for_tests::soil("firm-clay").earth_pressure_ratio.v, 0.7);
  EXPECT_NEAR(for_tests::soil("loose-sand").earth_pressure_ratio.v, 0.5, 1e-12);
  EXPECT_FALSE(for_tests::soil("firm-clay").drained);
  EXPECT_TRUE(for_tests::soil("loose-sand").drained);
}

TEST(ResolveSoil, Override_WinsAndOthersStay) {
  SoilOverrides values;
  values.undrained_strength = Pressure{45e3};
  values.earth_pressure_ratio = Ratio{1.1};
  const Soil soil = resolve_soil(class_of("firm-clay"), values);
  EXPECT_EQ(soil.undrained_strength.Pa, 45e3);
  EXPECT_EQ(soil.earth_pressure_ratio.v, 1.1);
  EXPECT_EQ(soil.unit_weight.N_m3, 18e3);
  EXPECT_EQ(soil.wander.rad_sqrt_m, 0.0025);
}

// A friction angle typed over a sand changes Jaky's K0 with it.
TEST(ResolveSoil, Override_FrictionMovesEarthPressureRatio) {
  SoilOverrides values;
  values.friction_angle = Angle{pi / 4};
  EXPECT_NEAR(resolve_soil(class_of("loose-sand"), values).earth_pressure_ratio.v, 1 - std::sqrt(0.5), 1e-12);
}

TEST(ResolveSoil, Drained_DecidesWhereBothAreKnown) {
  SoilOverrides values;
  values.friction_angle = Angle{0.4};
  EXPECT_FALSE(resolve_soil(class_of("firm-clay"), values).drained);
  values.drained = true;
  EXPECT_TRUE(resolve_soil(class_of("firm-clay"), values).drained);
  EXPECT_NEAR(resolve_soil(class_of("firm-clay"), values).earth_pressure_ratio.v, 1 - std::sin(0.4), 1e-12);
  SoilOverrides options;
  options.drained = true;  // but no angle of friction is known
  EXPECT_FALSE(resolve_soil(class_of("firm-clay"), options).drained);
}

// The fit against the solver, over its whole range and in cohesive sand too: below 1e-9.
TEST(LimitLaw, Solver_FitError) {
  for (const char* id : {"silt", "loose-sand", "medium-sand", "dense-sand", "fine-gravel"})
    for (const double cohesion : {0.0, 4e3}) {
      Soil soil = for_tests::soil(id);
      soil.cohesion.Pa = cohesion;
      const LimitLaw law(soil, {300e3});
      for (double p = 500; p < 300e3; p *= 1.07) {
        const auto exact = drained_limit(Cavity::cylinder, {.shear_modulus = soil.shear_modulus,
                                                            .poisson_ratio = soil.poisson_ratio,
                                                            .cohesion = soil.cohesion,
                                                            .friction_angle = soil.friction_angle,
                                                            .dilation_angle = soil.dilation_angle,
                                                            .initial = {p}});
        ASSERT_TRUE(exact);
        EXPECT_NEAR(law.effective_limit_Pa(p) / exact->pressure.Pa, 1, 1e-9) << id << " at " << p;
      }
    }
}

TEST(LimitLaw, Batch_AgreesWithSingleInsideAndBeyondTheFit) {
  const LimitLaw law(for_tests::soil("medium-sand"), {20e3});
  for (const double most : {18e3, 30e3}) {
    std::array<double, 6> batch{}, single{};
    for (std::size_t i = 0; i < 6; ++i) {
      batch[i] = most * static_cast<double>(i) / 5;  // begins below the least stress
      single[i] = law.effective_limit_Pa(batch[i]);
    }
    law.effective_limits(batch);
    for (std::size_t i = 0; i < 6; ++i) EXPECT_NEAR(batch[i] / single[i], 1, 1e-12);
  }
}

// Our model: p0′ is not taken below 0.5 kPa; beyond the fit there is no step.
TEST(LimitLaw, Limit_FloorAndEndOfFit) {
  const LimitLaw law(for_tests::soil("medium-sand"), {20e3});
  EXPECT_DOUBLE_EQ(law.effective_limit_Pa(0), law.effective_limit_Pa(500));
  EXPECT_DOUBLE_EQ(law.effective_limit_Pa(-3), law.effective_limit_Pa(500));
  EXPECT_NEAR(law.effective_limit_Pa(20e3 * (1 + 1e-12)) / law.effective_limit_Pa(20e3), 1, 1e-9);
}

// Whatever is typed for a soil, the pressure is a finite number, not negative.
TEST(LimitLaw, AnySoil_FinitePressure) {
  for (const double phi_deg : {0.5, 1.0, 30.0, 60.0, 89.0})
    for (const double psi_deg : {-40.0, 0.0, 80.0})
      for (const double modulus : {0.0, 1e3, 1e6, 1e10})
        for (const double cohesion : {0.0, 50e3})
          for (const double nu : {0.0, 0.5}) {
            Soil soil = for_tests::soil("medium-sand");
            soil.friction_angle.rad = phi_deg * pi / 180;
            soil.dilation_angle.rad = psi_deg * pi / 180;
            soil.shear_modulus.Pa = modulus;
            soil.cohesion.Pa = cohesion;
            soil.poisson_ratio.v = nu;
            const LimitLaw law(soil, {100e3});
            for (const double p : {0.0, 500.0, 50e3, 200e3}) {
              const double limit = law.effective_limit_Pa(p);
              EXPECT_TRUE(std::isfinite(limit) && limit >= 0)
                  << phi_deg << ' ' << psi_deg << ' ' << modulus << ' ' << cohesion << ' ' << nu << ' ' << p;
            }
          }
}

// Gibson & Anderson 1961 (as in tests/published): su 25, G 2500: the part of the strength is 25 (1 + ln 100) kPa.
TEST(LimitLaw, GibsonAnderson1961_StrengthPart) {
  Soil soil = for_tests::soil("firm-clay");
  soil.undrained_strength = {25e3};
  soil.shear_modulus = {2500e3};
  const LimitLaw law(soil, {});
  EXPECT_NEAR(law.strength_part_Pa(), undrained_limit(Cavity::cylinder, {0}, {25e3}, {2500e3})->pressure.Pa, 1e-6);
  EXPECT_DOUBLE_EQ(law.mean_share(), 0.85);
}

template <std::size_t N>
void expect_boost_rule() {
  using Boost = boost::math::quadrature::gauss<double, N>;
  for (std::size_t i = 0; i < N / 2; ++i) {  // Boost lists the positive half
    EXPECT_NEAR(GaussRule<N>::nodes[N / 2 + i], Boost::abscissa()[i], 1e-15);
    EXPECT_NEAR(GaussRule<N>::nodes[N / 2 - 1 - i], -Boost::abscissa()[i], 1e-15);
    EXPECT_NEAR(GaussRule<N>::weights[N / 2 + i], Boost::weights()[i], 1e-15);
    EXPECT_NEAR(GaussRule<N>::weights[N / 2 - 1 - i], Boost::weights()[i], 1e-15);
  }
}

TEST(GaussLegendre, Boost_NodesAndWeights) {
  expect_boost_rule<6>();
  expect_boost_rule<12>();
}

TEST(ChebyshevFit, Exponential_RelativeError) {
  const ChebyshevFit fit(-1, 2, [](double x) { return std::exp(x); });
  for (double x = -1; x <= 2; x += 0.01) EXPECT_NEAR(fit(x) / std::exp(x), 1, 1e-9);
}

}  // namespace
}  // namespace burrow

// Pressure along the air line.

#include "burrow/air/line.h"

#include <gtest/gtest.h>

#include <boost/math/tools/roots.hpp>
#include <cmath>

namespace burrow::test {
namespace {

SiteAir day(double altitude_m = 0, double K = 288.15) {
  return site_air(Length{altitude_m}, Temperature{K}).value();
}

LinePart pipe(double length_m, double bore_m, double roughness_m = 5e-5) {
  return {0, Length{length_m}, Length{bore_m}, Length{roughness_m}};
}

AirPart hose(double length_m, double bore_m) {
  AirPart part;
  part.length = Length{length_m};
  part.bore = Length{bore_m};
  return part;
}

AirPart fitting(AirPartKind kind, std::int64_t count) {
  AirPart part;
  part.kind = kind;
  part.count.set(count);
  return part;
}

// Second route: Colebrook's equation as it stands, solved by Boost's bracketing root finder.
TEST(AirLine, Colebrook_BoostRootFinder) {
  for (const double re : {4000.0, 2e4, 1e5, 1e6, 1e7})
    for (const double rough : {0.0, 1e-5, 0.0026, 0.05}) {
      const auto equation = [&](double x) { return x + 2 * std::log10(rough / 3.7 + 2.51 / re * x); };
      boost::uintmax_t most = 200;
      const auto root =
          boost::math::tools::toms748_solve(equation, 1.0, 30.0, boost::math::tools::eps_tolerance<double>(50), most);
      const double x = 0.5 * (root.first + root.second);
      EXPECT_NEAR(friction_factor(re, rough), 1 / (x * x), 1e-9 / (x * x)) << re << " " << rough;
    }
}

// Limits: 64/Re where it is the greater one (textbook), no jump anywhere, rough pipe independent of Re:
// 1/√f = −2 log10(ε/D / 3.7) (von Kármán).
TEST(AirLine, Colebrook_Limits) {
  EXPECT_DOUBLE_EQ(friction_factor(400, 0.01), 64.0 / 400);
  double before = friction_factor(300, 0.002);
  for (double re = 300; re < 20000; re *= 1.001) {
    const double now = friction_factor(re, 0.002);
    EXPECT_NEAR(now, before, 0.005 * before) << re;
    before = now;
  }
  EXPECT_NEAR(friction_factor(1e12, 0.01), 1 / std::pow(2 * std::log10(0.01 / 3.7), 2), 1e-9);
}

/// Second route: the equation of the flow integrated step by step from the compressor's end,
/// dp/dx = −(f/D) (ρ v²/2) / (1 − M²) with M² = ρ v²/p (isothermal Mach number), fourth order.
double outlet_by_steps(const LinePart& part, const SiteAir& air, double inlet_Pa, double mass_kg_s) {
  const double G = mass_kg_s / (pi * part.bore.m * part.bore.m / 4), RT = 287.05 * air.temperature.K;
  const double f = friction_factor(G * part.bore.m / air.viscosity_Pa_s, part.roughness.m / part.bore.m);
  const auto slope = [&](double p) { return -f / part.bore.m * G * G * RT / (2 * p) / (1 - G * G * RT / (p * p)); };
  const int steps = 20000;
  const double h = part.length.m / steps;
  double p = inlet_Pa;
  for (int i = 0; i < steps; ++i) {
    const double k1 = slope(p), k2 = slope(p + h / 2 * k1), k3 = slope(p + h / 2 * k2), k4 = slope(p + h * k3);
    p += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return p;
}

TEST(AirLine, Flow_EquationIntegratedStepByStep) {
  const SiteAir air = day();
  for (const auto& [length, bore, mass] :
       {std::tuple{15.0, 0.019, 0.016}, {30.0, 0.019, 0.05}, {60.0, 0.025, 0.1}, {5.0, 0.013, 0.03}}) {
    const LinePart part = pipe(length, bore);
    const PartFlow flow = flow_back({part}, air, Pressure{4e5}, mass).front();
    EXPECT_FALSE(flow.choked);
    EXPECT_NEAR(outlet_by_steps(part, air, flow.inlet_Pa, mass), 4e5, 0.5) << bore << " " << mass;
  }
}

// Second route: the same part cut into pieces, in every order, gives the same inlet.
TEST(AirLine, Flow_PiecesAddUp) {
  const SiteAir air = day(1500, 300);
  const Pressure whole = inlet_for({pipe(30, 0.019)}, air, Pressure{3e5}, 0.06);
  const Pressure cut = inlet_for({pipe(3, 0.019), pipe(20, 0.019), pipe(7, 0.019)}, air, Pressure{3e5}, 0.06);
  EXPECT_NEAR(cut.Pa, whole.Pa, 1e-6 * whole.Pa);
  const auto flows = flow_back({pipe(3, 0.025), pipe(20, 0.019)}, air, Pressure{3e5}, 0.06);
  EXPECT_EQ(flows[0].outlet_Pa, flows[1].inlet_Pa);
  EXPECT_GT(flows[0].inlet_Pa, flows[0].outlet_Pa);
}

// Limit: small losses are those of a liquid, Δp = f L/D ρ v²/2 at the mean density.
TEST(AirLine, Flow_SmallLossAsDarcyWeisbach) {
  const SiteAir air = day();
  const LinePart part = pipe(1, 0.05);
  const double mass = 0.02, G = mass / (pi * 0.05 * 0.05 / 4);
  const double f = friction_factor(G * 0.05 / air.viscosity_Pa_s, 0.001);
  const double loss = inlet_for({part}, air, Pressure{7e5}, mass).Pa - 7e5;
  const double rho = 7e5 / (287.05 * 288.15), v = G / rho;
  EXPECT_NEAR(loss, f / 0.05 * rho * v * v / 2, 0.001 * loss);
}

// No flow, no length: no loss. More flow, more length, narrower, rougher, hotter: more loss.
TEST(AirLine, Flow_Monotone) {
  const auto inlet = [](const LinePart& part, double mass, double K = 288.15) {
    return inlet_for({part}, day(0, K), Pressure{4e5}, mass).Pa;
  };
  EXPECT_EQ(inlet(pipe(20, 0.019), 0), 4e5);
  EXPECT_EQ(inlet(pipe(0, 0.019), 0.05), 4e5);
  const double base = inlet(pipe(20, 0.019), 0.04);
  EXPECT_GT(inlet(pipe(20, 0.019), 0.041), base);
  EXPECT_GT(inlet(pipe(21, 0.019), 0.04), base);
  EXPECT_GT(inlet(pipe(20, 0.018), 0.04), base);
  EXPECT_GT(inlet(pipe(20, 0.019, 1e-4), 0.04), base);
  EXPECT_GT(inlet(pipe(20, 0.019), 0.04, 310), base);
}

// A choked outlet: p* = G √(R T), speed √(R T), whatever stands behind. The inlet grows without a step through it.
TEST(AirLine, Flow_ChokedOutlet) {
  const SiteAir air = day();
  const LinePart part = pipe(10, 0.013);
  const double sonic = std::sqrt(287.05 * 288.15), mass = 0.2, critical = mass / (pi * 0.013 * 0.013 / 4) * sonic;
  const PartFlow open = flow_back({part}, air, Pressure{1e5}, mass).front();
  const PartFlow still = flow_back({part}, air, Pressure{2e5}, mass).front();
  EXPECT_TRUE(open.choked && still.choked);
  EXPECT_NEAR(open.outlet_Pa, critical, 1e-6 * critical);
  EXPECT_NEAR(open.speed_m_s, sonic, 1e-9 * sonic);
  EXPECT_EQ(open.inlet_Pa, still.inlet_Pa);
  EXPECT_FALSE(flow_back({part}, air, Pressure{critical * 1.0001}, mass).front().choked);
  EXPECT_NEAR(flow_back({part}, air, Pressure{critical * 1.0001}, mass).front().inlet_Pa, open.inlet_Pa,
              1e-4 * open.inlet_Pa);
  // The equation holds there too: (p1/p*)² − 1 = f L/D + 2 ln(p1/p*).
  const double f = friction_factor(mass / (pi * 0.013 * 0.013 / 4) * 0.013 / air.viscosity_Pa_s, 5e-5 / 0.013);
  const double ratio = open.inlet_Pa / open.outlet_Pa;
  EXPECT_NEAR(ratio * ratio - 1, f * 10 / 0.013 + 2 * std::log(ratio), 1e-9 * ratio * ratio);
}

// Lengths so small that rounding eats them, and so long that no compressor would do: finite, never below the outlet.
TEST(AirLine, Flow_Extremes) {
  const SiteAir air = day(11000, 340);
  for (const double length : {0.0, 1e-300, 1e-15, 1e-9, 1e5})
    for (const double bore : {0.001, 0.019, 5.0})
      for (const double mass : {0.0, 1e-300, 1e-9, 1.0, 1e4})
        for (const double outlet : {1.0, 1e5, 1e8}) {
          const double inlet = inlet_for({pipe(length, bore, 0)}, air, Pressure{outlet}, mass).Pa;
          EXPECT_TRUE(std::isfinite(inlet) && inlet >= outlet) << length << " " << bore << " " << mass;
        }
}

TEST(AirLine, Parts_FittingsTakeBoreAndLength) {
  AirPart own = fitting(AirPartKind::coupling, 3);
  own.equivalent_length = Length{0.5};
  own.bore = Length{0.013};
  const auto parts = line_parts(
      {fitting(AirPartKind::lubricator, 1), hose(15, 0.019), fitting(AirPartKind::coupling, 2), hose(5, 0.025), own});
  ASSERT_TRUE(parts);
  ASSERT_EQ(parts->size(), 5u);
  EXPECT_DOUBLE_EQ((*parts)[0].bore.m, 0.019);
  EXPECT_DOUBLE_EQ((*parts)[0].length.m, 1.5);
  EXPECT_DOUBLE_EQ((*parts)[2].length.m, 1.2);
  EXPECT_DOUBLE_EQ((*parts)[2].bore.m, 0.019);
  EXPECT_DOUBLE_EQ((*parts)[4].length.m, 1.5);
  EXPECT_DOUBLE_EQ((*parts)[4].bore.m, 0.013);
}

TEST(AirLine, Parts_Refused) {
  const auto place = [](const std::vector<AirPart>& entered) {
    const auto parts = line_parts(entered);
    return parts ? std::string("none") : parts.error().place.english();
  };
  EXPECT_EQ(place({}), "hose");
  EXPECT_EQ(place({fitting(AirPartKind::coupling, 1)}), "hose");
  EXPECT_EQ(place({AirPart{}}), "hose");
  EXPECT_EQ(place({hose(10, 0.019), AirPart{}}), "hose");
  EXPECT_EQ(place({hose(10, 0.0009)}), "hose bore");
  EXPECT_EQ(place({hose(10, 0)}), "hose bore");
  AirPart rough = hose(10, 0.019);
  rough.roughness.set(Length{0.001});
  EXPECT_EQ(place({rough}), "roughness");
  rough.roughness.set(Length{std::nan("")});
  EXPECT_EQ(place({rough}), "roughness");
  EXPECT_EQ(place({hose(10, 0.019), fitting(AirPartKind::coupling, 9000000000000000)}), "length");
  EXPECT_EQ(place({hose(std::nan(""), 0.019)}), "length");
}

}  // namespace
}  // namespace burrow::test

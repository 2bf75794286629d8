// Pull-in, stretch, heat, floating, following the ground.

#include "burrow/pipe/pull_in.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "burrow/pipe/along.h"

namespace burrow::test {
namespace {

constexpr double lbf = 4.4482216152605, ft = 0.3048, in = 0.0254, lb_ft = lbf / ft, ksi = 6894757.293168361;

HolePiece piece(double length, double turn, double weight, double friction, double grip = 0, double grade = 0) {
  return {length, turn, weight, grade, grip, friction};
}

// 100 ft of 2 in DR 11 (.639 lb/ft), μ .5 (derived): 32 lb.
TEST(PullIn, Straight_IsFrictionTimesWeight) {
  const HolePiece one[] = {piece(100 * ft, 0, 0.639 * lb_ft, 0.5)};
  EXPECT_NEAR(pull_force(one)->N / lbf, 32, 0.5);
  const std::vector<HolePiece> many(10, piece(10 * ft, 0, -0.639 * lb_ft, 0.5));  // one that floats drags as much
  EXPECT_NEAR(pull_force(many)->N, pull_force(one)->N, 1e-9);
  EXPECT_EQ(pull_force({})->N, 0);
}

// Najafi, Trenchless Technology Piping, p 262 (read): "1.6 for each 90°" is e^(.3 π/2) = 1.602; T = [L w/3] 1.6^n, 600
// ft, 7.8 lb/ft, n 2.2: 4387 lb, safety 1.72 against 7524.
TEST(PullIn, Najafi_Curve) {
  EXPECT_NEAR(std::exp(0.3 * pi / 2), 1.6, 0.05);
  EXPECT_NEAR(600 * 7.8 / 3 * std::pow(1.6, 2.2), 4387, 0.5);
  EXPECT_NEAR(7524 / 4387.2, 1.72, 0.006);
  // Of ours: a straight part whose drag then goes round a weightless bend of 2.2 × 90°.
  const HolePiece parts[] = {piece(600 * ft, 0, 7.8 * lb_ft, 1.0 / 3), piece(1, 2.2 * std::log(1.6) * 3, 0, 1.0 / 3)};
  EXPECT_NEAR(pull_force(parts)->N / lbf, 4387.2, 0.5);
}

// μ .3: 10° 1.054, 30° 1.170; μ .5, 30° 1.299 (derived).
TEST(PullIn, Belt_Factors) {
  const auto factor = [](double mu, double degrees) {
    const HolePiece parts[] = {piece(1, 0, 1000, mu), piece(1e-9, degrees * pi / 180, 0, mu)};
    return pull_force(parts)->N / (mu * 1000);
  };
  EXPECT_NEAR(factor(.3, 10), 1.054, 0.0005);
  EXPECT_NEAR(factor(.3, 30), 1.170, 0.0005);
  EXPECT_NEAR(factor(.5, 30), 1.299, 0.0005);
}

// Second route: dT/ds = μ κ T + μ w + w sin θ by small steps.
TEST(PullIn, AgainstSmallSteps) {
  const double length = 20, turn = 0.4, weight = 12, mu = 0.5, grade = 0.05, grip = 30;
  double pull = 0;
  const int steps = 200000;
  for (int i = 0; i < steps; ++i)
    pull += length / steps *
            (mu * turn / length * pull + mu * (weight * std::cos(grade) + grip) + weight * std::sin(grade));
  const HolePiece whole[] = {piece(length, turn, weight, mu, grip, grade)};
  EXPECT_NEAR(pull_force(whole)->N, pull, 1e-4 * pull);
  const std::vector<HolePiece> parts(40, piece(length / 40, turn / 40, weight, mu, grip, grade));
  EXPECT_NEAR(pull_force(parts)->N, pull_force(whole)->N, 1e-9);
}

// A bend near the pulling end counts more; the greater of both directions is taken.
TEST(PullIn, WorseDirection) {
  const HolePiece near_end[] = {piece(10, 0, 100, 0.5), piece(1, 0.5, 100, 0.5)};
  const HolePiece near_start[] = {piece(1, 0.5, 100, 0.5), piece(10, 0, 100, 0.5)};
  EXPECT_EQ(pull_force(near_end)->N, pull_force(near_start)->N);
  EXPECT_GT(pull_force(near_end)->N, 0.5 * 100 * 11);
}

// Soil gripping the whole length, T = μ p π D L: 100 psf, μ .3, 2.375 in, 100 ft: 1865 lb (derived).
TEST(PullIn, Gripped) {
  const double p = 100 * lbf / (ft * ft), d = 2.375 * in;
  const HolePiece one[] = {piece(100 * ft, 0, 0, 0.3, p * pi * d)};
  EXPECT_NEAR(pull_force(one)->N / lbf, 1865, 0.6);
}

// Pipe replacement guide, Najafi eq. 6.5 (read): T = d D L/6: 30 in, 4 in, 100 ft 2000 lb; 60, 12, 250 30 000 lb. Not
// this work, but of the same size as a gripped pipe.
TEST(PullIn, Najafi_ReplacementForm) {
  EXPECT_NEAR(30.0 * 4 * 100 / 6, 2000, 0.5);
  EXPECT_NEAR(60.0 * 12 * 250 / 6, 30000, 0.5);
}

// 1000 lb on 100 ft of 2 in DR 11 (1.4645 in²) at 63 ksi: 13.0 in (derived).
TEST(PullIn, Stretch) {
  const double length = stretch(Force{1000 * lbf}, Length{100 * ft}, 1.4645 * in * in, Pressure{63 * ksi})->m;
  EXPECT_NEAR(length / in, 13.0, 0.05);
  EXPECT_FALSE(stretch(Force{1}, Length{1}, 0, Pressure{1}));
  EXPECT_FALSE(stretch(Force{-1}, Length{1}, 1, Pressure{1}));
  EXPECT_FALSE(stretch(Force{1}, Length{1}, 1, Pressure{std::nan("")}));
}

// Second route: a beam on its weight w lying in a hole with gap r has the stiffness k = w/r aside; buckling of an
// endless beam on springs is 2 √(E I k).
TEST(PullIn, Push_IsABeamOnSprings) {
  const double ei = 340, w = 11, r = 0.012;
  const double limit = push_limit(ei, w, Length{r})->N;
  double least = 1e99;
  for (double wave = 0.05; wave < 50; wave *= 1.001) least = std::min(least, ei * wave * wave + w / r / (wave * wave));
  EXPECT_NEAR(limit, least, 1e-5 * least);
  EXPECT_FALSE(push_limit(ei, 0, Length{r}));
  EXPECT_FALSE(push_limit(ei, w, Length{0}));
}

TEST(PullIn, Rejects) {
  for (const HolePiece& bad : {piece(-1, 0, 1, 1), piece(1, -1, 1, 1), piece(1, 0, std::nan(""), 1), piece(1, 0, 1, -1),
                               piece(1, 0, 1, 1, -1)}) {
    const HolePiece one[] = {bad};
    EXPECT_FALSE(pull_force(one));
  }
  const HolePiece endless[] = {piece(1, 1e6, 1, 1)};
  EXPECT_FALSE(pull_force(endless));
}

// 25 diameters: a strain of 2.0 % (derived).
TEST(Along, Bend_StrainAtTwentyFiveDiameters) {
  EXPECT_NEAR(bending_strain(1 / (25 * 0.06), Length{0.06})->v, 0.02, 1e-12);
  EXPECT_FALSE(bending_strain(-1, Length{1}));
}

// PE 100 ft, 10 °F: 1.0 in (second-hand; .96 to 1.20 at 8e-5 to 10e-5). PVC 1000 ft, 50 °F "about 20 in"
// (second-hand): 18.75 at 3.125e-5. Metric 1.5e-4 /K (second-hand) is 8.33e-5 /°F.
TEST(Along, Thermal_Shortening) {
  EXPECT_NEAR(thermal_shortening(9e-5, Length{100 * 12}, 10)->m, 1.0, 0.1);
  EXPECT_NEAR(thermal_shortening(3.125e-5, Length{1000 * 12}, 50)->m, 20, 2);
  EXPECT_NEAR(1.5e-4 / 1.8, 8.33e-5, 5e-8);
  EXPECT_LT(thermal_shortening(1e-4, Length{10}, -5)->m, 0);
  EXPECT_FALSE(thermal_shortening(-1, Length{1}, 1));
}

// An empty pipe of 955 kg/m³, 63 × 5.8: 9.76 N/m against 30.6 of water (derived, by the two rings' areas).
TEST(Along, Floating_EmptyPipe) {
  const double d = 0.063, b = 0.063 - 2 * 0.0058;
  const Floating f = *floating(UnitWeight{955 * gravity_m_s2}, pi * (d * d - b * b) / 4, Length{d});
  EXPECT_NEAR(f.weight_N_m, 9.76, 0.005);
  EXPECT_NEAR(f.uplift_N_m, 30.57, 0.005);
  EXPECT_FALSE(floating(UnitWeight{1}, -1, Length{1}));
}

// The curvature is the greatest second derivative of the trough.
TEST(Along, Settling_CurvatureOfTheTrough) {
  const double gap = 0.012, depth = 1.4, i = 0.7, h = 1e-4;
  const auto trough = [&](double x) { return gap * std::exp(-x * x / (2 * i * i)); };
  double greatest = 0;
  for (double x = -3; x < 3; x += 0.01)
    greatest = std::max(greatest, std::abs(trough(x + h) - 2 * trough(x) + trough(x - h)) / (h * h));
  EXPECT_NEAR(*settling_curvature_1_m(Length{gap}, Length{depth}), greatest, 1e-4 * greatest);
  EXPECT_FALSE(settling_curvature_1_m(Length{gap}, Length{0}));
  EXPECT_FALSE(settling_curvature_1_m(Length{-1}, Length{1}));
}

}  // namespace
}  // namespace burrow::test

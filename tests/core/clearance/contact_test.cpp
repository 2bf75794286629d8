#include "burrow/clearance/contact.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace burrow {
namespace {

ViewSpread spread_of(double across, double up, double correlation) {
  return {across * across, up * up, correlation * across * up};
}

/// Second route: a fine grid over the stadium, no frame, no quadrature rule.
double by_grid(const Stadium& s, const ViewSpread& c) {
  const double det = c.across_m2 * c.up_m2 - c.mixed_m2 * c.mixed_m2;
  const double ux = s.to.across_m - s.from.across_m, uy = s.to.up_m - s.from.up_m, l2 = ux * ux + uy * uy;
  const double step = std::min(s.radius_m, std::sqrt(std::min(c.across_m2, c.up_m2))) / 120;
  const double x0 = std::min(s.from.across_m, s.to.across_m) - s.radius_m;
  const double x1 = std::max(s.from.across_m, s.to.across_m) + s.radius_m;
  const double y0 = std::min(s.from.up_m, s.to.up_m) - s.radius_m, y1 = std::max(s.from.up_m, s.to.up_m) + s.radius_m;
  double sum = 0;
  for (double x = x0 + step / 2; x < x1; x += step)
    for (double y = y0 + step / 2; y < y1; y += step) {
      const double px = x - s.from.across_m, py = y - s.from.up_m;
      const double t = l2 > 0 ? std::clamp((px * ux + py * uy) / l2, 0.0, 1.0) : 0;
      if (std::hypot(px - t * ux, py - t * uy) > s.radius_m) continue;
      sum += std::exp(-0.5 * (c.up_m2 * x * x - 2 * c.mixed_m2 * x * y + c.across_m2 * y * y) / det);
    }
  return sum * step * step / (2 * 3.141592653589793 * std::sqrt(det));
}

TEST(Contact, Crossing_Limits) {
  EXPECT_DOUBLE_EQ(crossing_chance(0.05, 0.1, 0), 1);  // surely touching
  EXPECT_DOUBLE_EQ(crossing_chance(0.15, 0.1, 0), 0);  // surely clear
  EXPECT_NEAR(crossing_chance(0.1, 0.1, 1e-4), 0.5, 1e-12);
  EXPECT_DOUBLE_EQ(crossing_chance(0.3, 0.1, 0.1), crossing_chance(-0.3, 0.1, 0.1));
}

// Derived: the turning point is where the chance, sampled, is greatest.
TEST(Contact, WorstCrossing_IsTheGreatestSample) {
  double greatest = 0;
  for (int i = 1; i <= 20000; ++i) greatest = std::max(greatest, crossing_chance(0.4, 0.1, 0.02 + 1e-4 * i));
  EXPECT_NEAR(worst_crossing_chance(0.4, 0.1, 0.02, 2.02), greatest, 1e-7);
  EXPECT_DOUBLE_EQ(worst_crossing_chance(0.4, 0.1, 0.02, 0.2), crossing_chance(0.4, 0.1, 0.2));
  EXPECT_DOUBLE_EQ(worst_crossing_chance(0.05, 0.1, 0.02, 2), crossing_chance(0.05, 0.1, 0.02));
}

// A very poor location makes the plain chance fall; the worst must not.
TEST(Contact, WorstCrossing_DoesNotFallWhenNothingIsKnown) {
  EXPECT_LT(crossing_chance(0.4, 0.1, 5), 0.02);
  EXPECT_GT(worst_crossing_chance(0.4, 0.1, 0.05, 5), 0.1);
}

// Second route: grid with 1e-4 of its own error.
TEST(Contact, Stadium_FineGrid) {
  const struct {
    Stadium stadium;
    ViewSpread spread;
  } cases[] = {
      {{{0.3, 0.1}, {0.3, 0.1}, 0.15}, spread_of(0.1, 0.15, 0)},
      {{{-0.5, 0.3}, {0.2, 0.35}, 0.1}, spread_of(0.2, 0.1, 0)},
      {{{-0.2, -0.1}, {0.4, 0.5}, 0.12}, spread_of(0.3, 0.1, 0.6)},
      {{{0.1, -0.4}, {0.1, 0.3}, 0.2}, spread_of(0.05, 0.3, -0.8)},
      {{{-1.0, 0.2}, {1.0, 0.2}, 0.1}, spread_of(0.2, 0.1, 0)},
      {{{0.2, 0.2}, {0.9, 0.9}, 0.1}, spread_of(0.4, 0.04, 0)},
  };
  for (const auto& c : cases) {
    const double grid = by_grid(c.stadium, c.spread);
    EXPECT_NEAR(stadium_chance(c.stadium, c.spread), grid, 2e-3 * grid + 1e-7);
  }
}

// Limit: a stadium that reaches far both ways is a crossing; with its round ends out of reach the forms agree.
TEST(Contact, Stadium_LongIsCrossing) {
  const double s = 0.1;
  for (const double reach : {0.6, 0.7, 0.8, 0.84, 0.86, 2.0})
    EXPECT_NEAR(stadium_chance({{-reach, 0.3}, {reach, 0.3}, 0.1}, spread_of(s, s, 0)), crossing_chance(0.3, 0.1, s),
                1e-9)
        << reach;
}

// Symmetry: turning the whole view changes nothing.
TEST(Contact, Stadium_TurnedView) {
  const double a = 0.7, c = std::cos(a), s = std::sin(a);
  const auto turn = [&](ViewVector v) { return ViewVector{c * v.across_m - s * v.up_m, s * v.across_m + c * v.up_m}; };
  const Stadium level{{-0.3, 0.25}, {0.4, 0.25}, 0.1};
  const Stadium rotated{turn(level.from), turn(level.to), 0.1};
  const double x2 = 0.04, y2 = 0.0025;
  const ViewSpread spread{c * c * x2 + s * s * y2, s * s * x2 + c * c * y2, s * c * (x2 - y2)};
  EXPECT_NEAR(stadium_chance(rotated, spread), stadium_chance(level, {x2, y2, 0}), 1e-10);
}

// Both sharp and wide spreads keep their accuracy against Monte Carlo (seeded, 4 standard errors).
TEST(Contact, Stadium_MonteCarlo) {
  std::mt19937_64 random(11);
  std::normal_distribution<double> normal;
  const Stadium stadium{{-0.4, 0.2}, {0.3, 0.1}, 0.14};
  const double across = 0.25, up = 0.12, correlation = 0.3;
  int hits = 0;
  const int n = 400000;
  for (int i = 0; i < n; ++i) {
    const double a = normal(random), b = normal(random);
    const double x = across * a, y = up * (correlation * a + std::sqrt(1 - correlation * correlation) * b);
    const double ux = 0.7, uy = -0.1, px = x + 0.4, py = y - 0.2;
    const double t = std::clamp((px * ux + py * uy) / (ux * ux + uy * uy), 0.0, 1.0);
    hits += std::hypot(px - t * ux, py - t * uy) <= stadium.radius_m;
  }
  const double p = stadium_chance(stadium, spread_of(across, up, correlation));
  EXPECT_NEAR(static_cast<double>(hits) / n, p, 4 * std::sqrt(p * (1 - p) / n));
}

// From parallel (a circle) to square crossing: no jump larger than the step in angle explains.
TEST(Contact, Sweep_ContinuousOverAngle) {
  const double half_length = 6, spread = 0.2;
  double before = -1;
  for (int i = 0; i <= 9000; ++i) {
    const double angle = i * 0.01 * 3.141592653589793 / 180;
    const double reach = half_length * std::sin(angle);
    const double p = stadium_chance({{-reach, 0.4}, {reach, 0.4}, 0.1}, spread_of(spread, spread, 0));
    if (before >= 0) {
      EXPECT_GE(p, before - 1e-12);
      EXPECT_LT(p - before, 4e-4);
    }
    before = p;
  }
  EXPECT_NEAR(before, crossing_chance(0.4, 0.1, spread), 1e-12);
}

TEST(Contact, Worst_NonDecreasingInBothErrors) {
  const Stadium stadiums[] = {
      {{0.3, 0.2}, {0.3, 0.2}, 0.1}, {{-0.2, 0.3}, {0.3, 0.35}, 0.1}, {{0.02, 0}, {0.02, 0}, 0.1}};
  const ViewSpread bore = spread_of(0.06, 0.05, 0);
  const double steps[] = {0, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.45, 0.7, 1, 2, 4};
  for (const Stadium& stadium : stadiums) {
    double row_before[std::size(steps)] = {};
    for (const double lateral : steps) {
      double before = 0;
      for (std::size_t k = 0; k < std::size(steps); ++k) {
        const LocationSpread location{{lateral, 0}, {0, steps[k]}};
        const double worst = worst_stadium_chance(stadium, bore, location);
        EXPECT_GE(worst, stadium_chance(stadium, total_spread(bore, location)) * (1 - 1e-12));
        EXPECT_GE(worst, before * (1 - 1e-6));
        EXPECT_GE(worst, row_before[k] * (1 - 1e-6));
        before = row_before[k] = worst;
      }
    }
  }
}

// Second route: every pair of shares on a fine mesh.
TEST(Contact, Worst_GreatestOnMesh) {
  const Stadium stadium{{0.35, 0.15}, {0.35, 0.15}, 0.12};
  const ViewSpread bore = spread_of(0.05, 0.05, 0);
  const LocationSpread location{{1.5, 0.0}, {0.02, 0.8}};
  double greatest = 0;
  for (int i = 0; i <= 100; ++i)
    for (int k = 0; k <= 100; ++k)
      greatest = std::max(greatest, stadium_chance(stadium, total_spread(bore, location, i / 100.0, k / 100.0)));
  const double worst = worst_stadium_chance(stadium, bore, location);
  EXPECT_GE(worst, greatest * (1 - 1e-6));
  EXPECT_LT(worst, greatest * 1.002);
}

TEST(Contact, Stadium_OutOfReach) {
  EXPECT_EQ(stadium_chance({{2, 0}, {2, 0}, 0.1}, spread_of(0.1, 0.1, 0)), 0);
  EXPECT_EQ(worst_stadium_chance({{2, 0}, {2, 0}, 0.1}, spread_of(0.1, 0.1, 0), {{0.1, 0}, {0, 0.1}}), 0);
}

}  // namespace
}  // namespace burrow

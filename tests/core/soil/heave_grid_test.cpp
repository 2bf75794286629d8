#include "burrow/soil/heave_grid.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/soil/movement.h"

namespace burrow {
namespace {

const OpenedHole hole{{0.065}, {1.3}, {0.8}};

double at(const std::vector<HoleInPlan>& bore, double x, double y) {
  return heave_on_grid(bore, {0.065}, {{x, y}, 1, 1, 1}).front();
}

std::vector<HoleInPlan> straight(double from, double to, int pieces) {
  std::vector<HoleInPlan> bore;
  for (int i = 0; i <= pieces; ++i) bore.push_back({{from + (to - from) * i / pieces, 0}, 1.3, 0.8});
  return bore;
}

// Limits: far from its ends a long bore is the endless one; over an end half of it.
TEST(HeaveGrid, LongBore_IsTheEndlessOne) {
  const auto bore = straight(-300, 300, 600);
  for (const double y : {0.0, 0.7, -2.0})
    EXPECT_NEAR(at(bore, 0.3, y), surface_rise(hole, {y})->m, 5e-5 * surface_rise(hole, {0})->m);
  EXPECT_NEAR(at(bore, 300, 0), surface_rise(hole, {0})->m / 2, 1e-8);
}

// Second route: the hole behind the tip builds up as the closed form of the passing tool says.
TEST(HeaveGrid, HoleBehindTheTip_IsTheRiseInPassing) {
  const auto bore = straight(-400, 0, 400);
  for (const double ahead : {-1.3, -0.4, 0.0, 0.6, 1.3})
    for (const double aside : {0.0, 0.9})
      EXPECT_NEAR(at(bore, ahead, aside), surface_rise_in_passing(hole, {aside}, {ahead})->m, 1e-8);
}

// Second route: the sum of point sources h/ρ³ along a crooked bore.
TEST(HeaveGrid, CrookedBore_SumOfPointSources) {
  const std::vector<HoleInPlan> bore{{{0, 0}, 1.2, 1}, {{4, 0.5}, 1.2, 1}, {{7, -0.5}, 1.2, 1}};
  double sum = 0;
  const double x = 4.6, y = 0.9;
  for (std::size_t i = 1; i < bore.size(); ++i) {
    const double dx = bore[i].at.x_m - bore[i - 1].at.x_m, dy = bore[i].at.y_m - bore[i - 1].at.y_m;
    for (int k = 0; k < 20000; ++k) {
      const double t = (k + 0.5) / 20000;
      const double px = x - bore[i - 1].at.x_m - t * dx, py = y - bore[i - 1].at.y_m - t * dy;
      sum += 0.065 * 0.065 / 2 * 1.2 / std::pow(px * px + py * py + 1.44, 1.5) * std::hypot(dx, dy) / 20000;
    }
  }
  EXPECT_NEAR(at(bore, x, y), sum, 1e-10);
}

// How finely the bore is cut does not matter, nor which way it runs.
TEST(HeaveGrid, Pieces_DoNotMatter) {
  EXPECT_NEAR(at(straight(0, 10, 1), 3, 0.4), at(straight(0, 10, 40), 3, 0.4), 1e-15);
  EXPECT_NEAR(at(straight(0, 10, 7), 3, 0.4), at(straight(10, 0, 7), 3, -0.4), 1e-15);
}

TEST(HeaveGrid, Nodes_RowByRow) {
  const auto bore = straight(0, 10, 10);
  const auto grid = heave_on_grid(bore, {0.065}, {{-1, -2}, 0.5, 3, 9});
  ASSERT_EQ(grid.size(), 27u);
  EXPECT_EQ(grid[4 * 3 + 2], at(bore, 0, 0));
  EXPECT_EQ(grid[0], at(bore, -1, -2));
  EXPECT_EQ(heave_on_grid(bore, {0}, {{0, 0}, 1, 1, 1}).front(), 0);
  EXPECT_EQ(heave_on_grid({}, {0.1}, {{0, 0}, 1, 2, 2}), std::vector<double>(4, 0.0));
}

}  // namespace
}  // namespace burrow

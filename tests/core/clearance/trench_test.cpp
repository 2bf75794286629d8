// The trench of a utility: against areas by hand, and point by point against the distance from the line.

#include "burrow/clearance/trench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "support/clearance_for_tests.h"

namespace burrow {
namespace {

double area(const PlanLine& outline) {
  double sum = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &a = outline[i], &b = outline[(i + 1) % outline.size()];
    sum += a.x_m * b.y_m - a.y_m * b.x_m;
  }
  return std::abs(sum) / 2;
}

struct Nearest {
  double distance_m = 1e9;
  bool at_an_end = false;
};
Nearest nearest_on(const std::vector<PathVertex>& path, double x, double y) {
  Nearest least;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const double dx = path[i + 1].x_m - path[i].x_m, dy = path[i + 1].y_m - path[i].y_m;
    const double raw = ((x - path[i].x_m) * dx + (y - path[i].y_m) * dy) / (dx * dx + dy * dy);
    const double t = std::clamp(raw, 0.0, 1.0);
    const double d = std::hypot(x - path[i].x_m - t * dx, y - path[i].y_m - t * dy);
    if (d >= least.distance_m) continue;
    least = {d, (i == 0 && raw < 0) || (i + 2 == path.size() && raw > 1)};
  }
  return least;
}

TEST(Trench, Straight_ByHand) {
  const auto strip = trench_of(test::water_main({{10, -5, 101.0}, {10, 5, 100.8}}), test::ground);
  ASSERT_TRUE(strip);
  EXPECT_EQ(strip->soil, "trench-backfill");
  EXPECT_EQ(strip->name, "trench of water main");
  EXPECT_FALSE(strip->top_elevation);
  EXPECT_NEAR(strip->bottom_elevation.m, 100.8 - 0.055 - 0.1, 1e-12);
  EXPECT_NEAR(area(strip->outline), 10 * (0.11 + 0.6), 1e-9);
  EXPECT_EQ(strip->outline.size(), 4u);
}

// A square bend: both arms, the corner once.
TEST(Trench, SquareBend_Area) {
  const double w = 0.71;
  for (const double side : {1.0, -1.0}) {
    const auto strip = trench_of(test::water_main({{0, 0, 101.0}, {6, 0, 101.0}, {6, side * 4, 101.0}}), test::ground);
    ASSERT_TRUE(strip);
    EXPECT_NEAR(area(strip->outline), 10 * w, 1e-9) << side;
  }
}

// Second route, for bends of every kind: what lies within half the width of the line is in the trench, what lies more
// than 1.42 times as far is not.
TEST(Trench, Bends_PointByPoint) {
  std::mt19937_64 random(4);
  std::uniform_real_distribution<double> turn(-1.2, 1.2), run(0.25, 3), place(0, 1);
  const double half = 0.355;
  int proposed = 0;
  for (int trial = 0; trial < 120; ++trial) {
    Utility u = test::water_main({});
    double x = 0, y = 0, heading = 0;
    for (int i = 0; i < 7; ++i) {
      u.path.push_back({x, y, 101.0});
      const double length = run(random);
      x += length * std::cos(heading);
      y += length * std::sin(heading);
      heading += trial % 2 == 0 ? turn(random) : 0.4 * turn(random);
    }
    const auto strip = trench_of(u, test::ground);
    if (!strip) continue;
    ++proposed;
    for (int k = 0; k < 400; ++k) {
      const PathVertex& near = u.path[static_cast<std::size_t>(place(random) * 6.999)];
      const double px = near.x_m + 2 * place(random) - 1, py = near.y_m + 2 * place(random) - 1;
      const Nearest n = nearest_on(u.path, px, py);
      if (n.distance_m < half - 1e-6 && !n.at_an_end) {
        EXPECT_TRUE(inside(strip->outline, px, py)) << trial << ' ' << px << ' ' << py << ' ' << n.distance_m;
      }
      if (n.distance_m > 1.42 * half) {
        EXPECT_FALSE(inside(strip->outline, px, py)) << trial;
      }
    }
  }
  EXPECT_GE(proposed, 100);
}

TEST(Trench, NothingToPropose) {
  const Utility good = test::water_main({{10, -5, 101.0}, {10, 5, 101.0}});
  const auto without = [&](auto change) {
    Utility u = good;
    change(u);
    return trench_of(u, test::ground).has_value();
  };
  EXPECT_TRUE(without([](Utility&) {}));
  EXPECT_TRUE(without([](Utility& u) { u.path[0].z_m.reset(); }));
  EXPECT_FALSE(without([](Utility& u) { u.outside_diameter.reset(); }));
  EXPECT_FALSE(without([](Utility& u) { u.path[0].z_m = u.path[1].z_m = std::nullopt; }));
  EXPECT_FALSE(without([](Utility& u) { u.path[0].z_m = u.path[1].z_m = 102.5; }));
  EXPECT_FALSE(without([](Utility& u) { u.path.pop_back(); }));
  EXPECT_FALSE(without([](Utility& u) { u.path = {{0, 0, 101.0}, {5, 0, 101.0}, {5, 0.2, 101.0}, {0, 0.2, 101.0}}; }));
}

}  // namespace
}  // namespace burrow

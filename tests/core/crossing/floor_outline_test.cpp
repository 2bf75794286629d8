#include "burrow/crossing/floor_outline.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace burrow {
namespace {

const PlanLine l_shape{{0, -0.5}, {0, 0.5}, {1.5, 0.5}, {1.5, 1.4}, {3, 1.4}, {3, -0.5}};

TEST(FloorOutline, GoodOnes_EitherWayRound) {
  EXPECT_FALSE(fault_of_floor({}));
  EXPECT_FALSE(fault_of_floor(l_shape));
  PlanLine other_way = l_shape;
  std::reverse(other_way.begin(), other_way.end());
  EXPECT_FALSE(fault_of_floor(other_way));
  EXPECT_FALSE(fault_of_floor({{0, 0}, {0, 1}, {2, 0.5}}));
}

// Derived: each names the corner to mend.
TEST(FloorOutline, BadOnes_NameTheCorner) {
  const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
  const struct {
    PlanLine outline;
    std::size_t corner;
  } cases[] = {
      {{{0, 0}}, 0},
      {{{0, 0}, {1, 0}}, 1},
      {{{0, 0}, {2, 1}, {2, 0}, {0, 1}}, 2},            // crosses itself
      {{{0, 0}, {2, 0}, {2, 1}, {2, 0.01}}, 3},         // two in one place
      {{{0, 0}, {2, 0}, {1, 0}, {1, 1}}, 2},            // back along its own edge
      {{{0, 0}, {3, 0}, {3, 2}, {1.5, 0}, {0, 2}}, 2},  // a corner on an edge
      {{{-0.1, 0}, {2, 0}, {2, 1}}, 0},                 // before the face
      {{{0, 0}, {2, nan}, {2, 1}}, 1},
      {{{0, 0}, {nan, 1}, {2, 1}}, 1},
      {{{0, 0}, {inf, 0}, {2, 1}}, 1},
      {{{0, 0}, {0.2, 0}, {0.2, 0.2}, {0, 0.2}}, 0},  // no room
      {{{0, 0}, {4, 0.2}, {4, -0.2}}, 0},             // a spike
  };
  for (const auto& c : cases) {
    const auto fault = fault_of_floor(c.outline);
    ASSERT_TRUE(fault) << c.outline.size() << ' ' << c.corner;
    EXPECT_EQ(fault->corner, c.corner) << fault->what.english();
  }
  EXPECT_TRUE(fault_of_floor(PlanLine(25, {0, 0})));
}

// Second route: an outline is simple when no two of its edges, walked in small steps, come together but at their shared
// corner.
TEST(FloorOutline, Random_AsByWalkingTheEdges) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> at(0, 4);
  int simple = 0, crossing = 0;
  for (int round = 0; round < 400; ++round) {
    PlanLine outline;
    for (int i = 0; i < 5; ++i) outline.push_back({at(random), at(random)});
    const auto fault = fault_of_floor(outline);
    if (fault && fault->what.english().find("crosses") == std::string::npos) continue;
    bool meets = false;
    const std::size_t n = outline.size();
    for (std::size_t i = 0; i < n && !meets; ++i)
      for (std::size_t k = i + 2; k < n && !meets; ++k) {
        if (i == 0 && k + 1 == n) continue;
        // The sign of the side changes along one edge while the foot lies on the other.
        const PlanPoint &a = outline[i], &b = outline[i + 1], &c = outline[k], &d = outline[(k + 1) % n];
        double before = 0;
        for (int s = 0; s <= 4000; ++s) {
          const double t = s / 4000.0, x = c.x_m + t * (d.x_m - c.x_m), y = c.y_m + t * (d.y_m - c.y_m);
          const double side = (b.x_m - a.x_m) * (y - a.y_m) - (b.y_m - a.y_m) * (x - a.x_m);
          const double along = (b.x_m - a.x_m) * (x - a.x_m) + (b.y_m - a.y_m) * (y - a.y_m);
          const double length2 = std::pow(b.x_m - a.x_m, 2) + std::pow(b.y_m - a.y_m, 2);
          if (s > 0 && side * before < 0 && along > 0 && along < length2) meets = true;
          before = side;
        }
      }
    EXPECT_EQ(meets, fault.has_value()) << round;
    (meets ? crossing : simple) += 1;
  }
  EXPECT_GT(simple, 50);
  EXPECT_GT(crossing, 50);
}

TEST(FloorOutline, TurnedLeft_KeepsTheFirstCorner) {
  const PlanLine left = wound_left(l_shape);
  EXPECT_EQ(left.front(), l_shape.front());
  double area = 0;
  for (std::size_t i = 0; i < left.size(); ++i) {
    const PlanPoint &p = left[i], &q = left[(i + 1) % left.size()];
    area += (p.x_m * q.y_m - q.x_m * p.y_m) / 2;
  }
  EXPECT_NEAR(area, 3 * 1 + 1.5 * 0.9, 1e-12);
  EXPECT_EQ(wound_left(left), left);
}

}  // namespace
}  // namespace burrow

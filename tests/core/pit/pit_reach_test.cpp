// How near an excavation comes to a place: by hand, by a grid of the body itself, and never more for a greater error.

#include "burrow/pit/pit_reach.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "burrow/pit/pit_shapes.h"

namespace burrow {
namespace {

Tables tables() {
  Tables t;
  ExcavationRuleSet rules;
  rules.name = "rules";
  rules.slopes = {{ExcavationType::c, {1.5}, {6.1}, {}}};
  t.excavation.push_back(rules);
  return t;
}

PitShape launch(bool shored, PlanLine outline = {}) {
  Crossing c;
  c.site.ground = {{-20, 102}, {30, 102}};
  c.bore.launch.elevation = Length{100.05};
  c.bore.exit.station = Length{14};
  Pit& pit = c.pits.launch;
  pit.floor_length = Length{2};
  pit.floor_width = Length{1};
  pit.floor_elevation = Length{100};
  pit.floor_outline = std::move(outline);
  if (shored)
    for (PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right}) *side = shored_side();
  else
    for (PitSide* side : {&pit.sides.back, &pit.sides.left, &pit.sides.right}) side->kind.set(SideKind::sloped);
  Tool tool;
  tool.diameter = Length{0.1};
  tool.length = Length{1};
  return launch_pit_shape(c, tool, tables());
}

// Arithmetic: floor x −2 … 0, y −0.5 … 0.5, level 100, ground 102.
TEST(PitReach, Box_ByHand) {
  const PitReach box(launch(true), Length{0}, {});
  EXPECT_NEAR(box.gap({-1, 0, 99.5}), 0.5, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0, 100.5}), 0, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0.9, 101}), 0.4, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0.8, 99.6}), 0.5, 1e-12);  // 3-4-5 under its edge
  EXPECT_NEAR(box.gap({0.3, 0.9, 101}), 0.5, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0.9, std::nullopt}), 0.4, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0.8, 99.6}, {0.1, 0.4}), 0.2, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0.8, 99.6}, {0.3, 0.4}), 0, 1e-12);
}

TEST(PitReach, SumpAndWalls_ReachFarther) {
  const PitReach box(launch(true), Length{0.3}, {0.1, 0, 0.2, 0});
  EXPECT_NEAR(box.gap({-1, 0, 99.5}), 0.2, 1e-12);
  EXPECT_NEAR(box.gap({-1, 0.9, 101}), 0.2, 1e-12);
  EXPECT_NEAR(box.gap({-1, -0.9, 101}), 0.4, 1e-12);
  EXPECT_NEAR(box.gap({-2.5, 0, 101}), 0.4, 1e-12);
}

// Second route: distance to a slope 1 1/2 : 1 in closed form; the steps make it 0.05 m nearer at most.
TEST(PitReach, Slope_ByClosedForm) {
  const PitReach sloped(launch(false), Length{0}, {});
  for (const double beside : {1.0, 1.6, 2.2})
    for (const double up : {0.1, 0.4, 0.8}) {
      const double exact = (beside - 1.5 * up) / std::sqrt(1 + 1.5 * 1.5);
      if (!(exact > 0)) continue;
      const double gap = sloped.gap({-1, 0.5 + beside, 100 + up});
      EXPECT_LE(gap, exact + 1e-9) << beside << " " << up;
      EXPECT_GE(gap, exact - 0.05) << beside << " " << up;
    }
}

TEST(PitReach, Outline_NotTheRectangleRoundIt) {
  const PitReach l_shape(launch(true, {{0, -0.5}, {0, 0.5}, {1.5, 0.5}, {1.5, 2}, {3, 2}, {3, -0.5}}), Length{0}, {});
  EXPECT_EQ(l_shape.gap({-2, 1.5, 101}), 0);
  EXPECT_NEAR(l_shape.gap({-0.5, 1.5, 101}), 1.0, 1e-9);
}

TEST(PitReach, NoGround_UprightAboveTheFloor) {
  PitShape bare = launch(true);
  bare.footprint.clear();
  const PitReach box(bare, Length{0}, {});
  EXPECT_NEAR(box.gap({-1, 0.9, 101}), 0.4, 1e-12);
  EXPECT_TRUE(std::isinf(PitReach(PitShape{}, Length{0}, {}).gap({0, 0, 0})));
}

// A property: neither a greater error nor a deeper sump ever makes it look farther; the edge is never farther.
TEST(PitReach, MoreError_NeverFarther) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> at(-4, 4), error(0, 1);
  const PitShape shapes[] = {launch(true), launch(false)};
  for (int i = 0; i < 2000; ++i) {
    const PitShape& shape = shapes[i % 2];
    const PathVertex place{at(random), at(random), 100.5 + at(random) / 2};
    const PlaceError small{error(random), error(random)};
    const PlaceError large{small.in_plan_m + error(random), small.in_height_m + error(random)};
    const PitReach reach(shape, Length{0}, {}), sump(shape, Length{error(random)}, {});
    EXPECT_LE(reach.gap(place, large), reach.gap(place, small));
    EXPECT_LE(reach.gap_below_edge(place, small), reach.gap(place, small));
    EXPECT_LE(sump.gap(place, small), reach.gap(place, small));
  }
}

// Second route: in or out by going round, the way to each stretch of the edge by itself.
TEST(PitReach, BesideTheEdge_AsByEveryStretch) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> at(-5, 5);
  PitShape box = launch(false), round = launch(true), notched = launch(true), backward = launch(true);
  round.footprint = {{0, 0}, {2, -1}, {3, 0}, {3, 1}, {2, 2.5}, {0, 2}};
  notched.footprint = {{-2, -0.5}, {1, -0.5}, {1, 2}, {-0.5, 2}, {-0.5, 0.5}, {-2, 0.5}};
  backward.footprint = {round.footprint.rbegin(), round.footprint.rend()};
  for (const PitShape& shape : {box, round, notched, backward}) {
    const PitReach reach(shape, Length{0}, {});
    for (int i = 0; i < 3000; ++i) {
      const double x = at(random), y = at(random);
      bool in = false;
      double least = 1e9;
      for (std::size_t k = 0, n = shape.footprint.size(); k < n; ++k) {
        const PlanPoint &a = shape.footprint[k], &b = shape.footprint[(k + 1) % n];
        if ((a.y_m > y) != (b.y_m > y) && x < a.x_m + (b.x_m - a.x_m) * (y - a.y_m) / (b.y_m - a.y_m)) in = !in;
        const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m;
        const double t = std::clamp(((x - a.x_m) * dx + (y - a.y_m) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
        least = std::min(least, std::hypot(a.x_m + t * dx - x, a.y_m + t * dy - y));
      }
      EXPECT_NEAR(reach.gap_below_edge({x, y, shape.floor_elevation_m + 0.1}), in ? 0 : least, 1e-12) << x << " " << y;
    }
  }
}

}  // namespace
}  // namespace burrow

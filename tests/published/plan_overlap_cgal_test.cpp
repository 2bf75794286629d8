// Common area of outlines and the gap between them against an independent geometry library.
#include <CGAL/Boolean_set_operations_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Polygon_2.h>
#include <CGAL/Polygon_with_holes_2.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <random>
#include <vector>

#include "burrow/pit/plan_overlap.h"

namespace burrow {
namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Polygon = CGAL::Polygon_2<Kernel>;

Polygon theirs(const PlanLine& outline) {
  Polygon polygon;
  for (const PlanPoint& p : outline) polygon.push_back(Kernel::Point_2(p.x_m, p.y_m));
  if (polygon.is_clockwise_oriented()) polygon.reverse_orientation();
  return polygon;
}

double common_area(const PlanLine& a, const PlanLine& b) {
  std::vector<CGAL::Polygon_with_holes_2<Kernel>> parts;
  CGAL::intersection(theirs(a), theirs(b), std::back_inserter(parts));
  double area = 0;
  for (const auto& part : parts) {
    area += CGAL::to_double(part.outer_boundary().area());
    for (auto hole = part.holes_begin(); hole != part.holes_end(); ++hole) area += CGAL::to_double(hole->area());
  }
  return area;
}

double gap(const PlanLine& a, const PlanLine& b) {
  const auto holds = [](const Polygon& polygon, const PlanPoint& p) {
    return polygon.bounded_side(Kernel::Point_2(p.x_m, p.y_m)) != CGAL::ON_UNBOUNDED_SIDE;
  };
  const Polygon one = theirs(a), other = theirs(b);
  if (holds(one, b.front()) || holds(other, a.front())) return 0;
  double least = 1e300;
  for (auto i = one.edges_begin(); i != one.edges_end(); ++i)
    for (auto k = other.edges_begin(); k != other.edges_end(); ++k)
      least = std::min(least, std::sqrt(CGAL::to_double(CGAL::squared_distance(*i, *k))));
  return least;
}

/// Spikes and notches about a centre; never crosses itself.
PlanLine star(std::mt19937_64& random, double centre_x, double centre_y) {
  std::uniform_real_distribution<double> radius(0.3, 3);
  const int corners = std::uniform_int_distribution<int>(3, 11)(random);
  PlanLine outline;
  for (int i = 0; i < corners; ++i) {
    const double turn = 6.283185307179586 * i / corners, r = radius(random);
    outline.push_back({centre_x + r * std::cos(turn), centre_y + r * std::sin(turn)});
  }
  if (std::bernoulli_distribution()(random)) std::reverse(outline.begin(), outline.end());
  return outline;
}

TEST(PublishedPlanOverlap, Cgal_StarsAreaAndGap) {
  std::mt19937_64 random(20240918);
  std::uniform_real_distribution<double> place(-3.5, 3.5);
  int apart = 0, together = 0;
  for (int i = 0; i < 300; ++i) {
    const PlanLine a = star(random, 0, 0), b = star(random, place(random), place(random));
    const double area = common_area(a, b);
    EXPECT_NEAR(overlap_area(a, b), area, 1e-10) << i;
    const PlanGap ours = gap_between(a, b, true);
    EXPECT_NEAR(ours.gap_m, gap(a, b), 1e-10) << i;
    EXPECT_NEAR(std::hypot(ours.on_outline.x_m - ours.on_line.x_m, ours.on_outline.y_m - ours.on_line.y_m), ours.gap_m,
                1e-10)
        << i;
    EXPECT_LT(gap_between(a, {ours.on_outline}, false).gap_m, 1e-10) << i;
    EXPECT_LT(gap_between(b, {ours.on_line}, false).gap_m, 1e-10) << i;
    (area > 0 ? together : apart) += 1;
  }
  EXPECT_GT(apart, 30);
  EXPECT_GT(together, 100);
}

// On a coarse lattice edges lie on one another, corners touch, upright and level edges abound.
TEST(PublishedPlanOverlap, Cgal_LatticeTouchingAndLyingOn) {
  std::mt19937_64 random(7);
  std::uniform_int_distribution<int> place(-2, 2), size(1, 3);
  for (int i = 0; i < 400; ++i) {
    const auto box = [&](double x, double y) {
      const double w = size(random), h = size(random);
      // A rectangle, or what is left of it without a corner.
      if (size(random) < 3) return PlanLine{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}};
      return PlanLine{{x, y}, {x + w, y}, {x + w, y + h / 2}, {x + w / 2, y + h}, {x, y + h}};
    };
    const PlanLine a = box(place(random), place(random)), b = box(place(random), place(random));
    EXPECT_NEAR(overlap_area(a, b), common_area(a, b), 1e-12) << i;
    EXPECT_NEAR(gap_between(a, b, true).gap_m, gap(a, b), 1e-12) << i;
  }
}

}  // namespace
}  // namespace burrow

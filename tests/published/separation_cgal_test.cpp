// Least distance of segments against an independent geometry library.
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Exact_rational.h>
#include <CGAL/Simple_cartesian.h>
#include <CGAL/squared_distance_3.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "burrow/clearance/separation.h"

namespace burrow {
namespace {

using Fast = CGAL::Exact_predicates_inexact_constructions_kernel;
using Exact = CGAL::Simple_cartesian<CGAL::Exact_rational>;

template <class Kernel>
double other_library(const Point3 (&p)[4]) {
  using Segment = typename Kernel::Segment_3;
  const auto point = [](const Point3& q) { return typename Kernel::Point_3(q.x_m, q.y_m, q.z_m); };
  const bool no_first = p[0] == p[1], no_second = p[2] == p[3];
  const auto squared = [&]() -> typename Kernel::FT {
    if (no_first && no_second) return CGAL::squared_distance(point(p[0]), point(p[2]));
    if (no_first) return CGAL::squared_distance(point(p[0]), Segment(point(p[2]), point(p[3])));
    if (no_second) return CGAL::squared_distance(point(p[2]), Segment(point(p[0]), point(p[1])));
    return CGAL::squared_distance(Segment(point(p[0]), point(p[1])), Segment(point(p[2]), point(p[3])));
  };
  return std::sqrt(CGAL::to_double(squared()));
}

double ours(const Point3 (&p)[4]) {
  return std::sqrt(nearest(p[0], p[1], p[2], p[3]).squared_distance_m2);
}

TEST(PublishedSeparation, Cgal_SquaredDistance) {
  std::mt19937_64 random(20240917);
  std::uniform_real_distribution<double> place(-5, 5);
  for (int i = 0; i < 20000; ++i) {
    Point3 p[4];
    for (Point3& q : p) q = {place(random), place(random), place(random)};
    EXPECT_NEAR(ours(p), other_library<Fast>(p), 1e-10);
  }
}

// On a coarse lattice many pairs touch, are parallel, lie on one line or have no length.
TEST(PublishedSeparation, Cgal_LatticeParallelAndDegenerate) {
  std::mt19937_64 random(5);
  std::uniform_int_distribution<int> place(-1, 2);
  for (int i = 0; i < 20000; ++i) {
    Point3 p[4];
    for (Point3& q : p) q = {1.0 * place(random), 1.0 * place(random), 1.0 * place(random)};
    EXPECT_NEAR(ours(p), other_library<Fast>(p), 1e-12);
  }
}

// Nearly parallel pairs lose digits in floating point, theirs as well: against exact rational numbers.
TEST(PublishedSeparation, Cgal_NearlyParallelExact) {
  std::mt19937_64 random(6);
  std::uniform_real_distribution<double> place(-5, 5), tilt(-1, 1);
  for (int i = 0; i < 2000; ++i) {
    const double small = std::pow(10, -1 - i % 9);
    const Point3 a{place(random), place(random), place(random)};
    const Point3 d{place(random), place(random), place(random)};
    const Point3 b{a.x_m + tilt(random), a.y_m + tilt(random), a.z_m + tilt(random)};
    const Point3 p[4] = {a,
                         {a.x_m + d.x_m, a.y_m + d.y_m, a.z_m + d.z_m},
                         b,
                         {b.x_m + d.x_m + small * tilt(random), b.y_m + d.y_m + small * tilt(random),
                          b.z_m + d.z_m + small * tilt(random)}};
    EXPECT_NEAR(ours(p), other_library<Exact>(p), 1e-9);
  }
}

}  // namespace
}  // namespace burrow

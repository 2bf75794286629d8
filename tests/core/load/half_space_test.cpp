// Stress below surface loads: printed values, the shifted branch of the arctangent, quadrature as second route.

#include "burrow/load/half_space.h"

#include <gtest/gtest.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <limits>

namespace burrow::test {
namespace {

const double endless = std::numeric_limits<double>::infinity();

/// By adding up point loads over the rectangle m × n at depth 1.
double influence_by_quadrature(double m, double n) {
  using boost::math::quadrature::gauss_kronrod;
  const auto along = [&](double x) {
    return gauss_kronrod<double, 31>::integrate([&](double y) { return 1.5 / pi * std::pow(1 + x * x + y * y, -2.5); },
                                                0.0, n, 8, 1e-12);
  };
  return gauss_kronrod<double, 31>::integrate(along, 0.0, m, 8, 1e-12);
}

// Moser & Folkman, Buried Pipe Design, Table 2.6 (read), Cs = 4 I as printed: .701 .930 .336 .800 .405 .019 .540.
TEST(Newmark, MoserFolkman_Table2_6) {
  EXPECT_NEAR(4 * corner_influence(1, 1), 0.701, 0.0005);
  EXPECT_NEAR(4 * corner_influence(2, 2), 0.930, 0.0005);
  EXPECT_NEAR(4 * corner_influence(0.5, 0.5), 0.336, 0.0005);
  EXPECT_NEAR(4 * corner_influence(1, 2), 0.800, 0.0005);
  EXPECT_NEAR(4 * corner_influence(0.4, 1), 0.405, 0.0005);
  EXPECT_NEAR(4 * corner_influence(0.1, 0.1), 0.019, 0.0005);
  EXPECT_NEAR(4 * corner_influence(0.5, 2), 0.540, 0.0005);
  // The cell (.7, .9) prints .584, its transpose .574: the transpose is right.
  EXPECT_NEAR(4 * corner_influence(0.7, 0.9), 0.574, 0.0005);
  // Printed .650 at (.7, 1.5) and .440 at (.4, 1.5); the values are .655 and .442 (derived).
  EXPECT_NEAR(4 * corner_influence(0.7, 1.5), 0.655, 0.0005);
  EXPECT_NEAR(4 * corner_influence(0.4, 1.5), 0.442, 0.0005);
}

// Textbook worked example (read): I(2.67, .5) = .137.
TEST(Newmark, Textbook_InfluenceOfHalfARectangle) {
  EXPECT_NEAR(corner_influence(2.67, 0.5), 0.137, 0.0005);
}

TEST(Newmark, SecondBranch_AgainstQuadrature) {
  for (const double m : {0.4, 1.0, 2.0, 3.0, 6.0})
    for (const double n : {0.1, 1.0, 2.0, 5.0})
      EXPECT_NEAR(corner_influence(m, n), influence_by_quadrature(m, n), 1e-9) << m << " " << n;
  EXPECT_NEAR(corner_influence(2, 2), 0.23247, 5e-6);  // a plain arctangent gives −0.01753
}

TEST(Newmark, Limits_SymmetryAndTheWholePlane) {
  EXPECT_NEAR(corner_influence(endless, endless), 0.25, 1e-9);
  EXPECT_NEAR(corner_influence(0.3, 1.7), corner_influence(1.7, 0.3), 1e-16);
  EXPECT_EQ(corner_influence(0, 1), 0);
  EXPECT_EQ(corner_influence(std::nan(""), 1), 0);
  double before = 0;
  for (double m = 0.1; m < 20; m *= 1.3) {
    EXPECT_GT(corner_influence(m, 2), before);
    before = corner_influence(m, 2);
  }
}

// Standard influence values of a point load (from memory): r/z 0 .4775, 1 .0844; the others derived.
TEST(PointStress, Boussinesq_Influence) {
  const double expected[][2] = {{0, .4775},   {.25, .4103}, {.5, .2733}, {1, .0844},
                                {1.5, .0251}, {2, .0085},   {3, .0015}};
  for (const auto& [r, value] : expected) {
    EXPECT_NEAR(point_stress(Force{1}, Length{r}, Length{1})->Pa, value, 0.00005);
    EXPECT_NEAR(point_stress(Force{9}, Length{3 * r}, Length{3})->Pa, value, 0.00005);
  }
}

// Textbook worked example (read): z/R = 2 gives .285 off the chart (.2845); others derived.
TEST(CircleStress, UnderTheCentre) {
  EXPECT_NEAR(circle_stress(Pressure{1}, Length{1}, Length{2})->Pa, 0.285, 0.001);
  const double expected[][2] = {{.25, .9857}, {.5, .9106}, {1, .6464}, {1.5, .4240},
                                {2, .2845},   {3, .1462},  {4, .0869}};
  for (const auto& [z, value] : expected)
    EXPECT_NEAR(circle_stress(Pressure{1}, Length{1}, Length{z})->Pa, value, 0.00005);
}

// Usual textbook values (from memory): z/B .5 .82, 1 .55; .306 at 2 derived.
TEST(StripStress, UnderTheMiddleAndAside) {
  EXPECT_NEAR(strip_stress(Pressure{1}, Length{1}, Length{0}, Length{0.5})->Pa, 0.818, 0.0005);
  EXPECT_NEAR(strip_stress(Pressure{1}, Length{1}, Length{0}, Length{1})->Pa, 0.550, 0.0005);
  EXPECT_NEAR(strip_stress(Pressure{1}, Length{1}, Length{0}, Length{2})->Pa, 0.306, 0.0005);
  for (const double x : {-3.0, -0.4, 0.0, 0.5, 0.8, 4.0}) {  // a rectangle without end is a strip
    const RectangleLoad load{-1e5, 1e5, -1, 1, 7};
    EXPECT_NEAR(strip_stress(Pressure{7}, Length{2}, Length{x}, Length{0.9})->Pa,
                rectangle_stress(load, {0, x}, Length{0.9})->Pa, 1e-7);
  }
}

// Textbook worked example (read): 8 × 3 m at 150 kPa, point under the middle of a short side, z 3 m: I .137 for each
// half; with a half circle of R 1.5 (.285/2): 62.3 kPa.
TEST(RectangleStress, Textbook_RectangleAndHalfCircle) {
  const RectangleLoad slab{0, 8, -1.5, 1.5, 150e3};
  const double rectangle = rectangle_stress(slab, {0, 0}, Length{3})->Pa;
  EXPECT_NEAR(rectangle / 150e3, 0.273, 0.0005);
  const double circle = circle_stress(Pressure{150e3}, Length{1.5}, Length{3})->Pa / 2;
  EXPECT_NEAR(rectangle + circle, 62.3e3, 50);
}

// Textbook charts (read): 20 × 30 m, 50 kPa, z 11 m, centre 37 kPa, I .185 off the chart (36.69 by the closed form);
// 6.1 × 15.25 m, 300 kPa, z 4.58 m, centre 192 kPa, I .16 off the chart (193.4).
TEST(RectangleStress, Textbook_Charts) {
  EXPECT_NEAR(rectangle_stress({-10, 10, -15, 15, 50e3}, {0, 0}, Length{11})->Pa, 37e3, 500);
  EXPECT_NEAR(rectangle_stress({-3.05, 3.05, -7.625, 7.625, 300e3}, {0, 0}, Length{4.58})->Pa, 192e3, 2000);
}

TEST(RectangleStress, Pieces_AddUpWhereverThePointLies) {
  for (const PlanPoint p : {PlanPoint{0.3, 0.2}, PlanPoint{2, -1}, PlanPoint{-3, 5}, PlanPoint{1, 1}}) {
    const double whole = rectangle_stress({0, 2, -1, 1, 1000}, p, Length{0.7})->Pa;
    const RectangleLoad pieces[] = {{0, 0.5, -1, 0.25, 1000}, {0.5, 2, -1, 0.25, 1000}, {0, 2, 0.25, 1, 1000}};
    EXPECT_NEAR(rectangles_stress(pieces, p, Length{0.7})->Pa, whole, 1e-9);
  }
}

TEST(RectangleStress, Small_IsAPoint) {
  const RectangleLoad small{-0.005, 0.005, -0.005, 0.005, 1e8};
  EXPECT_NEAR(rectangle_stress(small, {0.6, 0.8}, Length{2})->Pa, point_stress(Force{1e4}, Length{1}, Length{2})->Pa,
              0.1);
}

TEST(RectangleStress, Rejects) {
  EXPECT_FALSE(rectangle_stress({0, 1, 0, 1, 1}, {0, 0}, Length{0}));
  EXPECT_FALSE(rectangle_stress({1, 0, 0, 1, 1}, {0, 0}, Length{1}));
  EXPECT_FALSE(rectangle_stress({0, 1, 0, std::nan(""), 1}, {0, 0}, Length{1}));
  EXPECT_FALSE(rectangle_stress({0, 1, 0, 1, std::nan("")}, {0, 0}, Length{1}));
  EXPECT_FALSE(point_stress(Force{1}, Length{-1}, Length{1}));
  EXPECT_FALSE(circle_stress(Pressure{1}, Length{std::nan("")}, Length{1}));
  EXPECT_FALSE(strip_stress(Pressure{1}, Length{1}, Length{0}, Length{-2}));
  EXPECT_FALSE(segment_share(Length{1}, Length{1}, Length{0}));
}

// Holl's integral in its own closed form (read, terms p 57), with L = 3 ft: A = Bc/2 in ft.
// A .6375, H 1.85 gives .331384; A .1, H 3 gives .0265494; A 1, H 2 gives .428292 (derived).
TEST(SegmentShare, Holl_ClosedForm) {
  const double rows[][3] = {{.6375, 1.85, .331384}, {.1, 3, .0265494}, {1, 2, .428292}};
  for (const auto& [a, h, value] : rows) {
    const double a2 = a * a, h2 = h * h, l2 = 2.25;
    const double closed = 1 - 2 / pi * std::asin(h * std::sqrt((a2 + h2 + l2) / ((a2 + h2) * (h2 + l2)))) +
                          2 / pi * (1.5 * a * h / std::sqrt(a2 + h2 + l2)) * (1 / (a2 + h2) + 1 / (h2 + l2));
    const double share = segment_share(Length{2 * a * 0.3048}, Length{3 * 0.3048}, Length{h * 0.3048})->v;
    EXPECT_NEAR(share, closed, 1e-12);
    EXPECT_NEAR(share, value, 5e-7);
  }
}

}  // namespace
}  // namespace burrow::test

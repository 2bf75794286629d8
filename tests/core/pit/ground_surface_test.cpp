#include "burrow/pit/ground_surface.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace burrow {
namespace {

const LevelLine line{{-4, 101.2}, {0, 101.9}, {3.5, 101.5}, {9, 102.3}, {20, 101.6}};

std::vector<Point3> random_points(unsigned seed, int count) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(-9, 26), y(-12, 12), z(100.5, 103);
  std::vector<Point3> points;
  for (int i = 0; i < count; ++i) {
    // On the grid of the surface, so that they are looked for where they were put.
    points.push_back({std::round(x(random) * 1e4) / 1e4, std::round(y(random) * 1e4) / 1e4, z(random)});
    if (std::abs(points.back().y_m) < 0.02) points.back().y_m = 0.5;
  }
  return points;
}

double area_of(const PlanLine& outline) {
  double area = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    area += (p.x_m * q.y_m - q.x_m * p.y_m) / 2;
  }
  return area;
}

// The whole point of it: on the bore line the ground is what was entered, beside it it goes over into that without a
// step.
TEST(GroundSurface, OnTheLine_IsTheLine) {
  for (unsigned seed = 1; seed < 9; ++seed) {
    const GroundSurface surface(line, random_points(seed, 40));
    for (double x = -40; x < 60; x += 0.173) {
      EXPECT_EQ(surface.height_at(x, 0), elevation_at(line, x));
      EXPECT_NEAR(surface.height_at(x, 1e-5), elevation_at(line, x), 1e-3) << x;
      EXPECT_NEAR(surface.height_at(x, -1e-5), elevation_at(line, x), 1e-3) << x;
    }
  }
}

TEST(GroundSurface, AtAPoint_IsThePoint) {
  const std::vector<Point3> points = random_points(3, 60);
  const GroundSurface surface(line, points);
  for (const Point3& p : points) EXPECT_NEAR(surface.height_at(p.x_m, p.y_m), p.z_m, 1e-6);
}

// Delaunay 1934, the empty circle: no corner lies inside the circle through the corners of a triangle. By trying all.
TEST(GroundSurface, Delaunay_CirclesAreEmpty) {
  const std::vector<Point3> points = random_points(5, 50);
  const GroundSurface surface(line, points);
  std::vector<PlanPoint> corners;
  for (const Point3& p : points) corners.push_back({p.x_m, p.y_m});
  for (const LevelPoint& p : line) corners.push_back({p.station_m, 0});
  const auto is_corner = [&](const PlanPoint& p) {
    return std::any_of(corners.begin(), corners.end(),
                       [&](const PlanPoint& c) { return std::hypot(c.x_m - p.x_m, c.y_m - p.y_m) < 1e-9; });
  };
  int triangles = 0;
  for (const GroundPiece& piece : surface.pieces_in({-500, 500, -500, 500})) {
    if (piece.outline.size() != 3 || !std::all_of(piece.outline.begin(), piece.outline.end(), is_corner)) continue;
    ++triangles;
    const PlanPoint &a = piece.outline[0], &b = piece.outline[1], &c = piece.outline[2];
    const double bx = b.x_m - a.x_m, by = b.y_m - a.y_m, cx = c.x_m - a.x_m, cy = c.y_m - a.y_m;
    const double d = 2 * (bx * cy - by * cx), b2 = bx * bx + by * by, c2 = cx * cx + cy * cy;
    const double ux = (cy * b2 - by * c2) / d, uy = (bx * c2 - cx * b2) / d, radius = std::hypot(ux, uy);
    const double side = (a.y_m + b.y_m + c.y_m) / 3;
    for (const PlanPoint& p : corners) {
      if (p.y_m * side < 0) continue;  // the sides know nothing of each other
      EXPECT_GT(std::hypot(p.x_m - a.x_m - ux, p.y_m - a.y_m - uy), radius - 1e-3);
    }
  }
  EXPECT_GT(triangles, 70);
}

TEST(GroundSurface, Pieces_CoverABoxOnce) {
  for (unsigned seed = 1; seed < 9; ++seed) {
    const GroundSurface surface(line, random_points(seed, static_cast<int>(seed * seed)));
    double area = 0;
    for (const GroundPiece& piece : surface.pieces_in({-60, 70, -30, 25})) {
      EXPECT_GT(area_of(piece.outline), 0);
      area += area_of(piece.outline);
    }
    EXPECT_NEAR(area, 130 * 55, 1e-3) << seed;
  }
}

// Closed form: corners of one plane make that plane.
TEST(GroundSurface, APlane_StaysOne) {
  const auto plane = [](double x, double y) { return 100 + 0.05 * x + 0.12 * y; };
  std::vector<Point3> points = random_points(8, 30);
  for (Point3& p : points) p.z_m = plane(p.x_m, p.y_m);
  for (const double x : {-30.0, 50.0})
    for (const double y : {-15.0, 15.0}) points.push_back({x, y, plane(x, y)});
  const GroundSurface surface({{-30, plane(-30, 0)}, {50, plane(50, 0)}}, points);
  for (double x = -29; x < 49; x += 1.37)
    for (double y = -14.5; y < 14.5; y += 1.13) EXPECT_NEAR(surface.height_at(x, y), plane(x, y), 1e-9);
}

// By trying: beyond the outermost points the height is that of the nearest place that is surveyed.
TEST(GroundSurface, Beyond_HeightOfTheNearestPlace) {
  const std::vector<Point3> points{{0, 9.5, 103}, {10, 11, 101}, {22, 9, 104}, {7, 3, 102}};
  const GroundSurface surface(line, points);
  const PlanPoint rim[] = {{52, 0}, {22, 9}, {10, 11}, {0, 9.5}, {-34, 0}};  // the line is held 30 m past everything
  const double height[] = {101.6, 104, 101, 103, 101.2};
  for (const PlanPoint& p : {PlanPoint{4, 12}, {9, 30}, {13.5, 14}, {24, 11}, {-10, 8}, {30, 7.5}, {60, 4}, {-50, 3}}) {
    double nearest = std::numeric_limits<double>::infinity(), expected = 0;
    for (std::size_t i = 0; i + 1 < std::size(rim); ++i)
      for (int k = 0; k <= 20000; ++k) {
        const double t = k / 20000.0;
        const double gap = std::hypot(rim[i].x_m + t * (rim[i + 1].x_m - rim[i].x_m) - p.x_m,
                                      rim[i].y_m + t * (rim[i + 1].y_m - rim[i].y_m) - p.y_m);
        if (gap >= nearest) continue;
        nearest = gap;
        expected = height[i] + t * (height[i + 1] - height[i]);
      }
    EXPECT_NEAR(surface.height_at(p.x_m, p.y_m), expected, 1e-3) << p.x_m << ' ' << p.y_m;
  }
}

TEST(GroundSurface, ASideWithoutPoints_IsLevelAcross) {
  const GroundSurface surface(line, {{3, 4, 105}, {8, 2, 100}});
  for (double x = -20; x < 40; x += 0.7)
    for (const double y : {-0.3, -2.0, -40.0}) EXPECT_NEAR(surface.height_at(x, y), elevation_at(line, x), 1e-9);
  EXPECT_TRUE(surface.surveyed());
}

TEST(GroundSurface, PointsOnTheLine_DoNotCount) {
  const GroundSurface surface(line, {{3, 0, 105}, {8, 0.004, 90}, {2, -0.009, 90}});
  EXPECT_FALSE(surface.surveyed());
  EXPECT_FALSE(surface.surveyed_near({{0, -1}, {4, -1}, {4, 1}, {0, 1}}, 10));
  EXPECT_NEAR(surface.height_at(3, 0.5), elevation_at(line, 3), 1e-9);
}

TEST(GroundSurface, TwoInOnePlace_TheFirstCounts) {
  EXPECT_NEAR(GroundSurface(line, {{3, 2, 104}, {3, 2, 99}, {6, 5, 101}}).height_at(3, 2), 104, 1e-6);
}

// A square grid: four corners on every circle.
TEST(GroundSurface, Grid_IsCoveredOnce) {
  std::vector<Point3> points;
  for (int i = -5; i < 25; ++i)
    for (int k = -6; k <= 6; ++k)
      if (k != 0) points.push_back({1.0 * i, 1.0 * k, 101 + 0.03 * i * k});
  const GroundSurface surface(line, points);
  double area = 0;
  for (const GroundPiece& piece : surface.pieces_in({-4.5, 20.5, -5.5, 5.5})) area += area_of(piece.outline);
  EXPECT_NEAR(area, 25 * 11, 1e-5);
}

TEST(GroundSurface, Along_IsTheHeightEverywhere) {
  const GroundSurface surface(line, random_points(6, 30));
  const PlanPoint from{-3, -7}, to{12, 9};
  const LevelLine ground = surface.along(from, to);
  const double length = std::hypot(15.0, 16.0);
  EXPECT_NEAR(ground.front().station_m, 0, 1e-9);
  EXPECT_NEAR(ground.back().station_m, length, 1e-9);
  for (double t = 0.001; t < 1; t += 0.0137)
    EXPECT_NEAR(elevation_at(ground, t * length), surface.height_at(from.x_m + 15 * t, from.y_m + 16 * t), 1e-5);
}

TEST(GroundSurface, MadeOf_KnowsItsOwn) {
  const std::vector<Point3> points = random_points(2, 5);
  const GroundSurface surface(line, points);
  EXPECT_TRUE(surface.made_of(line, points));
  EXPECT_FALSE(surface.made_of(line, {}));
  EXPECT_EQ(surface, GroundSurface(line, points));
  EXPECT_FALSE(surface == GroundSurface());
}

// Far coordinates and one point alone break nothing.
TEST(GroundSurface, OnePointFarOut_StillCovers) {
  const GroundSurface surface({{250000, 40}}, {{250003, 2, 41}, {-90000, -50000, 12}});
  double area = 0;
  for (const GroundPiece& piece : surface.pieces_in({249990, 250010, -5, 5})) area += area_of(piece.outline);
  EXPECT_NEAR(area, 200, 1e-3);
}

}  // namespace
}  // namespace burrow

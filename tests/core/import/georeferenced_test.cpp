// Local frame to longitude and latitude: against the ellipsoid itself, by quadrature and radii of curvature.
// GRS 80: a = 6378137 m, 1/f = 298.257222101 (from memory); UTM: scale 0.9996, false easting 500 km (from memory).

#include "burrow/import/longitude_latitude.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

constexpr double degree = 3.14159265358979323846 / 180;
constexpr double a_m = 6378137.0;
constexpr double f = 1 / 298.257222101;
constexpr double e2 = f * (2 - f);

double meridian_radius(double latitude) {
  const double s = std::sin(latitude);
  return a_m * (1 - e2) / std::pow(1 - e2 * s * s, 1.5);
}
double parallel_radius(double latitude) {
  const double s = std::sin(latitude);
  return a_m / std::sqrt(1 - e2 * s * s) * std::cos(latitude);
}

/// Arc from the equator by Simpson's rule.
double meridian_arc(double latitude) {
  const int n = 2000;
  double sum = meridian_radius(0) + meridian_radius(latitude);
  for (int i = 1; i < n; ++i) sum += (i % 2 ? 4 : 2) * meridian_radius(latitude * i / n);
  return sum * latitude / n / 3;
}

Georeference at(double east, double north, double azimuth) {
  Georeference geo;
  geo.crs = "EPSG:25832";
  geo.origin = {east, north};
  geo.azimuth.set(Angle{azimuth});
  return geo;
}

// On the central meridian the northing is the arc times the scale, and grid north is north.
TEST(Georeferenced, CentralMeridian_ArcByQuadrature) {
  const double north = 5400000;
  const auto placed = longitude_latitude(at(500000, north, 0), {{0, 0}, {100, 0}, {0, 100}});
  ASSERT_TRUE(placed) << placed.error().english();
  EXPECT_NEAR((*placed)[0].x_m, 9, 1e-9);
  const double latitude = (*placed)[0].y_m * degree;
  EXPECT_NEAR(meridian_arc(latitude) * 0.9996, north, 0.001);
  // A hundred metres on the ground along the line, which runs north, and to its left, which is west.
  EXPECT_NEAR(((*placed)[1].y_m * degree - latitude) * meridian_radius(latitude), 100, 0.002);
  EXPECT_NEAR((*placed)[1].x_m, 9, 1e-9);
  EXPECT_NEAR(((*placed)[2].x_m - 9) * degree * parallel_radius(latitude), -100, 0.002);
}

// Far from it grid north leans by γ = Δλ sin φ (to first order): a line along grid north leans likewise, and its length
// is that on the ground.
TEST(Georeferenced, AwayFromTheMeridian_ConvergenceAndTrueLength) {
  const auto placed = longitude_latitude(at(700000, 5400000, 0), {{0, 0}, {40, 0}});
  ASSERT_TRUE(placed) << placed.error().english();
  const double latitude = (*placed)[0].y_m * degree;
  const double north = ((*placed)[1].y_m - (*placed)[0].y_m) * degree * meridian_radius(latitude);
  const double east = ((*placed)[1].x_m - (*placed)[0].x_m) * degree * parallel_radius(latitude);
  EXPECT_NEAR(std::hypot(north, east), 40, 0.001);
  const double lean = ((*placed)[0].x_m - 9) * degree * std::sin(latitude);
  EXPECT_NEAR(std::atan2(east, north), lean, 2e-4);
}

TEST(Georeferenced, UnknownSystemOrDegrees_AreRefused) {
  Georeference geo = at(0, 0, 0);
  geo.crs = "EPSG:0";
  EXPECT_FALSE(longitude_latitude(geo, {{0, 0}}));
  geo.crs = "EPSG:4326";
  geo.origin = {9, 48};
  EXPECT_FALSE(longitude_latitude(geo, {{0, 0}}));
}

}  // namespace
}  // namespace burrow

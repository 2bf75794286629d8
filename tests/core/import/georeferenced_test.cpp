// Local frame to longitude and latitude: against the ellipsoid itself, by quadrature and radii of curvature.
// GRS 80: a = 6378137 m, 1/f = 298.257222101 (from memory); UTM: scale 0.9996, false easting 500 km (from memory).

#include "burrow/import/longitude_latitude.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>

#include "burrow/import/geopackage.h"
#include "burrow/import/read_file.h"

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

// In its own system: the launch stands at the origin, lengths are those on the ground, so that on the grid they are
// shorter by its scale (0.9996 on the central meridian).
TEST(Georeferenced, Map_OriginAndScale) {
  const auto placed = map_coordinates(at(500000, 5400000, 90 * degree), {{0, 0}, {100, 0}, {0, 100}});
  ASSERT_TRUE(placed) << placed.error().english();
  EXPECT_NEAR((*placed)[0].x_m, 500000, 1e-4);
  EXPECT_NEAR((*placed)[0].y_m, 5400000, 1e-4);
  EXPECT_NEAR((*placed)[1].x_m - 500000, 99.96, 1e-3);
  EXPECT_NEAR((*placed)[2].y_m - 5400000, 99.96, 1e-3) << "left of a line to the east is north";
  Georeference plain = at(1000, 2000, 30 * degree);
  plain.crs.clear();
  const auto grid = map_coordinates(plain, {{10, 0}, {0, 10}});
  ASSERT_TRUE(grid);
  EXPECT_NEAR((*grid)[0].x_m, 1000 + 10 * std::sin(30 * degree), 1e-9);
  EXPECT_NEAR((*grid)[0].y_m, 2000 + 10 * std::cos(30 * degree), 1e-9);
  EXPECT_NEAR((*grid)[1].x_m, 1000 - 10 * std::cos(30 * degree), 1e-9);
}

// Read back by the importer: the same places, heights and system.
TEST(Georeferenced, GeoPackage_ReadBack) {
  const std::string features =
      R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"what":"bore","length_m":10.5,)"
      R"("elevation_m":[98.5,98.25]},"geometry":{"type":"LineString","coordinates":[[500000,5400000],[500010,5400000]]}},)"
      R"({"type":"Feature","properties":{"what":"utility","name":"main","elevation_m":[97,null]},"geometry":{"type":)"
      R"("LineString","coordinates":[[500005,5399990],[500005,5400010]]}},{"type":"Feature","properties":{"what":)"
      R"("launch-pit"},"geometry":{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}}]})";
  const auto bytes = geopackage(features, at(500000, 5400000, 0));
  ASSERT_TRUE(bytes) << bytes.error().english();
  const std::string path = testing::TempDir() + "burrow-export.gpkg";
  std::ofstream(path, std::ios::binary) << *bytes;
  const auto found = read_foreign_file(path, {});
  ASSERT_TRUE(found) << found.error().english();
  std::filesystem::remove(path);
  EXPECT_EQ(found->frame.crs, "EPSG:25832");
  ASSERT_EQ(found->features.size(), 3u);
  EXPECT_EQ(found->vertices.at(0), (FoundVertex{500000, 5400000, 98.5}));
  EXPECT_EQ(found->vertices.at(1).z_m, 98.25);
  EXPECT_FALSE(found->vertices.at(2).z_m) << "one height of the two is not known";
  Georeference nowhere = at(0, 0, 0);
  nowhere.crs.clear();
  EXPECT_FALSE(geopackage(features, nowhere));
  EXPECT_FALSE(geopackage("{}", at(0, 0, 0)));
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

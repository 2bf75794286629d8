// Files of different coordinate systems in one picture.

#include "burrow/import/found_in_frame.h"

#include <gmock/gmock.h>

#include <cmath>

#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

FoundFrame system(const char* crs, bool geographic = false) {
  FoundFrame frame;
  frame.crs = crs;
  frame.geographic = geographic;
  return frame;
}

Found line_of(const FoundFrame& frame, const std::vector<FoundVertex>& vertices) {
  Found found;
  found.frame = frame;
  found.layers = {"a"};
  found.vertices = vertices;
  FoundFeature line;
  line.shape = Shape::line;
  line.count = vertices.size();
  found.features = {line};
  return found;
}

// On the central meridian of a UTM zone the easting is 500 000 and the northing 0.9996 of the meridian arc; one at
// 45 degrees is 4984944.378 m long on GRS 80 (Snyder 1987, USGS PP 1395, equations 3-21 and 8-9 with the series to e⁶).
TEST(SeenIn, Snyder1987_CentralMeridian) {
  constexpr double arc_45_m = 4984944.378;
  const Found degrees = line_of(system("EPSG:4258", true), {{9, 45, 12.5}, {9.001, 45, std::nullopt}});
  const auto seen = found_in_frame(degrees, system("EPSG:25832"), {500000, 4983000});
  ASSERT_TRUE(seen) << seen.error().english();
  ASSERT_TRUE(*seen);
  EXPECT_NEAR((*seen)->vertices[0].x_m, 500000, 1e-3);
  EXPECT_NEAR((*seen)->vertices[0].y_m, 0.9996 * arc_45_m, 2e-3);
  EXPECT_EQ((*seen)->vertices[0].z_m, 12.5);
  EXPECT_EQ((*seen)->frame.crs, "EPSG:25832");
  // A thousandth of a degree of longitude: N cos φ Δλ k, N = a/√(1 − e² sin² φ).
  const double a = 6378137, e2 = 0.00669438002290, phi = std::acos(-1.0) / 4;
  const double east = 0.9996 * a / std::sqrt(1 - e2 * 0.5) * std::cos(phi) * 0.001 * std::acos(-1.0) / 180;
  EXPECT_NEAR((*seen)->vertices[1].x_m - 500000, east, 1e-3);
}

// Of many points a person who closes the screen does not wait for the last.
TEST(SeenIn, Stopped_AnswersSoon) {
  const Found found = line_of(system("EPSG:25832"), std::vector<FoundVertex>(250'000, {500100, 5540000, 1.0}));
  int asked = 0;
  const auto stopped =
      found_in_frame(found, found.frame, 1, system("EPSG:4258", true), {9, 50}, [&] { return ++asked < 2; });
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().code, stopped_by_person);
  EXPECT_EQ(asked, 2);
  EXPECT_TRUE(found_in_frame(found, found.frame, 1, system("EPSG:4258", true), {9, 50}, [] { return true; }));
}

TEST(SeenIn, ThereAndBack_SurfacesAndGrids) {
  Found found = line_of(system("EPSG:25832"), {{500100, 5540000, 1.0}, {500200, 5540100, 2.0}});
  found.surfaces.push_back({0, {{500100, 5540000, 7}, {500150, 5540000, 8}, {500150, 5540050, 9}}, {{0, 1, 2}}});
  FoundRaster grid;
  grid.columns = 40;
  grid.rows = 20;
  grid.to_plan = {500000, 2, 0, 5540100, 0, -2};
  found.rasters.push_back(grid);
  const auto there = found_in_frame(found, system("EPSG:4258", true), {9, 50});
  ASSERT_TRUE(there && *there);
  const auto back = found_in_frame(**there, found.frame, {500100, 5540000});
  ASSERT_TRUE(back && *back);
  for (std::size_t i = 0; i < found.vertices.size(); ++i) {
    EXPECT_NEAR((*back)->vertices[i].x_m, found.vertices[i].x_m, 1e-4);
    EXPECT_NEAR((*back)->vertices[i].y_m, found.vertices[i].y_m, 1e-4);
  }
  EXPECT_EQ((*back)->surfaces[0].points[1].z_m, 8);
  EXPECT_NEAR((*back)->surfaces[0].points[2].x_m, 500150, 1e-4);
  EXPECT_EQ((*back)->surfaces[0].faces, found.surfaces[0].faces);
  for (std::size_t i = 0; i < 6; ++i) EXPECT_NEAR((*back)->rasters[0].to_plan[i], grid.to_plan[i], 1e-3) << i;
}

TEST(SeenIn, AsItIs_WhereBothAreOneOrOneIsSilent) {
  const Found found = line_of(system("EPSG:25832"), {{500100, 5540000, 1.0}, {500200, 5540100, 2.0}});
  for (const char* crs : {"EPSG:25832", ""}) {
    const auto seen = found_in_frame(found, system(crs), {0, 0});
    ASSERT_TRUE(seen);
    EXPECT_FALSE(*seen);
  }
  const auto silent = found_in_frame(line_of({}, found.vertices), system("EPSG:25832"), {0, 0});
  ASSERT_TRUE(silent);
  EXPECT_FALSE(*silent);
}

TEST(SeenIn, NoPlace_LeftOutAndUnknownSystemRefused) {
  // A pole's other side has no place in a transverse Mercator of zone 32.
  Found found = line_of(system("EPSG:4258", true), {{9, 50, 1.0}, {9, 50.001, 1.0}});
  found.vertices.push_back({std::nan(""), 0, 1.0});
  found.vertices.push_back({9, 50, 1.0});
  FoundFeature lost = found.features[0];
  lost.first = 2;
  found.features.push_back(lost);
  const auto seen = found_in_frame(found, system("EPSG:25832"), {500000, 5540000});
  ASSERT_TRUE(seen && *seen);
  EXPECT_EQ((*seen)->features.size(), 1u);
  EXPECT_EQ((*seen)->features[0].first, 0u);
  const auto unknown = found_in_frame(found, system("EPSG:1"), {0, 0});
  ASSERT_FALSE(unknown);
  EXPECT_THAT(unknown.error().found.english(), HasSubstr("EPSG:1"));
}

}  // namespace
}  // namespace burrow::test

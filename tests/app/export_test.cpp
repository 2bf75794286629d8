// burrowline export: the ending decides, wrong words are refused, nothing is written then.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/command_run.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

TEST(ExportCommand, EachEnding_WritesItsFormat) {
  const Folder folder;
  for (const char* name : {"house-service", "sixty-utilities"}) {
    ASSERT_EQ(run("export", {sample(name), "-o", folder.path("x.dxf")}).code, 0);
    EXPECT_THAT(folder.read("x.dxf"), StartsWith("  0\r\nSECTION"));
    ASSERT_EQ(run("export", {sample(name), "-o", folder.path("x.CSV")}).code, 0);
    EXPECT_THAT(folder.read("x.CSV"), StartsWith("s_m,station_m,"));
    ASSERT_EQ(run("export", {sample(name), "-o", folder.path("x.csv"), "--what", "marks"}).code, 0);
    EXPECT_THAT(folder.read("x.csv"), StartsWith("hose_m,"));
    ASSERT_EQ(run("export", {sample(name), "-o", folder.path("x.csv"), "--what", "findings"}).code, 0);
    EXPECT_THAT(folder.read("x.csv"), StartsWith("code,"));
    ASSERT_EQ(run("export", {sample(name), "-o", folder.path("x.svg")}).code, 0);
    EXPECT_THAT(folder.read("x.svg"), HasSubstr("width=\"420.00000mm\""));
  }
}

TEST(ExportCommand, GeoJson_OnlyWithAPlaceOnTheMap) {
  const Folder folder;
  const std::string out = folder.path("x.geojson");
  const Ran without = run("export", {sample("house-service"), "-o", out});
  EXPECT_EQ(without.code, 2);
  EXPECT_THAT(without.err, HasSubstr("/site/georeference"));
  EXPECT_FALSE(std::filesystem::exists(out));
  nlohmann::json crossing = nlohmann::json::parse(std::ifstream(sample("house-service")));
  crossing["site"]["georeference"] = {{"crs", "EPSG:25832"}, {"origin", {691000, 5334000}}, {"azimuth_rad", 1.2}};
  folder.write("x.crossing", crossing.dump());
  const Ran with = run("export", {folder.path("x.crossing"), "-o", out});
  ASSERT_EQ(with.code, 0) << with.err;
  const nlohmann::json map = nlohmann::json::parse(folder.read("x.geojson"));
  const auto& first = map["features"][0]["geometry"]["coordinates"][0];
  EXPECT_NEAR(first[0].get<double>(), 11.57, 0.05);  // Munich, by any atlas
  EXPECT_NEAR(first[1].get<double>(), 48.13, 0.05);
}

// In the system of the crossing: GeoPackage, and the plan alone as a drawing.
TEST(ExportCommand, OnTheMap_GeoPackageAndDrawing) {
  const Folder folder;
  nlohmann::json crossing = nlohmann::json::parse(std::ifstream(sample("house-service")));
  crossing["site"]["georeference"] = {{"crs", "EPSG:25832"}, {"origin", {691000, 5334000}}, {"azimuth_rad", 1.2}};
  folder.write("x.crossing", crossing.dump());
  const Ran package = run("export", {folder.path("x.crossing"), "-o", folder.path("x.gpkg")});
  ASSERT_EQ(package.code, 0) << package.err;
  EXPECT_THAT(folder.read("x.gpkg"), StartsWith("SQLite format 3"));
  const Ran drawing = run("export", {folder.path("x.crossing"), "-o", folder.path("x.dxf"), "--map"});
  ASSERT_EQ(drawing.code, 0) << drawing.err;
  EXPECT_THAT(folder.read("x.dxf"), HasSubstr("MAP-BORE"));
  EXPECT_THAT(folder.read("x.dxf"), HasSubstr("69100"));
  EXPECT_EQ(run("export", {sample("house-service"), "-o", folder.path("y.gpkg")}).code, 2) << "no place on the map";
  EXPECT_EQ(run("export", {sample("house-service"), "-o", folder.path("y.dxf"), "--map"}).code, 2);
  EXPECT_EQ(run("export", {folder.path("x.crossing"), "-o", folder.path("y.csv"), "--map"}).code, 2);
  EXPECT_FALSE(std::filesystem::exists(folder.path("y.gpkg")) || std::filesystem::exists(folder.path("y.dxf")));
}

TEST(ExportCommand, WrongWords_TwoAndNothingWritten) {
  const Folder folder;
  const std::string out = folder.path("x.csv");
  EXPECT_EQ(run("export", {sample("first-lesson")}).code, 2);
  EXPECT_EQ(run("export", {"-o", out}).code, 2);
  const Ran ending = run("export", {sample("first-lesson"), "-o", folder.path("x.xyz")});
  EXPECT_EQ(ending.code, 2);
  EXPECT_THAT(ending.err, HasSubstr(".geojson"));
  EXPECT_EQ(run("export", {sample("first-lesson"), "-o", folder.path("csv")}).code, 2);
  const Ran what = run("export", {sample("first-lesson"), "-o", out, "--what", "everything"});
  EXPECT_EQ(what.code, 2);
  EXPECT_THAT(what.err, HasSubstr("path, marks, findings, working"));
  EXPECT_EQ(run("export", {sample("first-lesson"), "-o", folder.path("x.dxf"), "--what", "path"}).code, 2);
  EXPECT_EQ(run("export", {"/nowhere.crossing", "-o", out}).code, 2);
  EXPECT_FALSE(std::filesystem::exists(out));
  EXPECT_EQ(run("export", {sample("first-lesson"), "-o", "/nowhere/at/all.csv"}).code, 2);
}

}  // namespace
}  // namespace burrow::test

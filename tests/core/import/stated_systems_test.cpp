// Coordinate systems that a person states, and files that cannot be brought together.

#include <gmock/gmock.h>

#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class StatedSystems : public WithFolder {
 protected:
  ImportFile file(const std::string& name) const {
    return import_file(std::make_shared<const Found>(read(name)), built_in_meanings());
  }
  static ImportFile in(ImportFile file, const std::string& crs) {
    Result<ImportFile> placed = in_system(std::move(file), crs);
    EXPECT_TRUE(placed) << placed.error().english();
    return placed ? *placed : ImportFile{};
  }
};

// The trap: mains in degrees beside a survey that says no system vanished, and the import said it was done.
TEST_F(StatedSystems, OneStatesItsSystemAndTheOtherDoesNot_IsAnError) {
  write(
      "mains.geojson",
      R"({"type":"Feature","properties":{"layer":"gas"},"geometry":{"type":"LineString","coordinates":[[9,50],[9.0001,50]]}})");
  write("survey.csv", "1,5538600,500000,100,GND\n2,5538610,500000,100,GND\n3,5538600,500020,100,GND\n");
  const auto wrong = into_crossing({file("survey.csv"), file("mains.geojson")}, {{500000, 5538600}, {500012, 5538600}});
  ASSERT_FALSE(wrong);
  EXPECT_THAT(wrong.error().place.english(), HasSubstr("survey.csv"));
  EXPECT_THAT(wrong.error().found.english(), HasSubstr("no coordinate system"));
  EXPECT_FALSE(into_crossing({file("mains.geojson"), file("survey.csv")}, {{9, 50}, {9.0001, 50}}));
  // Stated: 9° east lies on the central meridian of zone 32, at easting 500 000 (definition of the zone).
  const double north = 5538630.7;  // of 50° north, by 0.9996 of the meridian arc 5540847.04 m (GRS 80, Snyder 3-21)
  const ImportFile survey = in(file("survey.csv"), "EPSG:25832");
  EXPECT_EQ(frame_of(survey).crs, "EPSG:25832");
  const auto good = into_crossing({survey, file("mains.geojson")}, {{500000, north - 5}, {500000, north + 5}});
  ASSERT_TRUE(good) << good.error().english();
  ASSERT_EQ(good->utilities.size(), 1u);
  EXPECT_EQ(good->georeference.crs, "EPSG:25832");
  EXPECT_NEAR(good->utilities[0].path[0].x_m, 5, 0.2);
}

TEST_F(StatedSystems, PlansThatLieApart_AreAnError) {
  write("a.csv", "1,100,100,5,GND\n2,110,100,5,GND\n3,100,120,5,GND\n");
  write("b.csv", "1,5540000,500000,5,GND\n2,5540010,500000,5,GND\n");
  const auto wrong = into_crossing({file("a.csv"), file("b.csv")}, {{100, 100}, {112, 100}});
  ASSERT_FALSE(wrong);
  EXPECT_THAT(wrong.error().found.english(), HasSubstr("neither says its coordinate system"));
}

TEST_F(StatedSystems, AWholeFileThatLiesFar_IsSaid) {
  write("a.csv", "1,100,100,5,GND\n2,110,100,5,GND\n3,100,120,5,GND\n");
  write("b.dxf", drawing("6", drawing_line("GAS", 400, 400, 0, 410, 410, 0)));
  const auto imported = into_crossing({file("a.csv"), file("b.dxf")}, {{100, 100}, {112, 100}});
  ASSERT_TRUE(imported);
  EXPECT_TRUE(std::any_of(imported->left_out.begin(), imported->left_out.end(), [](const LeftOut& l) {
    return l.matters && l.reason.find("nothing of it lies within") != std::string::npos;
  }));
}

// The trap: with a wrong zone all mains vanished, and the import said it was done.
TEST_F(StatedSystems, AWrongSystem_IsAnError) {
  write("survey.csv", "1,5538630,500000,100,GND\n2,5538640,500000,100,GND\n3,5538630,500020,100,GND\n");
  write("mains.csv", "1,5538630,500005,99,GAS\n2,5538640,500005,99,GAS\n");
  const CrossingLine line{{500000, 5538630}, {500012, 5538630}};
  EXPECT_TRUE(into_crossing({in(file("survey.csv"), "EPSG:25832"), in(file("mains.csv"), "EPSG:25832")}, line));
  const auto wrong = into_crossing({in(file("survey.csv"), "EPSG:25832"), in(file("mains.csv"), "EPSG:25833")}, line);
  ASSERT_FALSE(wrong);
  EXPECT_THAT(wrong.error().place.english(), HasSubstr("mains.csv"));
  EXPECT_THAT(wrong.error().found.english(), HasSubstr("from the crossing line"));
}

// A drawing in millimetres on a grid of metres.
TEST_F(StatedSystems, UnitOfTheDrawing_IsTurnedIntoThatOfTheSystem) {
  write("a.dxf", drawing("4", drawing_line("GAS", 500005000, 5539995000, 0, 500005000, 5540005000, 0)));
  const ImportFile drawn = in(file("a.dxf"), "EPSG:25832");
  const auto imported = into_crossing({drawn}, {{500000000, 5540000000}, {500012000, 5540000000}});
  ASSERT_TRUE(imported) << imported.error().english();
  EXPECT_NEAR(imported->length.m, 12 / 0.9996, 1e-4);
  ASSERT_EQ(imported->utilities.size(), 1u);
  EXPECT_NEAR(imported->utilities[0].path[0].x_m, 5 / 0.9996, 1e-4);
}

TEST_F(StatedSystems, Refused) {
  write("a.csv", "1,100,100,5,GND\n");
  for (const char* crs :
       {"", "EPSG:", "EPSG:999999", "EPSG:4979000", "+proj=utm +zone=32", "EPSG:25832;x", "/etc/passwd"}) {
    const auto placed = in_system(file("a.csv"), crs);
    ASSERT_FALSE(placed) << crs;
    EXPECT_THAT(placed.error().expected.english(), HasSubstr("EPSG:25832"));
  }
}

// One that the register does not know may name files: nothing is made of it.
TEST_F(StatedSystems, Layers_InASystemOfTheirOwnAreLeftOut) {
  write_lines("GPKG", path("a.gpkg"), 25832, {{{500010, 5540020, 1}, {500020, 5540030, 1}}});
  GDALDatasetH data = GDALOpenEx(path("a.gpkg").c_str(), GDAL_OF_VECTOR | GDAL_OF_UPDATE, nullptr, nullptr, nullptr);
  ASSERT_NE(data, nullptr);
  OGRSpatialReferenceH srs = OSRNewSpatialReference(nullptr);
  OSRImportFromProj4(srs, "+proj=tmerc +lon_0=10.5 +k=1 +x_0=12345 +ellps=GRS80 +units=m");
  OGRLayerH layer = GDALDatasetCreateLayer(data, "more", srs, wkbLineString, nullptr);
  OGRFeatureH feature = OGR_F_Create(OGR_L_GetLayerDefn(layer));
  OGRGeometryH line = OGR_G_CreateGeometry(wkbLineString);
  OGR_G_AddPoint_2D(line, 70000, 5540000);
  OGR_G_AddPoint_2D(line, 70010, 5540000);
  OGR_F_SetGeometryDirectly(feature, line);
  EXPECT_EQ(OGR_L_CreateFeature(layer, feature), OGRERR_NONE);
  OGR_F_Destroy(feature);
  OSRDestroySpatialReference(srs);
  GDALClose(data);
  const Found found = read("a.gpkg");
  EXPECT_EQ(found.features.size(), 1u);
  ASSERT_FALSE(found.left_out.empty());
  EXPECT_THAT(found.left_out[0].reason, HasSubstr("another coordinate system"));
}

}  // namespace
}  // namespace burrow::test

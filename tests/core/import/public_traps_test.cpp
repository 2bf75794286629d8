// Traps that files of others held, each in a small file of our own: what an independent reader of the same file says
// is the second route (a drawing library of another language, the database read by hand, GDAL's own tools).

#include <gmock/gmock.h>

#include <cmath>

#include "burrow/import/meanings.h"
#include "burrow/import/survey_csv.h"
#include "support/kinds_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::UnorderedElementsAre;

class PublicTraps : public WithFolder {
 protected:
  static std::string insert_on(const std::string& layer, const std::string& name, double x, double y) {
    return pair(0, "INSERT") + pair(8, layer) + pair(2, name) + pair(10, std::to_string(x)) +
           pair(20, std::to_string(y));
  }
  static double length(const Found& found) {
    double sum = 0;
    for (const FoundFeature& f : found.features)
      for (std::size_t i = f.first + 1; i < f.first + f.count; ++i)
        sum += std::hypot(found.vertices[i].x_m - found.vertices[i - 1].x_m,
                          found.vertices[i].y_m - found.vertices[i - 1].y_m);
    return sum;
  }
  static std::string arc(double radius) {
    return pair(0, "ARC") + pair(8, "GAS") + pair(10, "0") + pair(20, "0") + pair(40, std::to_string(radius)) +
           pair(50, "0") + pair(51, "90");
  }
};

// A gas main in a block that was put on the layer of the kerbs was a road edge, and judged by nobody.
// What a drawing says: lines of layer 0 in a block take the layer of the insert, all others keep their own.
TEST_F(PublicTraps, LinesInBlocks_KeepTheirLayers) {
  const std::string inside = drawing_line("GAS", 0, 0, 0, 10, 0, 0) + drawing_line("WATER", 0, 1, 0, 10, 1, 0) +
                             drawing_line("0", 0, 2, 0, 10, 2, 0) + insert_on("WATER", "INNER", 0, 0);
  write("a.dxf", drawing("6", insert_on("KERB", "PLAN", 100, 200),
                         block("INNER", drawing_line("0", 0, 3, 0, 10, 3, 0)) + block("PLAN", inside)));
  const Found found = read("a.dxf");
  std::vector<std::pair<std::string, double>> lines;
  for (const FoundFeature& f : found.features) lines.emplace_back(found.layers[f.layer], found.vertices[f.first].y_m);
  EXPECT_THAT(lines, UnorderedElementsAre(std::pair{"GAS", 200.0}, std::pair{"WATER", 201.0}, std::pair{"KERB", 202.0},
                                          std::pair{"WATER", 203.0}));
  const ImportFile file = import_file(std::make_shared<const Found>(found), built_in_meanings());
  for (std::size_t i = 0; i < found.layers.size(); ++i)
    if (found.layers[i] == "GAS") {
      EXPECT_EQ(file.layers[i].meaning, Meaning::gas);
    }
}

// A library that many programs write by ends the header after two variables; the unit stands behind that end.
TEST_F(PublicTraps, UnitBehindTheEndOfTheHeader) {
  write("a.dxf", pair(0, "SECTION") + pair(2, "HEADER") + pair(9, "$HANDSEED") + pair(5, "FFFF") + pair(0, "ENDSEC") +
                     pair(9, "$INSUNITS") + pair(70, "4") + pair(9, "$DIMSTYLE") + pair(2, "STANDARD") +
                     pair(0, "ENDSEC") + pair(0, "SECTION") + pair(2, "ENTITIES") +
                     drawing_line("GAS", 0, 0, 0, 5000, 0, 0) + pair(0, "ENDSEC") + pair(0, "EOF"));
  EXPECT_EQ(read("a.dxf").frame.unit, FileUnit::millimetre);
}

// Drawn in metres, and stated as millimetres: an arc cut as finely as millimetres ask for was 0.3 m off, and a
// manhole of 1 m vanished. Once somebody says "metres" it is read as metres ask for.
TEST_F(PublicTraps, CurvesOfADrawingWithAnotherUnit) {
  write("a.dxf",
        drawing("4", arc(500) + pair(0, "CIRCLE") + pair(8, "MH") + pair(10, "20") + pair(20, "0") + pair(40, "1")));
  ReadOptions options;
  options.unit = FileUnit::metre;
  const double whole = 500 * std::acos(-1.0) / 2 + 2 * std::acos(-1.0);
  EXPECT_GT(std::abs(length(read("a.dxf")) - whole), 0.05);
  const Found found = read("a.dxf", options);
  EXPECT_NEAR(length(found), whole, 0.01);
  double off = 0;
  for (std::size_t i = 1; i < found.features.at(0).count; ++i) {
    const FoundVertex &a = found.vertices[i - 1], &b = found.vertices[i];
    off = std::max(off, std::abs(std::hypot((a.x_m + b.x_m) / 2, (a.y_m + b.y_m) / 2) - 500));
  }
  EXPECT_LT(off, 0.010);
  EXPECT_EQ(found.frame.unit, FileUnit::millimetre) << "what the file states stays what it states";
}

// Read, and said to be left out: one of the two is no truth. The mesh by rows and columns is the other way round.
TEST_F(PublicTraps, KindsThatAreReadOrSaidToBeLeftOut) {
  std::string corners;
  for (const auto& [code, value] :
       {std::pair{10, "0"}, {20, "0"}, {11, "10"}, {21, "0"}, {12, "0"}, {22, "1"}, {13, "10"}, {23, "1"}})
    corners += pair(code, value);
  write("a.dxf", drawing("6", pair(0, "TRACE") + pair(8, "GAS") + corners));
  EXPECT_EQ(read("a.dxf").features.size(), 1u);
  EXPECT_TRUE(read("a.dxf").left_out.empty());
  std::string mesh =
      pair(0, "POLYLINE") + pair(8, "EG") + pair(66, "1") + pair(70, "16") + pair(71, "2") + pair(72, "2");
  for (int i = 0; i < 4; ++i)
    mesh += pair(0, "VERTEX") + pair(8, "EG") + pair(10, std::to_string(i / 2)) + pair(20, std::to_string(i % 2)) +
            pair(30, "100") + pair(70, "64");
  write("b.dxf", drawing("6", drawing_line("GAS", 0, 0, 1, 5, 5, 1) + mesh + pair(0, "SEQEND")));
  const Found found = read("b.dxf");
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_THAT(found.left_out[0].text, HasSubstr("mesh by rows and columns"));
}

// The lines of the base plan stand in another drawing, and nothing of it is here: that must be said.
TEST_F(PublicTraps, DrawingThatRefersToAnother) {
  const std::string outside = pair(0, "BLOCK") + pair(8, "0") + pair(2, "BASE-PLAN") + pair(70, "4") + pair(10, "0") +
                              pair(20, "0") + pair(30, "0") + pair(3, "BASE-PLAN") + pair(1, "base.dxf") +
                              pair(0, "ENDBLK");
  const std::string unused = pair(0, "BLOCK") + pair(8, "0") + pair(2, "UNUSED") + pair(70, "4") + pair(10, "0") +
                             pair(20, "0") + pair(30, "0") + pair(0, "ENDBLK");
  write("a.dxf", drawing("6", drawing_line("KERB", 0, 0, 0, 5, 0, 0) + insert_on("0", "BASE-PLAN", 0, 0),
                         outside + unused + block("PLAIN", drawing_line("0", 0, 0, 0, 1, 0, 0))));
  const Found found = read("a.dxf");
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_EQ(found.left_out[0].text, "BASE-PLAN");
  EXPECT_TRUE(found.left_out[0].matters);
}

// "Main" of the gas pipes and "main" of the water pipes were one layer: who said "water" of it had a live gas main as
// water. What a table is called tells more than the type in it.
TEST_F(PublicTraps, TypesOfTwoTables_AreTwoLayers) {
  const auto features = [](const char* type) {
    return std::string(R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"TYPE":")") + type +
           R"("},"geometry":{"type":"LineString","coordinates":[[9,50],[9.001,50]]}}]})";
  };
  write("gas_pipes.geojson", features("Main"));
  write("water_pipes.geojson", features("Main"));
  zip(path("both.zip"), {{"gas_pipes.geojson", bytes_in(path("gas_pipes.geojson"))},
                         {"water_pipes.geojson", bytes_in(path("water_pipes.geojson"))}});
  const Found found = read("both.zip");
  EXPECT_THAT(found.layers, ElementsAre("gas_pipes: Main", "water_pipes: Main"));
  const ImportFile file = import_file(std::make_shared<const Found>(found), built_in_meanings());
  EXPECT_EQ(file.layers.at(0).meaning, Meaning::gas);
  EXPECT_EQ(file.layers.at(1).meaning, Meaning::water);
}

/// A layer of one line in that system, in a file that is there or is not yet.
void add_layer(const std::string& file, const char* name, int epsg, const std::vector<Point3>& line) {
  GDALAllRegister();
  const bool there = std::filesystem::exists(file);
  GDALDatasetH data = there ? GDALOpenEx(file.c_str(), GDAL_OF_VECTOR | GDAL_OF_UPDATE, nullptr, nullptr, nullptr)
                            : GDALCreate(GDALGetDriverByName("GPKG"), file.c_str(), 0, 0, 0, GDT_Unknown, nullptr);
  ASSERT_NE(data, nullptr);
  OGRSpatialReferenceH srs = OSRNewSpatialReference(nullptr);
  OSRImportFromEPSG(srs, epsg);
  OSRSetAxisMappingStrategy(srs, OAMS_TRADITIONAL_GIS_ORDER);
  OGRLayerH layer = GDALDatasetCreateLayer(data, name, srs, wkbLineString25D, nullptr);
  if (!line.empty()) {
    OGRFeatureH feature = OGR_F_Create(OGR_L_GetLayerDefn(layer));
    OGRGeometryH geometry = OGR_G_CreateGeometry(wkbLineString25D);
    for (const Point3& p : line) OGR_G_AddPoint(geometry, p.x_m, p.y_m, p.z_m);
    OGR_F_SetGeometryDirectly(feature, geometry);
    EXPECT_EQ(OGR_L_CreateFeature(layer, feature), OGRERR_NONE);
    OGR_F_Destroy(feature);
  }
  OSRDestroySpatialReference(srs);
  GDALClose(data);
}

// The first layer was empty and in another system: all six lines of the second were refused.
TEST_F(PublicTraps, EmptyFirstLayer_SaysNothingAboutTheOthers) {
  add_layer(path("a.gpkg"), "nothing", 4283, {});
  add_layer(path("a.gpkg"), "water", 4326, {{9, 50, 1}, {9.001, 50, 2}});
  const Found found = read("a.gpkg");
  EXPECT_EQ(found.frame.crs, "EPSG:4326");
  EXPECT_EQ(found.vertices.size(), 2u);
  EXPECT_TRUE(found.left_out.empty());
}

// Pictures and remarks that belong to features stand in a table of their own: it has no places, and lacks no system.
TEST_F(PublicTraps, TableWithoutPlaces_IsNoLayer) {
  add_layer(path("a.gpkg"), "water", 25832, {{500010, 5538630, 101}, {500020, 5538630, 102}});
  GDALDatasetH data = GDALOpenEx(path("a.gpkg").c_str(), GDAL_OF_VECTOR | GDAL_OF_UPDATE, nullptr, nullptr, nullptr);
  ASSERT_NE(data, nullptr);
  OGRLayerH table = GDALDatasetCreateLayer(data, "remarks", nullptr, wkbNone, nullptr);
  OGRFeatureH row = OGR_F_Create(OGR_L_GetLayerDefn(table));
  EXPECT_EQ(OGR_L_CreateFeature(table, row), OGRERR_NONE);
  OGR_F_Destroy(row);
  GDALClose(data);
  const Found found = read("a.gpkg");
  EXPECT_EQ(found.features.size(), 1u);
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_THAT(found.left_out[0].reason, HasSubstr("without places"));
  EXPECT_FALSE(found.left_out[0].matters);
}

// Nobody can put one layer of a database into a file of its own while standing in a trench: it is brought along.
// Second route: PROJ's own numbers for the central meridian of zone 32, 500000 + 0, and the length of the arc of the
// meridian at 50°, 0.9996 · 5540847.042 m (series of Helmert, from memory).
TEST_F(PublicTraps, LayersInTwoSystems_OneFrame) {
  add_layer(path("a.gpkg"), "water", 25832, {{500010, 5538630, 101}, {500020, 5538630, 102}});
  add_layer(path("a.gpkg"), "gas", 4258, {{9, 50, 98.5}, {9.001, 50, 98.6}});
  const Found found = read("a.gpkg");
  ASSERT_EQ(found.vertices.size(), 4u);
  EXPECT_EQ(found.frame.crs, "EPSG:25832");
  EXPECT_NEAR(found.vertices[2].x_m, 500000, 0.001);
  EXPECT_NEAR(found.vertices[2].y_m, 0.9996 * 5540847.042, 0.01);
  EXPECT_EQ(found.vertices[2].z_m, 98.5) << "heights stay as they are";
  EXPECT_TRUE(says(found.notes, "layer gas"));
}

// A layer that states nothing beside one that does: where it lies nobody knows.
TEST_F(PublicTraps, LayerWithoutASystem_IsLeftOut) {
  write_lines("ESRI Shapefile", path("a.shp"), 25832, {{{500010, 5540020, 101}, {500020, 5540020, 102}}});
  write_lines("ESRI Shapefile", path("b.shp"), 25832, {{{500010, 5540030, 101}, {500020, 5540030, 102}}});
  std::vector<std::pair<std::string, std::string>> files;
  for (const char* name : {"a.shp", "a.shx", "a.dbf", "a.prj", "b.shp", "b.shx", "b.dbf"})
    files.emplace_back(name, bytes_in(path(name)));
  zip(path("two.zip"), files);
  const Found found = read("two.zip");
  EXPECT_EQ(found.features.size(), 1u);
  ASSERT_EQ(found.left_out.size(), 1u);
}

// The rectangle of a picture laid on the ground was an area, and its rim a line near the crossing.
TEST_F(PublicTraps, PictureOnTheGround_IsNoArea) {
  write("a.kml",
        "<kml xmlns='http://www.opengis.net/kml/2.2'><Document><GroundOverlay><name>aerial</name><LatLonBox><north>50.1"
        "</north><south>50</south><east>9.1</east><west>9</west></LatLonBox></GroundOverlay><Placemark><name>gas</name>"
        "<LineString><coordinates>9,50 9.001,50</coordinates></LineString></Placemark></Document></kml>");
  const Found found = read("a.kml");
  ASSERT_EQ(found.features.size(), 1u);
  EXPECT_EQ(found.features[0].shape, Shape::line);
}

// The ground of a road is often handed on in cross sections: what is not read is said. The arc and the clothoid beside
// it have the lengths that the file states.
TEST_F(PublicTraps, AlignmentWithCrossSections) {
  write("a.xml",
        "<LandXML><Units><Metric linearUnit='meter'/></Units><Alignments><Alignment name='a' staStart='0'><CoordGeom>"
        "<Spiral length='62.5' radiusStart='INF' radiusEnd='250' rot='ccw'><Start>235.40564323 488.486008</Start>"
        "<PI>271.39306723 509.55408093</PI><End>290.57256126 517.76806797</End></Spiral>"
        "<Curve rot='ccw' radius='250' length='61.91334137'><Start>290.57256126 517.76806797</Start>"
        "<Center>388.99370951 287.95667231</Center><End>349.90893375 534.88253224</End></Curve></CoordGeom>"
        "<CrossSects><CrossSect name='x' sta='1'/></CrossSects></Alignment></Alignments></LandXML>");
  const Found found = read("a.xml");
  EXPECT_NEAR(length(found), 62.5 + 61.91334137, 0.005);
  ASSERT_EQ(found.left_out.size(), 2u);
  EXPECT_THAT(found.left_out[1].reason, HasSubstr("cross sections"));
}

// A table of something else with three columns of numbers became survey points without a word.
TEST_F(PublicTraps, HeaderOfStrangeColumns_IsSaid) {
  const auto found = read_survey_csv("zone,area,sum\n1,2679.5,19\n2,3001.5,22\n3,1999.5,18\n", {});
  ASSERT_TRUE(found);
  EXPECT_FALSE(found->order_is_known);
  EXPECT_TRUE(says(found->notes, "a guess")) << "zone,area,sum";
  const auto title = read_survey_csv("Site north\n1,2679.5,19\n2,3001.5,22\n3,1999.5,18\n", {});
  ASSERT_TRUE(title);
  EXPECT_FALSE(says(title->notes, "a guess")) << "a title is no header";
  const auto known = read_survey_csv("Point,North,East\n1,2679.5,19\n2,3001.5,22\n3,1999.5,18\n", {});
  EXPECT_FALSE(says(known->notes, "a guess"));
  ReadOptions options;
  options.order = "pne";
  EXPECT_FALSE(says(read_survey_csv("zone,area,sum\n1,2679.5,19\n2,3001.5,22\n", options)->notes, "a guess"));
}

}  // namespace
}  // namespace burrow::test

// Each kind of foreign file, and the traps that read without an error and are wrong.

#include <gmock/gmock.h>

#include <atomic>
#include <clocale>
#include <cstdlib>
#include <locale>
#include <thread>

#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

class ForeignFiles : public WithFolder {};

const std::vector<std::vector<Point3>> one_line{{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}};

TEST_F(ForeignFiles, FourContainers_SameLine) {
  write_lines("GeoJSON", path("a.geojson"), 4326, {{{9.0001, 50.0002, 101.5}, {9.0002, 50.0003, 101.25}}});
  write_lines("ESRI Shapefile", path("b.shp"), 25832, one_line);
  write_lines("GPKG", path("c.gpkg"), 25832, one_line);
  write_lines("KML", path("d.kml"), 4326, {{{9.0001, 50.0002, 101.5}, {9.0002, 50.0003, 101.25}}});
  for (const char* name : {"b.shp", "c.gpkg"}) {
    const Found found = read(name);
    ASSERT_EQ(found.features.size(), 1u) << name;
    EXPECT_THAT(found.layers, ElementsAre("gas main")) << name;
    EXPECT_EQ(found.frame.crs, "EPSG:25832") << name;
    EXPECT_EQ(found.frame.unit, FileUnit::metre) << name;
    EXPECT_FALSE(found.frame.height_unit) << "the unit of a map says nothing about heights";
    EXPECT_EQ(found.vertices, (std::vector<FoundVertex>{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}})) << name;
  }
  for (const char* name : {"a.geojson", "d.kml"}) {
    const Found found = read(name);
    ASSERT_EQ(found.vertices.size(), 2u) << name;
    EXPECT_TRUE(found.frame.geographic) << name;
    EXPECT_NEAR(found.vertices[0].x_m, 9.0001, 1e-9) << name << ": longitude first";
    EXPECT_NEAR(found.vertices[0].y_m, 50.0002, 1e-9) << name;
    EXPECT_EQ(found.vertices[0].z_m, 101.5) << name;
  }
}

// A long definition under another name than the register's becomes the register's code.
TEST_F(ForeignFiles, Trap_DefinitionUnderAnotherName) {
  write_lines("ESRI Shapefile", path("a.shp"), 3035, {{{4321010, 3210020, 1.5}, {4321020, 3210030, 1.25}}});
  std::ifstream in(path("a.prj"));
  const std::string prj{std::istreambuf_iterator<char>(in), {}};
  ASSERT_THAT(prj, HasSubstr("PROJCS["));
  ASSERT_THAT(prj, Not(HasSubstr("AUTHORITY")));
  EXPECT_EQ(read("a.shp").frame.crs, "EPSG:3035");
}

TEST_F(ForeignFiles, ZippedShapefile_AndKmz) {
  write_lines("ESRI Shapefile", path("b.shp"), 25832, one_line);
  for (const char* ending : {"shp", "shx", "dbf", "prj"}) {
    VSILFILE* out = VSIFOpenL(("/vsizip/" + path("b.zip") + "/data/b." + ending).c_str(), "wb");
    std::ifstream in(path(std::string("b.") + ending), std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    VSIFWriteL(bytes.data(), 1, bytes.size(), out);
    VSIFCloseL(out);
  }
  const Found found = read("b.zip");
  EXPECT_EQ(found.vertices.size(), 2u);
  EXPECT_EQ(found.frame.crs, "EPSG:25832");
  EXPECT_EQ(found.format, "zipped Shapefile");
  write_lines("LIBKML", path("d.kmz"), 4326, {{{9.0001, 50.0002, 101.5}, {9.0002, 50.0003, 101.25}}});
  EXPECT_EQ(read("d.kmz").vertices.size(), 2u);
}

// The trap: the missing third number comes back as 0.
TEST_F(ForeignFiles, Trap_MixedArity) {
  write("a.geojson",
        R"({"type":"FeatureCollection","bbox":[1,2,3,4],"features":[{"type":"Feature","properties":{"code":"GAS"},
    "geometry":{"type":"LineString","coordinates":[[9.1,50.1,0.4],[9.2,50.2],[9.3,50.3,0.3]]}}]})");
  const Found mixed = read("a.geojson");
  ASSERT_EQ(mixed.vertices.size(), 3u);
  EXPECT_EQ(mixed.vertices[0].z_m, 0.4);
  EXPECT_FALSE(mixed.vertices[1].z_m);
  EXPECT_TRUE(says(mixed.notes, "with and without height"));
  EXPECT_EQ(mixed.layers.at(0), "GAS");
  // Without a mixture a height of 0 among others near 0 is one.
  write("b.geojson", R"({"type":"LineString","coordinates":[[9.1,50.1,0.4],[9.2,50.2,0],[9.3,50.3,0.3]]})");
  EXPECT_EQ(read("b.geojson").vertices[1].z_m, 0.0);
  EXPECT_FALSE(says(read("b.geojson").notes, "with and without height"));
}

TEST_F(ForeignFiles, Trap_ShapefileWithZeros) {
  write_lines("ESRI Shapefile", path("a.shp"), 25832, {{{500010, 5540020, 0}, {500020, 5540030, 0}}});
  const Found found = read("a.shp");
  EXPECT_FALSE(found.vertices.at(0).z_m);
  EXPECT_TRUE(says(found.notes, "height 0 throughout"));
  // Somebody's missing height among heights of a hundred metres.
  write_lines("ESRI Shapefile", path("b.shp"), 25832,
              {{{500010, 5540020, 101}, {500020, 5540030, 0}, {500030, 5540030, 102}}});
  EXPECT_FALSE(read("b.shp").vertices.at(1).z_m);
  EXPECT_EQ(read("b.shp").vertices.at(2).z_m, 102.0);
}

// Numbers of a map projection in a file that counts as degrees.
TEST_F(ForeignFiles, Trap_DegreesThatAreNone) {
  write("a.geojson", R"({"type":"LineString","coordinates":[[500010,5540020],[500020,5540030]]})");
  const Found found = read("a.geojson");
  EXPECT_FALSE(found.frame.geographic);
  EXPECT_TRUE(found.frame.crs.empty());
  EXPECT_TRUE(says(found.notes, "degrees"));
}

TEST_F(ForeignFiles, Trap_NoSideFiles) {
  write_lines("GPKG", path("c.gpkg"), 25832, one_line);
  write_lines("ESRI Shapefile", path("b.shp"), 25832, one_line);
  write_grid(path("d.tif"), 25832, 500000, 5540100, 10, 20, {100, 0, 0});
  write("e.dxf", drawing("6", drawing_line("GAS", 0, 0, 1, 5, 5, 1)));
  std::filesystem::remove(path("b.shx"));
  const auto before = names();
  for (const char* name : {"c.gpkg", "d.tif", "e.dxf"}) read(name);
  (void)read_here(path("b.shp"), {});
  EXPECT_EQ(names(), before);
}

// The traps of drawings: the unit, blocks, what is not drawn, and an empty success.
TEST_F(ForeignFiles, Trap_DrawingUnit) {
  for (const auto& [code, unit] : {std::pair{"1", FileUnit::inch},
                                   {"2", FileUnit::foot},
                                   {"4", FileUnit::millimetre},
                                   {"5", FileUnit::centimetre},
                                   {"6", FileUnit::metre},
                                   {"21", FileUnit::us_survey_foot}}) {
    write("a.dxf", drawing(code, drawing_line("KERB", 0, 0, 0, 5, 5, 0)));
    EXPECT_EQ(read("a.dxf").frame.unit, unit) << code;
    EXPECT_TRUE(read("a.dxf").frame.unit_is_doubtful);
  }
  write("a.dxf", drawing("0", drawing_line("KERB", 0, 0, 0, 5, 5, 0)));
  EXPECT_FALSE(read("a.dxf").frame.unit);
  write("a.dxf", drawing("10", drawing_line("KERB", 0, 0, 0, 5, 5, 0)));
  EXPECT_TRUE(says(read("a.dxf").notes, "unit 10"));
}

TEST_F(ForeignFiles, Drawing_LayersBlocksHeights) {
  const std::string entities = drawing_line("GAS", 0, 0, 101, 5, 5, 102) + drawing_line("KERB", 0, 0, 0, 5, 0, 0) +
                               insert("COVER", 10, 20) + insert("COVER", 30, 20) + pair(0, "3DSOLID") + pair(8, "0");
  write("a.dxf", drawing("6", entities, block("COVER", drawing_line("0", -1, 0, 0, 1, 0, 0))));
  const Found found = read("a.dxf");
  EXPECT_THAT(found.layers, ElementsAre("GAS", "KERB", "0"));
  ASSERT_EQ(found.features.size(), 4u) << "two lines and two unfolded blocks";
  EXPECT_EQ(found.vertices[0], (FoundVertex{0, 0, 101.0}));
  EXPECT_FALSE(found.vertices[2].z_m);
  EXPECT_EQ(found.vertices[4].x_m, 9);
  EXPECT_TRUE(says(found.notes, "2 blocks"));
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_EQ(found.left_out[0].text, "1 × 3DSOLID");
}

TEST_F(ForeignFiles, Trap_NeverAnEmptySuccess) {
  write("a.dxf", drawing("6", pair(0, "3DSOLID") + pair(8, "0") + pair(0, "IMAGE") + pair(8, "0")));
  EXPECT_THAT(error_of("a.dxf").found.english(), HasSubstr("3DSOLID"));
  write("b.geojson", R"({"type":"FeatureCollection","features":[]})");
  EXPECT_FALSE(error_of("b.geojson").english().empty());
  write("c.xml", "<LandXML xmlns='http://www.landxml.org/schema/LandXML-1.2'><Units/></LandXML>");
  EXPECT_THAT(error_of("c.xml").found.english(), HasSubstr("nothing"));
}

TEST_F(ForeignFiles, Grid_PlaneAndUnit) {
  const Plane plane{100, 0.01, -0.02};
  write_grid(path("d.tif"), 25832, 500000, 5540100, 2, 50, {100 - 0.01 * 500000 + 0.02 * 5540100, 0.01, -0.02}, "ft");
  const Found found = read("d.tif");
  ASSERT_EQ(found.rasters.size(), 1u);
  EXPECT_EQ(found.rasters[0].columns, 50);
  EXPECT_EQ(found.frame.height_unit, FileUnit::foot);
  EXPECT_NEAR(*found.rasters[0].least_z, plane.at(1, 99) - 0.02 * 0 + 0 * 100, 3);
  write("e.asc", "ncols 3\nnrows 2\nxllcorner 100\nyllcorner 200\ncellsize 10\nNODATA_value -9999\n1 2 3\n4 5 -9999\n");
  EXPECT_EQ(read("e.asc").rasters.at(0).most_z, 5.0);
  EXPECT_FALSE(read("e.asc").frame.height_unit);
}

TEST_F(ForeignFiles, Texts_InTheirEncoding) {
  write("a.geojson",
        "{\"type\":\"Feature\",\"properties\":{\"code\":\"GEL\xC3\x84NDE\"},\"geometry\":{\"type\":\"Point\","
        "\"coordinates\":[9,50,1]}}");
  EXPECT_EQ(read("a.geojson").layers.at(0), "GEL\u00C4NDE");
  // An old drawing: its code page is named in the header.
  const std::string old = pair(0, "SECTION") + pair(2, "HEADER") + pair(9, "$ACADVER") + pair(1, "AC1015") +
                          pair(9, "$DWGCODEPAGE") + pair(3, "ANSI_1252") + pair(0, "ENDSEC") + pair(0, "SECTION") +
                          pair(2, "ENTITIES") + drawing_line("GEL\xC4NDE", 0, 0, 1, 2, 2, 2) + pair(0, "ENDSEC") +
                          pair(0, "EOF");
  write("b.dxf", old);
  EXPECT_EQ(read("b.dxf").layers.at(0), "GEL\u00C4NDE");
}

/// Sets a German LC_NUMERIC, built on the spot where the system has none; false: it has no means to.
bool set_comma_locale() {
  if (std::setlocale(LC_ALL, "de_DE.UTF-8")) return true;
  const std::string folder = testing::TempDir() + "burrow-import-locale";
  std::filesystem::create_directories(folder);
  const std::string build = "localedef --no-archive -i de_DE -f UTF-8 " + folder + "/de_DE.UTF-8 >/dev/null 2>&1";
  if (std::system(build.c_str()) != 0) return false;  // NOLINT
  ::setenv("LOCPATH", folder.c_str(), 1);
  return std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr;
}

// Under a comma locale of C and of C++ every reader gives the numbers it gave before.
TEST_F(ForeignFiles, Trap_CommaLocale) {
  struct CommaMark : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
  };
  write_lines("GPKG", path("a.gpkg"), 25832, one_line);
  write("b.dxf", drawing("6", drawing_line("GAS", 0.5, 0.25, 101.5, 5.75, 5, 102)));
  write("c.geojson", R"({"type":"LineString","coordinates":[[9.125,50.5,0.5],[9.25,50.25,0.25]]})");
  write(
      "d.kml",
      R"(<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Placemark><name>p</name><Point><coordinates>9.125,50.5,3.25</coordinates></Point></Placemark></Document></kml>)");
  write("e.xml",
        "<LandXML><Units><Metric linearUnit='meter'/></Units><CgPoints><CgPoint name='1'>2.5 1.25 "
        "3.75</CgPoint></CgPoints></LandXML>");
  write("f.csv", "1,2.5,1.25,3.75,GND\n");
  write("g.asc", "ncols 2\nnrows 2\nxllcorner 100.5\nyllcorner 200.25\ncellsize 10.5\n1.5 2.5\n4.25 5.75\n");
  std::vector<Found> before, after;
  const auto all = names();
  for (const std::string& name : all) before.push_back(read(name));
  EXPECT_EQ(before.at(4).vertices.at(0), (FoundVertex{1.25, 2.5, 3.75}));
  const bool has_locale = set_comma_locale();
  if (has_locale) {
    EXPECT_STREQ(std::localeconv()->decimal_point, ",");
  }
  const std::locale plain = std::locale::global(std::locale(std::locale::classic(), new CommaMark));
  for (const std::string& name : all) after.push_back(read(name));
  std::locale::global(plain);
  std::setlocale(LC_ALL, "C");
  EXPECT_EQ(before, after);
}

TEST_F(ForeignFiles, Threads_SameAnswers) {
  write_lines("GPKG", path("a.gpkg"), 25832, one_line);
  write("b.dxf", drawing("6", drawing_line("GAS", 0.5, 0.25, 101.5, 5.75, 5, 102)));
  const Found a = read("a.gpkg"), b = read("b.dxf");
  std::vector<std::thread> threads;
  std::atomic<int> same = 0;
  for (int i = 0; i < 4; ++i)
    threads.emplace_back([&] {
      for (int k = 0; k < 10; ++k) same += read("a.gpkg") == a && read("b.dxf") == b ? 1 : 0;
    });
  for (std::thread& t : threads) t.join();
  EXPECT_EQ(same, 40);
}

TEST_F(ForeignFiles, Refused_WithReason) {
  write("a.dxf", "somebod Binary DXF\r\n\x1a");
  EXPECT_THAT(error_of("a.dxf").found.english(), HasSubstr("binary DXF"));
  write("b.dwg", std::string("AC1027\0\0\0\0", 10));
  EXPECT_THAT(error_of("b.dwg").found.english(), HasSubstr("DWG"));
  write("c.pdf", "%PDF-1.7");
  EXPECT_THAT(error_of("c.pdf").expected.english(), HasSubstr("DXF"));
  write("d.csv", "");
  EXPECT_THAT(error_of("d.csv").found.english(), HasSubstr("empty"));
  EXPECT_THAT(read_here(path("none.csv"), {}).error().place.english(), HasSubstr("none.csv"));
  EXPECT_THAT(read_here(folder_, {}).error().found.english(), HasSubstr("folder"));
}

}  // namespace
}  // namespace burrow::test

// GML, MapInfo and file geodatabases: the same line as in the other containers, and what is theirs alone.

#include <gmock/gmock.h>
#include <sys/stat.h>

#include "companions.h"
#include "support/kinds_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

class MoreReaders : public WithFolder {};

const std::vector<std::vector<Point3>> one_line{{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}};

TEST_F(MoreReaders, SameLineAsInTheOthers) {
  write_lines("GML", path("a.gml"), 25832, one_line);
  write_lines("OpenFileGDB", path("b.gdb"), 25832, one_line);
  for (const char* name : {"a.gml", "b.gdb"}) {
    const Found found = read(name);
    ASSERT_EQ(found.features.size(), 1u) << name;
    EXPECT_THAT(found.layers, ElementsAre("gas main")) << name;
    EXPECT_EQ(found.frame.crs, "EPSG:25832") << name;
    EXPECT_EQ(found.frame.unit, FileUnit::metre) << name;
    ASSERT_EQ(found.vertices.size(), 2u) << name;
    EXPECT_NEAR(found.vertices[0].x_m, 500010, 1e-4) << name;
    EXPECT_NEAR(found.vertices[1].y_m, 5540030, 1e-4) << name;
    EXPECT_NEAR(found.vertices[0].z_m.value_or(0), 101.5, 1e-4) << name;
  }
  // These know no heights of lines.
  write_lines("MapInfo File", path("c.tab"), 25832, one_line, false);
  write_lines("MapInfo File", path("d.mif"), 25832, one_line, false);
  for (const char* name : {"c.tab", "d.mif"}) {
    const Found found = read(name);
    ASSERT_EQ(found.vertices.size(), 2u) << name;
    EXPECT_THAT(found.layers, ElementsAre("gas main")) << name;
    EXPECT_EQ(found.frame.crs, "EPSG:25832") << name;
    EXPECT_NEAR(found.vertices[0].x_m, 500010, 0.01) << name;
    EXPECT_NEAR(found.vertices[1].y_m, 5540030, 0.01) << name;
    EXPECT_FALSE(found.vertices[0].z_m) << name;
  }
}

// GML with its own word for the system, and the axes as that says: north first for EPSG:31467.
TEST_F(MoreReaders, Gml_AxesAsTheSystemSays) {
  const auto gml = [](const std::string& system, const std::string& places) {
    return "<?xml version='1.0'?><ogr:FeatureCollection xmlns:ogr='http://ogr.maptools.org/' "
           "xmlns:gml='http://www.opengis.net/gml/3.2'><ogr:featureMember><ogr:gas gml:id='a'><ogr:geom>"
           "<gml:LineString gml:id='b' srsName='" +
           system + "'><gml:posList>" + places +
           "</gml:posList></gml:LineString></ogr:geom><ogr:DIAMETER>150</ogr:DIAMETER></ogr:gas></ogr:featureMember>"
           "</ogr:FeatureCollection>";
  };
  write("a.gml", gml("urn:ogc:def:crs:EPSG::31467", "5412340 3512345 5412350 3512355"));
  write("b.xml", gml("urn:ogc:def:crs:EPSG::4326", "50 9 50.001 9.001"));
  EXPECT_EQ(read("a.gml").vertices.at(0).x_m, 3512345);
  EXPECT_EQ(read("a.gml").vertices.at(0).y_m, 5412340);
  const Found degrees = read("b.xml");
  EXPECT_EQ(degrees.vertices.at(0).x_m, 9);
  EXPECT_TRUE(degrees.frame.geographic);
  ASSERT_EQ(degrees.table.fields.size(), 1u);
  EXPECT_EQ(degrees.table.fields[0].name, "DIAMETER");
  EXPECT_EQ(degrees.table.text(0, 0), "150");
}

TEST_F(MoreReaders, NothingIsWrittenBeside) {
  write("a.gml",
        "<a:FeatureCollection xmlns:a='http://ogr.maptools.org/' xmlns:gml='http://www.opengis.net/gml'>"
        "<gml:featureMember><a:gas><a:g><gml:Point><gml:coordinates>1,2</gml:coordinates></gml:Point></a:g></a:gas>"
        "</gml:featureMember></a:FeatureCollection>");
  write_lines("MapInfo File", path("c.tab"), 25832, one_line, false);
  write_lines("MapInfo File", path("d.mif"), 25832, one_line, false);
  write_lines("OpenFileGDB", path("b.gdb"), 25832, one_line);
  const auto all = [&] {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder_)) names.push_back(entry.path());
    std::sort(names.begin(), names.end());
    return names;
  };
  const auto before = all();
  for (const char* name : {"a.gml", "b.gdb", "c.tab", "d.mif"}) read(name);
  EXPECT_EQ(all(), before);
}

// A whole folder: by its own name, with a stroke behind it, or by any file in it, as a dialog for files gives it.
TEST_F(MoreReaders, FileGeodatabase_AsAPersonNamesIt) {
  write_lines("OpenFileGDB", path("b.gdb"), 25832, one_line);
  for (const std::string& name : {path("b.gdb"), path("b.gdb/"), path("b.gdb/a00000001.gdbtable")}) {
    const Result<Found> found = read_foreign_file(name, {});
    ASSERT_TRUE(found) << name << ": " << found.error().english();
    EXPECT_EQ(found->file, path("b.gdb"));
    EXPECT_EQ(found->vertices.size(), 2u);
  }
  std::vector<std::pair<std::string, std::string>> files;
  for (const auto& entry : std::filesystem::directory_iterator(path("b.gdb")))
    files.emplace_back("x/b.gdb/" + entry.path().filename().string(), bytes_in(entry.path()));
  zip(path("b.gdb.zip"), files);
  EXPECT_EQ(read("b.gdb.zip").vertices.size(), 2u);
}

// What lies in it must lie there: no link leads out of it, no pipe waits in it. An empty one, and a plain folder.
TEST_F(MoreReaders, FileGeodatabase_Traps) {
  write_lines("OpenFileGDB", path("b.gdb"), 25832, one_line);
  std::filesystem::copy(path("b.gdb"), path("c.gdb"));
  std::filesystem::create_symlink("/etc/passwd", path("b.gdb/a00000099.gdbtable"));
  ASSERT_EQ(::mkfifo(path("c.gdb/a00000099.gdbtable").c_str(), 0600), 0);
  for (const char* name : {"b.gdb", "c.gdb"}) {
    const Result<Found> found = read_foreign_file(path(name), {});
    ASSERT_FALSE(found) << name;
    EXPECT_THAT(found.error().place.english(), HasSubstr("a00000099"));
  }
  std::filesystem::create_directory(path("d.gdb"));
  std::filesystem::create_directory(path("plain"));
  EXPECT_FALSE(read_foreign_file(path("d.gdb"), {}));
  const Result<Found> plain = read_foreign_file(path("plain"), {});
  ASSERT_FALSE(plain);
  EXPECT_THAT(plain.error().expected.english(), HasSubstr(".gdb"));
}

// What cannot be read says what to choose in its place.
TEST_F(MoreReaders, Refusals_SayHowToGetThere) {
  for (const auto& [name, way] : {std::pair{"a.gdbtable", ".gdb"},
                                  {"a.mid", ".mif"},
                                  {"a.dbf", ".shp"},
                                  {"a.map", ".tab"},
                                  {"a.laz", "x y z"},
                                  {"a.xlsx", "CSV"},
                                  {"a.dgn", "DXF"},
                                  {"a.qgz", "GeoPackage"}}) {
    write(name, "some bytes");
    EXPECT_THAT(error_of(name).expected.english(), HasSubstr(way)) << name;
  }
}

}  // namespace
}  // namespace burrow::test

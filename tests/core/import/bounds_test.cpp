// Files that claim more than they hold, and files that are none: each ends soon, in words.

#include <gmock/gmock.h>
#include <sys/stat.h>

#include "burrow/import/scale.h"
#include "reader_process.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class Bounds : public WithFolder {};

TEST_F(Bounds, Grid_ThatClaimsMoreThanItsFileHolds) {
  write("a.asc", "ncols 10000\nnrows 10000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n");
  EXPECT_THAT(error_of("a.asc").found.english(), HasSubstr("10000 by 10000 cells claimed"));
  write_grid(path("b.tif"), 25832, 500000, 5540100, 10, 20, {100, 0, 0});
  ReadOptions options;
  options.most_cells = 100;
  EXPECT_THAT(error_of("b.tif", options).expected.english(), HasSubstr("at most 100 cells"));
}

TEST_F(Bounds, Layers_BeyondTheMostShareOneThatIsAsked) {
  std::string text;
  for (int i = 0; i < 6000; ++i) text += std::to_string(i) + ",200,100,7.5,K" + std::to_string(i) + "x\n";
  write("a.csv", text);
  const Found found = read("a.csv");
  EXPECT_EQ(found.features.size(), 6000u) << "nothing is lost";
  EXPECT_EQ(found.layers.size(), 4097u);
  EXPECT_TRUE(says(found.notes, "more than 4096"));
  const ImportFile file = import_file(std::make_shared<const Found>(found), built_in_meanings());
  EXPECT_EQ(file.layers.back().meaning, Meaning::undecided);
}

// 300,000 layers and as many lines: read and cut in the time of one pass over them.
TEST_F(Bounds, ThreeHundredThousandLayers) {
  std::string entities;
  for (int i = 0; i < 300'000; ++i) {
    const std::string at = std::to_string(i % 1000);
    entities += "0\nLINE\n8\nL" + std::to_string(i) + "\n10\n" + at + "\n20\n0\n11\n" + at + "\n21\n5\n";
  }
  write("a.dxf", drawing("6", entities));
  const ImportFile file = import_file(std::make_shared<const Found>(read("a.dxf")), built_in_meanings());
  EXPECT_EQ(file.layers.size(), 4097u);
  const auto imported = into_crossing({file}, {{100, 2}, {114, 2}});
  ASSERT_TRUE(imported) << imported.error().english();
  EXPECT_FALSE(imported->asked.empty());
}

// A table that is none but a computation without end.
TEST_F(Bounds, View_ThatNeverEnds) {
  write_lines("GPKG", path("a.gpkg"), 25832, {{{500010, 5540020, 1}, {500020, 5540030, 1}}});
  GDALDatasetH data = GDALOpenEx(path("a.gpkg").c_str(), GDAL_OF_VECTOR | GDAL_OF_UPDATE, nullptr, nullptr, nullptr);
  ASSERT_NE(data, nullptr);
  for (const char* sql :
       {"CREATE VIEW endless AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT n.i AS fid, "
        "mains.geom AS geom FROM n, mains WHERE n.i < 0",
        "INSERT INTO gpkg_contents (table_name, identifier, data_type, srs_id) VALUES ('endless', 'endless', "
        "'features', 25832)",
        "INSERT INTO gpkg_geometry_columns (table_name, column_name, geometry_type_name, srs_id, z, m) VALUES "
        "('endless', 'geom', 'LINESTRING', 25832, 1, 0)"})
    GDALDatasetExecuteSQL(data, sql, nullptr, nullptr);
  GDALClose(data);
  ReadOptions options;
  options.most_seconds = 20;
  const Result<Found> found = read_foreign_file(path("a.gpkg"), options);
  ASSERT_TRUE(found) << found.error().english();
  EXPECT_EQ(found->features.size(), 1u);
  EXPECT_TRUE(std::any_of(found->left_out.begin(), found->left_out.end(),
                          [](const LeftOut& l) { return l.reason.find("a view") != std::string::npos; }));
}

TEST_F(Bounds, NoPlainFiles_AreRefusedAtOnce) {
  ASSERT_EQ(::mkfifo(path("a.csv").c_str(), 0600), 0);
  std::filesystem::create_symlink("/dev/zero", path("b.dxf"));
  write_lines("ESRI Shapefile", path("c.shp"), 25832, {{{500010, 5540020, 1}, {500020, 5540030, 1}}});
  std::filesystem::remove(path("c.dbf"));
  std::filesystem::create_symlink("/dev/zero", path("c.dbf"));
  write_grid(path("d.tif"), 0, 0, 0, 1, 4, {1, 0, 0});
  ASSERT_EQ(::mkfifo(path("d.tfw").c_str(), 0600), 0);
  for (const char* name : {"a.csv", "b.dxf", "c.shp", "d.tif"}) {
    const Result<Found> found = read_foreign_file(path(name), {});
    ASSERT_FALSE(found) << name;
    EXPECT_THAT(found.error().found.english(), HasSubstr("pipe or a device")) << name;
  }
}

TEST_F(Bounds, Time_IsAMinute) {
  EXPECT_LE(ReadOptions{}.most_seconds, 60);
  write("a.csv", "1,200,100,7.5,GND\n");
  EXPECT_EQ(request_for(path("a.csv"), {}).most_seconds, ReadOptions{}.most_seconds);
}

// A person who has had enough is answered by every part of the import.
TEST_F(Bounds, Stop_AtAnyMoment) {
  std::string text;
  for (int i = 0; i < 3000; ++i)
    text += std::to_string(i) + "," + std::to_string(i % 60) + "," + std::to_string(i / 60) + ",100,GND\n";
  write("a.csv", text);
  const ImportFile file = import_file(std::make_shared<const Found>(read("a.csv")), built_in_meanings());
  int all = 0;
  ASSERT_TRUE(into_crossing({file}, {{5, 5}, {17, 5}}, {}, [&](double) { return ++all > 0; }));
  for (const int last : {1, 2, all / 2, all}) {
    int asked = 0;
    const auto ended = into_crossing({file}, {{5, 5}, {17, 5}}, {}, [&](double) { return ++asked < last; });
    ASSERT_FALSE(ended) << last;
    EXPECT_EQ(ended.error().code, stopped_by_person) << last;
  }
}

}  // namespace
}  // namespace burrow::test

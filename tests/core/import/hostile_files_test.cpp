// Files that mean ill or broke on the way: each ends in a message, within bounds of time and memory.

#include <gmock/gmock.h>
#include <sys/resource.h>

#include "burrow/import/survey_csv.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class HostileFiles : public WithFolder {
 protected:
  [[nodiscard]] std::string bytes_of(const std::string& name) const {
    std::ifstream in(path(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
};

// Cut anywhere, a file is an error or a shorter answer, never a crash; most are errors.
TEST_F(HostileFiles, Truncated_EveryKind) {
  write_lines("GeoJSON", path("a.geojson"), 4326, {{{9.0001, 50.0002, 101.5}, {9.0002, 50.0003, 101.25}}});
  write_lines("GPKG", path("c.gpkg"), 25832, {{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}});
  write_lines("ESRI Shapefile", path("b.shp"), 25832, {{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}});
  write_lines("LIBKML", path("d.kmz"), 4326, {{{9.0001, 50.0002, 101.5}, {9.0002, 50.0003, 101.25}}});
  write_grid(path("e.tif"), 25832, 500000, 5540100, 10, 20, {100, 0, 0});
  write("f.dxf", drawing("6", drawing_line("GAS", 0, 0, 101, 5, 5, 102)));
  write("g.xml", "<LandXML><CgPoints><CgPoint name='1'>1 2 3</CgPoint></CgPoints></LandXML>");
  std::size_t refused = 0, tried = 0;
  for (const char* name : {"a.geojson", "c.gpkg", "b.shp", "d.kmz", "e.tif", "f.dxf", "g.xml"}) {
    const std::string whole = bytes_of(name);
    for (int part = 1; part < 12; ++part) {
      write(name, whole.substr(0, whole.size() * static_cast<std::size_t>(part) / 12));
      const Result<Found> found = read_here(path(name), {});
      ++tried;
      if (found) continue;
      ++refused;
      EXPECT_FALSE(found.error().found.empty()) << name;
      EXPECT_FALSE(found.error().expected.empty()) << name;
    }
  }
  EXPECT_GT(refused, tried * 2 / 3) << refused << " of " << tried;
}

TEST_F(HostileFiles, Noise_EveryEnding) {
  std::string noise;
  unsigned state = 1;
  for (int i = 0; i < 5000; ++i) noise += static_cast<char>((state = state * 1103515245u + 12345u) >> 16u);
  for (const std::string& ending : readable_endings()) {
    if (ending == "*.gdb") continue;  // a folder: MoreReaders.FileGeodatabase_Traps
    write("noise" + ending.substr(1), noise);
    EXPECT_FALSE(read_here(path("noise" + ending.substr(1)), {})) << ending;
  }
}

// A block that holds itself, by way of another.
TEST_F(HostileFiles, CyclicBlocks) {
  const std::string blocks =
      block("A", drawing_line("0", 0, 0, 0, 1, 0, 0) + insert("B", 1, 1)) + block("B", insert("A", 2, 2));
  write("a.dxf", drawing("6", insert("A", 10, 20) + drawing_line("KERB", 0, 0, 0, 5, 0, 0), blocks));
  const Found found = read("a.dxf");
  EXPECT_TRUE(says(found.notes, "holds itself"));
  EXPECT_EQ(found.features.size(), 2u);
}

// Eight inserts in each of twelve levels would unfold into 8^12 elements.
TEST_F(HostileFiles, BlocksThatUnfoldWithoutEnd) {
  std::string blocks = block("B0", drawing_line("0", 0, 0, 0, 1, 0, 0));
  for (int level = 1; level < 12; ++level) {
    std::string inside;
    for (int k = 0; k < 8; ++k) inside += insert("B" + std::to_string(level - 1), k, level);
    blocks += block("B" + std::to_string(level), inside);
  }
  write("a.dxf", drawing("6", insert("B11", 0, 0), blocks));
  const Found found = read("a.dxf");
  EXPECT_TRUE(says(found.notes, "unfold"));
  EXPECT_LE(found.features.size(), 1u);
}

TEST_F(HostileFiles, NumbersWithoutEnd) {
  write("a.csv", "1,1e308,1e308,1,GND\n2,-1e308,5,1,GND\n");
  EXPECT_FALSE(read_here(path("a.csv"), {}));
  write("b.geojson", R"({"type":"LineString","coordinates":[[1e308,50],[9.2,-1e308]]})");
  EXPECT_THAT(error_of("b.geojson").found.english(), HasSubstr("coordinate"));
  write("c.dxf", drawing("6", pair(0, "LINE") + pair(8, "A") + pair(10, "1e308") + pair(20, "nan") +
                                  pair(11, "-1e308") + pair(21, "1e999")));
  EXPECT_FALSE(error_of("c.dxf").english().empty());
  write("d.asc", "ncols 2\nnrows 2\nxllcorner 1e308\nyllcorner 1e308\ncellsize 1e308\n1 2\n3 4\n");
  EXPECT_FALSE(error_of("d.asc").english().empty());
  write("e.asc", "ncols 2000000000\nnrows 2000000000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2\n");
  EXPECT_FALSE(error_of("e.asc").english().empty());
}

// A megabyte of nothing packs a thousandfold; the bound counts what is unpacked, not what the directory claims.
TEST_F(HostileFiles, ZipBomb) {
  VSILFILE* out = VSIFOpenL(("/vsizip/" + path("b.zip") + "/b.geojson").c_str(), "wb");
  const std::string nothing(1u << 20u, ' ');
  for (int i = 0; i < 40; ++i) VSIFWriteL(nothing.data(), 1, nothing.size(), out);
  VSIFCloseL(out);
  ASSERT_LT(std::filesystem::file_size(path("b.zip")), 100'000u);
  ReadOptions options;
  options.most_unpacked_bytes = 16u << 20u;
  EXPECT_THAT(error_of("b.zip", options).found.english(), HasSubstr("16 MB"));
}

TEST_F(HostileFiles, NestedArrays) {
  write("a.geojson",
        R"({"type":"Polygon","coordinates":)" + std::string(100'000, '[') + "1,2" + std::string(100'000, ']') + "}");
  EXPECT_FALSE(read_here(path("a.geojson"), {}));
  std::string deep;
  for (int i = 0; i < 20'000; ++i) deep += "<a>";
  write("b.xml", "<LandXML>" + deep);
  EXPECT_FALSE(read_here(path("b.xml"), {}));
  // Collections within collections are left out, not followed.
  std::string open, close;
  for (int i = 0; i < 25; ++i) {
    open += R"({"type":"GeometryCollection","geometries":[)";
    close += "]}";
  }
  write("c.geojson", open + R"({"type":"Point","coordinates":[9,50]})" + close);
  EXPECT_FALSE(read_here(path("c.geojson"), {}));
}

TEST_F(HostileFiles, Bound_CancelAndProgress) {
  std::string entities;
  for (int i = 0; i < 30'000; ++i) entities += drawing_line("K", i, 0, 1, i, 5, 1);
  write("a.dxf", drawing("6", entities));
  ReadOptions options;
  options.most_vertices = 20'000;
  EXPECT_THAT(error_of("a.dxf", options).found.english(), HasSubstr("20000"));
  options = {};
  int asked = 0;
  options.progress = [&](double share) {
    EXPECT_TRUE(share >= 0 && share <= 1);
    return ++asked < 10;
  };
  EXPECT_EQ(error_of("a.dxf", options).found, std::string(stopped_by_person));
  EXPECT_EQ(asked, 10);
}

// A driver that reads the whole file to open it can still be stopped there, and says how far it is.
TEST_F(HostileFiles, Stop_WhileADriverOpens) {
  std::string features;
  for (int i = 0; i < 20'000; ++i)
    features += std::string(i ? "," : "") + R"({"type":"Feature","properties":{},"geometry":{"type":"Point",)" +
                R"("coordinates":[)" + std::to_string(9 + i * 1e-6) + ",50,100]}}";
  write("a.geojson", R"({"type":"FeatureCollection","features":[)" + features + "]}");
  std::vector<double> shares;
  ReadOptions options;
  options.progress = [&](double share) {
    shares.push_back(share);
    return true;
  };
  EXPECT_EQ(read("a.geojson", options).features.size(), 20'000u);
  EXPECT_TRUE(std::is_sorted(shares.begin(), shares.end()));
  EXPECT_GT(std::count_if(shares.begin(), shares.end(), [](double share) { return share > 0 && share < 0.5; }), 5);
  EXPECT_EQ(shares.back(), 1);
  for (const int last : {1, 4, 12}) {
    int asked = 0;
    options.progress = [&](double) { return ++asked < last; };
    EXPECT_EQ(error_of("a.geojson", options).found, std::string(stopped_by_person));
    EXPECT_EQ(asked, last);
  }
}

// Two million survey points: read, with word of how far it is, within 700 MB beyond what the program had before.
TEST_F(HostileFiles, TwoMillionVertices_BoundedMemory) {
  struct rusage before {
  }, after{};
  ::getrusage(RUSAGE_SELF, &before);
  {
    std::ofstream out(path("a.csv"), std::ios::binary);
    for (int i = 0; i < 2'000'000; ++i)
      out << i << ',' << 5540000 + i % 2000 * 0.25 << ',' << 500000 + i / 2000 * 0.25 << ",100.5,GND\n";
  }
  ReadOptions options;
  double last = 0;
  int reported = 0;
  options.progress = [&](double share) {
    last = share;
    ++reported;
    return true;
  };
  const Found found = read("a.csv", options);
  ::getrusage(RUSAGE_SELF, &after);
  EXPECT_EQ(found.vertices.size(), 2'000'000u);
  EXPECT_EQ(last, 1);
  EXPECT_GT(reported, 100);
#ifdef BURROW_SANITIZED
  constexpr long most_MB = 2100;  // red zones and what is kept back after freeing: three times as much
#else
  constexpr long most_MB = 700;
#endif
  EXPECT_LT(after.ru_maxrss - before.ru_maxrss, most_MB * 1024);
}

}  // namespace
}  // namespace burrow::test

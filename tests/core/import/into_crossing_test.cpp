// The crossing line through imported data: frames, units, ground, utilities, road edges, background.

#include "burrow/import/into_crossing.h"

#include <gmock/gmock.h>

#include <cmath>
#include <thread>

#include "burrow/base/quantity.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/tables_file.h"
#include "ground_cut.h"
#include "near_lines.h"
#include "simplified.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class IntoCrossing : public WithFolder {
 protected:
  ImportFile file(const std::string& name) {
    return import_file(std::make_shared<const Found>(read(name)), built_in_meanings());
  }
  static LayerChoice& layer(ImportFile& file, std::string_view name) {
    for (std::size_t i = 0; i < file.layers.size(); ++i)
      if (file.found->layers[i] == name) return file.layers[i];
    ADD_FAILURE() << name;
    return file.layers.at(0);
  }
  static Imported cut(const std::vector<ImportFile>& files, const CrossingLine& line, const ImportBounds& bounds = {}) {
    const Result<Imported> imported = into_crossing(files, line, bounds);
    EXPECT_TRUE(imported) << imported.error().english();
    return imported.value_or(Imported{});
  }
};

/// Survey points of the plane on a grid, 5 m apart, around (100, 200).
std::string survey(const Plane& plane) {
  std::string text;
  for (int i = -6; i <= 10; ++i)
    for (int k = -6; k <= 6; ++k) {
      const double x = 100 + 5.0 * i + 0.13 * k, y = 200 + 5.0 * k - 0.07 * i;
      text += std::to_string(text.size()) + "," + std::to_string(y) + "," + std::to_string(x) + "," +
              std::to_string(plane.at(x, y)) + ",GND\n";
    }
  return text;
}

// Second route: between points of a plane every triangulation gives the plane.
TEST_F(IntoCrossing, Ground_PointsOfAPlane) {
  const Plane plane{50, 0.03, -0.02};
  write("a.csv", survey(plane));
  const Imported imported = cut({file("a.csv")}, {{100, 200}, {124, 207}});
  EXPECT_NEAR(imported.length.m, 25, 1e-9);
  ASSERT_GE(imported.ground.size(), 2u);
  EXPECT_LE(imported.ground.front().station_m, 0);
  EXPECT_GE(imported.ground.back().station_m, 25);
  for (const double s : {0.0, 7.3, 18.0, 25.0})
    EXPECT_NEAR(elevation_at(imported.ground, s), plane.at(100 + s * 24 / 25, 200 + s * 7 / 25), 1e-4) << s;
  EXPECT_FALSE(imported.ground_points.empty());
}

TEST_F(IntoCrossing, Ground_SurfaceBeforeGridBeforePoints) {
  write("a.csv", survey({10, 0, 0}));
  write_grid(path("b.tif"), 0, 0, 400, 1, 400, {20, 0, 0});
  write("c.xml",
        "<LandXML><Surfaces><Surface name='EG'><Definition><Pnts><P id='1'>100 0 30</P><P id='2'>100 300 30</P><P "
        "id='3'>400 100 30</P></Pnts>"
        "<Faces><F>1 2 3</F></Faces></Definition></Surface></Surfaces></LandXML>");
  const CrossingLine line{{100, 200}, {120, 200}};
  EXPECT_NEAR(elevation_at(cut({file("a.csv"), file("b.tif"), file("c.xml")}, line).ground, 5), 30, 1e-9);
  EXPECT_NEAR(elevation_at(cut({file("a.csv"), file("b.tif")}, line).ground, 5), 20, 1e-9);
  EXPECT_NEAR(elevation_at(cut({file("a.csv")}, line).ground, 5), 10, 1e-5);
}

// Second route: the plane itself, which bilinear reading keeps exactly.
TEST_F(IntoCrossing, Ground_GridOfAPlane) {
  const Plane plane{5, 0.04, 0.01};
  write_grid(path("b.tif"), 0, 0, 400, 2.5, 160, plane);
  const Imported imported = cut({file("b.tif")}, {{101, 203}, {111, 220}});
  for (const double s : {0.0, 3.3, imported.length.m})
    EXPECT_NEAR(elevation_at(imported.ground, s),
                plane.at(101 + s * 10 / imported.length.m, 203 + s * 17 / imported.length.m), 1e-9);
}

TEST_F(IntoCrossing, Ground_GapIsSaid) {
  write("c.xml",
        "<LandXML><Surfaces><Surface name='EG'><Definition><Pnts><P id='1'>-50 -50 1</P><P id='2'>50 -50 1</P><P "
        "id='3'>0 8 1</P>"
        "<P id='4'>-50 70 1</P><P id='5'>50 70 1</P><P id='6'>0 12 1</P></Pnts><Faces><F>1 2 3</F><F>4 5 "
        "6</F></Faces></Definition></Surface></Surfaces></LandXML>");
  const Imported imported = cut({file("c.xml")}, {{0, 0}, {20, 0}});
  EXPECT_TRUE(says(imported.notes, "gap from station 8.00 to 12.00"));
}

// Second route to the cut of a triangle: the height by the plane through its corners (cross product).
TEST(GroundCut, Triangle_PlaneThroughItsCorners) {
  const std::array<Point3, 3> corners{{{1, -2, 10}, {7, 3, 12}, {2, 5, 9}}};
  const auto piece = cut_triangle(corners);
  ASSERT_TRUE(piece);
  const double ux = 6, uy = 5, uz = 2, vx = 1, vy = 7, vz = -1;
  const double nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
  for (const LevelPoint& p : {piece->from, piece->to})
    EXPECT_NEAR(p.elevation_m, 10 - (nx * (p.station_m - 1) + ny * 2) / nz, 1e-12);
  EXPECT_LT(piece->from.station_m, piece->to.station_m);
  EXPECT_FALSE(cut_triangle({{{0, 1, 1}, {1, 2, 1}, {2, 1, 1}}}));
  // Two triangles that share a corner on the line leave no gap there.
  const auto left = cut_triangle({{{0, 0, 1}, {-2, 3, 1}, {-2, -3, 1}}}),
             right = cut_triangle({{{0, 0, 1}, {2, 3, 1}, {2, -3, 1}}});
  ASSERT_TRUE(left && right);
  EXPECT_EQ(left->to.station_m, right->from.station_m);
}

TEST(Simplify, Property_WithinTolerance) {
  std::vector<PlanPoint> line;
  for (int i = 0; i <= 1000; ++i) line.push_back({i * 0.1, std::sin(i * 0.05)});
  const auto keep = simplified(line, 0.01);
  // Pieces of √(8 R t) = 0.57 m would do where the curve is sharpest (R = 4 m): 177 of them.
  EXPECT_LT(keep.size(), 250u);
  for (std::size_t k = 1; k < keep.size(); ++k)
    for (std::size_t i = keep[k - 1]; i < keep[k]; ++i) {
      const PlanPoint &a = line[keep[k - 1]], &b = line[keep[k]];
      const double t = (line[i].x_m - a.x_m) / (b.x_m - a.x_m);
      EXPECT_LE(std::abs(line[i].y_m - a.y_m - t * (b.y_m - a.y_m)), 0.011);
    }
  EXPECT_TRUE(simplified({}, 1).empty());
  EXPECT_EQ(simplified({{0, 0}, {5, 0}, {10, 0}}, 0.01).size(), 2u);
  EXPECT_EQ(simplified({{0, 0}, {5, 3}, {0, 0}}, 0.01).size(), 3u) << "a closed line keeps its farthest point";
}

// Second route: the least of the distances between many points of both.
TEST(NearLines, Distance_ByManyPoints) {
  for (const std::vector<PathVertex>& line :
       std::vector<std::vector<PathVertex>>{{{-5, 3, {}}, {20, 7, {}}},
                                            {{4, -2, {}}, {6, 9, {}}},
                                            {{-9, -8, {}}, {-1, 4, {}}, {-3, 1, {}}},
                                            {{15, 0, {}}, {18, 0, {}}},
                                            {{2, 0, {}}, {3, 0, {}}},
                                            {{14, 6, {}}, {11, -1, {}}},
                                            {{5, 5, {}}}}) {
    double least = 1e9;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const PathVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
      for (int k = 0; k <= 1000; ++k)
        for (int s = 0; s <= 100; ++s)
          least = std::min(
              least, std::hypot(a.x_m + k * 0.001 * (b.x_m - a.x_m) - s * 0.12, a.y_m + k * 0.001 * (b.y_m - a.y_m)));
    }
    EXPECT_NEAR(distance_from_crossing_m(line, 12), least, 0.07);
    EXPECT_LE(distance_from_crossing_m(line, 12), least + 1e-9);
  }
}

TEST(NearLines, Box_CutsAndKeepsHeights) {
  const NearBox box{0, 10, -5, 5};
  const auto parts =
      inside_box({{-5, 0, 1.0}, {5, 0, 2.0}, {5, 20, 4.0}, {8, 20, std::nullopt}, {8, 0, std::nullopt}}, box);
  ASSERT_EQ(parts.size(), 2u);
  EXPECT_EQ(parts[0], (std::vector<PathVertex>{{0, 0, 1.5}, {5, 0, 2.0}, {5, 5, 2.5}}));
  EXPECT_EQ(parts[1].front(), (PathVertex{8, 5, std::nullopt}));
  EXPECT_TRUE(inside_box({{20, 0, 1.0}, {30, 0, 1.0}}, box).empty());
}

// The trap: without traditional axes latitude and longitude change places and nobody notices. Second route: radii of
// curvature of the ellipsoid (WGS 84: a = 6378137 m, 1/f = 298.257223563).
TEST_F(IntoCrossing, Trap_AxisOrderAgainstRadiiOfCurvature) {
  const double lat = 50, lon = 9, d = 1e-4, a = 6378137, f = 1 / 298.257223563, e2 = f * (2 - f);
  const double w = std::sqrt(1 - e2 * std::pow(std::sin(lat * pi / 180), 2));
  const double north = a * (1 - e2) / (w * w * w) * d * pi / 180,
               east = a / w * std::cos(lat * pi / 180) * d * pi / 180;
  write(
      "a.geojson",
      R"({"type":"Feature","properties":{"code":"GAS"},"geometry":{"type":"LineString","coordinates":[[9,50],[9.0001,50.0001]]}})");
  const Imported imported = cut({file("a.geojson")}, {{lon, lat}, {lon + d, lat}});
  EXPECT_NEAR(imported.length.m, east, 1e-3);
  ASSERT_EQ(imported.utilities.size(), 1u);
  EXPECT_NEAR(imported.utilities[0].path.back().x_m, east, 1e-3);
  EXPECT_NEAR(imported.utilities[0].path.back().y_m, north, 1e-3);
  EXPECT_EQ(imported.georeference.crs, "EPSG:32632");
  EXPECT_NEAR(imported.georeference.origin.x_m, 500000, 1e-6) << "9° is the middle of zone 32";
}

// The trap: a UTM zone shortens lengths by 0.9996 at its middle meridian (definition), 24 m come out as 24.0096 m.
TEST_F(IntoCrossing, Trap_ScaleOfTheProjection) {
  write_lines("GPKG", path("c.gpkg"), 25832, {{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}});
  const Imported imported = cut({file("c.gpkg")}, {{500000, 5540000}, {500024, 5540000}});
  EXPECT_NEAR(imported.length.m, 24 / 0.9996, 1e-5);
  EXPECT_EQ(imported.georeference.crs, "EPSG:25832");
  EXPECT_NEAR(imported.georeference.origin.y_m, 5540000, 1e-6);
  EXPECT_NEAR(imported.georeference.azimuth->rad, pi / 2, 1e-7);
}

// The trap: a datum shift whose grid is not there is metres off without an error.
TEST_F(IntoCrossing, Trap_DatumShiftIsSaid) {
  write("a.geojson", R"({"type":"LineString","coordinates":[[-1.5,52.5],[-1.4999,52.5001]]})");
  write_lines("GPKG", path("b.gpkg"), 27700, {{{434039, 289240, 0}, {434049, 289250, 0}}});
  const Imported imported = cut({file("a.geojson"), file("b.gpkg")}, {{-1.5, 52.5}, {-1.4998, 52.5}});
  EXPECT_TRUE(says(imported.notes, "datum")) << imported.notes.size();
  write_lines("GPKG", path("c.gpkg"), 32630, {{{601800, 5817500, 0}, {601810, 5817510, 0}}});
  EXPECT_FALSE(says(cut({file("a.geojson"), file("c.gpkg")}, {{-1.5, 52.5}, {-1.4998, 52.5}}).notes, "datum"));
}

// The trap: heights keep their own unit. 100 ft = 30.48 m, whatever the plan is in.
TEST_F(IntoCrossing, Trap_HeightsHaveTheirOwnUnit) {
  write_lines("GPKG", path("c.gpkg"), 25832, {{{500010, 5539980, 100}, {500010, 5540030, 100}}});
  ImportFile metric = file("c.gpkg");
  metric.height_unit = FileUnit::foot;
  metric.layers[0].heights_from = DepthFrom::datum;
  metric.layers[0].level = LevelMeant::centre;
  const Imported imported = cut({metric}, {{500000, 5540000}, {500024, 5540000}});
  ASSERT_EQ(imported.utilities.size(), 1u);
  EXPECT_NEAR(*imported.utilities[0].path[0].z_m, 30.48, 1e-9);
  EXPECT_NEAR(imported.utilities[0].path[0].x_m, 10 / 0.9996, 1e-4);
  write("d.csv", "1,0,0,100,GAS\n2,0,20,100,GAS\n3,10,20,100,GAS\n");
  ImportFile feet = file("d.csv");
  feet.unit = FileUnit::us_survey_foot;
  feet.layers[0] = {Meaning::gas, DepthFrom::datum, LevelMeant::centre, std::nullopt, true};
  const Imported all_feet = cut({feet}, {{0, 0}, {20, 0}});
  EXPECT_NEAR(all_feet.length.m, 20 * 1200.0 / 3937.0, 1e-12);
  EXPECT_NEAR(*all_feet.utilities.at(0).path[0].z_m, 100 * 1200.0 / 3937.0, 1e-9);
}

std::string mains() {
  return drawing("6", drawing_line("GAS", 5, -5, 101, 5, 5, 101.5) + drawing_line("WATER", 8, -5, 0, 8, 5, 0) +
                          drawing_line("GND", -20, -20, 102, 40, -20, 102) +
                          drawing_line("GND", -20, 20, 102, 40, 20, 102));
}

// The trap: crown, centre or invert, from the ground or from datum; what is not said is not known.
TEST_F(IntoCrossing, Trap_DepthReference) {
  write("a.dxf", mains());
  ImportFile drawn = file("a.dxf");
  const CrossingLine line{{0, 0}, {20, 0}};
  const auto gas = [&](std::optional<DepthFrom> from, std::optional<LevelMeant> level, std::optional<Length> diameter) {
    layer(drawn, "GAS").heights_from = from;
    layer(drawn, "GAS").level = level;
    layer(drawn, "GAS").diameter = diameter;
    const Imported imported = cut({drawn}, line);
    EXPECT_EQ(imported.utilities.size(), 2u);
    return imported;
  };
  const auto z = [](const Imported& imported) { return imported.utilities.at(0).path.at(0).z_m; };
  const Imported unsaid = gas(std::nullopt, std::nullopt, std::nullopt);
  EXPECT_FALSE(z(unsaid));
  EXPECT_THAT(unsaid.left_out.at(0).reason, HasSubstr("elevations or depths"));
  EXPECT_THAT(gas(DepthFrom::datum, std::nullopt, std::nullopt).left_out.at(0).reason, HasSubstr("crown"));
  EXPECT_EQ(z(gas(DepthFrom::datum, LevelMeant::centre, std::nullopt)), 101.0);
  EXPECT_THAT(gas(DepthFrom::datum, LevelMeant::crown, std::nullopt).left_out.at(0).reason, HasSubstr("diameter"));
  EXPECT_NEAR(*z(gas(DepthFrom::datum, LevelMeant::crown, Length{0.2})), 100.9, 1e-12);
  EXPECT_NEAR(*z(gas(DepthFrom::datum, LevelMeant::invert, Length{0.2})), 101.1, 1e-12);
  EXPECT_NEAR(*z(gas(DepthFrom::ground, LevelMeant::centre, std::nullopt)), 102 - 101, 1e-9);
  const Utility water = gas(std::nullopt, std::nullopt, std::nullopt).utilities.at(1);
  EXPECT_EQ(water.kind, UtilityKind::water);
  EXPECT_FALSE(water.path[0].z_m) << "0 throughout is no depth";
  EXPECT_EQ(*water.located.how, LocatedHow::records);
  EXPECT_THAT(water.recorded.source, HasSubstr("a.dxf, layer WATER"));
}

TEST_F(IntoCrossing, Inverts_OfANetworkBecomeTheCentre) {
  write("a.xml",
        "<LandXML><Units><Metric linearUnit='meter' diameterUnit='millimeter'/></Units><PipeNetworks><PipeNetwork "
        "name='storm'><Structs>"
        "<Struct name='A'><Center>-5 5</Center><Invert refPipe='P' elev='101.5'/></Struct><Struct name='B'><Center>5 "
        "5</Center>"
        "<Invert refPipe='P' elev='101.25'/></Struct></Structs><Pipes><Pipe name='P' refStart='A' refEnd='B'><CircPipe "
        "diameter='300'/></Pipe></Pipes></PipeNetwork></PipeNetworks></LandXML>");
  const Imported imported = cut({file("a.xml")}, {{0, 0}, {20, 0}});
  ASSERT_EQ(imported.utilities.size(), 1u);
  const Utility& u = imported.utilities[0];
  EXPECT_EQ(u.kind, UtilityKind::sewer);
  EXPECT_NEAR(*u.path[0].z_m, 101.65, 1e-12);
  EXPECT_EQ(u.recorded.level, LevelMeant::invert);
  EXPECT_EQ(u.recorded.diameter, DiameterMeant::inside);
}

TEST_F(IntoCrossing, RoadEdges_PairedWithSkew) {
  write("a.dxf", drawing("6", drawing_line("KERB", 4, -10, 0, 6, 10, 0) + drawing_line("KERB", 10, -10, 0, 12, 10, 0) +
                                  drawing_line("KERB", 15, -10, 0, 15, 10, 0)));
  const Imported imported = cut({file("a.dxf")}, {{0, 0}, {20, 0}});
  ASSERT_EQ(imported.surface.size(), 1u);
  EXPECT_NEAR(imported.surface[0].from->m, 5, 1e-9);
  EXPECT_NEAR(imported.surface[0].to->m, 11, 1e-9);
  EXPECT_NEAR(imported.surface[0].skew->rad, std::atan(0.1), 1e-9);
  EXPECT_THAT(imported.left_out.at(0).text, HasSubstr("15.00"));
}

TEST_F(IntoCrossing, Background_IsKeptLight) {
  std::string entities;
  for (int i = 0; i < 200; ++i) entities += drawing_line("WALL", i * 0.01, 20, 0, i * 0.01, 40, 0);
  std::string wave = pair(0, "LWPOLYLINE") + pair(8, "HEDGE") + pair(90, "5000") + pair(70, "0");
  for (int i = 0; i < 5000; ++i)
    wave += pair(10, std::to_string(-50 + i * 0.02)) + pair(20, std::to_string(25 + 0.5 * std::sin(i * 0.01)));
  write("a.dxf", drawing("6", entities + wave + drawing_line("FAR", 900, 900, 0, 950, 950, 0)));
  const Imported imported = cut({file("a.dxf")}, {{0, 0}, {20, 0}});
  ASSERT_EQ(imported.background.size(), 2u) << "what lies far off does not come along";
  EXPECT_EQ(imported.background[1].layer, "HEDGE");
  EXPECT_LT(imported.background[1].lines.at(0).size(), 300u);
  EXPECT_TRUE(says(imported.notes, "vertices kept"));
  ImportBounds tight;
  tight.most_background = 100;
  const Imported few = cut({file("a.dxf")}, {{0, 0}, {20, 0}}, tight);
  std::size_t count = 0;
  for (const Background& sheet : few.background)
    for (const PlanLine& line : sheet.lines) count += line.size();
  EXPECT_LE(count, 100u);
  EXPECT_THAT(few.left_out.back().place, HasSubstr("background"));
}

TEST_F(IntoCrossing, Result_ReadsBackAndCountsGroundAsMissing) {
  write("a.dxf", drawing("6", drawing_line("GAS", 5, -5, 101, 5, 5, 101.5)));
  const Crossing bare = crossing_from(cut({file("a.dxf")}, {{0, 0}, {20, 0}}));
  const auto again = read_crossing(write_crossing(bare), load_tables(Date{2026, 3, 2}));
  ASSERT_TRUE(again) << again.error().english();
  EXPECT_EQ(*again, bare);
  EXPECT_LT(bare.site.ground.back().station_m, 0);
  EXPECT_EQ(bare.bore.exit.station.m, 20);
  write("b.csv", survey({50, 0, 0}));
  const Crossing whole = crossing_from(cut({file("b.csv")}, {{100, 200}, {112, 200}}));
  EXPECT_NEAR(whole.bore.launch.elevation.m, 48.8, 1e-5);
  // Into a crossing that is there: its bore stays, ids are new.
  const Crossing both = with_imported(bare, cut({file("a.dxf"), file("b.csv")}, {{100, 200}, {112, 200}}));
  EXPECT_EQ(both.bore, bare.bore);
  const Crossing twice = with_imported(bare, cut({file("a.dxf")}, {{0, 0}, {20, 0}}));
  ASSERT_EQ(twice.site.utilities.size(), 2u);
  EXPECT_NE(twice.site.utilities[0].id, twice.site.utilities[1].id);
}

// A line on the other side of the globe keeps nobody from importing what is near.
TEST_F(IntoCrossing, FarSideOfTheGlobe_IsLeftOut) {
  write("a.geojson",
        R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"code":"GAS"},"geometry":
    {"type":"LineString","coordinates":[[9,50],[9.0001,50.0001]]}},{"type":"Feature","properties":{"code":"GAS"},"geometry":
    {"type":"LineString","coordinates":[[9,50],[179,-0.5],[99,-1]]}},{"type":"Feature","properties":{"code":"GAS"},"geometry":
    {"type":"LineString","coordinates":[[5,45],[12,48]]}}]})");
  const Imported imported = cut({file("a.geojson")}, {{9, 50}, {9.0001, 50}});
  EXPECT_EQ(imported.utilities.size(), 1u);
  ASSERT_EQ(imported.left_out.size(), 2u);
  EXPECT_THAT(imported.left_out[0].reason, HasSubstr("too far off"));
  EXPECT_THAT(imported.left_out[1].reason, HasSubstr("farther than"));
  EXPECT_FALSE(into_crossing({file("a.geojson")}, {{9, 50}, {179, -0.5}}));
}

TEST_F(IntoCrossing, Line_Refused) {
  write("b.csv", survey({50, 0, 0}));
  for (const CrossingLine& line :
       {CrossingLine{{1, 1}, {1, 1}}, {{0, 0}, {9000, 0}}, {{0, 0}, {std::nan(""), 1}}, {{0, 0}, {1e308, 1}}})
    EXPECT_FALSE(into_crossing({file("b.csv")}, line));
  EXPECT_FALSE(into_crossing({}, {{0, 0}, {10, 0}}));
  int asked = 0;
  const auto ended = into_crossing({file("b.csv")}, {{100, 200}, {112, 200}}, {}, [&](double) { return ++asked < 2; });
  ASSERT_FALSE(ended);
  EXPECT_EQ(ended.error().found, std::string(stopped_by_person));
}

// One transform a thread: four at once give what one gives.
TEST_F(IntoCrossing, Trap_ThreadsShareNothing) {
  write_lines("GPKG", path("c.gpkg"), 25832, {{{500010, 5539980, 100}, {500010, 5540030, 100}}});
  const std::vector<ImportFile> files{file("c.gpkg")};
  const CrossingLine line{{500000, 5540000}, {500024, 5540010}};
  const Imported once = cut(files, line);
  std::vector<Imported> all(4);
  std::vector<std::thread> threads;
  for (Imported& one : all)
    threads.emplace_back([&] {
      for (int i = 0; i < 5; ++i) one = into_crossing(files, line).value_or(Imported{});
    });
  for (std::thread& t : threads) t.join();
  for (const Imported& one : all) EXPECT_EQ(one, once);
}

TEST(Meanings, BuiltIn_UsualNames) {
  const MeaningTable table = built_in_meanings();
  Found found;
  LayerSummary summary;
  summary.lines = 1;
  const auto meaning = [&](const char* name) {
    summary.name = name;
    return meaning_of(found, summary, table);
  };
  EXPECT_EQ(meaning("U-GAS-MP"), Meaning::gas);
  EXPECT_EQ(meaning("kerb face"), Meaning::road_edge);
  EXPECT_EQ(meaning("Abwasserkanal"), Meaning::sewer) << "before water";
  EXPECT_EQ(meaning("FG"), Meaning::not_used) << "the ground as it will be is not the ground";
  EXPECT_EQ(meaning("FENCE"), Meaning::background);
  EXPECT_EQ(meaning("XQ 7"), Meaning::undecided) << "what is not known is asked";
}

TEST(Meanings, Learns_AndForgetsTheOlderWord) {
  const MeaningTable built_in = built_in_meanings();
  MeaningTable own = learned({}, built_in, "GAS1", Meaning::gas);
  EXPECT_TRUE(own.empty()) << "the table says it already";
  own = learned(own, built_in, "XYZ", Meaning::power);
  own = learned(own, built_in, "xyz", Meaning::water);
  ASSERT_EQ(own.size(), 1u);
  EXPECT_EQ(own[0].meaning, Meaning::water);
  const auto back = read_meanings(write_meanings(own));
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_EQ(*back, own);
}

TEST(Meanings, OwnFile_Refused) {
  for (const auto& [text, place] : {std::pair{"{}", ""},
                                    {"nonsense", ""},
                                    {"[1]", "/0"},
                                    {R"([{"match":""}])", "/0/match"},
                                    {R"([{"match":"A","meaning":"gold"}])", "/0/meaning"}}) {
    const auto table = read_meanings(text);
    ASSERT_FALSE(table) << text;
    EXPECT_EQ(table.error().place, place) << text;
  }
  EXPECT_TRUE(fits("*gas*", "U-GAS"));
  EXPECT_FALSE(fits("gas*", "U-GAS"));
  EXPECT_TRUE(fits("a*b*c", "aXXbYYbZc"));
}

}  // namespace
}  // namespace burrow::test

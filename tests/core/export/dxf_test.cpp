// The drawing file, read back by another library (ezdxf, its own audit) where Python has it, and by its group codes
// here.

#include "burrow/export/dxf.h"

#include <charconv>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <unistd.h>

#include "burrow/export/dxf_text.h"
#include "support/export_for_tests.h"

namespace burrow::test {
namespace {

struct Group {
  int code = 0;
  std::string value;
};

/// Lines in pairs: code, value.
std::vector<Group> groups(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find("\r\n", at);
    EXPECT_NE(end, std::string::npos);
    if (end == std::string::npos) break;
    lines.push_back(text.substr(at, end - at));
    at = end + 2;
  }
  EXPECT_EQ(lines.size() % 2, 0u);
  std::vector<Group> all;
  for (std::size_t i = 0; i + 1 < lines.size(); i += 2) all.push_back({std::atoi(lines[i].c_str()), lines[i + 1]});
  return all;
}

double number(const std::string& text) {
  double value = NAN;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

struct Outline {
  bool closed = false;
  std::vector<PlanPoint> points;
};

/// The polylines of one layer.
std::vector<Outline> outlines(const std::vector<Group>& all, const std::string& layer) {
  std::vector<Outline> found;
  bool inside = false, vertex = false;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    const Group& g = all[i];
    if (g.code == 0) {
      vertex = g.value == "VERTEX";
      if (g.value == "POLYLINE") {
        inside = all[i + 1].value == layer;
        if (inside) found.emplace_back();
      } else if (!vertex) {
        inside = false;
      }
      continue;
    }
    if (!inside) continue;
    if (!vertex && g.code == 70) found.back().closed = g.value == "1";
    if (vertex && g.code == 10) found.back().points.push_back({number(g.value), number(all[i + 1].value)});
  }
  return found;
}

double area(const std::vector<PlanPoint>& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlanPoint& a = ring[i];
    const PlanPoint& b = ring[(i + 1) % ring.size()];
    twice += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return std::abs(twice) / 2;
}

TEST(Dxf, Text_InCodePage1252AndKeepsItsSigns) {
  EXPECT_EQ(dxf_string("Alder Lane"), "Alder Lane");
  EXPECT_EQ(dxf_string("Straße"),
            "Stra\xDF"
            "e");
  EXPECT_EQ(dxf_string("5 € – „so“"), "5 \x80 \x96 \x84so\x93");
  EXPECT_EQ(dxf_string("−0.31 m"), "\\U+22120.31 m");
  EXPECT_EQ(dxf_string("90%%d"), "90% %d");
  EXPECT_EQ(dxf_string("a\r\nb"), "a  b");
  EXPECT_EQ(dxf_string("\xF0\x9F\x98\x80"), "?");
  EXPECT_EQ(dxf_string("cut \xE2"), "cut ?") << "bytes that are no UTF-8 must not run over the end";
}

TEST(Dxf, Header_SaysReleaseTwelveAndMetres) {
  const Judged& j = judged_sample("house-service");
  const auto all = groups(write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric));
  const auto after = [&](const std::string& name) {
    for (std::size_t i = 0; i + 1 < all.size(); ++i)
      if (all[i].code == 9 && all[i].value == name) return all[i + 1].value;
    return std::string("none");
  };
  EXPECT_EQ(after("$ACADVER"), "AC1009");
  EXPECT_EQ(after("$INSUNITS"), "6");
  EXPECT_EQ(after("$DWGCODEPAGE"), "ANSI_1252");
  EXPECT_EQ(all.back().value, "EOF");
  for (const Group& g : all)
    for (const char c : g.value) EXPECT_TRUE(static_cast<unsigned char>(c) >= 0x20 && c != 0x7f) << g.value;
}

// Closed pits have the area of the shape they were drawn from; the bore has its length.
TEST(Dxf, PitsAndBore_HaveTheirAreaAndLength) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const auto all = groups(write_dxf(j.crossing, tables(), j.answer, UnitSystem::us));
    const auto pits = outlines(all, "PLAN-PIT");
    ASSERT_EQ(pits.size(), 4u) << name;
    EXPECT_TRUE(std::all_of(pits.begin(), pits.end(), [](const Outline& o) { return o.closed; }));
    EXPECT_NEAR(area(pits[0].points), j.answer.launch_pit.floor_length_m * j.answer.launch_pit.floor_width_m, 1e-4);
    EXPECT_NEAR(area(pits[1].points), area(j.answer.launch_pit.footprint), 1e-4);
    EXPECT_NEAR(area(pits[3].points), area(j.answer.exit_pit.footprint), 1e-4);
    const auto bore = outlines(all, "SIDE-BORE");
    ASSERT_EQ(bore.size(), 3u) << name;
    EXPECT_FALSE(bore[0].closed);
    double length = 0;
    for (std::size_t i = 1; i < bore[0].points.size(); ++i)
      length += std::hypot(bore[0].points[i].x_m - bore[0].points[i - 1].x_m,
                           bore[0].points[i].y_m - bore[0].points[i - 1].y_m);
    EXPECT_NEAR(length, j.answer.bore.length_m, 0.01) << name;  // chords, and the little that lies across
  }
}

TEST(Dxf, SideElevation_StandsAboveThePlanByWholeTens) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const double shift = side_elevation_shift_m(j.crossing, j.answer);
    EXPECT_EQ(std::fmod(shift, 10.0), 0.0);
    const auto all = groups(write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric));
    double plan_top = -1e300, side_bottom = 1e300;
    for (const auto& [kind, word] : EnumNames<UtilityKind>::list) {
      std::string layer = "PLAN-";
      for (const char c : word) layer += static_cast<char>(std::toupper(c));
      for (const Outline& o : outlines(all, layer))
        for (const PlanPoint& p : o.points) plan_top = std::max(plan_top, p.y_m);
    }
    for (const char* layer : {"SIDE-PIT", "SIDE-BORE", "SIDE-GROUND", "SIDE-STRATA", "SIDE-WATER"})
      for (const Outline& o : outlines(all, layer))
        for (const PlanPoint& p : o.points) side_bottom = std::min(side_bottom, p.y_m);
    EXPECT_GT(side_bottom, plan_top + 1.99) << name;
    const auto ground = outlines(all, "SIDE-GROUND");
    ASSERT_EQ(ground.size(), 1u);
    EXPECT_NEAR(ground[0].points[0].y_m, j.crossing.site.ground[0].elevation_m + shift, 1e-6);
  }
}

TEST(Dxf, Profile_AloneHasTrueLevels) {
  const Judged& j = judged_sample("house-service");
  const auto all = groups(*write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric, {DxfView::profile}));
  EXPECT_TRUE(outlines(all, "PLAN-PIT").empty());
  const auto ground = outlines(all, "SIDE-GROUND");
  ASSERT_EQ(ground.size(), 1u);
  for (std::size_t i = 0; i < ground[0].points.size(); ++i)
    EXPECT_NEAR(ground[0].points[i].y_m, j.crossing.site.ground[i].elevation_m, 1e-6);
  for (const char* layer : {"SIDE-SURFACE", "SIDE-ZONE", "SIDE-LEVEL", "SIDE-DIMENSION", "SIDE-TESTHOLE"})
    EXPECT_FALSE(outlines(all, layer).empty()) << layer;
}

// Turned and moved by hand: east = x sin(az) - y cos(az), north = x cos(az) + y sin(az), from the definition of a
// bearing.
TEST(Dxf, Plan_InTheSurveysCoordinates) {
  Judged j = judged_sample("house-service");
  const DxfOptions survey{DxfView::plan, DxfPlace::survey};
  EXPECT_FALSE(write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric, survey)) << "no place on the map";
  Georeference geo;
  geo.crs = "EPSG:25832";
  geo.origin = {691000, 5334000};
  geo.azimuth.set(Angle{0.7});
  j.crossing.site.georeference = geo;
  const auto all = groups(*write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric, survey));
  const auto pits = outlines(all, "PLAN-PIT");
  ASSERT_EQ(pits.size(), 4u);
  for (std::size_t i = 0; i < pits[0].points.size(); ++i) {
    const PlanPoint& local = j.answer.launch_pit.floor[i];
    EXPECT_NEAR(pits[0].points[i].x_m, 691000 + local.x_m * std::sin(0.7) - local.y_m * std::cos(0.7), 1e-5);
    EXPECT_NEAR(pits[0].points[i].y_m, 5334000 + local.x_m * std::cos(0.7) + local.y_m * std::sin(0.7), 1e-5);
  }
  EXPECT_FALSE(write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric, {DxfView::both, DxfPlace::survey}))
      << "a profile has no place on the map";
}

// 1 US survey foot = 1200/3937 m.
TEST(Dxf, Feet_OfTheSurvey) {
  const Judged& j = judged_sample("house-service");
  const auto metric = groups(*write_dxf(j.crossing, tables(), j.answer, UnitSystem::us, {DxfView::profile}));
  const auto feet = groups(*write_dxf(j.crossing, tables(), j.answer, UnitSystem::us,
                                      {DxfView::profile, DxfPlace::local, DxfLength::us_survey_foot}));
  const auto a = outlines(metric, "SIDE-PIT"), b = outlines(feet, "SIDE-PIT");
  ASSERT_EQ(a.size(), b.size());
  ASSERT_FALSE(a.empty());
  for (std::size_t i = 0; i < a[0].points.size(); ++i)
    EXPECT_NEAR(b[0].points[i].y_m, a[0].points[i].y_m * 3937 / 1200, 1e-5);
}

// Second route: ezdxf reads it without its repair mode, its audit finds nothing, lengths and layers are as said.
TEST(Dxf, AnotherLibrary_ReadsItAndFindsNoFault) {
  ASSERT_EQ(std::system("/usr/bin/python3 -c 'import ezdxf' >/dev/null 2>&1"), 0) << "python3-ezdxf is not there";
  const auto folder = std::filesystem::temp_directory_path() / ("burrow-dxf-" + std::to_string(::getpid()));
  std::filesystem::create_directory(folder);
  std::ofstream(folder / "audit.py") << R"(import sys, math, ezdxf
for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    assert doc.dxfversion == "AC1009", doc.dxfversion
    faults = doc.audit()
    assert not faults.errors and not faults.fixes, (faults.errors, faults.fixes)
    space = doc.modelspace()
    layers = {l.dxf.name for l in doc.layers}
    assert {"PLAN-BORE", "SIDE-BORE", "PLAN-PIT", "SIDE-GROUND"} <= layers, layers
    assert all(e.dxf.layer in layers for e in space)
    pits = [e for e in space.query("POLYLINE") if e.dxf.layer == "PLAN-PIT"]
    assert len(pits) == 4 and all(p.is_closed for p in pits)
    bore = [e for e in space.query("POLYLINE") if e.dxf.layer == "PLAN-BORE"]
    assert len(bore) == 1 and bore[0].is_3d_polyline
    assert len(space.query("TEXT")) >= 3 and doc.header["$INSUNITS"] == 6
    assert any("ä" in t.dxf.text for t in space.query("TEXT")), "letters of the code page"
)";
  std::string call = "/usr/bin/python3 '" + (folder / "audit.py").string() + "'";
  for (const std::string& name : sample_names()) {
    Judged j = judged_sample(name);
    j.crossing.name += " – ä%%c\nnew line";
    const auto file = folder / (name + ".dxf");
    std::ofstream(file, std::ios::binary) << write_dxf(j.crossing, tables(), j.answer, UnitSystem::metric);
    call += " '" + file.string() + "'";
  }
  EXPECT_EQ(std::system(call.c_str()), 0);
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace burrow::test

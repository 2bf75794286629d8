// Units, place and curves of a drawing, from headers as programs write them.

#include <gmock/gmock.h>

#include <cmath>

#include "dxf_curves.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class DrawingUnits : public WithFolder {
 protected:
  /// A whole header: names of styles in group 2 and 7 stand before and after what tells the unit.
  static std::string full_header(const std::string& units) {
    return pair(0, "SECTION") + pair(2, "HEADER") + pair(9, "$ACADVER") + pair(1, "AC1024") + pair(9, "$DIMSTYLE") +
           pair(2, "STANDARD") + pair(9, "$CMLSTYLE") + pair(2, "ENTITIES") + units + pair(9, "$DIMBLK") +
           pair(2, "_DOT") + pair(9, "$PUCSNAME") + pair(2, "BLOCKS") + pair(0, "ENDSEC");
  }
  static std::string variable(const char* name, const char* value) { return pair(9, name) + pair(70, value); }
  std::string drawn(const std::string& units, const std::string& objects = {}) {
    return write("a.dxf", full_header(units) + pair(0, "SECTION") + pair(2, "ENTITIES") +
                              drawing_line("GAS", 0, 0, 0, 100, 50, 0) + pair(0, "ENDSEC") + objects + pair(0, "EOF"));
  }
};

// The trap: a name in group 2 within the header is no section.
TEST_F(DrawingUnits, Header_NamesOfStylesAreNoSections) {
  for (const auto& [number, unit] : {std::pair{"1", FileUnit::inch},
                                     {"2", FileUnit::foot},
                                     {"4", FileUnit::millimetre},
                                     {"5", FileUnit::centimetre},
                                     {"6", FileUnit::metre},
                                     {"21", FileUnit::us_survey_foot}}) {
    drawn(variable("$INSUNITS", number));
    const Found found = read("a.dxf");
    EXPECT_EQ(found.frame.unit, unit) << number;
    EXPECT_EQ(found.frame.height_unit, unit) << number;
    EXPECT_TRUE(found.frame.unit_is_doubtful);
    EXPECT_EQ(found.features.size(), 1u);
  }
}

TEST_F(DrawingUnits, WhatIsNotStatedIsNotKnown) {
  drawn("");
  EXPECT_FALSE(read("a.dxf").frame.unit);
  drawn(variable("$INSUNITS", "0") + variable("$MEASUREMENT", "1"));
  EXPECT_FALSE(read("a.dxf").frame.unit);
  EXPECT_TRUE(says(read("a.dxf").notes, "metres or millimetres"));
  drawn(variable("$INSUNITS", "0") + variable("$MEASUREMENT", "0"));
  EXPECT_TRUE(says(read("a.dxf").notes, "inches or feet"));
  drawn(variable("$INSUNITS", "10"));
  EXPECT_FALSE(read("a.dxf").frame.unit);
  EXPECT_TRUE(says(read("a.dxf").notes, "none of m"));
  EXPECT_TRUE(read("a.dxf").frame.unit_is_foreign);
}

// Lengths shown as feet and inches are counted in inches (DXF reference, $LUNITS 3 and 4).
TEST_F(DrawingUnits, FeetAndInchesAreCountedInInches) {
  for (const char* shown : {"3", "4"}) {
    drawn(variable("$INSUNITS", "0") + variable("$LUNITS", shown));
    EXPECT_EQ(read("a.dxf").frame.unit, FileUnit::inch);
  }
  drawn(variable("$LUNITS", "2"));
  EXPECT_FALSE(read("a.dxf").frame.unit);
  drawn(variable("$INSUNITS", "6") + variable("$LUNITS", "4"));
  EXPECT_EQ(read("a.dxf").frame.unit, FileUnit::metre) << "what is stated counts";
}

TEST_F(DrawingUnits, TwoStatementsThatDoNotAgreeAreSaid) {
  drawn(variable("$MEASUREMENT", "1") + variable("$INSUNITS", "1"));
  EXPECT_TRUE(says(read("a.dxf").notes, "metric patterns"));
  drawn(variable("$MEASUREMENT", "0") + variable("$INSUNITS", "6"));
  EXPECT_TRUE(says(read("a.dxf").notes, "inches beside it"));
  drawn(variable("$MEASUREMENT", "1") + variable("$INSUNITS", "6"));
  EXPECT_FALSE(says(read("a.dxf").notes, "patterns"));
}

std::string geo_data(const std::string& kind, double shift, const std::string& namespace_name,
                     const char* scale = "1.0") {
  return pair(0, "SECTION") + pair(2, "OBJECTS") + pair(0, "GEODATA") + pair(5, "2F") + pair(90, "2") + pair(70, kind) +
         pair(10, "0") + pair(20, "0") + pair(30, "0") + pair(11, std::to_string(shift)) + pair(21, "0") +
         pair(31, "0") + pair(40, scale) + pair(12, "0") + pair(22, "1") +
         pair(303, "<?xml version=\"1.0\"?><Dictionary><Alias id=\"258") +
         pair(301, "32\" type=\"CoordinateSystem\"><ObjectId>x</ObjectId><Namespace>" + namespace_name +
                       "</Namespace></Alias></Dictionary>") +
         pair(0, "ENDSEC");
}

TEST_F(DrawingUnits, GeoData_NamesTheSystem) {
  drawn(variable("$INSUNITS", "6"), geo_data("2", 0, "EPSG Code"));
  const Found found = read("a.dxf");
  EXPECT_EQ(found.frame.crs, "EPSG:25832");
  EXPECT_EQ(found.frame.unit, FileUnit::metre);
  EXPECT_FALSE(found.frame.unit_is_doubtful);
}

TEST_F(DrawingUnits, GeoData_ThatCannotBeUsedIsSaid) {
  drawn(variable("$INSUNITS", "4"), geo_data("2", 0, "EPSG Code"));
  EXPECT_TRUE(read("a.dxf").frame.crs.empty()) << "millimetres on a grid of metres";
  EXPECT_TRUE(says(read("a.dxf").notes, "EPSG:25832"));
  drawn(variable("$INSUNITS", "6"), geo_data("2", 500000, "EPSG Code"));
  EXPECT_TRUE(read("a.dxf").frame.crs.empty()) << "shifted";
  drawn("", geo_data("2", 0, "EPSG Code", "0.001"));
  EXPECT_TRUE(read("a.dxf").frame.crs.empty()) << "scaled: millimetres, by group 40 alone";
  drawn(variable("$INSUNITS", "10"), geo_data("2", 0, "EPSG Code"));
  EXPECT_TRUE(read("a.dxf").frame.crs.empty()) << "yards on a grid of metres";
  drawn(variable("$INSUNITS", "6"), geo_data("1", 0, "EPSG Code"));
  EXPECT_TRUE(says(read("a.dxf").notes, "state its coordinate system"));
  drawn(variable("$INSUNITS", "6"), geo_data("2", 0, "Another"));
  EXPECT_TRUE(says(read("a.dxf").notes, "state its coordinate system"));
}

double farthest_off(const Found& found, double cx, double cy, double radius) {
  double off = 0;
  for (const FoundFeature& f : found.features)
    for (std::size_t i = f.first + 1; i < f.first + f.count; ++i) {
      const FoundVertex &a = found.vertices[i - 1], &b = found.vertices[i];
      for (const double t : {0.0, 0.5, 1.0})
        off = std::max(
            off, std::abs(std::hypot(a.x_m + t * (b.x_m - a.x_m) - cx, a.y_m + t * (b.y_m - a.y_m) - cy) - radius));
    }
  return off;
}

// The trap: a piece of 4° of a circle of 500 m lies 0.30 m off it.
TEST_F(DrawingUnits, Curves_Within10mmOfTheArc) {
  const std::string arc = pair(0, "ARC") + pair(8, "KERB") + pair(10, "1000") + pair(20, "2000") + pair(40, "500") +
                          pair(50, "10") + pair(51, "80");
  write("a.dxf", drawing("6", arc));
  EXPECT_LT(farthest_off(read("a.dxf"), 1000, 2000, 500), 0.010);
  EXPECT_LT(read("a.dxf").vertices.size(), 400u);
  // A bulge of tan(22.5°/4·…): a quarter of 90°, from (500, 0) to (0, 500) around the origin.
  const std::string bulge = pair(0, "LWPOLYLINE") + pair(8, "KERB") + pair(90, "2") + pair(70, "0") + pair(10, "500") +
                            pair(20, "0") + pair(42, std::to_string(std::tan(std::atan(1.0) / 2))) + pair(10, "0") +
                            pair(20, "500");
  write("b.dxf", drawing("6", bulge));
  EXPECT_LT(farthest_off(read("b.dxf"), 0, 0, 500), 0.010);
  // Small circles beside a large arc are not cut as finely as it.
  std::string covers;
  for (int i = 0; i < 50; ++i)
    covers += pair(0, "CIRCLE") + pair(8, "MH") + pair(10, std::to_string(i * 10)) + pair(20, "0") + pair(40, "0.3");
  write("c.dxf", drawing("6", arc + covers));
  EXPECT_LT(read("c.dxf").vertices.size(), 2500u);
}

// Second route to the step: the sagitta of the piece.
TEST(DrawingCurves, Step_BySagitta) {
  for (const double radius : {0.1, 1.0, 30.0, 500.0, 5000.0}) {
    const double step = step_degrees(radius, 0.006);
    const double sagitta = radius * (1 - std::cos(step / 2 * std::acos(-1.0) / 180));
    if (step > 0.1001) {
      EXPECT_LE(sagitta, 0.0061) << radius;
    }
    EXPECT_GE(step, 0.1);
    EXPECT_LE(step, 4);
  }
}

// Through points of a circle of 50 m the smooth line stays near it; through points of a straight line on it.
TEST(DrawingCurves, Through_PointsOfACircle) {
  std::vector<PlanPoint> points, straight;
  for (int i = 0; i <= 12; ++i) {
    points.push_back({50 * std::cos(i * 0.1), 50 * std::sin(i * 0.1)});
    straight.push_back({i * 3.0, i * 4.0});
  }
  const auto line = smooth_through(points);
  for (std::size_t i = 32 * 3; i + 32 * 3 < line.size(); ++i)
    EXPECT_NEAR(std::hypot(line[i].x_m, line[i].y_m), 50, 0.01) << i;
  for (const PlanPoint& p : smooth_through(straight)) EXPECT_NEAR(4 * p.x_m - 3 * p.y_m, 0, 1e-9);
  EXPECT_EQ(smooth_through({{1, 2}, {3, 4}}).size(), 2u);
}

TEST_F(DrawingUnits, Splines_OfFitPointsAloneAreRead) {
  std::string spline = pair(0, "SPLINE") + pair(8, "KERB") + pair(70, "8") + pair(71, "3") + pair(72, "0") +
                       pair(73, "0") + pair(74, "4");
  for (const auto& [x, y] : {std::pair{"0", "0"}, {"10", "3"}, {"20", "-3"}, {"30", "0"}})
    spline += pair(11, x) + pair(21, y) + pair(31, "0");
  write("a.dxf", drawing("6", spline + drawing_line("GAS", 0, 0, 0, 5, 5, 0)));
  const Found found = read("a.dxf");
  const auto kerb = std::find_if(found.features.begin(), found.features.end(),
                                 [&](const FoundFeature& f) { return found.layers[f.layer] == "KERB"; });
  ASSERT_NE(kerb, found.features.end());
  EXPECT_EQ(kerb->count, 97u);
}

/// A clamped cubic spline of six control points, as drawings write it.
std::string long_spline(double size) {
  std::string text = pair(0, "SPLINE") + pair(8, "GAS") + pair(70, "8") + pair(71, "3") + pair(72, "10") +
                     pair(73, "6") + pair(74, "0");
  for (const char* knot : {"0", "0", "0", "0", "1", "2", "3", "3", "3", "3"}) text += pair(40, knot);
  for (const auto& [x, y] : {std::pair{0.0, 0.0}, {1.0, 0.8}, {2.0, -0.8}, {3.0, 0.8}, {4.0, 0.0}, {5.0, 0.0}})
    text += pair(10, std::to_string(x * size)) + pair(20, std::to_string(y * size)) + pair(30, "0");
  return text;
}

// Against a dense evaluation: what is drawn lies no farther off the spline than is said, and that is said from 10 mm
// on.
TEST_F(DrawingUnits, Splines_OffTheirPieces) {
  for (const double size : {1.0, 100.0}) {
    SplineMeasure spline;
    spline.take(71, 3);
    for (const double knot : {0.0, 0.0, 0.0, 0.0, 1.0, 2.0, 3.0, 3.0, 3.0, 3.0}) spline.take(40, knot);
    for (const auto& [x, y] : {std::pair{0.0, 0.0}, {1.0, 0.8}, {2.0, -0.8}, {3.0, 0.8}, {4.0, 0.0}, {5.0, 0.0}}) {
      spline.take(10, x * size);
      spline.take(20, y * size);
    }
    ASSERT_TRUE(spline.is_whole());
    EXPECT_NEAR(spline.at(0).x_m, 0, 1e-12);
    EXPECT_NEAR(spline.at(3).x_m, 5 * size, 1e-9);
    write("a.dxf", drawing("6", long_spline(size)));
    const Found found = read("a.dxf");
    ASSERT_EQ(found.features.size(), 1u);
    double off = 0;
    for (int i = 0; i <= 3000; ++i) {
      const PlanPoint p = spline.at(i * 0.001);
      double least = 1e9;
      for (std::size_t k = 1; k < found.vertices.size(); ++k) {
        const FoundVertex &a = found.vertices[k - 1], &b = found.vertices[k];
        const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length2 = dx * dx + dy * dy;
        const double t =
            length2 > 0 ? std::clamp(((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / length2, 0.0, 1.0) : 0;
        least = std::min(least, std::hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy));
      }
      off = std::max(off, least);
    }
    EXPECT_LE(off, 1.02 * spline.farthest_off() + 0.0025) << size << ": thinned to 2 mm afterwards";
    EXPECT_GE(off, 0.5 * spline.farthest_off());
    EXPECT_EQ(says(found.notes, "lie up to"), spline.farthest_off() > 0.010) << size;
  }
}

TEST(DrawingCurves, Radius_OfArcsBulgesAndBlocks) {
  LargestRadius radius;
  radius.begin("CIRCLE");
  radius.take(40, 3);
  radius.begin("LWPOLYLINE");
  for (const auto& [code, value] :
       {std::pair{10, 500.0}, {20, 0.0}, {42, std::tan(std::atan(1.0) / 2)}, {10, 0.0}, {20, 500.0}})
    radius.take(code, value);
  radius.begin("LINE");
  EXPECT_NEAR(radius.radius(), 500, 1e-9);
  radius.begin("INSERT");
  radius.take(41, 10);
  EXPECT_NEAR(radius.radius(), 5000, 1e-9);
}

// What stands in a block that nobody put into the plan was not left out of it.
TEST_F(DrawingUnits, UnusedBlocks_AreNotCounted) {
  const std::string solid = pair(0, "3DSOLID") + pair(8, "0");
  write("a.dxf", drawing("6", insert("USED", 1, 1) + drawing_line("K", 0, 0, 0, 5, 5, 0),
                         block("USED", solid + drawing_line("0", 0, 0, 0, 1, 0, 0)) + block("UNUSED", solid + solid)));
  const Found found = read("a.dxf");
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_THAT(found.left_out[0].text, HasSubstr("1 ×"));
}

TEST_F(DrawingUnits, Texts_AreNoThings) {
  write("a.dxf", drawing("6", pair(0, "TEXT") + pair(8, "GAS") + pair(10, "5") + pair(20, "5") + pair(40, "1") +
                                  pair(1, "GAS 100 PE") + drawing_line("GAS", 0, 0, 0, 5, 5, 0)));
  const Found found = read("a.dxf");
  ASSERT_EQ(found.features.size(), 2u);
  EXPECT_EQ(
      std::count_if(found.features.begin(), found.features.end(), [](const FoundFeature& f) { return f.is_text; }), 1);
}

}  // namespace
}  // namespace burrow::test

// LandXML: order of coordinates, units, hidden faces, namespaces; arcs, spirals and profiles against second routes.

#include <gmock/gmock.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

#include "burrow/base/quantity.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class LandXml : public WithFolder {
 protected:
  Found of(const std::string& inside,
           const std::string& units = "<Units><Metric linearUnit='meter' diameterUnit='millimeter'/></Units>") {
    write("a.xml", "<?xml version='1.0'?><LandXML xmlns='http://www.landxml.org/schema/LandXML-1.2'>" + units + inside +
                       "</LandXML>");
    return read("a.xml");
  }
};

TEST_F(LandXml, Trap_NorthEastHeight) {
  const Found found =
      of("<CgPoints><CgPoint name='7' code='GND'>200.5 100.25 7.125</CgPoint><CgPoint name='8' "
         "code='GND'>201</CgPoint></CgPoints>");
  ASSERT_EQ(found.features.size(), 1u);
  EXPECT_EQ(found.vertices[0], (FoundVertex{100.25, 200.5, 7.125}));
  EXPECT_EQ(found.layers.at(0), "GND");
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_EQ(found.left_out[0].place, "CgPoint 8");
}

TEST_F(LandXml, Trap_HiddenFaces) {
  const Found found =
      of("<Surfaces><Surface name='EG'><Definition surfType='TIN'><Pnts><P id='1'>0 0 5</P><P id='2'>0 10 6</P>"
         "<P id='3'>10 0 7</P><P id='9'>10 10 8</P></Pnts><Faces><F>1 2 3</F><F i='1'>2 3 9</F><F>1 2 77</F></Faces>"
         "</Definition></Surface></Surfaces>");
  ASSERT_EQ(found.surfaces.size(), 1u);
  EXPECT_EQ(found.surfaces[0].faces.size(), 1u);
  EXPECT_EQ(found.surfaces[0].points[1], (Point3{10, 0, 6}));
  ASSERT_EQ(found.left_out.size(), 2u);
  EXPECT_THAT(found.left_out[0].reason, HasSubstr("hidden"));
}

TEST_F(LandXml, Trap_SurfaceOfZeros) {
  write("a.xml",
        "<LandXML><Surfaces><Surface name='EG'><Definition><Pnts><P id='1'>0 0 0</P><P id='2'>0 10 0</P>"
        "<P id='3'>10 0 0</P></Pnts><Faces><F>1 2 3</F></Faces></Definition></Surface></Surfaces></LandXML>");
  EXPECT_THAT(error_of("a.xml").found.english(), HasSubstr("counts as not given"));
  write_grid(path("b.tif"), 25832, 0, 0, 1, 5, {0, 0, 0});
  EXPECT_FALSE(read_here(path("b.tif"), {}));
}

TEST_F(LandXml, Units_EachOnItsOwn) {
  const Found found =
      of("<CgPoints><CgPoint name='1'>1 2 3</CgPoint></CgPoints><CoordinateSystem epsgCode='25832' "
         "verticalCoordinateSystemName='DHHN'/>",
         "<Units><Imperial linearUnit='USSurveyFoot' elevationUnit='feet' diameterUnit='inch'/></Units>");
  EXPECT_EQ(found.frame.unit, FileUnit::us_survey_foot);
  EXPECT_EQ(found.frame.height_unit, FileUnit::foot);
  EXPECT_EQ(found.frame.crs, "EPSG:25832");
  EXPECT_EQ(found.frame.vertical, "DHHN");
}

const std::string network =
    "<PipeNetworks><PipeNetwork name='N1' pipeNetType='storm'><Structs>"
    "<Struct name='A' elevRim='103'><Center>0 0</Center><Invert refPipe='P' elev='101.5' flowDir='out'/></Struct>"
    "<Struct name='B'><Center>0 20</Center><Invert refPipe='P' elev='101.25' flowDir='in'/></Struct></Structs>"
    "<Pipes><Pipe name='P' refStart='A' refEnd='B'><CircPipe diameter='300'/></Pipe><Pipe name='Q' refStart='A' "
    "refEnd='Z'/></Pipes>"
    "</PipeNetwork></PipeNetworks>";

TEST_F(LandXml, Trap_DiametersHaveTheirOwnUnit) {
  const Found found = of(network);
  const auto pipe =
      std::find_if(found.features.begin(), found.features.end(), [](const FoundFeature& f) { return f.text == "P"; });
  ASSERT_NE(pipe, found.features.end());
  EXPECT_NEAR(pipe->diameter_m.value_or(0), 0.3, 1e-12);
  EXPECT_EQ(pipe->level, LevelMeant::invert);
  EXPECT_EQ(found.vertices[pipe->first], (FoundVertex{0, 0, 101.5}));
  EXPECT_EQ(found.vertices[pipe->first + 1], (FoundVertex{20, 0, 101.25}));
  EXPECT_EQ(found.layers.at(pipe->layer), "pipes storm N1");
  ASSERT_EQ(found.left_out.size(), 1u);
  EXPECT_EQ(found.left_out[0].text, "Z");
  const Found no_unit = of(network, "<Units><Imperial linearUnit='foot'/></Units>");
  for (const FoundFeature& f : no_unit.features) EXPECT_FALSE(f.diameter_m);
  EXPECT_THAT(no_unit.left_out.at(0).reason, HasSubstr("unit of diameters"));
}

std::string alignment(const std::string& geometry, const std::string& profile) {
  return "<Alignments><Alignment name='A' staStart='100'><CoordGeom>" + geometry + "</CoordGeom>" +
         (profile.empty() ? "" : "<Profile><ProfAlign>" + profile + "</ProfAlign></Profile>") +
         "</Alignment></Alignments>";
}

// Second route: the circle's equation; a quarter turn of radius 50 is 78.54 m long.
TEST_F(LandXml, Arc_LiesOnItsCircle) {
  const Found found =
      of(alignment("<Curve rot='ccw'><Start>0 50</Start><Center>0 0</Center><End>50 0</End></Curve>", ""));
  ASSERT_GT(found.vertices.size(), 10u);
  double length = 0;
  for (std::size_t i = 0; i < found.vertices.size(); ++i) {
    const FoundVertex& v = found.vertices[i];
    EXPECT_NEAR(std::hypot(v.x_m, v.y_m), 50, 1e-9);
    EXPECT_GE(v.x_m, -1e-9);
    EXPECT_GE(v.y_m, -1e-9);
    if (i > 0) length += std::hypot(v.x_m - found.vertices[i - 1].x_m, v.y_m - found.vertices[i - 1].y_m);
  }
  EXPECT_NEAR(length, 25 * pi, 0.05);
  EXPECT_FALSE(found.vertices.back().z_m);
  EXPECT_THAT(found.left_out.at(0).reason, HasSubstr("no profile"));
  // Clockwise the same ends are three quarters of the circle apart.
  const Found other =
      of(alignment("<Curve rot='cw'><Start>0 50</Start><Center>0 0</Center><End>50 0</End></Curve>", ""));
  EXPECT_GT(other.vertices.size(), 2 * found.vertices.size());
}

// Second route: the Fresnel integrals by adaptive quadrature.
TEST_F(LandXml, Spiral_FresnelByQuadrature) {
  const double length = 60, radius = 100;
  using boost::math::quadrature::gauss_kronrod;
  const auto along = [&](double s, bool east) {
    const auto f = [&](double t) {
      const double a = t * t / (2 * length * radius);
      return east ? std::cos(a) : std::sin(a);
    };
    return gauss_kronrod<double, 31>::integrate(f, 0, s, 10, 1e-12);
  };
  char end[80];
  std::snprintf(end, sizeof end, "%.9f %.9f", along(length, false), along(length, true));
  const Found found =
      of(alignment(std::string("<Spiral length='60' radiusStart='INF' radiusEnd='100' rot='ccw' spiType='clothoid'>"
                               "<Start>0 0</Start><PI>0 40</PI><End>") +
                       end + "</End></Spiral>",
                   ""));
  ASSERT_EQ(found.vertices.size(), 33u);
  for (std::size_t i = 0; i < found.vertices.size(); ++i) {
    const double s = length * static_cast<double>(i) / 32;
    EXPECT_NEAR(found.vertices[i].x_m, along(s, true), 1e-6) << i;
    EXPECT_NEAR(found.vertices[i].y_m, along(s, false), 1e-6) << i;
  }
}

// Vertical curve: the middle lies L·(g2 − g1)/8 off the corner (textbook: Hickerson 1964, from memory), the tangents
// are met at its ends. Here g1 = 2 %, g2 = −2 %, L = 40 m: 0.2 m below the corner.
TEST_F(LandXml, Profile_ParabolaAtItsMiddle) {
  const Found found = of(alignment("<Line><Start>0 0</Start><End>0 100</End></Line>",
                                   "<PVI>100 10</PVI><ParaCurve length='40'>150 11</ParaCurve><PVI>200 10</PVI>"));
  const auto height = [&](double x) {
    for (const FoundVertex& v : found.vertices)
      if (std::abs(v.x_m - x) < 1e-6) return v.z_m.value_or(-1);
    return -2.0;
  };
  EXPECT_NEAR(height(0), 10, 1e-9);
  EXPECT_NEAR(height(50), 11 - 0.2, 1e-9);
  EXPECT_NEAR(height(30), 10.6, 1e-9);
  EXPECT_NEAR(height(70), 10.6, 1e-9);
  EXPECT_NEAR(height(40), 10.8 - 0.04 / 80 * 100, 1e-9);
  EXPECT_NEAR(height(100), 10, 1e-9);
}

// Second route for an uneven curve: both halves meet at the corner with one height and one grade.
TEST_F(LandXml, Profile_UnevenCurveIsSmooth) {
  const Found found = of(alignment(
      "<Line><Start>0 0</Start><End>0 2</End></Line>",
      "<PVI>50 10</PVI><UnsymParaCurve lengthIn='10' lengthOut='30'>101 11.02</UnsymParaCurve><PVI>200 10</PVI>"));
  ASSERT_EQ(found.vertices.size(), 2u);
  write("b.xml",
        "<LandXML><Alignments><Alignment staStart='100' name='B'><CoordGeom><Line><Start>0 0</Start><End>0 "
        "0.999</End></Line>"
        "<Line><Start>0 0.999</Start><End>0 1</End></Line><Line><Start>0 1</Start><End>0 "
        "1.001</End></Line></CoordGeom><Profile><ProfAlign>"
        "<PVI>50 10</PVI><UnsymParaCurve lengthIn='10' lengthOut='30'>101 11.02</UnsymParaCurve><PVI>200 "
        "10</PVI></ProfAlign></Profile></Alignment></Alignments></LandXML>");
  const Found close = read("b.xml");
  ASSERT_EQ(close.vertices.size(), 4u);
  const double before = (*close.vertices[2].z_m - *close.vertices[1].z_m) / 0.001,
               after = (*close.vertices[3].z_m - *close.vertices[2].z_m) / 0.001;
  EXPECT_NEAR(before, after, 1e-4);
  EXPECT_LT(*close.vertices[2].z_m, 11.02);
}

TEST_F(LandXml, Trap_OtherNamespaceAndPrefix) {
  write("a.xml",
        "<x:LandXML xmlns:x='http://elsewhere'><x:CgPoints><x:CgPoint name='1'>1 2 "
        "3</x:CgPoint></x:CgPoints><x:Monuments/></x:LandXML>");
  const Found found = read("a.xml");
  EXPECT_EQ(found.features.size(), 1u);
  EXPECT_EQ(found.left_out.at(0).text, "Monuments");
}

TEST_F(LandXml, Refused) {
  write("a.xml", "<LandXML><CgPoints><CgPoint name='1'>1 2 3</CgPoint>");
  EXPECT_THAT(error_of("a.xml").found.english(), HasSubstr("byte"));
  write("b.xml", "<gpx/>");
  EXPECT_THAT(error_of("b.xml").found.english(), HasSubstr("gpx"));
  write("c.xml",
        "<LandXML><CgPoints><CgPoint name='1'>1e308 2 3</CgPoint><CgPoint name='2'>nan 2 "
        "3</CgPoint></CgPoints></LandXML>");
  EXPECT_THAT(error_of("c.xml").found.english(), HasSubstr("no north and east"));
}

}  // namespace
}  // namespace burrow::test

// Numbers, headings and encodings of survey text, English and German.

#include "survey_text.h"

#include <gmock/gmock.h>

#include "burrow/import/survey_csv.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

TEST(SurveyText, Numbers_WithGroupsOfThree) {
  for (const auto& [text, value] : {std::pair{"5,412,345.20", 5412345.2},
                                    {"5.412.345,20", 5412345.2},
                                    {"5'412'345.2", 5412345.2},
                                    {"5\u2019412\u2019345", 5412345.0},
                                    {"5 412 345,25", 5412345.25},
                                    {"5,412,345", 5412345.0},
                                    {"-1.234,5", -1234.5},
                                    {"+7.5", 7.5},
                                    {"312,45", 312.45},
                                    {"312.450", 312.45}})
    EXPECT_EQ(survey::number(text, true), value) << text;
  EXPECT_FALSE(survey::number("312,45", false)) << "a comma is the decimal mark only where it is that of the file";
  for (const char* text : {"5,41,345.20", "5.4.1", "1,2,3", "12'3456", "", "abc", "5,4123,45.2", "1.234.56"})
    EXPECT_FALSE(survey::number(text, true)) << text;
}

TEST(SurveyText, Headings_EnglishAndGerman) {
  using Headings = std::vector<std::string>;
  for (const auto& [headings, order] :
       {std::pair{Headings{"Punktnummer", "Rechtswert", "Hochwert", "Höhe", "Code"}, "penzd"},
        {Headings{"Nr.", "Ost", "Nord", "Hoehe", "Bemerkung"}, "penzd"},
        {Headings{"Name", "Code", "Easting", "Northing", "Elevation", "Solution status", "Lateral RMS"}, "pdenz--"},
        {Headings{"Point #", "Northing (ft)", "Easting (ft)", "Elev.", "Description"}, "pnezd"},
        {Headings{"Punkt-Nr", "X-Koordinate", "Y-Koordinate", "Höhe NHN [m]"}, "penz"},
        {Headings{"Latitude", "Longitude", "Ellipsoidal height"}, "ne-"},
        {Headings{"Id", "Latitude", "Longitude", "East", "North", "H"}, "p--enz"},
        {Headings{"Station", "Height"}, ""},
        {Headings{}, ""}})
    EXPECT_EQ(survey::order_of_headings(headings), order) << headings.size();
  EXPECT_TRUE(survey::names_degrees("Latitude;Longitude;H"));
  EXPECT_FALSE(survey::names_degrees("Latitude;Longitude;East;North"));
  EXPECT_FALSE(survey::names_degrees("Easting,Northing"));
}

Found read_text(std::string_view text, const ReadOptions& options = {}) {
  const auto found = read_survey_csv(text, options);
  EXPECT_TRUE(found) << found.error().english();
  return found.value_or(Found{});
}

TEST(SurveyText, German_WholeFile) {
  const Found found = read_text(
      "Punktnummer;Rechtswert;Hochwert;Höhe;Code\n1;3512345,10;5412345,20;312,45;GOK\n"
      "2;3.512.355,10;5.412.340,20;312,55;GOK\n");
  ASSERT_EQ(found.features.size(), 2u);
  EXPECT_EQ(found.vertices[0], (FoundVertex{3512345.1, 5412345.2, 312.45}));
  EXPECT_EQ(found.vertices[1], (FoundVertex{3512355.1, 5412340.2, 312.55}));
  EXPECT_EQ(found.layers.at(0), "GOK");
}

TEST(SurveyText, Degrees_AreRecognised) {
  const Found found = read_text("Name,Latitude,Longitude,Height\n1,49.0001,8.6001,112.5\n2,49.0002,8.6002,112.6\n");
  EXPECT_TRUE(found.frame.geographic);
  EXPECT_EQ(found.frame.crs, "EPSG:4326");
  EXPECT_NEAR(found.vertices[0].x_m, 8.6001, 1e-12);
  EXPECT_TRUE(says(found.notes, "ellipsoid"));
  const Found silent = read_text("1,49.0001,8.6001,112.5,GND\n2,49.0002,8.6002,112.6,GND\n3,49.0003,8.6003,112,GND\n");
  EXPECT_FALSE(silent.frame.geographic);
  EXPECT_TRUE(says(silent.notes, "may be degrees"));
}

TEST(SurveyText, Utf16_BothOrders) {
  const std::string plain = "1,200,100,7.5,GEL\u00C4NDE\n";
  for (const bool little : {true, false}) {
    std::string bytes = little ? "\xFF\xFE" : "\xFE\xFF";
    for (const char32_t c : U"1,200,100,7.5,GEL\u00C4NDE\n") {
      if (c == 0) break;
      const char low = static_cast<char>(c & 0xFFu), high = static_cast<char>(c >> 8u);
      bytes += little ? low : high;
      bytes += little ? high : low;
    }
    EXPECT_EQ(survey::from_utf16(bytes), plain);
    EXPECT_EQ(read_text(bytes).layers.at(0), "GEL\u00C4NDE");
  }
  EXPECT_FALSE(survey::from_utf16(plain));
  EXPECT_EQ(survey::from_utf16(std::string_view("\xFF\xFE\x3D\xD8\x00\xDE", 6)), "\U0001F600") << "a pair of two";
}

TEST(SurveyText, Zero_IsAHeightWhereOthersComeNearIt) {
  EXPECT_EQ(read_text("1,200,100,0.00,GND\n2,201,101,0.35,GND\n3,202,102,-0.2,GND\n").vertices[0].z_m, 0.0);
  EXPECT_FALSE(read_text("1,200,100,0.00,GND\n2,201,101,312.4,GND\n").vertices[0].z_m);
}

TEST(SurveyText, Refused_SaysWhy) {
  const auto wrong = read_survey_csv("1,two,three,4,GND\n2,five,six,4,GND\n", {});
  ASSERT_FALSE(wrong);
  EXPECT_THAT(wrong.error().found.english(), HasSubstr("the north is not a number"));
  EXPECT_THAT(wrong.error().found.english(), HasSubstr("line 2"));
}

class SurveyFiles : public WithFolder {};

TEST_F(SurveyFiles, Xyz_IsXThenY) {
  write("a.xyz", "# x y z\n288821 9120715 10.00\n288826 9120720 10.10\n");
  EXPECT_EQ(read("a.xyz").vertices.at(0), (FoundVertex{288821, 9120715, 10.0}));
  write("b.txt", "288821 9120715 10.00\n");
  EXPECT_EQ(read("b.txt").vertices.at(0), (FoundVertex{9120715, 288821, 10.0}));
}

TEST_F(SurveyFiles, TextGrids_BeginAsTheyLike) {
  const std::string rest = "xllcorner 100\nyllcorner 200\ncellsize 5\n1 2\n3 4\n";
  write("a.asc", "ncols 2\nnrows 2\n" + rest);
  write("b.asc", "NROWS 2\nNCOLS 2\n" + rest);
  write("c.asc", "\n\r\n  ncols 2\nnrows 2\n" + rest);
  for (const char* name : {"a.asc", "b.asc", "c.asc"}) {
    const Found found = read(name);
    ASSERT_EQ(found.rasters.size(), 1u) << name;
    EXPECT_EQ(found.rasters[0].columns, 2) << name;
    EXPECT_EQ(found.rasters[0].most_z, 4.0) << name;
  }
}

}  // namespace
}  // namespace burrow::test

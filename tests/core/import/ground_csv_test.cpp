#include "burrow/import/ground_csv.h"

#include <gtest/gtest.h>

#include <locale>

namespace burrow {
namespace {

const std::vector<LevelPoint> three{{-4.0, 102.10}, {0.0, 102.05}, {14.0, 102.30}};

void expect_three(std::string_view text) {
  const auto ground = read_ground_csv(text);
  ASSERT_TRUE(ground) << text << "\n" << ground.error().english();
  EXPECT_EQ(ground->points, three) << text;
  EXPECT_TRUE(ground->left_out.empty()) << text;
}

TEST(GroundCsv, Spelling_DelimitersMarksAndLineEnds) {
  expect_three("-4,102.10\n0,102.05\n14,102.30\n");
  expect_three("-4.0;102.10\r\n0;102.05\r\n14;102.30");
  expect_three("-4,0;102,10\r0,0;102,05\r14,0;102,30\r");
  expect_three("-4,0\t102,10\n0\t102,05\n14\t102,30\n");
  expect_three("-4   102.10\n 0   102.05\n\n14\t 102.30\n");
  expect_three("\xEF\xBB\xBF# levels of the morning\n-4,102.10\n\n0,102.05\n# end\n14,102.30\n");
  expect_three("\"-4\",\"102.10\"\n\"0\",\"102.05\"\n\"14\",\"102.30\"\n");
  expect_three("\u22124, 1.021e2\n+0, 102.05\n14, 102.30\n");
}

TEST(GroundCsv, Header_NamesColumnsAndUnit) {
  const auto swapped = read_ground_csv("point,Elevation [ft],Station [ft]\n1,102.10,-4\n2,102.05,0\n3,102.30,14\n");
  ASSERT_TRUE(swapped) << swapped.error().english();
  EXPECT_EQ(swapped->points, three);
  EXPECT_EQ(swapped->unit_hint, FileUnit::foot);
  EXPECT_EQ(read_ground_csv("chainage (m) height (m)\n-4 102.1\n0 102.05\n14 102.3")->points, three);
  EXPECT_EQ(read_ground_csv("station;z us-ft\n-4;102.1\n0;102.05")->unit_hint, FileUnit::us_survey_foot);
  EXPECT_EQ(read_ground_csv("station,elevation in metres\n-4,102.1\n0,102.05")->unit_hint, FileUnit::metre);
  EXPECT_EQ(read_ground_csv("station,elevation\n-4,102.1\n0,102.05")->unit_hint, std::nullopt);
  EXPECT_EQ(read_ground_csv("-4,102.1\n0,102.05")->unit_hint, std::nullopt);
}

TEST(GroundCsv, Order_SortedWithANote) {
  const auto ground = read_ground_csv("14,102.30\n-4,102.10\n0,102.05\n");
  ASSERT_TRUE(ground);
  EXPECT_EQ(ground->points, three);
  ASSERT_EQ(ground->notes.size(), 1u);
  EXPECT_EQ(ground->notes[0], "the points were put in order of station");
}

// An inch mark inside a description must not swallow the lines that follow.
TEST(GroundCsv, LeftOut_LineByLineWithTheReason) {
  const auto ground =
      read_ground_csv("-4,102.10,18\" culvert\nkerb,102.2\n0,102.05,\"top, wall\"\n7\n14,102.30,5/8\" pin\n");
  ASSERT_TRUE(ground) << ground.error().english();
  EXPECT_EQ(ground->points, three);
  ASSERT_EQ(ground->left_out.size(), 2u);
  EXPECT_EQ(ground->left_out[0], (LeftOutLine{2, "kerb,102.2", "the station is not a number"}));
  EXPECT_EQ(ground->left_out[1], (LeftOutLine{4, "7", "no second column"}));
  ASSERT_EQ(ground->notes.size(), 1u);
  EXPECT_EQ(ground->notes[0], "columns beside station and elevation were not used");
}

TEST(GroundCsv, LeftOut_AQuoteThatIsNotClosed) {
  const auto ground = read_ground_csv("-4,102.10\n0,\"102.05\n14,102.30\n");
  ASSERT_TRUE(ground);
  EXPECT_EQ(ground->points.size(), 2u);
  ASSERT_EQ(ground->left_out.size(), 1u);
  EXPECT_EQ(ground->left_out[0].reason, "a quote that is not closed");
}

void expect_refused(std::string_view text, const std::string& place, std::string_view found) {
  const auto ground = read_ground_csv(text);
  ASSERT_FALSE(ground) << text;
  EXPECT_EQ(ground.error().place, place) << ground.error().english();
  EXPECT_NE(ground.error().found.english().find(found), std::string::npos) << ground.error().english();
  EXPECT_FALSE(ground.error().expected.empty());
}

TEST(GroundCsv, Refused_WithTheLine) {
  expect_refused("", "file", "nothing");
  expect_refused("\n\n# only a comment\n", "file", "nothing");
  expect_refused("0,102.05\n", "ground line", "1 point in 1 line");
  expect_refused("station,elevation\n", "ground line", "0 points in 1 line");
  expect_refused("0,1\n5,2\n\n0.0,3\n", "line 4", "as on line 1");
  expect_refused("0,1\nnan,2\n", "line 2", "nan");
  expect_refused("0,1\n5,-inf\n", "line 2", "-inf");
  expect_refused("0,1\n5,1e308\n", "line 2", "1e+308");
  expect_refused("0,1\n5,1e999\n", "line 2", "1e999");
  expect_refused("0;1,5\n5;2.5\n", "line 2", "decimal point");
  expect_refused("0;1\n5;1.234,50\n", "line 2", "decimal point");
  expect_refused("1,100.0,102.1\n2,200.0,102.2\n", "line 1", "column 3");
  expect_refused(std::string_view("0,1\n5,\0\n", 8), "file", "zero bytes");
  expect_refused("\xFF\xFE\x30", "file", "UTF-16");
}

// 1 ft = 0.3048 m; 1 US survey foot = 1200/3937 m (definitions): 3937 of them are 1200 m.
TEST(GroundCsv, Definition_InMetres) {
  const std::vector<LevelPoint> points{{0, 10}, {3937, 100}};
  EXPECT_EQ(in_metres(points, FileUnit::metre), points);
  EXPECT_NEAR(in_metres(points, FileUnit::us_survey_foot)[1].station_m, 1200.0, 1e-9);
  EXPECT_NEAR(in_metres(points, FileUnit::foot)[1].elevation_m, 30.48, 1e-12);
}

struct CommaMark : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
};

TEST(GroundCsv, Property_LocaleChangesNothing) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaMark));
  expect_three("-4,102.10\n0,102.05\n14,102.30\n");
  expect_three("-4,0;102,10\n0,0;102,05\n14,0;102,30\n");
  std::locale::global(before);
}

}  // namespace
}  // namespace burrow

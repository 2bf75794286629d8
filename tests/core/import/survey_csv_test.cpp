#include "burrow/import/survey_csv.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <locale>

namespace burrow {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

Found read(std::string_view text, const std::string& order = {}) {
  ReadOptions options;
  options.order = order;
  const auto found = read_survey_csv(text, options);
  EXPECT_TRUE(found) << found.error().english();
  return found.value_or(Found{});
}

const FoundVertex& only(const Found& found, std::size_t i) {
  return found.vertices.at(found.features.at(i).first);
}

// The trap: a reader that lets any quote open swallows the rows after an inch mark.
TEST(SurveyCsv, Trap_InchMarkSwallowsNothing) {
  const Found found =
      read("1,200.5,100.25,7.5,KERB\n2,201,101,7.6,TREE 18\" OAK\n3,202,102,7.7,TREE 6\"\n4,203,103,7.8,KERB\n");
  ASSERT_EQ(found.features.size(), 4u);
  EXPECT_THAT(found.layers, ElementsAre("KERB", "TREE"));
  EXPECT_EQ(found.features[1].text, "2 TREE 18\" OAK");
  EXPECT_EQ(found.features[3].text, "4 KERB");
  EXPECT_EQ(only(found, 0), (FoundVertex{100.25, 200.5, 7.5}));
  EXPECT_TRUE(found.left_out.empty());
}

TEST(SurveyCsv, Quotes_AtTheStartOfAField) {
  const Found found = read("1,200,100,7.5,\"KERB, low \"\"A\"\"\"\n2,201,101,7.6,KERB, with, commas\n");
  EXPECT_EQ(found.features.at(0).text, "1 KERB, low \"A\"");
  EXPECT_EQ(found.features.at(1).text, "2 KERB,with,commas");
}

// The order cannot be told from the syntax: the usual one stands, and the answer says that it is to be asked.
TEST(SurveyCsv, Trap_OrderIsAsked) {
  const std::string text = "7,200,100,5,GND\n";
  EXPECT_FALSE(read(text).order_is_known);
  EXPECT_EQ(read(text).order, "pnezd");
  EXPECT_EQ(only(read(text), 0), (FoundVertex{100, 200, 5}));
  EXPECT_TRUE(read(text, "PENZD").order_is_known);
  EXPECT_EQ(only(read(text, "PENZD"), 0), (FoundVertex{200, 100, 5}));
  EXPECT_EQ(only(read(text, "pyxzd"), 0), (FoundVertex{100, 200, 5}));
  EXPECT_EQ(only(read("100 200 5\n"), 0), (FoundVertex{200, 100, 5}));
  EXPECT_EQ(read("9;100.5;200.5;5.5\n").order, "pnez");
  EXPECT_EQ(read("100.5;200.5;5.5;GND\n").order, "nezd");
  EXPECT_EQ(only(read("a,b,GND,5,100,200\n", "--dzen"), 0), (FoundVertex{100, 200, 5}));
}

TEST(SurveyCsv, Header_NamesTheColumns) {
  const Found found =
      read("# from the instrument\nCode;Easting [ft];Northing [ft];Elevation [ft]\nGND;100,5;200,25;7,125\n");
  EXPECT_TRUE(found.order_is_known);
  EXPECT_EQ(found.order, "denz");
  EXPECT_EQ(found.frame.unit, FileUnit::foot);
  EXPECT_EQ(only(found, 0), (FoundVertex{100.5, 200.25, 7.125}));
  EXPECT_EQ(read("x,y,z\n1,2,3\n").vertices.at(0), (FoundVertex{1, 2, 3.0}));
  EXPECT_EQ(read("Point #\tNorth (US survey feet)\tEast\n1\t2\t3\n").frame.unit, FileUnit::us_survey_foot);
}

TEST(SurveyCsv, Delimiters_OneLayoutOfFour) {
  for (const char* text : {"1,200,100,7.5,A;B", "1;200;100;7.5;A,B", "1\t200\t100\t7.5\tA;B", "1 200 100 7.5 A;B"}) {
    const Found found = read(text);
    ASSERT_EQ(found.features.size(), 1u) << text;
    EXPECT_EQ(only(found, 0), (FoundVertex{100, 200, 7.5})) << text;
  }
  EXPECT_EQ(read("1,200,100,7.5,GND\r\n\r\n2,201,100,7.5,GND\r3,202,100,7.5,GND").features.size(), 3u);
}

TEST(SurveyCsv, LeftOut_WithLineAndReason) {
  const Found found = read(
      "1,200,100,7.5,GND\n\n// noted in the field\n2,two "
      "hundred,100,7.5,GND\n3,200\n4,200,100,nan,GND\n5,200,100,1e999,GND\n6,1e308,100,1,GND\n7,200,100,,GND\n");
  ASSERT_EQ(found.left_out.size(), 5u);
  EXPECT_EQ(found.left_out[0], (LeftOut{"line 4", "2,two hundred,100,7.5,GND", "the north is not a number"}));
  EXPECT_EQ(found.left_out[1].reason, "no east");
  EXPECT_THAT(found.left_out[2].reason, HasSubstr("nan"));
  EXPECT_EQ(found.left_out[3].place, "line 7");
  EXPECT_THAT(found.left_out[4].reason, HasSubstr("coordinate"));
  EXPECT_EQ(found.features.size(), 2u);
  EXPECT_FALSE(only(found, 1).z_m) << "an empty height is not given";
}

// All heights zero: nobody measured them.
TEST(SurveyCsv, Trap_ZeroThroughoutIsNoHeight) {
  const Found found = read("1,200,100,0.000,BND\n2,201,101,0,BND\n3,202,102,5.5,GND\n");
  EXPECT_FALSE(only(found, 0).z_m);
  EXPECT_FALSE(only(found, 1).z_m);
  EXPECT_EQ(only(found, 2).z_m, 5.5);
  ASSERT_FALSE(found.notes.empty());
  EXPECT_THAT(found.notes[0], HasSubstr("BND"));
}

TEST(SurveyCsv, Order_Refused) {
  for (const char* order : {"pz", "nn", "pnezq", "nezz", "p"}) EXPECT_FALSE(survey_order(order)) << order;
  ReadOptions options;
  options.order = "pzd";
  EXPECT_FALSE(read_survey_csv("1,2,3\n", options));
}

TEST(SurveyCsv, Refused_NotASurvey) {
  for (const std::string_view text :
       {std::string_view(""), std::string_view("\n\n"), std::string_view("nothing to see here\n"),
        std::string_view("\xFF\xFE\x31"), std::string_view("1,2,3\0", 6), std::string_view(",,,,\n;;;\n")})
    EXPECT_FALSE(read_survey_csv(text, {})) << text;
}

TEST(SurveyCsv, Encoding_Latin1BecomesUtf8) {
  EXPECT_EQ(read("1,200,100,7.5,GEL\xC4NDE\n").layers.at(0), "GEL\u00C4NDE");
  EXPECT_EQ(read("1,200,100,7.5,GEL\u00C4NDE\n").layers.at(0), "GEL\u00C4NDE");
}

TEST(SurveyCsv, Bound_TooManyAndStopped) {
  std::string text;
  for (int i = 0; i < 10000; ++i) text += "1,200,100,7.5,GND\n";
  ReadOptions options;
  options.most_vertices = 5000;
  const auto many = read_survey_csv(text, options);
  ASSERT_FALSE(many);
  EXPECT_THAT(many.error().found.english(), HasSubstr("5000"));
  options = {};
  double last = 0;
  options.progress = [&](double share) {
    EXPECT_GE(share, last);
    last = share;
    return share < 0.5;
  };
  const auto ended = read_survey_csv(text, options);
  ASSERT_FALSE(ended);
  EXPECT_EQ(ended.error().found, std::string(stopped_by_person));
}

struct CommaMark : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
};

TEST(SurveyCsv, Trap_LocaleChangesNothing) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaMark));
  EXPECT_EQ(only(read("1,200.5,100.25,7.5,GND\n"), 0), (FoundVertex{100.25, 200.5, 7.5}));
  std::locale::global(before);
}

// One foot is 0.3048 m, one US survey foot 1200/3937 m, one inch 25.4 mm (definitions).
TEST(FileUnit, Definition_Metres) {
  EXPECT_EQ(metres_in(FileUnit::metre), 1.0);
  EXPECT_NEAR(3937 * metres_in(FileUnit::us_survey_foot), 1200.0, 1e-9);
  EXPECT_NEAR(12 * metres_in(FileUnit::inch), metres_in(FileUnit::foot), 1e-15);
  EXPECT_NEAR(1000 * metres_in(FileUnit::millimetre), 100 * metres_in(FileUnit::centimetre), 1e-12);
  EXPECT_EQ(unit_named_in("Northing [us-ft]"), FileUnit::us_survey_foot);
  EXPECT_FALSE(unit_named_in("Northing"));
}

}  // namespace
}  // namespace burrow

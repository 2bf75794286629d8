// set and make: crossings changed and made by a table.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "csv_table.h"
#include "support/command_run.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

TEST(SetCommand, WritesWhatCheckJudges) {
  const Folder folder;
  const std::string out = folder.path("out.crossing");
  const Ran ran = run("set", {sample("first-lesson"), "/name=deeper", "/bore/launch/grade=-1 %", "-o", out});
  EXPECT_EQ(ran.code, 0) << ran.err;
  const json made = json::parse(folder.read("out.crossing"));
  EXPECT_EQ(made.at("name"), "deeper");
  EXPECT_EQ(made.at("bore").at("launch").at("grade"), -0.01);
  EXPECT_EQ(json::parse(run("check", {out, "--json"}).out).at("crossing"), "deeper");
  const Ran piped = run("set", {sample("first-lesson"), "/name=deeper", "/bore/launch/grade=-1 %", "-o", "-"});
  EXPECT_EQ(piped.out, folder.read("out.crossing"));
}

TEST(SetCommand, Wrong_WritesNothing) {
  const Folder folder;
  const std::string out = folder.path("out.crossing");
  const std::vector<std::vector<std::string>> wrong{{sample("first-lesson"), "/bore/launch/elevaton_m=1", "-o", out},
                                                    {sample("first-lesson"), "-o", out},
                                                    {sample("first-lesson"), "/name=a"},
                                                    {sample("first-lesson"), "name=a", "-o", out},
                                                    {sample("first-lesson"), "/name=a", "/name=b", "-o", out},
                                                    {sample("first-lesson"), "/bore/launch/grade=9", "-o", out},
                                                    {sample("first-lesson"), "/bore/launch/grade=", "-o", out},
                                                    {folder.path("none.crossing"), "/name=a", "-o", out},
                                                    {"/name=a", "-o", out}};
  for (const auto& words : wrong) {
    const Ran ran = run("set", words);
    EXPECT_EQ(ran.code, 2) << words[1];
    EXPECT_THAT(ran.err, HasSubstr("burrowline set: ")) << words[1];
    EXPECT_FALSE(std::filesystem::exists(out)) << words[1];
  }
  EXPECT_THAT(run("set", wrong[0]).err, HasSubstr("near it: /bore/launch/elevation_m"));
}

TEST(CsvContents, Rfc4180_QuotesAndEnds) {
  const auto read = read_csv_content(
      "\xEF\xBB\xBF"
      "a,b ,\"c\"\r\n1, 2 ,\"x, \"\"y\"\"\nz\"\r\n\r\n,,\r\n4,,6");
  ASSERT_TRUE(read) << read.error().english();
  EXPECT_THAT(read->names, ElementsAre("a", "b", "c"));
  ASSERT_EQ(read->rows.size(), 2u);
  EXPECT_THAT(read->rows[0].cells, ElementsAre("1", "2", "x, \"y\"\nz"));
  EXPECT_EQ(read->rows[0].line, 2u);
  EXPECT_THAT(read->rows[1].cells, ElementsAre("4", "", "6"));
  EXPECT_EQ(read->rows[1].line, 6u);
}

TEST(CsvContents, Separator_IsThatOfTheNames) {
  EXPECT_THAT(read_csv_content("a;b\n1,5;2\n")->rows[0].cells, ElementsAre("1,5", "2"));
  EXPECT_THAT(read_csv_content("a\tb\n1;5\t2\n")->rows[0].cells, ElementsAre("1;5", "2"));
  EXPECT_THAT(read_csv_content("a\n7\n")->rows[0].cells, ElementsAre("7"));
}

TEST(CsvContents, Wrong_IsRefused) {
  for (const char* text : {"", "\n\n", "a,a\n", "a,,b\n", "a\n\"x", "a\n\"x\"y\n"})
    EXPECT_FALSE(read_csv_content(text).has_value()) << text;
  EXPECT_EQ(read_csv_content("a\n1\n\"x\"y\n").error().place.english(), "line 3");
}

TEST(MakeCommand, ACrossingForEachLine) {
  const Folder folder;
  folder.write("t.csv",
               "file,/name,/bore/launch/elevation_m,/bore/exit/station_m,/pipe/outside_diameter_m\n"
               "north,North,100.9,12.5,63 mm\n"
               "south.crossing,\"South, back\",331 ft,13,\n");
  const Ran ran = run("make", {folder.path("t.csv"), sample("house-service"), "-o", folder.path("out")});
  EXPECT_EQ(ran.code, 0) << ran.err;
  EXPECT_THAT(lines(ran.out), ElementsAre(folder.path("out/north.crossing"), folder.path("out/south.crossing")));
  EXPECT_THAT(ran.err, HasSubstr("2 crossings made"));
  const json north = json::parse(folder.read("out/north.crossing")),
             south = json::parse(folder.read("out/south.crossing"));
  EXPECT_EQ(north.at("bore").at("launch").at("elevation_m"), 100.9);
  EXPECT_EQ(north.at("pipe").at("outside_diameter_m"), 0.063);
  EXPECT_EQ(south.at("name"), "South, back");
  EXPECT_FALSE(south.at("pipe").contains("outside_diameter_m")) << "an empty cell is not known, not the template's";
}

// What was established at the template's place is not known of the others: none is judged as if it were.
TEST(MakeCommand, Evidence_OfTheTemplateMakesNothingSafe) {
  const Folder folder;
  ASSERT_EQ(run("check", {sample("first-lesson")}).code, 0) << "the template itself is fine";
  folder.write("t.csv", "/name\none\n");
  const Ran ran = run("make", {folder.path("t.csv"), sample("first-lesson"), "-o", folder.path("out")});
  EXPECT_EQ(ran.code, 0) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("/site/utility_search"));
  const std::string made = folder.path("out/first-lesson-1.crossing");
  EXPECT_EQ(run("check", {made}).code, 1);
  const json before = json::parse(run("check", {sample("first-lesson"), "--json"}).out);
  const json after = json::parse(run("check", {made, "--json"}).out);
  const auto missing = [](const json& answer) {
    return std::count_if(answer.at("findings").begin(), answer.at("findings").end(), [](const json& finding) {
      return finding.at("code").get<std::string>().starts_with("missing.");
    });
  };
  EXPECT_EQ(missing(before), 0);
  EXPECT_GE(missing(after), 3) << "search, water and how well lines are located are asked for again";
}

TEST(MakeCommand, BadLine_IsToldAndTheRestGoOn) {
  const Folder folder;
  folder.write("t.csv",
               "file;/bore/launch/grade;/site/strata/0/soil\n"
               "a;-0,01;firm-clay\n"
               "b;7;firm-clay\n"
               "c;0\n"
               "../d;0;firm-clay\n"
               "a;0;firm-clay\n"
               "e;;firm-clay\n"
               "f;0;cheese\n"
               "g;1 %;soft-clay\n");
  const Ran ran = run("make", {folder.path("t.csv"), sample("house-service"), "-o", folder.path("out")});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(lines(ran.out), ElementsAre(folder.path("out/a.crossing"), folder.path("out/g.crossing")));
  for (const char* line : {"line 3: /bore/launch/grade", "line 4: ", "line 5: file", "line 6: file",
                           "line 7: /bore/launch/grade", "line 8: /site/strata/0/soil"})
    EXPECT_THAT(ran.err, HasSubstr(line));
  EXPECT_THAT(ran.err, HasSubstr("2 crossings made, 6 lines without one"));
  EXPECT_EQ(json::parse(folder.read("out/a.crossing")).at("bore").at("launch").at("grade"), -0.01);
  EXPECT_FALSE(std::filesystem::exists(folder.path("d.crossing")));
}

TEST(MakeCommand, NothingIsOverwrittenUnlessForced) {
  const Folder folder;
  folder.write("t.csv", "file,/name\na,new\n");
  std::filesystem::create_directory(folder.path("out"));
  folder.write("out/a.crossing", "mine");
  const std::vector<std::string> words{folder.path("t.csv"), sample("house-service"), "-o", folder.path("out")};
  EXPECT_EQ(run("make", words).code, 2);
  EXPECT_EQ(folder.read("out/a.crossing"), "mine");
  std::vector<std::string> forced = words;
  forced.emplace_back("--force");
  EXPECT_EQ(run("make", forced).code, 0);
  EXPECT_EQ(json::parse(folder.read("out/a.crossing")).at("name"), "new");
}

// A table that cannot be meant makes nothing at all.
TEST(MakeCommand, WrongTable_MakesNothing) {
  const Folder folder;
  for (const char* table : {"", "/name\n", "/nmae\nx\n", "name\nx\n", "/name,/name\nx,y\n"}) {
    folder.write("t.csv", table);
    const Ran ran = run("make", {folder.path("t.csv"), sample("house-service"), "-o", folder.path("out")});
    EXPECT_EQ(ran.code, 2) << table;
    EXPECT_TRUE(ran.out.empty()) << table;
    EXPECT_FALSE(std::filesystem::exists(folder.path("out"))) << table;
  }
  EXPECT_EQ(run("make", {folder.path("t.csv"), "-o", folder.path("out")}).code, 2);
  EXPECT_EQ(run("make", {folder.path("none.csv"), sample("house-service"), "-o", folder.path("out")}).code, 2);
}

TEST(CheckCsv, ALineForEachFile) {
  const Folder folder;
  folder.copy_sample("first-lesson", "1.crossing");
  folder.copy_sample("four-faults", "2.crossing");
  folder.write("3.crossing", "{");
  const Ran ran = run("check", {folder.path(), "--csv"});
  EXPECT_EQ(ran.code, 2);
  const auto table = read_csv_content(ran.out);
  ASSERT_TRUE(table) << table.error().english();
  ASSERT_EQ(table->rows.size(), 3u);
  const auto cell = [&](std::size_t row, const std::string& name) {
    const auto at = std::find(table->names.begin(), table->names.end(), name) - table->names.begin();
    return table->rows[row].cells.at(static_cast<std::size_t>(at));
  };
  EXPECT_EQ(cell(0, "verdict"), json::parse(run("check", {folder.path("1.crossing"), "--json"}).out).at("verdict"));
  EXPECT_EQ(cell(1, "verdict"), "stop");
  EXPECT_NE(cell(1, "stops"), "0");
  const json four = json::parse(run("check", {folder.path("2.crossing"), "--json"}).out);
  EXPECT_EQ(cell(1, "first_code"), four.at("findings").at(0).at("code"));
  EXPECT_EQ(std::stod(cell(1, "least_cover_m")), four.at("cover").at("least_m").get<double>());
  EXPECT_EQ(cell(2, "verdict"), "not-judged");
  EXPECT_EQ(cell(2, "least_cover_m"), "") << "not known is empty, never 0";
  EXPECT_NE(cell(2, "error"), "");
}

TEST(CheckCsv, EmptyFolder_IsNotJudged) {
  const Folder folder;
  const Ran ran = run("check", {folder.path(), "--csv"});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.out, HasSubstr("not-judged"));
  EXPECT_EQ(run("check", {folder.path(), "--csv", "--json"}).code, 2);
}

}  // namespace
}  // namespace burrow::test

// burrowline search: exit codes, JSON, words, wrong words.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/command_run.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::StartsWith;

TEST(SearchCommand, Text_BestLaunchAndWhatBinds) {
  const Ran ran = run("search", {sample("house-service"), "--grid", "24"});
  EXPECT_EQ(ran.code, 0) << ran.out << ran.err;
  EXPECT_TRUE(ran.err.empty()) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("Best launch: "));
  EXPECT_THAT(ran.out, HasSubstr("as it stands\n  1.33 m deep at 0.00 %: stop"));
  EXPECT_THAT(ran.out, HasSubstr("what binds"));
  EXPECT_THAT(ran.out, HasSubstr("chance of touching gas main (stop)"));
  const Ran us = run("search", {sample("house-service"), "--grid", "8", "--units", "us"});
  EXPECT_THAT(us.out, HasSubstr("4 ft 4.4 in deep"));
}

TEST(SearchCommand, Json_OneLine_CellsRowByRow) {
  const Ran ran = run("search", {sample("house-service"), "--json", "--grid", "12", "--jobs", "2"});
  EXPECT_EQ(ran.code, 0);
  ASSERT_EQ(lines(ran.out).size(), 1U);
  const json answer = json::parse(ran.out);
  EXPECT_EQ(answer.at("format"), "burrowline-search");
  EXPECT_EQ(answer.at("version"), 1);
  EXPECT_EQ(answer.at("works"), true);
  EXPECT_EQ(answer.at("across").at("of"), "grade");
  EXPECT_EQ(answer.at("down").at("of"), "depth_m");
  EXPECT_EQ(answer.at("across").at("count"), 12);
  for (const char* list : {"verdict", "assessed", "missing", "arrives", "margin", "binds", "chance_clean"})
    EXPECT_EQ(answer.at("cells").at(list).size(), 144U) << list;
  for (const json& binds : answer.at("cells").at("binds"))
    if (!binds.is_null()) {
      EXPECT_LT(binds.get<std::size_t>(), answer.at("limits").size());
    }
  for (const char* key : {"best", "here"}) {
    const json& cell = answer.at(key);
    for (const char* inner : {"launch", "verdict", "assessed", "missing", "arrives", "margin", "binds", "measured",
                              "limit", "chance_clean", "earth_m3", "pit_depth_m", "length_m", "text"})
      EXPECT_TRUE(cell.contains(inner)) << key << inner;
    for (const char* inner : {"station_m", "offset_m", "elevation_m", "depth_m", "grade"})
      EXPECT_TRUE(cell.at("launch").at(inner).is_number()) << key << inner;
  }
  EXPECT_NEAR(answer.at("here").at("launch").at("elevation_m").get<double>(), 100.95, 1e-9);
  EXPECT_TRUE(answer.contains("best_by_limits"));
  EXPECT_TRUE(answer.at("widened").is_number_integer());
  for (const json& margin : answer.at("cells").at("margin")) {
    EXPECT_GE(margin.get<double>(), -1);
    EXPECT_LE(margin.get<double>(), 1);
  }
  for (const char* key : {"everywhere", "missing", "relaxations", "exposures", "limits", "edges"})
    EXPECT_TRUE(answer.at(key).is_array()) << key;
  EXPECT_FALSE(answer.contains("tools"));
}

// Without a water level `check` says incomplete: so does the search, of the best launch, the present one, in words and
// in JSON, and nowhere "within limits".
TEST(SearchCommand, MissingData_IncompleteAsCheckSays) {
  const Folder folder;
  std::ifstream in(sample("first-lesson"));
  json crossing = json::parse(in);
  crossing["site"]["water"] = nullptr;
  folder.write("dry.crossing", crossing.dump());
  const std::string path = folder.path("dry.crossing");
  const json checked = json::parse(run("check", {path, "--json"}).out);
  const json answer = json::parse(run("search", {path, "--json", "--grid", "8"}).out);
  EXPECT_EQ(answer.at("here").at("assessed"), checked.at("verdict"));
  EXPECT_GE(answer.at("best").at("missing").get<int>(), 1);
  EXPECT_NE(answer.at("best").at("assessed"), "within-limits");
  for (const json& assessed : answer.at("cells").at("assessed"))
    EXPECT_TRUE(assessed == "incomplete" || assessed == "stop") << assessed;
  EXPECT_THAT(answer.at("headline").get<std::string>(), HasSubstr("Incomplete: "));
  const std::string text = run("search", {path, "--grid", "8"}).out;
  EXPECT_THAT(text, HasSubstr("incomplete ("));
  EXPECT_EQ(text.find("within limits"), std::string::npos) << text;
}

TEST(SearchCommand, SameAnswerWithAnyNumberOfJobs) {
  const auto search = [](const char* jobs) {
    return run("search", {sample("four-faults"), "--json", "--grid", "10", "--jobs", jobs}).out;
  };
  const std::string one = search("1");
  EXPECT_EQ(search("3"), one);
}

TEST(SearchCommand, NoneWorks_CodeOneAndWhatWouldHaveToGiveWay) {
  // The launch is held where it stands, too near to the gas main.
  const Folder folder;
  std::ifstream in(sample("house-service"));
  json crossing = json::parse(in);
  crossing["locks"] = {"/bore/launch"};
  folder.write("locked.crossing", crossing.dump());
  const Ran ran = run("search", {folder.path("locked.crossing"), "--json"});
  EXPECT_EQ(ran.code, 1) << ran.err;
  const json answer = json::parse(ran.out);
  EXPECT_EQ(answer.at("works"), false);
  EXPECT_EQ(answer.at("across").at("locked"), true);
  ASSERT_FALSE(answer.at("relaxations").empty());
  const json& limit = answer.at("relaxations")[0].at("limits")[0];
  EXPECT_EQ(limit.at("subject"), "u2");
  EXPECT_FALSE(limit.at("gives").get<std::string>().empty());
  ASSERT_FALSE(answer.at("exposures").empty());
  EXPECT_EQ(answer.at("exposures")[0].at("utility"), "u2");
  EXPECT_EQ(answer.at("exposures")[0].at("works"), true);
}

TEST(SearchCommand, WrongWords_CodeTwo) {
  EXPECT_EQ(run("search", {}).code, 2);
  EXPECT_EQ(run("search", {sample("house-service"), sample("first-lesson")}).code, 2);
  EXPECT_THAT(run("search", {sample("house-service"), "--grid", "1"}).err, StartsWith("burrowline search: --grid"));
  EXPECT_THAT(run("search", {sample("house-service"), "--grid", "many"}).err, HasSubstr("--grid"));
  EXPECT_THAT(run("search", {sample("house-service"), "--over", "the-moon"}).err, HasSubstr("station-and-offset"));
  EXPECT_EQ(run("search", {sample("house-service"), "--alternative", "a9"}).code, 2);
  const Folder folder;
  folder.write("broken.crossing", "{");
  const Ran broken = run("search", {folder.path("broken.crossing"), "--json"});
  EXPECT_EQ(broken.code, 2);
  EXPECT_EQ(json::parse(broken.out).at("format"), "burrowline-search");
  EXPECT_TRUE(json::parse(broken.out).contains("error"));
  EXPECT_EQ(run("search", {folder.path("none.crossing")}).code, 2);
}

TEST(SearchCommand, Tools_OneRowForEachAndEachWay) {
  const Ran ran = run("search", {sample("first-lesson"), "--json", "--grid", "8", "--tools"});
  const json answer = json::parse(ran.out);
  ASSERT_TRUE(answer.at("tools").is_array());
  EXPECT_GE(answer.at("tools").size(), 9U);
  for (const json& row : answer.at("tools")) EXPECT_FALSE(row.at("text").get<std::string>().empty()) << row;
}

TEST(SearchCommand, StationAndOffset) {
  const Ran ran = run("search", {sample("house-service"), "--json", "--grid", "6", "--over", "station-and-offset"});
  const json answer = json::parse(ran.out);
  EXPECT_EQ(answer.at("across").at("of"), "station_m");
  EXPECT_EQ(answer.at("down").at("of"), "offset_m");
}

}  // namespace
}  // namespace burrow::test

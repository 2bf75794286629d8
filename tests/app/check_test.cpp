// burrowline check: exit codes, order, one bad file among good ones, threads, words.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "support/command_run.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::ContainsRegex;
using ::testing::HasSubstr;
using ::testing::Not;

TEST(CheckCommand, Samples_ExitCodes) {
  for (const auto& [name, code] : {std::pair{"first-lesson", 0},
                                   {"car-park-duct", 0},
                                   {"house-service", 1},
                                   {"rail-siding", 1},
                                   {"four-faults", 1}}) {
    const Ran ran = run("check", {sample(name)});
    EXPECT_EQ(ran.code, code) << name << ran.out << ran.err;
    EXPECT_TRUE(ran.err.empty()) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr(name));
  }
}

TEST(CheckCommand, ManyFiles_LargestCode) {
  const Folder folder;
  folder.write("broken.crossing", "{");
  EXPECT_EQ(run("check", {sample("first-lesson"), sample("car-park-duct")}).code, 0);
  EXPECT_EQ(run("check", {sample("rail-siding"), sample("first-lesson")}).code, 1);
  EXPECT_EQ(run("check", {sample("rail-siding"), folder.path("broken.crossing"), sample("first-lesson")}).code, 2);
}

TEST(CheckCommand, Text_WorstFirstWithLimitAndSource) {
  const Ran ran = run("check", {sample("four-faults")});
  EXPECT_THAT(ran.out, HasSubstr(": Stop. "));
  EXPECT_THAT(ran.out, HasSubstr("  1. stop: "));
  EXPECT_THAT(ran.out, HasSubstr("limit from: "));
  EXPECT_LT(ran.out.find("stop: "), ran.out.find("note: "));
  EXPECT_THAT(ran.out, HasSubstr("\n  air: "));
  EXPECT_THAT(ran.out, HasSubstr(" at the tool, "));
  EXPECT_THAT(ran.out, HasSubstr("\n    hose 1.50 m: nose "));
  const Ran siding = run("check", {sample("rail-siding")});
  EXPECT_THAT(siding.out, HasSubstr("missing: "));
}

/// What the contract promises of one line: "number" may be null, "text" may be null, the rest may not.
void expect_shape(const json& value, const json& shape, const std::string& at) {
  if (shape == "number") {
    EXPECT_TRUE(value.is_number() || value.is_null()) << at << value;
  } else if (shape == "text") {
    EXPECT_TRUE(value.is_string() || value.is_null()) << at << value;
  } else if (shape == "truth") {
    EXPECT_TRUE(value.is_boolean()) << at << value;
  } else if (shape == "anything") {
    return;
  } else if (shape.is_array()) {
    ASSERT_TRUE(value.is_array()) << at << value;
    for (std::size_t i = 0; i < value.size(); ++i) expect_shape(value[i], shape[0], at + "/" + std::to_string(i));
  } else {
    ASSERT_TRUE(value.is_object()) << at << value;
    for (const auto& [key, inner] : shape.items()) {
      ASSERT_TRUE(value.contains(key)) << at << " lacks " << key;
      expect_shape(value.at(key), inner, at + "/" + key);
    }
  }
}

const json& contract() {
  static const json shape = json::parse(R"({
    "format":"text","version":"number","file":"text","crossing":"text","verdict":"text",
    "bore":{"length_m":"number","ends":"text",
      "path":[{"s_m":"number","x_m":"number","y_m":"number","z_m":"number","grade":"number","heading_rad":"number",
        "sd_lateral_m":"number","sd_vertical_m":"number","cover_m":"number","resistance_above_pa":"number",
        "resistance_below_pa":"number","curvature_1_m":"number"}],
      "arrival":{"offset_m":"number","elevation_m":"number","sd_lateral_m":"number","sd_vertical_m":"number",
        "chance_inside_exit_pit":"number"},
      "neutral_cover_m":"number","chance_of_refusal":"number","chance_of_daylight":"number","refusal_station_m":"number",
      "advance_time_s":{"p10":"number","p50":"number","p90":"number"}},
    "cover":{"least_m":"number","least_low_m":"number","station_m":"number","required_m":"number","chance_below":"number"},
    "utilities":[{"id":"text","name":"text","separation_m":"number","gap_low_m":"number","station_m":"number",
      "offset_m":"number","elevation_m":"number","angle_rad":"number","required_m":"number","contact_chance":"number",
      "contact_chance_worst":"number","encroachment_chance":"number","by":"text","ground_movement_m":"number",
      "strain":"number","expose":"truth","expose_rank":"number","chance_after_hole":"number"}],
    "surface":{"heave_m":"number","heave_high_m":"number","station_m":"number","limit_m":"number",
      "settlement_m":"number"},
    "pits":{"launch":{"depth_m":"number","floor_length_m":"number","floor_width_m":"number","top_length_m":"number",
        "top_width_m":"number","volume_m3":"number"},
      "exit":{"depth_m":"number","floor_length_m":"number","floor_width_m":"number","top_length_m":"number",
        "top_width_m":"number","volume_m3":"number"}},
    "pipe":{"checks":[{"name":"text","value":"number","limit":"number","unit":"text","station_m":"number"}]},
    "air":{"pressure_at_tool_pa":"number","free_air_m3_s":"number"},
    "marks":[{"hose_m":"number","nose_m":"number","station_m":"number","depth_m":"number","depth_low_m":"number",
      "depth_high_m":"number","time_s":{"p10":"number","p50":"number","p90":"number"},
      "near":[{"id":"text","above_m":"number"}]}],
    "day":{"nose_m":"number","advice":"text","arrival":"anything","utilities":["anything"]},
    "findings":[{"code":"text","severity":"text","subject":"text","station_m":"number","offset_m":"number",
      "elevation_m":"number","measured":"number","limit":"number","unit":"text","source":"text","source_label":"text",
      "muted":"anything","text":"text"}]})");
  return shape;
}

TEST(CheckCommand, Json_EveryMemberOfTheContract) {
  for (const char* name :
       {"house-service", "rail-siding", "car-park-duct", "four-faults", "first-lesson", "sixty-utilities"}) {
    const Ran ran = run("check", {sample(name), "--json"});
    ASSERT_EQ(lines(ran.out).size(), 1u) << name;
    const json line = json::parse(ran.out);
    expect_shape(line, contract(), name);
    EXPECT_EQ(line.at("format"), "burrowline-assessment");
    EXPECT_EQ(line.at("version"), 1);
    EXPECT_EQ(line.at("file"), sample(name));
    EXPECT_FALSE(line.contains("working")) << "only when asked for";
    ASSERT_FALSE(line.at("bore").at("path").empty());
    double before = 0;
    for (const json& p : line.at("bore").at("path")) {  // a point at least every 0.25 m
      EXPECT_LE(p.at("s_m").get<double>() - before, 0.25 + 1e-9);
      before = p.at("s_m").get<double>();
    }
    for (const json& f : line.at("findings")) {
      EXPECT_THAT(f.at("severity").get<std::string>(), ContainsRegex("^(stop|caution|note)$"));
      EXPECT_FALSE(f.at("text").get<std::string>().empty());
    }
  }
}

TEST(CheckCommand, Json_WorkingWhenAskedFor) {
  const json line = json::parse(run("check", {sample("house-service"), "--json", "--working"}).out);
  ASSERT_TRUE(line.contains("working"));
  ASSERT_GE(line.at("working").size(), 5u);
  for (const json& w : line.at("working"))
    expect_shape(w, json::parse(R"({"code":"text","subject":"text","formula":"text",
      "inputs":[{"symbol":"text","value":"number","unit":"text"}],"value":"number","unit":"text","limit":"number",
      "source":"text","source_label":"text"})"),
                 "working");
  const Ran text = run("check", {sample("house-service"), "--working"});
  EXPECT_THAT(text.out, HasSubstr("g = δ − R"));
  EXPECT_THAT(run("check", {sample("house-service")}).out, Not(HasSubstr("g = δ − R")));
}

TEST(CheckCommand, Trials_BesideTheClosedForms) {
  const Ran text = run("check", {"--trials", sample("first-lesson")});
  EXPECT_EQ(text.code, 0) << text.err;
  EXPECT_THAT(text.out, HasSubstr("simulation"));
  EXPECT_THAT(text.out, HasSubstr("arrive in the exit pit: "));
  const Ran ran = run("check", {"--json", "--trials", sample("first-lesson")});
  const json j = json::parse(ran.out);
  EXPECT_EQ(j.at("trials").at("count"), 20000);
  const double arrived = j["trials"]["chances"]["inside_exit_pit"]["chance"];
  EXPECT_NEAR(arrived, j["bore"]["arrival"]["chance_inside_exit_pit"].get<double>(), 0.02);
  EXPECT_FALSE(json::parse(run("check", {"--json", sample("first-lesson")}).out).contains("trials"));
}

// The same bytes whatever the number of threads, and whether one file or several are asked for.
TEST(CheckCommand, Trials_SameOnAnyThreads) {
  const Ran one = run("check", {"--json", "--trials", "--jobs", "1", sample("rail-siding")});
  const Ran four = run("check", {"--json", "--trials", "--jobs", "4", sample("rail-siding")});
  const Ran two_files = run("check", {"--json", "--trials", sample("rail-siding"), sample("first-lesson")});
  EXPECT_EQ(one.out, four.out);
  EXPECT_EQ(two_files.out.substr(0, one.out.size()), one.out);
}

TEST(CheckCommand, Units_ChangeTheWordsAlone) {
  json metric = json::parse(run("check", {sample("house-service"), "--json"}).out);
  json us = json::parse(run("check", {sample("house-service"), "--json", "--units", "us"}).out);
  ASSERT_NE(metric, us);
  for (json* line : {&metric, &us})
    for (json& f : line->at("findings")) f.erase("text");
  EXPECT_EQ(metric, us);
  EXPECT_THAT(run("check", {sample("house-service"), "--units", "us"}).out, HasSubstr(" ft"));
}

TEST(CheckCommand, Folder_ItsCrossingsByName) {
  const Folder folder;
  folder.copy_sample("first-lesson", "b.crossing");
  folder.copy_sample("rail-siding", "a.crossing");
  folder.copy_sample("car-park-duct", "C.crossing");
  folder.write("notes.txt", "not a crossing");
  const Ran ran = run("check", {folder.path(), "--json"});
  EXPECT_EQ(ran.code, 1) << ran.err;
  std::vector<std::string> files;
  for (const std::string& line : lines(ran.out)) files.push_back(json::parse(line).at("file"));
  EXPECT_EQ(files, (std::vector{folder.path("C.crossing"), folder.path("a.crossing"), folder.path("b.crossing")}));
}

TEST(CheckCommand, BadFileInBetween_IsSaidAndTheRestGoesOn) {
  const Folder folder;
  folder.copy_sample("first-lesson", "a.crossing");
  folder.write("b.crossing", R"({"format":"burrowline-crossing","version":1,"site":{"ground":[[0,"deep"]]}})");
  folder.copy_sample("first-lesson", "c.crossing");
  const Ran ran = run("check", {folder.path(), "--json"});
  EXPECT_EQ(ran.code, 2);
  ASSERT_EQ(lines(ran.out).size(), 3u) << ran.out;
  const json bad = json::parse(lines(ran.out)[1]);
  EXPECT_EQ(bad.at("format"), "burrowline-assessment");
  EXPECT_EQ(bad.at("version"), 1);
  EXPECT_EQ(bad.at("file"), folder.path("b.crossing"));
  EXPECT_EQ(bad.at("error").at("pointer"), "/site/ground/0/1");
  EXPECT_THAT(bad.at("error").at("found").get<std::string>(), HasSubstr("deep"));
  EXPECT_FALSE(bad.at("error").at("expected").get<std::string>().empty());
  EXPECT_EQ(json::parse(lines(ran.out)[2]).at("verdict"), "within-limits");
  EXPECT_THAT(ran.err, HasSubstr("/site/ground/0/1"));
}

// Two records that nobody has ended: the danger of the older one is not forgotten over the newer.
TEST(CheckCommand, TwoOpenRecords_NeitherForgotten) {
  std::ifstream in(sample("day-under-way"));
  json crossing = json::parse(in);
  ASSERT_EQ(crossing.at("record").size(), 1U);
  json newer = crossing["record"][0];
  newer["id"] = "d2";
  newer["started"] = "2026-03-03T08:05:00+00:00";
  newer["readings"] = json::array({{{"kind", "start"}, {"time_s", 0}}});
  crossing["record"][0]["readings"].push_back({{"kind", "danger"}, {"time_s", 500}, {"sign", "smell"}});
  crossing["record"].push_back(newer);
  const Folder folder;
  folder.write("two.crossing", crossing.dump());
  const Ran ran = run("check", {folder.path("two.crossing"), "--json", "--on", "2026-03-03"});
  EXPECT_EQ(ran.code, 1) << ran.out << ran.err;
  const json answer = json::parse(ran.out);
  EXPECT_EQ(answer.at("verdict"), "stop");
  bool told = false;
  for (const json& finding : answer.at("findings")) told = told || finding.at("code") == "day.get-out";
  EXPECT_TRUE(told) << ran.out;
}

// A folder without crossings among others is one error of its own; the others are judged.
TEST(CheckCommand, EmptyFolderInBetween_DoesNotStopTheOthers) {
  const Folder full, empty;
  full.copy_sample("first-lesson", "a.crossing");
  const Ran ran = run("check", {sample("car-park-duct"), empty.path(), full.path(), "/nowhere", "--json"});
  EXPECT_EQ(ran.code, 2);
  ASSERT_EQ(lines(ran.out).size(), 4u) << ran.out << ran.err;
  EXPECT_EQ(json::parse(lines(ran.out)[0]).at("verdict"), "caution");
  const json bad = json::parse(lines(ran.out)[1]);
  EXPECT_EQ(bad.at("file"), empty.path());
  EXPECT_THAT(bad.at("error").at("found").get<std::string>(), HasSubstr("without *.crossing"));
  EXPECT_EQ(json::parse(lines(ran.out)[2]).at("verdict"), "within-limits");
  EXPECT_TRUE(json::parse(lines(ran.out)[3]).contains("error"));
  EXPECT_THAT(ran.err, HasSubstr(empty.path()));
  const Ran text = run("check", {empty.path(), full.path()});
  EXPECT_EQ(text.code, 2);
  EXPECT_THAT(text.out, HasSubstr("Within limits"));
}

// Contract: the numbers that once crashed or hung the program, among good files.
TEST(CheckCommand, WildNumbers_AreOneAnswerEach) {
  const Folder folder;
  json crossing = json::parse(std::ifstream(sample("first-lesson")));
  folder.copy_sample("first-lesson", "a.crossing");
  json heavy = crossing, steep = crossing, far = crossing;
  heavy["site"]["strata"][0]["values"]["unit_weight_n_m3"] = 1e308;
  folder.write("b.crossing", heavy.dump());
  steep["site"]["ground"] = {{-8, 100}, {0, 100}, {1e-13, 1000}, {20, 100}};
  folder.write("c.crossing", steep.dump());
  far["bore"]["exit"]["station_m"] = 63000;
  folder.write("d.crossing", far.dump());
  folder.copy_sample("first-lesson", "e.crossing");
  const Ran ran = run("check", {folder.path(), "--json"});
  EXPECT_EQ(ran.code, 2);
  ASSERT_EQ(lines(ran.out).size(), 5u) << ran.err;
  EXPECT_EQ(json::parse(lines(ran.out)[1]).at("error").at("pointer"), "/site/strata/0/values/unit_weight_n_m3");
  EXPECT_EQ(json::parse(lines(ran.out)[2]).at("error").at("pointer"), "/site/ground/2/0");
  EXPECT_EQ(json::parse(lines(ran.out)[3]).at("verdict"), "stop");
  EXPECT_EQ(json::parse(lines(ran.out)[4]).at("verdict"), "within-limits");
}

TEST(CheckCommand, FileThatIsNotThere_IsTwo) {
  const Ran ran = run("check", {"/nowhere/x.crossing", "--json"});
  EXPECT_EQ(ran.code, 2);
  EXPECT_EQ(json::parse(ran.out).at("file"), "/nowhere/x.crossing");
  EXPECT_THAT(ran.err, HasSubstr("/nowhere/x.crossing"));
  const Folder empty;
  EXPECT_EQ(run("check", {empty.path()}).code, 2);
}

TEST(CheckCommand, Jobs_SameBytes) {
  const Folder folder;
  const char* const names[] = {"house-service", "rail-siding", "four-faults", "first-lesson", "car-park-duct"};
  for (int i = 0; i < 40; ++i) folder.copy_sample(names[i % 5], std::to_string(100 + i) + ".crossing");
  folder.write("117b.crossing", "[]");
  const Ran one = run("check", {folder.path(), "--json", "--working", "--jobs", "1"});
  const Ran four = run("check", {folder.path(), "--json", "--working", "--jobs", "4"});
  EXPECT_EQ(one.code, 2);
  EXPECT_EQ(lines(one.out).size(), 41u);
  EXPECT_TRUE(one.out == four.out);
  EXPECT_EQ(one.err, four.err);
  EXPECT_EQ(one.code, four.code);
}

// The shares of an array job: together every file once, in each share the order of the folder.
TEST(CheckCommand, Parts_TogetherAllFilesOnce) {
  const Folder folder;
  for (int i = 0; i < 7; ++i) folder.copy_sample("first-lesson", std::to_string(i) + ".crossing");
  std::vector<std::string> seen;
  for (const char* part : {"1/3", "2/3", "3/3"})
    for (const std::string& line : lines(run("check", {folder.path(), "--json", "--part", part}).out))
      seen.push_back(json::parse(line).at("file"));
  EXPECT_EQ(seen.size(), 7u);
  EXPECT_EQ(seen.front(), folder.path("0.crossing"));
  EXPECT_EQ(seen.at(1), folder.path("3.crossing"));
  std::sort(seen.begin(), seen.end());
  EXPECT_EQ(std::unique(seen.begin(), seen.end()), seen.end());
  EXPECT_EQ(run("check", {folder.path(), "--part", "8/9"}).code, 0) << "a share may be empty";
  for (const char* part : {"0/3", "4/3", "1", "1/0", "a/b", "1/3x", "-1/3", "/", "1/9999999999"}) {
    const Ran ran = run("check", {folder.path(), "--part", part});
    EXPECT_EQ(ran.code, 2) << part;
    EXPECT_THAT(ran.err, HasSubstr("K/N")) << part;
  }
}

TEST(CheckCommand, WrongWords_TwoWithTheKnown) {
  Ran ran = run("check", {sample("first-lesson"), "--jsn"});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.err, HasSubstr("--jsn"));
  for (const char* known : {"--json", "--units", "--working", "--alternative", "--jobs"})
    EXPECT_THAT(ran.err, HasSubstr(known));
  EXPECT_TRUE(ran.out.empty()) << ran.out;
  ran = run("check", {sample("first-lesson"), "--units", "furlong"});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.err, HasSubstr("metric, us"));
  for (const char* jobs : {"0", "-1", "two", "1.5", "", "99999999999999999999"}) {
    ran = run("check", {sample("first-lesson"), "--jobs", jobs});
    EXPECT_EQ(ran.code, 2) << jobs;
    EXPECT_THAT(ran.err, HasSubstr("a whole number from 1")) << jobs;
  }
  EXPECT_EQ(run("check", {sample("first-lesson"), "--jobs"}).code, 2);
  EXPECT_EQ(run("check", {sample("first-lesson"), "--json", "--json"}).code, 2);
  EXPECT_EQ(run("check", {}).code, 2);
  EXPECT_THAT(run("check", {}).err, HasSubstr("no file"));
}

TEST(CheckCommand, DoubleDash_EndsTheOptions) {
  const Ran ran = run("check", {"--", "--json"});
  EXPECT_EQ(ran.code, 2);
  EXPECT_EQ(ran.err.find("--json: "), 0u) << ran.err;
}

TEST(CheckCommand, Alternative_StandsInForTheLayout) {
  const Folder folder;
  json crossing = json::parse(std::ifstream(sample("first-lesson")));
  json bore = crossing.at("bore");
  bore["launch"]["elevation_m"] = bore["launch"]["elevation_m"].get<double>() - 0.3;
  crossing["alternatives"] = {{{"id", "a1"}, {"name", "deeper"}, {"bore", bore}}};
  folder.write("x.crossing", crossing.dump());
  EXPECT_EQ(run("check", {folder.path("x.crossing")}).code, 0);
  EXPECT_EQ(run("check", {folder.path("x.crossing"), "--alternative", "a1"}).code, 1);
  const Ran unknown = run("check", {folder.path("x.crossing"), "--alternative", "a7"});
  EXPECT_EQ(unknown.code, 2);
  EXPECT_THAT(unknown.err, HasSubstr("a7"));
  EXPECT_THAT(unknown.err, HasSubstr("a1"));
}

TEST(Commands, Usage_NamesEachCommand) {
  for (const char* command : {"check", "search", "sheet", "picture", "import", "learn"}) {
    EXPECT_TRUE(is_command(command));
    EXPECT_THAT(usage(), HasSubstr("burrowline " + std::string(command)));
  }
  EXPECT_FALSE(is_command("dig"));
  EXPECT_EQ(run("dig", {}).code, 2);
  EXPECT_EQ(run("dig", {}).err, usage());
}

}  // namespace
}  // namespace burrow::test

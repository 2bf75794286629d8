// burrowline learn, and what check says of an open record.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/command_run.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

/// The first lesson with a record of four marks, a level and a fix; closed or left open.
std::string with_record(bool closed) {
  json crossing = json::parse(std::ifstream(sample("first-lesson")));
  json readings = json::array({{{"kind", "start"}, {"time_s", 0}}});
  for (int mark = 1; mark <= 3; ++mark)
    readings.push_back({{"kind", "mark"}, {"time_s", 60 * mark}, {"nose_m", 1.5 * mark}});
  readings.push_back({{"kind", "grade"}, {"time_s", 61}, {"nose_m", 1.0}, {"grade", 0.004}});
  readings.push_back({{"kind", "fix"}, {"time_s", 130}, {"nose_m", 3.0}, {"offset_m", 0.04}, {"depth_m", 0.95}});
  if (closed) readings.push_back({{"kind", "end"}, {"time_s", 400}, {"how", "arrived"}});
  crossing["record"] = json::array({{{"id", "d1"}, {"readings", readings}}});
  return crossing.dump();
}

TEST(LearnCommand, Record_GivesALibraryThatSaysFromHowMany) {
  const Folder folder;
  folder.write("a.crossing", with_record(true));
  folder.write("b.crossing", with_record(true));
  const std::vector<std::string> files{folder.path("a.crossing"), folder.path("b.crossing")};
  const Ran text = run("learn", files);
  EXPECT_EQ(text.code, 0) << text.err;
  EXPECT_THAT(text.out, HasSubstr("soft clay, steering constant"));
  EXPECT_THAT(text.out, HasSubstr("2 bores"));
  const Ran as_json = run("learn", {files[0], files[1], "--json", "-o", folder.path("lib.json")});
  EXPECT_EQ(as_json.code, 0) << as_json.err;
  EXPECT_EQ(as_json.out, folder.read("lib.json"));
  const json library = json::parse(as_json.out);
  EXPECT_EQ(library["format"], "burrowline-library");
  EXPECT_EQ(library["soils"][0]["soil"], "soft-clay");
  EXPECT_EQ(library["soils"][0]["bores"], 2);
}

TEST(LearnCommand, Rejection_SaysWhatIsWrong) {
  const Folder folder;
  folder.write("broken.crossing", "{");
  EXPECT_EQ(run("learn", {}).code, 2);
  EXPECT_EQ(run("learn", {folder.path("nothing.crossing")}).code, 2);
  EXPECT_EQ(run("learn", {folder.path("broken.crossing")}).code, 2);
  EXPECT_EQ(run("learn", {sample("first-lesson"), "--fast"}).code, 2);
  EXPECT_EQ(run("learn", {sample("first-lesson"), "-o", folder.path("no/such/folder.json")}).code, 2);
  const Ran none = run("learn", {sample("first-lesson")});
  EXPECT_EQ(none.code, 0);
  EXPECT_THAT(none.out, HasSubstr("no record"));
}

TEST(CheckCommand, OpenRecord_GivesTheDay) {
  const Folder folder;
  folder.write("open.crossing", with_record(false));
  folder.write("closed.crossing", with_record(true));
  const json open = json::parse(run("check", {folder.path("open.crossing"), "--json"}).out);
  EXPECT_EQ(open["day"]["record"], "d1");
  EXPECT_EQ(open["day"]["nose_m"], 4.5);
  EXPECT_TRUE(open["day"]["advice"].is_string());
  EXPECT_TRUE(open["day"]["arrival"]["sd_lateral_m"].is_number());
  EXPECT_GT(open["bore"]["arrival"]["sd_lateral_m"].get<double>(),
            open["day"]["arrival"]["sd_lateral_m"].get<double>());
  const json closed = json::parse(run("check", {folder.path("closed.crossing"), "--json"}).out);
  EXPECT_TRUE(closed["day"]["record"].is_null());
  const std::string text = run("check", {folder.path("open.crossing")}).out;
  EXPECT_THAT(text, HasSubstr("the day"));
  EXPECT_THAT(text, HasSubstr("advice: "));
}

}  // namespace
}  // namespace burrow::test

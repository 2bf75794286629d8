// burrowline import: exit codes, what is said on stderr, and that the crossing it makes can be checked.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/command_run.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

std::string survey() {
  std::string text;
  for (int i = -5; i <= 15; ++i)
    for (int k = -5; k <= 5; ++k)
      text += std::to_string(text.size()) + "," + std::to_string(200 + 4 * k) + "," + std::to_string(100 + 4 * i) +
              ",55.5,GND\n";
  return text + "9001,190,106,54.5,GAS\n9002,210,106,54.4,GAS\nbroken line\n";
}

TEST(ImportCommand, Survey_MakesACrossingThatCanBeChecked) {
  const Folder folder;
  folder.write("a.csv", survey());
  const Ran ran = run("import", {folder.path("a.csv"), "-o", folder.path("a.crossing"), "--order", "pnezd", "--units",
                                 "m", "--line", "100,200,112,200", "--join", "GAS", "--heights", "datum", "--level",
                                 "crown", "--diameter", "GAS=0.125"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_TRUE(ran.out.empty());
  EXPECT_THAT(ran.err, HasSubstr("layer GAS = gas: 2 points"));
  EXPECT_THAT(ran.err, HasSubstr("left out: line 234: broken line"));
  EXPECT_THAT(ran.err, Not(HasSubstr("not stated")));
  const json made = json::parse(folder.read("a.crossing"));
  EXPECT_EQ(made.at("site").at("utilities").at(0).at("kind"), "gas");
  EXPECT_NEAR(made["site"]["utilities"][0]["path"][0][2].get<double>(), 54.5 - 0.0625, 1e-9);
  EXPECT_EQ(made.at("bore").at("exit").at("station_m"), 12.0);
  EXPECT_EQ(made.at("site").at("georeference").at("origin"), (json{100.0, 200.0}));
  const Ran check = run("check", {folder.path("a.crossing")});
  EXPECT_EQ(check.code, 1) << check.err;
  EXPECT_THAT(check.out, HasSubstr("missing"));
}

TEST(ImportCommand, NothingSaid_IsTakenAndSaid) {
  const Folder folder;
  folder.write("a.csv", survey());
  const Ran ran = run("import", {folder.path("a.csv"), "-o", folder.path("a.crossing")});
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("not stated: taken as metres"));
  EXPECT_THAT(ran.err, HasSubstr("--order says otherwise"));
  EXPECT_THAT(ran.err, HasSubstr("no --line"));
  EXPECT_THAT(ran.err, HasSubstr("single points"));
}

TEST(ImportCommand, UnitsOfFeet) {
  const Folder folder;
  folder.write("a.csv", survey());
  const Ran ran = run("import", {folder.path("a.csv"), "-o", folder.path("a.crossing"), "--units", "us-ft", "--line",
                                 "100,200,120,200"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_NEAR(json::parse(folder.read("a.crossing")).at("bore").at("exit").at("station_m").get<double>(),
              20 * 1200.0 / 3937, 1e-9);
}

TEST(ImportCommand, OwnMeanings) {
  const Folder folder;
  folder.write("a.csv", survey());
  folder.write("own.json", R"([{"match":"GND","meaning":"not-used"}])");
  const Ran ran = run("import", {folder.path("a.csv"), "-o", folder.path("a.crossing"), "--meanings",
                                 folder.path("own.json"), "--line", "100,200,112,200"});
  EXPECT_EQ(ran.code, 0);
  EXPECT_THAT(ran.err, HasSubstr("no ground along the crossing line"));
  EXPECT_EQ(run("check", {folder.path("a.crossing")}).code, 1);
}

TEST(ImportCommand, WrongWords_Two) {
  const Folder folder;
  folder.write("a.csv", survey());
  folder.write("a.dwg", "AC1027");
  const std::string in = folder.path("a.csv"), out = folder.path("a.crossing");
  const std::vector<std::vector<std::string>> wrong{{},
                                                    {in},
                                                    {"-o", out},
                                                    {in, "-o", out, "--order", "pzd"},
                                                    {in, "-o", out, "--units", "cubit"},
                                                    {in, "-o", out, "--line", "1,2,3"},
                                                    {in, "-o", out, "--line", "1,2,3,x"},
                                                    {in, "-o", out, "--line", "1,1,1,1"},
                                                    {in, "-o", out, "--heights", "sky"},
                                                    {in, "-o", out, "--level", "top"},
                                                    {in, "-o", out, "--meaning", "GND"},
                                                    {in, "-o", out, "--meaning", "GND=gold"},
                                                    {in, "-o", out, "--diameter", "GAS=9"},
                                                    {in, "-o", out, "--meanings", "/nowhere.json"},
                                                    {"/nowhere.csv", "-o", out},
                                                    {folder.path("a.dwg"), "-o", out},
                                                    {in, "-o", "/nowhere/a.crossing", "--line", "100,200,112,200"},
                                                    {in, "-o", out, "--frobnicate"}};
  for (const auto& args : wrong) {
    const Ran ran = run("import", args);
    EXPECT_EQ(ran.code, 2) << ::testing::PrintToString(args);
    EXPECT_THAT(ran.err, HasSubstr("burrowline import: ")) << ::testing::PrintToString(args);
  }
  EXPECT_FALSE(std::filesystem::exists(out));
}

}  // namespace
}  // namespace burrow::test

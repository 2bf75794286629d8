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

std::string drawing(const std::string& header) {
  const auto line = [](const char* layer, const char* x1, const char* y1, const char* x2, const char* y2) {
    return std::string("0\nLINE\n8\n") + layer + "\n10\n" + x1 + "\n20\n" + y1 + "\n11\n" + x2 + "\n21\n" + y2 + "\n";
  };
  return "0\nSECTION\n2\nHEADER\n9\n$DIMSTYLE\n2\nSTANDARD\n" + header + "0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" +
         line("QX-17", "5000", "-5000", "5000", "5000") + line("C-NGAS-PIPE", "8000", "-5000", "8000", "5000") +
         line("FENCE", "-20000", "20000", "40000", "20000") + "0\nENDSEC\n0\nEOF\n";
}

// A plan in millimetres that does not say so is a thousand times too large: it is refused, not taken as metres.
TEST(ImportCommand, UnitThatCannotBe_IsAsked) {
  const Folder folder;
  folder.write("a.dxf", drawing(""));
  const Ran wrong = run("import", {folder.path("a.dxf"), "-o", folder.path("a.crossing"), "--line", "0,0,14000,0"});
  EXPECT_EQ(wrong.code, 2);
  EXPECT_THAT(wrong.err, HasSubstr("--units"));
  folder.write("b.dxf", drawing("9\n$INSUNITS\n70\n6\n"));
  EXPECT_EQ(run("import", {folder.path("b.dxf"), "-o", folder.path("a.crossing"), "--line", "0,0,1400,0"}).code, 2)
      << "stated as metres, and 1.4 km long";
  folder.write("c.dxf", drawing("9\n$INSUNITS\n70\n4\n"));
  const Ran good = run("import", {folder.path("c.dxf"), "-o", folder.path("a.crossing"), "--line", "0,0,14000,0"});
  ASSERT_EQ(good.code, 0) << good.err;
  EXPECT_THAT(good.err, HasSubstr("the crossing line 14.00 m"));
  EXPECT_THAT(good.err, HasSubstr("asked: c.dxf, layer QX-17"));
  const json made = json::parse(folder.read("a.crossing"));
  ASSERT_EQ(made.at("site").at("utilities").size(), 2u);
  EXPECT_EQ(made["site"]["utilities"][0]["kind"], "gas");
  EXPECT_EQ(made["site"]["utilities"][1]["kind"], "unknown");
}

TEST(ImportCommand, Json_SaysWhatWasReadAndLeftOut) {
  const Folder folder;
  folder.write("c.dxf", drawing("9\n$INSUNITS\n70\n4\n"));
  const Ran ran =
      run("import", {folder.path("c.dxf"), "-o", folder.path("a.crossing"), "--line", "0,0,14000,0", "--json"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  const json said = json::parse(ran.out);
  EXPECT_EQ(said.at("format"), "burrowline-import");
  EXPECT_EQ(said.at("files").at(0).at("unit"), "mm");
  EXPECT_EQ(said["files"][0]["unit_from"], "file");
  EXPECT_EQ(said["files"][0]["order_is_known"], true);
  EXPECT_EQ(said["files"][0].at("layers").at(0).at("meaning"), "ask");
  EXPECT_EQ(said.at("crossing").at("utilities"), 2);
  EXPECT_EQ(said.at("complete"), false);
  EXPECT_EQ(said.at("asked").size(), 1u);
  const Ran broken = run("import", {"/nowhere.dxf", "-o", folder.path("b.crossing"), "--json"});
  EXPECT_EQ(broken.code, 2);
  EXPECT_TRUE(json::parse(broken.out).contains("error"));
  const Ran unknown = run("import", {folder.path("c.dxf"), "--json", "--frobnicate"});
  EXPECT_EQ(unknown.code, 2);
  EXPECT_TRUE(json::parse(unknown.out).contains("error")) << "who asked for JSON reads nothing else";
}

TEST(ImportCommand, Strict_OneWhereSomethingIsOpen) {
  const Folder folder;
  folder.write("c.dxf", drawing("9\n$INSUNITS\n70\n4\n"));
  const std::vector<std::string> words{folder.path("c.dxf"), "-o",      folder.path("a.crossing"), "--line",
                                       "0,0,14000,0",        "--strict"};
  EXPECT_EQ(run("import", words).code, 1);
  EXPECT_TRUE(std::filesystem::exists(folder.path("a.crossing"))) << "it is written all the same";
  std::vector<std::string> decided = words;
  decided.insert(decided.end(), {"--meaning", "QX*=background"});
  const Ran ran = run("import", decided);
  EXPECT_EQ(ran.code, 0) << ran.err;
}

// The trap: mains in degrees beside a survey without a system vanished, and the exit code was 0.
TEST(ImportCommand, SystemsThatCannotBeReconciled_Two) {
  const Folder folder;
  folder.write("a.csv", survey());
  folder.write("mains.geojson", R"({"type":"Feature","properties":{"layer":"gas","DIAMETER":4},"geometry":
      {"type":"LineString","coordinates":[[9,50],[9.0001,50]]}})");
  const Ran wrong = run("import", {folder.path("a.csv"), folder.path("mains.geojson"), "-o", folder.path("a.crossing"),
                                   "--line", "100,200,112,200"});
  EXPECT_EQ(wrong.code, 2);
  EXPECT_THAT(wrong.err, HasSubstr("no coordinate system"));
  // In the system stated the survey lies at the equator, and all mains would vanish.
  const Ran apart = run("import", {folder.path("a.csv"), folder.path("mains.geojson"), "-o", folder.path("a.crossing"),
                                   "--line", "100,200,112,200", "--crs", "EPSG:25832"});
  EXPECT_EQ(apart.code, 2);
  EXPECT_THAT(apart.err, HasSubstr("coordinate system: EPSG:25832 (as said)"));
  EXPECT_THAT(apart.err, HasSubstr("from the crossing line"));
  EXPECT_THAT(apart.err, HasSubstr("attribute DIAMETER = diameter in in (a guess, not used"));
}

// Heights of a survey in feet are not metres because its map is one.
TEST(ImportCommand, HeightsOfAPlanInFeet_AreAsked) {
  const Folder folder;
  std::string text;
  for (int i = 0; i < 30; ++i)
    text += std::to_string(i) + "," + std::to_string(200000 + 10 * (i / 6)) + "," +
            std::to_string(1000000 + 10 * (i % 6)) + ",55.5,GND\n";
  folder.write("a.csv", text);
  const std::vector<std::string> words{folder.path("a.csv"), "-o",     folder.path("a.crossing"),      "--crs",
                                       "EPSG:2263",          "--line", "1000000,200020,1000040,200020"};
  const Ran wrong = run("import", words);
  EXPECT_EQ(wrong.code, 2);
  EXPECT_THAT(wrong.err, HasSubstr("--height-units"));
  std::vector<std::string> said = words;
  said.insert(said.end(), {"--height-units", "us-ft"});
  const Ran good = run("import", said);
  EXPECT_EQ(good.code, 0) << good.err;
}

// Points to be joined that stand 40 m apart are services that nobody drew.
TEST(ImportCommand, PointsThatCannotBeJoined_AreSaid) {
  const Folder folder;
  folder.write("a.csv", survey() + "9003,200,106,54.5,GV\n9004,240,106,54.5,GV\n");
  const Ran ran = run("import", {folder.path("a.csv"), "-o", folder.path("a.crossing"), "--units", "m", "--line",
                                 "100,200,112,200", "--join", "GV"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("a service nobody drew"));
  EXPECT_THAT(ran.err, HasSubstr("not joined"));
}

// A word that fits no file, no column or no layer is a slip of the pen, and what it was meant for would stay as it is.
TEST(ImportCommand, WordsThatFitNothing) {
  const Folder folder;
  folder.write("a.csv", survey());
  folder.write("b.geojson",
               R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"DIAMETER":150},)"
               R"("geometry":{"type":"LineString","coordinates":[[9,50],[9.001,50]]}}]})");
  const std::string out = folder.path("o.crossing");
  const Ran file = run("import", {folder.path("a.csv"), "-o", out, "--crs", "other.csv=EPSG:25832"});
  EXPECT_EQ(file.code, 2);
  EXPECT_THAT(file.err, HasSubstr("other.csv"));
  const Ran column = run("import", {folder.path("b.geojson"), "-o", out, "--field", "diameter=DIAMETR:mm"});
  EXPECT_EQ(column.code, 2);
  EXPECT_THAT(column.err, HasSubstr("a column: DIAMETER"));
  EXPECT_FALSE(std::filesystem::exists(out));
  const Ran layer =
      run("import", {folder.path("a.csv"), "-o", out, "--line", "100,200,112,200", "--meaning", "GASS=gas,G*=gas"});
  EXPECT_EQ(layer.code, 0) << layer.err;
  EXPECT_THAT(layer.err, HasSubstr("no layer fits GASS"));
  EXPECT_THAT(layer.err, Not(HasSubstr("fits G*")));
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
                                                    {in, "-o", out, "--crs", "EPSG:999999"},
                                                    {in, "-o", out, "--crs", "/etc/passwd"},
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

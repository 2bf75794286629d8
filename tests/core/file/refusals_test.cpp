// What the reader refuses, each with the JSON pointer of what is wrong, what stood there and what is accepted.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "burrow/file/crossing_file.h"
#include "support/file_samples.h"

namespace burrow::test {
namespace {

struct Refusal {
  std::string from, to;                ///< a piece of the full text, and what takes its place
  std::string place, found, expected;  ///< `found` and `expected`: a part of them
};

void expect_refused(const std::string& text, const Refusal& want) {
  const Result<Crossing> read = read_crossing(text, tables());
  ASSERT_FALSE(read.has_value()) << want.to << " was accepted";
  EXPECT_EQ(read.error().place, want.place) << read.error().english();
  EXPECT_NE(read.error().found.english().find(want.found), std::string::npos) << read.error().english();
  EXPECT_NE(read.error().expected.english().find(want.expected), std::string::npos) << read.error().english();
}

void expect_all_refused(const std::vector<Refusal>& refusals) {
  ASSERT_TRUE(read_crossing(full_text(), tables()).has_value())
      << read_crossing(full_text(), tables()).error().english();
  for (const Refusal& refusal : refusals) {
    SCOPED_TRACE(refusal.from + " -> " + refusal.to);
    expect_refused(with(full_text(), refusal.from, refusal.to), refusal);
  }
}

TEST(Refusals, Text_SaysWhereTheSyntaxBreaks) {
  expect_all_refused({
      {R"("notes": "n")", "\"notes\": \"\xff\"", "/notes", "line 1, column", "UTF-8"},
      {R"("notes": "n")", R"("notes": "\ud800")", "/notes", "line 1, column", ""},
      {R"("notes": "n")", R"("name": "again")", "/name", "the key \"name\" twice", "each key once"},
      {R"("kind":"gas")", R"("kind":"gas","kind":"gas")", "/site/utilities/0/kind", "twice", "once"},
      {R"("scale":100)", R"("scale":1e999)", "/sheet/scale", "1e999", "finite"},
      {"[0.0,102.05]", "[0.0,-1e999]", "/site/ground/1/1", "-1e999", "finite"},
      {R"("scale":100)", R"("scale":NaN)", "/sheet/scale", "line ", "JSON"},
      {R"("scale":100)", R"("scale":Infinity)", "/sheet/scale", "line ", "JSON"},
      {R"("scale":100)", R"("scale":01)", "/sheet", "line ", ""},
      {R"("scale":100)", R"("scale":100,)", "/sheet", "", ""},
      {R"("notes": "n")", "\"notes\": \"n\" /* note */", "", "line 1", ""},
  });
  expect_refused("", {"", "", "", "an empty file", "a JSON object"});
  expect_refused(" \n\t ", {"", "", "", "an empty file", "a JSON object"});
  expect_refused("[1,2]", {"", "", "", "[1,2]", "a JSON object"});
  expect_refused("null", {"", "", "", "null", "a JSON object"});
  expect_refused(least_text() + "\nx", {"", "", "", "line 4, column 1", "end of input"});
  expect_refused(least_text() + least_text(), {"", "", "", "line 3", "end of input"});
}

TEST(Refusals, TruncatedText_SaysLineAndColumn) {
  const std::string text = full_text();
  for (std::size_t length = 1; length < text.size(); length += 7) {
    const Result<Crossing> read = read_crossing(std::string_view(text).substr(0, length), tables());
    ASSERT_FALSE(read.has_value()) << length;
    EXPECT_NE(read.error().found.english().find("line "), std::string::npos) << read.error().english();
    EXPECT_NE(read.error().found.english().find("column "), std::string::npos) << read.error().english();
  }
}

TEST(Refusals, Nesting_IsBounded) {
  const auto nested = [](std::size_t depth) {
    return with(least_text(), "\"version\":1",
                "\"version\":1,\"x\":" + std::string(depth, '[') + std::string(depth, ']'));
  };
  EXPECT_TRUE(read_crossing(nested(63), tables()).has_value());  // with the outermost object 64 levels
  EXPECT_FALSE(read_crossing(nested(64), tables()).has_value());
  const Result<Crossing> hostile = read_crossing(std::string(1'000'000, '['), tables());
  ASSERT_FALSE(hostile.has_value());
  EXPECT_EQ(hostile.error().found, "more than 64 levels of nesting");
}

TEST(Refusals, Size_IsBounded) {
  std::string text = least_text();
  text.resize(64'000'001, ' ');
  expect_refused(text, {"", "", "", "64000001 bytes", "64 MB"});
  std::string many = "[0";
  for (int i = 0; i < 4'000'000; ++i) many += ",0";
  expect_refused(many, {"", "", "/3999999", "more than 4,000,000 values", "at most"});
}

TEST(Refusals, Header_MustBeOurs) {
  expect_all_refused({
      {R"("format": "burrowline-crossing")", R"("format": "other")", "/format", "\"other\"", "burrowline-crossing"},
      {R"("format": "burrowline-crossing", )", "", "/format", "nothing", "burrowline-crossing"},
      {R"("version": 1, )", "", "/version", "nothing", "whole number"},
      {R"("version": 1)", R"("version": 0)", "/version", "0", "from 1"},
      {R"("version": 1)", R"("version": 1.5)", "/version", "1.5", "whole number"},
      {R"("version": 1)", R"("version": "1")", "/version", "\"1\"", "whole number"},
      {R"("version": 1)", R"("version": 99999999999)", "/version", "99999999999", "version"},
  });
}

TEST(Refusals, RequiredMembers_MustStandThere) {
  const auto without = [](const std::string& pointer) {
    nlohmann::json json = nlohmann::json::parse(full_text());
    const nlohmann::json::json_pointer place(pointer);
    json[place.parent_pointer()].erase(place.back());
    return json.dump();
  };
  for (const char* place : {"/site", "/site/ground", "/site/strata", "/site/strata/1/soil", "/bore", "/bore/tool",
                            "/bore/launch", "/bore/launch/station_m", "/bore/launch/elevation_m", "/bore/launch/grade",
                            "/bore/exit", "/bore/exit/station_m", "/limits/separation_gas_m/value"}) {
    SCOPED_TRACE(place);
    expect_refused(without(place), {"", "", place, "nothing", ""});
  }
  expect_all_refused({{R"("ground": [[-4.0,102.10],[0.0,102.05],[14.0,102.30]])", R"("ground": [])", "/site/ground",
                       "[]", "at least one point"}});
  expect_refused(with(least_text(), R"([{"soil":"firm-clay"}])", "[]"), {"", "", "/site/strata", "[]", "at least one"});
  expect_refused(with(least_text(), R"({"class":"tool-65"})", "{}"), {"", "", "/bore/tool", "neither", "diameter_m"});
}

TEST(Refusals, Ranges_AreThoseOfTheContract) {
  expect_all_refused({
      {"[14.0,102.30]", "[100001,102.30]", "/site/ground/2/0", "100001", "station from"},
      {"[14.0,102.30]", "[14.0,10001]", "/site/ground/2/1", "10001", "elevation from"},
      {R"("offset_m":3.0)", R"("offset_m":-100001)", "/site/trees/0/offset_m", "-100001", "offset from"},
      {R"("grade":0.0)", R"("grade":1.001)", "/bore/launch/grade", "1.001", "grade from -1 to 1"},
      {R"("heading_rad":0.0)", R"("heading_rad":1.58)", "/bore/launch/heading_rad", "1.58", "heading"},
      {R"("outside_diameter_m":0.125)", R"("outside_diameter_m":0)", "/site/utilities/0/outside_diameter_m", "0",
       "5 m"},
      {R"("outside_diameter_m":0.063)", R"("outside_diameter_m":5.01)", "/pipe/outside_diameter_m", "5.01", "5 m"},
      {R"("outside_diameter_m":0.063)", R"("outside_diameter_m":0.063,"coupling_diameter_m":0)",
       "/pipe/coupling_diameter_m", "0", "from 0.001 to 5 m"},
      {R"("outside_diameter_m":0.063)", R"("outside_diameter_m":0.063,"hose_rating_n":-1)", "/pipe/hose_rating_n", "-1",
       "a force from 0 to"},
      {R"("outside_diameter_m":0.063)", R"("outside_diameter_m":0.063,"pull_time_s":0)", "/pipe/pull_time_s", "0",
       "a time from 0.01"},
      {R"("diameter_m":0.065)", R"("diameter_m":-0.065)", "/bore/tool/diameter_m", "-0.065", "diameter"},
      {R"("pressure_pa":690000,)", R"("pressure_pa":0,)", "/bore/tool/pressure_pa", "0", "from 1000"},
      {R"("field_factor":0.3)", R"("field_factor":0)", "/bore/model/field_factor", "0", "from 0.001 to 100"},
      {R"("sight_base_m":2.0)", R"("sight_base_m":0)", "/bore/launch/sight_base_m", "0", "from 0.001"},
      {R"("protection_radius_m":2.4)", R"("protection_radius_m":-1)", "/site/trees/0/protection_radius_m", "-1",
       "size"},
      {R"("lateral_sd_m":0.15)", R"("lateral_sd_m":-0.1)", "/site/utilities/0/located/lateral_sd_m", "-0.1",
       "deviation"},
      {R"("unknown_rate_1_m2":0.0)", R"("unknown_rate_1_m2":-1)", "/site/utility_search/unknown_rate_1_m2", "-1",
       "rate"},
      {R"("calibrated_from":0)", R"("calibrated_from":-1)", "/bore/model/calibrated_from", "-1", "0 or more"},
      {R"("count":2,)", R"("count":2.5,)", "/air/line/1/count", "2.5", "whole number"},
      {R"("count":20000)", R"("count":1000001)", "/bore/trials/count", "1000001", "1000000"},
      {R"("seed":1)", R"("seed":0.5)", "/bore/trials/seed", "0.5", "whole number"},
      {R"("seed":1)", R"("seed":12345678901234567890)", "/bore/trials/seed", "12345678901234567890", "whole number"},
      {R"("heave_share":0.5)", R"("heave_share":1.01)", "/site/strata/1/values/heave_share", "1.01",
       "share from 0 to 1"},
      {R"("relative_humidity":0.5)", R"("relative_humidity":-0.1)", "/air/relative_humidity", "-0.1", "share"},
      {R"("cover_diameters":12)", R"("cover_diameters":-12)", "/limits/cover_diameters", "-12", "0 or more"},
  });
}

// What once crashed the program or made it search for ever: no soil, no tool, no limit is like that (our default).
TEST(Refusals, Ranges_ArePhysical) {
  expect_all_refused({
      {R"("unit_weight_n_m3":18000)", R"("unit_weight_n_m3":1e308)", "/site/strata/1/values/unit_weight_n_m3", "1e308",
       "from 100 to 100000 N/m3"},
      {R"("unit_weight_n_m3":18000)", R"("unit_weight_n_m3":18)", "/site/strata/1/values/unit_weight_n_m3", "18",
       "from 100"},
      {R"("undrained_strength_pa":45000)", R"("undrained_strength_pa":1e308)",
       "/site/strata/1/values/undrained_strength_pa", "1e308", "a strength from 1 to 1e9 Pa"},
      {R"("undrained_strength_pa":45000)", R"("undrained_strength_pa":1e-6)",
       "/site/strata/1/values/undrained_strength_pa", "1e-6", "a strength from 1"},
      {R"("shear_modulus_pa":4000000)", R"("shear_modulus_pa":1e300)", "/site/strata/1/values/shear_modulus_pa",
       "1e300", "a modulus"},
      {R"("refusal_rate_1_m":0.001)", R"("refusal_rate_1_m":1e16)", "/site/strata/1/values/refusal_rate_1_m", "1e16",
       "a rate"},
      {R"("run_per_rise":1.5)", R"("run_per_rise":1e16)", "/pits/launch/sides/back/run_per_rise", "1e16",
       "for each unit of rise"},
      {R"("blow_rate_hz":8)", R"("blow_rate_hz":1e300)", "/bore/tool/blow_rate_hz", "1e300", "a blow rate"},
      {R"("temperature_k":293.15)", R"("temperature_k":20)", "/pipe/temperature_k", "20", "from 100 to 1000 K"},
      {R"("service_temperature_k":290.15)", R"("service_temperature_k":17)", "/pipe/service_temperature_k", "17",
       "from 100 to 1000 K"},
      {R"("regulator_pa":680000.0)", R"("regulator_pa":-1)", "/air/compressor/regulator_pa", "-1", "a pressure from 0"},
      {R"("rating_pa":1600000)", R"("rating_pa":-1)", "/air/line/0/rating_pa", "-1", "a pressure from 0"},
      {R"("sdr":11)", R"("sdr":2)", "/pipe/sdr", "2", "above 2"},
      {R"("origin":[691000,5334000])", R"("origin":[691000,1e16])", "/site/georeference/origin/1", "1e16",
       "a coordinate"},
      {R"("measured":0.31)", R"("measured":1e308)", "/muted/0/measured", "1e308", "a number from"},
      {R"("value":0.60)", R"("value":1e308)", "/limits/separation_gas_m/value", "1e308",
       "a limit from -100000 to 100000 m"},
      {R"("cover_diameters":12)", R"("cover_diameters":1e16)", "/limits/cover_diameters", "1e16",
       R"(or {"value": …, "why": "…"})"},
  });
}

// Ground, strata and water: a drop that stands upright is two stations a millimetre apart; 10 m over that is the
// steepest. A slope of 1e16 crashed the program.
TEST(Refusals, Slopes_AreThoseOfAGround) {
  const char* const ground = "[-4.0,102.10],[0.0,102.05],[14.0,102.30]";
  const auto with_ground = [&](const char* other) { return with(full_text(), ground, other); };
  const auto expect_slope = [&](const char* other, const char* place, const char* found, const char* expected) {
    SCOPED_TRACE(other);
    expect_refused(with_ground(other), {"", other, place, found, expected});
  };
  expect_slope("[-4.0,102.10],[0.0,102.05],[1e-12,5000],[14.0,102.30]", "/site/ground/2/0", "1e-12", "by a millimetre");
  expect_slope("[-4.0,102.10],[0.0,102.05],[0.0005,102],[14.0,102.30]", "/site/ground/2/0", "0.0005",
               "by a millimetre");
  expect_slope("[-4.0,102.10],[0.0,102.05],[0.001,92],[14.0,102.30]", "/site/ground/2/1", "92", "10000 times the run");
  expect_slope("[-4.0,102.10],[0.0,102.05],[0.5,9000],[14.0,102.30]", "/site/ground/2/1", "9000", "from 102.05");
  EXPECT_TRUE(read_crossing(with_ground("[-4.0,102.10],[0.0,102.05],[0.001,92.10],[14.0,102.30]"), tables()));
  EXPECT_TRUE(read_crossing(with_ground("[-4.0,102.10],[12.345,102.05],[12.346,99.05],[14.0,102.30]"), tables()));
  expect_refused(with(full_text(), "[[-4.0,99.0],[14.0,99.0]]", "[[-4.0,99.0],[-3.9999,99.0]]"),
                 {"", "water", "/site/water/1/0", "-3.9999", "by a millimetre"});
  expect_refused(with(full_text(), "[[-4.0,101.2],[14.0,101.4]]", "[[-4.0,101.2],[-3.9,-9000]]"),
                 {"", "stratum", "/site/strata/1/top/1/1", "-9000", "10000 times"});
  expect_refused(with(full_text(), R"("exit": {"station_m":14.0)", R"("exit": {"station_m":1e-300)"),
                 {"", "exit", "/bore/exit/station_m", "1e-300", "by a millimetre"});
}

// The striker moves inside the tool: what stands of class and plate together must leave it lighter than the whole.
TEST(Refusals, Striker_IsLighterThanItsTool) {
  expect_all_refused({{R"("striker_mass_kg":5)", R"("striker_mass_kg":500)", "/bore/tool/striker_mass_kg", "500 kg",
                       "lighter than its tool"}});
  for (const char* plate : {R"("class":"tool-55","striker_mass_kg":20)", R"("class":"tool-55","mass_kg":3)",
                            R"("diameter_m":0.045,"striker_mass_kg":30)"})
    expect_refused(with(least_text(), R"("class":"tool-65")", plate),
                   {"", plate, "/bore/tool/striker_mass_kg", "a striker of", "lighter"});
}

TEST(Refusals, Stations_MustIncrease) {
  expect_all_refused({
      {"[0.0,102.05]", "[-4.0,102.05]", "/site/ground/1/0", "-4.0", "more than -4.0"},
      {"[14.0,99.0]", "[-5.0,99.0]", "/site/water/1/0", "-5.0", "more than -4.0"},
      {"[14.0,101.4]", "[-4.5,101.4]", "/site/strata/1/top/1/0", "-4.5", "stations that increase"},
      {R"("exit": {"station_m":14.0)", R"("exit": {"station_m":0)", "/bore/exit/station_m", "0", "beyond the launch"},
      {R"("water": [[-4.0,99.0],[14.0,99.0]])", R"("water": [])", "/site/water", "[]", "at least one point"},
      {"[0.0,102.05]", "[0.0,102.05,1]", "/site/ground/1", "[0.0,102.05,1]", "two numbers"},
      {"[1.0,2.0,102.0]", "[1.0,2.0]", "/site/ground_points/0", "[1.0,2.0]", "three numbers"},
  });
}

// Floors that are no outline: the corner to mend is named. The other way round is as good.
TEST(Refusals, FloorOutline_MustBeSimple) {
  const char* good = "[[0.0,-0.5],[0.0,0.5],[1.5,0.5],[1.5,1.25],[3.0,1.25],[3.0,-0.5]]";
  const auto outline = [&](const char* other, const char* place, const char* found, const char* expected) {
    SCOPED_TRACE(other);
    expect_refused(with(full_text(), good, other), {"", "", place, found, expected});
  };
  outline("[[0.0,-0.5],[3.0,0.5]]", "/pits/launch/floor_outline/1", "[3,0.5]", "fewer than 3");
  outline("[[0.0,-0.5],[3.0,0.5],[3.0,-0.5],[0.0,0.5]]", "/pits/launch/floor_outline/2", "[3,-0.5]", "crosses");
  outline("[[0.0,-0.5],[0.0,0.5],[3.0,0.5],[3.0,0.51]]", "/pits/launch/floor_outline/3", "[3,0.51]", "within 5 cm");
  outline("[[-1.0,-0.5],[0.0,0.5],[3.0,0.5]]", "/pits/launch/floor_outline/0", "[-1,-0.5]", "before the face");
  outline("[[0.0,-0.5],[0.0,0.5],[3.0]]", "/pits/launch/floor_outline/2", "[3.0]", "two numbers");
  outline("[[0.0,-0.5],[0.0,0.5],[1e999,0.5]]", "/pits/launch/floor_outline/2/0", "", "");
  const auto reversed = read_crossing(
      with(full_text(), good, "[[3.0,-0.5],[3.0,1.25],[1.5,1.25],[1.5,0.5],[0.0,0.5],[0.0,-0.5]]"), tables());
  EXPECT_TRUE(reversed) << reversed.error().english();
}

TEST(Refusals, UnknownNames_ListTheKnown) {
  expect_all_refused({
      {R"("soil":"firm-clay")", R"("soil":"mud")", "/site/strata/0/soil", "\"mud\"", "soft-clay, firm-clay"},
      {R"("class":"tool-65")", R"("class":"tool-66")", "/bore/tool/class", "\"tool-66\"", "tool-55, tool-65"},
      {R"("material":"pe100")", R"("material":"wood")", "/pipe/material", "\"wood\"", "pe100"},
      {R"("rule":"road-cover-48in")", R"("rule":"r")", "/site/surface/0/rule", "\"r\"", "road-cover-48in"},
      {R"("level":"pas128-b1")", R"("level":"b9")", "/site/utilities/0/located/level", "\"b9\"", "pas128-b1"},
      {R"("cover_diameters":12)", R"("cover":12)", "/limits/cover", "\"cover\"", "cover_diameters"},
      {R"("kind":"gas")", R"("kind":"smoke")", "/site/utilities/0/kind", "\"smoke\"", "gas, power, water"},
      {R"("kind":"road")", R"("kind":"Road")", "/site/surface/0/kind", "\"Road\"", "road, track"},
      {R"("kind":"shored")", R"("kind":"")", "/pits/launch/sides/bore/kind", "\"\"", "upright, sloped"},
      {R"("kind":"mark")", R"("kind":"m")", "/record/0/readings/1/kind", "\"m\"", "start, mark"},
      {R"("how":"arrived")", R"("how":"flew")", "/record/0/readings/13/how", "\"flew\"", "backed-out"},
      {R"("sign":"smell")", R"("sign":"taste")", "/record/0/readings/11/sign", "\"taste\"", "struck, smell, hiss"},
      {R"("hole":"grouted")", R"("hole":"gone")", "/record/0/aftermath/hole", "\"gone\"", "grouted, dug-out, open"},
      {R"("margin":-0.2)", R"("margin":"small")", "/record/0/taken_on/findings/0/margin", "\"small\"", "a number"},
      {R"("confirmed":true)", R"("confirmed":1)", "/record/0/readings/12/confirmed", "1", "true or false"},
      {R"("rules":"us-1926")", R"("rules":"x")", "/pits/rules", "\"x\"", "us-1926, din-4124"},
      {R"("units":"metric")", R"("units":"si")", "/sheet/units", "\"si\"", "metric, us"},
  });
}

TEST(Refusals, IdsAndReferences_MustHold) {
  expect_all_refused({
      {R"("id":"l2")", R"("id":"l1")", "/site/strata/1/id", "\"l1\"", "nothing else"},
      {R"("id":"a1")", R"("id":"u1")", "/alternatives/0/id", "\"u1\"", "nothing else"},
      {R"("id":"u1")", R"("id":"exit-pit")", "/site/utilities/0/id", "\"exit-pit\"", "none of"},
      {R"("id":"u1")", R"("id":"")", "/site/utilities/0/id", "\"\"", "not empty"},
      {R"("id":"u1")", R"("id":7)", "/site/utilities/0/id", "7", "a text"},
      {R"("how":"dug up")", R"("how":3)", "/site/surface/0/rescue/how", "3", "a text"},
      {R"("agreed_with":"owner")", R"("agreed_with":["owner"])", "/site/surface/0/rescue/agreed_with", "[\"owner\"]",
       "a text"},
      {R"("utility":"u1")", R"("utility":"u9")", "/site/test_holes/0/utility", "\"u9\"", "a utility: u1"},
      {R"("alternative":"a1")", R"("alternative":"a7")", "/record/0/alternative", "\"a7\"", "an alternative: a1"},
      {R"(["/bore/launch/elevation_m")", R"(["bore")", "/locks/0", "\"bore\"", "JSON pointer"},
      {R"("bore":{},"pipe")", R"("bore":{"tool":{"class":"tool-45"},"launch":{"station_m":2,"elevation_m":1,"grade":0},
         "exit":{"station_m":1}},"pipe")",
       "/alternatives/0/bore/exit/station_m", "1", "is 2"},
      {R"("exit":{"station_m":14.0}},
              "pipe")",
       R"("exit":{"station_m":-1.0}},
              "pipe")",
       "/record/0/layout/bore/exit/station_m", "-1", "is 0"},
  });
}

/// Every number of the format has a bound above and below, and says where it was broken.
TEST(Refusals, Ranges_EveryNumberHasBoth) {
  const nlohmann::json whole = nlohmann::json::parse(full_text());
  std::size_t numbers = 0;
  const auto try_all = [&](const auto& self, const nlohmann::json& value,
                           const nlohmann::json::json_pointer& at) -> void {
    if (at.to_string() == "/practice") return;  // read when it is opened, with ranges of its own
    if (value.is_object())
      for (const auto& [key, member] : value.items()) self(self, member, at / key);
    if (value.is_array())
      for (std::size_t i = 0; i < value.size(); ++i) self(self, value[i], at / i);
    if (!value.is_number()) return;
    ++numbers;
    for (const double wild : {1e308, -1e308, 1e20, -1e20}) {
      nlohmann::json broken = whole;
      broken[at] = wild;
      const Result<Crossing> read = read_crossing(broken.dump(), tables());
      ASSERT_FALSE(read.has_value()) << at.to_string() << " takes " << wild;
      EXPECT_EQ(read.error().place, at.to_string()) << read.error().english();
      EXPECT_FALSE(read.error().expected.empty()) << at.to_string();
    }
  };
  try_all(try_all, whole, nlohmann::json::json_pointer());
  EXPECT_GT(numbers, 150u);
}

/// Every key of the format is known to the reader: a value of a wrong type is refused at its place. What it did not
/// know it would keep as it is.
TEST(Refusals, EveryKey_RefusesAWrongType) {
  const nlohmann::json whole = nlohmann::json::parse(full_text());
  std::vector<nlohmann::json::json_pointer> places;
  const auto collect = [&](const auto& self, const nlohmann::json& value,
                           const nlohmann::json::json_pointer& at) -> void {
    if (!at.empty()) places.push_back(at);
    if (at.to_string() == "/practice") return places.pop_back();  // any JSON
    if (value.is_object())
      for (const auto& [key, member] : value.items()) self(self, member, at / key);
    if (value.is_array())
      for (std::size_t i = 0; i < value.size(); ++i) self(self, value[i], at / i);
  };
  collect(collect, whole, nlohmann::json::json_pointer());
  ASSERT_GT(places.size(), 300u);
  for (const auto& place : places) {
    nlohmann::json broken = whole;
    nlohmann::json& value = broken[place];
    value = value.is_object() ? nlohmann::json("wrong") : nlohmann::json{{"wrong", true}};
    const Result<Crossing> read = read_crossing(broken.dump(), tables());
    ASSERT_FALSE(read.has_value()) << place.to_string() << " takes any type";
    EXPECT_EQ(read.error().place.english().rfind(place.to_string(), 0), 0u)
        << place.to_string() << ": " << read.error().english();
  }
}

}  // namespace
}  // namespace burrow::test

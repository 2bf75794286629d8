// Values of a file by their JSON pointer: what is typed, what is near an unknown place, what is not known, and what no
// other crossing may take over.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "burrow/file/changed_values.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/tables_file.h"

namespace burrow::test {
namespace {

using nlohmann::json;
using ::testing::Contains;
using ::testing::HasSubstr;

const Tables& tables() {
  static const Tables all = load_tables();
  return all;
}

std::string text_of(const std::string& name) {
  std::ostringstream text;
  text << std::ifstream(BURROW_SOURCE_DIR "/samples/" + name + ".crossing").rdbuf();
  return text.str();
}

const ChangedValues& house() {
  static const Result<ChangedValues> opened = ChangedValues::open(text_of("house-service"), tables());
  EXPECT_TRUE(opened.has_value());
  return *opened;
}

Result<std::string> with(const std::string& pointer, const std::string& text, EmptyText empty = EmptyText::refused) {
  return house().with({{pointer, text}}, empty);
}

json value_at(const Result<std::string>& text, const std::string& pointer) {
  if (!text) return json("error: " + text.error().english());
  const json all = json::parse(*text);
  const json::json_pointer place(pointer);
  return all.contains(place) ? all.at(place) : json("not there");
}

// A bare number is in the unit of its key; with a unit it is what the field of the workbench would take. Exact
// factors: 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 bar = 100 kPa, 0 °C = 273.15 K.
TEST(ChangedValues, Units_AsTyped) {
  const struct {
    const char *pointer, *text;
    double value;
  } cases[] = {{"/bore/launch/elevation_m", "100.8", 100.8},
               {"/bore/launch/elevation_m", "100,8", 100.8},
               {"/bore/launch/elevation_m", "330 ft 6 in", 330.5 * 0.3048},
               {"/bore/launch/elevation_m", "100.75 m", 100.75},
               {"/pipe/outside_diameter_m", "0.063", 0.063},
               {"/pipe/outside_diameter_m", "63 mm", 0.063},
               {"/pipe/outside_diameter_m", "2.5 in", 0.0635},
               {"/bore/launch/grade", "-0.02", -0.02},
               {"/bore/launch/grade", "-2 %", -0.02},
               {"/bore/launch/grade", "1:50", 0.02},
               {"/bore/launch/heading_rad", "0.01", 0.01},
               {"/bore/launch/heading_rad", "10 mrad", 0.01},
               {"/air/compressor/pressure_pa", "6.9 bar", 690000},
               {"/air/compressor/pressure_pa", "690000", 690000},
               {"/air/air_temperature_k", "15 °C", 288.15},
               {"/air/air_temperature_k", "288.15", 288.15},
               {"/air/compressor/free_air_m3_s", "2.4 m3/min", 0.04},
               {"/air/relative_humidity", "60 %", 0.6},
               {"/limits/cover_diameters", "10", 10},
               {"/limits/separation_gas_m", "2 ft", 0.6096},
               {"/bore/trials/count", "5000", 5000},
               {"/site/ground/0/1", "102.2 m", 102.2}};
  for (const auto& one : cases) {
    const json value = value_at(with(one.pointer, one.text), one.pointer);
    ASSERT_TRUE(value.is_number()) << one.pointer << " = " << one.text << ": " << value;
    EXPECT_NEAR(value.get<double>(), one.value, 1e-9 * std::abs(one.value)) << one.pointer << " = " << one.text;
  }
}

TEST(ChangedValues, Words_ListsAndIds) {
  EXPECT_EQ(value_at(with("/name", "Alder = Lane"), "/name"), "Alder = Lane");
  EXPECT_EQ(value_at(with("/pits/rules", "din-4124"), "/pits/rules"), "din-4124");
  EXPECT_EQ(value_at(with("/site/utility_search/done", "false"), "/site/utility_search/done"), false);
  EXPECT_EQ(value_at(with("/site/water", "null"), "/site/water"), nullptr);
  EXPECT_EQ(value_at(with("/site/water", "[[-4,99],[14,99]]"), "/site/water/1/0"), 14);
  const json file = json::parse(*house().with({}, EmptyText::refused));
  const std::string id = file.at("site").at("utilities").at(1).at("id");
  EXPECT_EQ(value_at(with("/site/utilities/" + id + "/owner", "town"), "/site/utilities/1/owner"), "town");
  EXPECT_EQ(value_at(with("/site/utilities/1/owner", "town"), "/site/utilities/1/owner"), "town");
}

// Nothing else of the file changes, whatever it holds that the program does not know.
TEST(ChangedValues, Rest_StaysAsItIs) {
  json crossing = json::parse(text_of("house-service"));
  crossing["bore"]["colour_of_the_day"] = {1.50, "red"};
  const auto opened = ChangedValues::open(crossing.dump(), tables());
  ASSERT_TRUE(opened);
  json changed = json::parse(*opened->with({{"/bore/launch/elevation_m", "100.5"}}, EmptyText::refused));
  json before = json::parse(write_crossing(*read_crossing(crossing.dump(), tables())));
  EXPECT_EQ(changed.at("bore").at("launch").at("elevation_m"), 100.5);
  before["bore"]["launch"]["elevation_m"] = 100.5;
  EXPECT_EQ(changed, before);
}

TEST(ChangedValues, UnknownPlace_SaysWhatIsNear) {
  const auto error = [](const std::string& pointer) {
    const Result<std::string> made = with(pointer, "1");
    const Result<void> checked = house().check(pointer);
    EXPECT_FALSE(made.has_value() || checked.has_value()) << pointer;
    EXPECT_EQ(made.error(), checked.error()) << pointer;
    return made ? std::string() : made.error().english();
  };
  EXPECT_THAT(error("/bore/launch/elevaton_m"), HasSubstr("near it: /bore/launch/elevation_m"));
  EXPECT_THAT(error("/bore/launch/elevation"), HasSubstr("near it: /bore/launch/elevation_m"));
  EXPECT_THAT(error("/bore/lunch/grade"), HasSubstr("near it: /bore/launch"));
  EXPECT_THAT(error("/bore/zzz"), HasSubstr("known there: tool, launch, exit"));
  EXPECT_THAT(error("/bore/launch/grade/x"), HasSubstr("nothing lies below /bore/launch/grade"));
  EXPECT_THAT(error("/site/utilities/99/name"), HasSubstr("a number from 0 to"));
  EXPECT_THAT(error("/limits/cover_diameter"), HasSubstr("near it: /limits/cover_diameters"));
  EXPECT_THAT(error("bore/launch"), HasSubstr("a JSON pointer"));
  EXPECT_THAT(error("/bore/~2"), HasSubstr("~0 for ~"));
  EXPECT_THAT(error("/site/test_holes/9/station_m"), HasSubstr("/site/test_holes/9"));
}

// The bounds are the reader's.
TEST(ChangedValues, Refused_ByTheSameReader) {
  const auto error = [](const std::string& pointer, const std::string& text) {
    const Result<std::string> made = with(pointer, text);
    return made ? "taken" : made.error().english();
  };
  EXPECT_THAT(error("/bore/launch/grade", "2"),
              HasSubstr("/bore/launch/grade: found 2, expected a grade from -1 to 1"));
  EXPECT_THAT(error("/pipe/outside_diameter_m", "63"), HasSubstr("a diameter from 0.001 to 5 m"));
  EXPECT_THAT(error("/bore/exit/station_m", "-5"), HasSubstr("an exit beyond the launch"));
  EXPECT_THAT(error("/site/strata/0/soil", "cheese"), HasSubstr("one of the soils"));
  EXPECT_THAT(error("/bore/launch/elevation_m", "100 kPa"), HasSubstr("/bore/launch/elevation_m"));
  EXPECT_THAT(error("/bore/launch/elevation_m", "1,500"), HasSubstr("thousands"));
  for (const char* text : {"nan", "inf", "1e999", "", "x", "null", "1 2"})
    EXPECT_THAT(error("/bore/launch/elevation_m", text), HasSubstr("/bore/launch/elevation_m")) << text;
  EXPECT_THAT(error("/version", "2"), HasSubstr("/version"));
  EXPECT_THAT(error("/site/utility_search/done", "yes"), HasSubstr("true or false"));
  EXPECT_THAT(error("/site/water", "[[1"), HasSubstr("/site/water"));
}

// An empty cell says not known: never 0, never a default in its place.
TEST(ChangedValues, Empty_IsNotKnownOrRefused) {
  EXPECT_EQ(value_at(with("/pipe/outside_diameter_m", "", EmptyText::not_known), "/pipe/outside_diameter_m"),
            "not there");
  EXPECT_EQ(value_at(with("/site/utility_search/done", "", EmptyText::not_known), "/site/utility_search/done"),
            "not there");
  EXPECT_EQ(value_at(with("/site/water", "", EmptyText::not_known), "/site/water"), nullptr);
  EXPECT_EQ(value_at(with("/name", "", EmptyText::not_known), "/name"), "not there");
  for (const char* pointer : {"/bore/launch/elevation_m", "/bore/launch/offset_m", "/bore/launch/level_sd_rad",
                              "/bore/model/steer_constant", "/pits/rules", "/site/strata/0/soil", "/air/altitude_m"}) {
    const Result<std::string> made = with(pointer, "", EmptyText::not_known);
    ASSERT_FALSE(made.has_value()) << pointer;
    EXPECT_EQ(made.error().place.english(), pointer);
    EXPECT_THAT(made.error().english(), HasSubstr("no default is taken in its place"));
  }
}

// What one place established is no knowledge about another.
TEST(ChangedValues, Evidence_IsLeftOut) {
  json crossing = json::parse(text_of("house-service"));
  crossing["site"]["nothing_above"] = {{"how", "walked"}, {"by", "N."}, {"date", "2026-01-01"}};
  crossing["site"]["utilities"][0]["abandonment"] = {{"how", "cut"}, {"by", "N."}, {"date", "2026-01-01"}};
  crossing["muted"] = {{{"code", "utility.separation"}, {"subject", "u1"}, {"reason", "agreed"}}};
  crossing["record"] = {{{"id", "d1"}, {"readings", json::array()}}};
  crossing["pits"]["launch"]["signs"] = {{"bad_air", false}};
  crossing["pits"]["launch"]["soil_type"] = "B";
  crossing["pits"]["launch"]["confirmed_by"] = "N.";
  crossing["site"]["strata"][0]["known"] = "seen";
  for (json& feature : crossing["site"]["surface"]) feature["permission"] = "allowed";
  Result<ChangedValues> opened = ChangedValues::open(crossing.dump(), tables());
  ASSERT_TRUE(opened) << opened.error().english();
  const std::vector<std::string> left_out = opened->leave_out_evidence();
  const json made = json::parse(*opened->with({}, EmptyText::not_known));
  for (const char* pointer :
       {"/site/nothing_above", "/site/utilities/0/abandonment", "/site/utilities/0/located", "/site/utility_search",
        "/site/strata/0/known", "/site/surface/0/permission", "/muted", "/record", "/pits/launch/signs",
        "/pits/launch/soil_type", "/pits/launch/confirmed_by", "/site/water"}) {
    EXPECT_THAT(left_out, Contains(pointer));
    const json::json_pointer place(pointer);
    EXPECT_TRUE(!made.contains(place) || made.at(place).is_null()) << pointer;
  }
  EXPECT_EQ(made.at("bore").at("launch"), json::parse(*house().with({}, EmptyText::refused)).at("bore").at("launch"));
  EXPECT_TRUE(made.at("site").at("utilities").at(0).contains("path"));
}

TEST(ChangedValues, NewerFile_IsNotWrittenBack) {
  json crossing = json::parse(text_of("house-service"));
  crossing["version"] = 99;
  EXPECT_FALSE(ChangedValues::open(crossing.dump(), tables()).has_value());
  EXPECT_FALSE(ChangedValues::open("{", tables()).has_value());
}

}  // namespace
}  // namespace burrow::test

// Any number in any place of the file: refused with its place, or judged with answers that are numbers.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "burrow/check/assess.h"
#include "burrow/day/day.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "support/finite_answers.h"
#include "support/random_crossing.h"

namespace burrow::test {
namespace {

using nlohmann::json;

/// What the contract wants a number for, wherever there is a path: null would be one that could not be worked out.
void expect_numbers_of_the_path(const json& answer, const std::string& what) {
  for (const json& point : answer.at("bore").at("path"))
    for (const char* key : {"s_m", "x_m", "y_m", "z_m", "grade", "heading_rad", "sd_lateral_m", "sd_vertical_m",
                            "cover_m", "resistance_above_pa", "resistance_below_pa", "curvature_1_m"})
      ASSERT_TRUE(point.at(key).is_number()) << what << ": " << key;
  for (const json& load : answer.at("pipe").at("loads"))
    for (const char* key : {"station_m", "depth_m", "earth_pa", "earth_arched_pa", "live_pa", "water_pa"})
      ASSERT_TRUE(load.at(key).is_number()) << what << ": " << key;
  for (const json& working : answer.at("working")) {
    ASSERT_TRUE(working.at("value").is_number()) << what << ": " << working;
    for (const json& input : working.at("inputs")) ASSERT_TRUE(input.at("value").is_number()) << what << working;
  }
}

/// Gives what there is to judge, the day of an open record with it, as JSON.
std::string expect_sound(const Crossing& crossing, const std::string& what) {
  const Assessment answer = assess(crossing, tables());
  EXPECT_THAT(not_finite(answer), ::testing::IsEmpty()) << what;
  AssessmentOptions options;
  options.working = true;
  std::optional<DayAnswer> day;
  if (const DayRecord* open = open_record(crossing)) {
    day = day_answer(crossing, tables(), *open);
    options.day = &*day;
    NotFinite all;
    look_at_path(all, "as bored", day->smoothed);
    look_at_words(all, {}, day->working);
    EXPECT_THAT(all.names, ::testing::IsEmpty()) << what;
  }
  return write_assessment(crossing, answer, "x.crossing", options);
}

/// Every key of the format, and a day that has not ended.
json full_and_open() {
  json whole = json::parse(full_text());
  json& readings = whole["record"][0]["readings"];
  json open = json::array();
  for (const json& reading : readings)
    if (reading["kind"] != "end" && reading["kind"] != "arrival") open.push_back(reading);
  readings = open;
  whole["record"][0]["alternative"] = nullptr;
  return whole;
}

std::vector<json::json_pointer> places_of_numbers(const json& whole) {
  std::vector<json::json_pointer> places;
  const auto collect = [&](const auto& self, const json& value, const json::json_pointer& at) -> void {
    if (value.is_object())
      for (const auto& [key, member] : value.items()) self(self, member, at / key);
    if (value.is_array())
      for (std::size_t i = 0; i < value.size(); ++i) self(self, value[i], at / i);
    if (value.is_number() && at.to_string() != "/version") places.push_back(at);
  };
  collect(collect, whole, json::json_pointer());
  return places;
}

void try_everywhere(const std::vector<double>& wild) {
  const json whole = full_and_open();
  ASSERT_TRUE(read_crossing(whole.dump(), tables())) << read_crossing(whole.dump(), tables()).error().english();
  const auto places = places_of_numbers(whole);
  ASSERT_GT(places.size(), 150u);
  for (const auto& place : places)
    for (const double number : wild) {
      json changed = whole;
      changed[place] = number;
      const std::string what = place.to_string() + " = " + json(number).dump();
      const Result<Crossing> read = read_crossing(changed.dump(), tables());
      if (!read) {
        EXPECT_EQ(read.error().place.english().find('/'), 0u) << what << ": " << read.error().english();
        continue;
      }
      expect_sound(*read, what);
    }
}

// Our model: the numbers named where the fault was found.
TEST(AnyNumber, Huge_IsRefusedOrJudged) {
  try_everywhere({1e308, -1e308, 1e16, -1e16});
}

TEST(AnyNumber, Tiny_IsRefusedOrJudged) {
  try_everywhere({1e-300, -1e-300, 0});
}

TEST(AnyNumber, Wide_IsRefusedOrJudged) {
  try_everywhere({1e5, -9999, 1});
}

TEST(AnyNumber, Limits_AreRefusedOrJudged) {
  const json whole = full_and_open();
  for (const LimitRow& row : tables().limits)
    for (const double number : {1e308, 1e16, 1e5, 1e-300, 0.0}) {
      json changed = whole;
      changed["limits"][row.id] = number;
      const std::string what = row.id + " = " + json(number).dump();
      const Result<Crossing> read = read_crossing(changed.dump(), tables());
      if (read)
        expect_sound(*read, what);
      else
        EXPECT_EQ(read.error().place, "/limits/" + row.id) << what;
    }
}

// Every member filled at random: what has no answer is unknown, never a number that is none.
TEST(AnyNumber, RandomCrossings_AreNumbersInJson) {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const std::string what = "seed " + std::to_string(seed), text = expect_sound(random_crossing(seed), what);
    ASSERT_TRUE(json::accept(text)) << what;
    expect_numbers_of_the_path(json::parse(text), what);
  }
}

}  // namespace
}  // namespace burrow::test

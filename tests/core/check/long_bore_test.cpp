// A bore longer than 200 m, 14000 typed for 14: judged by its length, nothing along it (our default).

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "burrow/check/prepared_site.h"
#include "burrow/check/trials_plan.h"
#include "burrow/crew/crew_setup.h"
#include "burrow/day/day.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/trials/trials.h"
#include "support/clean_crossing.h"
#include "support/finite_answers.h"

namespace burrow::test {
namespace {

Crossing as_long_as(double length_m) {
  Crossing crossing = clean_crossing();
  crossing.bore.exit.station = Length{crossing.bore.launch.station.m + length_m};
  crossing.site.ground = {{-8, 100}, {crossing.bore.exit.station.m + 20, 100}};
  return crossing;
}

bool says(const Assessment& answer, std::string_view code) {
  return std::any_of(answer.findings.begin(), answer.findings.end(),
                     [&](const Finding& finding) { return finding.code == code; });
}

const Finding& about_length(const Assessment& answer) {
  return *std::find_if(answer.findings.begin(), answer.findings.end(),
                       [](const Finding& finding) { return finding.code == "bore.length"; });
}

TEST(LongBore, FourteenThousand_IsJudgedByLength) {
  for (const double length : {200.001, 1000.0, 14000.0, 63000.0}) {
    const Crossing crossing = as_long_as(length);
    ASSERT_TRUE(read_crossing(write_crossing(crossing), tables()));
    const Assessment answer = judged(crossing);
    EXPECT_EQ(answer.verdict, Verdict::stop);
    ASSERT_TRUE(says(answer, "bore.length")) << listed(answer);
    EXPECT_EQ(about_length(answer).severity, Severity::stop);
    EXPECT_NEAR(*about_length(answer).measured, length, 1e-9);
    EXPECT_EQ(about_length(answer).limit, limit_of(crossing, tables(), "length_to_95_m").value);
    EXPECT_TRUE(says(answer, "missing.path"));
    EXPECT_LE(answer.bore.points.size(), 1u) << "nothing was integrated";
    EXPECT_TRUE(not_finite(answer).empty());
  }
}

TEST(LongBore, OfTwoHundredMetres_IsFollowed) {
  const Assessment answer = judged(as_long_as(200));
  EXPECT_GT(answer.bore.points.size(), 100u);
  EXPECT_FALSE(says(answer, "missing.path"));
  EXPECT_EQ(answer.verdict, Verdict::stop);
}

// What lies along the bore is unknown, and says so: no distance, no chance, no cover, no rise, no marks.
TEST(LongBore, EveryOtherAnswer_IsUnknown) {
  const Crossing crossing = as_long_as(14000);
  const Assessment answer = judged(crossing);
  ASSERT_EQ(answer.utilities.size(), crossing.site.utilities.size());
  for (const UtilityAnswer& utility : answer.utilities) {
    EXPECT_FALSE(utility.separation_m || utility.contact_chance || utility.gap_low_m || utility.encroachment_chance);
    EXPECT_FALSE(utility.id.empty());
  }
  EXPECT_FALSE(answer.contact_chance_any || answer.chance_unknown_service);
  EXPECT_FALSE(answer.cover.least_m || answer.surface.heave_m || answer.chance_of_refusal);
  EXPECT_FALSE(answer.arrival.chance_inside_exit_pit || answer.advance_time_s.p50);
  EXPECT_TRUE(answer.marks.empty() && answer.pipe_checks.empty() && answer.heave.empty());
  const auto json = nlohmann::json::parse(write_assessment(crossing, answer, "x", {.working = true}));
  EXPECT_TRUE(json.at("bore").at("length_m").is_null()) << "not 0";
  EXPECT_TRUE(json.at("bore").at("chance_of_refusal").is_null());
  EXPECT_TRUE(json.at("utilities").at(0).at("contact_chance").is_null());
  EXPECT_EQ(json.at("verdict"), "stop");
}

// Whoever allows a longer bore for this crossing does not make it followed, nor safe.
TEST(LongBore, LimitTypedHigher_IsStillAStop) {
  Crossing crossing = as_long_as(14000);
  for (const LimitRow& row : tables().limits)
    if (row.id.starts_with("length_")) crossing.limits[row.id] = {1e5, "the owner", {}};
  for (const char* code : {"bore.length", "missing.path"}) {
    Mute& mute = crossing.muted.emplace_back();
    mute.code = code;
    mute.subject = "bore";
    mute.reason = "known";
  }
  const Assessment answer = judged(crossing);
  EXPECT_EQ(answer.verdict, Verdict::stop) << listed(answer);
  ASSERT_TRUE(says(answer, "bore.length"));
  EXPECT_EQ(about_length(answer).limit, longest_followed.m);
}

TEST(LongBore, SearchTrialsAndDay_DoNotFollowItEither) {
  Crossing crossing = as_long_as(63000);
  Reading start;
  start.kind = ReadingKind::start;
  start.time = Duration{0};
  Reading mark;
  mark.kind = ReadingKind::mark;
  mark.time = Duration{60};
  mark.nose = Length{1};
  DayRecord day;
  day.id = "d1";
  day.readings = {start, mark};
  crossing.record = {day};
  const Assessment answer = judged(crossing);
  const PreparedSite groundwork(crossing, tables(), {0, 63000, 5});
  EXPECT_FALSE(groundwork.turns.has_value());
  const JudgedLaunch launch = judge_launch(crossing, tables(), groundwork);
  EXPECT_EQ(launch.answer.verdict, Verdict::stop);
  const Trials trials = run_trials(crossing, tables(), trials_setup(crossing, tables(), answer), {}, {}, 1);
  EXPECT_EQ(trials.count, 0) << "none was flown";
  const DayAnswer today = day_answer(crossing, tables(), day, answer);
  EXPECT_LE(today.smoothed.points.size(), 1u);
  EXPECT_NE(today.advice, Advice::go_on);
}

}  // namespace
}  // namespace burrow::test

// What could not be worked out breaks its limit: not knowing never looks safe (our model).

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "burrow/file/assessment_file.h"
#include "check_run.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double endless = std::numeric_limits<double>::infinity();

struct Court {
  Crossing crossing = clean_crossing();
  Ground ground{crossing.site, tables()};
  Tool tool = resolve_tool(crossing.bore.tool, tables());
  Assessment answer = [] {
    Assessment empty;
    empty.bore.points.resize(2);
    return empty;
  }();
  StopChance stopping{crossing.site, tables(), ground, answer.bore};
  PathFans fans;
  LimitsInForce limits{crossing, tables()};
  std::vector<Finding> passed;
  CheckRun run{crossing, tables(), ground, tool, stopping, fans, limits, answer, &passed};
};

Finding about(Severity severity) {
  Finding finding;
  finding.code = "bore.cover";
  finding.severity = severity;
  finding.subject = "bore";
  finding.unit = "m";
  return finding;
}

TEST(Require, Margin_IsAlwaysANumber) {
  for (const bool at_least : {true, false}) {
    const Limit limit{1, at_least, {}};
    EXPECT_LT(margin_of(no_number, limit), 0);
    EXPECT_LT(margin_of(1, {no_number, at_least, {}}), 0);
    EXPECT_LT(margin_of(endless, {endless, at_least, {}}), 0) << "endless against endless tells nothing";
    for (const double value : {no_number, endless, -endless, 1e308, -1e308})
      for (const double wanted : {0.0, 1e-300, 1.0, 1e308, no_number, endless})
        EXPECT_TRUE(std::isfinite(margin_of(value, {wanted, at_least, {}}))) << value << " " << wanted;
  }
  EXPECT_GT(margin_of(endless, {1, true, {}}), 0) << "endless safety is safe";
  EXPECT_LT(margin_of(endless, {1, false, {}}), 0);
  EXPECT_DOUBLE_EQ(margin_of(0.5, {2, true, {}}), -0.75) << "as before where both are numbers";
  EXPECT_DOUBLE_EQ(margin_of(0.5, {0, true, {}}), 0.5);
}

TEST(Require, NoNumber_IsBrokenAndNothingIsMeasured) {
  for (const bool at_least : {true, false}) {
    Court court;
    EXPECT_LT(court.run.require(about(Severity::stop), no_number, {1, at_least, {}}), 0);
    EXPECT_TRUE(court.passed.empty());
    ASSERT_EQ(court.answer.findings.size(), 1u);
    const Finding& finding = court.answer.findings.front();
    EXPECT_EQ(finding.severity, Severity::stop);
    EXPECT_FALSE(finding.measured.has_value());
    EXPECT_EQ(finding.limit, 1);
    ASSERT_TRUE(finding.margin.has_value());
    EXPECT_TRUE(std::isfinite(*finding.margin));
    EXPECT_NE(finding_text(finding, UnitSystem::metric).find("not a number could be worked out"), std::string::npos)
        << finding_text(finding, UnitSystem::metric);
  }
}

TEST(Require, NoLimit_IsBroken) {
  Court court;
  EXPECT_LT(court.run.require(about(Severity::caution), 1, {no_number, true, {}}), 0);
  ASSERT_EQ(court.answer.findings.size(), 1u);
  EXPECT_FALSE(court.answer.findings.front().limit.has_value());
}

TEST(Require, NoNumber_DecidesTheVerdict) {
  for (const auto& [severity, verdict] :
       {std::pair{Severity::stop, Verdict::stop}, std::pair{Severity::caution, Verdict::caution}}) {
    Court court;
    court.run.require(about(severity), no_number, {1, true, {}});
    conclude(court.crossing, tables(), court.answer);
    EXPECT_EQ(court.answer.verdict, verdict);
    const auto json = nlohmann::json::parse(write_assessment(court.crossing, court.answer, "x", {}));
    EXPECT_TRUE(json.at("findings").at(0).at("measured").is_null());
    EXPECT_EQ(json.at("findings").at(0).at("limit"), 1);
  }
}

// A mute was given for a number; when there is none any more, nobody has looked at this.
TEST(Require, NoNumber_LapsesAMute) {
  Court court;
  Mute& mute = court.crossing.muted.emplace_back();
  mute.code = "bore.cover";
  mute.subject = "bore";
  mute.reason = "seen on site";
  mute.by = "A. Nobody";
  mute.date = "2026-03-01";
  mute.measured = 0.9;
  court.run.require(about(Severity::caution), no_number, {1, true, {}});
  conclude(court.crossing, tables(), court.answer);
  EXPECT_FALSE(court.answer.findings.front().muted.has_value());
  EXPECT_EQ(court.answer.verdict, Verdict::caution);
}

TEST(Require, WorstOfMany_CountsWhatIsNoNumber) {
  Court court;
  const Limit limit{1, false, {}};
  const Utility& utility = court.crossing.site.utilities.front();
  WorstOfMany worst;
  worst.take(utility, {}, 2, limit);
  worst.take(utility, {1, 0, 0}, no_number, limit);
  EXPECT_EQ(worst.count, 2u);
  worst.add_not_judged(court.run, "utility.vibration", "m/s");
  ASSERT_EQ(court.answer.findings.size(), 1u);
  EXPECT_FALSE(court.answer.findings.front().measured.has_value());
}

}  // namespace
}  // namespace burrow::test

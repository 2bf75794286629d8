// Length by tool, exit window, daylight.

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

struct LengthCase {
  const char* tool;
  double longest_m;
};

// From memory, limits table: 12 m to 55 mm, 18 to 95, 25 to 145, 35 above.
TEST(BoreLength, ByToolDiameter) {
  for (const auto& [tool, longest] : {LengthCase{"tool-45", 12},
                                      {"tool-55", 12},
                                      {"tool-65", 18},
                                      {"tool-95", 18},
                                      {"tool-110", 25},
                                      {"tool-145", 25},
                                      {"tool-180", 35}}) {
    Crossing crossing = clean_crossing();
    crossing.site.ground = {{-8, 100}, {80, 100}};
    crossing.bore.tool.tool_class = tool;
    crossing.bore.exit.station = Length{longest};
    EXPECT_FALSE(find(judged(crossing), "bore.length")) << tool;
    crossing.bore.exit.station = Length{longest + 0.01};
    const Assessment answer = judged(crossing);
    const Finding* length = find(answer, "bore.length");
    ASSERT_TRUE(length) << tool;
    EXPECT_EQ(length->severity, Severity::stop);
    EXPECT_NEAR(*length->measured, longest + 0.01, 1e-12);
    EXPECT_NEAR(*length->limit, longest, 1e-12);
  }
}

// Common practice: 150 ft, about 45 m, at most whatever the tool; one finding about length is enough.
TEST(BoreLength, AnyTool_45m) {
  Crossing crossing = clean_crossing();
  crossing.site.ground = {{-8, 100}, {80, 100}};
  crossing.bore.tool.tool_class = "tool-180";
  crossing.limits["length_above_m"] = {60, "maker's word", {}};
  crossing.bore.exit.station = Length{45.1};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "bore.length"));
  EXPECT_NEAR(*find(answer, "bore.length")->limit, 45, 1e-12);
  EXPECT_EQ(std::count_if(answer.findings.begin(), answer.findings.end(),
                          [](const Finding& f) { return f.code == "bore.length"; }),
            1);
}

double normal_between(double low, double high, double mean, double sd) {
  return 0.5 * (std::erf((high - mean) / (sd * std::sqrt(2.0))) - std::erf((low - mean) / (sd * std::sqrt(2.0))));
}

// By hand: floor 0.9 m wide about the line, from 0.1 m above the floor to the ground; of bores that get there, so that
// the rate at which the ground stops tools, which has no source, is none of its business. The
// constant is known here: the chance is summed over it, and only then a single normal.
TEST(ExitWindow, TypedPit_ByHand) {
  Crossing crossing = clean_crossing();
  crossing.bore.model.steer_constant_sd.set(Ratio{0});
  crossing.pits.exit.floor_width = Length{0.9};
  crossing.pits.exit.floor_offset = Length{0.0};
  crossing.pits.exit.floor_elevation = Length{98.3};
  const Assessment answer = judged(crossing);
  const Arrival& at = answer.arrival;
  ASSERT_TRUE(at.chance_inside_exit_pit);
  const double inside = normal_between(-0.45, 0.45, *at.offset_m, *at.sd_lateral_m) *
                        normal_between(98.4, 100, *at.elevation_m, *at.sd_vertical_m);
  EXPECT_NEAR(*at.chance_inside_exit_pit, inside, 1e-5);
  crossing.site.strata[0].values.refusal_rate = RatePerLength{0.2};
  EXPECT_EQ(*judged(crossing).arrival.chance_inside_exit_pit, *at.chance_inside_exit_pit);
}

TEST(ExitWindow, TooNarrowAPit_IsAStop) {
  Crossing crossing = clean_crossing();
  crossing.pits.exit.floor_width = Length{0.02};
  const Assessment answer = judged(crossing);
  const Finding* window = find(answer, "bore.exit-window", "exit-pit");
  ASSERT_TRUE(window) << listed(answer);
  EXPECT_EQ(window->severity, Severity::stop);
  EXPECT_NEAR(*window->limit, 0.9, 1e-12);
  EXPECT_LT(*window->measured, 0.9);
  EXPECT_EQ(*window->measured, *answer.arrival.chance_inside_exit_pit);
}

double refusal_of(const char* soil, Severity severity, const Crossing& crossing = clean_crossing()) {
  Crossing c = crossing;
  c.site.strata[0].soil = soil;
  const Assessment answer = judged(c);
  const Finding* refusal = find(answer, "bore.refusal", "bore");
  EXPECT_TRUE(refusal) << listed(answer);
  if (!refusal) return -1;
  EXPECT_EQ(refusal->severity, severity) << listed(answer);
  EXPECT_EQ(*refusal->measured, *answer.chance_of_refusal);
  EXPECT_EQ(refusal->source.label, SourceLabel::our_default);
  EXPECT_NE(finding_text(*refusal, UnitSystem::metric).find("not calibrated from records"), std::string::npos);
  return *refusal->measured;
}

// Our model: 1 − exp(−r L), rates of the table, 8 m. A guess of this program, so a caution at most.
TEST(Refusal, NotCalibrated_ACautionAtMostAndNamesItself) {
  EXPECT_NEAR(refusal_of("firm-clay", Severity::note), 1 - std::exp(-0.001 * 8), 1e-4);
  EXPECT_NEAR(refusal_of("hard-clay", Severity::caution), 1 - std::exp(-0.05 * 8), 1e-3);
  EXPECT_NEAR(refusal_of("weathered-rock", Severity::caution), 1 - std::exp(-0.5 * 8), 1e-3);
  // Typed as certain, of a model that nobody calibrated: still no stop, and it does not go away.
  Crossing certain = clean_crossing();
  certain.site.strata[0].values.refusal_rate = RatePerLength{50};
  EXPECT_NEAR(refusal_of("firm-clay", Severity::caution, certain), 1, 1e-9);
  // The model calibrated, the rate not: the rate of the table has no source.
  Crossing other = clean_crossing();
  other.bore.model.calibrated_from.set(12);
  other.bore.model.calibrated_records = named_records(12);
  EXPECT_NEAR(refusal_of("weathered-rock", Severity::caution, other), 1 - std::exp(-0.5 * 8), 1e-3);
}

TEST(Refusal, FromRecords_MayStop) {
  Crossing crossing = clean_crossing();
  crossing.bore.model.calibrated_from.set(12);
  crossing.bore.model.calibrated_records = named_records(12);
  const auto at = [&](double rate) {
    crossing.site.strata[0].values.refusal_rate = RatePerLength{rate};
    const Assessment answer = judged(crossing);
    const Finding& found = *find(answer, "bore.refusal");
    EXPECT_EQ(finding_text(found, UnitSystem::metric).find("not calibrated"), std::string::npos);
    return found.severity;
  };
  EXPECT_EQ(at(0.002), Severity::note);
  EXPECT_EQ(at(0.05), Severity::caution);  // 33 %
  EXPECT_EQ(at(0.1), Severity::stop);      // 55 %
  crossing.limits["refusal_stop"] = {0.3, "one tool only", {}};
  EXPECT_EQ(at(0.05), Severity::stop);
  crossing.limits["refusal_stop"] = {0.6, "spare tool at hand", {}};  // more often than not: nobody may set that
  EXPECT_EQ(at(0.1), Severity::stop);
  EXPECT_TRUE(find(judged(crossing), "limit.impossible"));
}

// Muted it is told no more in the verdict, but it stays in the list, and lapses when the chance gets worse.
TEST(Refusal, Muted_LapsesWhenWorse) {
  Crossing crossing = clean_crossing();
  crossing.site.strata[0].values.refusal_rate = RatePerLength{0.05};
  const double chance = *find(judged(crossing), "bore.refusal")->measured;
  crossing.muted = {mute("bore.refusal", "bore", "spare tool", chance)};
  EXPECT_EQ(judged(crossing).verdict, Verdict::within_limits) << listed(judged(crossing));
  EXPECT_TRUE(find(judged(crossing), "bore.refusal")->muted);
  crossing.site.strata[0].values.refusal_rate = RatePerLength{0.06};
  EXPECT_EQ(judged(crossing).verdict, Verdict::caution);
}

TEST(BoreEnd, Daylight_IsAStopAndHasNoArrival) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.grade = Ratio{0.4};
  const Assessment answer = judged(crossing);
  EXPECT_EQ(answer.bore.ends, PathEnd::daylight);
  ASSERT_TRUE(find(answer, "bore.daylight")) << listed(answer);
  EXPECT_EQ(answer.verdict, Verdict::stop);
  EXPECT_EQ(answer.arrival, Arrival());
}

}  // namespace
}  // namespace burrow::test

// What the assessment says about advance, grip, stops and guesses.

#include <cmath>

#include "burrow/crew/crew_setup.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing in_soil(const char* soil) {
  Crossing crossing = clean_crossing();
  crossing.site.strata[0].soil = soil;
  return crossing;
}

TEST(CheckAdvance, Time_IsThatOfTheLastPoint) {
  const Assessment answer = judged(clean_crossing());
  ASSERT_EQ(answer.advance.points.size(), answer.bore.points.size());
  EXPECT_EQ(*answer.advance_time_s.p50, answer.advance.points.back().time.p50_s);
  EXPECT_LT(*answer.advance_time_s.p10, *answer.advance_time_s.p50);
  EXPECT_LT(*answer.advance_time_s.p50, *answer.advance_time_s.p90);
  EXPECT_FALSE(find(answer, "bore.set"));
  EXPECT_FALSE(find(answer, "bore.grip"));
}

TEST(CheckAdvance, HardGround_WouldStop_CautionUntilCalibrated) {
  Crossing crossing = in_soil("hard-clay");
  const Assessment answer = judged(crossing);
  const Finding* stops = find(answer, "bore.set");
  ASSERT_TRUE(stops) << listed(answer);
  EXPECT_EQ(stops->severity, Severity::caution);
  EXPECT_EQ(*stops->station_m, *answer.refusal_station_m);
  EXPECT_LT(*stops->measured, *stops->limit);
  EXPECT_FALSE(answer.advance_time_s.p50);
  crossing.bore.model.calibrated_from.set(12);
  crossing.bore.model.calibrated_records = named_records(12);
  EXPECT_EQ(find(judged(crossing), "bore.set")->severity, Severity::stop);
}

// Friction π D L_t 0.2 s_u against p A_p, by hand: tool-65, 0.2 × 8 kPa: 0.33; × 18 kPa: 0.75; × 40 kPa: 1.67.
TEST(CheckAdvance, Grip_SoftClayCautionVerySoftStop) {
  const double by_hand = pi * 0.065 * 1.19125 * 0.2 / (6.9e5 * pi / 4 * 0.0455 * 0.0455);
  const Assessment very_soft = judged(in_soil("very-soft-clay"));
  const Finding* stop = find(very_soft, "bore.grip");
  ASSERT_TRUE(stop) << listed(very_soft);
  EXPECT_EQ(stop->severity, Severity::stop);
  EXPECT_NEAR(*stop->measured, by_hand * 8000, 0.002);
  const Assessment soft = judged(in_soil("soft-clay"));
  const Finding* caution = find(soft, "bore.grip");
  ASSERT_TRUE(caution) << listed(soft);
  EXPECT_EQ(caution->severity, Severity::caution);
  EXPECT_NEAR(*caution->measured, by_hand * 18000, 0.004);
  EXPECT_FALSE(find(judged(in_soil("firm-clay")), "bore.grip"));
}

TEST(CheckAdvance, Grip_LessPressureHolds) {
  Crossing crossing = in_soil("soft-clay");
  crossing.bore.tool.pressure = Pressure{4.5e5};
  EXPECT_FALSE(find(judged(crossing), "bore.grip"));
}

TEST(CheckAdvance, Limits_CanBeTyped) {
  Crossing crossing = in_soil("soft-clay");
  crossing.limits["grip_caution"] = {0.6, "crew holds the tool", ""};
  EXPECT_FALSE(find(judged(crossing), "bore.grip"));
}

// The stretches cover the bore once, and their chances make up the whole: 1 − exp(−∫ r ds).
TEST(CheckStops, Stretches_CoverTheBoreAndAddUp) {
  Crossing crossing = in_soil("medium-sand");
  SurfaceFeature siding = lane(5, 7);
  siding.id = "f2";
  siding.kind = SurfaceKind::track;
  crossing.site.surface.push_back(siding);  // over the last metre of the lane, and beyond
  const Assessment answer = judged(crossing);
  ASSERT_EQ(answer.stops.size(), 4u);
  const std::vector<AboveBore> kinds{AboveBore::diggable, AboveBore::carriageway, AboveBore::track,
                                     AboveBore::diggable};
  const double rate = 0.005;
  const std::vector<double> ends{2, 5, 7, 8};
  double from = 0, sum = 0;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const StopStretch& stretch = answer.stops[i];
    EXPECT_EQ(stretch.above, kinds[i]);
    EXPECT_NEAR(stretch.from_m, from, 1e-9);
    EXPECT_NEAR(stretch.to_m, ends[i], 1e-9);
    EXPECT_NEAR(stretch.chance, std::exp(-rate * from) - std::exp(-rate * ends[i]), 1e-5);
    from = stretch.to_m;
    sum += stretch.chance;
  }
  EXPECT_NEAR(sum, *answer.chance_of_refusal, 1e-12);
}

// Where nobody may dig: a caution until it is said how a stuck tool would be got out and with whom that is agreed. No
// percentage: the rate has no source.
TEST(CheckStops, NobodyMayDig_ACautionUntilAgreed) {
  for (const SurfaceKind kind :
       {SurfaceKind::road, SurfaceKind::track, SurfaceKind::building, SurfaceKind::footing, SurfaceKind::wall}) {
    Crossing crossing = clean_crossing();
    SurfaceFeature& above = crossing.site.surface[0];
    above.kind = kind;
    const StuckPlan agreed = above.rescue;
    const auto severity = [&] {
      const Assessment answer = judged(crossing);
      const Finding* finding = find(answer, "surface.stuck", "f1");
      EXPECT_TRUE(finding) << listed(answer);
      if (!finding) return Severity::stop;
      EXPECT_FALSE(finding->measured || finding->limit);
      EXPECT_EQ(finding_text(*finding, UnitSystem::metric).find('%'), std::string::npos);
      return finding->severity;
    };
    EXPECT_EQ(severity(), Severity::note);
    for (const StuckPlan& not_enough :
         {StuckPlan{}, StuckPlan{agreed.how, "", agreed.date, ""}, StuckPlan{"", agreed.agreed_with, agreed.date, ""},
          StuckPlan{" \t", agreed.agreed_with, agreed.date, ""}, StuckPlan{agreed.how, "\n ", agreed.date, ""}}) {
      above.rescue = not_enough;
      EXPECT_EQ(severity(), Severity::caution);
      EXPECT_NE(judged(crossing).verdict, Verdict::within_limits);
    }
    above.rescue = {agreed.how, agreed.agreed_with, {}, {}};  // the day it was agreed may be missing
    EXPECT_EQ(severity(), Severity::note);
  }
}

// From records the chance is told; over its limit it is a caution, though agreed.
TEST(CheckStops, FromRecords_TheChanceIsTold) {
  Crossing crossing = in_soil("made-ground");
  crossing.bore.model.calibrated_from.set(12);
  crossing.bore.model.calibrated_records = named_records(12);
  EXPECT_FALSE(find(judged(crossing), "surface.stuck", "f1")->measured);  // the rate is that of the table
  const auto reported = [&](double rate) {
    crossing.site.strata[0].values.refusal_rate = RatePerLength{rate};
    const Assessment answer = judged(crossing);
    const Finding& finding = *find(answer, "surface.stuck", "f1");
    EXPECT_NEAR(*finding.measured, std::exp(-rate * 2) - std::exp(-rate * 6), 1e-5);
    EXPECT_NE(finding_text(finding, UnitSystem::metric).find('%'), std::string::npos);
    EXPECT_TRUE(working(answer, "surface.stuck", "f1"));
    return finding.severity;
  };
  EXPECT_EQ(reported(0.001), Severity::note);
  EXPECT_EQ(reported(0.02), Severity::caution);
  crossing.site.surface[0].rescue = {};
  EXPECT_EQ(reported(0.001), Severity::caution);
}

// Hard clay from station 3.5 on: the set falls below the least under the lane, and that is a finding of the lane.
TEST(CheckStops, WouldStopUnderTheRoad_NamesIt) {
  Crossing crossing = clean_crossing();
  Stratum hard = crossing.site.strata.front();
  hard.id = "l2";
  hard.soil = "hard-clay";
  hard.top = LevelLine{{-8, 96}, {3.5, 96}, {3.6, 100}, {20, 100}};
  crossing.site.strata.push_back(hard);
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(answer.refusal_station_m) << listed(answer);
  ASSERT_TRUE(*answer.refusal_station_m > 2 && *answer.refusal_station_m < 6) << *answer.refusal_station_m;
  const Finding* finding = find(answer, "surface.would-stop", "f1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_NE(finding_text(*finding, UnitSystem::metric).find("Alder Lane"), std::string::npos);
  EXPECT_FALSE(find(judged(in_soil("hard-clay")), "surface.would-stop"));  // it stops before the lane
}

TEST(CheckStops, DriveFootwayDitch_MayBeDugUp) {
  Crossing crossing = clean_crossing();
  for (const SurfaceKind kind : {SurfaceKind::drive, SurfaceKind::footway, SurfaceKind::ditch}) {
    crossing.site.surface[0].kind = kind;
    const Assessment answer = judged(crossing);
    EXPECT_FALSE(find(answer, "surface.stuck"));
    ASSERT_EQ(answer.stops.size(), 1u);
    EXPECT_EQ(answer.stops[0].above, AboveBore::diggable);
  }
}

TEST(CheckGuess, Guess_WidensTheBandAndSaysByHowMuch) {
  Crossing crossing = clean_crossing();
  const Assessment seen = judged(crossing);
  crossing.site.strata[0].known.set(StratumEvidence::guess);
  const Assessment guessed = judged(crossing);
  ASSERT_EQ(guessed.guesses.size(), 1u);
  const double before = seen.bore.points.back().sd_vertical_m, after = guessed.bore.points.back().sd_vertical_m;
  EXPECT_GT(after, before);
  const Finding* finding = find(guessed, "site.soil-guessed");
  ASSERT_TRUE(finding);
  EXPECT_NEAR(*finding->measured, 2 * 1.645 * (after - before), 1e-12);
  EXPECT_EQ(guessed.verdict, Verdict::caution);
  EXPECT_LT(*guessed.cover.least_low_m, *seen.cover.least_low_m);
  EXPECT_EQ(seen.guesses.size(), 0u);
}

// A guess over the bore turns the tool as well: it is said, though the bore does not run through it.
TEST(CheckGuess, GuessOverTheBore_IsSaidToo) {
  Crossing crossing = clean_crossing();
  Stratum fill = crossing.site.strata.front();
  fill.id = "l0";
  fill.soil = "made-ground";
  fill.known.set(StratumEvidence::guess);
  crossing.site.strata.front().top = LevelLine{{-8, 99.3}, {20, 99.3}};
  crossing.site.strata.insert(crossing.site.strata.begin(), fill);
  const Assessment answer = judged(crossing);
  ASSERT_EQ(answer.guesses.size(), 1u);
  const Finding* finding = find(answer, "site.soil-guessed", "l0");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_TRUE(finding->station_m && finding->measured);
}

TEST(CrewSetup, SameNumbersAsItsParts) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.grade = Ratio{-0.02};
  crossing.bore.launch.sight_base = Length{5};
  crossing.bore.launch.heading.set(Angle{0.01});
  const CrewSetup setup = crew_setup(crossing, tables());
  EXPECT_NEAR(setup.grade.rise.m, setup.tool.length.m * std::sin(std::atan(-0.02)), 1e-12);
  EXPECT_NEAR(setup.stake->m, 5 * std::tan(0.01), 1e-12);
  // The tail is a tool's length behind the face and higher by the fall of the grade; floor = axis − a.
  EXPECT_NEAR(setup.cradle.nose.above_floor.m, 0, 0.001);
  EXPECT_NEAR(setup.cradle.tail.above_floor.m - setup.cradle.nose.above_floor.m, -setup.grade.rise.m, 1e-9);
  ASSERT_TRUE(setup.hold_until_m);
  EXPECT_EQ(*setup.hold_until_m, *judged(crossing).advance.held_until_m);
}

// The same numbers as an assessment with that pressure typed.
TEST(CrewSetup, Pressures_AsTyped) {
  Crossing crossing = in_soil("soft-clay");
  const std::vector<PressureEffect> effects = pressure_choices(crossing, tables(), judged(crossing));
  ASSERT_EQ(effects.size(), 4u);
  for (const PressureEffect& effect : effects) {
    crossing.bore.tool.pressure = effect.gauge;
    const Assessment answer = judged(crossing);
    EXPECT_EQ(effect.least_grip, answer.advance.least_grip);
    EXPECT_EQ(*effect.time_p50_s, *answer.advance_time_s.p50);
  }
  EXPECT_GT(effects[0].least_grip, effects[3].least_grip);
  EXPECT_GT(*effects[0].time_p50_s, *effects[3].time_p50_s);
  crossing.bore.launch.elevation = Length{101};  // in the air
  EXPECT_TRUE(pressure_choices(crossing, tables(), judged(crossing)).empty());
}

}  // namespace
}  // namespace burrow::test

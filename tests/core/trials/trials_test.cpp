// Random trials: what they must agree with, and that the same seed gives the same answer.
#include "burrow/trials/trials.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>

#include "support/trials_for_tests.h"

namespace burrow {
namespace {

using for_tests::all_tables;
using for_tests::crossing_utility;
using for_tests::TrialCase;

/// Within three of its own standard errors.
#define EXPECT_AGREES(estimate, expected)                                \
  EXPECT_NEAR((estimate).value, expected, 3 * (estimate).standard_error) \
      << "standard error of the trials: " << (estimate).standard_error
void expect_chance(const Count& count, double expected) {
  const double error = std::sqrt(expected * (1 - expected) / static_cast<double>(count.of));
  EXPECT_NEAR(count.chance(), expected, 3 * error) << count.n << " of " << count.of;
}

// Limit: c = 0 and nothing random is the straight line through launch point, grade and heading.
TEST(Trials, Limit_StraightWithoutSteering) {
  TrialCase c("medium-sand");
  c.straight();
  c.crossing.bore.launch.grade = {-0.02};
  c.crossing.bore.launch.heading.set(Angle{0.03});
  c.crossing.bore.launch.offset.set(Length{0.2});
  const Trials trials = c.run(3);
  EXPECT_EQ(trials.arrived.n, 3);
  for (const TrialOutcome& outcome : trials.outcomes) {
    EXPECT_EQ(outcome.station_m, 15);
    EXPECT_NEAR(outcome.elevation_m, -1.5 - 0.02 / std::cos(0.03) * 15, 1e-9);
    EXPECT_NEAR(outcome.offset_m, 0.2 + 15 * std::tan(0.03), 1e-9);
  }
  ASSERT_EQ(trials.paths.size(), 3u);
  EXPECT_EQ(trials.paths[0].front(), (Point3{0, 0.2, -1.5}));
  EXPECT_EQ(trials.paths[0].back().x_m, 15);
}

// Closed form (derived): Var = s0² + θ0² L² + (σ² + λ s_J²) L³/3, over soils with and without stones.
TEST(Trials, ClosedForm_SpreadWithoutSteering) {
  for (const char* soil : {"soft-clay", "medium-sand", "made-ground", "cobbly"})
    for (const double length : {4.0, 12.0, 25.0}) {
      SCOPED_TRACE(std::string(soil) + " " + std::to_string(length));
      TrialCase c(soil, -3.5, length);
      c.straight();
      c.crossing.site.strata[0].values = {};
      c.crossing.site.strata[0].values.refusal_rate = RatePerLength{0};
      c.crossing.bore.launch.position_sd.set(Length{0.02});
      c.crossing.bore.launch.level_sd.set(Angle{0.004});
      c.crossing.bore.launch.aim_sd.set(Angle{0.006});
      const Trials trials = c.run(6000);
      ASSERT_EQ(trials.arrived.n, 6000);
      const SoilClass& row = *find_soil(all_tables(), soil);
      const double noise = row.wander.rad_sqrt_m * row.wander.rad_sqrt_m +
                           row.stone_rate.per_m * row.stone_kick.rad * row.stone_kick.rad;
      const double common = 0.02 * 0.02 + noise * std::pow(length, 3) / 3;
      EXPECT_AGREES(*trials.sd_elevation_m, std::sqrt(common + std::pow(0.004 * length, 2)));
      EXPECT_AGREES(*trials.sd_offset_m, std::sqrt(common + std::pow(0.006 * length, 2)));
      EXPECT_AGREES(*trials.mean_elevation_m, -3.5);
      EXPECT_AGREES(*trials.mean_offset_m, 0.0);
    }
}

// Second route: with steering, mean and spread of `predict_path` (first order; hence small spreads of c and aim).
TEST(Trials, MeanPath_SpreadWithSteering) {
  for (const char* soil : {"soft-clay", "firm-clay", "loose-sand"})
    for (const double z : {-0.9, -1.6}) {
      SCOPED_TRACE(std::string(soil) + " " + std::to_string(z));
      TrialCase c(soil, z, 10);
      c.crossing.site.strata[0].values.wander = Wander{0.0005};
      c.crossing.bore.launch.level_sd.set(Angle{0.001});
      c.crossing.bore.launch.aim_sd.set(Angle{0.001});
      c.crossing.bore.model.steer_constant_sd.set(Ratio{0.002});
      const PathPoint mean = c.path().points.back();
      const Trials trials = c.run(6000);
      EXPECT_AGREES(*trials.sd_elevation_m, mean.sd_vertical_m);
      EXPECT_AGREES(*trials.sd_offset_m, mean.sd_lateral_m);
      EXPECT_AGREES(*trials.mean_elevation_m, mean.z_m);
    }
}

// Our model: c is lognormal, so that a sagging bore's arrival is skewed: mean below the mean-c path by the model's mean
// of c itself, and no trial climbs as if c were negative.
TEST(Trials, Model_ConstantIsNeverNegative) {
  TrialCase c("soft-clay", -2.0, 15);
  c.crossing.bore.model.steer_constant_sd.set(Ratio{0.03});
  const double straight = -2.0;
  const Trials trials = c.run(4000);
  double highest = -10;
  for (const TrialOutcome& outcome : trials.outcomes) highest = std::max(highest, outcome.elevation_m);
  EXPECT_LT(highest, straight);
  EXPECT_GT(trials.sd_elevation_m->value, 0);
}

// Closed form: chance of contact and encroachment at a square crossing, over gaps and location errors.
TEST(Trials, ClosedForm_ContactAtCrossing) {
  for (const double gap : {0.0, 0.15, 0.4})
    for (const double sd : {0.0, 0.05, 0.3}) {
      SCOPED_TRACE(std::to_string(gap) + " " + std::to_string(sd));
      TrialCase c("firm-clay", -1.5, 12);
      c.straight();
      c.crossing.site.strata[0].values.wander = Wander{0.004};
      c.crossing.bore.launch.level_sd.set(Angle{0.005});
      c.crossing.bore.launch.aim_sd.set(Angle{0.005});
      c.crossing.site.utilities = {crossing_utility(8, -1.5 - gap, 0.2, sd)};
      c.setup.rules.unexposed.fill(Length{0.1});
      const auto closed = clearances(c.path(), c.tool().diameter, c.crossing.site.utilities, c.crossing.site.ground,
                                     c.setup.rules, all_tables());
      const Trials trials = c.run(8000);
      expect_chance(trials.utilities[0].contact, *closed[0].contact_chance);
      expect_chance(trials.utilities[0].encroachment, *closed[0].encroachment_chance);
      EXPECT_EQ(trials.contact.n, trials.utilities[0].contact.n);
      EXPECT_EQ(trials.arrived.n + trials.contact.n, trials.count);
    }
}

// A skew crossing that climbs, with a bend beside it: the location error moves the whole line across.
TEST(Trials, ClosedForm_ContactAtSkewCrossing) {
  TrialCase c("firm-clay", -1.5, 12);
  c.straight();
  c.crossing.site.strata[0].values.wander = Wander{0.004};
  Utility utility = crossing_utility(8, -1.75, 0.15, 0.1);
  utility.path = {{2, -6, -1.75}, {14, 6, -1.75}, {30, 10, -1.75}};
  c.crossing.site.utilities = {utility};
  const auto closed = clearances(c.path(), c.tool().diameter, c.crossing.site.utilities, c.crossing.site.ground,
                                 c.setup.rules, all_tables());
  expect_chance(c.run(20000).utilities[0].contact, *closed[0].contact_chance);
}

// Test holes at the crossing, beside it, and far off: the trials move the pinned line by its own error, as the closed
// form does.
TEST(Trials, TestHole_AsTheClosedForm) {
  for (const double beside : {0.0, 1.5, 15.0})
    for (const double higher : {0.0, 0.12}) {
      SCOPED_TRACE(std::to_string(beside) + " " + std::to_string(higher));
      TrialCase c("firm-clay", -1.5, 12);
      c.straight();
      c.crossing.site.strata[0].values.wander = Wander{0.004};
      c.crossing.bore.launch.level_sd.set(Angle{0.005});
      c.crossing.site.utilities = {crossing_utility(8, -1.8, 0.2, 0.25)};
      TestHole hole;
      hole.id = "h1";
      hole.utility = "u1";
      hole.station = Length{8.1};
      hole.offset = Length{beside};
      hole.level.set(LevelMeant::centre);
      hole.elevation = Length{-1.8 + higher};
      hole.sd.set(Length{0.03});
      c.crossing.site.test_holes = {hole};
      const auto closed = clearances(c.path(), c.tool().diameter, c.crossing.site.utilities, c.crossing.site.ground,
                                     c.setup.rules, all_tables(), c.crossing.site.test_holes);
      ASSERT_FALSE(closed[0].pinned.line.empty());
      const Trials trials = c.run(12000);
      expect_chance(trials.utilities[0].contact, *closed[0].contact_chance);
      expect_chance(trials.utilities[0].encroachment, *closed[0].encroachment_chance);
      EXPECT_GT(closed[0].contact_chance, beside < 10 ? 1e-4 : 1e-2) << "there is something to count";
    }
}

// Closed form: 1 − exp(−λ L).
TEST(Trials, ClosedForm_Refusal) {
  for (const double rate : {0.002, 0.03, 0.2}) {
    TrialCase c("dense-sand", -2, 15);
    c.straight();
    c.crossing.site.strata[0].values.refusal_rate = RatePerLength{rate};
    const Trials trials = c.run(20000);
    expect_chance(trials.refused, -std::expm1(-rate * 15));
    expect_chance(refused_between(trials, 0, 5), -std::expm1(-rate * 5));
    EXPECT_EQ(trials.refused.n + trials.arrived.n, trials.count);
    EXPECT_EQ(refused_between(trials, 0, 15.1).n, trials.refused.n);
  }
}

// Closed form: two independent normals inside the window.
TEST(Trials, ClosedForm_ExitWindow) {
  TrialCase c("firm-clay", -1.5, 10);
  c.straight();
  c.crossing.bore.launch.level_sd.set(Angle{0.02});
  c.crossing.bore.launch.aim_sd.set(Angle{0.03});
  c.setup.window = {-0.3, 0.2, -1.6, -1.2};
  const auto within = [](double low, double high, double sd) {
    return 0.5 * (std::erf(high / sd / std::sqrt(2.0)) - std::erf(low / sd / std::sqrt(2.0)));
  };
  expect_chance(c.run(20000).inside_window, within(-0.3, 0.2, 0.3) * within(-0.1, 0.3, 0.2));
}

Crossing with_everything() {
  TrialCase c("made-ground", -1.2, 12);
  Crossing crossing = c.crossing;
  crossing.bore = {};
  crossing.bore.tool.tool_class = "tool-65";
  crossing.bore.launch.elevation = {-1.2};
  crossing.bore.exit.station = {12};
  crossing.bore.trials.count.set(1000);
  Stratum upper, lower;
  upper.soil = "made-ground";
  lower.soil = "firm-clay";
  lower.top = LevelLine{{0, -1.0}, {12, -1.6}};
  crossing.site.strata = {upper, lower};
  Strip strip;
  strip.soil = "trench-backfill";
  strip.outline = {{5, -3}, {5.8, -3}, {6.4, 3}, {5.6, 3}};
  strip.bottom_elevation = {-1.4};
  crossing.site.strips = {strip};
  crossing.site.utilities = {crossing_utility(4, -1.3, 0.2, 0.2), crossing_utility(9, -1.6, 0.1, 0.1)};
  return crossing;
}

// Symmetry: the answer does not know on how many threads it was made; another seed gives another.
TEST(Trials, Symmetry_SameSeedSameAnswerOnAnyThreads) {
  Crossing crossing = with_everything();
  const TrialsSetup setup = TrialCase("silt").setup;
  const Trials one = run_trials(crossing, all_tables(), setup, {}, {}, 1);
  EXPECT_EQ(one.grounds, 9u);
  EXPECT_EQ(one.outcomes.size(), 1000u);
  EXPECT_EQ(one.paths.size(), 200u);
  EXPECT_GT(one.contact.n, 0);
  EXPECT_EQ(one.arrived.n + one.daylight.n + one.refused.n + one.contact.n + one.lost.n, one.count);
  for (const unsigned threads : {2u, 3u}) EXPECT_EQ(run_trials(crossing, all_tables(), setup, {}, {}, threads), one);
  crossing.bore.trials.seed.set(2);
  EXPECT_NE(run_trials(crossing, all_tables(), setup, {}, {}, 2).outcomes, one.outcomes);
}

TEST(Trials, Stop_Cancels) {
  const Crossing crossing = with_everything();
  const TrialsSetup setup = TrialCase("silt").setup;
  std::stop_source before;
  before.request_stop();
  const Trials none = run_trials(crossing, all_tables(), setup, before.get_token());
  EXPECT_TRUE(none.cancelled);
  EXPECT_EQ(none.count, 0);

  std::stop_source during;
  int calls = 0;
  const auto progress = [&](double share) {
    ++calls;
    EXPECT_GT(share, 0);
    EXPECT_LT(share, 1);
    during.request_stop();
  };
  const Trials half = run_trials(crossing, all_tables(), setup, during.get_token(), progress, 2);
  EXPECT_TRUE(half.cancelled);
  EXPECT_TRUE(half.outcomes.empty());
  EXPECT_EQ(calls, 1);
}

TEST(Trials, Progress_GrowsToOne) {
  double last = 0;
  run_trials(
      with_everything(), all_tables(), TrialCase("silt").setup, {},
      [&](double share) {
        EXPECT_GE(share, last);
        last = share;
      },
      2);
  EXPECT_EQ(last, 1);
}

// Our model: a guess is drawn from three classes, ½ its own; a stratum that was seen is not.
TEST(Trials, Model_GuessDrawsNeighbouringClasses) {
  TrialCase c("firm-clay", -1.5, 15);
  EXPECT_EQ(c.run(64).grounds, 1u);
  c.crossing.site.strata[0].known.set(StratumEvidence::guess);
  const Trials trials = c.run(6400);
  EXPECT_EQ(trials.grounds, 3u);
  // Nothing else is random, so that each ground has one arrival.
  std::map<double, int> arrivals;
  for (const TrialOutcome& outcome : trials.outcomes) ++arrivals[outcome.elevation_m];
  ASSERT_EQ(arrivals.size(), 3u);
  auto arrival = arrivals.begin();  // lowest: the softest
  EXPECT_NEAR(arrival++->second, 1600, 32);
  EXPECT_NEAR(arrival++->second, 3200, 32);
  EXPECT_NEAR(arrival->second, 1600, 32);
  c.crossing.site.strata[0].soil = "peat";  // two soft clays
  EXPECT_EQ(c.run(64).grounds, 3u);
  c.crossing.site.strata[0].soil = "hard-clay";  // weathered rock beyond it
  EXPECT_EQ(c.run(64).grounds, 3u);
}

TEST(Trials, Model_ManyGuessesAreDealtEvenly) {
  TrialCase c("firm-clay", -1.5, 8);
  for (const double top : {-0.5, -1.0, -2.0})
    c.crossing.site.strata.push_back(for_tests::known_stratum("soft-clay", LevelLine{{0, top}}));
  for (Stratum& stratum : c.crossing.site.strata) stratum.known.set(StratumEvidence::guess);
  const Trials trials = c.run(2048);
  EXPECT_EQ(trials.grounds, 32u);
  EXPECT_EQ(trials.count, 2048);
}

// A shallow bore in dense sand comes up: most trials with it, at stations near that of the mean path.
TEST(Trials, Daylight_AsTheMeanPath) {
  TrialCase c("dense-sand", -0.25, 40);
  c.crossing.bore.launch.grade = {0.01};
  const PathPoint mean = c.path().points.back();
  const Trials certain = c.run(2);
  EXPECT_EQ(certain.daylight.n, 2);
  EXPECT_NEAR(certain.outcomes[0].station_m, mean.x_m, 0.1);
  EXPECT_NEAR(certain.outcomes[0].elevation_m, -0.0325, 1e-6);
  EXPECT_FALSE(certain.mean_offset_m);
}

TEST(Trials, Rejects_ExitBehindLaunchAndUnknownDepth) {
  TrialCase c("firm-clay");
  c.crossing.bore.exit.station = {0};
  EXPECT_EQ(c.run(10).count, 0);
  c.crossing.bore.exit.station = {10};
  Utility utility = crossing_utility(5, -1.5, 0.1, 0.1);
  utility.path[0].z_m.reset();
  c.crossing.site.utilities = {utility};
  const Trials trials = c.run(10);
  EXPECT_TRUE(trials.utilities[0].depth_unknown);
  EXPECT_EQ(trials.utilities[0].contact.n, 0);
  EXPECT_EQ(trials.arrived.n, 10);
}

// Clopper & Pearson 1934: for none seen, 1 − 0.05^(1/n).
TEST(Count, ClopperPearson1934_UpperBound) {
  EXPECT_NEAR((Count{0, 20000}.upper_95()), 1 - std::pow(0.05, 1.0 / 20000), 1e-12);
  EXPECT_NEAR((Count{0, 100}.upper_95()), 0.0295, 5e-5);
  EXPECT_EQ((Count{5, 5}.upper_95()), 1);
  EXPECT_EQ((Count{0, 0}.upper_95()), 1);
  EXPECT_NEAR((Count{50, 200}.standard_error()), std::sqrt(0.25 * 0.75 / 200), 1e-15);
  // The bound is where the lower tail is 5 %: sum over the binomial.
  const double p = Count{2, 30}.upper_95();
  const double tail = std::pow(1 - p, 30) + 30 * p * std::pow(1 - p, 29) + 435 * p * p * std::pow(1 - p, 28);
  EXPECT_NEAR(tail, 0.05, 1e-9);
}

}  // namespace
}  // namespace burrow

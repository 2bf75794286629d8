#include "burrow/check/trials_plan.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "burrow/soil/mistaken_soils.h"
#include "burrow/words/trials_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Trials tried(Crossing crossing, std::int64_t count = 20000) {
  crossing.bore.trials.count.set(count);
  const Assessment answer = judged(crossing);
  return run_trials(crossing, tables(), trials_setup(crossing, tables(), answer));
}

double errors(const Count& count, double closed) {
  return std::abs(count.chance() - closed) / std::max(count.standard_error(), 1e-9);
}

// Closed form and trials judge the same exit window, gaps and utilities: within three standard errors over a grid of
// cases (soil, length, grade, gap). Second route: brute force.
TEST(TrialsPlan, ClosedForm_AgreesOverAGrid) {
  int compared = 0;
  for (const char* soil : {"firm-clay", "stiff-clay", "loose-sand"})
    for (const double length : {8.0, 12.0})
      for (const double gap : {0.3, 0.8}) {
        Crossing crossing = clean_crossing();
        crossing.site.strata[0].soil = soil;
        crossing.bore.exit.station = Length{length};
        crossing.bore.model.steer_constant_sd.set(Ratio{0.004});  // the closed form takes it to first order
        crossing.site.utilities = {water_main(6, 98.6 - gap)};
        const Assessment answer = judged(crossing);
        const Trials trials = tried(crossing);
        const auto& u = answer.utilities.at(0);
        const std::string what = std::string(soil) + " " + std::to_string(length) + " " + std::to_string(gap);
        // The closed forms speak of bores that get that far; the trials count all.
        const double passes = (1 - *u.contact_chance) * (1 - *answer.chance_of_refusal);
        EXPECT_LT(errors(trials.inside_window, *answer.arrival.chance_inside_exit_pit * passes), 3) << what;
        EXPECT_LT(errors(trials.refused, *answer.chance_of_refusal), 3) << what;
        if (*u.encroachment_chance > 0.002) {
          const Ground ground(crossing.site, tables());
          const double gets_there = 1 - chance_of_refusal(ground, answer.bore, Length{*u.station_m});
          EXPECT_LT(errors(trials.utilities.at(0).encroachment, *u.encroachment_chance * gets_there), 3) << what;
        }
        const double sd = *answer.arrival.sd_vertical_m;
        EXPECT_LT(std::abs(trials.sd_elevation_m->value - sd) / trials.sd_elevation_m->standard_error, 3) << what;
        EXPECT_LT(
            std::abs(trials.sd_offset_m->value - *answer.arrival.sd_lateral_m) / trials.sd_offset_m->standard_error, 3)
            << what;
        ++compared;
      }
  EXPECT_EQ(compared, 12);
}

// A guessed stratum: the second moment of the arrivals about the closed mean is that of the classes mixed, and lies
// within the band, which gives no credit to a class that runs straighter; the share that the ground stops likewise.
// Second route: brute force.
TEST(TrialsPlan, Guess_BandsHoldTheTrials) {
  for (const char* soil : {"loose-sand", "medium-sand", "very-stiff-clay", "made-ground"}) {
    Crossing crossing = clean_crossing();
    crossing.site.strata[0].soil = soil;
    crossing.site.strata[0].known.set(StratumEvidence::guess);
    crossing.site.utilities.clear();
    crossing.bore.exit.station = Length{12};
    crossing.bore.model.steer_constant_sd.set(Ratio{0.004});
    const Assessment answer = judged(crossing);
    const Trials trials = tried(crossing, 40000);
    double second = 0, fourth = 0, n = 0;
    for (const TrialOutcome& outcome : trials.outcomes) {
      if (outcome.end != TrialEnd::arrived) continue;
      const double q = std::pow(outcome.elevation_m - *answer.arrival.elevation_m, 2);
      second += q;
      fourth += q * q;
      ++n;
    }
    second /= n;
    fourth /= n;
    const double error = std::sqrt((fourth - second * second) / n);
    const double closed = std::pow(*answer.arrival.sd_vertical_m, 2);
    EXPECT_LT(second, closed + 3 * error) << soil;
    EXPECT_LT(trials.refused.chance(), *answer.chance_of_refusal + 3 * trials.refused.standard_error()) << soil;
    crossing.site.strata[0].known.set(StratumEvidence::seen);
    const Assessment seen = judged(crossing);
    double mixed = 0;
    for (const SoilGuess& guess : soil_mistaken_for(soil, tables())) {
      crossing.site.strata[0].soil = guess.soil;
      const Arrival in_class = judged(crossing).arrival;
      mixed += guess.chance * (std::pow(*in_class.sd_vertical_m, 2) +
                               std::pow(*in_class.elevation_m - *answer.arrival.elevation_m, 2));
    }
    EXPECT_LE(mixed, closed + 1e-6) << soil;
    // Those that arrive are mostly in the class that stops fewer: a little narrower than all of them.
    EXPECT_GT(second, 0.97 * mixed - 3 * error) << soil;
    EXPECT_LT(second, mixed + 3 * error) << soil;
    if (*answer.chance_of_refusal > *seen.chance_of_refusal + 1e-6) {
      EXPECT_LT(errors(trials.refused, *answer.chance_of_refusal), 3) << soil;
    }
  }
}

TEST(TrialsPlan, Window_IsThatOfTheVerdict) {
  Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  const ExitWindow wide = trials_setup(crossing, tables(), answer).window;
  EXPECT_NEAR(wide.left_m - wide.right_m, std::max(3.0, answer.exit_pit.floor_width_m), 1e-9);
  EXPECT_NEAR(wide.low_m, answer.exit_pit.floor_elevation_m + 0.1, 1e-12);
  EXPECT_EQ(wide.high_m, 100);
  crossing.pits.exit.floor_width = Length{0.9};
  const Assessment typed = judged(crossing);
  const ExitWindow narrow = trials_setup(crossing, tables(), typed).window;
  EXPECT_NEAR(narrow.left_m - narrow.right_m, 0.9, 1e-9);
}

TEST(TrialsPlan, Rules_AreTheLimitsInForce) {
  Crossing crossing = clean_crossing();
  crossing.limits["separation_gas_m"] = {0.9, "permit 12", ""};
  const ClearanceRules rules = trials_setup(crossing, tables(), judged(crossing)).rules;
  EXPECT_EQ(rules.of(UtilityKind::gas, true).m, 0.9);
  EXPECT_EQ(rules.of(UtilityKind::gas, false).m, 0.3);
}

TEST(TrialsText, NoneSeen_IsNotNever) {
  const Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  Trials trials;
  trials.count = 1000;
  for (Count* count : {&trials.arrived, &trials.inside_window, &trials.daylight, &trials.refused, &trials.contact})
    count->of = 1000;
  trials.arrived.n = 1000;
  trials.refused.n = 40;
  trials.utilities = {{"u1", true, {0, 1000}, {3, 1000}}};
  std::map<std::string, std::string> shown_text;
  for (const TrialsLine& line : trials_lines(trials, answer, UnitSystem::metric)) shown_text[line.what] = line.value;
  EXPECT_EQ(shown_text.at("come out of the ground before"), "none seen, below 0.30 %");
  EXPECT_EQ(shown_text.at("reach the exit face"), "all 1000");
  EXPECT_EQ(shown_text.at("are stopped by the ground"), "4.0 % ± 0.62 %");
  EXPECT_NE(shown_text.at("touch water main").find("at least"), std::string::npos);
  EXPECT_TRUE(trials_lines({}, answer, UnitSystem::metric).empty());
  // 20,000 bores: the bound is 0.01498 %, and never told lower than it is.
  trials.count = trials.daylight.of = 20000;
  for (const TrialsLine& line : trials_lines(trials, answer, UnitSystem::metric))
    if (line.what == "come out of the ground before") {
      EXPECT_EQ(line.value, "none seen, below 0.02 %");
    }
}

TEST(TrialsText, ModelStatus_SaysFromHowManyBores) {
  ModelConstants model;
  EXPECT_EQ(model_status(model), "model not calibrated");
  model.calibrated_from.set(12);  // a number typed by hand calibrates nothing
  EXPECT_EQ(model_status(model), "model not calibrated");
  model.calibrated_records = named_records(12);
  EXPECT_EQ(model_status(model), "model calibrated from 12 bores");
  model.calibrated_from.set(1);
  EXPECT_EQ(model_status(model), "model calibrated from 1 bore");
}

}  // namespace
}  // namespace burrow::test

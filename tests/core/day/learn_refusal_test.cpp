// The rate at which the ground stops tools: gamma by hand, coverage, which records count and what becomes of it.
#include <gtest/gtest.h>

#include "burrow/words/learn_text.h"
#include "support/learning_for_tests.h"

namespace burrow::test {
namespace {

LearnedSoil learnt_from(const std::vector<StopEvidence>& stops) {
  return learn(Evidence{{}, stops, {}}).soils.at(0);
}

Crossing ended(EndHow how, double at_m = 5) {
  Crossing crossing = Schooled().crossing;
  crossing.record = {stopped_record(how, at_m)};
  return crossing;
}

// Chi square with 6 degrees of freedom, 5 and 95 %: 1.635, 12.592 (tables, from memory). Dense sand: prior of shape 1
// over 1/0.03 m; two refusals in 100 m: shape 3 over 133.3 m, quantile = χ²/2 over that.
TEST(LearnRefusal, ChiSquare_TwoInAHundredMetres) {
  const LearnedSoil soil =
      learnt_from({{"dense-sand", 0.03, 0.0045, 60, true}, {"dense-sand", 0.03, 0.0045, 40, true}});
  EXPECT_EQ(soil.refusals, 2);
  EXPECT_DOUBLE_EQ(soil.bored_m, 100);
  const double length = 100 + 1 / 0.03;
  EXPECT_DOUBLE_EQ(soil.refusal_rate->shape, 3);
  EXPECT_DOUBLE_EQ(soil.refusal_rate->length_m, length);
  EXPECT_DOUBLE_EQ(soil.refusal_rate->mean_1_m, 3 / length);
  EXPECT_NEAR(soil.refusal_rate->low_1_m, 1.635 / 2 / length, 0.0005 / 2 / length);
  EXPECT_NEAR(soil.refusal_rate->high_1_m, 12.592 / 2 / length, 0.0005 / 2 / length);
}

// Limit: without a refusal the rate falls, never to nothing; without a record of known end nothing is said.
TEST(LearnRefusal, Limit_NoStopIsNotNoRate) {
  const LearnedSoil soil = learnt_from({{"dense-sand", 0.03, 0.0045, 300, false}});
  EXPECT_GT(soil.refusal_rate->mean_1_m, 0);
  EXPECT_LT(soil.refusal_rate->mean_1_m, 0.03);
  EXPECT_GT(soil.refusal_rate->low_1_m, 0);
  const LearnedSoil never = learnt_from({{"soft-clay", 0, 0.003, 100, false}});  // the table says that nothing stops it
  EXPECT_GT(never.refusal_rate->high_1_m, 0.001);
  EXPECT_DOUBLE_EQ(never.refusal_rate->length_m, 1100);
}

// Intervals of 90 %: six hundred rates drawn from the prior, thirty bores of 10 m each, each until it stops. Three
// standard errors of the count are 3.7 points.
TEST(LearnRefusal, Coverage_SixHundredSets) {
  const RefusalCoverage covered = refusal_coverage(600, 30, 41, false);
  EXPECT_NEAR(static_cast<double>(covered.held) / covered.of, 0.90, 0.037);
}
// The same by way of records that are read back, fewer of them; the long run takes six hundred.
TEST(LearnRefusal, Coverage_ByWayOfRecords) {
  const RefusalCoverage covered = refusal_coverage(40, 6, 43, true);
  EXPECT_NEAR(static_cast<double>(covered.held) / covered.of, 0.90, 0.142);
}

// Stuck and lost are refusals, the rest are metres without one; no end, no evidence.
TEST(LearnRefusal, Ends_WhichCount) {
  for (const EndHow how : {EndHow::stuck, EndHow::lost, EndHow::backed_out, EndHow::daylight, EndHow::struck}) {
    const bool given_up = how == EndHow::backed_out;
    if (given_up) {
      EXPECT_TRUE(evidence_of(ended(how), tables()).stops.empty()) << "taken only when asked for";
    }
    const Evidence evidence = evidence_of(ended(how), tables(), {}, {given_up});
    ASSERT_EQ(evidence.stops.size(), 1u);
    EXPECT_EQ(evidence.stops[0].soil, "soft-clay");
    EXPECT_NEAR(evidence.stops[0].bored_m, 5, 1e-9);
    EXPECT_EQ(evidence.stops[0].stopped, how == EndHow::stuck || how == EndHow::lost);
  }
  EXPECT_NEAR(evidence_of(ended(EndHow::arrived, 9), tables()).stops.at(0).bored_m, 10, 0.05);  // the whole path
  Crossing open = ended(EndHow::stuck);
  open.record[0].readings.pop_back();
  EXPECT_TRUE(evidence_of(open, tables()).stops.empty());
}

// A bore through two classes gives its metres to each, and its stop to the one it stopped in.
TEST(LearnRefusal, TwoClasses_EachItsMetres) {
  Crossing crossing = ended(EndHow::stuck, 6);
  Strip trench;
  trench.id = "t1";
  trench.soil = "trench-backfill";
  trench.outline = {{4, -5}, {9, -5}, {9, 5}, {4, 5}};
  trench.bottom_elevation = Length{97};
  crossing.site.strips = {trench};
  const Evidence evidence = evidence_of(crossing, tables());
  ASSERT_EQ(evidence.stops.size(), 2u);
  EXPECT_EQ(evidence.stops[0].soil, "soft-clay");
  EXPECT_NEAR(evidence.stops[0].bored_m, 4, 0.3);
  EXPECT_FALSE(evidence.stops[0].stopped);
  EXPECT_EQ(evidence.stops[1].soil, "trench-backfill");
  EXPECT_NEAR(evidence.stops[1].bored_m, 2, 0.3);
  EXPECT_TRUE(evidence.stops[1].stopped);
}

LearnLibrary library_of(double bored_m) {
  LearnLibrary library =
      learn(Evidence{{}, {{"firm-clay", 0.001, 0.0025, bored_m, true}, {"firm-clay", 0.001, 0.0025, 0, true}}, {}});
  library.soils.at(0).bores = 2;
  library.soils.at(0).records = {"Alder Lane, d1", "Alder Lane, d2"};
  return library;
}

// Records that weigh less than the table's rate stay out: the finding would pass for calibrated on a guess.
TEST(LearnRefusal, TooLittle_StaysOut) {
  const Crossing learned = with_library(clean_crossing(), tables(), library_of(900));
  EXPECT_FALSE(learned.site.strata[0].values.refusal_rate);
  const Assessment answer = judged(learned);
  const Finding* refusal = find(answer, "bore.refusal");
  ASSERT_TRUE(refusal);
  EXPECT_NE(finding_text(*refusal, UnitSystem::metric).find("not calibrated from records"), std::string::npos);
}

TEST(LearnRefusal, Enough_GoesIntoTheGround) {
  const LearnLibrary library = library_of(1500);
  const double rate = 3.0 / 2500;
  Crossing crossing = clean_crossing();
  const Crossing learned = with_library(crossing, tables(), library);
  ASSERT_TRUE(learned.site.strata[0].values.refusal_rate);
  EXPECT_DOUBLE_EQ(learned.site.strata[0].values.refusal_rate->per_m, rate);
  const Assessment answer = judged(learned);
  EXPECT_NEAR(*answer.chance_of_refusal, 1 - std::exp(-rate * answer.bore.length_m), 1e-12);
  const std::string text = finding_text(*find(answer, "bore.refusal"), UnitSystem::metric);
  EXPECT_NE(text.find("rate from records"), std::string::npos) << text;
  crossing.site.strata[0].values.refusal_rate = RatePerLength{0.5};  // typed values stay
  EXPECT_EQ(with_library(crossing, tables(), library).site.strata[0].values.refusal_rate->per_m, 0.5);
  crossing = clean_crossing();
  crossing.site.strata[0].known.set(StratumEvidence::guess);  // it may be another class
  EXPECT_FALSE(with_library(crossing, tables(), library).site.strata[0].values.refusal_rate);
}

TEST(LearnRefusal, Text_SaysStopsMetresAndWhetherItCounts) {
  const auto row = [](double bored_m) { return learn_rows(library_of(bored_m), tables()).at(3); };
  EXPECT_EQ(row(1500).what, "stops by the ground in 100 m");
  EXPECT_EQ(row(1500).before, "0.1");
  EXPECT_EQ(row(1500).from, "2 stops in 1500 m");
  EXPECT_EQ(row(900).from, "2 stops in 900 m, not taken over below 1000 m");
}

}  // namespace
}  // namespace burrow::test

// Learning from records: constants are recovered, intervals hold what they promise, what says nothing is left out.
#include "burrow/day/learn.h"
#include "burrow/day/path_evidence.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <cmath>

#include "burrow/words/learn_text.h"
#include "support/learning_for_tests.h"

namespace burrow::test {
namespace {

// Recovery: two hundred bores of one set of constants, each in its stated interval of 90 %, which is many times
// narrower than the prior. A seed in which all three hold; how often they do is the matter of the coverage below.
TEST(LearnRecovery, Simulated_TwoHundredBores) {
  const Schooled school;
  std::mt19937_64 engine(22);
  const Constants truth{0.055, 0.0035, 0.22};
  Crossing crossing = school.crossing;
  for (int k = 0; k < 200; ++k) crossing.record.push_back(school.bored(truth, engine));
  const Evidence evidence = evidence_of(crossing, tables());
  EXPECT_TRUE(evidence.not_learnt.empty());
  const LearnLibrary library = learn(evidence.bores);
  ASSERT_EQ(library.soils.size(), 1u);
  const LearnedSoil& soil = library.soils[0];
  EXPECT_EQ(soil.soil, "soft-clay");
  EXPECT_EQ(soil.bores, 200);
  EXPECT_EQ(soil.timed_bores, 200);
  const auto expect_held = [](const LearnedValue& v, double value, double prior_ln_sd) {
    EXPECT_LE(v.low, value);
    EXPECT_GE(v.high, value);
    EXPECT_GE(v.likeliest, v.low);
    EXPECT_LE(v.likeliest, v.high);
    EXPECT_LT(v.ln_sd, 0.35 * prior_ln_sd);
  };
  expect_held(soil.steer_constant, truth.steer, 0.668);
  expect_held(soil.wander_rad_sqrt_m, truth.wander, 0.5);
  expect_held(soil.field_factor, truth.factor, 0.628);
}

// Intervals of 90 %: forty sets of constants drawn from the prior, five bores each. Three standard errors of the count
// are 14 points; the long run (`test_plan_long`) tells 90 ± 4 %.
TEST(LearnRecovery, Coverage_FortySets) {
  const Coverage covered = coverage(40, 5, 31);
  for (const int held : {covered.steer, covered.wander, covered.factor})
    EXPECT_NEAR(static_cast<double>(held) / covered.of, 0.90, 0.142);
}

// Limit: without evidence about the path the prior comes back.
TEST(Learn, Limit_NothingReadIsThePrior) {
  const Schooled school;
  std::mt19937_64 engine(3);
  Crossing crossing = school.crossing;
  DayRecord record = school.bored({0.04, 0.0025, 0.3}, engine);
  std::erase_if(record.readings,
                [](const Reading& r) { return r.kind != ReadingKind::start && r.kind != ReadingKind::mark; });
  crossing.record = {record};
  const LearnedSoil soil = learn(evidence_of(crossing, tables()).bores).soils.at(0);
  EXPECT_EQ(soil.bores, 0);
  EXPECT_EQ(soil.timed_bores, 1);
  const double variance = std::log1p(0.5625);
  EXPECT_NEAR(soil.steer_constant.ln_mean, std::log(0.04) - 0.5 * variance, 0.01);
  EXPECT_NEAR(soil.steer_constant.ln_sd, std::sqrt(variance), 0.01);
  EXPECT_NEAR(soil.wander_rad_sqrt_m.ln_sd, 0.5, 0.01);
}

// Second route: the posterior of one bore by a plain double sum over a fine grid with the full normal density.
TEST(Learn, BruteForce_OneBore) {
  const Schooled school;
  std::mt19937_64 engine(8);
  Crossing crossing = school.crossing;
  crossing.record = {school.bored({0.06, 0.004, 0.3}, engine)};
  const std::vector<BoreEvidence> evidence = evidence_of(crossing, tables()).bores;
  ASSERT_TRUE(evidence.at(0).path);
  const PathEvidence& e = *evidence.at(0).path;
  const double wander_class = evidence.at(0).wander_class;
  const double variance = std::log1p(0.5625), mu = std::log(0.04) - 0.5 * variance;
  double sum = 0, mean_c = 0, mean_w = 0;
  for (std::size_t k = 0; k < e.ln_constants.size(); ++k)
    for (int j = 0; j <= 140; ++j) {
      const double ln_w = std::log(wander_class) + 0.5 * 3.5 * (j / 70.0 - 1), w = std::exp(ln_w);
      const Eigen::MatrixXd s = e.fixed + w * w * e.by_wander;
      const Eigen::VectorXd r = e.values - e.expected.col(static_cast<Eigen::Index>(k));
      const double ln = -0.5 * r.dot(s.inverse() * r) - 0.5 * std::log(s.determinant()) -
                        0.5 * std::pow(e.ln_constants[k] - mu, 2) / variance -
                        0.5 * std::pow((ln_w - std::log(wander_class)) / 0.5, 2);
      const double weight = std::exp(ln - 60);
      sum += weight;
      mean_c += weight * e.ln_constants[k];
      mean_w += weight * ln_w;
    }
  const LearnedSoil soil = learn(evidence).soils.at(0);
  EXPECT_NEAR(soil.steer_constant.ln_mean, mean_c / sum, 0.01);
  EXPECT_NEAR(soil.wander_rad_sqrt_m.ln_mean, mean_w / sum, 0.01);
}

// Rejection: a record that was never driven, and a bore through several soils.
TEST(Learn, Rejection_SaysWhy) {
  Crossing crossing = clean_crossing();
  DayRecord empty;
  empty.id = "d1";
  crossing.record = {empty};
  const Evidence nothing = evidence_of(crossing, tables());
  EXPECT_TRUE(nothing.bores.empty());
  ASSERT_EQ(nothing.not_learnt.size(), 1u);
  EXPECT_EQ(nothing.not_learnt[0].record, "d1");

  std::mt19937_64 engine(4);
  const Schooled school;
  crossing = school.crossing;
  crossing.record = {school.bored({0.04, 0.0025, 0.3}, engine)};
  Strip trench;
  trench.id = "t1";
  trench.soil = "trench-backfill";
  trench.outline = {{3, -5}, {7.5, -5}, {7.5, 5}, {3, 5}};
  trench.bottom_elevation = Length{97};
  crossing.site.strips = {trench};
  const Evidence mixed = evidence_of(crossing, tables());
  ASSERT_EQ(mixed.not_learnt.size(), 1u);
  EXPECT_NE(mixed.not_learnt[0].why.english().find("no soil class"), std::string::npos);
}

// What was learnt goes into the model of a crossing in that soil, with the number of bores; typed wander stays.
TEST(Learn, Library_IntoACrossing) {
  LearnLibrary library;
  LearnedSoil soil;
  soil.soil = "firm-clay";
  soil.bores = 12;
  soil.timed_bores = 9;
  soil.steer_constant = {0.05, 0.04, 0.06, std::log(0.05), 0.1};
  soil.wander_rad_sqrt_m = {0.003, 0.002, 0.004, std::log(0.003), 0.1};
  soil.field_factor = {0.2, 0.15, 0.25, std::log(0.2), 0.15};
  soil.records = {"Alder Lane, d1"};
  library.soils = {soil};
  const Crossing learned = with_library(clean_crossing(), tables(), library);
  EXPECT_NEAR(learned.bore.model.steer_constant->v, 0.05 * std::exp(0.005), 1e-12);
  EXPECT_NEAR(learned.bore.model.steer_constant_sd->v, 0.05 * std::exp(0.005) * std::sqrt(std::expm1(0.01)), 1e-12);
  EXPECT_EQ(*learned.bore.model.calibrated_from, 12);
  EXPECT_EQ(learned.bore.model.calibrated_records, soil.records);
  EXPECT_EQ(learned.bore.model.field_factor->v, 0.2);
  EXPECT_EQ(learned.site.strata[0].values.wander->rad_sqrt_m, 0.003);
  Crossing typed = clean_crossing();
  typed.site.strata[0].values.wander = Wander{0.009};
  EXPECT_EQ(with_library(typed, tables(), library).site.strata[0].values.wander->rad_sqrt_m, 0.009);
  typed.site.strata[0].soil = "loose-sand";
  EXPECT_EQ(with_library(typed, tables(), library), typed);
}

// Three rows a class, each with its interval, the default it stands against and how many bores it is from.
TEST(LearnText, Rows_SayValueDefaultAndBores) {
  LearnLibrary library;
  library.soils = {{"firm-clay",
                    1,
                    9,
                    {0.05, 0.04, 0.06, -3, 0.1},
                    {0.003, 0.002, 0.004, -5.8, 0.2},
                    {0.2, 0.15, 0.25, -1.6, 0.15}}};
  const std::vector<LearnRow> rows = learn_rows(library, tables());
  ASSERT_EQ(rows.size(), 3u);
  EXPECT_EQ(rows[0].soil, "firm clay");
  EXPECT_EQ(rows[0].learnt, "0.05 (0.04 to 0.06)");
  EXPECT_EQ(rows[0].before, "0.04");
  EXPECT_EQ(rows[0].from, "1 bore");
  EXPECT_EQ(rows[2].from, "9 bores");
}

}  // namespace
}  // namespace burrow::test

// What random trials change in a verdict: it gets worse where they break a limit for sure, and never better.
#include "burrow/check/conclude_trials.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Trials trials_of(const Crossing& crossing, std::int64_t count) {
  Trials trials;
  trials.count = count;
  for (Count* c : {&trials.arrived, &trials.inside_window, &trials.daylight, &trials.refused, &trials.contact})
    c->of = count;
  trials.arrived.n = trials.inside_window.n = count;
  for (const Utility& u : crossing.site.utilities) trials.utilities.push_back({u.id, false, {0, count}, {0, count}});
  return trials;
}

// Clopper & Pearson 1934, one-sided; second route: the sum of the binomial.
TEST(Count, ClopperPearson1934_Bounds) {
  const Count five{5, 100};
  // The bound p at which five or more of a hundred are seen with 5 %: derived, by the sum of the binomial.
  const auto at_least_five = [](double p) {
    double below = 0, term = std::pow(1 - p, 100);
    for (int k = 0; k < 5; ++k) {
      below += term;
      term *= (100.0 - k) / (k + 1) * p / (1 - p);
    }
    return 1 - below;
  };
  EXPECT_NEAR(at_least_five(five.lower_95()), 0.05, 1e-9);
  EXPECT_EQ((Count{0, 100}.lower_95()), 0);
  EXPECT_LT(five.lower_95(), five.chance());
  EXPECT_GT(five.upper_95(), five.chance());
}

// Each limit broken by the lower bound is a finding of its own; the verdict of a clean crossing becomes a stop.
TEST(ConcludeTrials, Model_EachLimitWorsens) {
  const Crossing crossing = clean_crossing();
  const Assessment clean = judged(crossing);
  ASSERT_EQ(clean.verdict, Verdict::within_limits) << listed(clean);
  const Trials none = trials_of(crossing, 10000);
  EXPECT_EQ(conclude_trials(crossing, tables(), clean, none).verdict, Verdict::within_limits);

  Trials touched = none;
  touched.utilities[0].contact.n = 200;  // 2 %, 1 % is the stop
  const Assessment worse = conclude_trials(crossing, tables(), clean, touched);
  EXPECT_EQ(worse.verdict, Verdict::stop);
  const Finding* finding = find(worse, "trials.contact", "u1");
  ASSERT_TRUE(finding) << listed(worse);
  EXPECT_EQ(*finding->measured, touched.utilities[0].contact.lower_95());
  EXPECT_LT(*finding->measured, 0.02);
  EXPECT_EQ(worse.findings.front().code, "trials.contact");

  Trials near = none;
  near.utilities[0].encroachment.n = 800;  // 8 %: caution from 5, stop from 20
  const Assessment nearer = conclude_trials(crossing, tables(), clean, near);
  EXPECT_EQ(nearer.verdict, Verdict::caution);
  EXPECT_TRUE(find(nearer, "trials.encroachment", "u1"));

  Trials out = none;
  out.daylight.n = 700;
  EXPECT_TRUE(find(conclude_trials(crossing, tables(), clean, out), "trials.daylight", "bore"));
  EXPECT_EQ(conclude_trials(crossing, tables(), clean, out).verdict, Verdict::stop);

  Trials missed = none;
  missed.inside_window.n = 8800;
  const Assessment beside = conclude_trials(crossing, tables(), clean, missed);
  EXPECT_EQ(beside.verdict, Verdict::stop);
  EXPECT_TRUE(find(beside, "trials.exit-window", "exit-pit"));
}

// A count that may be chance breaks nothing: 13 of 10,000 is above one in a thousand, its lower bound is not.
TEST(ConcludeTrials, Model_OnlyWhatIsSure) {
  const Crossing crossing = clean_crossing();
  const Assessment clean = judged(crossing);
  Trials trials = trials_of(crossing, 10000);
  trials.utilities[0].contact.n = 13;
  EXPECT_EQ(conclude_trials(crossing, tables(), clean, trials), clean);
  trials.utilities[0].contact.n = 18;
  EXPECT_EQ(conclude_trials(crossing, tables(), clean, trials).verdict, Verdict::caution);
}

// Refusal is judged apart: bores that the ground stopped are no misses of the exit window.
TEST(ConcludeTrials, Model_RefusedAreNoMisses) {
  const Crossing crossing = clean_crossing();
  Trials trials = trials_of(crossing, 10000);
  trials.refused.n = 4000;
  trials.inside_window.n = 5900;
  EXPECT_EQ(conclude_trials(crossing, tables(), judged(crossing), trials).verdict, Verdict::within_limits);
  trials.refused.n = 10000;
  trials.inside_window.n = 0;
  EXPECT_EQ(conclude_trials(crossing, tables(), judged(crossing), trials).verdict, Verdict::within_limits);
}

// Never better: trials in which nothing happens leave every finding of a bad crossing and its verdict; cancelled or
// empty ones change nothing; a mute of the crossing does not silence a stop.
TEST(ConcludeTrials, Model_NeverBetter) {
  Crossing crossing = clean_crossing();
  crossing.site.utilities = {water_main(4, 98.5)};
  const Assessment bad = judged(crossing);
  ASSERT_EQ(bad.verdict, Verdict::stop);
  EXPECT_EQ(conclude_trials(crossing, tables(), bad, trials_of(crossing, 100000)), bad);
  Trials cancelled = trials_of(crossing, 1000);
  cancelled.utilities[0].contact.n = 1000;
  cancelled.cancelled = true;
  EXPECT_EQ(conclude_trials(crossing, tables(), bad, cancelled), bad);
  EXPECT_EQ(conclude_trials(crossing, tables(), bad, Trials{}), bad);

  Crossing clean = clean_crossing();
  clean.muted = {mute("trials.contact", "u1", "seen")};
  Trials touched = trials_of(clean, 10000);
  touched.utilities[0].contact.n = 5000;
  EXPECT_EQ(conclude_trials(clean, tables(), judged(clean), touched).verdict, Verdict::stop);
}

}  // namespace
}  // namespace burrow::test

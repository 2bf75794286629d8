// Trials that are asked about each utility as if it were the only one, and about ground that stops nobody.
#include <gtest/gtest.h>

#include "support/trials_for_tests.h"

namespace burrow::for_tests {
namespace {

// Derived: a straight bore without errors, two mains in its way one behind the other. The first one ends it; each alone
// is struck by all, and all arrive.
TEST(Trials, Derived_EachUtilityAlone) {
  TrialCase c("firm-clay");
  c.straight();
  Utility second = crossing_utility(9, -1.5, 0, 0);
  second.id = "u2";
  c.crossing.site.utilities = {crossing_utility(5, -1.5, 0, 0), second};
  const Trials one_ends_it = c.run(320);
  EXPECT_EQ(one_ends_it.utilities[0].contact.n, 320);
  EXPECT_EQ(one_ends_it.utilities[1].contact.n, 0);
  EXPECT_EQ(one_ends_it.arrived.n, 0);
  c.setup.each_alone = true;
  const Trials alone = c.run(320);
  for (const UtilityTrials& u : alone.utilities) {
    EXPECT_EQ(u.contact.n, 320);
    EXPECT_EQ(u.encroachment.n, 320);
  }
  EXPECT_EQ(alone.contact.n, 0);
  EXPECT_EQ(alone.inside_window.n, 320);
}

// Derived: the record of a main ends 2 m beside a straight bore without errors; if it goes on, all bores strike it.
TEST(Trials, Derived_EdgeOfRecordGoesOn) {
  TrialCase c("firm-clay");
  c.straight();
  Utility main = crossing_utility(5, -1.5, 0, 0);
  main.path.back().y_m = -2;
  main.path.front().y_m = -5;
  main.ends.first = main.ends.last = LineEnd::cap;
  c.crossing.site.utilities = {main};
  EXPECT_EQ(c.run(320).utilities[0].contact.n, 0);
  c.crossing.site.utilities[0].ends.last = LineEnd::edge_of_record;
  EXPECT_EQ(c.run(320).utilities[0].contact.n, 320);
}

// Derived: ground that stops all bores stops none where refusal is off; the other draws stay the same.
TEST(Trials, Derived_RefusalOff) {
  TrialCase c("firm-clay");
  c.crossing.bore.launch.level_sd.set(Angle{0.005});
  c.setup.refusal = false;
  const Trials quiet = c.run(640);
  c.crossing.site.strata[0].values.refusal_rate = RatePerLength{1000};
  EXPECT_EQ(c.run(640).arrived.n, 640);
  EXPECT_EQ(c.run(640).outcomes, quiet.outcomes);
  c.setup.refusal = true;
  EXPECT_EQ(c.run(640).refused.n, 640);
}

}  // namespace
}  // namespace burrow::for_tests

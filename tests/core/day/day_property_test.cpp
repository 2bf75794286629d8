// No reading that makes things worse makes the advice milder, and none that is taken away either. Our promise, and no
// source: as `Property.*` for the verdict. A few days in each run; thousands in `test_day_long`.
#include "support/day_property_for_tests.h"

namespace burrow::test {
namespace {

constexpr unsigned days = 24;

TEST(DayProperty, OurPromise_WorseReadingsNeverMilder) {
  EXPECT_GT(expect_worse_never_milder(1, days), static_cast<int>(days));
}

TEST(DayProperty, OurPromise_FixNearerToALineNeverMilder) {
  EXPECT_GT(expect_nearer_never_milder(1, days), 2);
}

TEST(DayProperty, OurPromise_ContradictionsNeverMilder) {
  expect_contradictions_never_milder(1, days);
}

TEST(DayProperty, OurPromise_LessKnownNeverMilder) {
  expect_less_known_never_milder(1, days);
}

TEST(DayProperty, OurPromise_DangerStays) {
  expect_danger_stays(1, days);
}

// The drawn days are worth asking: advice of most kinds is among them.
TEST(DayProperty, DrawnDays_AreOfAllKinds) {
  std::map<int, int> seen;
  for (unsigned seed = 1; seed <= 2 * days; ++seed) {
    const RandomDay day(seed);
    if (day.can_be_bored()) ++seen[day.grave()];
  }
  for (const Advice advice : {Advice::go_on, Advice::do_tasks, Advice::record_only, Advice::stop_until_exposed})
    EXPECT_GT(seen[gravity(advice)], 2) << word_of(advice);
}

}  // namespace
}  // namespace burrow::test

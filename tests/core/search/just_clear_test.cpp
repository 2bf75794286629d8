#include "burrow/search/just_clear.h"

#include <gtest/gtest.h>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

const UtilityAnswer& first(const Assessment& answer) {
  return answer.utilities.at(0);
}

// The shift found is where the finding goes away: second route, `assess()` at the shifted level, and 3 mm short of it.
TEST(JustClear, LaunchBelowAMain_AssessedThereAgrees) {
  for (const double main_m : {98.9, 99.3}) {
    Crossing c = clean_crossing();
    c.site.utilities = {water_main(6, main_m)};
    const Assessment now = judged(c);
    const auto shift = shift_just_clear(c, tables(), now, c.site.utilities[0].id, Shifted::launch);
    ASSERT_TRUE(shift) << main_m;
    Crossing there = c;
    there.bore.launch.elevation.m += *shift;
    const Assessment after = judged(there);
    EXPECT_GE(*first(after).separation_m, *first(after).required_m);
    EXPECT_LE(*first(after).separation_m, *first(after).required_m + 0.003);
    there.bore.launch.elevation.m += 0.005;  // back up, toward the main
    EXPECT_LT(*first(judged(there)).separation_m, *first(after).required_m);
  }
}

TEST(JustClear, UtilityBelowTheBore_MovesDown) {
  Crossing c = clean_crossing();
  c.site.utilities = {water_main(6, 98.3)};
  const Assessment now = judged(c);
  ASSERT_LT(first(now).on_utility->z_m, first(now).on_bore->z_m);
  const auto shift = shift_just_clear(c, tables(), now, c.site.utilities[0].id, Shifted::utility);
  ASSERT_TRUE(shift);
  for (PathVertex& v : c.site.utilities[0].path)
    if (v.z_m) *v.z_m += *shift;
  const Assessment after = judged(c);
  EXPECT_GE(*first(after).separation_m, *first(after).required_m);
  EXPECT_LE(*first(after).separation_m, *first(after).required_m + 0.003);
}

TEST(JustClear, UnknownDepth_SaysNothing) {
  Crossing c = clean_crossing();
  c.site.utilities = {water_main(6, 98.9)};
  for (PathVertex& v : c.site.utilities[0].path) v.z_m.reset();
  EXPECT_FALSE(shift_just_clear(c, tables(), judged(c), c.site.utilities[0].id, Shifted::launch));
  EXPECT_FALSE(shift_just_clear(c, tables(), judged(c), "nobody", Shifted::launch));
}

}  // namespace
}  // namespace burrow::test

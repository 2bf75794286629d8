#include "burrow/search/layouts.h"

#include <gtest/gtest.h>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

// The summary of an alternative is that of a crossing drawn that way: second route, `assess()` of it.
TEST(Layouts, AlternativeIsJudgedAsIfItWereInForce) {
  Crossing c = clean_crossing();
  c.site.utilities = {water_main(6, 98.9)};
  c.alternatives.push_back(kept_layout(c, "as drawn"));
  c.bore.launch.elevation.m -= 0.4;
  const Assessment now = judged(c);
  const auto all = compare_layouts(c, now, tables());
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0], summary_of(c, now));
  EXPECT_EQ(all[1].name, "as drawn");
  const Crossing other = with_alternative(c, c.alternatives[0].id);
  const Assessment there = judged(other);
  EXPECT_EQ(all[1].least_gap_m, there.utilities[0].separation_m);
  EXPECT_EQ(all[1].dig_m3, there.launch_pit.volume_m3 + there.exit_pit.volume_m3);
  EXPECT_GT(*all[0].launch_depth_m, *all[1].launch_depth_m);
}

TEST(Layouts, TakenInForce_TwiceIsWhereItBegan) {
  Crossing c = clean_crossing();
  c.alternatives.push_back(kept_layout(c, "first"));
  c.bore.launch.grade.v = 0.02;
  c.locks = {"/bore/launch/grade"};
  const Crossing swapped = with_layout_in_force(c, c.alternatives[0].id, "second");
  EXPECT_EQ(swapped.bore.launch.grade.v, clean_crossing().bore.launch.grade.v);
  EXPECT_TRUE(swapped.locks.empty());
  ASSERT_EQ(swapped.alternatives.size(), 1u);
  EXPECT_EQ(swapped.alternatives[0].name, "second");
  EXPECT_NE(swapped.alternatives[0].id, c.alternatives[0].id) << "an id is never given to something else";
  const Crossing back = with_layout_in_force(swapped, swapped.alternatives[0].id, "first");
  EXPECT_EQ(back.bore, c.bore);
  EXPECT_EQ(back.pits, c.pits);
  EXPECT_EQ(back.locks, c.locks);
  EXPECT_EQ(with_layout_in_force(c, "nobody", "x"), c);
}

TEST(Layouts, PartialAlternative_TakesTheRestFromTheOneInForce) {
  Crossing c = clean_crossing();
  Alternative deeper;
  deeper.id = "a7";
  deeper.bore = c.bore;
  deeper.bore->launch.elevation.m -= 0.3;
  c.alternatives = {deeper};
  const auto all = compare_layouts(c, judged(c), tables());
  EXPECT_NEAR(*all[1].launch_depth_m, *all[0].launch_depth_m + 0.3, 1e-9);
}

}  // namespace
}  // namespace burrow::test

// 29 CFR 1926 Subpart P App. B Table B-1 (read): greatest slopes up to 20 ft.
#include <gtest/gtest.h>

#include "burrow/file/tables_file.h"
#include "burrow/pit/cut.h"
#include "burrow/pit/slope.h"

namespace burrow {
namespace {

using namespace literals;

/// The program's own table, as it is shipped.
ExcavationRuleSet table_b1() {
  return row_of(load_tables(Date{2026, 3, 2}), ExcavationRules::us_1926);
}

/// Run at the surface, measured on the cut itself.
double setback_ft(ExcavationType type, double depth_ft, std::optional<Duration> open = std::nullopt) {
  const Length depth{depth_ft * 0.3048};
  const double run = least_run_per_rise(table_b1(), type, depth, open)->v;
  const SideProfile side(PitSide{}, run, depth.m);
  const Cut cut = cut_out({0, 1, 0, 1, -depth.m}, {side, side, side, side}, {{-50, 0}, {50, 0}});
  return (cut.top_length_m - 1) / 2 / 0.3048;
}

TEST(PublishedSlope, Cfr1926_TableB1) {
  const Duration day{24 * 3600.0}, longer{24 * 3600.0 + 1};
  EXPECT_NEAR(setback_ft(ExcavationType::a, 10), 7.5, 1e-9);
  EXPECT_NEAR(setback_ft(ExcavationType::a, 12, day), 6.0, 1e-9);
  EXPECT_NEAR(setback_ft(ExcavationType::a, 12), 9.0, 1e-9);  // an unknown time is not a short one
  EXPECT_NEAR(setback_ft(ExcavationType::a, 12, longer), 9.0, 1e-9);
  EXPECT_EQ(least_run_per_rise(table_b1(), ExcavationType::a, 12.1_ft, day)->v, 0.75);
  EXPECT_NEAR(setback_ft(ExcavationType::b, 10), 10, 1e-9);
  EXPECT_NEAR(setback_ft(ExcavationType::c, 8), 12, 1e-9);
}

// App. F (read): deeper than 20 ft a registered engineer designs it.
TEST(PublishedSlope, Cfr1926_DeeperThanTwentyFeet) {
  EXPECT_TRUE(least_run_per_rise(table_b1(), ExcavationType::c, 20_ft));
  EXPECT_FALSE(least_run_per_rise(table_b1(), ExcavationType::c, 20.1_ft));
  EXPECT_FALSE(least_run_per_rise(table_b1(), ExcavationType::c, Length{-1}));
  ExcavationRuleSet none;
  EXPECT_FALSE(least_run_per_rise(none, ExcavationType::c, 1_m));
}

// Arithmetic: 912 ft³ = 33.8 yd³ in the bank.
TEST(PublishedSlope, Arithmetic_PrismoidVolume) {
  const double ft = 0.3048;
  const SideProfile side(PitSide{}, 1.0, 6 * ft);
  const double ft3 = cut_out({0, 8 * ft, 0, 4 * ft, -6 * ft}, {side, side, side, side}, {{-50, 0}, {50, 0}}).volume_m3 /
                     (ft * ft * ft);
  EXPECT_NEAR(ft3, 912, 0.5);
  EXPECT_NEAR(ft3 / 27, 33.8, 0.05);
}

}  // namespace
}  // namespace burrow

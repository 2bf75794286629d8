// Numbers of the excavation tables against the texts that they were read in.
#include <gtest/gtest.h>

#include <cmath>

#include "burrow/file/tables_file.h"
#include "burrow/pit/slope.h"

namespace burrow {
namespace {

using namespace literals;

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}
const ExcavationRuleSet& us() {
  return row_of(tables(), ExcavationRules::us_1926);
}
const ExcavationRuleSet& din() {
  return row_of(tables(), ExcavationRules::din_4124);
}
double duty(std::string_view id) {
  const DutyRow* row = find_duty(din(), id);
  return row ? row->value : NAN;
}

// 29 CFR 1926.652(a)(1): 5 ft; 651(c)(2): 4 ft (read): from that depth on.
TEST(PublishedPits, Cfr1926_FromFiveAndFourFeet) {
  EXPECT_FALSE(protection_needed(us(), 4.99_ft));
  EXPECT_TRUE(protection_needed(us(), 5_ft));
  EXPECT_FALSE(ladder_needed(us(), 3.99_ft));
  EXPECT_TRUE(ladder_needed(us(), 4_ft));
}

// DGUV Information 201-052 s. 4.2.1: "bis 1,25 m"; DGUV Vorschrift 38 s. 31(2): "mehr als 1,25 m" (read).
TEST(PublishedPits, Din4124_AboveOneMetreTwentyFive) {
  EXPECT_FALSE(protection_needed(din(), Length{1.25}));
  EXPECT_TRUE(protection_needed(din(), Length{1.2501}));
  EXPECT_FALSE(ladder_needed(din(), Length{1.25}));
  EXPECT_TRUE(ladder_needed(din(), Length{1.2501}));
  EXPECT_TRUE(protection_needed(din(), Length{NAN}));
  EXPECT_TRUE(protection_needed(us(), Length{NAN}));
}

// DGUV Information 201-052 s. 4.2.3: 45°, 60°, 80° to 5 m; s. 4.3: 0.05 m to 2.0 m, 0.10 m, 0.50 m (read).
TEST(PublishedPits, Din4124_AnglesAndSupports) {
  const auto degrees = [](ExcavationType type) {
    return std::atan(1 / least_run_per_rise(din(), type, 5_m)->v) * 180 / pi;
  };
  EXPECT_NEAR(degrees(ExcavationType::c), 45, 0.05);
  EXPECT_NEAR(degrees(ExcavationType::a), 60, 0.05);
  EXPECT_NEAR(degrees(ExcavationType::stable_rock), 80, 0.05);
  EXPECT_FALSE(least_run_per_rise(din(), ExcavationType::c, Length{5.01}));
  EXPECT_EQ(duty("support-upstand"), 0.05);
  EXPECT_EQ(duty("support-upstand-deep"), 0.10);
  EXPECT_EQ(duty("support-deep-from"), 2.0);
  EXPECT_EQ(duty("shield-below-stiff"), 0.50);
}

// BG BAU H 906: 0.60, 0.70, 0.80, 1.00 m, OD + 0.40 m; DGUV Regel 101-604 s. 3.5.3: 0.50, 0.60 m (read).
TEST(PublishedPits, Din4124_Widths) {
  EXPECT_EQ(duty("width-part-sloped"), 0.60);
  EXPECT_EQ(duty("width-shored"), 0.70);
  EXPECT_EQ(duty("width-to-4"), 0.80);
  EXPECT_EQ(duty("width-deeper"), 1.00);
  EXPECT_EQ(duty("width-beside"), 0.40);
  EXPECT_EQ(duty("room-sloped"), 0.50);
  EXPECT_EQ(duty("room-shored"), 0.60);
}

// Restated (second-hand): berms 1.50 m and 0.60 m wide, every 3.00 m; machines 1.0 m to 12 t, 2.0 m to 40 t.
TEST(PublishedPits, Din4124_BermsAndMachines) {
  EXPECT_EQ(duty("berm"), 1.50);
  EXPECT_EQ(duty("berm-walked"), 0.60);
  EXPECT_EQ(duty("bench-rise"), 3.00);
  EXPECT_EQ(duty("plant-light-distance"), 1.0);
  EXPECT_EQ(duty("plant-heavy-distance"), 2.0);
  EXPECT_EQ(duty("plant-heaviest-kg"), 40e3);
}

}  // namespace
}  // namespace burrow

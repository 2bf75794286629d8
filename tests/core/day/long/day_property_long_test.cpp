// As DayProperty.*, from other seeds.
#include "support/day_property_for_tests.h"

namespace burrow::test {
namespace {

constexpr unsigned from = 100000, days = 5000;

TEST(DayPropertyLong, OurPromise_WorseReadingsNeverMilder) {
  EXPECT_GT(expect_worse_never_milder(from, days), static_cast<int>(days));
}

TEST(DayPropertyLong, OurPromise_FixNearerToALineNeverMilder) {
  EXPECT_GT(expect_nearer_never_milder(from, days), 100);
}

TEST(DayPropertyLong, OurPromise_ContradictionsNeverMilder) {
  expect_contradictions_never_milder(from, days);
}

TEST(DayPropertyLong, OurPromise_LessKnownNeverMilder) {
  expect_less_known_never_milder(from, days);
}

TEST(DayPropertyLong, OurPromise_DangerStays) {
  expect_danger_stays(from, days);
}

}  // namespace
}  // namespace burrow::test

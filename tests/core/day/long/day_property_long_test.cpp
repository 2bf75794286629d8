// As DayProperty.*, from other seeds. BURROW_DAYS and BURROW_SEED give another number and another first seed.
#include <cstdlib>

#include "support/day_property_for_tests.h"

namespace burrow::test {
namespace {

unsigned asked(const char* name, unsigned otherwise) {
  const char* text = std::getenv(name);
  return text ? static_cast<unsigned>(std::strtoul(text, nullptr, 10)) : otherwise;
}
const unsigned from = asked("BURROW_SEED", 100000), days = asked("BURROW_DAYS", 2000);

TEST(DayPropertyLong, OurPromise_WorseReadingsNeverMilder) {
  EXPECT_GT(expect_worse_never_milder(from, days), static_cast<int>(days));
}

TEST(DayPropertyLong, OurPromise_FixNearerToALineNeverMilder) {
  EXPECT_GT(expect_nearer_never_milder(from, days), static_cast<int>(days) / 40);
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

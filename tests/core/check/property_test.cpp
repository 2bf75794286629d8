#include "support/property_for_tests.h"

namespace burrow::test {
namespace {

// Our promise: nothing unknown, unsafe or unsourced looks safe. 2,000 random pairs; 200,000 in `test_check_long`.
TEST(Property, OurPromise_TheVerdictNeverGetsBetterByKnowingLess) {
  expect_no_better(1, 2000);
}

// The drawn crossings are worth judging: each verdict is among them.
TEST(Property, DrawnCrossings_AreOfAllKinds) {
  std::map<Verdict, int> seen;
  for (unsigned seed = 1; seed <= 120; ++seed) ++seen[judged(drawn_crossing(seed)).verdict];
  EXPECT_GT(seen[Verdict::stop], 10);
  EXPECT_GT(seen[Verdict::caution] + seen[Verdict::within_limits], 10);
}

}  // namespace
}  // namespace burrow::test

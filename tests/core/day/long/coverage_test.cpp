// Whether intervals of 90 % hold what they are made from nine times in ten.
#include <gtest/gtest.h>

#include "support/learning_for_tests.h"

namespace burrow::test {
namespace {

// Six hundred sets of constants drawn from the prior, eight bores each: 90 ± 4 % of the intervals hold their constant
// (three standard errors of the count are 3.7 points).
TEST(LearnRecoveryLong, Coverage_SixHundredSets) {
  const Coverage covered = coverage(600, 8, 77);
  RecordProperty("steer", covered.steer);
  RecordProperty("wander", covered.wander);
  RecordProperty("factor", covered.factor);
  for (const int held : {covered.steer, covered.wander, covered.factor})
    EXPECT_NEAR(static_cast<double>(held) / covered.of, 0.90, 0.04);
}

// The rate at which the ground stops tools, by way of records.
TEST(LearnRecoveryLong, Coverage_RefusalSixHundredSets) {
  const RefusalCoverage covered = refusal_coverage(600, 8, 79, true);
  RecordProperty("refusal", covered.held);
  EXPECT_NEAR(static_cast<double>(covered.held) / covered.of, 0.90, 0.04);
}

}  // namespace
}  // namespace burrow::test

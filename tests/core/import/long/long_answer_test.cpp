// Two million answers with bytes changed.

#include "support/mutated_answers.h"

namespace burrow::test {
namespace {

TEST(AnswerLong, Mutated_RefusedOrSound) {
  const Mutated sum = try_mutations(1'000'000, 2'000'000);
  EXPECT_GT(sum.refused, 1'000'000u);
  EXPECT_GT(sum.taken, 50'000u);
}

}  // namespace
}  // namespace burrow::test

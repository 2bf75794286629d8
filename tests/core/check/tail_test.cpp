// Chances of contact, coming too near, daylight and the exit window against brute force, where the steering constant's
// long tail decides. Method: our model; second route: 400,000 trials of each utility alone, refusal off.
#include "support/tail_for_tests.h"

#include "burrow/bore/path_fans.h"

namespace burrow::test {
namespace {

// The trials give 0.38 %, first order 0.07 % and no finding. A chance above one in a thousand is a caution.
TEST(Tail, Trials_DenseSandUnderADuct) {
  const Crossing crossing = dense_sand_under_a_duct();
  const std::vector<BothWays> both = both_ways(crossing);
  const BothWays& contact = both.front();
  RecordProperty("closed", std::to_string(contact.closed));
  RecordProperty("trials", std::to_string(contact.trials));
  EXPECT_GT(contact.trials, 0.001);
  EXPECT_GT(contact.ratio(), 0.75) << contact.closed << " " << contact.trials;
  EXPECT_LT(contact.ratio(), 1.35) << contact.closed << " " << contact.trials;
  EXPECT_TRUE(find(judged(crossing), "utility.contact", "u1"));
}

// Twelve crossings here, two hundred in the long run.
TEST(Tail, Trials_TwelveCrossings) {
  RatioRange range;
  for (std::uint32_t seed = 0; seed < 12; ++seed)
    for (const BothWays& both : both_ways(tail_crossing(seed))) {
      range.take(both);
      if (!both.counts()) continue;
      EXPECT_GT(both.ratio(), 0.75) << seed << " " << both.what << " " << both.closed << " " << both.trials;
      EXPECT_LT(both.ratio(), 1.35) << seed << " " << both.what << " " << both.closed << " " << both.trials;
    }
  EXPECT_GT(range.compared, 40);
  RecordProperty("least", std::to_string(range.least));
  RecordProperty("most", std::to_string(range.most));
}

}  // namespace
}  // namespace burrow::test

// Foreign files: what was kept and found, tried again in each run, and a few seeded changes of it.

#include <gtest/gtest.h>

#include "import_seeded.h"

namespace burrow::test {
namespace {

class ImportFuzz : public ::testing::TestWithParam<Try> {};

TEST_P(ImportFuzz, KeptAndFound_AreRefusedInWordsOrHold) {
  const std::vector<std::string> seeds = import_seeds_of(GetParam());
  const long before = import_accepted();
  for (const std::string& text : seeds) expect_right(GetParam(), text);
  EXPECT_GT(import_accepted(), before);
}

TEST_P(ImportFuzz, Seeded_RefusedInWordsOrHold) {
  import_seeded_run(GetParam(), 400, 1);
}

INSTANTIATE_TEST_SUITE_P(Each, ImportFuzz, ::testing::ValuesIn(import_tries().begin(), import_tries().end()),
                         [](const auto& one) { return std::string(one.param.name); });

// The same seed gives the same text; some of what it makes is read, some refused.
TEST(LineMutator, Seeded_MakesTextsThatAreRead) {
  const Try& one = import_try_of("survey");
  const std::vector<std::string> seeds = import_seeds_of(one);
  const LineMutator mutator(seeds);
  const long before = import_accepted();
  for (unsigned seed = 0; seed < 200; ++seed) {
    const std::string text = mutator.mutate(seeds[seed % seeds.size()], seed);
    EXPECT_EQ(mutator.mutate(seeds[seed % seeds.size()], seed), text);
    expect_right(one, text);
  }
  EXPECT_GT(import_accepted() - before, 20);
  EXPECT_LT(import_accepted() - before, 200);
}

}  // namespace
}  // namespace burrow::test

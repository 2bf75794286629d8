// What the coverage-guided fuzzers kept and found, tried again in each run, and a few seeded changes of it.

#include "seeded_run.h"

namespace burrow::test {
namespace {

class FuzzReplay : public ::testing::TestWithParam<Try> {};

TEST_P(FuzzReplay, KeptAndFound_AreRefusedInWordsOrHold) {
  const std::vector<std::string> seeds = seeds_of(GetParam());
  ASSERT_FALSE(seeds.empty());
  for (const std::string& text : seeds) expect_right(GetParam(), text);
}

TEST_P(FuzzReplay, Seeded_RefusedInWordsOrHold) {
  seeded_run(GetParam(), GetParam().name == "assess" ? 60 : 300, 1);
}

INSTANTIATE_TEST_SUITE_P(Each, FuzzReplay, ::testing::ValuesIn(all_tries().begin(), all_tries().end()),
                         [](const auto& one) { return std::string(one.param.name); });

// The mutator is worth its name: the same seed gives the same text, and some of what it makes is read, some refused.
TEST(FormatMutator, Seeded_MakesTextsThatAreRead) {
  const Try& one = try_of("crossing");
  const std::vector<std::string> seeds = seeds_of(one);
  const FormatMutator mutator = mutator_of(one, seeds);
  const long before = accepted();
  int differ = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const std::string text = mutated(one, mutator, seeds[0], seed);
    EXPECT_EQ(mutated(one, mutator, seeds[0], seed), text);
    differ += text != mutated(one, mutator, seeds[0], seed + 1000);
    expect_right(one, text);
  }
  EXPECT_GT(differ, 190);
  EXPECT_GT(accepted() - before, 20);
  EXPECT_LT(accepted() - before, 200);
}

TEST(FuzzTries, NoJson_IsRefusedInWords) {
  for (const Try& one : all_tries()) {
    const long before = accepted();
    for (const char* text : {"", "{", "[]", "\xff", "soils.json\n{", "nothing.json\n[]"}) EXPECT_EQ(one.run(text), "");
    EXPECT_EQ(accepted(), before) << one.name;
  }
}

}  // namespace
}  // namespace burrow::test

// The long runs: hours are not needed, but more than a person waits for.

#include "fuzz/reader_fuzz.h"
#include "fuzz/seeded_run.h"
#include "support/kill_during_save.h"

namespace burrow::test {
namespace {

TEST(LongReaderFuzz, Seeded_RefusesOrRoundTrips) {
  for (unsigned seed = 2; seed < 42; ++seed) fuzz_reader(5000, seed);
}

// 100,000 each, by the mutator that knows the format. With clang there are the fuzzers of tests/fuzz/run, which see
// where they get.
class LongFuzz : public ::testing::TestWithParam<Try> {};

TEST_P(LongFuzz, Seeded_RefusedInWordsOrHold) {
  for (unsigned seed = 100; seed < 200; ++seed) seeded_run(GetParam(), 1000, seed);
}

INSTANTIATE_TEST_SUITE_P(Each, LongFuzz, ::testing::ValuesIn(all_tries().begin(), all_tries().end()),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(LongKillDuringSave, Seeded_LosesNothing) {
  kill_during_save(2000, 2);
}

}  // namespace
}  // namespace burrow::test

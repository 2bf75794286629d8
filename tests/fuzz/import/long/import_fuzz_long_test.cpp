// 100,000 changed texts of each kind of foreign file.

#include "fuzz/import/import_seeded.h"

namespace burrow::test {
namespace {

class ImportFuzzLong : public ::testing::TestWithParam<Try> {};

TEST_P(ImportFuzzLong, Seeded_RefusedInWordsOrHold) {
  for (unsigned seed = 100; seed < 200; ++seed) import_seeded_run(GetParam(), 1000, seed);
}

INSTANTIATE_TEST_SUITE_P(Each, ImportFuzzLong, ::testing::ValuesIn(import_tries().begin(), import_tries().end()),
                         [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace burrow::test

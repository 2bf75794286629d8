// The long runs: hours are not needed, but more than a person waits for.

#include "core/file/kill_during_save.h"
#include "fuzz/reader_fuzz.h"

namespace burrow::test {
namespace {

TEST(LongReaderFuzz, Seeded_RefusesOrRoundTrips) {
  for (unsigned seed = 2; seed < 42; ++seed) fuzz_reader(5000, seed);
}

TEST(LongKillDuringSave, Seeded_LosesNothing) {
  kill_during_save(2000, 2);
}

}  // namespace
}  // namespace burrow::test

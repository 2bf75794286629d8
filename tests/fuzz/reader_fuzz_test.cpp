// A short seeded run for every day; the long one has the label `long`.

#include "reader_fuzz.h"

namespace burrow::test {
namespace {

TEST(ReaderFuzz, Seeded_RefusesOrRoundTrips) {
  fuzz_reader(1500, 1);
}

}  // namespace
}  // namespace burrow::test

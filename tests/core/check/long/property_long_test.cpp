#include "support/property_for_tests.h"

namespace burrow::test {
namespace {

// As Property.OurPromise_…, from other seeds.
TEST(PropertyLong, OurPromise_TwoHundredThousandPairs) {
  expect_no_better(100000, 200000);
}

}  // namespace
}  // namespace burrow::test

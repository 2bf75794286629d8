// Stability number of a pit floor in clay.
#include <gtest/gtest.h>

#include "burrow/pit/floor_heave.h"

namespace burrow {
namespace {

// Skempton 1951 as quoted by Smith, Elements of Soil Mechanics, ch. 8 (second-hand): N_c has a limiting value of
// 7.5 (1 + 0.2 B/L), reached where the depth is more than 2.5 widths. Strip 7.5, two by one 8.25, square 9.0.
TEST(PublishedStabilityNumber, Skempton1951_LimitingValue) {
  for (const double depth : {2.5, 4.0, 20.0}) {
    EXPECT_NEAR(stability_number(Length{depth}, Length{1}, Length{1e9}), 7.5, 1e-6);
    EXPECT_NEAR(stability_number(Length{depth}, Length{1}, Length{2}), 8.25, 1e-12);
    EXPECT_NEAR(stability_number(Length{depth}, Length{1}, Length{1}), 9.0, 1e-12);
  }
  EXPECT_LT(stability_number(Length{2.49}, Length{1}, Length{1}), 9.0);
}

// Prandtl 1921: 2 + π under a strip at the surface (exact theory); Skempton's 5 stands a little on the safe side of it.
TEST(PublishedStabilityNumber, Prandtl_StripAtTheSurfaceIsSafe) {
  EXPECT_LT(stability_number(Length{0}, Length{1}, Length{1e9}), 2 + pi);
  EXPECT_NEAR(stability_number(Length{0}, Length{1}, Length{1e9}), 2 + pi, 0.15);
}

}  // namespace
}  // namespace burrow

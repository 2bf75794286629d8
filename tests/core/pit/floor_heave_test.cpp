#include "burrow/pit/floor_heave.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace burrow {
namespace {

// Skempton 1951 (from memory): strip at the surface 5, square at the surface 6, square at depth 9, strip at depth 7.5.
TEST(PublishedBaseHeave, Skempton1951_KnownEnds) {
  EXPECT_NEAR(stability_number(Length{0}, Length{1}, Length{1e9}), 5, 1e-6);
  EXPECT_NEAR(stability_number(Length{0}, Length{1}, Length{1}), 6, 1e-12);
  EXPECT_NEAR(stability_number(Length{10}, Length{1}, Length{1}), 9, 1e-12);
  EXPECT_NEAR(stability_number(Length{10}, Length{1}, Length{1e9}), 7.5, 1e-6);
}

/// Second route: a strip load on clay slips on a circle through its far edge, the centre above its near edge: resisting
/// moment s_u · arc · radius over load · width²/2, the least over all heights of the centre. 5.52 (Fellenius).
double fellenius(double width) {
  double least = 1e300;
  for (double up = 0; up < 2 * width; up += 0.001 * width) {  // centre above the edge
    const double radius = std::hypot(width, up), half_angle = std::atan2(width, up);
    least = std::min(least, 2 * half_angle * radius * radius / (width * width / 2));
  }
  return least;
}

// The published number for a strip at the surface lies within a tenth of that bound.
TEST(FloorHeave, SecondRoute_SlipCircle) {
  EXPECT_NEAR(fellenius(1.0), 5.52, 0.01);
  EXPECT_LT(stability_number(Length{0}, Length{1}, Length{1e9}), fellenius(1.0));
  EXPECT_GT(stability_number(Length{0}, Length{1}, Length{1e9}), 0.9 * fellenius(1.0));
}

TEST(FloorHeave, Property_StrongerAndLessLoadedIsSafer) {
  const FloorLoad load{Length{2}, Length{1}, Length{2}, Pressure{8e3}, Pressure{32e3}, Pressure{0}};
  FloorLoad stronger = load, loaded = load;
  stronger.strength = Pressure{16e3};
  loaded.surcharge = Pressure{10e3};
  EXPECT_NEAR(base_heave_safety(load), 1.925, 1e-12);
  EXPECT_NEAR(base_heave_safety(stronger), 3.85, 1e-12);
  EXPECT_LT(base_heave_safety(loaded), base_heave_safety(load));
}

}  // namespace
}  // namespace burrow

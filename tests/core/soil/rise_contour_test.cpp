#include "burrow/soil/rise_contour.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "burrow/soil/movement.h"

namespace burrow {
namespace {

// Second route: the surface rises by exactly that much there.
TEST(RiseContour, SurfaceRise_IsTheLevelThere) {
  const OpenedHole hole{Length{0.065}, Length{1.3}, Ratio{0.8}};
  const Length crest = *surface_rise(hole, Length{0});
  for (const double share : {0.1, 0.5, 0.9}) {
    const auto half = half_width_where(crest, hole.axis_depth, Length{share * crest.m});
    ASSERT_TRUE(half);
    EXPECT_NEAR(surface_rise(hole, *half)->m, share * crest.m, 1e-12);
  }
}

// Half of the crest stands at x = h (Sagaseta 1987, from memory).
TEST(RiseContour, Sagaseta1987_HalfAtTheDepth) {
  EXPECT_NEAR(half_width_where(Length{0.004}, Length{1.3}, Length{0.002})->m, 1.3, 1e-12);
}

TEST(RiseContour, Range_NothingWhereItDoesNotRiseSoMuch) {
  EXPECT_EQ(half_width_where(Length{0.004}, Length{1.3}, Length{0.004})->m, 0);
  EXPECT_FALSE(half_width_where(Length{0.004}, Length{1.3}, Length{0.0041}));
  EXPECT_FALSE(half_width_where(Length{0.004}, Length{1.3}, Length{0}));
  EXPECT_FALSE(half_width_where(Length{std::numeric_limits<double>::quiet_NaN()}, Length{1.3}, Length{0.001}));
}

}  // namespace
}  // namespace burrow

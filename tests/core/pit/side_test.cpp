#include "burrow/pit/side.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

PitSide side_of(SideKind kind) {
  PitSide side;
  side.kind = Given<SideKind>::enter(kind);
  return side;
}

TEST(PitSide, UprightKinds_NoRun) {
  for (const SideKind kind : {SideKind::upright, SideKind::shored, SideKind::shielded})
    EXPECT_EQ(SideProfile(side_of(kind), 1.5, 3).run_at(2.9), 0);
  EXPECT_TRUE(std::isinf(SideProfile(side_of(SideKind::shored), 1.5, 3).height_at(0.01)));
}

TEST(PitSide, Sloped_UprightLowerPartThenSlope) {
  PitSide side = side_of(SideKind::sloped);
  side.upright = Length{0.9};
  const SideProfile profile(side, 1.5, 3);
  EXPECT_EQ(profile.run_at(0.9), 0);
  EXPECT_NEAR(profile.run_at(1.9), 1.5, 1e-12);
  EXPECT_NEAR(profile.height_at(1.5), 1.9, 1e-12);
  side.run_per_rise = Ratio{0.5};
  EXPECT_NEAR(SideProfile(side, 1.5, 3).run_at(1.9), 0.5, 1e-12);  // typed wins
}

TEST(PitSide, Benched_LastStepGoesOn) {
  PitSide side = side_of(SideKind::benched);
  side.benches = {{Length{1.0}, Length{0.5}, {}, ""}, {Length{0.6}, Length{0.8}, {}, ""}};
  const SideProfile profile(side, 1.5, 3);
  EXPECT_EQ(profile.run_at(1.0), 0);
  EXPECT_NEAR(profile.run_at(1.01), 0.5, 1e-12);
  EXPECT_NEAR(profile.run_at(1.61), 1.3, 1e-12);
  EXPECT_NEAR(profile.run_at(2.21), 2.1, 1e-12);
  EXPECT_NEAR(profile.height_at(0.3), 1.0, 1e-12);
}

TEST(PitSide, BenchedWithoutBenches_FourFootSteps) {
  const SideProfile profile(side_of(SideKind::benched), 1.0, 3);
  EXPECT_EQ(profile.run_at(1.2), 0);
  EXPECT_NEAR(profile.run_at(1.22), 2 * 1.2192, 1e-12);  // the next edge, two steps up, lies on the slope
  EXPECT_NEAR(profile.run_at(2.44), 3 * 1.2192, 1e-12);
}

TEST(PitSide, Benched_FaceWithASlope) {
  PitSide side = side_of(SideKind::benched);
  side.benches = {{Length{3.0}, Length{1.5}, Ratio{0.5}, ""}};
  const SideProfile profile(side, 1.5, 5);
  EXPECT_NEAR(profile.run_at(2.0), 1.0, 1e-12);
  EXPECT_NEAR(profile.run_at(3.0), 1.5, 1e-12);
  EXPECT_NEAR(profile.run_at(4.0), 1.5 + 1.5 + 0.5, 1e-12);
  EXPECT_NEAR(profile.height_at(2.5), 3.0, 1e-12);
}

TEST(PitSide, TinyBench_StaysFinite) {
  PitSide side = side_of(SideKind::benched);
  side.benches = {{Length{1e-9}, Length{0.5}, {}, ""}};
  EXPECT_LT(SideProfile(side, 1.5, 3).pieces().size(), 500U);
}

}  // namespace
}  // namespace burrow

#include "burrow/pit/cut.h"

#include <gtest/gtest.h>

#include <cmath>

namespace burrow {
namespace {

PitSide sloped(double run, double upright = 0) {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::sloped);
  side.run_per_rise = Ratio{run};
  if (upright > 0) side.upright = Length{upright};
  return side;
}
PitSide shored() {
  return shored_side();
}
PitSide benched() {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::benched);
  side.benches = {{Length{0.8}, Length{0.7}, {}, ""}};
  return side;
}
CutSides sides(const PitSide& low, const PitSide& high, const PitSide& left, const PitSide& right) {
  return {SideProfile(low, 1, 8), SideProfile(high, 1, 8), SideProfile(left, 1, 8), SideProfile(right, 1, 8)};
}

/// Second route: columns of ground on a fine mesh; a column is cut where it stands over the floor or behind a side.
double by_mesh(const FloorRectangle& floor, const CutSides& s, const LevelLine& ground, double step) {
  double volume = 0;
  for (double x = floor.from_m - 12 + step / 2; x < floor.to_m + 12; x += step) {
    const double surface = elevation_at(ground, x) - floor.elevation_m;
    const double end = x < floor.from_m ? s.low.height_at(floor.from_m - x)
                       : x > floor.to_m ? s.high.height_at(x - floor.to_m)
                                        : 0;
    if (!(surface > end)) continue;
    for (double y = floor.right_m - 12 + step / 2; y < floor.left_m + 12; y += step) {
      const double flank = y < floor.right_m  ? s.right.height_at(floor.right_m - y)
                           : y > floor.left_m ? s.left.height_at(y - floor.left_m)
                                              : 0;
      volume += step * step * std::max(surface - std::max(end, flank), 0.0);
    }
  }
  return volume;
}

// Arithmetic: floor 8 × 4 ft, 6 ft deep, 1 : 1 on all sides; 912 ft³.
TEST(Cut, Prismoid_Volume) {
  const double ft = 0.3048;
  const FloorRectangle floor{0, 8 * ft, -2 * ft, 2 * ft, -6 * ft};
  const Cut cut = cut_out(floor, sides(sloped(1), sloped(1), sloped(1), sloped(1)), {{-10, 0}, {20, 0}});
  EXPECT_NEAR(cut.volume_m3 / (ft * ft * ft), 912, 1e-9);
  EXPECT_NEAR(cut.depth_m, 6 * ft, 1e-12);
  EXPECT_NEAR(cut.top_length_m, 20 * ft, 1e-9);
  EXPECT_NEAR(cut.top_width_m, 16 * ft, 1e-9);
}

TEST(Cut, ShoredBox_IsABox) {
  const FloorRectangle floor{-2.2, 0, -0.45, 0.45, 100};
  const Cut cut = cut_out(floor, sides(shored(), shored(), shored(), shored()), {{-5, 101.4}, {5, 101.4}});
  EXPECT_NEAR(cut.volume_m3, 2.2 * 0.9 * 1.4, 1e-12);
  ASSERT_EQ(cut.section.size(), 4U);
  EXPECT_EQ(cut.section[0], (LevelPoint{-2.2, 101.4}));
  EXPECT_EQ(cut.section[1], (LevelPoint{-2.2, 100}));
  EXPECT_EQ(cut.section[3], (LevelPoint{0, 101.4}));
  EXPECT_TRUE(inside(cut.footprint, -1, 0));
  EXPECT_FALSE(inside(cut.footprint, 0.1, 0));
}

const LevelLine rolling{{-6, 101.2}, {-3.1, 101.9}, {-1.3, 101.5}, {0.7, 102.3}, {4, 101.6}, {9, 101.9}};

TEST(Cut, Mesh_VolumeOfSlopesInRollingGround) {
  const FloorRectangle floor{-2.3, 0.1, -0.5, 0.6, 100.2};
  const CutSides s = sides(sloped(1.5), sloped(0.75), sloped(1.0), sloped(1.5));
  const double exact = cut_out(floor, s, rolling).volume_m3;
  EXPECT_NEAR(by_mesh(floor, s, rolling, 0.01), exact, 2e-4 * exact);
}

TEST(Cut, Mesh_VolumeWithUprightLowerParts) {
  const FloorRectangle floor{-2.3, 0.1, -0.5, 0.6, 100.2};
  const CutSides s = sides(sloped(1.5, 0.5), shored(), sloped(1.0, 0.9), sloped(1.5));
  const double exact = cut_out(floor, s, rolling).volume_m3;
  EXPECT_NEAR(by_mesh(floor, s, rolling, 0.01), exact, 5e-4 * exact);
}

TEST(Cut, Mesh_VolumeWithBenches) {
  const FloorRectangle floor{-2.3, 0.1, -0.5, 0.6, 100.2};
  const CutSides s = sides(benched(), shored(), benched(), sloped(1.5));
  const double exact = cut_out(floor, s, rolling).volume_m3;
  EXPECT_NEAR(by_mesh(floor, s, rolling, 0.01), exact, 5e-3 * exact);
}

// Limit: the outline at the surface lies where sides and ground meet.
TEST(Cut, Footprint_CornersOfASlopedPit) {
  const FloorRectangle floor{0, 2, -0.5, 0.5, 0};
  const Cut cut = cut_out(floor, sides(sloped(1.5), shored(), sloped(1), sloped(0.5)), {{-20, 2}, {20, 2}});
  double west = 1e9, east = -1e9, south = 1e9, north = -1e9;
  for (const PlanPoint& p : cut.footprint) {
    west = std::min(west, p.x_m);
    east = std::max(east, p.x_m);
    south = std::min(south, p.y_m);
    north = std::max(north, p.y_m);
  }
  EXPECT_NEAR(west, -3, 1e-9);
  EXPECT_NEAR(east, 2, 1e-9);
  EXPECT_NEAR(south, -1.5, 1e-6);
  EXPECT_NEAR(north, 2.5, 1e-6);
  EXPECT_EQ(cut.section.front(), (LevelPoint{-3, 2}));
}

// A floor above the ground cuts nothing and does not break.
TEST(Cut, FloorAboveGround_Nothing) {
  const FloorRectangle floor{0, 2, -0.5, 0.5, 3};
  const Cut cut = cut_out(floor, sides(sloped(1), sloped(1), sloped(1), sloped(1)), {{-5, 2}, {5, 2}});
  EXPECT_EQ(cut.volume_m3, 0);
  EXPECT_EQ(cut.depth_m, 0);
}

}  // namespace
}  // namespace burrow

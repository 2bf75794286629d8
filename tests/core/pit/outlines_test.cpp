// Lines of a pit for its pictures: against sections and corners by hand, and against the area of the exact solid.

#include "burrow/pit/outlines.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/pit/cut.h"
#include "burrow/pit/plan_overlap.h"
#include "burrow/pit/solid.h"

namespace burrow {
namespace {

PitSide sloped(double run_per_rise, double upright_m = 0) {
  PitSide side;
  side.kind.set(SideKind::sloped);
  side.run_per_rise = Ratio{run_per_rise};
  if (upright_m > 0) side.upright = Length{upright_m};
  return side;
}

PitShape shape_with(const PitSide& low, const PitSide& high, const PitSide& left, const PitSide& right,
                    const LevelLine& ground) {
  PitShape shape;
  shape.floor_from_m = 0;
  shape.floor_to_m = 3;
  shape.floor_right_m = -0.5;
  shape.floor_left_m = 0.7;
  shape.floor_elevation_m = 98;
  shape.sides = {SideProfile(low, 1, 10), SideProfile(high, 1, 10), SideProfile(left, 1, 10),
                 SideProfile(right, 1, 10)};
  const Cut cut = cut_out({0, 3, -0.5, 0.7, 98}, shape.sides, ground);
  shape.section = cut.section;
  shape.footprint = cut.footprint;
  return shape;
}

double area_of(const LevelLine& line) {
  double sum = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const LevelPoint &a = line[i], &b = line[(i + 1) % line.size()];
    sum += a.station_m * b.elevation_m - b.station_m * a.elevation_m;
  }
  return std::abs(sum) / 2;
}

// By hand: 2 m deep, left 1 : 1 above 0.5 m upright, right 1.5 : 1. Area 2·1.2 + 1.5²/2 + 1.5·2²/2 = 6.525 m².
TEST(PitOutlines, Section_ByHand) {
  const LevelLine ground{{-10, 100}, {10, 100}};
  const PitShape shape = shape_with(sloped(1), shored_side(), sloped(1, 0.5), sloped(1.5), ground);
  const LevelLine line = cross_section(shape, ground, 1.5);
  EXPECT_NEAR(area_of(line), 2 * 1.2 + 1.5 * 1.5 / 2 + 1.5 * 4 / 2, 1e-12);
  EXPECT_NEAR(line.front().station_m, -0.5 - 3, 1e-12);
  EXPECT_NEAR(line.back().station_m, 0.7 + 1.5, 1e-12);
  EXPECT_EQ(line.front().elevation_m, 100);
  EXPECT_EQ(line.back().elevation_m, 100);
  EXPECT_TRUE(cross_section(shape, {{-10, 97}, {10, 97}}, 1.5).empty());
}

// Second route: the exact solid of a short piece of the floor, on sloping ground, between upright ends.
TEST(PitOutlines, Section_AreaOfTheSolid) {
  const LevelLine ground{{-10, 99.2}, {1, 100.1}, {10, 100.9}};
  PitSide benched;
  benched.kind.set(SideKind::benched);
  benched.benches = {{Length{0.6}, Length{0.4}, {}, {}}, {Length{0.7}, Length{0.5}, {}, {}}};
  const PitShape shape = shape_with(shored_side(), shored_side(), benched, sloped(0.75, 0.3), ground);
  for (const double x : {0.4, 1.7, 2.6}) {
    const double half = 1e-4;
    const Cut slice = cut_out({x - half, x + half, -0.5, 0.7, 98}, shape.sides, ground);
    EXPECT_NEAR(area_of(cross_section(shape, ground, x)), slice.volume_m3 / (2 * half), 1e-6) << x;
  }
}

// The same on surveyed ground: the section's area is the volume of a thin slice of the body, and its ends lie on the
// ground; corners at the surface too.
TEST(PitOutlines, Section_OnSurveyedGround) {
  const LevelLine ground{{-10, 99.2}, {1, 100.1}, {10, 100.9}};
  PitShape shape = shape_with(shored_side(), shored_side(), sloped(1), sloped(0.75, 0.3), ground);
  shape.floor = {{0, -0.5}, {3, -0.5}, {3, 0.7}, {0, 0.7}};
  shape.ground = GroundSurface(ground, {{-4, 5, 101}, {2, 3, 100.9}, {5, 6, 101.5}, {1, -4, 99.1}, {7, -3, 100.2}});
  const std::vector<SolidPiece> body = dig_out(floor_of(shape), shape.ground);
  for (const double x : {0.4, 1.7, 2.6}) {
    const LevelLine section = cross_section(shape, ground, x);
    ASSERT_GT(section.size(), 4u);
    for (const LevelPoint& end : {section.front(), section.back()})
      EXPECT_NEAR(end.elevation_m, shape.ground.height_at(x, end.station_m), 1e-5);
    LevelLine closed = section;  // the ground above it, from left to right
    const LevelLine above = shape.ground.along({x, section.back().station_m}, {x, section.front().station_m});
    for (const LevelPoint& p : above) closed.push_back({section.back().station_m - p.station_m, p.elevation_m});
    constexpr double half = 1e-4;
    std::vector<SolidPiece> slice;
    for (const SolidPiece& piece : body)
      if (overlap_area(piece.outline, {{x - half, -50}, {x + half, -50}, {x + half, 50}, {x - half, 50}}) > 0)
        slice.push_back(piece);
    double volume = 0;
    for (double y = -4; y < 5; y += 0.001)
      for (const SolidPiece& piece : slice)
        if (inside(piece.outline, x, y + 0.0005))
          volume += 0.001 * (piece.ground.at(x, y + 0.0005) - piece.bottom.at(x, y + 0.0005));
    EXPECT_NEAR(area_of(closed), volume, 2e-3) << x;
  }
  const std::vector<PitRing> rings = pit_rings(shape, ground);
  for (const Point3& corner : rings.back())
    EXPECT_NEAR(corner.z_m, shape.ground.height_at(corner.x_m, corner.y_m), 1e-6);
}

TEST(PitOutlines, Rings_FloorBendsSurface) {
  const LevelLine ground{{-10, 99.5}, {10, 100.5}};
  const PitShape shape = shape_with(sloped(1, 0.6), shored_side(), sloped(1), sloped(1.5), ground);
  const std::vector<PitRing> rings = pit_rings(shape, ground);
  ASSERT_EQ(rings.size(), 3u) << "floor, top of the upright part, surface";
  EXPECT_EQ(rings[0][0], (Point3{0, -0.5, 98}));
  EXPECT_EQ(rings[0][2], (Point3{3, 0.7, 98}));
  EXPECT_NEAR(rings[1][0].x_m, 0, 1e-6);
  EXPECT_NEAR(rings[1][0].y_m, -0.5 - 1.5 * 0.6, 1e-6);
  EXPECT_NEAR(rings[1][0].z_m, 98.6, 1e-12);
  // Each corner at the surface lies on the ground and on the outline of the exact cut.
  for (const Point3& corner : rings.back()) {
    EXPECT_NEAR(corner.z_m, elevation_at(ground, corner.x_m), 1e-9);
    double nearest = 1e9;
    for (const PlanPoint& p : shape.footprint)
      nearest = std::min(nearest, std::hypot(p.x_m - corner.x_m, p.y_m - corner.y_m));
    EXPECT_LT(nearest, 1e-6) << corner.x_m << ' ' << corner.y_m;
  }
}

// A bench gives two rings at one height: its inner and its outer edge.
TEST(PitOutlines, Rings_Benches) {
  const LevelLine ground{{-10, 99.5}, {10, 99.5}};
  PitSide benched;
  benched.kind.set(SideKind::benched);
  benched.benches = {{Length{0.6}, Length{0.4}, {}, {}}, {Length{2.0}, Length{0.5}, {}, {}}};
  const PitShape shape = shape_with(shored_side(), shored_side(), benched, shored_side(), ground);
  const std::vector<PitRing> rings = pit_rings(shape, ground);
  ASSERT_EQ(rings.size(), 4u);
  EXPECT_NEAR(rings[1][3].y_m, 0.7, 1e-6);
  EXPECT_NEAR(rings[2][3].y_m, 1.1, 1e-6);
  EXPECT_NEAR(rings[1][3].z_m, rings[2][3].z_m, 1e-12);
  EXPECT_NEAR(rings[3][3].y_m, 1.1, 1e-6);
  EXPECT_NEAR(rings[3][3].z_m, 99.5, 1e-12);
}

}  // namespace
}  // namespace burrow

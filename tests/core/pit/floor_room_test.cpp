// Room on a floor: arithmetic on rectangles and outlines.

#include "burrow/pit/floor_room.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

/// A launch pit, or an exit pit at station 10, by corners from the face into the pit.
PitShape pit(const PlanLine& floor, bool launch = true) {
  PitShape shape;
  shape.bore_side_high = launch;
  shape.face_station_m = launch ? 0 : 10;
  for (const PlanPoint& p : floor) shape.floor.push_back({shape.face_station_m + (launch ? -p.x_m : p.x_m), p.y_m});
  return shape;
}

FloorRoom room(const PitShape& shape, double axis) {
  return floor_room(shape, Length{axis}, Length{1.2}, Length{0.1});
}

const PlanLine rectangle{{0, -0.5}, {2, -0.5}, {2, 0.5}, {0, 0.5}};

TEST(FloorRoom, Rectangle_ItsLengthAndWidth) {
  for (const bool launch : {true, false})
    for (const double axis : {0.0, 0.3, -0.44}) {
      const FloorRoom found = room(pit(rectangle, launch), axis);
      EXPECT_NEAR(found.length_m, 2, 1e-6) << axis;
      EXPECT_NEAR(found.width_m, 1, 1e-6) << axis;
    }
}

TEST(FloorRoom, BesideAnEdge_TwiceTheWayToIt) {
  EXPECT_NEAR(room(pit(rectangle), 0.48).width_m, 0.04, 1e-6);
  EXPECT_EQ(room(pit(rectangle), 0.5).length_m, 0);  // along the edge
  EXPECT_EQ(room(pit(rectangle), 0.7).length_m, 0);
  EXPECT_EQ(room(pit(rectangle), 0.7).width_m, 0);
}

TEST(FloorRoom, AwayFromTheFace_None) {
  EXPECT_EQ(room(pit({{0.1, -0.5}, {2, -0.5}, {2, 0.5}, {0.1, 0.5}}), 0).length_m, 0);
  EXPECT_NEAR(room(pit({{-0.1, -0.5}, {2, -0.5}, {2, 0.5}, {-0.1, 0.5}}), 0).length_m, 2, 1e-6);
}

TEST(FloorRoom, Outline_UpToItsWallAndAtItsWaist) {
  const PlanLine l_shape{{0, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {3, 0.5}, {3, 3}, {0, 3}};
  EXPECT_NEAR(room(pit(l_shape), 0).length_m, 0.5, 1e-6);
  EXPECT_NEAR(room(pit(l_shape), 0).width_m, 3.5, 1e-6);
  EXPECT_NEAR(room(pit(l_shape), 1.5).length_m, 3, 1e-6);
  EXPECT_NEAR(room(pit(l_shape), 1.5).width_m, 2.5, 1e-5);
  const PlanLine waist{{0, -0.5}, {0.6, -0.2}, {1.2, -0.5}, {2, -0.5}, {2, 0.5}, {0, 0.5}};
  EXPECT_NEAR(room(pit(waist), 0).width_m, 0.7, 1e-5);
  EXPECT_NEAR(room(pit(waist, false), 0).width_m, 0.7, 1e-5);
}

TEST(FloorRoom, NoFloor_NoRoom) {
  EXPECT_EQ(room(PitShape{}, 0).length_m, 0);
}

}  // namespace
}  // namespace burrow

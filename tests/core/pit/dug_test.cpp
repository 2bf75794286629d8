// Digging with shared lists of corners and an index against digging as it was before (`slow_solid.h`): not one bit may
// differ, wherever the pit stands, however its sides stand and whatever the ground is like.

#include <gtest/gtest.h>

#include "burrow/pit/outlines.h"
#include "grounds_for_tests.h"
#include "slow_edge.h"

namespace burrow::test {
namespace {

bool same(const SolidPiece& a, const SolidPiece& b) {
  const auto alike = [](const GroundPlane& p, const GroundPlane& q) { return p.a == q.a && p.b == q.b && p.c == q.c; };
  return a.outline == b.outline && alike(a.ground, b.ground) && alike(a.bottom, b.bottom);
}

SideProfile sloped(double run, double upright = 0) {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::sloped);
  side.run_per_rise = Ratio{run};
  if (upright > 0) side.upright = Length{upright};
  return {side, run, 30};
}
SideProfile benched() {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::benched);
  side.benches = {{Length{0.8}, Length{0.7}, {}, ""}};
  return {side, 1, 30};
}

/// Sides taken in turn over the edges.
std::vector<std::vector<SideProfile>> side_sets() {
  const SideProfile upright;
  return {{sloped(1.5), sloped(0.75), sloped(1.0)},
          {sloped(1.5, 0.5), upright, sloped(1.0, 0.9), sloped(1.5)},
          {benched(), upright, sloped(0.5)},
          {upright},
          {sloped(2.0)}};
}

std::vector<PlanLine> floors() {
  return {{{-2.3, -0.5}, {0.1, -0.5}, {0.1, 0.6}, {-2.3, 0.6}},
          {{0, -0.4}, {1.2, -1.1}, {2.6, -0.2}, {2.2, 0.9}, {0.7, 1.2}},
          {{-1, -0.8}, {2, -0.8}, {2, 0.2}, {0.5, 0.2}, {0.5, 1.4}, {-1, 1.4}}};
}

/// Calls `look` with floor, ground and the body dug the slow way.
template <class Look>
void each_pit(unsigned from_seed, unsigned to_seed, const Look& look) {
  const auto sets = side_sets();
  for (const GroundKind kind : all_ground_kinds)
    for (unsigned seed = from_seed; seed < to_seed; ++seed) {
      const std::vector<Point3> points = points_of(kind, seed);
      const GroundSurface ground(rolling_line, points);
      const slow::SlowSurface slow_ground(rolling_line, points);
      std::size_t turn = seed;
      for (PlanLine corners : floors()) {
        // Also so that its edge runs through a surveyed point.
        const double along = seed % 3 == 2 ? points.front().x_m - corners.front().x_m : 0.83 * (seed % 7);
        for (PlanPoint& p : corners) p.x_m += along;
        const std::vector<SideProfile>& sides = sets[turn++ % sets.size()];
        PitFloor floor{std::move(corners), {}, 100.4 - 0.3 * (seed % 3)};
        for (std::size_t i = 0; i < floor.corners.size(); ++i) floor.sides.push_back(&sides[i % sides.size()]);
        SCOPED_TRACE(testing::Message() << "ground " << static_cast<int>(kind) << " seed " << seed << " corners "
                                        << floor.corners.size());
        look(floor, ground, slow::dig_out(floor, slow_ground));
      }
    }
}

TEST(PitSolid, Dug_AsTheSlowWay) {
  std::size_t dug = 0;
  each_pit(1, 8, [&](const PitFloor& floor, const GroundSurface& ground, const std::vector<SolidPiece>& slow) {
    const std::vector<SolidPiece> body = dig_out(floor, ground);
    EXPECT_TRUE(std::equal(body.begin(), body.end(), slow.begin(), slow.end(), same));
    EXPECT_EQ(volume_dug(floor, ground), volume_of(slow));
    dug += body.size();
  });
  EXPECT_GT(dug, 5'000U);
}

TEST(PitSolid, Dug_EdgeAndLayersAsTheSlowWay) {
  const LevelLine layers[] = {{{-7, 100.9}, {-1, 101.4}, {3, 100.1}}, {{0, 101.2}}, {{-2, 102.5}, {1, 100}}};
  each_pit(1, 4, [&](const PitFloor&, const GroundSurface&, const std::vector<SolidPiece>& body) {
    EXPECT_EQ(edge_of(body), slow::edge_of(body));
    for (const LevelLine& layer : layers) EXPECT_EQ(volume_below(body, layer), slow::volume_below(body, layer));
  });
}

// At a station: all pieces that reach to both sides of it are there, in their order.
TEST(PitSolid, Dug_AtAStation) {
  each_pit(1, 4, [](const PitFloor& floor, const GroundSurface& ground, const std::vector<SolidPiece>& body) {
    for (const double share : {0.0, 0.3, 0.5, 1.0}) {
      const double station = floor.corners[0].x_m + share * (floor.corners[1].x_m - floor.corners[0].x_m);
      const auto across = [&](const SolidPiece& piece) {
        const auto beyond = [&](const PlanPoint& p) { return p.x_m > station; };
        return std::any_of(piece.outline.begin(), piece.outline.end(), beyond) &&
               !std::all_of(piece.outline.begin(), piece.outline.end(), beyond);
      };
      std::vector<SolidPiece> expected, found = dig_out_at(floor, ground, station);
      std::copy_if(body.begin(), body.end(), std::back_inserter(expected), across);
      std::erase_if(found, [&](const SolidPiece& piece) { return !across(piece); });
      EXPECT_TRUE(std::equal(found.begin(), found.end(), expected.begin(), expected.end(), same));
    }
  });
}

// A hill outside does not reach into the pit: the same with it and without.
TEST(PitSolid, Dug_FarHillChangesNothing) {
  std::vector<Point3> points;
  for (int i = -14; i <= 14; ++i)
    for (int k = -14; k <= 14; ++k)
      if (k != 0) points.push_back({1.0 * i + 0.13 * (k % 3), 1.0 * k, 101.5 + 0.02 * ((i * 7 + k * 5) % 9)});
  std::vector<Point3> with_hill = points;
  for (int k = 1; k < 9; ++k) with_hill.push_back({200.0 + 3 * k, 20.0 + k, 160});
  const auto sets = side_sets();
  const PlanLine corners = floors().front();
  const PitFloor floor{corners, {&sets[0][0], &sets[0][1], &sets[0][2], &sets[0][0]}, 100};
  const double plain = volume_dug(floor, GroundSurface(rolling_line, points));
  EXPECT_GT(plain, 5);
  EXPECT_NEAR(volume_dug(floor, GroundSurface(rolling_line, with_hill)), plain, 1e-9);
}

}  // namespace
}  // namespace burrow::test

// The index of a surface against looking at every triangle (`slow_ground.h`): not one bit may differ.

#include <gtest/gtest.h>

#include <thread>

#include "grounds_for_tests.h"
#include "slow_ground.h"

namespace burrow::test {
namespace {

bool same(const std::vector<GroundPiece>& a, const std::vector<GroundPiece>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const GroundPiece& p, const GroundPiece& q) {
    return p.outline == q.outline && p.plane.a == q.plane.a && p.plane.b == q.plane.b && p.plane.c == q.plane.c;
  });
}

/// Calls `look` with each ground, both ways.
template <class Look>
void each_ground(const Look& look) {
  for (const GroundKind kind : all_ground_kinds)
    for (unsigned seed = 1; seed < 5; ++seed) {
      SCOPED_TRACE(testing::Message() << "ground " << static_cast<int>(kind) << " seed " << seed);
      const std::vector<Point3> points = points_of(kind, seed);
      look(points, GroundSurface(rolling_line, points), slow::SlowSurface(rolling_line, points), seed);
    }
}

std::vector<PlanBox> boxes(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(-14, 20), y(-11, 11), wide(0.002, 7);
  std::vector<PlanBox> all{{-80, 90, -60, 60}, {0, 3.5, 0, 1}, {0, 1, -1, 0}, {895, 905, 395, 405}, {2, 1, 2, 1}};
  for (int i = 0; i < 40; ++i) {
    const double x_low = x(random), y_low = y(random), width = i % 4 ? wide(random) : 0.003;
    all.push_back({x_low, x_low + width, y_low, y_low + (i % 3 ? width : 0.002)});
  }
  return all;
}

TEST(GroundSurface, Index_PiecesAsWithoutIt) {
  each_ground([](const auto&, const GroundSurface& quick, const slow::SlowSurface& slow, unsigned seed) {
    EXPECT_EQ(quick.highest_m(), slow.highest_m);
    for (const PlanBox& box : boxes(seed)) EXPECT_TRUE(same(quick.pieces_in(box), slow.pieces_in(box)));
  });
}

TEST(GroundSurface, Index_HeightsAsWithoutIt) {
  each_ground(
      [](const std::vector<Point3>& points, const GroundSurface& quick, const slow::SlowSurface& slow, unsigned seed) {
        std::mt19937 random(seed);
        std::uniform_real_distribution<double> x(-14, 20), y(-11, 11);
        std::vector<PlanPoint> places;
        for (int i = 0; i < 200; ++i) places.push_back({x(random), i % 5 ? y(random) : 0.004 * (i % 7) - 0.01});
        for (std::size_t i = 0; i < points.size(); i += 7) {  // at points, half way between two, a millimetre beside
          const Point3 &p = points[i], &q = points[points.size() - 1 - i];
          places.push_back({p.x_m, p.y_m});
          places.push_back({p.x_m + 1e-3, p.y_m});
          places.push_back({(p.x_m + q.x_m) / 2, (p.y_m + q.y_m) / 2});
        }
        for (const LevelPoint& p : rolling_line) places.push_back({p.station_m, 0.5});
        for (const PlanPoint& p : places) EXPECT_EQ(quick.height_at(p.x_m, p.y_m), slow.height_at(p.x_m, p.y_m));
        for (std::size_t i = 1; i < places.size(); i += 9)
          if (!(places[i] == places[i - 1])) {
            EXPECT_EQ(quick.along(places[i - 1], places[i]), slow.along(places[i - 1], places[i]));
          }
      });
}

TEST(GroundSurface, Index_NearAsWithoutIt) {
  each_ground([](const auto&, const GroundSurface& quick, const slow::SlowSurface& slow, unsigned seed) {
    for (const PlanBox& box : boxes(seed))
      for (const double reach : {0.0, 0.7, 10.0}) {
        const PlanLine outline{{box.x_low_m, box.y_low_m},
                               {box.x_high_m, box.y_low_m},
                               {box.x_high_m, box.y_high_m},
                               {box.x_low_m, box.y_high_m}};
        EXPECT_EQ(quick.surveyed_near(outline, reach), slow.surveyed_near(outline, reach));
      }
  });
}

TEST(GroundSurface, Index_NowhereHigherThanSaid) {
  each_ground([](const auto&, const GroundSurface& quick, const slow::SlowSurface& slow, unsigned seed) {
    for (const PlanBox& box : boxes(seed)) {
      const double highest = quick.highest_in(box);
      EXPECT_LE(highest, quick.highest_m());
      for (const GroundPiece& piece : slow.pieces_in(box))
        for (const PlanPoint& p : piece.outline) EXPECT_LE(piece.plane.at(p.x_m, p.y_m), highest + 1e-7);
    }
  });
}

// What lies apart from the place that is looked at may be left out; the rest comes as without that.
TEST(GroundSurface, Index_WithinAPlace) {
  each_ground([](const auto&, const GroundSurface& quick, const slow::SlowSurface& slow, unsigned seed) {
    const PlanBox walls{-6, 12, -5, 5};
    const std::vector<GroundPiece> all = slow.pieces_in(walls);
    for (const PlanBox& within : boxes(seed)) {
      if (within.x_low_m > within.x_high_m) continue;
      std::vector<GroundPiece> some;
      quick.each_piece(walls, within, [&](std::span<const PlanPoint> outline, const GroundPlane& plane) {
        some.push_back({{outline.begin(), outline.end()}, plane});
      });
      std::size_t next = 0;
      for (const GroundPiece& piece : all) {
        if (next < some.size() && same({some[next]}, {piece})) {
          ++next;
          continue;
        }
        const slow::Bound sides[] = {
            {1, 0, -within.x_low_m}, {-1, 0, within.x_high_m}, {0, 1, -within.y_low_m}, {0, -1, within.y_high_m}};
        EXPECT_TRUE(slow::clipped(piece.outline, {std::begin(sides), std::end(sides)}).empty()) << "left out";
      }
      EXPECT_EQ(next, some.size()) << "not among them, or out of order";
    }
  });
}

// A point moved, taken away, added, carried over the line; the line itself moved: as if made afresh.
TEST(GroundSurface, Index_EditedPointsAsMadeAfresh) {
  each_ground([](const std::vector<Point3>& points, const GroundSurface& before, const auto&, unsigned seed) {
    std::vector<std::vector<Point3>> edits(5, points);
    edits[0].front().z_m += 0.4;
    edits[1].back().x_m -= 0.7;
    edits[2].pop_back();
    edits[3].push_back({1.5, -2.5, 102.2});
    edits[4].front().y_m *= -1;
    for (const std::vector<Point3>& edited : edits) {
      const GroundSurface kept(rolling_line, edited, before), afresh(rolling_line, edited);
      const slow::SlowSurface slow(rolling_line, edited);
      EXPECT_EQ(kept, afresh);
      EXPECT_EQ(kept == before, edited == points);
      for (const PlanBox& box : boxes(seed)) EXPECT_TRUE(same(kept.pieces_in(box), slow.pieces_in(box)));
    }
    LevelLine higher = rolling_line;
    higher[1].elevation_m += 1;
    const GroundSurface moved(higher, points, before);
    const slow::SlowSurface slow(higher, points);
    for (const PlanBox& box : boxes(seed)) EXPECT_TRUE(same(moved.pieces_in(box), slow.pieces_in(box)));
  });
}

TEST(GroundSurface, Index_SharedByThreads) {
  const GroundSurface surface(rolling_line, points_of(GroundKind::scattered, 4));
  const auto look = [&] {
    std::vector<double> heights;
    for (double x = -8; x < 13; x += 0.21)
      for (double y = -7; y < 7; y += 0.33) heights.push_back(surface.height_at(x, y));
    return heights;
  };
  const std::vector<double> expected = look();
  std::vector<std::vector<double>> found(4);
  std::vector<std::thread> threads;
  for (std::vector<double>& each : found) threads.emplace_back([&each, &look] { each = look(); });
  for (std::thread& thread : threads) thread.join();
  for (const std::vector<double>& each : found) EXPECT_EQ(each, expected);
}

}  // namespace
}  // namespace burrow::test

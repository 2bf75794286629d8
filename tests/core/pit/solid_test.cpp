#include "burrow/pit/solid.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <random>

#include "burrow/pit/cut.h"
#include "burrow/pit/plan_overlap.h"

namespace burrow {
namespace {

SideProfile sloped(double run, double upright = 0) {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::sloped);
  side.run_per_rise = Ratio{run};
  if (upright > 0) side.upright = Length{upright};
  return {side, run, 8};
}
SideProfile shored() {
  return {shored_side(), 0, 8};
}
SideProfile benched() {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::benched);
  side.benches = {{Length{0.8}, Length{0.7}, {}, ""}};
  return {side, 1, 8};
}

const LevelLine rolling{{-6, 101.2}, {-3.1, 101.9}, {-1.3, 101.5}, {0.7, 102.3}, {4, 101.6}, {9, 101.9}};

PlanLine corners_of(const FloorRectangle& f) {
  return {{f.from_m, f.right_m}, {f.to_m, f.right_m}, {f.to_m, f.left_m}, {f.from_m, f.left_m}};
}
/// Right, high end, left, low end: as the corners go.
PitFloor floor_of(const FloorRectangle& f, const CutSides& s) {
  return {corners_of(f), {&s.right, &s.high, &s.left, &s.low}, f.elevation_m};
}

double area_of(const PlanLine& outline) {
  double area = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    area += (p.x_m * q.y_m - q.x_m * p.y_m) / 2;
  }
  return area;
}

/// A convex outline cut by z ≥ 0 of a function that is straight over it.
PlanLine where_positive(const PlanLine& outline, const std::function<double(const PlanPoint&)>& z) {
  PlanLine kept;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    const double zp = z(p), zq = z(q);
    if (zp >= 0) kept.push_back(p);
    if (zp * zq < 0) {
      const double t = zp / (zp - zq);
      kept.push_back({p.x_m + t * (q.x_m - p.x_m), p.y_m + t * (q.y_m - p.y_m)});
    }
  }
  return kept;
}

/// Second route: level slices. At each height the floor, each side moved back as it stands there, less where the ground
/// is lower; Gauss between the bends of the sides and the heights of the ground's corners.
double by_slices(const FloorRectangle& floor, const CutSides& s, const GroundSurface& ground) {
  const auto slice = [&](double h) {
    double area = 0;
    const PlanBox box{floor.from_m - s.low.run_at(h), floor.to_m + s.high.run_at(h), floor.right_m - s.right.run_at(h),
                      floor.left_m + s.left.run_at(h)};
    for (const GroundPiece& piece : ground.pieces_in(box))
      area += area_of(where_positive(
          piece.outline, [&](const PlanPoint& p) { return piece.plane.at(p.x_m, p.y_m) - floor.elevation_m - h; }));
    return area;
  };
  std::vector<double> heights{0, ground.highest_m() - floor.elevation_m};
  for (const SideProfile* side : {&s.low, &s.high, &s.left, &s.right})
    for (const double bend : side->bends()) heights.push_back(bend);
  for (const GroundPiece& piece : ground.pieces_in({-30, 30, -30, 30}))
    for (const PlanPoint& p : piece.outline) heights.push_back(piece.plane.at(p.x_m, p.y_m) - floor.elevation_m);
  const double top = ground.highest_m() - floor.elevation_m;
  std::erase_if(heights, [&](double h) { return h < 0 || h > top; });
  std::sort(heights.begin(), heights.end());
  double volume = 0;
  for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
    if (!(heights[i + 1] - heights[i] > 1e-12)) continue;
    constexpr int parts = 60;
    const double step = (heights[i + 1] - heights[i]) / parts;
    for (int k = 0; k < parts; ++k)
      for (const double sign : {-1.0, 1.0})
        volume += step / 2 * slice(heights[i] + (k + 0.5 + sign / std::sqrt(12.0)) * step);
  }
  return volume;
}

std::vector<Point3> uneven(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(-8, 6), y(-7, 7), z(101.0, 102.8);
  std::vector<Point3> points;
  for (int i = 0; i < 14; ++i) points.push_back({x(random), y(random), z(random)});
  return points;
}

const FloorRectangle floor{-2.3, 0.1, -0.5, 0.6, 100.2};
const CutSides all_sides[] = {{sloped(1.5), sloped(0.75), sloped(1.0), sloped(1.5)},
                              {sloped(1.5, 0.5), shored(), sloped(1.0, 0.9), sloped(1.5)},
                              {benched(), shored(), benched(), sloped(1.5)},
                              {shored(), shored(), shored(), shored()}};

// Limit: without points it is what `cut_out` has, which goes another way, by cross-sections.
TEST(PitSolid, LevelAcross_AsByCrossSections) {
  const LevelLine layer{{-7, 100.9}, {-1, 101.4}, {3, 100.1}};
  for (const CutSides& s : all_sides) {
    const Cut cut = cut_out(floor, s, rolling);
    const PitFloor of = floor_of(floor, s);
    const std::vector<SolidPiece> body = dig_out(of, GroundSurface(rolling, {}));
    EXPECT_NEAR(volume_of(body), cut.volume_m3, 1e-8 * cut.volume_m3);
    EXPECT_NEAR(depth_of(body, of), cut.depth_m, 1e-9);
    EXPECT_NEAR(volume_below(body, layer), volume_below(floor, s, layer, cut.from_m, cut.to_m), 1e-7);
    const PlanLine edge = edge_of(body);
    EXPECT_NEAR(area_of(edge), area_of(cut.footprint), 1e-5);
    EXPECT_NEAR(overlap_area(edge, cut.footprint), area_of(edge), 1e-5);
  }
}

TEST(PitSolid, Slices_VolumeInUnevenGround) {
  for (unsigned seed = 3; seed < 6; ++seed)
    for (const CutSides& s : all_sides) {
      const GroundSurface ground(rolling, uneven(seed));
      const double volume = volume_of(dig_out(floor_of(floor, s), ground));
      EXPECT_NEAR(volume, by_slices(floor, s, ground), 1e-6 * volume) << seed;
    }
}

// The edge lies where sides and ground meet: on it the ground stands as high as the side that comes up there, or over
// an upright one, and its area is that of the pieces.
TEST(PitSolid, Edge_WhereSidesMeetTheGround) {
  const CutSides s{sloped(1.5), sloped(0.75), sloped(1.0), sloped(1.5)};
  for (unsigned seed = 1; seed < 7; ++seed) {
    const GroundSurface ground(rolling, uneven(seed));
    const std::vector<SolidPiece> body = dig_out(floor_of(floor, s), ground);
    const PlanLine edge = edge_of(body);
    ASSERT_GT(edge.size(), 7U);
    EXPECT_NEAR(area_of(edge), area_of(body), 1e-4);
    for (const PlanPoint& p : edge) {
      const double side = std::max({s.low.height_at(floor.from_m - p.x_m), s.high.height_at(p.x_m - floor.to_m),
                                    s.left.height_at(p.y_m - floor.left_m), s.right.height_at(floor.right_m - p.y_m)});
      EXPECT_NEAR(ground.height_at(p.x_m, p.y_m) - floor.elevation_m, side, 1e-5) << p.x_m << ' ' << p.y_m;
    }
  }
}

/// Second route to the edge: every side of every piece against every other, then end to beginning.
PlanLine edge_by_every_pair(const std::vector<SolidPiece>& body) {
  struct Line {
    PlanPoint from, to;
  };
  std::vector<Line> all, open;
  const auto apart = [](const PlanPoint& a, const PlanPoint& b) { return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m); };
  for (const SolidPiece& piece : body)
    for (std::size_t i = 0; i < piece.outline.size(); ++i)
      if (const Line line{piece.outline[i], piece.outline[(i + 1) % piece.outline.size()]};
          apart(line.from, line.to) > 1e-7)
        all.push_back(line);
  for (const Line& line : all) {
    const double length = apart(line.from, line.to);
    const double x = (line.to.x_m - line.from.x_m) / length, y = (line.to.y_m - line.from.y_m) / length;
    const auto along = [&](const PlanPoint& p) { return (p.x_m - line.from.x_m) * x + (p.y_m - line.from.y_m) * y; };
    const auto beside = [&](const PlanPoint& p) { return (p.y_m - line.from.y_m) * x - (p.x_m - line.from.x_m) * y; };
    std::vector<std::pair<double, double>> covered{{length, length}};
    for (const Line& other : all)
      if (std::abs(beside(other.from)) <= 1e-7 && std::abs(beside(other.to)) <= 1e-7 &&
          along(other.from) > along(other.to))
        covered.emplace_back(along(other.to), along(other.from));
    std::sort(covered.begin(), covered.end());
    double reached = 0;
    for (const auto& [from, to] : covered) {
      if (from > length) continue;
      const auto at = [&](double d) { return PlanPoint{line.from.x_m + d * x, line.from.y_m + d * y}; };
      if (from - reached > 3e-7) open.push_back({at(reached), at(from)});
      reached = std::max(reached, to);
    }
  }
  PlanLine best;
  while (!open.empty()) {
    Line last = open.back();
    open.pop_back();
    PlanLine ring{last.from};
    while (!open.empty()) {
      const auto next = std::min_element(open.begin(), open.end(), [&](const Line& a, const Line& b) {
        return apart(last.to, a.from) < apart(last.to, b.from);
      });
      if (apart(last.to, ring.front()) <= apart(last.to, next->from)) break;
      last = *next;
      ring.push_back(last.from);
      open.erase(next);
    }
    if (area_of(ring) > area_of(best)) best = ring;
  }
  return best;
}

TEST(PitSolid, Edge_AsByEveryPair) {
  for (unsigned seed = 1; seed < 9; ++seed)
    for (const CutSides& s : all_sides) {
      std::vector<Point3> points = uneven(seed);
      std::mt19937 random(seed);
      std::uniform_real_distribution<double> x(-5, 3), y(-4, 4), z(101.5, 102.0);
      for (unsigned i = 0; i < 15 * (seed - 1); ++i) points.push_back({x(random), y(random), z(random)});
      const std::vector<SolidPiece> body = dig_out(floor_of(floor, s), GroundSurface(rolling, points));
      const PlanLine edge = edge_of(body), other = edge_by_every_pair(body);
      ASSERT_GT(edge.size(), 3U);
      EXPECT_NEAR(area_of(edge), area_of(other), 1e-6) << seed;
      for (const PlanPoint& p : edge) {  // all its corners are among those of the other, which has more
        double nearest = 1;
        for (const PlanPoint& q : other) nearest = std::min(nearest, std::hypot(p.x_m - q.x_m, p.y_m - q.y_m));
        EXPECT_LT(nearest, 1e-6) << seed << ' ' << p.x_m << ' ' << p.y_m;
      }
    }
}

// Closed form: a shored box under a slope holds its area times the depth at its middle; the sloped side that climbs the
// hill comes out at D/(1/n − i).
TEST(PitSolid, PlaneGround_BoxAndWedge) {
  std::vector<Point3> points;
  for (const double x : {-60.0, 0.0, 60.0})
    for (const double y : {-30.0, 30.0}) points.push_back({x, y, 102 + 0.1 * y});
  const GroundSurface ground({{-60, 102}, {60, 102}}, points);
  const FloorRectangle box{-2, 0, -0.4, 0.8, 100};
  const CutSides upright{shored(), shored(), shored(), shored()};
  EXPECT_NEAR(volume_of(dig_out(floor_of(box, upright), ground)), 2 * 1.2 * (2 + 0.1 * 0.2), 1e-9);
  const CutSides uphill{shored(), shored(), sloped(1.5), shored()};
  const std::vector<SolidPiece> body = dig_out(floor_of(box, uphill), ground);
  double left = 0;
  for (const PlanPoint& p : edge_of(body)) left = std::max(left, p.y_m);
  EXPECT_NEAR(left - 0.8, (2 + 0.1 * 0.8) / (1 / 1.5 - 0.1), 1e-6);
  const double wedge = 2 * 0.5 * (2 + 0.08) * (2 + 0.08) / (1 / 1.5 - 0.1);
  EXPECT_NEAR(volume_of(body), 2 * 1.2 * 2.02 + wedge, 1e-8);
}

// What lies in the layers adds up, whatever the ground does.
TEST(PitSolid, Layers_AddUp) {
  const CutSides& s = all_sides[0];
  const GroundSurface ground(rolling, uneven(4));
  const std::vector<SolidPiece> body = dig_out(floor_of(floor, s), ground);
  const double whole = volume_of(body);
  EXPECT_NEAR(volume_below(body, {{0, 200}}), whole, 1e-9 * whole);
  EXPECT_NEAR(volume_below(body, {{0, 100.2}}), 0, 1e-9);
  // A level layer is the pit dug into level ground of that height, as long as the ground stands above it.
  EXPECT_NEAR(volume_below(body, {{0, 100.9}}), cut_out(floor, s, {{0, 100.9}}).volume_m3, 1e-7);
}

TEST(PitSolid, FloorAboveTheGround_Nothing) {
  const CutSides& s = all_sides[0];
  const FloorRectangle high{-2, 0, -0.5, 0.5, 110};
  const std::vector<SolidPiece> body = dig_out(floor_of(high, s), GroundSurface(rolling, uneven(1)));
  EXPECT_TRUE(body.empty());
  EXPECT_TRUE(edge_of(body).empty());
  EXPECT_EQ(depth_of(body, floor_of(high, s)), 0);
}

}  // namespace
}  // namespace burrow

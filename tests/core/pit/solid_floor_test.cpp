// Floors that are no rectangles: closed forms, and columns of ground as second route.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/pit/solid.h"

namespace burrow {
namespace {

SideProfile sloped(double run) {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::sloped);
  side.run_per_rise = Ratio{run};
  return {side, run, 8};
}
SideProfile shored() {
  return {shored_side(), 0, 8};
}
SideProfile benched() {
  PitSide side;
  side.kind = Given<SideKind>::enter(SideKind::benched);
  side.benches = {{Length{0.8}, Length{0.5}, {}, ""}};
  return {side, 1, 8};
}

const PlanLine l_shape{{0, -0.5}, {3, -0.5}, {3, 0.5}, {1.5, 0.5}, {1.5, 1.4}, {0, 1.4}};
const PlanLine pentagon{{0, -0.6}, {2, -0.9}, {3.1, 0.2}, {1.8, 1.5}, {-0.2, 0.7}};
const PlanLine u_shape{{0, 0}, {3, 0}, {3, 2}, {2.4, 2}, {2.4, 0.8}, {0.7, 0.8}, {0.7, 1.5}, {0, 1.5}};

PitFloor all_alike(const PlanLine& corners, const SideProfile& side, double elevation) {
  return {corners, std::vector<const SideProfile*>(corners.size(), &side), elevation};
}

double area_of(const PlanLine& outline) {
  double area = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlanPoint &p = outline[i], &q = outline[(i + 1) % outline.size()];
    area += (p.x_m * q.y_m - q.x_m * p.y_m) / 2;
  }
  return area;
}

/// A D + P n D²/2 + n² D³/3 Σ tan(turn/2): the floor, a wedge over each edge, a mitre about each corner (taken away
/// about an inner one). Holds as long as no edge runs out at the surface.
double closed_form(const PlanLine& corners, double run, double depth) {
  double perimeter = 0, mitres = 0;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const PlanPoint &a = corners[i], &p = corners[(i + 1) % n], &b = corners[(i + 2) % n];
    perimeter += std::hypot(p.x_m - a.x_m, p.y_m - a.y_m);
    const double ux = p.x_m - a.x_m, uy = p.y_m - a.y_m, vx = b.x_m - p.x_m, vy = b.y_m - p.y_m;
    mitres += std::tan(std::atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 2);
  }
  return area_of(corners) * depth + perimeter * run * depth * depth / 2 + run * run * std::pow(depth, 3) / 3 * mitres;
}

TEST(PitSolidFloor, ClosedForm_VolumeOnLevelGround) {
  const GroundSurface level({{0, 2}}, {});
  for (const PlanLine& corners : {l_shape, pentagon, u_shape}) {
    EXPECT_NEAR(volume_of(dig_out(all_alike(corners, shored(), 0.4), level)), 1.6 * area_of(corners), 1e-8);
    const SideProfile side = sloped(0.75);
    const std::vector<SolidPiece> body = dig_out(all_alike(corners, side, 1.3), level);
    EXPECT_NEAR(volume_of(body), closed_form(corners, 0.75, 0.7), 1e-7);
    EXPECT_NEAR(area_of(edge_of(body)), area_of(body), 1e-5);
  }
}

/// The bottom above a place: the lowest that any edge's side, square before it or about an outer corner, makes there,
/// unless the floor comes in between.
double bottom_over(const PitFloor& floor, double x, double y) {
  const PlanLine& c = floor.corners;
  if (inside(c, x, y)) return 0;
  const std::size_t n = c.size();
  double lowest = std::numeric_limits<double>::infinity();
  const auto free = [&](const PlanPoint& from) {  // no edge of the floor crosses the way there
    for (std::size_t i = 0; i < n; ++i) {
      const PlanPoint &p = c[i], &q = c[(i + 1) % n];
      const auto side = [](const PlanPoint& a, const PlanPoint& b, double px, double py) {
        return (b.x_m - a.x_m) * (py - a.y_m) - (b.y_m - a.y_m) * (px - a.x_m);
      };
      const double fx = from.x_m + 1e-7 * (x - from.x_m), fy = from.y_m + 1e-7 * (y - from.y_m);
      if (side(p, q, fx, fy) * side(p, q, x, y) < 0 &&
          side({fx, fy}, {x, y}, p.x_m, p.y_m) * side({fx, fy}, {x, y}, q.x_m, q.y_m) < 0)
        return false;
    }
    return true;
  };
  for (std::size_t i = 0; i < n; ++i) {
    const PlanPoint &p = c[i], &q = c[(i + 1) % n], &r = c[(i + 2) % n];
    const double length = std::hypot(q.x_m - p.x_m, q.y_m - p.y_m);
    const double tx = (q.x_m - p.x_m) / length, ty = (q.y_m - p.y_m) / length;
    const double along = (x - p.x_m) * tx + (y - p.y_m) * ty, out = (x - p.x_m) * ty - (y - p.y_m) * tx;
    if (along >= 0 && along <= length && out >= 0 && free({p.x_m + along * tx, p.y_m + along * ty}))
      lowest = std::min(lowest, floor.sides[i]->height_at(out));
    const double next = std::hypot(r.x_m - q.x_m, r.y_m - q.y_m);
    const double sx = (r.x_m - q.x_m) / next, sy = (r.y_m - q.y_m) / next;
    const double on = (x - q.x_m) * sx + (y - q.y_m) * sy, other = (x - q.x_m) * sy - (y - q.y_m) * sx;
    if (tx * sy - ty * sx > 0 && along > length && on < 0 && free(q))
      lowest = std::min(lowest, std::max(floor.sides[i]->height_at(out), floor.sides[(i + 1) % n]->height_at(other)));
  }
  return lowest;
}

/// Columns of ground at places that fill the plan evenly and stand in no row: no wall is favoured. Roberts 2018, the R2
/// sequence, from memory.
double by_columns(const PitFloor& floor, const GroundSurface& ground, int count) {
  const std::vector<GroundPiece> pieces = ground.pieces_in({-5, 8, -5, 7});
  double sum = 0, u = 0.5, v = 0.5;
  for (int i = 0; i < count; ++i) {
    u = std::fmod(u + 0.7548776662466927, 1.0);
    v = std::fmod(v + 0.5698402909980532, 1.0);
    const double x = -5 + 13 * u, y = -5 + 12 * v;
    for (const GroundPiece& piece : pieces) {
      if (!inside(piece.outline, x, y)) continue;
      sum += std::max(piece.plane.at(x, y) - floor.elevation_m - bottom_over(floor, x, y), 0.0);
      break;
    }
  }
  return 13.0 * 12.0 * sum / count;
}

// Sides that differ, notches that close, slopes that would come out behind the floor's other arm, uneven ground.
TEST(PitSolidFloor, Columns_SidesThatDiffer) {
  const GroundSurface ground({{-6, 1.6}, {1, 2.1}, {8, 1.8}}, {{-3, 4, 2.4}, {2, 3, 1.7}, {4, -3, 2.2}, {0, -4, 1.5}});
  const SideProfile flat = sloped(1.5), steep = sloped(0.5), steps = benched(), wall = shored();
  const SideProfile* kinds[] = {&flat, &wall, &steep, &steps};
  for (const PlanLine& corners : {l_shape, pentagon, u_shape})
    for (std::size_t shift = 0; shift < 4; ++shift) {
      PitFloor floor{corners, {}, 0.3};
      for (std::size_t i = 0; i < corners.size(); ++i) floor.sides.push_back(kinds[(i * i + shift) % 4]);
      const double volume = volume_of(dig_out(floor, ground));
      EXPECT_NEAR(by_columns(floor, ground, 80000), volume, 3e-3 * volume) << corners.size() << ' ' << shift;
    }
}

// A notch between two arms is gone once the slopes of its walls meet: then only the outline counts.
TEST(PitSolidFloor, NotchThatCloses_IsDugOut) {
  const GroundSurface level({{0, 4}}, {});
  const SideProfile side = sloped(1.0);
  const std::vector<SolidPiece> body = dig_out(all_alike(u_shape, side, 0), level);
  const PlanLine edge = edge_of(body);
  EXPECT_NEAR(area_of(edge), area_of(body), 1e-4);
  // 4 m back from every wall; the right arm reaches 0.5 m further up, and its inner wall 4 m to the left.
  EXPECT_NEAR(area_of(edge), 11 * 9.5 + 8.6 * 0.5, 1e-4);
  EXPECT_TRUE(inside(edge, 1.5, 1.4)) << "nothing is left standing between the arms";
}

TEST(PitSolidFloor, CornersOnOneLine_ChangeNothing) {
  const GroundSurface level({{0, 2}}, {});
  const SideProfile side = sloped(1.0);
  const PlanLine square{{0, 0}, {2, 0}, {2, 2}, {0, 2}},
      more{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {1.3, 2}, {0.4, 2}, {0, 2}};
  EXPECT_NEAR(volume_of(dig_out(all_alike(square, side, 0), level)),
              volume_of(dig_out(all_alike(more, side, 0), level)), 1e-9);
  PlanLine l_more = l_shape;
  l_more.insert(l_more.begin() + 1, PlanPoint{1.2, -0.5});
  EXPECT_NEAR(volume_of(dig_out(all_alike(l_shape, side, 0.5), level)),
              volume_of(dig_out(all_alike(l_more, side, 0.5), level)), 1e-7);
}

}  // namespace
}  // namespace burrow

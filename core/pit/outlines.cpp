#include "burrow/pit/outlines.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "outlines_of_solid.h"

namespace burrow {

namespace {

/// One side from the floor up to a height, as (distance back, height).
std::vector<std::array<double, 2>> climb(const SideProfile& side, double to_height_m) {
  std::vector<std::array<double, 2>> points{{0, 0}};
  double run = 0, height = 0;
  for (const SidePiece& piece : side.pieces()) {
    if (height >= to_height_m) break;
    const double rise = std::min(piece.rise_m, to_height_m - height);
    run += piece.rise_m > 0 ? piece.run_m * rise / piece.rise_m : piece.run_m;
    height += rise;
    points.push_back({run, height});
  }
  if (height < to_height_m) points.push_back({run, to_height_m});  // straight up from there
  return points;
}

/// The same to a micrometre.
bool same(const PitRing& a, const PitRing& b) {
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i)
    if (std::abs(a[i].x_m - b[i].x_m) > 1e-6 || std::abs(a[i].y_m - b[i].y_m) > 1e-6 ||
        std::abs(a[i].z_m - b[i].z_m) > 1e-6)
      return false;
  return true;
}

}  // namespace

LevelLine cross_section(const PitShape& shape, const LevelLine& ground, double station_m) {
  if (shape.ground.there()) return section_of_solid(shape, station_m);
  const double height = elevation_at(ground, station_m) - shape.floor_elevation_m;
  LevelLine line;
  if (!(height > 0)) return line;
  const auto right = climb(shape.sides.right, height), left = climb(shape.sides.left, height);
  for (auto p = right.rbegin(); p != right.rend(); ++p)
    line.push_back({shape.floor_right_m - (*p)[0], shape.floor_elevation_m + (*p)[1]});
  for (const auto& p : left) line.push_back({shape.floor_left_m + p[0], shape.floor_elevation_m + p[1]});
  return line;
}

std::vector<PitRing> pit_rings(const PitShape& shape, const LevelLine& ground) {
  if (shape.ground.there()) return rings_of_solid(shape);
  std::vector<PitRing> rings;
  const auto ring = [&](double low, double high, double right, double left, double height) {
    const double z = shape.floor_elevation_m + height, x0 = shape.floor_from_m - low, x1 = shape.floor_to_m + high;
    const double y0 = shape.floor_right_m - right, y1 = shape.floor_left_m + left;
    rings.push_back({Point3{x0, y0, z}, {x1, y0, z}, {x1, y1, z}, {x0, y1, z}});
  };
  ring(0, 0, 0, 0, 0);
  if (shape.section.size() < 2) return rings;
  const double x_low = shape.section.front().station_m, x_high = shape.section.back().station_m;
  const double at_low = elevation_at(ground, x_low) - shape.floor_elevation_m,
               at_high = elevation_at(ground, x_high) - shape.floor_elevation_m;
  const CutSides& sides = shape.sides;
  std::vector<double> bends;
  for (const SideProfile* side : {&sides.low, &sides.high, &sides.left, &sides.right})
    for (const double bend : side->bends()) bends.push_back(bend);
  std::sort(bends.begin(), bends.end());
  bends.erase(std::unique(bends.begin(), bends.end()), bends.end());
  constexpr double hair_m = 1e-9;
  for (const double bend : bends) {
    if (!(bend > 0) || bend >= std::min(at_low, at_high)) continue;
    for (const double height : {bend - hair_m, bend + hair_m}) {  // below and above a bench
      ring(sides.low.run_at(height), sides.high.run_at(height), sides.right.run_at(height), sides.left.run_at(height),
           bend);
      if (rings.size() > 1 && same(rings[rings.size() - 2], rings.back())) rings.pop_back();
    }
  }
  const auto corner = [&](double x, double height, bool left) {
    const double from_floor = std::max(height, 0.0);
    return Point3{x,
                  left ? shape.floor_left_m + sides.left.run_at(from_floor)
                       : shape.floor_right_m - sides.right.run_at(from_floor),
                  shape.floor_elevation_m + height};
  };
  rings.push_back({corner(x_low, at_low, false), corner(x_high, at_high, false), corner(x_high, at_high, true),
                   corner(x_low, at_low, true)});
  return rings;
}

}  // namespace burrow

#include "outlines_of_solid.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "burrow/pit/solid.h"

namespace burrow {

namespace {

/// A piece of the body in the plane square to the line.
struct Slice {
  double right_m, left_m;
  double right_bottom_m, left_bottom_m, right_ground_m, left_ground_m;
};

std::optional<Slice> slice_of(const SolidPiece& piece, double station_m) {
  std::optional<double> low, high;
  for (std::size_t i = 0; i < piece.outline.size(); ++i) {
    const PlanPoint &p = piece.outline[i], &q = piece.outline[(i + 1) % piece.outline.size()];
    if ((p.x_m > station_m) == (q.x_m > station_m)) continue;
    const double y = p.y_m + (station_m - p.x_m) / (q.x_m - p.x_m) * (q.y_m - p.y_m);
    low = std::min(low.value_or(y), y);
    high = std::max(high.value_or(y), y);
  }
  if (!low || !(*high - *low > 1e-9)) return std::nullopt;
  return Slice{*low,
               *high,
               piece.bottom.at(station_m, *low),
               piece.bottom.at(station_m, *high),
               piece.ground.at(station_m, *low),
               piece.ground.at(station_m, *high)};
}

/// Where a corner of the floor stands, each side moved back as it is at a height.
PlanPoint corner_at(const PitShape& shape, std::size_t corner, double height_m) {
  const std::size_t n = shape.floor.size(), before = (corner + n - 1) % n;
  const PlanPoint &a = shape.floor[before], &p = shape.floor[corner], &b = shape.floor[(corner + 1) % n];
  const double ux = p.x_m - a.x_m, uy = p.y_m - a.y_m, u = std::hypot(ux, uy);
  const double vx = b.x_m - p.x_m, vy = b.y_m - p.y_m, v = std::hypot(vx, vy);
  const double first = side_over(shape, before).run_at(height_m), second = side_over(shape, corner).run_at(height_m);
  // Outward normals (uy, −ux)/u and (vy, −vx)/v.
  const double ax = uy / u, ay = -ux / u, bx = vy / v, by = -vx / v, determinant = ax * by - ay * bx;
  if (std::abs(determinant) < 1e-6) return {p.x_m + ax * std::max(first, second), p.y_m + ay * std::max(first, second)};
  return {p.x_m + (first * by - second * ay) / determinant, p.y_m + (ax * second - bx * first) / determinant};
}

double top_of_corner(const PitShape& shape, std::size_t corner) {
  double low = 0, high = std::max(shape.ground.highest_m() - shape.floor_elevation_m, 0.0);
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    const PlanPoint at = corner_at(shape, corner, middle);
    (shape.ground.height_at(at.x_m, at.y_m) > shape.floor_elevation_m + middle ? low : high) = middle;
  }
  return (low + high) / 2;
}

bool same(const PitRing& a, const PitRing& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Point3& p, const Point3& q) {
    return std::abs(p.x_m - q.x_m) < 1e-6 && std::abs(p.y_m - q.y_m) < 1e-6 && std::abs(p.z_m - q.z_m) < 1e-6;
  });
}

}  // namespace

LevelLine section_of_solid(const PitShape& shape, double station_m) {
  const PitFloor floor = floor_of(shape);
  std::vector<Slice> slices;
  for (const SolidPiece& piece : dig_out_at(floor, shape.ground, station_m))
    if (const auto slice = slice_of(piece, station_m)) slices.push_back(*slice);
  std::sort(slices.begin(), slices.end(), [](const Slice& a, const Slice& b) { return a.right_m < b.right_m; });
  LevelLine line;
  const auto add = [&](double offset, double elevation) {
    if (line.empty() || std::hypot(line.back().station_m - offset, line.back().elevation_m - elevation) > 1e-7)
      line.push_back({offset, elevation});
  };
  for (std::size_t i = 0; i < slices.size(); ++i) {
    const Slice& s = slices[i];
    const bool first = i == 0 || s.right_m - slices[i - 1].left_m > 1e-6;
    const bool last = i + 1 == slices.size() || slices[i + 1].right_m - s.left_m > 1e-6;
    if (first) add(s.right_m, s.right_ground_m);
    add(s.right_m, s.right_bottom_m);
    add(s.left_m, s.left_bottom_m);
    if (last) add(s.left_m, s.left_ground_m);
  }
  return line;
}

std::vector<PitRing> rings_of_solid(const PitShape& shape) {
  std::vector<PitRing> rings;
  const std::size_t n = shape.floor.size();
  const auto add = [&](auto&& height_of, double drawn_lower) {
    PitRing ring;
    for (std::size_t i = 0; i < n; ++i) {
      const double height = height_of(i);
      const PlanPoint at = corner_at(shape, i, height);
      ring.push_back({at.x_m, at.y_m, shape.floor_elevation_m + height - drawn_lower});
    }
    if (rings.empty() || !same(rings.back(), ring)) rings.push_back(std::move(ring));
  };
  add([](std::size_t) { return 0.0; }, 0);
  if (shape.section.size() < 2) return rings;
  std::vector<double> tops;
  for (std::size_t i = 0; i < n; ++i) tops.push_back(top_of_corner(shape, i));
  const double lowest = *std::min_element(tops.begin(), tops.end());
  std::vector<double> bends;
  for (const SideProfile* side : {&shape.sides.low, &shape.sides.high, &shape.sides.left, &shape.sides.right})
    for (const double bend : side->bends()) bends.push_back(bend);
  std::sort(bends.begin(), bends.end());
  constexpr double hair_m = 1e-9;
  for (const double bend : bends) {
    if (!(bend > 0) || bend >= lowest) continue;
    for (const double beside : {-hair_m, hair_m})  // below and above a bench
      add([&](std::size_t) { return bend + beside; }, beside);
  }
  rings.emplace_back();
  for (std::size_t i = 0; i < n; ++i) {
    const PlanPoint at = corner_at(shape, i, tops[i]);
    rings.back().push_back({at.x_m, at.y_m, shape.floor_elevation_m + tops[i]});
  }
  return rings;
}

}  // namespace burrow

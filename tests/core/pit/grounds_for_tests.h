#pragma once
/// Surveyed grounds of every kind, from a seed: scattered, a square grid, points on one straight line, several in one
/// place, one alone, a crowd with one far off, one side only, points on the line itself.

#include <cmath>
#include <random>
#include <vector>

#include "burrow/base/geometry.h"

namespace burrow::test {

inline const LevelLine rolling_line{{-4, 101.2}, {0, 101.9}, {3.5, 101.5}, {9, 102.3}, {20, 101.6}};

enum class GroundKind { scattered, grid, in_a_row, in_one_place, alone, crowd, one_side, beside_line };
inline constexpr GroundKind all_ground_kinds[] = {
    GroundKind::scattered, GroundKind::grid,  GroundKind::in_a_row, GroundKind::in_one_place,
    GroundKind::alone,     GroundKind::crowd, GroundKind::one_side, GroundKind::beside_line};

inline std::vector<Point3> points_of(GroundKind kind, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(-9, 14), y(-8, 8), z(101.0, 102.8), share(0, 1);
  std::vector<Point3> points;
  switch (kind) {
    case GroundKind::scattered:
      for (unsigned i = 0; i < 12 + 40 * (seed % 5); ++i) points.push_back({x(random), y(random), z(random)});
      break;
    case GroundKind::grid:
      for (int i = -6; i < 12; ++i)
        for (int k = -5; k <= 5; ++k) points.push_back({1.0 * i, 1.0 * k + 0.5 * (seed % 2), z(random)});
      break;
    case GroundKind::in_a_row:
      for (int i = 0; i < 9; ++i) points.push_back({-3 + 1.25 * i, 2 + 0.5 * i * (seed % 2), z(random)});
      break;
    case GroundKind::in_one_place:
      for (int i = 0; i < 6; ++i) points.push_back({i < 3 ? 1.0 : 2.0, i < 3 ? 2.0 : -1.5, z(random)});
      break;
    case GroundKind::alone:
      points.push_back({x(random), seed % 2 ? 1.5 : -3.0, z(random)});
      break;
    case GroundKind::crowd:
      for (int i = 0; i < 90; ++i)
        points.push_back({-1 + 2 * share(random), -1.2 + 2.4 * share(random), 101.6 + 0.05 * share(random)});
      points.push_back({900, 400, 131});
      points.push_back({-60, -30, 110});
      break;
    case GroundKind::one_side:
      for (int i = 0; i < 50; ++i) points.push_back({x(random), 0.3 + std::abs(y(random)), z(random)});
      break;
    case GroundKind::beside_line:  // within a centimetre the line counts
      for (int i = 0; i < 20; ++i) points.push_back({x(random), 0.004 * (i % 5) - 0.008, z(random)});
      points.push_back({2, 0.6, 102});
      break;
  }
  return points;
}

}  // namespace burrow::test

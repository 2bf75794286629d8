#pragma once
/// Moving a line sideways: the level normals of its stretches, and what moves the joint of two of them.

#include <algorithm>
#include <cmath>

#include "burrow/base/geometry.h"

namespace burrow {

/// Level, across a stretch, positive left; none for an upright one.
struct LevelNormal {
  double x = 0, y = 0;
};
inline LevelNormal level_normal(const PathVertex& from, const PathVertex& to) {
  const double dx = to.x_m - from.x_m, dy = to.y_m - from.y_m, length = std::hypot(dx, dy);
  return length > 1e-9 ? LevelNormal{-dy / length, dx / length} : LevelNormal{};
}

/// What moves the joint of two stretches when both are moved across by one metre; a sharp bend not more than 2 m.
inline LevelNormal joint_normal(const LevelNormal& a, const LevelNormal& b) {
  const double along = a.x * b.x + a.y * b.y;
  const double scale = 1 / std::max(1 + along, 0.5);
  return {(a.x + b.x) * scale, (a.y + b.y) * scale};
}

}  // namespace burrow

#include "burrow/crossing/floor_outline.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/base/quantity.h"

namespace burrow {

namespace {

constexpr std::size_t most_corners = 24;
constexpr double farthest_m = 100, nearest_m = 0.05, least_area_m2 = 0.1;
constexpr double sharpest_rad = 15 * pi / 180;

double side_of(const PlanPoint& a, const PlanPoint& b, const PlanPoint& p) {
  return (b.x_m - a.x_m) * (p.y_m - a.y_m) - (b.y_m - a.y_m) * (p.x_m - a.x_m);
}

double area_of(const PlanLine& outline) {
  double area = 0;
  for (std::size_t i = 1; i + 1 < outline.size(); ++i) area += side_of(outline[0], outline[i], outline[i + 1]) / 2;
  return area;
}

/// Whether p, on the line through a and b, lies between them.
bool between(const PlanPoint& a, const PlanPoint& b, const PlanPoint& p) {
  return std::min(a.x_m, b.x_m) <= p.x_m && p.x_m <= std::max(a.x_m, b.x_m) && std::min(a.y_m, b.y_m) <= p.y_m &&
         p.y_m <= std::max(a.y_m, b.y_m);
}

bool meet(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c, const PlanPoint& d) {
  const double ca = side_of(a, b, c), da = side_of(a, b, d), ac = side_of(c, d, a), bc = side_of(c, d, b);
  if (ca * da < 0 && ac * bc < 0) return true;
  return (ca == 0 && between(a, b, c)) || (da == 0 && between(a, b, d)) || (ac == 0 && between(c, d, a)) ||
         (bc == 0 && between(c, d, b));
}

double angle_at(const PlanPoint& before, const PlanPoint& p, const PlanPoint& after) {
  const double ux = before.x_m - p.x_m, uy = before.y_m - p.y_m, vx = after.x_m - p.x_m, vy = after.y_m - p.y_m;
  return std::abs(std::atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}

std::string number(std::size_t i) {
  return std::to_string(i + 1);
}

}  // namespace

std::optional<OutlineFault> fault_of_floor(const PlanLine& outline) {
  const std::size_t n = outline.size();
  if (n == 0) return std::nullopt;
  if (n < 3) return OutlineFault{n - 1, translatable("is one of fewer than 3 corners")};
  if (n > most_corners) return OutlineFault{most_corners, translatable("is one too many: 24 are the most")};
  for (std::size_t i = 0; i < n; ++i) {
    const PlanPoint& p = outline[i];
    if (!(p.x_m >= 0)) return OutlineFault{i, translatable("lies before the face of the pit")};
    if (!(p.x_m <= farthest_m && std::abs(p.y_m) <= farthest_m))
      return OutlineFault{i, translatable("lies more than 100 m from the face")};
  }
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = i + 1; k < n; ++k)
      if (std::hypot(outline[i].x_m - outline[k].x_m, outline[i].y_m - outline[k].y_m) < nearest_m)
        return OutlineFault{k, phrase(translatable("stands within 5 cm of corner {}"), number(i))};
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = i + 2; k < n; ++k) {
      if (i == 0 && k + 1 == n) continue;  // they share the first corner
      if (meet(outline[i], outline[i + 1], outline[k], outline[(k + 1) % n]))
        return OutlineFault{k, phrase(translatable("begins an edge that crosses the one from corner {}"), number(i))};
    }
  for (std::size_t i = 0; i < n; ++i)
    if (angle_at(outline[(i + n - 1) % n], outline[i], outline[(i + 1) % n]) < sharpest_rad)
      return OutlineFault{i, translatable("is sharper than 15°")};
  if (std::abs(area_of(outline)) < least_area_m2)
    return OutlineFault{0, translatable("belongs to a floor of less than 0.1 m²")};
  return std::nullopt;
}

PlanLine wound_left(PlanLine outline) {
  if (area_of(outline) < 0) std::reverse(outline.begin() + 1, outline.end());
  return outline;
}

}  // namespace burrow

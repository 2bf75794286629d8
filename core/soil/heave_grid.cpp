#include "burrow/soil/heave_grid.h"

#include <cmath>

namespace burrow {

namespace {

struct Piece {
  PlanPoint from;
  double along_x, along_y, length_m, depth_m, half_share_a2_m2;

  [[nodiscard]] double rise_at(double x_m, double y_m) const {
    const double dx = x_m - from.x_m, dy = y_m - from.y_m;
    const double along = dx * along_x + dy * along_y, aside = dx * along_y - dy * along_x;
    const double r2 = aside * aside + depth_m * depth_m, ahead = length_m - along;
    const double ends = ahead / std::sqrt(r2 + ahead * ahead) + along / std::sqrt(r2 + along * along);
    return half_share_a2_m2 * depth_m / r2 * ends;
  }
};

}  // namespace

std::vector<double> heave_on_grid(const std::vector<HoleInPlan>& bore, Length radius, const PlanGrid& grid) {
  std::vector<double> rise(grid.columns * grid.rows, 0.0);
  if (!(radius.m > 0)) return rise;
  std::vector<Piece> pieces;
  for (std::size_t i = 1; i < bore.size(); ++i) {
    const HoleInPlan &a = bore[i - 1], &b = bore[i];
    const double dx = b.at.x_m - a.at.x_m, dy = b.at.y_m - a.at.y_m, length = std::hypot(dx, dy);
    const double depth = (a.axis_depth_m + b.axis_depth_m) / 2;
    if (!(length > 0) || !(depth > radius.m)) continue;
    pieces.push_back({a.at, dx / length, dy / length, length, depth, (a.share + b.share) / 4 * radius.m * radius.m});
  }
  for (std::size_t row = 0; row < grid.rows; ++row)
    for (std::size_t column = 0; column < grid.columns; ++column) {
      const double x = grid.origin.x_m + grid.step_m * static_cast<double>(column);
      const double y = grid.origin.y_m + grid.step_m * static_cast<double>(row);
      double& node = rise[row * grid.columns + column];
      for (const Piece& piece : pieces) node += piece.rise_at(x, y);
    }
  return rise;
}

}  // namespace burrow

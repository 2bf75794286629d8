#include "burrow/bore/neutral_cover.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "burrow/bore/steering.h"

namespace burrow {

namespace {

constexpr double least = 0.2, most = 60, growth = 1.12;  // C/D

/// Looks for the cover at which climbing turns into sagging.
class Balance {
 public:
  Balance(const Ground& ground, const Tool& tool) : steering_(ground, tool), diameter_(tool.diameter.m) {}

  /// Shallowest neutral cover in the column, in diameters. `near`: tried first.
  [[nodiscard]] std::optional<double> root(const Column& column, std::optional<double> near = std::nullopt) const {
    if (near) {
      const double low = std::max(*near / growth, least), high = std::min(*near * growth, most);
      if (climb(column, low) > 0 && climb(column, high) <= 0) return between(column, low, high);
    }
    double low = least;
    if (!(climb(column, low) > 0)) return std::nullopt;
    for (; low < most; low *= growth)
      if (climb(column, low * growth) <= 0) return between(column, low, low * growth);
    return std::nullopt;
  }

 private:
  [[nodiscard]] double climb(const Column& column, double cover_diameters) const {
    return steering_.pitch(column, column.surface_m() - (cover_diameters + 0.5) * diameter_, 0).pitch_1_m;
  }
  [[nodiscard]] double between(const Column& column, double low, double high) const {
    std::uintmax_t steps = 60;
    const auto root = boost::math::tools::toms748_solve([&](double cover) { return climb(column, cover); }, low, high,
                                                        boost::math::tools::eps_tolerance<double>(30), steps);
    return 0.5 * (root.first + root.second);
  }

  Steering steering_;
  double diameter_;
};

}  // namespace

std::optional<double> neutral_cover(const Soil& soil, const Tool& tool) {
  const Ground ground = Ground::uniform(soil);
  return Balance(ground, tool).root(ground.column(0, 0));
}

std::vector<NeutralPoint> neutral_line(const Ground& ground, const Tool& tool, const BorePath& path) {
  constexpr double spacing_m = 1.0;
  std::vector<NeutralPoint> line;
  const Balance balance(ground, tool);
  Column column;
  std::optional<double> cover;
  for (const PathPoint& p : path.points) {
    if (&p != &path.points.back() && !line.empty() && p.x_m < line.back().station_m + spacing_m) continue;
    ground.fill(column, p.x_m, p.y_m);
    cover = balance.root(column, cover);
    line.push_back({p.x_m, std::nullopt, std::nullopt});
    if (!cover) continue;
    line.back().cover_m = *cover * tool.diameter.m;
    line.back().elevation_m = column.surface_m() - (*cover + 0.5) * tool.diameter.m;
  }
  return line;
}

}  // namespace burrow

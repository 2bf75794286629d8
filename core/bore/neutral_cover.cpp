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

namespace {

/// About every metre of a path and at its end.
template <class Cover>
std::vector<NeutralPoint> line_along(const Ground& ground, const Tool& tool, const BorePath& path, Cover cover_at) {
  constexpr double spacing_m = 1.0;
  std::vector<NeutralPoint> line;
  for (const PathPoint& p : path.points) {
    if (&p != &path.points.back() && !line.empty() && p.x_m < line.back().station_m + spacing_m) continue;
    const std::optional<double> cover_m = cover_at(p);
    line.push_back({p.x_m, std::nullopt, cover_m});
    if (cover_m) line.back().elevation_m = ground.surface_m(p.x_m, p.y_m) - *cover_m - 0.5 * tool.diameter.m;
  }
  return line;
}

}  // namespace

std::vector<NeutralPoint> neutral_line(const Ground& ground, const Tool& tool, const BorePath& path) {
  const Balance balance(ground, tool);
  Column column;
  std::optional<double> diameters;
  return line_along(ground, tool, path, [&](const PathPoint& p) -> std::optional<double> {
    ground.fill(column, p.x_m, p.y_m);
    diameters = balance.root(column, diameters);
    return diameters ? std::optional(*diameters * tool.diameter.m) : std::nullopt;
  });
}

NeutralTable::NeutralTable(const Ground& ground, const Tool& tool, double from_m, double to_m, double y_m)
    : from_m_(from_m) {
  const Balance balance(ground, tool);
  Column column;
  std::optional<double> diameters;
  const auto count = static_cast<std::size_t>(std::ceil((to_m - from_m) * per_m_)) + 2;
  for (std::size_t i = 0; i < count; ++i) {
    ground.fill(column, from_m + static_cast<double>(i) / per_m_, y_m);
    diameters = balance.root(column, diameters);
    covers_m_.push_back(diameters ? std::optional(*diameters * tool.diameter.m) : std::nullopt);
  }
}

std::optional<double> NeutralTable::cover_m(double x_m) const {
  const double at = std::clamp((x_m - from_m_) * per_m_, 0.0, static_cast<double>(covers_m_.size() - 2));
  const auto left = static_cast<std::size_t>(at);
  const std::optional<double>&a = covers_m_[left], &b = covers_m_[left + 1];
  const double share = at - static_cast<double>(left);
  if (!a || !b) return share < 0.5 ? a : b;
  return *a + share * (*b - *a);
}

std::vector<NeutralPoint> neutral_line(const Ground& ground, const NeutralTable& table, const Tool& tool,
                                       const BorePath& path) {
  return line_along(ground, tool, path, [&](const PathPoint& p) { return table.cover_m(p.x_m); });
}

}  // namespace burrow

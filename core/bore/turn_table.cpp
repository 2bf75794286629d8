#include "burrow/bore/turn_table.h"

#include <cmath>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {
constexpr double least_column_step_m = 0.05, most_column_step_m = 0.25;
constexpr std::size_t finer = 2;         // rows between two depths at which `Steering` is asked
constexpr std::size_t most_rows = 2048;  // deeper than this the last row holds
constexpr std::size_t most_stations = 500;

std::vector<const LevelLine*> lines_of(const Site& site) {
  std::vector<const LevelLine*> lines{&site.ground};
  if (site.water && !site.water->empty()) lines.push_back(&*site.water);
  for (const Stratum& stratum : site.strata)
    if (stratum.top && !stratum.top->empty()) lines.push_back(&*stratum.top);
  return lines;
}

/// Stations at which `Steering` is asked: every bend of a line, and between bends so often that no line moves by more
/// than `shift` against the ground. A single one where every line keeps its distance from the ground.
struct Stations {
  std::vector<double> x_m;
  double steepest = 0;  ///< slope of a line against the ground
};

Stations stations_of(const Site& site, const TurnExtent& extent, double shift) {
  const auto lines = lines_of(site);
  std::vector<double> bends{extent.from_m, extent.to_m};
  for (const LevelLine* line : lines)
    for (const LevelPoint& p : *line)
      if (p.station_m > extent.from_m && p.station_m < extent.to_m) bends.push_back(p.station_m);
  std::sort(bends.begin(), bends.end());
  bends.erase(std::unique(bends.begin(), bends.end()), bends.end());

  const auto moved = [&](double from, double to) {
    double most = 0;
    for (const LevelLine* line : lines)
      most = std::max(most, std::abs(elevation_at(*line, to) - elevation_at(*line, from) -
                                     elevation_at(site.ground, to) + elevation_at(site.ground, from)));
    return most;
  };
  double total = 0;
  Stations stations{{extent.from_m}};
  for (std::size_t i = 1; i < bends.size(); ++i) {
    const double by = moved(bends[i - 1], bends[i]);
    total += by;
    stations.steepest = std::max(stations.steepest, by / (bends[i] - bends[i - 1]));
  }
  if (total == 0) return stations;
  shift = std::max(shift, total / most_stations);
  for (std::size_t i = 1; i < bends.size(); ++i) {
    const double from = bends[i - 1], to = bends[i];
    const int parts = std::max(1, static_cast<int>(std::ceil(moved(from, to) / shift)));
    for (int k = 1; k <= parts; ++k) stations.x_m.push_back(from + (to - from) * k / parts);
  }
  return stations;
}

/// Cubic through four even nodes, between the middle two.   Source: Catmull & Rom 1974 (textbook).
float cubic(float a, float b, float c, float d, float t) {
  return b + 0.5F * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}
}  // namespace

TurnTable::Profile TurnTable::profile(const Ground& ground, const Steering& steering, double x_m, double y_m) {
  const Column column = ground.column(x_m, y_m);
  const auto z_at = [&](std::size_t row) {
    return column.surface_m() - top_m_ - static_cast<double>(row) / rows_per_m_;
  };
  const std::size_t asked = (rows_ - 1) / finer + 1;
  std::vector<TurnNode> coarse(asked);
  for (std::size_t i = 0; i < asked; ++i) {
    const Steer steer = steering.pitch(column, z_at(i * finer), 0);
    coarse[i] = {static_cast<float>(steer.pitch_1_m + steer.sag_1_m), static_cast<float>(steer.sag_1_m)};
  }
  asked_ += asked;

  Profile profile;
  profile.nodes.resize(rows_);
  profile.soils.resize(rows_);
  for (std::size_t row = 0; row < rows_; ++row) {
    const std::size_t b = std::min(row / finer, asked - 2), a = b > 0 ? b - 1 : 0, c = b + 1;
    const std::size_t d = std::min(b + 2, asked - 1);
    const float t = static_cast<float>(row - b * finer) / finer;
    const auto at = [&](float TurnNode::*m) {
      return cubic(coarse[a].*m, coarse[b].*m, coarse[c].*m, coarse[d].*m, t);
    };
    profile.nodes[row] = {at(&TurnNode::asymmetry_1_m), at(&TurnNode::sag_1_m)};

    const Layer& layer = column.layer_at(z_at(row));
    profile.soils[row] = static_cast<std::uint16_t>(layer.soil);
    if (chances_.size() <= layer.soil) chances_.resize(layer.soil + 1);
    const Soil& soil = *layer.properties;
    chances_[layer.soil] = {soil.wander.rad_sqrt_m, soil.stone_rate.per_m, soil.stone_kick.rad,
                            soil.refusal_rate.per_m};
  }
  return profile;
}

TurnTable::TurnTable(const Site& site, const Ground& ground, const Steering& steering, const Tool& tool,
                     const TurnExtent& extent, double y_m)
    : from_m_(extent.from_m), top_m_(0.5 * tool.diameter.m), rows_per_m_(4 * finer / tool.diameter.m) {
  BURROW_ENSURE(extent.to_m > extent.from_m);
  const double rows = std::max(extent.deepest_m - top_m_, tool.diameter.m) * rows_per_m_ / finer;
  rows_ = finer * static_cast<std::size_t>(std::min(std::ceil(rows), 1.0 * most_rows / finer)) + 1;
  last_row_ = static_cast<double>(rows_ - 1) * (1 - 1e-12);

  const double half = 0.5 * tool.diameter.m, length = extent.to_m - extent.from_m;
  const Stations stations = stations_of(site, extent, half);
  const double step = std::clamp(half / std::max(stations.steepest, 1e-6), least_column_step_m, most_column_step_m);
  const auto columns = static_cast<std::size_t>(std::ceil(length / step)) + 1;
  columns_per_m_ = static_cast<double>(columns - 1) / length;
  last_column_ = static_cast<double>(columns - 1) * (1 - 1e-12);
  const auto x_of = [&](std::size_t column) { return from_m_ + static_cast<double>(column) / columns_per_m_; };
  for (std::size_t i = 0; i < columns; ++i) surface_m_.push_back(ground.surface_m(x_of(i), y_m));

  level_ = std::all_of(surface_m_.begin(), surface_m_.end(), [&](double z) { return z == surface_m_[0]; });

  single_ = stations.x_m.size() == 1;
  nodes_.resize(single_ ? rows_ : columns * rows_);
  soils_.resize(nodes_.size());
  Profile left = profile(ground, steering, stations.x_m.front(), y_m);
  if (single_) {
    write(0, left, left, 0);
  } else {
    Profile right = profile(ground, steering, stations.x_m[1], y_m);
    std::size_t next = 1;
    for (std::size_t i = 0; i < columns; ++i) {
      while (next + 1 < stations.x_m.size() && x_of(i) > stations.x_m[next]) {
        left = std::move(right);
        right = profile(ground, steering, stations.x_m[++next], y_m);
      }
      const double from = stations.x_m[next - 1], to = stations.x_m[next];
      write(i, left, right, std::clamp((x_of(i) - from) / (to - from), 0.0, 1.0));
    }
  }
  one_soil_ = std::all_of(soils_.begin(), soils_.end(), [&](std::uint16_t soil) { return soil == soils_.front(); });
}

void TurnTable::write(std::size_t column, const Profile& left, const Profile& right, double share) {
  const std::size_t first = column * rows_;
  const Profile& nearest = share > 0.5 ? right : left;
  for (std::size_t row = 0; row < rows_; ++row)
    nodes_[first + row] = between(left.nodes[row], right.nodes[row], static_cast<float>(share));
  for (std::size_t row = 0; row < rows_; ++row) soils_[first + row] = nearest.soils[row];
}

}  // namespace burrow

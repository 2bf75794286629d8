#include "burrow/bore/fan_table.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr double least_apart_m = 0.5, most_apart_m = 4;
constexpr double deepest_row = 4000;

/// Greatest slope of a line of the site against the ground.
double steepest(const Site& site) {
  std::vector<const LevelLine*> lines;
  if (site.water && !site.water->empty()) lines.push_back(&*site.water);
  for (const Stratum& stratum : site.strata)
    if (stratum.top && !stratum.top->empty()) lines.push_back(&*stratum.top);
  double slope = 0;
  for (const LevelLine* line : lines) {
    std::vector<double> bends;
    for (const LevelPoint& p : *line) bends.push_back(p.station_m);
    for (const LevelPoint& p : site.ground) bends.push_back(p.station_m);
    std::sort(bends.begin(), bends.end());
    const auto below = [&](double x) { return elevation_at(site.ground, x) - elevation_at(*line, x); };
    for (std::size_t i = 1; i < bends.size(); ++i)
      if (bends[i] - bends[i - 1] > 1e-6)
        slope = std::max(slope, std::abs(below(bends[i]) - below(bends[i - 1])) / (bends[i] - bends[i - 1]));
  }
  return slope;
}

}  // namespace

FanTable::FanTable(const Site& site, const Ground& ground, const Tool& tool, const LaunchLine& line, bool coarse)
    : ground_(&ground),
      steering_(ground, tool),
      line_(line),
      top_m_(0.5 * tool.diameter.m),
      row_m_((coarse ? 0.5 : 0.25) * tool.diameter.m),
      apart_m_(least_apart_m) {
  if (!site.strips.empty()) return;
  const double slope = steepest(site);
  single_ = slope < 1e-6;
  apart_m_ = std::clamp(0.5 * tool.diameter.m / std::max(slope, 1e-6), least_apart_m, most_apart_m);
}

FanTable::Profile& FanTable::profile(long station) {
  const auto [found, made] = profiles_.try_emplace(station);
  if (made) {
    const double x = static_cast<double>(station) * apart_m_;
    ground_->fill(found->second.column, single_ ? line_.x_m : x, line_.at(single_ ? line_.x_m : x));
  }
  return found->second;
}

FanTable::Node FanTable::ask(const Profile& profile, std::size_t row) const {
  const Column& column = profile.column;
  const double z = column.surface_m() - top_m_ - static_cast<double>(row) * row_m_;
  const Soil& soil = *column.layer_at(z).properties;
  const double sigma = soil.wander.rad_sqrt_m, kick = soil.stone_kick.rad;
  return {steering_.pitch(column, z, 0).pitch_1_m, sigma * sigma + soil.stone_rate.per_m * kick * kick};
}

void FanTable::fill(Profile& profile, std::size_t from, std::size_t to) const {
  if (profile.from == profile.to) profile.from = profile.to = from;
  if (profile.nodes.size() < to) profile.nodes.resize(to);
  for (std::size_t row = from; row < profile.from; ++row) profile.nodes[row] = ask(profile, row);
  for (std::size_t row = profile.to; row < to; ++row) profile.nodes[row] = ask(profile, row);
  profile.from = std::min(profile.from, from);
  profile.to = std::max(profile.to, to);
}

void FanTable::look(double x_m, const FanLanes& depth_m, Look& look) {
  FanLanes place;
  for (std::size_t k = 0; k < fan_lanes; ++k) {
    const double row = (depth_m[k] - top_m_) / row_m_;
    place[k] = row > 0 ? std::min(row, deepest_row) : 0;  // a depth that is no number leaves no row
  }
  const auto [lowest, highest] = std::minmax_element(place.begin(), place.end());
  const auto first = static_cast<std::size_t>(*lowest), last = static_cast<std::size_t>(*highest);
  const double along = single_ ? 0 : std::floor(x_m / apart_m_);
  const double share = single_ ? 0 : x_m / apart_m_ - along;
  Profile& left = profile(static_cast<long>(along));
  Profile& right = share > 0 ? profile(static_cast<long>(along) + 1) : left;
  for (Profile* p : {&left, &right}) {
    fill(*p, first > 0 ? first - 1 : 0, last + 3);
    if (&left == &right) break;
  }
  const auto at = [&](const Profile& p, std::size_t k, double weight) {
    const auto row = static_cast<std::size_t>(place[k]);
    const double t = place[k] - static_cast<double>(row);
    const Node &above = p.nodes[row > 0 ? row - 1 : 0], &a = p.nodes[row], &b = p.nodes[row + 1], &c = p.nodes[row + 2];
    look.pitch_1_m[k] += weight * (a.pitch_1_m + t * (b.pitch_1_m - a.pitch_1_m));
    look.noise_rad2_m[k] += weight * (a.noise_rad2_m + t * (b.noise_rad2_m - a.noise_rad2_m));
    const double here = above.pitch_1_m - b.pitch_1_m, next = a.pitch_1_m - c.pitch_1_m;
    look.gradient_1_m2[k] += weight * (here + t * (next - here)) / (2 * row_m_);
  };
  look = {};
  for (std::size_t k = 0; k < fan_lanes; ++k) at(left, k, 1 - share);
  if (share > 0)
    for (std::size_t k = 0; k < fan_lanes; ++k) at(right, k, share);
}

}  // namespace burrow

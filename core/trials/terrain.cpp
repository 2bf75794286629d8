#include "terrain.h"

#include <boost/container/small_vector.hpp>
#include <limits>

namespace burrow::trials {

namespace {
constexpr std::size_t most_strips = 32;
constexpr double far_m = 1e5;

/// The site with these strips spread over all of it, and no others.
Site spread_over(const Site& site, std::initializer_list<std::size_t> strips) {
  Site spread = site;
  spread.strips.clear();
  for (const std::size_t i : strips) {
    spread.strips.push_back(site.strips[i]);
    spread.strips.back().outline = {{-far_m, -far_m}, {far_m, -far_m}, {far_m, far_m}, {-far_m, far_m}};
  }
  return spread;
}
}  // namespace

Terrain::Terrain(const Site& site, const Tables& tables, const Tool& tool, const TurnExtent& extent)
    : radius_m_(0.5 * tool.diameter.m), reach_m_(2 * tool.diameter.m) {
  const auto add = [&](Mask mask, std::initializer_list<std::size_t> strips, const TurnExtent& part) {
    const Site spread = spread_over(site, strips);
    const Ground ground(spread, tables);
    const Steering steering(ground, tool);
    greatest_1_m_ = steering.greatest_1_m();
    tables_.emplace_back(mask, TurnTable(spread, ground, steering, tool, part, 0));
  };
  add(0, {}, extent);
  const std::size_t count = std::min(site.strips.size(), most_strips);
  const auto part_of = [&](double low, double high) {
    TurnExtent part = extent;
    part.from_m = std::clamp(low - reach_m_, extent.from_m, extent.to_m - 0.1);
    part.to_m = std::clamp(high + reach_m_, part.from_m + 0.1, std::max(extent.to_m, part.from_m + 0.1));
    return part;
  };
  for (std::size_t i = 0; i < count; ++i) {
    Strip strip{site.strips[i].outline, far_m, -far_m, far_m, -far_m};
    for (const PlanPoint& p : strip.outline) {
      strip.x_low_m = std::min(strip.x_low_m, p.x_m);
      strip.x_high_m = std::max(strip.x_high_m, p.x_m);
      strip.y_low_m = std::min(strip.y_low_m, p.y_m);
      strip.y_high_m = std::max(strip.y_high_m, p.y_m);
    }
    add(Mask{1} << i, {i}, part_of(strip.x_low_m, strip.x_high_m));
    for (std::size_t j = 0; j < i; ++j) {
      const Strip& other = strips_[j];
      if (other.x_low_m > strip.x_high_m || other.x_high_m < strip.x_low_m || other.y_low_m > strip.y_high_m ||
          other.y_high_m < strip.y_low_m)
        continue;
      add(Mask{1} << i | Mask{1} << j, {j, i},
          part_of(std::max(strip.x_low_m, other.x_low_m), std::min(strip.x_high_m, other.x_high_m)));
    }
    strips_.push_back(std::move(strip));
  }
}

bool Terrain::strip_near(double x_m, double y_m) const {
  return std::any_of(strips_.begin(), strips_.end(), [&](const Strip& s) {
    return x_m + reach_m_ >= s.x_low_m && x_m - reach_m_ <= s.x_high_m && y_m + reach_m_ >= s.y_low_m &&
           y_m - reach_m_ <= s.y_high_m;
  });
}

Terrain::Mask Terrain::mask(double x_m, double y_m) const {
  Mask mask = 0;
  for (std::size_t i = 0; i < strips_.size(); ++i) {
    const Strip& s = strips_[i];
    if (x_m >= s.x_low_m && x_m <= s.x_high_m && y_m >= s.y_low_m && y_m <= s.y_high_m && inside(s.outline, x_m, y_m))
      mask |= Mask{1} << i;
  }
  return mask;
}

const TurnTable& Terrain::table(Mask mask) const {
  Mask last = 0;
  for (const auto& [of, table] : tables_)
    if (of == mask) return table;
  for (std::size_t i = 0; i < strips_.size(); ++i)
    if (mask & Mask{1} << i) last = Mask{1} << i;
  for (const auto& [of, table] : tables_)
    if (of == last) return table;
  return plain();
}

/// Mean limit pressure along a level ray, in units that cancel.
double Terrain::stiffness_beside(double x_m, double y_m, double depth_m, double across_x, double across_y,
                                 bool& cut) const {
  const double outer = std::max(std::min(reach_m_, depth_m), radius_m_ * (1 + 1e-9));
  boost::container::small_vector<double, 8> cuts{radius_m_, outer};
  for (const Strip& strip : strips_) {
    const PlanLine& line = strip.outline;
    if (line.size() < 3) continue;
    for (std::size_t i = 0, j = line.size() - 1; i < line.size(); j = i++) {
      const double ex = line[i].x_m - line[j].x_m, ey = line[i].y_m - line[j].y_m;
      const double px = line[j].x_m - x_m, py = line[j].y_m - y_m;
      const double determinant = ex * across_y - ey * across_x;
      if (determinant == 0) continue;
      const double along_edge = (across_x * py - across_y * px) / determinant;
      const double r = (ex * py - ey * px) / determinant;
      if (along_edge >= 0 && along_edge <= 1 && r > radius_m_ && r < outer) cuts.push_back(r);
    }
  }
  cut = cut || cuts.size() > 2;
  std::sort(cuts.begin(), cuts.end());
  double integral = 0, weight = 0;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    if (!(cuts[i] > cuts[i - 1])) continue;
    const double middle = 0.5 * (cuts[i - 1] + cuts[i]), width = 1 / cuts[i - 1] - 1 / cuts[i];
    const double x = x_m + middle * across_x, y = y_m + middle * across_y;
    const TurnTable& there = table(mask(x, y));
    const double sag = there.turn(there.place(x), depth_m).sag_1_m;
    integral += sag > 0 ? width / sag : 0;
    weight += width;
  }
  return integral / weight;
}

Terrain::Turn Terrain::beside_strips(double x_m, double y_m, double depth_m, double cos_heading,
                                     double sin_heading) const {
  const TurnTable& here = table(mask(x_m, y_m));
  const TurnTable::Place place = here.place(x_m);
  Turn turn;
  turn.pitch = here.turn(place, depth_m);
  turn.chance = here.chances()[here.soil(place, depth_m)];
  bool cut = false;
  const double left = stiffness_beside(x_m, y_m, depth_m, -sin_heading, cos_heading, cut);
  const double right = stiffness_beside(x_m, y_m, depth_m, sin_heading, -cos_heading, cut);
  // A ray that starts in another piece than the axis lies in is not cut, but the two then differ by more than rounding.
  if ((cut || mask(x_m - radius_m_ * sin_heading, y_m + radius_m_ * cos_heading) !=
                  mask(x_m + radius_m_ * sin_heading, y_m - radius_m_ * cos_heading)) &&
      left + right > 0)
    turn.yaw_1_m = (right - left) / (right + left) * greatest_1_m_;
  return turn;
}

}  // namespace burrow::trials

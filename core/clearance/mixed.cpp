#include "mixed.h"

#include <boost/math/tools/minima.hpp>
#include <cmath>

#include "burrow/base/quantity.h"
#include "burrow/bore/fan_nodes.h"
#include "burrow/bore/normal_table.h"

namespace burrow::clearance {

namespace {

constexpr double least_sd_m = 1e-6;
constexpr double out_of_reach_sd = 8;
constexpr double ends_out_of_reach_sd = 6;
constexpr double not_worth_searching = 1e-6;
constexpr double parallel = 1e-3;       // sine below which two lines have no common normal
constexpr std::size_t few_grounds = 4;  // with more the nodes of all of them lie close enough together
constexpr double shallow_below_rad = 20 * pi / 180;

struct Axes {
  Vector normal, along;  // across the strip; along it as seen
};

Vector times(const Vector& a, double k) {
  return {a.x * k, a.y * k, a.z * k};
}

Axes axes_of(const Vector& d, const Vector& line, const Vector& normal) {
  const Vector n = cross(d, line);
  const double size = length(n);
  if (size > parallel) {
    const Vector unit_n = times(n, 1 / size);
    return {unit_n, cross(unit_n, d)};
  }
  return {normal, cross(normal, d)};
}

/// Chance of lying between −half and half about `off`.
double within(double off, double half, double sd) {
  return normal_below((half - off) / sd) - normal_below((-half - off) / sd);
}

}  // namespace

void MixedChances::begin(const Pair& pair, Mixture& shown) {
  pair_ = &pair;
  shown_ = &shown;
  most_ = {-1, -1, -1};
  shown_->grounds.resize(fans_.size());
  for (std::size_t fan = 0; fan < fans_.size(); ++fan) shown_->grounds[fan].share = fans_.chance(fan);
}

/// Leaves out the points of c at which nothing can meet. Of these only multiples of the stride are looked at: between
/// two of them that lie beyond the same side the straight pieces add nothing.
void MixedChances::narrow(Bores& bores, double wide_m, double place_m2) {
  const std::size_t stride = bores.stride;
  const auto near = [&](std::size_t i) {
    const double sd = std::sqrt(std::max(bores.variance_m2[i] + place_m2, least_sd_m * least_sd_m));
    return std::abs(bores.gap_m[i]) - wide_m <= out_of_reach_sd * sd;
  };
  const auto passes_by = [&](std::size_t i) {  // between this point and the next
    return !near(i) && !near(i + stride) && (bores.gap_m[i] > 0) == (bores.gap_m[i + stride] > 0);
  };
  bores.from = 0;
  bores.to = fan_points - 1;
  while (bores.from < bores.to && passes_by(bores.from)) bores.from += stride;
  while (bores.to > bores.from && passes_by(bores.to - stride)) bores.to -= stride;
}

/// At all points, or at the nodes alone where no others are asked for.
FanPoints MixedChances::points_of(const FanLanes& nodes, std::size_t stride) {
  if (stride == 1) return fan_points_of(nodes);
  FanPoints points{};
  for (std::size_t k = 0; k < fan_lanes; ++k) points[k * fan_finer] = nodes[k];
  return points;
}

/// Fills in one fan, unless no bore of it comes near.
void MixedChances::take(const View& view, std::size_t fan, double radius_m, double wide_m, const Place& place) {
  const FanSpot spot = fans_.at(fan, view.station_m);
  const double cos_heading = 1 / std::sqrt(1 + fans_.tan_heading() * fans_.tan_heading());
  const double sin_heading = fans_.tan_heading() * cos_heading;
  FanLanes gap, variance, along, along_variance;
  bool above = true, below = true, ends_matter = false;
  Axes axes = axes_of(view.forward, view.line, view.normal);
  for (std::size_t k = 0; k < fan_lanes; ++k) {
    if (!view.shallow) {
      const Vector d{spot.cos_grade[k] * cos_heading, spot.cos_grade[k] * sin_heading, spot.sin_grade[k]};
      axes = axes_of(d, view.line, view.normal);
    }
    const Vector w{view.on_utility.x_m - spot.x_m, view.on_utility.y_m - spot.y_m[k],
                   view.on_utility.z_m - spot.z_m[k]};
    const auto variance_along = [&](const Vector& n) {
      const double aside = n.y * cos_heading - n.x * sin_heading;
      return spot.left_var_m2[k] * aside * aside + spot.up_var_m2[k] * n.z * n.z;
    };
    gap[k] = dot(w, axes.normal);
    variance[k] = variance_along(axes.normal);
    const double reach = wide_m + out_of_reach_sd * std::max(std::sqrt(variance[k] + place.across_m2), least_sd_m);
    above = above && gap[k] > reach;
    below = below && gap[k] < -reach;
    along[k] = -dot(w, axes.along);
    along_variance[k] = variance_along(axes.along);
    const double end = ends_out_of_reach_sd * std::sqrt(along_variance[k] + place.along_m2);
    ends_matter = ends_matter || view.ahead_m - along[k] < end || view.behind_m + along[k] < end;
  }
  if (above || below) return;
  Bores& bores = bores_.emplace_back();
  bores.fan = fan;
  bores.chance = fans_.chance(fan);
  bores.stride = view.shallow || fans_.size() > few_grounds ? fan_finer : 1;
  bores.gap_nodes_m = gap;
  bores.variance_nodes_m2 = variance;
  bores.gap_m = points_of(gap, bores.stride);
  bores.variance_m2 = points_of(variance, bores.stride);
  narrow(bores, wide_m, place.across_m2);
  bores.ends_matter = ends_matter;
  if (!ends_matter) return;
  for (const Kind kind : {contact, worst, encroachment}) {
    const double end = (kind == encroachment ? wide_m : radius_m) * pi / 4;
    const double half = (view.ahead_m + view.behind_m) / 2 + end, middle = (view.ahead_m - view.behind_m) / 2;
    FanLanes share;
    for (std::size_t k = 0; k < fan_lanes; ++k) {
      const double off = along[k] - middle, least = std::sqrt(along_variance[k]);
      const double stated = std::max(std::sqrt(along_variance[k] + place.along_m2), least_sd_m);
      share[k] = kind == worst ? worst_crossing_chance(off, half, least, stated) : within(off, half, stated);
    }
    bores.share[kind] = points_of(share, bores.stride);
  }
}

double MixedChances::sum(Kind kind, double radius_m, double place_m2) {
  double chance = 0;
  each_.clear();
  FanPoints low, high;
  for (const Bores& bores : bores_) {
    for (std::size_t i = bores.from; i <= bores.to; i += bores.stride) {
      const double inverse = 1 / std::sqrt(std::max(bores.variance_m2[i] + place_m2, least_sd_m * least_sd_m));
      low[i] = (-radius_m - bores.gap_m[i]) * inverse;
      high[i] = (radius_m - bores.gap_m[i]) * inverse;
    }
    const FanPoints* share = bores.ends_matter ? &bores.share[kind] : nullptr;
    each_.push_back(bores.stride > 1 ? fan_chance_at_nodes(low, high, share, bores.from, bores.to)
                                     : fan_chance_between(low, high, share, bores.from, bores.to));
    chance += bores.chance * each_.back();
  }
  return std::clamp(chance, 0.0, 1.0);
}

/// The largest sum for a location error from 0 to the stated one: looked for at errors twice one another, the same ones
/// whatever is stated, then around the best of them.
MixedChances::Worst MixedChances::worst_of(double radius_m, double stated_m) {
  const auto at = [&](double sd) { return sum(worst, radius_m, sd * sd); };
  std::vector<Worst> tried{{at(stated_m), stated_m}};
  if (!(stated_m > least_sd_m)) return tried.front();
  tried.push_back({at(0), 0});
  double narrowest = stated_m * stated_m;
  for (const Bores& bores : bores_)
    for (const double variance : bores.variance_nodes_m2) narrowest = std::min(narrowest, std::max(variance, 0.0));
  double sd = 0.001;
  while (sd < 0.25 * std::sqrt(narrowest)) sd *= 2;
  for (; sd < stated_m; sd *= 2) tried.push_back({at(sd), sd});
  std::sort(tried.begin(), tried.end(), [](const Worst& a, const Worst& b) { return a.sd_m < b.sd_m; });
  const auto best =
      std::max_element(tried.begin(), tried.end(), [](const Worst& a, const Worst& b) { return a.chance < b.chance; });
  const bool first = best == tried.begin(), last = best + 1 == tried.end();
  if (first || best->chance < not_worth_searching) return *best;
  if (last && at(0.98 * stated_m) <= best->chance) return *best;
  std::uintmax_t steps = 20;
  const double from = (best - 1)->sd_m, to = last ? stated_m : (best + 1)->sd_m;
  const auto found = boost::math::tools::brent_find_minima([&](double s) { return -at(s); }, from, to, 11, steps);
  return -found.second > best->chance ? Worst{-found.second, found.first} : *best;
}

void MixedChances::show(double MixedGround::*member) {
  for (MixedGround& ground : shown_->grounds) ground.*member = 0;
  for (std::size_t i = 0; i < each_.size(); ++i) shown_->grounds[bores_[i].fan].*member = each_[i];
}

void MixedChances::show_rows(double place_m2) {
  shown_->utility_sd_m = std::sqrt(place_m2);
  shown_->ends_matter = false;
  shown_->rows.clear();
  for (const Bores& bores : bores_) {
    shown_->ends_matter = shown_->ends_matter || bores.ends_matter;
    if (bores.fan != 0) continue;
    shown_->rows.reserve(fan_lanes);
    for (std::size_t k = 0; k < fan_lanes; ++k)
      shown_->rows.push_back({fans_.constants()[k], bores.gap_nodes_m[k], std::sqrt(bores.variance_nodes_m2[k]),
                              bores.ends_matter ? bores.share[contact][k * fan_finer] : 1});
  }
}

Chances MixedChances::of(const View& view) {
  const auto left_of = [&](double radius) {
    return std::sqrt(std::max(radius * radius - view.along_bore_m * view.along_bore_m, 0.0));
  };
  const double radius = left_of(pair_->radius_m), wide = left_of(pair_->encroachment_radius_m);
  const Axes axes = axes_of(view.forward, view.line, view.normal);
  const Place place{view.error.variance_along(axes.normal, view.across_line),
                    view.error.variance_along(axes.along, view.across_line)};
  Chances chances;
  if (!(wide > 0)) return chances;
  bores_.clear();
  for (std::size_t fan = 0; fan < fans_.size(); ++fan) take(view, fan, radius, wide, place);
  if (bores_.empty()) return chances;
  if (radius > 0) {
    chances.contact = sum(contact, radius, place.across_m2);
    if (chances.contact > most_.contact) {
      show(&MixedGround::contact);
      show_rows(place.across_m2);
    }
    const Worst found = worst_of(radius, std::sqrt(place.across_m2));
    const bool is_worse = found.chance > chances.contact;
    chances.worst = is_worse ? found.chance : chances.contact;
    if (chances.worst > most_.worst) {
      shown_->worst_sd_m = is_worse ? found.sd_m : std::sqrt(place.across_m2);
      sum(is_worse ? worst : contact, radius, shown_->worst_sd_m * shown_->worst_sd_m);
      show(&MixedGround::worst);
    }
  }
  chances.encroachment = sum(encroachment, wide, place.across_m2);
  if (chances.encroachment > most_.encroachment) show(&MixedGround::encroachment);
  most_ = larger(most_, chances);
  return chances;
}

Chances MixedChances::at_nearest(const Station& station, const Approach& near) {
  const Point3 on = known_point(near.on_utility);
  const Vector gap = on - station.at;
  // A mean path that comes out early is nearest at its end; the bores that go on pass where the utility lies.
  const bool beyond = pair_->path.ends != PathEnd::exit && on.x_m > pair_->axis.points().back().x_m;
  const auto with = [&](std::size_t segment) {
    const Reach reach = reach_at(*pair_, station, near, segment);
    View view;
    view.station_m = beyond ? on.x_m : station.at.x_m;
    view.on_utility = on;
    view.forward = station.forward;
    view.line = length(reach.line) > 0 ? unit(reach.line, {}) : Vector{};
    view.normal = unit(gap, station.up);
    view.behind_m = reach.behind_m;
    view.ahead_m = reach.ahead_m;
    view.error = pair_->error_at(near.utility_segment, near.on_utility_share);
    view.across_line = across(reach.line);
    view.along_bore_m = beyond ? 0 : dot(gap, station.forward);
    view.shallow = near.angle_rad && *near.angle_rad < shallow_below_rad;
    return of(view);
  };
  const Chances chances = with(near.utility_segment);
  const std::optional<std::size_t> other = other_segment(*pair_, near);
  return other ? larger(chances, with(*other)) : chances;
}

Chances MixedChances::at_section(const RunSection& section) {
  const Point3& at = section.station.at;
  View view;
  view.station_m = at.x_m;
  view.on_utility = {at.x_m + section.gap.x, at.y_m + section.gap.y, at.z_m + section.gap.z};
  view.forward = section.station.forward;
  view.normal = unit(section.gap, section.station.up);
  view.error = section.error;
  view.across_line = section.across_line;
  view.shallow = true;
  return of(view);
}

}  // namespace burrow::clearance

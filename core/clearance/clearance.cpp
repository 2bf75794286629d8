#include "burrow/clearance/clearance.h"

#include <algorithm>
#include <cmath>

#include "burrow/clearance/contact.h"
#include "chances.h"

namespace burrow {

namespace {

using namespace clearance;

constexpr double bound_below_rad = 20 * pi / 180;

/// All of the line crosses at 45° or more: the distance then grows faster along it than any spread, and the circle of
/// an end section lies inside the stadium at the nearest place.
bool steep_everywhere(const Utility& utility) {
  for (std::size_t i = 1; i < utility.path.size(); ++i) {
    const PathVertex& a = utility.path[i - 1];
    const PathVertex& b = utility.path[i];
    const double rise = a.z_m && b.z_m ? *b.z_m - *a.z_m : 0;
    if (std::abs(b.x_m - a.x_m) > std::hypot(b.y_m - a.y_m, rise)) return false;
  }
  return true;
}

void add_chances(Clearance& c, const Pair& pair, const Station& station, const Approach& near, double greatest_sd_m) {
  const double reach = pair.encroachment_radius_m + no_chance_beyond_sd * greatest_sd_m;
  Chances chances;
  c.bound = c.angle_rad && *c.angle_rad < bound_below_rad;
  if (near.distance_m <= reach) {
    chances = at_nearest(pair, station, near);
    const RunSection run = worst_section(pair);
    if (run.found) c.gap_low_m = std::min(*c.gap_low_m, run.gap_low_m);
    if (run.found && !steep_everywhere(pair.utility)) {
      const Chances beside = at_section(pair, run, chances.worst);
      c.bound = c.bound || beside.contact > chances.contact;
      chances = larger(chances, beside);
    }
  }
  c.contact_chance = chances.contact;
  c.contact_chance_worst = chances.worst;
  c.encroachment_chance = chances.encroachment;
}

double rule_for(const Clearance& c, const Utility& utility, const ClearanceRules& rules) {
  double rule = c.unexposed ? rules.traced.m : rules.exposed.m;
  if (c.unexposed && c.dangerous) {
    rule = rules.unexposed_dangerous.m;
    if (c.kind == UtilityKind::power && rules.unexposed_power) rule = rules.unexposed_power->m;
    if (c.kind == UtilityKind::steam && rules.unexposed_steam) rule = rules.unexposed_steam->m;
  }
  return std::max(rule, utility.required_clearance ? utility.required_clearance->m : 0);
}

/// Common normal of the two lines where they meet: square to both, or upright where they run together.
Vector common_normal(const Station& station, const Utility& utility, std::size_t segment) {
  if (segment + 1 >= utility.path.size()) return station.up;
  const Vector line = known_point(utility.path[segment + 1]) - known_point(utility.path[segment]);
  return unit(cross(station.forward, line), station.up);
}

Vector line_across(const Utility& utility, std::size_t segment) {
  if (segment + 1 >= utility.path.size()) return {0, 1, 0};
  return across(known_point(utility.path[segment + 1]) - known_point(utility.path[segment]));
}

/// What plan alone can tell: whether the band passes over or under it.
void answer_in_plan(Clearance& c, const Approach& near, const Station& station, const LocationError& error) {
  c.depth_unknown_at_bore = true;
  const double s = std::hypot(station.sd_lateral_m, error.lateral_m);
  c.crossed_by_band = near.distance_m < c.contact_radius_m + band_99_sd * s;
}

void answer_in_space(Clearance& c, const Approach& near, const Station& station, const Pair& pair) {
  const std::size_t segment = near.utility_segment;
  const Vector gap = known_point(near.on_utility) - station.at;
  const Vector n = near.distance_m > 1e-9 ? unit(gap, station.up) : common_normal(station, pair.utility, segment);
  const double bore = station.variance_along(n);
  const double place = pair.error.variance_along(n, line_across(pair.utility, segment));
  const double s = std::sqrt(bore + place);
  c.elevation_m = *near.on_utility.z_m;
  c.on_bore = near.on_bore;
  c.on_utility = known_point(near.on_utility);
  c.axis_distance_m = near.distance_m;
  c.bore_sd_m = std::sqrt(bore);
  c.utility_sd_m = std::sqrt(place);
  c.spread_m = s;
  c.separation_m = near.distance_m - c.contact_radius_m;
  c.gap_low_m = *c.separation_m - band_90_sd * s;
  c.required_m = c.required_fixed_m + (c.unexposed && c.dangerous ? band_90_sd * s : 0);
  c.crossed_by_band = near.distance_m < c.contact_radius_m + band_99_sd * s;
}

double greatest_sd(const BorePath& path) {
  double greatest = 0;
  for (const PathPoint& p : path.points) greatest = std::max({greatest, p.sd_lateral_m, p.sd_vertical_m});
  return greatest;
}

/// Depth below ground at the utility; an unknown elevation leaves only the absolute part of a preset.
double depth_at(const LevelLine& ground, const PathVertex& place) {
  return ground.empty() || !place.z_m ? 0 : std::max(elevation_at(ground, place.x_m) - *place.z_m, 0.0);
}

}  // namespace

LocationSd location_sd(const Located& located, const Tables& tables, double depth_m) {
  LocationSd sd;
  if (located.lateral_sd) sd.lateral_m = located.lateral_sd->m;
  if (located.vertical_sd) sd.vertical_m = located.vertical_sd->m;
  if (!located.level || (sd.lateral_m && sd.vertical_m)) return sd;
  const auto row = std::find_if(tables.locating.begin(), tables.locating.end(),
                                [&](const LocatingPreset& preset) { return preset.id == *located.level; });
  if (row == tables.locating.end()) return sd;
  const auto stated = [&](std::optional<Length> absolute, std::optional<Ratio> share) -> std::optional<double> {
    if (!absolute && !share) return std::nullopt;
    return std::max(absolute ? absolute->m : 0, share ? share->v * depth_m : 0);
  };
  if (!sd.lateral_m) sd.lateral_m = stated(row->lateral, row->lateral_of_depth);
  if (!sd.vertical_m) sd.vertical_m = stated(row->vertical, row->vertical_of_depth);
  return sd;
}

std::vector<Clearance> clearances(const BorePath& path, Length bore_diameter, const std::vector<Utility>& utilities,
                                  const LevelLine& ground, const ClearanceRules& rules, const Tables& tables) {
  const BoreAxis axis(path);
  const double bore_sd_m = greatest_sd(path);
  std::vector<Clearance> answers;
  answers.reserve(utilities.size());
  for (const Utility& utility : utilities) {
    Clearance& c = answers.emplace_back();
    c.id = utility.id;
    c.name = utility.name;
    c.kind = utility.kind;
    c.status = *utility.status;
    c.how = *utility.located.how;
    c.dangerous = row_of(tables, utility.kind).dangerous;
    c.unexposed = c.how != LocatedHow::exposed;
    c.no_diameter = !utility.outside_diameter;
    c.contact_radius_m = bore_diameter.m / 2 + (utility.outside_diameter ? utility.outside_diameter->m / 2 : 0);
    c.required_fixed_m = rule_for(c, utility, rules);

    const std::optional<Approach> near = axis.nearest_to(utility.path);
    const LocationSd sd = location_sd(utility.located, tables, near ? depth_at(ground, near->on_utility) : 0);
    c.no_sd = !sd.lateral_m || !sd.vertical_m;
    if (!near) {
      c.depth_unknown_at_bore = utility.path.empty();
      continue;
    }
    c.station_m = near->on_utility.x_m;
    c.offset_m = near->on_utility.y_m;
    c.angle_rad = near->angle_rad;
    const LocationError error{sd.lateral_m.value_or(0), sd.vertical_m.value_or(0)};
    const Station station = station_on(path, axis, near->bore_segment, near->on_bore_share);
    if (near->depth_unknown) {
      answer_in_plan(c, *near, station, error);
      continue;
    }
    const Pair pair{utility, path, axis, error, c.contact_radius_m, c.contact_radius_m + c.required_fixed_m};
    answer_in_space(c, *near, station, pair);
    add_chances(c, pair, station, *near, std::hypot(bore_sd_m, std::max(error.lateral_m, error.vertical_m)));
  }
  return answers;
}

}  // namespace burrow

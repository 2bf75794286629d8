#include "burrow/clearance/clearance.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/parallel_for.h"
#include "burrow/clearance/contact.h"
#include "burrow/clearance/course.h"
#include "burrow/crossing/statement.h"
#include "chances.h"
#include "mixed.h"

namespace burrow {

namespace {

using namespace clearance;

constexpr double bound_below_rad = 20 * pi / 180;
constexpr double exposed_to_sd_m = 0.1;   // a hole measured worse shows no place
constexpr double exposed_within_m = 0.5;  // of the crossing, along the utility: what a hole of that size shows

/// All of the line crosses at 45° or more: the distance then grows faster along it than any spread, and the circle of
/// an end section lies inside the stadium at the nearest place.
bool steep_everywhere(const std::vector<PathVertex>& line) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    const PathVertex& a = line[i - 1];
    const PathVertex& b = line[i];
    const double rise = a.z_m && b.z_m ? *b.z_m - *a.z_m : 0;
    if (std::abs(b.x_m - a.x_m) > std::hypot(b.y_m - a.y_m, rise)) return false;
  }
  return true;
}

void set(Clearance& c, const Chances& chances) {
  c.contact_chance = chances.contact;
  c.contact_chance_worst = chances.worst;
  c.encroachment_chance = chances.encroachment;
}

void take_lower(Clearance& c, const RunSection& run) {
  if (!(run.gap_low_m < *c.gap_low_m)) return;
  c.gap_low_m = run.gap_low_m;
  c.low_at = run.low_at;
}

/// By the first order: the mean path and its spread.
void add_chances(Clearance& c, const Pair& pair, const Station& station, const Approach& near, double greatest_sd_m) {
  const double reach = pair.encroachment_radius_m + no_chance_beyond_sd * greatest_sd_m;
  Chances chances;
  c.bound = c.angle_rad && *c.angle_rad < bound_below_rad;
  if (near.distance_m <= reach) {
    chances = at_nearest(pair, station, near);
    const RunSection run = steep_everywhere(pair.line) ? RunSection{} : worst_section(pair);
    if (run.found) {
      take_lower(c, run);
      const Chances beside = at_section(pair, run, chances.worst);
      c.bound = c.bound || beside.contact > chances.contact || beside.encroachment > chances.encroachment;
      chances = larger(chances, beside);
    }
  }
  set(c, chances);
}

/// The same summed over the steering constant.
void add_mixed_chances(Clearance& c, const Pair& pair, const Station& station, const Approach& near,
                       MixedChances& mixed) {
  c.mixture.emplace();
  mixed.begin(pair, *c.mixture);
  c.bound = c.angle_rad && *c.angle_rad < bound_below_rad;
  Chances chances = mixed.at_nearest(station, near);
  const RunSection run = steep_everywhere(pair.line) ? RunSection{} : worst_section(pair);
  if (run.found) {
    take_lower(c, run);
    const Chances beside = mixed.at_section(run);
    c.bound = c.bound || beside.contact > chances.contact || beside.encroachment > chances.encroachment;
    chances = larger(chances, beside);
  }
  set(c, chances);
}

/// Common normal of the two lines where they meet: square to both, or upright where they run together.
Vector common_normal(const Station& station, const std::vector<PathVertex>& line, std::size_t segment) {
  if (segment + 1 >= line.size()) return station.up;
  return unit(cross(station.forward, known_point(line[segment + 1]) - known_point(line[segment])), station.up);
}

Vector line_across(const std::vector<PathVertex>& line, std::size_t segment) {
  if (segment + 1 >= line.size()) return {0, 1, 0};
  return across(known_point(line[segment + 1]) - known_point(line[segment]));
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
  const Vector n = near.distance_m > 1e-9 ? unit(gap, station.up) : common_normal(station, pair.line, segment);
  const double bore = station.variance_along(n);
  const LocationError error = pair.error_at(segment, near.on_utility_share);
  const double place = error.variance_along(n, line_across(pair.line, segment));
  const double s = std::sqrt(bore + place);
  c.elevation_m = *near.on_utility.z_m;
  c.on_bore = near.on_bore;
  c.on_utility = known_point(near.on_utility);
  c.axis_distance_m = near.distance_m;
  c.bore_sd_m = std::sqrt(bore);
  c.utility_sd_m = std::sqrt(place);
  c.spread_m = s;
  c.lateral_sd_m = error.lateral_m;
  c.vertical_sd_m = error.vertical_m;
  c.separation_m = near.distance_m - c.contact_radius_m;
  c.gap_low_m = *c.separation_m - band_90_sd * s;
  c.low_at = {near.distance_m, std::sqrt(bore), std::sqrt(place)};
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

bool has_hole(const Utility& utility, const std::vector<TestHole>& holes) {
  return std::any_of(holes.begin(), holes.end(), [&](const TestHole& hole) { return hole.utility == utility.id; });
}

/// The greatest depth that its holes found.
double depth_found(const Utility& utility, const std::vector<TestHole>& holes, const LevelLine& ground) {
  double depth = 0;
  for (const TestHole& hole : holes)
    if (hole.utility == utility.id)
      depth = std::max(depth, depth_at(ground, {hole.station.m, hole.offset.m, centre_of(hole, utility)}));
  return depth;
}

/// Whether a hole lies where the bore crosses. Beside a run of the utility one hole shows little of it.
bool shown_by_hole(const Approach& near, const Utility& utility, const std::vector<TestHole>& holes,
                   const std::optional<Date>& on) {
  if (near.depth_unknown || !near.angle_rad || *near.angle_rad < bound_below_rad) return false;
  const double place = along_in_plan(utility.path, near.on_utility);
  return std::any_of(holes.begin(), holes.end(), [&](const TestHole& hole) {
    return lays_bare(hole, utility, on) &&
           std::abs(along_in_plan(utility.path, {hole.station.m, hole.offset.m, {}}) - place) <= exposed_within_m;
  });
}

/// The line by its holes goes on as that of the record does, with the errors of its ends.
void lengthen(std::vector<PinnedVertex>& line, const LineReach& reach) {
  std::vector<PathVertex> places;
  for (const PinnedVertex& v : line) places.push_back(v.at);
  const std::vector<PathVertex> longer = lengthened(places, reach);
  const PinnedVertex first = line.front(), last = line.back();
  if (longer.size() > line.size() && reach.first_m > 0)
    line.insert(line.begin(), {longer.front(), first.lateral_sd_m, first.vertical_sd_m});
  if (longer.size() > line.size() && reach.last_m > 0)
    line.push_back({longer.back(), last.lateral_sd_m, last.vertical_sd_m});
}

/// What of a utility this far from the bore, with errors of this size, can count: nothing beyond ten deviations and 10
/// m more than its nearest place.
NearBore near_bore(const BorePath& path, double nearest_m, double radius_m, double sd_m) {
  constexpr double more_m = 10;
  NearBore near{path.points.front().x_m, path.points.front().x_m, path.points.front().y_m, path.points.front().y_m,
                nearest_m + radius_m + no_chance_beyond_sd * sd_m + more_m};
  for (const PathPoint& p : path.points) {
    near.from_x_m = std::min(near.from_x_m, p.x_m);
    near.to_x_m = std::max(near.to_x_m, p.x_m);
    near.from_y_m = std::min(near.from_y_m, p.y_m);
    near.to_y_m = std::max(near.to_y_m, p.y_m);
  }
  return near;
}

double greatest_error(const Pair& pair) {
  double greatest = std::max(pair.error.lateral_m, pair.error.vertical_m);
  for (const PinnedVertex& v : pair.pinned) greatest = std::max({greatest, v.lateral_sd_m, v.vertical_sd_m});
  return greatest;
}

}  // namespace

Length clear_gap_wanted(const ClearanceRules& rules, const Utility& utility, bool unexposed) {
  Length wanted = rules.of(utility.kind, unexposed);
  if (utility.required_clearance) wanted = std::max(wanted, *utility.required_clearance);
  if (utility.agreed.distance) wanted = std::max(wanted, *utility.agreed.distance);
  return wanted;
}

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

namespace {

/// What all utilities of one bore are asked with.
struct Asked {
  const BorePath& path;
  const BoreAxis& axis;
  double bore_diameter_m, bore_sd_m;
  const LevelLine& ground;
  const ClearanceRules& rules;
  const Tables& tables;
  const std::vector<TestHole>& holes;
  const PathFans& fans;
};

Clearance what_is_known(const Asked& asked, const Utility& utility) {
  Clearance c;
  c.id = utility.id;
  c.name = utility.name;
  c.kind = utility.kind;
  c.status = *utility.status;
  c.how = *utility.located.how;
  c.dangerous = row_of(asked.tables, utility.kind).dangerous;
  c.live = may_be_live(utility, asked.tables);
  c.unexposed = true;
  c.no_diameter = !utility.outside_diameter;
  c.contact_radius_m = asked.bore_diameter_m / 2 + (utility.outside_diameter ? utility.outside_diameter->m / 2 : 0);
  return c;
}

/// The line by its test holes, and whether these show it where the bore crosses; false: there is none.
bool pin(Clearance& c, const Asked& asked, const Utility& utility, const LineReach& reach, const LocationSd& sd,
         std::vector<PathVertex>& moved, std::optional<Approach>& near) {
  const double sd_m = std::hypot(asked.bore_sd_m, sd.lateral_m.value_or(0), sd.vertical_m.value_or(0));
  const ClearanceRules none;  // what was entered for this one alone: no rule moves where its line is looked at
  const NearBore bore =
      near_bore(asked.path, near->distance_m, c.contact_radius_m + clear_gap_wanted(none, utility, true).m, sd_m);
  c.pinned = pinned_line(utility, sd, asked.holes, &bore);
  if (c.pinned.line.empty()) return false;
  if (reach.first_m > 0 || reach.last_m > 0) lengthen(c.pinned.line, reach);
  moved.clear();
  for (const PinnedVertex& v : c.pinned.line) moved.push_back(v.at);
  near = asked.axis.nearest_to(moved);
  c.hole_at_bore = shown_by_hole(*near, utility, asked.holes, asked.tables.judged_on);
  c.unexposed = !c.hole_at_bore;
  c.no_sd = c.no_sd && !(c.hole_at_bore && sd.lateral_m && sd.vertical_m);
  return true;
}

/// Gap and chances at the nearest place and along the run.
void judge_line(Clearance& c, const Asked& asked, const std::vector<PathVertex>& line, const Approach& near,
                const LocationSd& sd, MixedChances& mixed) {
  c.station_m = near.on_utility.x_m;
  c.offset_m = near.on_utility.y_m;
  c.angle_rad = near.angle_rad;
  const LocationError error{sd.lateral_m.value_or(0), sd.vertical_m.value_or(0)};
  const Pair pair{
      line, asked.path, asked.axis, error, c.pinned.line, c.contact_radius_m, c.contact_radius_m + c.required_fixed_m};
  const Station station = station_on(asked.path, asked.axis, near.bore_segment, near.on_bore_share);
  if (near.depth_unknown) {
    answer_in_plan(c, near, station, pair.error_at(near.utility_segment, near.on_utility_share));
    return;
  }
  answer_in_space(c, near, station, pair);
  if (asked.fans.empty())
    add_chances(c, pair, station, near, std::hypot(asked.bore_sd_m, greatest_error(pair)));
  else
    add_mixed_chances(c, pair, station, near, mixed);
}

/// `moved`: room for a line, kept from one utility to the next.
Clearance clearance_of(const Asked& asked, const Utility& utility, MixedChances& mixed,
                       std::vector<PathVertex>& moved) {
  Clearance c = what_is_known(asked, utility);
  const LineReach reach = reach_of(utility, asked.ground, asked.tables);
  const bool longer = reach.first_m > 0 || reach.last_m > 0;
  if (longer) moved = lengthened(utility.path, reach);
  std::optional<Approach> near = asked.axis.nearest_to(longer ? moved : utility.path);
  const bool holed = near && has_hole(utility, asked.holes);
  const auto depth_of_holes = [&] { return depth_found(utility, asked.holes, asked.ground); };
  if (near)
    c.depth_m =
        std::max(depth_at(asked.ground, near->on_utility), holed && !near->on_utility.z_m ? depth_of_holes() : 0);
  const LocationSd sd = location_sd(utility.located, asked.tables, c.depth_m);
  c.no_sd = !(sd.lateral_m > 0.0) || !(sd.vertical_m > 0.0);
  const bool pinned = holed && pin(c, asked, utility, reach, sd, moved, near);
  c.exposure_unproved = c.how == LocatedHow::exposed && c.unexposed;
  c.required_fixed_m = clear_gap_wanted(asked.rules, utility, c.unexposed).m;
  c.required_exposed_m = clear_gap_wanted(asked.rules, utility, false).m;
  if (near)
    judge_line(c, asked, longer || pinned ? moved : utility.path, *near, sd, mixed);
  else
    c.depth_unknown_at_bore = utility.path.empty();
  return c;
}

}  // namespace

std::vector<Clearance> clearances(const BorePath& path, Length bore_diameter, const std::vector<Utility>& utilities,
                                  const LevelLine& ground, const ClearanceRules& rules, const Tables& tables,
                                  const std::vector<TestHole>& holes, const PathFans& fans, unsigned threads) {
  constexpr std::size_t at_once = 16;  // one thread's piece
  const BoreAxis axis(path);
  const Asked asked{path, axis, bore_diameter.m, greatest_sd(path), ground, rules, tables, holes, fans};
  struct Room {
    MixedChances mixed;
    std::vector<PathVertex> moved;
  };
  std::vector<Room> rooms(std::max(1U, threads), Room{MixedChances(fans), {}});
  std::vector<Clearance> answers(utilities.size());
  parallel_for(static_cast<unsigned>(rooms.size()), (utilities.size() + at_once - 1) / at_once, {},
               [&](std::size_t worker, std::size_t piece) {
                 Room& room = rooms[worker];
                 const std::size_t end = std::min(utilities.size(), (piece + 1) * at_once);
                 for (std::size_t i = piece * at_once; i < end; ++i)
                   answers[i] = clearance_of(asked, utilities[i], room.mixed, room.moved);
               });
  return answers;
}

bool lays_bare(const TestHole& hole, const Utility& utility, const std::optional<Date>& on) {
  return hole.utility == utility.id && centre_of(hole, utility) && says_something(hole.by) && dated(hole.date, on) &&
         hole.sd->m <= exposed_to_sd_m;
}

}  // namespace burrow

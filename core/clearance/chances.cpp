#include "chances.h"

#include <cmath>
#include <optional>

namespace burrow::clearance {

namespace {

constexpr double apart_m = 0.9;  // sections nearer together than this tell nothing new

LocationSpread location_seen(const Station& station, const LocationError& error, const Vector& across_line) {
  const Vector e = across_line;
  return {station.seen({error.lateral_m * e.x, error.lateral_m * e.y, 0}), station.seen({0, 0, error.vertical_m})};
}

Chances chances_of(const Pair& pair, const Station& station, Stadium stadium, const LocationError& error,
                   const Vector& across_line, double along_bore_m, double known_worst = 0) {
  const ViewSpread bore = station.spread();
  const LocationSpread location = location_seen(station, error, across_line);
  const ViewSpread total = total_spread(bore, location);
  // Off the end of the bore only a part of the radius is left in the view.
  const auto left_of = [&](double radius) {
    return std::sqrt(std::max(radius * radius - along_bore_m * along_bore_m, 0.0));
  };
  Chances chances;
  stadium.radius_m = left_of(pair.radius_m);
  if (stadium.radius_m > 0) {
    chances.contact = stadium_chance(stadium, total);
    chances.worst = std::max(chances.contact, worst_stadium_chance(stadium, bore, location, known_worst));
  }
  stadium.radius_m = left_of(pair.encroachment_radius_m);
  chances.encroachment = std::max(chances.contact, stadium_chance(stadium, total));
  return chances;
}

/// How far the utility reaches on one side of its nearest point, as seen along the bore in the direction of its
/// nearest segment: up to where it turns back, ends, loses its depth or leaves the length of the bore.
double arm(const Pair& pair, const Station& station, const Approach& near, std::size_t segment, bool forward,
           const ViewVector& view_direction) {
  const auto& path = pair.line;
  const double first = pair.axis.points().front().x_m, last = pair.axis.points().back().x_m;
  const Point3 start = known_point(near.on_utility);
  Point3 here = start;
  double reach = 0;
  for (std::size_t i = forward ? segment + 1 : segment;; i += forward ? 1U : std::size_t(-1)) {
    if (i >= path.size() || !path[i].z_m) break;
    Point3 next = known_point(path[i]);
    const double edge = std::clamp(next.x_m, std::min(first, here.x_m), std::max(last, here.x_m));
    const bool leaves = edge != next.x_m;
    if (leaves) {
      const double t = (edge - here.x_m) / (next.x_m - here.x_m);
      next = {edge, here.y_m + t * (next.y_m - here.y_m), here.z_m + t * (next.z_m - here.z_m)};
    }
    const ViewVector v = station.seen(next - start);
    const double gained = (forward ? 1 : -1) * (v.across_m * view_direction.across_m + v.up_m * view_direction.up_m);
    if (gained <= reach && i != (forward ? segment + 1 : segment)) break;
    reach = std::max(reach, gained);
    if (leaves || (i == 0 && !forward)) break;
    here = next;
  }
  return reach;
}

}  // namespace

Reach reach_at(const Pair& pair, const Station& station, const Approach& near, std::size_t segment) {
  Reach reach;
  if (segment + 1 >= pair.line.size()) return reach;
  reach.line = known_point(pair.line[segment + 1]) - known_point(pair.line[segment]);
  const ViewVector seen = station.seen(reach.line);
  const double seen_length = std::hypot(seen.across_m, seen.up_m);
  if (!(seen_length > 0)) return reach;
  const ViewVector d{seen.across_m / seen_length, seen.up_m / seen_length};
  reach.ahead_m = arm(pair, station, near, segment, true, d);
  reach.behind_m = arm(pair, station, near, segment, false, d);
  return reach;
}

std::optional<std::size_t> other_segment(const Pair& pair, const Approach& near) {
  const auto& path = pair.line;
  std::optional<std::size_t> other;
  if (near.on_utility_share == 0 && near.utility_segment > 0) other = near.utility_segment - 1;
  if (near.on_utility_share == 1 && near.utility_segment + 2 < path.size()) other = near.utility_segment + 1;
  if (!other || !path[*other].z_m || !path[*other + 1].z_m) return std::nullopt;
  return other;
}

namespace {

/// The stadium of the stretch around one segment at the nearest place.
Chances at_nearest(const Pair& pair, const Station& station, const Approach& near, std::size_t segment) {
  const Vector gap = known_point(near.on_utility) - station.at;
  const ViewVector centre = station.seen(gap);
  Stadium stadium{centre, centre, 0};
  const Reach reach = reach_at(pair, station, near, segment);
  const ViewVector seen = station.seen(reach.line);
  const double seen_length = std::hypot(seen.across_m, seen.up_m);
  if (seen_length > 0) {
    const ViewVector d{seen.across_m / seen_length, seen.up_m / seen_length};
    stadium.from = {centre.across_m - reach.behind_m * d.across_m, centre.up_m - reach.behind_m * d.up_m};
    stadium.to = {centre.across_m + reach.ahead_m * d.across_m, centre.up_m + reach.ahead_m * d.up_m};
  }
  const LocationError error = pair.error_at(near.utility_segment, near.on_utility_share);
  return chances_of(pair, station, stadium, error, across(reach.line), dot(gap, station.forward));
}

}  // namespace

Chances at_nearest(const Pair& pair, const Station& station, const Approach& near) {
  const Chances chances = at_nearest(pair, station, near, near.utility_segment);
  const std::optional<std::size_t> other = other_segment(pair, near);
  return other ? larger(chances, at_nearest(pair, station, near, *other)) : chances;
}

RunSection worst_section(const Pair& pair) {
  const auto& path = pair.line;
  const double first = pair.axis.points().front().x_m, last = pair.axis.points().back().x_m;
  RunSection worst;
  double fewest_sd = std::numeric_limits<double>::infinity();
  double last_x = -std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    if (!path[i].z_m || !path[i + 1].z_m) continue;
    const Point3 a = known_point(path[i]), b = known_point(path[i + 1]);
    const double run = std::abs(b.x_m - a.x_m);
    const double from = std::max(std::min(a.x_m, b.x_m), first), to = std::min(std::max(a.x_m, b.x_m), last);
    if (!(to > from) || run < 1e-9) continue;
    const Vector line = b - a;
    const Vector e = across(line);
    const int steps = std::clamp(static_cast<int>(std::ceil(to - from)), 1, 24);
    for (int k = 0; k <= steps; ++k) {
      const double x = from + (to - from) * k / steps;
      const bool at_end = k == steps && (i + 2 == path.size() || to == last || from == first);
      if (std::abs(x - last_x) < apart_m && !at_end) continue;
      last_x = x;
      const double t = (x - a.x_m) / (b.x_m - a.x_m);
      const Point3 on{x, a.y_m + t * line.y, a.z_m + t * line.z};
      const Station station = station_at(pair.path, pair.axis, x);
      const Vector gap = on - station.at;
      const Vector n = unit(gap, station.up);
      const LocationError error = pair.error_at(i, t);
      const double bore = station.variance_along(n), place = error.variance_along(n, e), s = std::sqrt(bore + place);
      const double clear = length(gap) - pair.radius_m;
      if (clear - band_90_sd * s < worst.gap_low_m) {
        worst.gap_low_m = clear - band_90_sd * s;
        worst.low_at = {length(gap), std::sqrt(bore), std::sqrt(place)};
      }
      const double sds = clear / std::max(s, 1e-9);
      if (!(sds < fewest_sd)) continue;
      fewest_sd = sds;
      worst.found = true;
      worst.station = station;
      worst.gap = gap;
      worst.across_line = e;
      worst.error = error;
    }
  }
  return worst;
}

Chances at_section(const Pair& pair, const RunSection& section, double known_worst) {
  const ViewVector centre = section.station.seen(section.gap);
  return chances_of(pair, section.station, {centre, centre, 0}, section.error, section.across_line, 0, known_worst);
}

}  // namespace burrow::clearance

#include "launch_settle.h"

#include <algorithm>
#include <cmath>

namespace burrow::launch {

namespace {

constexpr int most_tries = 8;

double to(double value, double step) {
  return std::round(value / step) * step;
}

/// As `Take the best launch` sets it. Locked values stay, and nothing leaves the map.
MapPlace settable_at(const Crossing& crossing, const LaunchMap& map, const MapPlace& place) {
  constexpr double length_m = 1e-3, grade = 1e-4;
  const bool depth = map.over == MapOver::depth_and_grade;
  const double ground = elevation_at(crossing.site.ground, crossing.bore.launch.station.m);
  const auto within = [](const MapAxis& axis, double value) {
    return axis.count > 1 && value >= axis.from && value <= axis.to;
  };
  MapPlace set = place;
  if (const double across = to(place.across, depth ? grade : length_m); within(map.across, across)) set.across = across;
  const double down = depth ? ground - to(ground - place.down, length_m) : to(place.down, length_m);
  if (within(map.down, down)) set.down = down;
  return set;
}

}  // namespace

Settler::Settler(const Crossing& crossing, const Tables& tables, Limits& limits, MapOver over)
    : crossing_(crossing),
      groundwork_(crossing, tables),
      limits_(limits),
      judge_(crossing, tables, groundwork_, over) {}

LaunchCell Settler::at(const MapPlace& place) {
  judge_.number_as(limits_.keys);
  const Judged judged = judge_.at(place);
  limits_.keys = judge_.keys();  // the same numbers, and those met only now
  return weigh(judged, limits_);
}

std::optional<LaunchCell> Settler::best(std::vector<LaunchCell> candidates, std::vector<LaunchCell> settled,
                                        const LeastClean& least, const LaunchMap* settable) {
  for (int i = 0; i < most_tries; ++i) {
    const LaunchCell* lead = best_of(candidates, least);
    if (!lead) break;
    const LaunchCell hoped = *lead;
    const auto holds = [&](const LaunchCell& cell) { return tier(cell, least) <= tier(hoped, least); };
    if (settable) settled.push_back(at(settable_at(crossing_, *settable, hoped.place)));
    if (!settable || !holds(settled.back())) settled.push_back(at(hoped.place));
    if (holds(settled.back())) break;
    std::erase_if(candidates, [&](const LaunchCell& cell) { return cell.place == hoped.place; });
  }
  const LaunchCell* best = best_of(settled, least);
  return best ? std::optional(*best) : std::nullopt;
}

}  // namespace burrow::launch

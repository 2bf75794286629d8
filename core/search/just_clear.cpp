#include "burrow/search/just_clear.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr double farthest_m = 5;
constexpr double close_enough_m = 0.002;
constexpr int most_steps = 6;

struct Gap {
  double over_m = 0;  ///< clear gap less the gap wanted
  bool bore_below = true;
};

std::optional<Gap> gap_of(const Assessment& answer, const std::string& utility) {
  for (const UtilityAnswer& u : answer.utilities)
    if (u.id == utility && u.separation_m && u.required_m && u.on_bore && u.on_utility)
      return Gap{*u.separation_m - *u.required_m, u.on_bore->z_m <= u.on_utility->z_m};
  return std::nullopt;
}

Crossing shifted(Crossing crossing, const std::string& utility, Shifted what, double by_m) {
  if (what == Shifted::launch) {
    crossing.bore.launch.elevation.m += by_m;
    return crossing;
  }
  for (Utility& u : crossing.site.utilities)
    if (u.id == utility)
      for (PathVertex& v : u.path)
        if (v.z_m) *v.z_m += by_m;
  return crossing;
}

}  // namespace

std::optional<double> shift_just_clear(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                       const std::string& utility, Shifted what) {
  const std::optional<Gap> start = gap_of(now, utility);
  if (!start) return std::nullopt;
  // Upward moves the launch nearer to a utility above it, and a utility away from a bore below it.
  const double widens = (what == Shifted::launch) == start->bore_below ? -1 : 1;
  double shift = 0, over = start->over_m;
  double slope = widens;  // metres of gap for each metre of shift
  for (int step = 0; step < most_steps; ++step) {
    if (over >= 0 && over <= close_enough_m) return shift;
    const double next = shift + (close_enough_m / 2 - over) / slope;
    if (!(std::abs(next) <= farthest_m)) return std::nullopt;
    const std::optional<Gap> there =
        gap_of(assess(shifted(crossing, utility, what, next), tables, now.ground_surface), utility);
    if (!there || there->bore_below != start->bore_below) return std::nullopt;
    const double found = (there->over_m - over) / (next - shift);
    if (std::isfinite(found) && found * widens > 0.2) slope = found;
    shift = next;
    over = there->over_m;
  }
  if (over >= 0 && over <= close_enough_m) return shift;
  return std::nullopt;
}

}  // namespace burrow

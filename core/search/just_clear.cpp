#include "burrow/search/just_clear.h"

#include <algorithm>
#include <cmath>

#include "burrow/check/mute.h"

namespace burrow {

bool limits_kept(const Assessment& answer, const std::string& utility) {
  return std::none_of(answer.findings.begin(), answer.findings.end(), [&](const Finding& f) {
    return f.subject == utility && f.code != "utility.expose" && f.margin && *f.margin < 0 && counts_in_verdict(f);
  });
}

namespace {

constexpr double farthest_m = 5;
constexpr double close_enough_m = 0.002;
constexpr int most_steps = 6;
constexpr double spares_m[] = {0.05, 0.10, 0.20, 0.35, 0.50};

struct Gap {
  double gap_m = 0;
  double over_m = 0;  ///< clear gap less the gap required
  bool bore_below = true;
};

std::optional<Gap> gap_of(const Assessment& answer, const std::string& utility) {
  for (const UtilityAnswer& u : answer.utilities)
    if (u.id == utility && u.separation_m && u.required_m && u.on_bore && u.on_utility)
      return Gap{*u.separation_m, *u.separation_m - *u.required_m, u.on_bore->z_m <= u.on_utility->z_m};
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

/// Every limit about the utility kept, and no stop that was not there before.
bool kept_there(const Assessment& now, const Assessment& there, const std::string& utility) {
  return limits_kept(there, utility) &&
         std::none_of(there.findings.begin(), there.findings.end(), [&](const Finding& f) {
           return f.severity == Severity::stop &&
                  std::none_of(now.findings.begin(), now.findings.end(), [&](const Finding& before) {
                    return before.severity == Severity::stop && before.code == f.code && before.subject == f.subject;
                  });
         });
}

}  // namespace

std::optional<ClearPlace> shift_just_clear(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                           const std::string& utility, Shifted what, double spare_m) {
  const std::optional<Gap> start = gap_of(now, utility);
  if (!start) return std::nullopt;
  // Upward moves the launch nearer to a utility above it, and a utility away from a bore below it.
  const double widens = (what == Shifted::launch) == start->bore_below ? -1 : 1;
  double shift = 0;
  Gap at = *start;
  double slope = widens;  // metres of gap for each metre of shift
  const auto there = [&] { return at.over_m >= spare_m && at.over_m <= spare_m + close_enough_m; };
  for (int step = 0; step < most_steps && !there(); ++step) {
    const double next = shift + (spare_m + close_enough_m / 2 - at.over_m) / slope;
    if (!(std::abs(next) <= farthest_m)) return std::nullopt;
    const std::optional<Gap> found =
        gap_of(assess(shifted(crossing, utility, what, next), tables, now.ground_surface), utility);
    if (!found || found->bore_below != start->bore_below) return std::nullopt;
    const double slope_found = (found->over_m - at.over_m) / (next - shift);
    if (std::isfinite(slope_found) && slope_found * widens > 0.2) slope = slope_found;
    shift = next;
    at = *found;
  }
  if (!there()) return std::nullopt;
  return ClearPlace{shift, at.gap_m};
}

std::optional<ClearPlace> shift_limits_kept(const Crossing& crossing, const Tables& tables, const Assessment& now,
                                            const std::string& utility, Shifted what) {
  for (const double spare : spares_m) {
    const std::optional<ClearPlace> place = shift_just_clear(crossing, tables, now, utility, what, spare);
    if (!place) return std::nullopt;
    const Assessment there = assess(shifted(crossing, utility, what, place->shift_m), tables, now.ground_surface);
    if (kept_there(now, there, utility)) return place;
  }
  return std::nullopt;
}

}  // namespace burrow

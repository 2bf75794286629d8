#include "burrow/check/peg_limits.h"

#include <cmath>

#include "burrow/crossing/display_name.h"
#include "check_run.h"

namespace burrow {

namespace {

constexpr double beside_m = 1.0;

}  // namespace

PegLimits peg_limits(const Crossing& crossing, const Tables& tables, const std::vector<PathPoint>& path,
                     double station_m) {
  const LimitsInForce limits(crossing, tables);
  PegLimits strictest{limits.of("heave_road_caution_m"), limits.of("heave_road_stop_m"), "site",
                      translatable("the ground")};
  bool drawn = false, here = false;
  for (const SurfaceFeature& feature : crossing.site.surface) {
    if (!moves_with_ground(feature)) continue;
    const std::optional<Stretch> stretch = stretch_of(feature, path);
    const bool within = stretch && station_m >= stretch->from_m - beside_m && station_m <= stretch->to_m + beside_m;
    if (here && !within) continue;
    const HeaveLimits own = heave_limits(limits, tables, feature);
    const bool first = !drawn || (within && !here);
    if (first || own.stop->value < strictest.stop.value)
      strictest = {own.caution, *own.stop, feature.id, display_name(feature)};
    drawn = true;
    here = here || within;
  }
  return strictest;
}

}  // namespace burrow

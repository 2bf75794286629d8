#pragma once
/// What moves or stands on the surface above a place, and what of it arrives at a depth there.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/source.h"
#include "burrow/crossing/site.h"
#include "burrow/load/half_space.h"
#include "burrow/load/highway.h"
#include "burrow/load/railway.h"
#include "burrow/load/wheel_group.h"

namespace burrow {

/// The words of `traffic` in a file.
enum class Traffic { highway, european, light, cars, cooper_e80, none };
template <>
struct EnumNames<Traffic> {
  static constexpr std::pair<Traffic, std::string_view> list[] = {
      {Traffic::highway, "highway"}, {Traffic::european, "en-1991-2"},    {Traffic::light, "light"},
      {Traffic::cars, "cars"},       {Traffic::cooper_e80, "cooper-e80"}, {Traffic::none, "none"}};
};

struct TrafficAbove {
  Traffic traffic = Traffic::none;
  bool entered = false;  ///< else taken for the kind of thing
  bool known = true;     ///< false: a word this program does not know, taken as the heaviest of its kind
};

/// What runs on a thing on top. Without a word: trains on a track, a truck on a road or a drive, cars on a footway,
/// nothing on all else (our default: not knowing must not look safe).   Evidence: Live.TrafficOf_*
TrafficAbove traffic_of(const SurfaceFeature& feature);

struct LiveLoad {
  double pressure_Pa = 0;
  std::string_view source;   ///< how it was worked out, a literal
  std::string_view formula;  ///< "" without a closed form to show
  SourceLabel label = SourceLabel::derived;
  std::optional<HighwayPressure> highway;
  std::optional<RailPressure> rail;
  std::optional<EuropeanPressure> european;
  double cover_m = 0;  ///< that counted: a train's from the bottom of the ties
};

/// Ties reach so far below the ground line entered at a track: 7 in (from memory), the ground line taken as their top.
inline constexpr double tie_depth_m = 0.1778;

/// At the crown of a hole under the middle of the traffic. `road_width`: of the carriageway, for the European lanes;
/// the greater of load models 1 and 2. A truck's load under more than 8 ft of cover is left out, as its code allows.
/// Range: cover > 0.   Errors: out_of_range.   Evidence: Live.*
Result<LiveLoad> live_load(Traffic traffic, Length cover, Length span, Length road_width);

/// Half of what a load spreads to aside at a depth: so far beyond its edge the traffic still counts in full (our model,
/// the safe side).
double reach_aside_m(Length cover);

/// Machines standing at the surface, each an even rectangle times its dynamic factor; one without area is a point.
/// Range: depth > 0.   Errors: out_of_range.   Evidence: Live.Plant_*
Result<Pressure> plant_stress(const std::vector<Plant>& plant, const PlanPoint& below, Length depth);

}  // namespace burrow

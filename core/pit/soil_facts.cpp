#include "burrow/pit/soil_facts.h"

#include <algorithm>

#include "burrow/crossing/statement.h"
#include "burrow/pit/plan_overlap.h"
#include "burrow/soil/soil.h"

namespace burrow {

namespace {
constexpr double traffic_near_m = 5.0;
}  // namespace

bool soil_confirmed(const Pit& pit) {
  return says_something(pit.confirmed_by);
}

std::optional<ExcavationType> entered_type(const Site& site, std::size_t stratum, const Pit& pit) {
  std::optional<ExcavationType> type = pit.soil_type;
  if (stratum < site.strata.size())
    if (const auto& typed = site.strata[stratum].values.excavation_type) type = std::max(type.value_or(*typed), *typed);
  return type;
}

bool beside_traffic(const Crossing& crossing, const Pit& pit, const PitPlace& place) {
  const FloorRectangle reach = reach_of(pit, place);
  return std::any_of(crossing.site.surface.begin(), crossing.site.surface.end(), [&](const SurfaceFeature& feature) {
    if (feature.kind != SurfaceKind::road && feature.kind != SurfaceKind::track) return false;
    if (feature.from && feature.to) {
      const auto [low, high] = std::minmax(feature.from->m, feature.to->m);
      return low - reach.to_m < traffic_near_m && reach.from_m - high < traffic_near_m;
    }
    return feature.outline.size() > 2 && gap_between(outline_of(reach), feature.outline, true).gap_m < traffic_near_m;
  });
}

bool dug_before(const Crossing& crossing, const Pit& pit, const PitPlace& place, double top_m, double bottom_m) {
  const PlanLine reach = outline_of(reach_of(pit, place));
  return std::any_of(crossing.site.strips.begin(), crossing.site.strips.end(), [&](const Strip& strip) {
    const bool beside =
        strip.bottom_elevation.m >= top_m || (strip.top_elevation && strip.top_elevation->m <= bottom_m);
    return !beside && overlap_area(reach, strip.outline) > 1e-9;
  });
}

SoilSeen soil_seen_in_layer(const Crossing& crossing, const Pit& pit, const Tables& tables, const PitPlace& place,
                            const PitLayer& layer) {
  const Site& site = crossing.site;
  const Stratum& stratum = site.strata[layer.stratum];
  const SoilClass& soil_class = *find_soil(tables, stratum.soil);
  const PitSigns& signs = pit.signs;
  SoilSeen seen;
  seen.matter = matter_of(soil_class);
  const Soil soil = resolve_soil(soil_class, stratum.values);
  // A stratum that somebody looked at was told apart by hand: its class then stands for the strength.
  const bool strength_known = stratum.values.undrained_strength || *stratum.known != StratumEvidence::guess;
  if (!soil.drained && strength_known) seen.unconfined_strength = Pressure{2 * soil.undrained_strength.Pa};
  seen.fissured = signs.fissured;
  if (!seen.fissured.value_or(false) && signs.joints.value_or(false)) seen.fissured = true;
  seen.vibrated = signs.vibrated;
  if (!seen.vibrated && beside_traffic(crossing, pit, place)) seen.vibrated = true;
  seen.disturbed = signs.disturbed;
  if (signs.loose_fill.value_or(false) || dug_before(crossing, pit, place, layer.top_m, layer.bottom_m))
    seen.disturbed = true;
  seen.wet = signs.seeping;
  if (!seen.wet.value_or(false) && site.water && !site.water->empty())
    seen.wet = elevation_at(*site.water, place.middle_m()) > layer.bottom_m;
  seen.dip_run_per_rise = signs.dip_run_per_rise;
  return seen;
}

ExcavationType type_in_force(const Crossing& crossing, const Pit& pit, const Tables& tables, const PitPlace& place,
                             const PitLayer& layer) {
  const auto entered = entered_type(crossing.site, layer.stratum, pit);
  if (!entered || *entered == ExcavationType::c || !soil_confirmed(pit)) return ExcavationType::c;
  if (layer.stratum >= crossing.site.strata.size()) return *entered;  // no stratum: nothing speaks against it
  const TypeProposal proposal = propose_type(soil_seen_in_layer(crossing, pit, tables, place, layer));
  return *entered < proposal.best ? ExcavationType::c : *entered;
}

}  // namespace burrow

/// Loads beside a pit: machines, traffic.

#include <algorithm>
#include <cmath>

#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double light_plant_kg = 12e3;

/// How far from the edge a machine stays: by its mass where the rules say so, else as spoil.
Limit distance_wanted(const PitUnderCheck& pit, const Plant& plant) {
  const bool light = plant.load.N / gravity_m_s2 <= light_plant_kg;
  const DutyRow* row = find_duty(pit.rules, light ? "plant-light-distance" : "plant-heavy-distance");
  if (row) return {row->value, true, row->source};
  return {pit.rules.spoil_setback.m, true, pit.rules.source};
}

struct Beside {
  std::string name;
  PlanLine outline;
  double gap_m = 1e300;
};

void keep_plant_away(Judge& judge, const PitUnderCheck& pit, Beside& nearest) {
  for (const Plant& plant : judge.crossing.site.plant) {
    const PlanLine outline = plan_of(plant);
    const double gap = gap_between(pit.shape.footprint, outline, true);
    const std::string name = plant.name.empty() ? "a machine" : plant.name;
    if (gap < nearest.gap_m) nearest = {name, outline, gap};
    const double ground = elevation_at(judge.crossing.site.ground, plant.station.m);
    demand(judge, finding_at("pit.plant", Severity::stop, plant.id, name, plant.station.m, plant.offset.m, ground), gap,
           distance_wanted(pit, plant));
  }
}

}  // namespace

void check_pit_loads(Judge& judge, const PitUnderCheck& pit) {
  Beside nearest;
  keep_plant_away(judge, pit, nearest);
  for (const SurfaceFeature& feature : judge.crossing.site.surface) {
    if (feature.kind != SurfaceKind::road && feature.kind != SurfaceKind::track && feature.kind != SurfaceKind::drive)
      continue;
    const PlanLine outline = plan_of(feature);
    if (outline.empty()) continue;
    const double gap = gap_between(pit.shape.footprint, outline, true);
    if (gap < nearest.gap_m) nearest = {called(feature), outline, gap};
  }
  pit.work.edge_load_gap_m = nearest.outline.empty() ? std::nullopt : std::optional(nearest.gap_m);
  if (nearest.outline.empty() || pit.shape.depth_m < pit.rules.protection_from.m) return;
  Finding finding = finding_of(pit, "pit.edge-load", Severity::caution);
  finding.name = pit.name + ", " + nearest.name;
  demand(judge, std::move(finding), nearest.gap_m,
         {pit.shape.depth_m,
          true,
          {"29 CFR 1926 Subpart P App. C: loads nearer than the depth are beside the excavation",
           SourceLabel::second_hand}});
}

}  // namespace burrow

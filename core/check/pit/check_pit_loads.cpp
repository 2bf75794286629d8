/// Traffic and machines beside a pit.

#include <algorithm>
#include <cmath>

#include "burrow/crossing/statement.h"
#include "burrow/pit/plan_overlap.h"
#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

/// All four sides held, over their whole height, by a support that somebody sized for the loads beside them.
bool held_for_loads(const CheckRun& run, const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  return vouched(pit.entered.load_design, run.tables.judged_on) &&
         std::all_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
           return *side.entered.kind == SideKind::shored || *side.entered.kind == SideKind::shielded;
         });
}

}  // namespace

void check_pit_loads(CheckRun& run, const PitUnderCheck& pit) {
  std::optional<PlanGap> nearest;
  Phrase name;
  const auto take = [&](const PlanLine& outline, const Phrase& whose) {
    if (outline.empty()) return;
    const PlanGap gap = gap_between(pit.shape.footprint, outline, true);
    if (nearest && !(gap.gap_m < nearest->gap_m)) return;
    nearest = gap;
    name = whose;
  };
  for (const Plant& plant : run.crossing.site.plant) take(plan_of(plant), display_name(plant));
  for (const SurfaceFeature& feature : run.crossing.site.surface)
    if (feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track || feature.kind == SurfaceKind::drive)
      take(plan_of(feature), display_name(feature));
  if (!nearest) return;
  pit.work.edge_load_gap_m = nearest->gap_m;
  const bool cut_into = !(nearest->gap_m > 0);  // told as what the excavation runs into
  if (cut_into || !protection_needed(pit.rules, Length{pit.shape.depth_m}) || held_for_loads(run, pit)) return;
  const Limit limit{pit.shape.depth_m,
                    true,
                    {"29 CFR 1926 Subpart P App. C: loads nearer than the depth are beside the excavation",
                     SourceLabel::second_hand}};
  Finding finding = finding_of(pit, "pit.edge-load", Severity::caution);
  finding.name = phrase("{}, {}", pit.name, name);
  finding.station_m = nearest->on_outline.x_m;
  finding.offset_m = nearest->on_outline.y_m;
  finding.elevation_m = elevation_at(run.crossing.site.ground, nearest->on_outline.x_m);
  require(run, std::move(finding), nearest->gap_m, limit);
  show_gap(run, "pit.edge-load", pit.subject, *nearest, limit);
}

}  // namespace burrow

/// Traffic and machines beside a pit.

#include <algorithm>
#include <cmath>

#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

void check_pit_loads(Judge& judge, const PitUnderCheck& pit) {
  std::optional<PlanGap> nearest;
  std::string name;
  const auto take = [&](const PlanLine& outline, const std::string& whose) {
    if (outline.empty()) return;
    const PlanGap gap = gap_between(pit.shape.footprint, outline, true);
    if (nearest && !(gap.gap_m < nearest->gap_m)) return;
    nearest = gap;
    name = whose;
  };
  for (const Plant& plant : judge.crossing.site.plant) take(plan_of(plant), called(plant));
  for (const SurfaceFeature& feature : judge.crossing.site.surface)
    if (feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track || feature.kind == SurfaceKind::drive)
      take(plan_of(feature), called(feature));
  if (!nearest) return;
  pit.work.edge_load_gap_m = nearest->gap_m;
  const bool cut_into = !(nearest->gap_m > 0);  // told as what the excavation runs into
  if (cut_into || pit.shape.depth_m < pit.rules.protection_from.m) return;
  const Limit limit{pit.shape.depth_m,
                    true,
                    {"29 CFR 1926 Subpart P App. C: loads nearer than the depth are beside the excavation",
                     SourceLabel::second_hand}};
  Finding finding = finding_of(pit, "pit.edge-load", Severity::caution);
  finding.name = pit.name + ", " + name;
  finding.station_m = nearest->on_outline.x_m;
  finding.offset_m = nearest->on_outline.y_m;
  finding.elevation_m = elevation_at(judge.crossing.site.ground, nearest->on_outline.x_m);
  demand(judge, std::move(finding), nearest->gap_m, limit);
  show_gap(judge, "pit.edge-load", pit.subject, *nearest, limit);
}

}  // namespace burrow

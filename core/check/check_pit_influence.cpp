/// Whether a pit cuts into the ground that carries a footing, building, wall or track.

#include <algorithm>
#include <cmath>

#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"
#include "structure_place.h"

namespace burrow {

namespace {

/// Outline of the excavation at a height above the floor, ends upright to the long sides.
PlanLine outline_at(const PitShape& pit, double height_m) {
  const double from = pit.floor_from_m - pit.sides.low.run_at(height_m),
               to = pit.floor_to_m + pit.sides.high.run_at(height_m),
               right = pit.floor_right_m - pit.sides.right.run_at(height_m),
               left = pit.floor_left_m + pit.sides.left.run_at(height_m);
  return {{from, right}, {to, right}, {to, left}, {from, left}};
}

struct Nearest {
  double spare_m = 1e300, beside_m = 0, below_m = 0;
};

/// Least distance beside the load less its spread down to the excavation, over the heights at which a side bends.
Nearest nearest_to(const PitShape& pit, const PlanLine& outline, double level_m, double run) {
  const double top = level_m - pit.floor_elevation_m;
  Nearest nearest;
  if (!(top > 0)) return nearest;
  std::vector<double> heights{0, top};
  for (const SideProfile* side : {&pit.sides.low, &pit.sides.high, &pit.sides.left, &pit.sides.right})
    for (const double bend : side->bends())
      if (bend < top) heights.push_back(bend);
  for (const double height : heights) {
    const double beside = gap_between(outline_at(pit, height), outline, true);
    const double below = top - height;
    if (beside - run * below < nearest.spare_m) nearest = {beside - run * below, beside, below};
  }
  return nearest;
}

bool held_all_round(const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  return std::all_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return side.entered.kind.value == SideKind::shored || side.entered.kind.value == SideKind::shielded;
  });
}

}  // namespace

void check_pit_influence(Judge& judge, const PitUnderCheck& pit) {
  const double middle = (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2;
  for (const SurfaceFeature& feature : judge.crossing.site.surface) {
    const bool track = feature.kind == SurfaceKind::track;
    const PlanLine outline = track || stands(feature) ? plan_of(feature) : PlanLine();
    if (outline.empty()) continue;
    const double level = !track && feature.founding_elevation ? feature.founding_elevation->m
                                                              : elevation_at(judge.crossing.site.ground, middle);
    const Limit spread = judge.limit(track ? "track_influence_run" : "footing_influence_run");
    const Nearest nearest = nearest_to(pit.shape, outline, level, spread.value);
    if (nearest.spare_m > 1e299) continue;
    const Limit limit{0, true, spread.source};
    const std::string_view code = track ? "pit.track-spread" : "pit.footing-spread";
    const Severity severity = track || held_all_round(pit) ? Severity::caution : Severity::stop;
    Finding finding = finding_of(pit, code, severity);
    finding.subject = feature.id;
    finding.name = called(feature);
    demand(judge, std::move(finding), nearest.spare_m, limit);
    judge.show({code,
                feature.id,
                "s = b − n t",
                {{"b", nearest.beside_m, "m"}, {"n", spread.value, ""}, {"t", nearest.below_m, "m"}},
                "s",
                nearest.spare_m,
                "m",
                limit.value,
                {"excavation beside the spread of the load, b in plan, t below its level", SourceLabel::derived},
                limit.source});
  }
}

}  // namespace burrow

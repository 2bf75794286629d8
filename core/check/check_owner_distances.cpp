/// How far excavations, heaps and machines stay away from a road or track by its owner's rule, where that counts from
/// the edge of the excavation.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/base/say.h"
#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double half_tie_m = 4.25 * 0.3048;  // a tie is 8 1/2 ft long; from memory

/// The edges of a road or track; its near centrelines, half a tie inside the edges: of several tracks the outer ones.
/// Of an outline nobody knows the tracks within: its edge stands for them, which asks for more.
struct Lines {
  PlanLine edge;
  std::vector<PlanLine> centres;
};

Lines lines_of(const SurfaceFeature& feature) {
  Lines lines{plan_of(feature), {}};
  if (feature.outline.size() > 2 || lines.edge.empty()) return lines;
  const auto [low, high] = std::minmax(feature.from->m, feature.to->m);
  const double inside = std::min((high - low) / 2, half_tie_m / std::cos(feature.skew->rad));
  SurfaceFeature centres = feature;
  centres.from = Length{low + inside};
  centres.to = Length{high - inside};
  const PlanLine four = plan_of(centres);
  lines.centres = {{four[0], four[3]}, {four[1], four[2]}};
  return lines;
}

PlanGap gap_to_edge(const PlanLine& outline, const Lines& lines) {
  return gap_between(outline, lines.edge, true);
}

PlanGap gap_to_centre(const PlanLine& outline, const Lines& lines) {
  if (lines.centres.empty()) return gap_to_edge(outline, lines);
  PlanGap nearest = gap_between(outline, lines.centres.front(), false);
  for (const PlanLine& line : lines.centres) {
    const PlanGap gap = gap_between(outline, line, false);
    if (gap.gap_m < nearest.gap_m) nearest = gap;
  }
  return nearest;
}

/// Shored all round but for the side away from the bore.
bool shored(const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  return std::all_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    const SideKind kind = side.entered.kind.value;
    return side.name == PitSideName::back || kind == SideKind::shored || kind == SideKind::shielded;
  });
}

class OwnersDistances {
 public:
  OwnersDistances(Judge& judge, const SurfaceFeature& feature, const SurfaceRule& rule)
      : judge_(judge), feature_(feature), rule_(rule), lines_(lines_of(feature)) {}

  void judge_pit(const PitUnderCheck& pit) {
    if (lines_.edge.empty() || pit.shape.footprint.empty()) return;
    const PlanLine& outline = pit.shape.footprint;
    if (rule_.pit_setback && rule_.setback_span != SetbackSpan::face_to_edge) {
      const bool to_centre = rule_.setback_span == SetbackSpan::excavation_to_centre;
      const double more = rule_.unshored_adds_depth && !shored(pit) ? pit.shape.depth_m : 0;
      want("surface.pit-setback", called(feature_),
           to_centre ? gap_to_centre(outline, lines_) : gap_to_edge(outline, lines_),
           {rule_.pit_setback->m + more, true, rule_.source});
    }
    if (rule_.pipe_end_setback)
      want("surface.pit-setback", called(feature_), gap_to_edge(outline, lines_),
           {rule_.pipe_end_setback->m,
            true,
            {"the pipe reaches through the cut slope of its pit, so the excavation begins beyond where it must end",
             SourceLabel::derived}});
    keep_clear(outline, pit.name);
    keep_clear(pit.work.heap.outline, say("the heap of {}", pit.name));
  }

  void judge_plant(const Plant& plant) { keep_clear(plan_of(plant), called(plant)); }

 private:
  void keep_clear(const PlanLine& outline, const std::string& what) {
    if (!rule_.clear_of_centre || outline.empty() || lines_.edge.empty()) return;
    want("surface.near-centre", say("{}, {}", called(feature_), what), gap_to_centre(outline, lines_),
         {rule_.clear_of_centre->m, true, rule_.source});
  }

  void want(std::string_view code, const std::string& name, const PlanGap& gap, const Limit& limit) {
    const double x = gap.on_outline.x_m;
    demand(judge_,
           finding_at(code, Severity::stop, feature_.id, name, x, gap.on_outline.y_m,
                      elevation_at(judge_.crossing.site.ground, x)),
           gap.gap_m, limit);
    show_gap(judge_, code, feature_.id, gap, limit);
  }

  Judge& judge_;
  const SurfaceFeature& feature_;
  const SurfaceRule& rule_;
  Lines lines_;
};

}  // namespace

void check_owner_distances(Judge& judge, std::span<const PitUnderCheck> pits) {
  for (const SurfaceFeature& feature : judge.crossing.site.surface) {
    const SurfaceRule* rule = feature.rule ? find_rule(judge.tables, *feature.rule) : nullptr;
    if (!rule) continue;
    OwnersDistances distances(judge, feature, *rule);
    for (const PitUnderCheck& pit : pits) distances.judge_pit(pit);
    for (const Plant& plant : judge.crossing.site.plant) distances.judge_plant(plant);
  }
}

}  // namespace burrow

/// How far excavations, heaps and machines stay away from a road or track by its owner's rule, where that counts from
/// the edge of the excavation.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/base/phrase.h"
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

/// Of each kind of distance the one that breaks its limit most, or keeps it least.
struct WorstGap {
  Phrase name;
  PlanGap gap;
  Limit limit;
  bool found = false;

  void take(Phrase its_name, const PlanGap& its_gap, const Limit& its_limit) {
    if (found && !(its_gap.gap_m - its_limit.value < gap.gap_m - limit.value)) return;
    *this = {std::move(its_name), its_gap, its_limit, true};
  }
};

class OwnersDistances {
 public:
  OwnersDistances(const SurfaceFeature& feature, const SurfaceRule& rule)
      : feature_(feature), rule_(rule), lines_(lines_of(feature)) {}

  void take_pit(const PitUnderCheck& pit) {
    const PlanLine& outline = pit.shape.footprint;
    if (lines_.edge.empty() || outline.empty()) return;
    const Phrase name = display_name(feature_);
    if (rule_.pit_setback && rule_.setback_span != SetbackSpan::face_to_edge) {
      const bool to_centre = rule_.setback_span == SetbackSpan::excavation_to_centre;
      const double more = rule_.unshored_adds_depth && !shored(pit) ? pit.shape.depth_m : 0;
      pit_edge_.take(to_centre ? phrase(translatable("the centreline of {}"), name) : name,
                     to_centre ? gap_to_centre(outline, lines_) : gap_to_edge(outline, lines_),
                     {rule_.pit_setback->m + more, true, rule_.source});
    }
    if (rule_.pipe_end_setback)
      pit_edge_.take(
          name, gap_to_edge(outline, lines_),
          {rule_.pipe_end_setback->m,
           true,
           {"the pipe reaches through the cut slope of its pit, so the excavation begins beyond where it must end",
            SourceLabel::derived}});
    keep_clear(outline, pit.name);
    keep_clear(pit.work.heap.outline, phrase(translatable("the heap of {}"), pit.name));
  }

  void take_plant(const Plant& plant) { keep_clear(plan_of(plant), display_name(plant)); }

  void judge_worst(CheckRun& run) const {
    judge_one(run, "surface.pit-edge", pit_edge_);
    judge_one(run, "surface.near-centre", near_centre_);
  }

 private:
  void keep_clear(const PlanLine& outline, const Phrase& what) {
    if (!rule_.clear_of_centre || outline.empty() || lines_.edge.empty()) return;
    near_centre_.take(phrase("{}, {}", display_name(feature_), what), gap_to_centre(outline, lines_),
                      {rule_.clear_of_centre->m, true, rule_.source});
  }

  void judge_one(CheckRun& run, std::string_view code, const WorstGap& worst) const {
    if (!worst.found) return;
    const PlanPoint& at = worst.gap.on_outline;
    require(run,
            finding_at(code, Severity::stop, feature_.id, worst.name, at.x_m, at.y_m,
                       elevation_at(run.crossing.site.ground, at.x_m)),
            worst.gap.gap_m, worst.limit);
    show_gap(run, code, feature_.id, worst.gap, worst.limit);
  }

  const SurfaceFeature& feature_;
  const SurfaceRule& rule_;
  Lines lines_;
  WorstGap pit_edge_, near_centre_;
};

}  // namespace

void check_owner_distances(CheckRun& run, std::span<const PitUnderCheck> pits) {
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const SurfaceRule* rule = feature.rule ? find_rule(run.tables, *feature.rule) : nullptr;
    if (!rule) continue;
    OwnersDistances distances(feature, *rule);
    for (const PitUnderCheck& pit : pits) distances.take_pit(pit);
    for (const Plant& plant : run.crossing.site.plant) distances.take_plant(plant);
    distances.judge_worst(run);
  }
}

}  // namespace burrow

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
  const PitUnderCheck* pit = nullptr;
  double spare_m = 1e300, beside_m = 0, below_m = 0;
  Point3 at;  ///< on the excavation
};

/// Least distance beside the load less its spread down to the excavation. Between two bends of the sides that
/// difference is convex in the height (against a convex outline), so that a golden section finds its least.
class Search {
 public:
  Search(const PitUnderCheck& under, const PlanLine& outline, double level_m, double run, Nearest& nearest)
      : under_(under), outline_(outline), top_(level_m - under.shape.floor_elevation_m), run_(run), nearest_(nearest) {}

  void look() {
    if (!(top_ > 0)) return;
    std::vector<double> heights{0, top_};
    const CutSides& sides = under_.shape.sides;
    for (const SideProfile* side : {&sides.low, &sides.high, &sides.left, &sides.right})
      for (const double bend : side->bends())
        if (bend < top_) heights.push_back(bend);
    std::sort(heights.begin(), heights.end());
    for (std::size_t i = 0; i < heights.size(); ++i) {
      const double beside = take(heights[i]) + run_ * (top_ - heights[i]);
      // The excavation widens upwards: no place of the piece is nearer than its upper end nor lower than its lower one.
      if (i > 0 && beside - run_ * (top_ - heights[i - 1]) < nearest_.spare_m - 1e-9)
        section(heights[i - 1], heights[i]);
    }
  }

 private:
  double take(double height) {
    const PlanGap gap = gap_between(outline_at(under_.shape, height), outline_, true);
    const double below = top_ - height, spare = gap.gap_m - run_ * below;
    if (spare < nearest_.spare_m)
      nearest_ = {&under_,
                  spare,
                  gap.gap_m,
                  below,
                  {gap.on_outline.x_m, gap.on_outline.y_m, under_.shape.floor_elevation_m + height}};
    return spare;
  }
  void section(double low, double high) {
    constexpr double golden = 0.6180339887498949;
    double a = high - golden * (high - low), b = low + golden * (high - low);
    double at_a = take(a), at_b = take(b);
    for (int i = 0; i < 30; ++i) {
      if (at_a < at_b) {
        high = b;
        b = a;
        at_b = at_a;
        at_a = take(a = high - golden * (high - low));
      } else {
        low = a;
        a = b;
        at_a = at_b;
        at_b = take(b = low + golden * (high - low));
      }
    }
  }

  const PitUnderCheck& under_;
  const PlanLine& outline_;
  double top_, run_;
  Nearest& nearest_;
};

bool held_all_round(const PitUnderCheck& pit) {
  const std::vector<SideUnderCheck> sides = sides_of(pit);
  return std::all_of(sides.begin(), sides.end(), [](const SideUnderCheck& side) {
    return side.entered.kind.value == SideKind::shored || side.entered.kind.value == SideKind::shielded;
  });
}

/// A track's load spreads from 11 ft off its centreline, or from the edge entered where that lies further out. A
/// railway's right-of-way requirements, s. 3.2 (read) begin 18 in below the rail; here it begins at the ground.
PlanLine load_of_track(SurfaceFeature track) {
  constexpr double from_centre_m = 11 * 0.3048;
  if (track.from && track.to) {
    const double middle = (track.from->m + track.to->m) / 2;
    const double half = std::max(std::abs(track.to->m - track.from->m) / 2, from_centre_m / std::cos(track.skew->rad));
    track.from = Length{middle - half};
    track.to = Length{middle + half};
  }
  return plan_of(track);
}

}  // namespace

void check_pits_influence(CheckRun& run, std::span<const PitUnderCheck> pits) {
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const bool track = feature.kind == SurfaceKind::track;
    const PlanLine outline = track ? load_of_track(feature) : stands(feature) ? plan_of(feature) : PlanLine();
    if (outline.empty()) continue;
    const Limit spread = run.limit(track ? "track_influence_run" : "footing_influence_run");
    Nearest nearest;
    for (const PitUnderCheck& pit : pits) {
      if (pit.shape.footprint.empty()) continue;
      const double middle = (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2;
      const double ground = elevation_at(run.crossing.site.ground, middle);
      Search(pit, outline, track || !feature.founding_elevation ? ground : feature.founding_elevation->m, spread.value,
             nearest)
          .look();
    }
    if (!nearest.pit) continue;
    const Limit limit{0, true, spread.source};
    const std::string_view code = track ? "pit.track-spread" : "pit.footing-spread";
    const Severity severity = track || held_all_round(*nearest.pit) ? Severity::caution : Severity::stop;
    require(
        run,
        finding_at(code, severity, feature.id, display_name(feature), nearest.at.x_m, nearest.at.y_m, nearest.at.z_m),
        nearest.spare_m, limit);
    if (run.wants_working())
      run.add_working({code,
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

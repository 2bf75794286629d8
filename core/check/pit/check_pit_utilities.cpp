/// Utilities in the excavation of a pit, or nearer to it than their clear gap and the error of their place allow.

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include "burrow/base/parallel_for.h"
#include "burrow/clearance/clearance.h"
#include "burrow/clearance/course.h"
#include "burrow/pit/pit_reach.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double band_90_sd = 1.645;
constexpr double piece_m = 0.05;
constexpr double pieces_at_most = 4000;
constexpr double shown_by_hole_m = 0.5;  // as where the bore passes
constexpr double hair_m = 1e-6;          // more than rounding

PitReach::Walls walls_of(const CheckRun& run, const PitUnderCheck& pit) {
  const double thick = run.limit("pit_wall_m").value;
  const auto wall = [&](const PitSide& side) {
    return *side.kind == SideKind::shored || *side.kind == SideKind::shielded ? thick : 0;
  };
  const PitSides& sides = pit.entered.sides;
  const double bore = wall(sides.bore), back = wall(sides.back);
  const bool high = pit.shape.bore_side_high;
  return {high ? back : bore, high ? bore : back, wall(sides.left), wall(sides.right)};
}

/// The nearest of those places of a utility that are exposed, or of those that are not.
struct Nearest {
  double low_m = std::numeric_limits<double>::infinity();  ///< clear gap, least within the error of its place
  double gap_m = 0;                                        ///< the same as drawn
  double error_m = 0;                                      ///< 1.645 standard deviations of its place
  PathVertex at;
  bool under_edge = false;  ///< as drawn, above the bottom within the edge at the surface: some slope may cover it
};

/// What the digging of one pit comes near to of one utility.
class NearPit {
 public:
  NearPit(const CheckRun& run, const PitReach& reach, const ClearanceRules& rules, const Utility& utility)
      : run_(run), reach_(reach), utility_(utility) {
    radius_ = utility.outside_diameter.value_or(Length{0}).m / 2;
    doubted_ = std::any_of(run.answer.findings.begin(), run.answer.findings.end(), [&](const Finding& finding) {
      return finding.code == "missing.utility-agreed" && finding.subject == utility.id;
    });
    wanted_ = std::max(clear_gap_wanted(rules, utility, true), clear_gap_wanted(rules, utility, false)).m;
    look();
    for (Nearest* nearest : {&hidden_, &exposed_})
      if (std::isfinite(nearest->low_m)) nearest->gap_m = reach_.gap(nearest->at) - radius_;
  }
  [[nodiscard]] const Nearest& nearest(bool unexposed) const { return unexposed ? hidden_ : exposed_; }
  /// Within reach in plan where its depth is not known.
  [[nodiscard]] const std::optional<PathVertex>& without_depth() const { return without_depth_; }

 private:
  struct Place {
    PathVertex at;
    double lateral_sd_m = 0, vertical_sd_m = 0;
  };

  /// As believed by its test holes, else as recorded; as both, while nobody has decided which is right.
  void look() {
    const auto& answers = run_.answer.utilities;
    const auto index = static_cast<std::size_t>(&utility_ - run_.crossing.site.utilities.data());
    const bool believed = index < answers.size() && !answers[index].believed.empty();
    if (believed) look_by_holes(answers[index].believed);
    if (!believed || doubted_) look_as_recorded();
  }
  void look_by_holes(const std::vector<PinnedVertex>& line) {
    for (std::size_t i = 0; i < line.size(); ++i) {
      const PinnedVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
      look_along({a.at, a.lateral_sd_m, a.vertical_sd_m}, {b.at, b.lateral_sd_m, b.vertical_sd_m});
    }
  }
  /// Each piece with the errors of its deeper end.
  void look_as_recorded() {
    const std::vector<PathVertex> line = judged_line(utility_, run_.crossing.site.ground, run_.tables);
    for (std::size_t i = 0; i < line.size(); ++i) {
      const PathVertex &a = line[i], &b = line[std::min(i + 1, line.size() - 1)];
      if (line.size() > 1 && i + 1 == line.size()) break;
      const LocationSd sd = location_sd(utility_.located, run_.tables, std::max(depth_of(a), depth_of(b)));
      look_along({a, sd.lateral_m.value_or(0), sd.vertical_m.value_or(0)},
                 {b, sd.lateral_m.value_or(0), sd.vertical_m.value_or(0)});
    }
  }
  [[nodiscard]] double depth_of(const PathVertex& v) const {
    const LevelLine& ground = run_.crossing.site.ground;
    return ground.empty() || !v.z_m ? 0 : std::max(elevation_at(ground, v.x_m) - *v.z_m, 0.0);
  }

  /// Places on a grid of the piece itself, so that a greater error only adds to them.
  void look_along(const Place& a, const Place& b) {
    const double far = wanted_ + radius_ + band_90_sd * std::max(a.lateral_sd_m, b.lateral_sd_m);
    double from = 0, to = 1;
    const auto hold = [&](double start, double end, double low, double high) {
      const double d = end - start;
      if (d == 0) {
        if (start < low || start > high) to = -1;
        return;
      }
      const double first = (low - start) / d, second = (high - start) / d;
      from = std::max(from, std::min(first, second));
      to = std::min(to, std::max(first, second));
    };
    hold(a.at.x_m, b.at.x_m, reach_.low_corner().x_m - far, reach_.high_corner().x_m + far);
    hold(a.at.y_m, b.at.y_m, reach_.low_corner().y_m - far, reach_.high_corner().y_m + far);
    if (!(from <= to)) return;
    const double plan = std::hypot(b.at.x_m - a.at.x_m, b.at.y_m - a.at.y_m);
    const double rise = a.at.z_m && b.at.z_m ? *b.at.z_m - *a.at.z_m : 0;
    const double length = std::hypot(b.at.x_m - a.at.x_m, b.at.y_m - a.at.y_m, rise);
    const double pieces = std::max(std::ceil(length / piece_m), 1.0);
    const double first = std::floor(from * pieces), last = std::ceil(to * pieces);
    const double stride = std::max(std::ceil((last - first) / pieces_at_most), 1.0);
    // From one place to the next the gap changes by no more than the way and what the errors change.
    const double change_m = std::hypot(plan + band_90_sd * std::abs(b.lateral_sd_m - a.lateral_sd_m),
                                       std::abs(rise) + band_90_sd * std::abs(b.vertical_sd_m - a.vertical_sd_m)) *
                            stride / pieces;
    const bool deep = a.at.z_m && b.at.z_m;
    for (double k = first; k <= last && !(deep && as_bad_as_can_be());) {
      const double too_far_m = look_at(a, b, std::clamp(k / pieces, 0.0, 1.0));
      const double empty = change_m > 0 ? std::floor((too_far_m - hair_m) / change_m) : 0;
      k += stride * (1 + std::max(empty, 0.0));
    }
  }

  /// Nothing that lies elsewhere is worse, nor would it be told.
  [[nodiscard]] bool as_bad_as_can_be() {
    const auto as_bad = [&](const Nearest& nearest) { return nearest.under_edge && nearest.low_m <= -radius_; };
    return as_bad(hidden_) && (own_holes().empty() || as_bad(exposed_));
  }

  /// By how much the place is too far off to count; 0: it counts.
  double look_at(const Place& a, const Place& b, double t) {
    const auto between = [&](double from, double to) { return from + t * (to - from); };
    PathVertex at{between(a.at.x_m, b.at.x_m), between(a.at.y_m, b.at.y_m), std::nullopt};
    if (a.at.z_m && b.at.z_m) at.z_m = between(*a.at.z_m, *b.at.z_m);
    const PlaceError error{band_90_sd * between(a.lateral_sd_m, b.lateral_sd_m),
                           band_90_sd * between(a.vertical_sd_m, b.vertical_sd_m)};
    // Never more than the gap itself, and sooner computed.
    const double at_least = reach_.gap_below_edge(at, error) - radius_;
    if (at_least > wanted_) return at_least - wanted_;
    Nearest& nearest = shown_by_hole(at) ? exposed_ : hidden_;
    if (!nearest.under_edge && at_least <= 0) nearest.under_edge = reach_.gap_below_edge(at) <= radius_;
    if (at_least >= nearest.low_m && (at.z_m || without_depth_)) return 0;
    if (at.z_m && nearest.under_edge && nearest.low_m <= -radius_) return 0;  // worse than that is none
    const double low = reach_.gap(at, error) - radius_;
    if (!at.z_m && low <= wanted_ && !without_depth_) without_depth_ = at;
    if (!(low < nearest.low_m)) return 0;
    nearest.low_m = low;
    nearest.error_m = std::hypot(error.in_plan_m, error.in_height_m);
    nearest.at = at;
    return 0;
  }
  [[nodiscard]] bool shown_by_hole(const PathVertex& at) {
    const std::vector<PlanPoint>& holes = own_holes();
    return std::any_of(holes.begin(), holes.end(), [&](const PlanPoint& hole) {
      return std::hypot(hole.x_m - at.x_m, hole.y_m - at.y_m) <= shown_by_hole_m;
    });
  }
  /// What was exposed where the bore passes still lies hidden beside a pit: only a hole there lays it bare, and none
  /// that contradicts the record. Found when first asked for: most utilities lie nowhere near.
  const std::vector<PlanPoint>& own_holes() {
    if (!own_holes_) {
      own_holes_.emplace();
      for (const TestHole& hole : run_.crossing.site.test_holes)
        if (!doubted_ && lays_bare(hole, utility_, run_.tables.judged_on))
          own_holes_->push_back({hole.station.m, hole.offset.m});
    }
    return *own_holes_;
  }

  const CheckRun& run_;
  const PitReach& reach_;
  const Utility& utility_;
  double radius_ = 0, wanted_ = 0;
  bool doubted_ = false;  ///< a hole contradicts its record, and nobody has decided
  Nearest hidden_, exposed_;
  std::optional<PathVertex> without_depth_;
  std::optional<std::vector<PlanPoint>> own_holes_;
};

Finding at_utility(const PitUnderCheck& pit, const Utility& utility, const PathVertex& at, std::string_view code,
                   Severity severity) {
  return finding_at(code, severity, utility.id, display_name(utility), at.x_m, at.y_m,
                    at.z_m.value_or(pit.shape.floor_elevation_m));
}

/// Inside: by what is dug, within the error of its place; or as drawn within the edge at the surface, where the slopes
/// may still leave it covered. The first is a stop until it is exposed, whatever it carries; the second, as what is
/// known to be there, where its kind is dangerous or unknown. What is only proposed cannot be struck, and what is
/// proved to be out of use does not hurt.
bool say_inside(CheckRun& run, const PitUnderCheck& pit, const Utility& utility, const Nearest& nearest,
                bool unexposed) {
  if (nearest.low_m > 0 && !nearest.under_edge) return false;
  const bool there = may_be_live(utility, run.tables);
  const bool bad = utility.kind == UtilityKind::unknown || row_of(run.tables, utility.kind).dangerous;
  const bool stops = unexposed && there && (!(nearest.low_m > 0) || bad);
  Finding finding = at_utility(pit, utility, nearest.at, "pit.utility", stops ? Severity::stop : Severity::caution);
  finding.source = {"expose by hand before digging with a machine, support what is laid bare",
                    SourceLabel::common_practice};
  finding.margin = -1;
  if (nearest.gap_m > 0 && !nearest.under_edge) {
    finding.measured = nearest.gap_m;
    finding.limit = nearest.error_m;
  }
  run.add(std::move(finding));
  return true;
}

/// Whether it comes too near.
bool say_near(CheckRun& run, const PitUnderCheck& pit, const Utility& utility, const Nearest& nearest, bool unexposed) {
  if (!std::isfinite(nearest.low_m)) return false;
  Limit wanted = gap_limit(run.limits, run.tables, utility, unexposed);
  Finding finding = at_utility(pit, utility, nearest.at, "pit.utility-near", Severity::caution);
  finding.limit_base = wanted.value;
  wanted.value += nearest.gap_m - nearest.low_m;
  return run.require(std::move(finding), nearest.gap_m, wanted) < 0;
}

void ask_for_depth(CheckRun& run, const Utility& utility, const PathVertex& at) {
  const auto& all = run.answer.findings;
  const bool asked = std::any_of(all.begin(), all.end(), [&](const Finding& finding) {
    return finding.code == "missing.utility-depth" && finding.subject == utility.id;
  });
  if (asked) return;
  Finding& finding = run.missing("utility-depth", utility.id, display_name(utility));
  finding.station_m = at.x_m;
  finding.offset_m = at.y_m;
}

}  // namespace

void check_pit_utilities(CheckRun& run, const PitUnderCheck& pit) {
  if (run.crossing.site.utilities.empty()) return;
  const PitReach reach(pit.shape, *pit.entered.sump_depth, walls_of(run, pit));
  const ClearanceRules rules = clearance_rules(run.limits, run.tables);
  const std::vector<Utility>& utilities = run.crossing.site.utilities;
  constexpr std::size_t at_once = 16;  // one thread's piece
  std::vector<std::optional<NearPit>> all(utilities.size());
  parallel_for(threads_for(run, utilities.size()), (utilities.size() + at_once - 1) / at_once, {},
               [&](std::size_t, std::size_t piece) {
                 const std::size_t end = std::min(utilities.size(), (piece + 1) * at_once);
                 for (std::size_t i = piece * at_once; i < end; ++i) all[i].emplace(run, reach, rules, utilities[i]);
               });
  for (std::size_t i = 0; i < utilities.size(); ++i) {
    const Utility& utility = utilities[i];
    const NearPit& near = *all[i];
    if (near.without_depth()) ask_for_depth(run, utility, *near.without_depth());
    if (say_inside(run, pit, utility, near.nearest(true), true) ||
        say_inside(run, pit, utility, near.nearest(false), false))
      continue;
    if (!say_near(run, pit, utility, near.nearest(true), true)) say_near(run, pit, utility, near.nearest(false), false);
  }
}

}  // namespace burrow

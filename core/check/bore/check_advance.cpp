/// Does the tool get on: grip, the set of each blow, time, and where a stuck tool could be dug out.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/crossing/statement.h"
#include "check_run.h"

namespace burrow {

namespace {

/// Arc length at a station, straight between points of the path.
double arc_at(const std::vector<PathPoint>& points, double x_m) {
  const auto right =
      std::lower_bound(points.begin(), points.end(), x_m, [](const PathPoint& p, double x) { return p.x_m < x; });
  if (right == points.begin()) return points.front().s_m;
  if (right == points.end()) return points.back().s_m;
  const PathPoint &a = *(right - 1), &b = *right;
  return a.s_m + (x_m - a.x_m) / (b.x_m - a.x_m) * (b.s_m - a.s_m);
}

AboveBore above_of(SurfaceKind kind) {
  switch (kind) {
    case SurfaceKind::road:
      return AboveBore::carriageway;
    case SurfaceKind::track:
      return AboveBore::track;
    case SurfaceKind::building:
    case SurfaceKind::footing:
    case SurfaceKind::wall:
      return AboveBore::building;
    default:
      return AboveBore::diggable;
  }
}

struct Above {
  Stretch stretch;
  AboveBore kind;
  const SurfaceFeature* feature;
};

/// Things on top that keep people from digging, cut to the path; the worst first, so that it counts where two overlap.
std::vector<Above> in_the_way(const CheckRun& run) {
  const auto& points = run.answer.bore.points;
  std::vector<Above> all;
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const AboveBore kind = above_of(feature.kind);
    if (kind == AboveBore::diggable) continue;
    std::optional<Stretch> stretch = stretch_of(feature, points);
    if (!stretch) continue;
    stretch->from_m = std::max(stretch->from_m, points.front().x_m);
    stretch->to_m = std::min(stretch->to_m, points.back().x_m);
    if (stretch->to_m > stretch->from_m) all.push_back({*stretch, kind, &feature});
  }
  std::stable_sort(all.begin(), all.end(), [](const Above& a, const Above& b) { return a.kind > b.kind; });
  return all;
}

void find_stops(CheckRun& run, const std::vector<Above>& obstacles) {
  const BorePath& path = run.answer.bore;
  std::vector<double> cuts{path.points.front().x_m, path.points.back().x_m};
  for (const Above& o : obstacles) {
    cuts.push_back(o.stretch.from_m);
    cuts.push_back(o.stretch.to_m);
  }
  std::sort(cuts.begin(), cuts.end());
  double before = 0;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    if (!(cuts[i] - cuts[i - 1] > 1e-9)) continue;
    const double middle = 0.5 * (cuts[i] + cuts[i - 1]);
    const auto on_top = std::find_if(obstacles.begin(), obstacles.end(), [&](const Above& o) {
      return middle > o.stretch.from_m && middle < o.stretch.to_m;
    });
    StopStretch stretch{cuts[i - 1], cuts[i], AboveBore::diggable, {}, 0};
    if (on_top != obstacles.end()) {
      stretch.above = on_top->kind;
      stretch.id = on_top->feature->id;
    }
    const double until = run.stopping.up_to({arc_at(path.points, cuts[i])});
    stretch.chance = until - before;
    before = until;
    auto& stops = run.answer.stops;
    if (!stops.empty() && stops.back().above == stretch.above && stops.back().id == stretch.id) {
      stops.back().to_m = stretch.to_m;
      stops.back().chance += stretch.chance;
    } else {
      stops.push_back(std::move(stretch));
    }
  }
}

/// Whether it is said how a stuck tool would be got out, and with whom that is agreed.
bool settled(const StuckPlan& plan) {
  return says_something(plan.how) && says_something(plan.agreed_with);
}

/// Where nobody may dig, a tool that stops cannot simply be dug out: a caution until it is settled how it would be got
/// out. The chance of that is said, and held against its limit, only where its rates are from records.
void judge_stops(CheckRun& run, const std::vector<Above>& obstacles) {
  const Limit limit = run.limit("stuck_under_caution");
  const BorePath& path = run.answer.bore;
  const bool known = run.answer.refusal_calibrated;
  for (const Above& o : obstacles) {
    const auto expected = [&](double x_m) { return run.stopping.expected({arc_at(path.points, x_m)}); };
    const double before = expected(o.stretch.from_m), until = expected(o.stretch.to_m);
    const double chance = std::exp(-before) - std::exp(-until);
    const double middle = 0.5 * (o.stretch.from_m + o.stretch.to_m);
    Finding finding = finding_at("surface.stuck", Severity::caution, o.feature->id, display_name(*o.feature), middle, 0,
                                 elevation_at(run.crossing.site.ground, middle));
    finding.unit = "";
    const bool agreed = settled(o.feature->rescue);
    if (!agreed || !known || run.require(finding, chance, limit) >= 0) {
      if (agreed) finding.severity = Severity::note;
      if (known) finding.measured = chance;
      finding.source = {"a tool that stops where nobody may dig", SourceLabel::our_default};
      run.add(std::move(finding));
    }
    if (run.wants_working() && known)
      run.add_working(
          {"surface.stuck",
           o.feature->id,
           "P = exp(−N_from) − exp(−N_to), N = ∫ r ds",
           {{"from", o.stretch.from_m, "m"}, {"to", o.stretch.to_m, "m"}, {"N_from", before, ""}, {"N_to", until, ""}},
           "P",
           chance,
           "",
           limit.value,
           {"refusal rates entered for the ground along the path", SourceLabel::our_model},
           limit.source});
  }
}

Severity set_severity(const CheckRun& run) {
  return run.calibrated() ? Severity::stop : Severity::caution;
}

/// The place where the set first falls below the least, and, where one cannot dig there, the thing on top of it.
void judge_set(CheckRun& run, const Limit& least, const std::vector<Above>& obstacles) {
  const Advance& advance = run.answer.advance;
  if (!advance.stop_station_m) {
    const auto least_at =
        std::min_element(advance.points.begin(), advance.points.end(),
                         [](const AdvancePoint& a, const AdvancePoint& b) { return a.set_m < b.set_m; });
    if (least_at != advance.points.end())
      run.note_passed(finding_at("bore.set", set_severity(run), "bore", "bore", least_at->x_m, 0, 0), least_at->set_m,
                      least);
    return;
  }
  const auto at = std::find_if(advance.points.begin(), advance.points.end(),
                               [&](const AdvancePoint& p) { return p.s_m >= *advance.stop_s_m; });
  const PathPoint& p = run.answer.bore.points[static_cast<std::size_t>(at - advance.points.begin())];
  const Severity severity = set_severity(run);
  run.require(finding_at("bore.set", severity, "bore", "bore", p.x_m, p.y_m, p.z_m), at->set_m, least);
  for (const Above& o : obstacles)
    if (p.x_m >= o.stretch.from_m && p.x_m <= o.stretch.to_m)
      run.require(
          finding_at("surface.would-stop", severity, o.feature->id, display_name(*o.feature), p.x_m, p.y_m, p.z_m),
          at->set_m, least);
}

void judge_grip(CheckRun& run) {
  const Advance& advance = run.answer.advance;
  const auto& points = run.answer.bore.points;
  const auto at = std::min_element(points.begin(), points.end(), [&](const PathPoint& a, const PathPoint& b) {
    return std::abs(a.x_m - advance.least_grip_station_m) < std::abs(b.x_m - advance.least_grip_station_m);
  });
  Finding finding = finding_at("bore.grip", Severity::stop, "bore", "bore", at->x_m, at->y_m, at->z_m);
  finding.unit = "";
  if (run.require(finding, advance.least_grip, run.limit("grip_stop")) < 0) return;
  finding.severity = Severity::caution;
  run.require(std::move(finding), advance.least_grip, run.limit("grip_caution"));
}

}  // namespace

void check_advance(CheckRun& run) {
  Assessment& answer = run.answer;
  if (answer.bore.points.size() < 2) return;
  const Limit least_set = run.limit("set_least_m");
  const AdvanceAsk ask{run.tool.pressure, *run.crossing.bore.model.field_factor, Length{least_set.value}};
  answer.advance = advance_along(run.ground, run.tool, answer.bore, ask);
  if (answer.advance.time)
    answer.advance_time_s = {answer.advance.time->p10_s, answer.advance.time->p50_s, answer.advance.time->p90_s};
  answer.refusal_station_m = answer.advance.stop_station_m;
  const std::vector<Above> obstacles = in_the_way(run);
  judge_set(run, least_set, obstacles);
  judge_grip(run);
  if (run.wants_working())
    for (Working& working : working_of(answer.advance, run.tool, ask)) {
      if (working.code == "bore.set") working.limit_source = least_set.source;
      if (working.code == "bore.grip") {
        const Limit stop = run.limit("grip_stop");
        const Limit grip = !(answer.advance.least_grip >= stop.value) ? stop : run.limit("grip_caution");
        working.limit = grip.value;
        working.limit_source = grip.source;
      }
      run.add_working(std::move(working));
    }
  find_stops(run, obstacles);
  judge_stops(run, obstacles);
}

}  // namespace burrow

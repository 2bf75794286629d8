/// What the owner of a road, track or ditch demands beside cover and heave: the angle of the crossing, how far the pits
/// stay away, how thick a hole may be opened without taking soil out.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "check_run.h"

namespace burrow {

namespace {

struct UnderRule {
  const SurfaceFeature& feature;
  const SurfaceRule* rule = nullptr;
  Phrase name;
  Stretch stretch;
};

Finding at(const CheckRun& run, const UnderRule& under, std::string_view code, double station_m) {
  Finding finding = finding_at(code, Severity::stop, under.feature.id, under.name, station_m, 0,
                               elevation_at(run.crossing.site.ground, station_m));
  return finding;
}

/// Heading of the mean path half way across.
double heading_at(const std::vector<PathPoint>& points, double station_m) {
  const PathPoint* nearest = &points.front();
  for (const PathPoint& p : points)
    if (std::abs(p.x_m - station_m) < std::abs(nearest->x_m - station_m)) nearest = &p;
  return nearest->heading_rad;
}

void judge_angle(CheckRun& run, const UnderRule& under) {
  if (!under.rule || !under.rule->least_angle) return;
  const double middle = 0.5 * (under.stretch.from_m + under.stretch.to_m);
  // Which way the skew turns is not in the file: the heading counts against the crossing.
  const double skew = std::abs(under.feature.skew->rad), heading = std::abs(heading_at(run.answer.bore.points, middle));
  const double angle = pi / 2 - skew - heading;
  const Limit limit{under.rule->least_angle->rad, true, under.rule->source};
  Finding finding = at(run, under, "surface.angle", middle);
  finding.unit = "rad";
  run.require(std::move(finding), angle, limit);
  if (run.wants_working())
    run.add_working({"surface.angle",
                     under.feature.id,
                     translatable("β = 90° − |skew| − |ψ|"),
                     {{"skew", skew, "rad"}, {"ψ", heading, "rad"}},
                     "β",
                     angle,
                     "rad",
                     limit.value,
                     {"angle between bore and thing on top", SourceLabel::derived},
                     limit.source});
}

/// Of the two faces, between which the pipe lies at the least, the one that stands nearer.
void demand_face(CheckRun& run, const UnderRule& under, std::string_view code, const Limit& limit) {
  const double launch = run.answer.launch_pit.face_station_m, exit = run.answer.exit_pit.face_station_m;
  const bool nearer_launch = under.stretch.from_m - launch < exit - under.stretch.to_m;
  const double face = nearer_launch ? launch : exit;
  const double edge = nearer_launch ? under.stretch.from_m : under.stretch.to_m;
  const double away = (nearer_launch ? edge - face : face - edge) * std::cos(under.feature.skew->rad);
  run.require(at(run, under, code, face), away, limit);
  if (run.wants_working())
    run.add_working({code,
                     under.feature.id,
                     translatable("a = |x_edge − x_face| cos(skew)"),
                     {{"x_edge", edge, "m"}, {"x_face", face, "m"}, {"skew", under.feature.skew->rad, "rad"}},
                     "a",
                     away,
                     "m",
                     limit.value,
                     {"face of the nearer pit to the edge, square to it", SourceLabel::derived},
                     limit.source});
}

void judge_setback(CheckRun& run, const UnderRule& under) {
  if (!under.rule) return;
  const SurfaceRule& rule = *under.rule;
  if (rule.pit_setback && rule.setback_span == SetbackSpan::face_to_edge)
    demand_face(run, under, "surface.pit-setback", {rule.pit_setback->m, true, rule.source});
  if (rule.pipe_end_setback) demand_face(run, under, "surface.pipe-end", {rule.pipe_end_setback->m, true, rule.source});
}

/// What else its owner asks and nothing here judges.
void report_note(CheckRun& run, const UnderRule& under) {
  if (!under.rule || under.rule->note.empty()) return;
  Finding finding = at(run, under, "surface.owner-asks", 0.5 * (under.stretch.from_m + under.stretch.to_m));
  finding.severity = Severity::note;
  finding.name = phrase("{}: {}", under.name, under.rule->note);
  finding.source = under.rule->source;
  run.add(std::move(finding));
}

void judge_diameter(CheckRun& run, const UnderRule& under) {
  if (!under.rule || !under.rule->largest_driven) return;
  const Limit limit{under.rule->largest_driven->m, false, under.rule->source};
  run.require(at(run, under, "surface.driven", 0.5 * (under.stretch.from_m + under.stretch.to_m)), run.tool.diameter.m,
              limit);
}

/// Where the rule lets neither bore nor pit be, for the drawing.
void add_zone(CheckRun& run, const UnderRule& under) {
  RuleZone zone;
  zone.id = under.feature.id;
  zone.from_m = under.stretch.from_m;
  zone.to_m = under.stretch.to_m;
  if (const std::optional<Limit> cover = cover_limit(run, under.feature)) zone.cover_m = cover->value;
  if (under.rule && under.rule->pit_setback) zone.pit_setback_m = under.rule->pit_setback->m;
  if (zone.cover_m || zone.pit_setback_m) run.answer.zones.push_back(std::move(zone));
}

}  // namespace

void check_rules(CheckRun& run) {
  if (run.answer.bore.points.empty()) return;
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const std::optional<Stretch> stretch = stretch_of(feature, run.answer.bore.points);
    if (!stretch) continue;
    UnderRule under{feature, feature.rule ? find_rule(run.tables, *feature.rule) : nullptr, display_name(feature),
                    *stretch};
    judge_angle(run, under);
    judge_setback(run, under);
    judge_diameter(run, under);
    report_note(run, under);
    add_zone(run, under);
  }
}

}  // namespace burrow

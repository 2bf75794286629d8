/// What was not entered. Each is a finding of its own and keeps the verdict at "incomplete" or worse.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/clearance/contact.h"
#include "burrow/crossing/statement.h"
#include "check_run.h"

namespace burrow {

namespace {

constexpr double building_near_m = 15.0;  ///< laterals are asked for within this distance of the bore (our default)

double distance_to_bore(const Crossing& crossing, double x_m, double y_m) {
  const double x0 = crossing.bore.launch.station.m;
  const double y0 = crossing.bore.launch.offset->m;
  const double dx = crossing.bore.exit.station.m - x0;
  const double dy = crossing.bore.exit.offset->m - y0;
  const double t = std::clamp(((x_m - x0) * dx + (y_m - y0) * dy) / std::max(1e-12, dx * dx + dy * dy), 0.0, 1.0);
  return std::hypot(x_m - x0 - t * dx, y_m - y0 - t * dy);
}

void check_surface_answers(CheckRun& run) {
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const bool asks_rule =
        feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track || feature.kind == SurfaceKind::ditch;
    const bool asks_permission = feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track;
    const Phrase name = display_name(feature);
    const double station = feature.from && feature.to ? (feature.from->m + feature.to->m) / 2 : 0;
    const auto place = [&](Finding& finding) {
      if (feature.from && feature.to) finding.station_m = station;
    };
    if (!place_known(feature)) run.missing("surface-place", feature.id, name);
    if (asks_rule && !cover_limit(run, feature)) place(run.missing("rule", feature.id, name));
    if (asks_permission && feature.permission.value == Permission::not_asked)
      place(run.missing("permission", feature.id, name));
    if (asks_permission && feature.permission.value == Permission::allowed && !says_something(feature.permit))
      place(run.missing("permit", feature.id, name));
    if (asks_permission && feature.permission.value == Permission::refused) {
      Finding finding;
      finding.code = "surface.permission-refused";
      finding.severity = Severity::stop;
      finding.subject = feature.id;
      finding.name = name;
      finding.source = {"the owner's answer entered for this crossing", SourceLabel::owners_setting};
      place(finding);
      run.add(std::move(finding));
    }
  }
}

/// By how much the guess of a stratum widens the 90 % band up and down, edge to edge, at the end of the path.
std::optional<double> wider_by(const CheckRun& run, std::size_t stratum) {
  for (const GuessEffect& effect : run.answer.guesses) {
    if (effect.stratum != stratum) continue;
    const double sd = run.answer.bore.points.back().sd_vertical_m;
    return 2 * band_90_sd * (sd - std::sqrt(std::max(sd * sd - effect.vertical_var_m2, 0.0)));
  }
  return std::nullopt;
}

/// Strata that nobody has seen, along the bore or near enough to turn the tool.
void check_guesses(CheckRun& run) {
  const std::vector<Stratum>& strata = run.crossing.site.strata;
  std::vector<bool> named_already(strata.size(), false);
  const auto say = [&](std::size_t i, const PathPoint& p) {
    if (i >= strata.size() || named_already[i] || strata[i].known.value != StratumEvidence::guess) return;
    named_already[i] = true;
    const SoilClass* soil = find_soil(run.tables, strata[i].soil);
    Finding finding = finding_at("site.soil-guessed", Severity::caution, strata[i].id,
                                 soil ? soil->name : strata[i].soil, p.x_m, p.y_m, p.z_m);
    finding.source = {"how the stratum is known, as entered; a guess where nothing is", SourceLabel::our_default};
    finding.measured = wider_by(run, i);
    run.add(std::move(finding));
  };
  const std::vector<PathPoint>& points = run.answer.bore.points;
  for (const PathPoint& p : points) say(run.ground.stratum_at(p.x_m, p.y_m, p.z_m), p);
  for (const GuessEffect& effect : run.answer.guesses) say(effect.stratum, points[points.size() / 2]);
}

}  // namespace

bool house_connections_expected(const Crossing& crossing) {
  const Site& site = crossing.site;
  for (const SurfaceFeature& feature : site.surface) {
    if (feature.kind != SurfaceKind::building && feature.kind != SurfaceKind::footing) continue;
    for (const PlanPoint& p : feature.outline)
      if (distance_to_bore(crossing, p.x_m, p.y_m) < building_near_m) return true;
    if (feature.outline.empty() && feature.from) return true;
  }
  return std::any_of(site.utilities.begin(), site.utilities.end(), [&](const Utility& u) {
    return u.kind == UtilityKind::sewer && std::any_of(u.path.begin(), u.path.end(), [&](const PathVertex& v) {
             return distance_to_bore(crossing, v.x_m, v.y_m) < building_near_m;
           });
  });
}

namespace {

/// Whether anything entered lies over the bore; what has no place yet is asked for by itself.
bool something_above(const CheckRun& run) {
  const double launch = run.crossing.bore.launch.station.m, exit = run.crossing.bore.exit.station.m;
  const auto& features = run.crossing.site.surface;
  return std::any_of(features.begin(), features.end(), [&](const SurfaceFeature& feature) {
    if (!place_known(feature)) return true;
    const std::optional<Stretch> stretch = stretch_of(feature, run.answer.bore.points);
    return stretch && stretch->from_m <= exit && stretch->to_m >= launch;
  });
}

}  // namespace

void check_missing(CheckRun& run) {
  const Crossing& crossing = run.crossing;
  const Site& site = crossing.site;
  if (crossing.version > known_file_version) {
    Finding& newer = run.missing("newer-file", "site", "file");
    newer.code = "file.newer";
    newer.measured = crossing.version;
    newer.limit = known_file_version;
    newer.at_least = false;
  }
  const double from = crossing.bore.launch.station.m;
  const double to = crossing.bore.exit.station.m;
  if (site.ground.front().station_m > from + 1e-9 || site.ground.back().station_m < to - 1e-9) {
    Finding& finding = run.missing("ground", "site", translatable("ground line"));
    finding.station_m = site.ground.front().station_m > from + 1e-9 ? from : to;
  }
  const double low = std::min(run.answer.launch_pit.floor_from_m, from);
  const double high = std::max(run.answer.exit_pit.floor_to_m, to);
  if (site.ground.front().station_m > low + 1e-9 || site.ground.back().station_m < high - 1e-9) {
    Finding note;
    note.code = "site.line-held-level";
    note.subject = "site";
    note.name = translatable("ground line");
    note.source = {"beyond its ends a line is held level", SourceLabel::our_default};
    run.add(std::move(note));
  }
  if (!site.water || site.water->empty()) run.missing("water", "site", translatable("water level"));
  for (const UnknownKey& unknown : crossing.unknown_keys) {
    Finding finding;
    finding.code = "file.unknown-key";
    finding.severity = Severity::caution;
    finding.subject = "site";
    finding.name = unknown.pointer + "/" + unknown.key;
    finding.missing = true;
    finding.source = {unknown.like, SourceLabel::derived};
    run.add(std::move(finding));
  }
  if (!run.tables.judged_on) run.missing("day", "site", translatable("day to judge by"));
  check_search(run);
  if (!something_above(run) && !declared(site.nothing_above, run.tables.judged_on))
    run.missing("surface", "site", translatable("what stands above"));
  check_surface_answers(run);
  if (!crossing.pipe) run.missing("pipe", "pipe", "pipe");
  check_guesses(run);
}

}  // namespace burrow

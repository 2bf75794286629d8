/// What was measured before and after the bore: levels of roads and tracks, the camera in the sewers.

#include <array>
#include <cmath>

#include "burrow/base/phrase.h"
#include "check_run.h"

namespace burrow {

namespace {

struct Moved {
  const LevelPeg* peg = nullptr;
  double before_m = 0, then_m = 0;
  [[nodiscard]] double by_m() const { return then_m - before_m; }
};

/// The peg that rose most, and the one that sank most, by any of the later levels.
struct Extremes {
  Moved rose, sank;
  void take(const LevelPeg& peg, const std::optional<Length>& then) {
    if (!peg.before || !then) return;
    const Moved moved{&peg, peg.before->m, then->m};
    if (moved.by_m() > rose.by_m()) rose = moved;
    if (moved.by_m() < sank.by_m()) sank = moved;
  }
};

void judge_moved(CheckRun& run, const SurfaceFeature& feature, std::string_view code, const Moved& moved) {
  if (!moved.peg) return;
  const HeaveLimits limits = heave_limits(run, feature);
  const double by = std::abs(moved.by_m());
  const auto at = [&](Severity severity) {
    return finding_at(code, severity, feature.id, display_name(feature), moved.peg->station.m, moved.peg->offset.m,
                      moved.then_m);
  };
  const double to_stop = run.require(at(Severity::stop), by, *limits.stop);
  if (to_stop >= 0 && limits.caution) run.require(at(Severity::caution), by, *limits.caution);
  if (run.wants_working())
    run.add_working({code,
                     feature.id,
                     "w = |z_then − z_before|",
                     {{"z_then", moved.then_m, "m"}, {"z_before", moved.before_m, "m"}},
                     "w",
                     by,
                     "m",
                     limits.stop->value,
                     {"levels entered for this crossing", SourceLabel::derived},
                     limits.stop->source});
}

/// The high estimate of the rise at a station.
std::optional<double> most_expected_m(const std::vector<HeavePoint>& heave, double station_m) {
  const HeavePoint* nearest = nullptr;
  for (const HeavePoint& p : heave)
    if (!nearest || std::abs(p.station_m - station_m) < std::abs(nearest->station_m - station_m)) nearest = &p;
  if (!nearest) return std::nullopt;
  return nearest->high_m;
}

/// More than the model thought possible: it does not hold for this ground.
void compare_with_estimate(CheckRun& run, const SurfaceFeature& feature) {
  Moved worst;
  double worst_over_m = 0.0005;  // levels are read to half a millimetre
  std::optional<double> worst_expected_m;
  for (const LevelPeg& peg : feature.levels.pegs) {
    if (!peg.before || !peg.after) continue;
    const Moved moved{&peg, peg.before->m, peg.after->m};
    const std::optional<double> expected = most_expected_m(run.answer.heave, peg.station.m);
    if (!expected || moved.by_m() - *expected <= worst_over_m) continue;
    worst = moved;
    worst_over_m = moved.by_m() - *expected;
    worst_expected_m = expected;
  }
  if (!worst.peg) return;
  Finding finding = finding_at("surface.levels-above-estimate", Severity::caution, feature.id, display_name(feature),
                               worst.peg->station.m, worst.peg->offset.m, worst.then_m);
  finding.measured = worst.by_m();
  finding.limit = worst_expected_m;
  finding.at_least = false;
  finding.margin = *worst_expected_m > 0 ? 1 - worst.by_m() / *worst_expected_m : -1;
  finding.source = {"high estimate of the rise above the bore there", SourceLabel::our_model};
  run.add(std::move(finding));
}

void say_of_camera(CheckRun& run, std::string_view code, Severity severity, const std::string& reference) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = "site";
  finding.name = reference;
  finding.source = {"camera survey of sewers and drains before and after a bore beside them",
                    SourceLabel::common_practice};
  if (severity == Severity::stop) finding.margin = -1;
  run.add(std::move(finding));
}

}  // namespace

void check_records(CheckRun& run) {
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    if (!moves_with_ground(feature)) continue;
    Extremes extremes;
    for (const LevelPeg& peg : feature.levels.pegs)
      for (const std::optional<Length>& then : std::array{peg.after, peg.settled}) extremes.take(peg, then);
    judge_moved(run, feature, "surface.levels-rose", extremes.rose);
    judge_moved(run, feature, "surface.levels-sank", extremes.sank);
    compare_with_estimate(run, feature);
  }

  const UtilitySearch& search = run.crossing.site.utility_search;
  const CameraSurvey &before = search.camera_before, &after = search.camera_after;
  if (after.result == CameraResult::something_found)
    say_of_camera(run, "site.camera-after-found", Severity::stop, after.reference);
  if (before.result == CameraResult::something_found)
    say_of_camera(run, "site.camera-before-found", Severity::caution, before.reference);
  if (!house_connections_expected(run.crossing) || after.result) return;
  say_of_camera(run, before.result ? "site.camera-after" : "site.camera-before", Severity::note, {});
}

}  // namespace burrow

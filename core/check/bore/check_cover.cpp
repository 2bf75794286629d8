/// Cover along the bore: least of all, where it is nearest to the neutral one, and under each road, track and ditch.

#include <algorithm>
#include <limits>

#include "burrow/base/phrase.h"
#include "burrow/clearance/contact.h"
#include "check_run.h"

namespace burrow {

namespace {

struct LeastCover {
  const PathPoint* point = nullptr;
  double mean_m = std::numeric_limits<double>::infinity();
  double low_m = std::numeric_limits<double>::infinity();
  const PathPoint* low_point = nullptr;
};

LeastCover least_cover(const std::vector<PathPoint>& points, const Stretch& stretch) {
  LeastCover least;
  for (const PathPoint* at : points_within(points, stretch)) {
    const PathPoint& p = *at;
    if (p.cover_m < least.mean_m) {
      least.mean_m = p.cover_m;
      least.point = &p;
    }
    if (p.cover_m - band_90_sd * p.sd_vertical_m < least.low_m) {
      least.low_m = p.cover_m - band_90_sd * p.sd_vertical_m;
      least.low_point = &p;
    }
  }
  return least;
}

/// The chance that the cover falls short somewhere along a stretch, all steering constants counted: a caution where
/// neither the mean path nor its band says it already. Nothing where there is no path.
std::optional<double> require_cover_chance(CheckRun& run, std::string_view code, const std::string& subject,
                                           const Phrase& name, const Stretch& stretch, double wanted_m,
                                           const PathPoint& at, bool stated_already) {
  if (run.fans.empty()) return std::nullopt;
  const FanChance below = run.fans.cover_below(wanted_m, stretch.from_m, stretch.to_m);
  const double chance = below.chance;
  const Limit& limit = run.limit("cover_low_chance");
  if (!stated_already) {
    Finding finding = finding_at(code, Severity::caution, subject, name, at.x_m, at.y_m, at.z_m);
    finding.unit = "";
    finding.limit_base = wanted_m;
    run.require(std::move(finding), chance, limit);
  }
  if (run.wants_working())
    run.add_working({code,
                     subject,
                     translatable("P = Σ p P_ground; P_ground = ∫ Φ(ζ) f(c) dc, ζ = max over x of (C_wanted − C)/s"),
                     inputs_of(run.fans, below, true),
                     "P",
                     chance,
                     "",
                     limit.value,
                     {"lognormal steering constant; given it, normal errors of the height", SourceLabel::our_model},
                     limit.source});
  return chance;
}

/// Least cover over a stretch against one limit: broken by the mean a stop, by path + 1.645 sd a caution.
std::optional<double> require_cover(CheckRun& run, std::string_view code, const std::string& subject,
                                    const Phrase& name, const Stretch& stretch, const Limit& limit) {
  const LeastCover least = least_cover(run.answer.bore.points, stretch);
  if (!least.point) return std::nullopt;
  const PathPoint& p = *least.point;
  const PathPoint& low = *least.low_point;
  const double mean =
      run.require(finding_at(code, Severity::stop, subject, name, p.x_m, p.y_m, p.z_m), least.mean_m, limit);
  bool band_reported = mean < 0;
  if (!band_reported)
    band_reported =
        run.require(finding_at(std::string(code) + "-low", Severity::caution, subject, name, low.x_m, low.y_m, low.z_m),
                    least.low_m, limit) < 0;
  if (run.wants_working())
    run.add_working({code,
                     subject,
                     "C = z_ground − z_axis − D/2",
                     {{"z_ground", elevation_at(run.crossing.site.ground, p.x_m), "m"},
                      {"z_axis", p.z_m, "m"},
                      {"D", run.tool.diameter.m, "m"},
                      {"x", p.x_m, "m"}},
                     "C",
                     least.mean_m,
                     "m",
                     limit.value,
                     {"crown of the hole to the surface; spread of the path", SourceLabel::derived},
                     limit.source});
  if (run.wants_working())
    run.add_working({code == "bore.cover" ? "bore.cover-low" : "surface.cover-low",
                     subject,
                     "C_low = C − 1.645 sd",
                     {{"C", low.cover_m, "m"}, {"sd", low.sd_vertical_m, "m"}, {"x", low.x_m, "m"}},
                     "C_low",
                     least.low_m,
                     "m",
                     limit.value,
                     {"crown of the hole to the surface; spread of the path", SourceLabel::derived},
                     limit.source});
  return require_cover_chance(run, code == "bore.cover" ? "bore.cover-chance" : "surface.cover-chance", subject, name,
                              stretch, limit.value, low, band_reported);
}

void check_owner_cover(CheckRun& run, const SurfaceFeature& feature) {
  const std::optional<Stretch> stretch = stretch_of(feature, run.answer.bore.points);
  if (!stretch) return;
  if (const std::optional<Limit> limit = cover_limit(run, feature))
    require_cover(run, "surface.cover", feature.id, display_name(feature), *stretch, *limit);
}

/// Where the cover exceeds the neutral one least, or falls short of it most, in the ground as it is along the bore.
/// With less the tool tends to climb; that is no fault by itself: what it does to the path is judged (`check_drift`).
void find_neutral_cover(CheckRun& run) {
  Assessment& answer = run.answer;
  const PathPoint* at = nullptr;
  for (const NeutralPoint& neutral : answer.neutral_line) {
    if (!neutral.cover_m) continue;
    const auto p = std::find_if(answer.bore.points.begin(), answer.bore.points.end(),
                                [&](const PathPoint& point) { return point.x_m >= neutral.station_m; });
    if (p == answer.bore.points.end()) continue;
    if (at && p->cover_m - *neutral.cover_m >= at->cover_m - *answer.neutral_cover_m) continue;
    at = &*p;
    answer.neutral_cover_m = neutral.cover_m;
    answer.neutral_station_m = neutral.station_m;
  }
  if (!at) return;
  const double half = run.tool.diameter.m / 2;
  run.add_working(
      {"bore.neutral-cover",
       "bore",
       translatable("C = z_ground − z_axis − D/2; C_n: the cover at which dθ/ds = 0 for a level tool there"),
       {{"z_ground", at->z_m + half + at->cover_m, "m"},
        {"z_axis", at->z_m, "m"},
        {"D", 2 * half, "m"},
        {"C_n", *answer.neutral_cover_m, "m"}},
       "C",
       at->cover_m,
       "m",
       std::nullopt,
       {"crown of the hole to the ground line, where the path is nearest to its neutral cover", SourceLabel::derived}});
}

}  // namespace

void check_cover(CheckRun& run) {
  Assessment& answer = run.answer;
  if (answer.bore.points.empty()) return;
  const Stretch all{run.crossing.bore.launch.station.m, run.crossing.bore.exit.station.m};
  Limit limit = run.limit("cover_diameters");
  limit.value *= run.tool.diameter.m;
  const LeastCover least = least_cover(answer.bore.points, all);
  if (!least.point) return;
  answer.cover = {least.mean_m, least.low_m, least.point->x_m, limit.value, std::nullopt};
  answer.cover.chance_below = require_cover(run, "bore.cover", "bore", "bore", all, limit);

  find_neutral_cover(run);
  for (const SurfaceFeature& feature : run.crossing.site.surface) check_owner_cover(run, feature);
}

}  // namespace burrow

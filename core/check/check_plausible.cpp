/// What was entered and can hardly be: levels far from the ground, errors of nothing, constants that no record bears
/// out.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/crossing/calibration.h"
#include "check_run.h"

namespace burrow {

namespace {

constexpr double level_slack_m = 0.05;  // a crown that shows is no wrong entry by that much
const Source& our_reading() {
  static const Source source{"levels that are rarely met; a level typed in place of a depth, or the other way round",
                             SourceLabel::our_default};
  return source;
}

Finding doubt(std::string_view code, std::string subject, Phrase name, double measured, double limit, bool at_least) {
  Finding finding;
  finding.code = code;
  finding.severity = Severity::caution;
  finding.subject = std::move(subject);
  finding.name = std::move(name);
  finding.measured = measured;
  finding.limit = limit;
  finding.at_least = at_least;
  finding.unit = "m";
  finding.source = our_reading();
  return finding;
}

/// Above the ground, or deeper than services lie.
void check_depths(CheckRun& run, const Utility& utility) {
  const double deepest = run.limit("utility_deepest_m").value;
  const double half = utility.outside_diameter.value_or(Length{0}).m / 2;
  for (const PathVertex& v : utility.path) {
    if (!v.z_m) continue;
    const double crown = run.ground.surface_m(v.x_m, v.y_m) - *v.z_m - half;
    const bool above = crown<-level_slack_m, deep = crown> deepest;
    if (!above && !deep) continue;
    Finding finding = above ? doubt("utility.above-ground", utility.id, display_name(utility), crown, 0, true)
                            : doubt("utility.deep", utility.id, display_name(utility), crown, deepest, false);
    finding.station_m = v.x_m;
    finding.offset_m = v.y_m;
    finding.elevation_m = v.z_m;
    run.add(std::move(finding));
    return;
  }
}

/// Far above or below the bore where its neighbours are not.
void check_apart(CheckRun& run) {
  const double far = run.limit("utility_apart_m").value;
  const auto& utilities = run.crossing.site.utilities;
  std::vector<std::size_t> apart;
  std::size_t asked = 0;
  for (std::size_t i = 0; i < run.answer.utilities.size(); ++i) {
    const UtilityAnswer& answer = run.answer.utilities[i];
    if (!answer.on_bore || !answer.on_utility || !answer.near) continue;
    ++asked;
    if (std::abs(answer.on_bore->z_m - answer.on_utility->z_m) > far) apart.push_back(i);
  }
  if (apart.size() == asked && asked > 1) return;  // all of them: the bore may lie so
  for (const std::size_t i : apart) {
    const UtilityAnswer& answer = run.answer.utilities[i];
    Finding finding = doubt("utility.far-apart", answer.id, display_name(utilities[i]),
                            std::abs(answer.on_bore->z_m - answer.on_utility->z_m), far, false);
    finding.station_m = answer.station_m;
    finding.offset_m = answer.offset_m;
    finding.elevation_m = answer.elevation_m;
    run.add(std::move(finding));
  }
}

void check_water_level(CheckRun& run) {
  const Site& site = run.crossing.site;
  if (!site.water || site.water->empty()) return;
  const double deepest = run.limit("water_deepest_m").value, highest = run.limit("water_above_ground_m").value;
  for (const double x : {run.crossing.bore.launch.station.m, run.crossing.bore.exit.station.m}) {
    const double depth = elevation_at(site.ground, x) - elevation_at(*site.water, x);
    if (depth <= deepest && depth >= -highest) continue;
    Finding finding = depth > deepest
                          ? doubt("site.water-deep", "site", translatable("water level"), depth, deepest, false)
                          : doubt("site.water-above", "site", translatable("water level"), -depth, highest, false);
    finding.station_m = x;
    run.add(std::move(finding));
    return;
  }
}

/// What was typed as nothing, or next to it beside what is usual: its danger is then never met.
void check_next_to_nothing(CheckRun& run) {
  constexpr double next_to_nothing = 0.1;  // of the usual value
  const auto look_at = [&](const std::string& subject, double typed, double usual, const Phrase& name) {
    if (!(usual > 0) || typed >= next_to_nothing * usual) return;
    Finding finding;
    finding.code = "bore.errors-none";
    finding.severity = Severity::caution;
    finding.subject = subject;
    finding.name = name;
    finding.source = {
        "no set-up is free of error, no ground lets a tool run dead straight: less than a tenth of the usual",
        SourceLabel::our_default};
    run.add(std::move(finding));
  };
  const Launch &launch = run.crossing.bore.launch, usual_launch;
  look_at("bore", launch.level_sd->rad, usual_launch.level_sd->rad, translatable("level"));
  look_at("bore", launch.aim_sd->rad, usual_launch.aim_sd->rad, translatable("aim"));
  look_at("bore", launch.position_sd->m, usual_launch.position_sd->m, translatable("position at the launch face"));
  const ModelConstants &model = run.crossing.bore.model, usual_model;
  if (!calibrated(model)) {
    const double constant = model.steer_constant->v / usual_model.steer_constant->v;
    const double sd = model.steer_constant_sd->v / usual_model.steer_constant_sd->v;
    look_at("bore", std::min(constant, sd), 1, translatable("steering constant"));
  }
  for (const Stratum& stratum : run.crossing.site.strata) {
    const SoilClass* soil = find_soil(run.tables, stratum.soil);
    if (!soil) continue;
    const SoilOverrides& typed = stratum.values;
    if (typed.wander)
      look_at(stratum.id, typed.wander->rad_sqrt_m, soil->wander.rad_sqrt_m,
              phrase(translatable("wander in {}"), soil->name));
    if (typed.refusal_rate)
      look_at(stratum.id, typed.refusal_rate->per_m, soil->refusal_rate.per_m,
              phrase(translatable("rate of refusal in {}"), soil->name));
    if (typed.heave_share)
      look_at(stratum.id, typed.heave_share->v, soil->heave_share.v,
              phrase(translatable("share that heaves in {}"), soil->name));
  }
}

void check_calibration(CheckRun& run) {
  const ModelConstants& model = run.crossing.bore.model;
  if (model.calibrated_from.value <= 0 || calibrated(model)) return;
  Finding finding;
  finding.code = "bore.calibration-unproved";
  finding.severity = Severity::caution;
  finding.subject = "bore";
  finding.name = translatable("path model");
  finding.measured = static_cast<double>(model.calibrated_records.size());
  finding.limit = static_cast<double>(model.calibrated_from.value);
  finding.at_least = true;
  finding.source = {"only records in the library calibrate", SourceLabel::our_default};
  run.add(std::move(finding));
}

/// A road or track whose stations miss the bore loses its rules unseen.
void check_surface_meets(CheckRun& run) {
  const double from = run.crossing.bore.launch.station.m, to = run.crossing.bore.exit.station.m;
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    if (feature.kind != SurfaceKind::road && feature.kind != SurfaceKind::track) continue;
    if (!feature.from || !feature.to) continue;
    const double low = std::min(feature.from->m, feature.to->m), high = std::max(feature.from->m, feature.to->m);
    if (high >= from && low <= to) continue;
    Finding finding =
        doubt("surface.off-the-bore", feature.id, display_name(feature), low > to ? low - to : from - high, 0, false);
    finding.station_m = low > to ? low : high;
    finding.source = {"stations as entered", SourceLabel::derived};
    run.add(std::move(finding));
  }
}

}  // namespace

void check_plausible(CheckRun& run) {
  for (std::size_t i = 0; i < run.answer.utilities.size(); ++i)
    if (run.answer.utilities[i].near) check_depths(run, run.crossing.site.utilities[i]);
  check_apart(run);
  check_water_level(run);
  check_next_to_nothing(run);
  check_calibration(run);
  check_surface_meets(run);
}

}  // namespace burrow

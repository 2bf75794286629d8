/// Each utility: clear gap, chance of contact and of coming too near, what has to be exposed.

#include <algorithm>
#include <utility>

#include "burrow/base/phrase.h"
#include "burrow/clearance/clearance.h"
#include "burrow/clearance/contact.h"
#include "burrow/crossing/statement.h"
#include "burrow/tables/material_rows.h"
#include "check_run.h"
#include "test_hole_first.h"
#include "unlocated_head.h"
#include "utility_course.h"

namespace burrow {

namespace {

Phrase name_of(const Clearance& c) {
  return c.name.empty() ? phrase("{} {}", phrase_of_word(c.kind), c.id) : Phrase(c.name);
}

Finding at(const Clearance& c, std::string_view code, Severity severity, std::string_view unit) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = c.id;
  finding.name = name_of(c);
  finding.station_m = c.station_m;
  finding.offset_m = c.offset_m;
  finding.elevation_m = c.elevation_m;
  finding.unit = unit;
  return finding;
}

/// A place that is known better than a tracing gives it wants a locating preset that says so, or a hole. A preset of
/// what was laid bare says nothing of a line that nobody has exposed there.
bool location_unproved(const Clearance& c, const Utility& utility, const Tables& tables) {
  constexpr double traced_share = 0.15;  // PAS 128, two methods that agree (quality level B1)
  constexpr double exposed_m = 0.05;     // PAS 128, exposed and surveyed (quality level A): no tracing is better
  if (c.hole_at_bore || c.how == LocatedHow::exposed) return false;  // that one wants its hole by itself
  const Located& located = utility.located;
  const auto preset = std::find_if(tables.locating.begin(), tables.locating.end(), [&](const LocatingPreset& row) {
    return located.level && row.id == *located.level;
  });
  if (preset != tables.locating.end() && preset->exposed) return true;
  Located level_alone = located;
  level_alone.lateral_sd.reset();
  level_alone.vertical_sd.reset();
  const LocationSd stated = location_sd(level_alone, tables, c.depth_m);
  const auto unproved = [](const std::optional<Length>& typed, double traced_m, const std::optional<double>& said_m) {
    return typed && typed->m < traced_m - 1e-9 && !(said_m && *said_m <= typed->m + 1e-9);
  };
  return unproved(located.vertical_sd, traced_share * c.depth_m, stated.vertical_m) ||
         unproved(located.lateral_sd, exposed_m, stated.lateral_m);
}

/// No wall known is no reason to believe that a tracing took hold of it; cables and what hangs on them do carry one.
bool tracer_unknown(const Clearance& c, const Utility& utility, const Tables& tables) {
  const bool traced = c.how == LocatedHow::traced || c.how == LocatedHow::traced_twice;
  const bool cable = utility.kind == UtilityKind::power || utility.kind == UtilityKind::telecom;
  const UtilityWall wall = wall_of(tables, utility);
  const bool may_be_plastic = wall == UtilityWall::plastic || (wall == UtilityWall::unknown && !cable);
  const auto& tracer = utility.located.tracer;
  return traced && !c.hole_at_bore && may_be_plastic && !(tracer && *tracer != TracedBy::none);
}

/// What lies far off is not asked about, unless it was dragged there.
void ask_for_missing(CheckRun& run, const Clearance& c, const Utility& utility, const UtilityByWork& place) {
  const auto ask = [&](std::string_view what) {
    Finding& finding = run.missing(what, c.id, name_of(c));
    finding.station_m = c.station_m;
    finding.offset_m = c.offset_m;
    finding.elevation_m = c.elevation_m;
  };
  if (moved_since_located(utility.located)) ask("utility-moved");
  if (!place.near && !c.crossed_by_band) return;
  if (c.depth_unknown_at_bore) ask("utility-depth");
  if (c.no_diameter) ask("utility-diameter");
  if (c.no_sd) ask("utility-location-error");
  if (c.exposure_unproved) ask("exposure");
  if (tracer_unknown(c, utility, run.tables)) ask("utility-tracer");
  if (location_unproved(c, utility, run.tables)) ask("utility-depth-error");
}

/// A live line that can hurt stays a caution until somebody has exposed it, where the band meets it, and where it is
/// crossed with less than that between it and the band.
void demand_exposure(CheckRun& run, const Clearance& c, const UtilityByWork& place) {
  if (!c.unexposed || !c.dangerous || !c.live || !c.separation_m) {
    if (!(c.crossed_by_band && c.unexposed && c.dangerous && c.live)) return;
    Finding finding = at(c, "utility.expose", Severity::caution, "m");
    finding.source = run.limit("expose_within_m").source;
    return run.add(std::move(finding));
  }
  const double gap_99 = *c.separation_m - band_99_sd * c.spread_m.value_or(0);
  if (c.crossed_by_band || place.crossed)
    run.require(at(c, "utility.expose", Severity::caution, "m"), gap_99, run.limit("expose_within_m"));
}

/// With the band that a dangerous one which nobody has exposed wants besides.
Limit gap_with_band(const CheckRun& run, const Clearance& c, const Utility& utility) {
  Limit limit = gap_limit(run.limits, run.tables, utility, c.unexposed);
  if (c.required_m) limit.value = *c.required_m;
  return limit;
}

/// Stop above the one limit, else caution above the other.
void demand_chance(CheckRun& run, const Clearance& c, std::string_view code, double chance, std::string_view stop,
                   std::string_view caution) {
  // In a search, with dozens of utilities, most are so far off that no margin but 1 could come of them.
  constexpr double nowhere_near = 1e-6;
  const Limit &stops = run.limit(stop), &cautions = run.limit(caution);
  if (run.passed && chance < nowhere_near * cautions.value) return;
  const bool stopped = margin_of(chance, stops) < 0;
  if (run.wants_working() && !stopped && margin_of(chance, cautions) >= 0) return;  // nothing to say
  Finding finding = at(c, code, c.live ? Severity::stop : Severity::caution, "");
  finding.limit_base = c.required_fixed_m;
  if (stopped) {
    run.require(std::move(finding), chance, stops);
    return;
  }
  run.note_passed(finding, chance, stops);
  finding.severity = Severity::caution;
  run.require(std::move(finding), chance, cautions);
}

/// A hole that contradicts the record moves the line only when somebody agrees; until then it lowers no alarm: the
/// worse of the two counts, with the hole and without.
void doubt_holes(CheckRun& run, const ClearanceRules& rules, const Utility& utility, Clearance& c) {
  const std::vector<std::string> doubtful = doubtful_holes(run.crossing.site, c.pinned, run.tables.judged_on);
  if (doubtful.empty()) return;
  std::vector<TestHole> others;
  for (const TestHole& hole : run.crossing.site.test_holes)
    if (hole.utility == utility.id && std::find(doubtful.begin(), doubtful.end(), hole.id) == doubtful.end())
      others.push_back(hole);
  Clearance without = clearances(run.answer.bore, run.tool.diameter, {utility}, run.crossing.site.ground, rules,
                                 run.tables, others, run.fans)
                          .front();
  Finding& finding = run.missing("utility-agreed", c.id, name_of(c));
  finding.station_m = c.station_m;
  finding.offset_m = c.offset_m;
  const auto badness = [](const Clearance& one) {
    return std::pair{one.separation_m && one.required_m ? *one.required_m - *one.separation_m : 1e9,
                     one.contact_chance_worst.value_or(1)};
  };
  without.pinned.remarks = c.pinned.remarks;
  if (badness(without) > badness(c)) c = std::move(without);
}

UtilityAnswer answer_of(const Clearance& c) {
  UtilityAnswer a;
  a.id = c.id;
  a.name = c.name;
  a.separation_m = c.separation_m;
  a.gap_low_m = c.gap_low_m;
  a.station_m = c.station_m;
  a.offset_m = c.offset_m;
  a.elevation_m = c.elevation_m;
  a.angle_rad = c.angle_rad;
  a.required_m = c.required_m;
  a.contact_chance = c.contact_chance;
  a.contact_chance_worst = c.contact_chance_worst;
  a.encroachment_chance = c.encroachment_chance;
  a.by = c.bound ? ContactBy::bound : c.mixture ? ContactBy::mixed : ContactBy::normal;
  a.expose = c.unexposed && c.live &&
             (c.crossed_by_band || c.depth_unknown_at_bore ||
              (c.separation_m && c.required_m && *c.separation_m < *c.required_m));
  if (!c.no_sd) {
    a.lateral_sd_m = c.lateral_sd_m;
    a.vertical_sd_m = c.vertical_sd_m;
  }
  a.believed = c.pinned.line;
  a.on_bore = c.on_bore;
  a.on_utility = c.on_utility;
  return a;
}

}  // namespace

void check_utilities(CheckRun& run) {
  const ClearanceRules rules = clearance_rules(run.limits, run.tables);
  const std::vector<Utility>& utilities = run.crossing.site.utilities;
  std::vector<Clearance> all =
      clearances(run.answer.bore, run.tool.diameter, utilities, run.crossing.site.ground, rules, run.tables,
                 run.crossing.site.test_holes, run.fans, threads_for(run, utilities.size()));
  for (std::size_t i = 0; i < all.size(); ++i) doubt_holes(run, rules, utilities[i], all[i]);
  const WorkLine work = work_line(run);
  std::vector<LineNearby> in_service;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Clearance& c = all[i];
    run.answer.utilities.push_back(answer_of(c));
    const UtilityByWork place(run, work, utilities[i]);
    run.answer.utilities.back().near = place.near;
    if (c.live && (place.near || c.crossed_by_band))
      in_service.push_back({&utilities[i], name_of(c), c.station_m, c.offset_m, c.elevation_m});
    ask_for_missing(run, c, utilities[i], place);
    check_course(run, work, c, utilities[i]);
    check_holes(run, c, name_of(c));
    if (c.separation_m) {
      // Bodies that overlap are struck whatever runs in them.
      const Severity severity = c.live || *c.separation_m < 0 ? Severity::stop : Severity::caution;
      Finding gap = at(c, "utility.separation", severity, "m");
      gap.limit_base = c.required_fixed_m;
      run.require(std::move(gap), *c.separation_m, gap_with_band(run, c, utilities[i]));
    }
    if (c.contact_chance_worst)
      demand_chance(run, c, "utility.contact", *c.contact_chance_worst, "contact_stop", "contact_caution");
    if (c.encroachment_chance)
      demand_chance(run, c, "utility.encroachment", *c.encroachment_chance, "encroachment_stop",
                    "encroachment_caution");
    demand_exposure(run, c, place);
    if (!run.wants_working()) continue;
    for (Working& working : working_of(c)) {
      const auto set = [&](const Limit& limit) {
        working.limit = limit.value;
        working.limit_source = limit.source;
      };
      if (working.code.ends_with("contact-worst")) set(run.limit("contact_stop"));
      if (working.code == "utility.encroachment") set(run.limit("encroachment_stop"));
      if (working.code == "utility.separation" && c.required_m) set(gap_with_band(run, c, utilities[i]));
      run.add_working(std::move(working));
    }
  }
  check_unlocated_head(run, in_service);
  if (run.wants_working()) rank_holes(run, all);  // what digging would buy is no limit
  check_any_contact(run, all);
}

}  // namespace burrow

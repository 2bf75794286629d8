/// Each utility: clear gap, chance of contact and of coming too near, what has to be exposed.

#include <utility>

#include "burrow/base/say.h"
#include "burrow/clearance/clearance.h"
#include "expose_first.h"
#include "judge.h"

namespace burrow {

namespace {

bool hurts(const Clearance& c) {
  return c.status == UtilityStatus::live || c.status == UtilityStatus::unknown;
}

std::string name_of(const Clearance& c) {
  return c.name.empty() ? said_word(c.kind) + " " + c.id : c.name;
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

void ask_for_missing(Judge& judge, const Clearance& c) {
  const auto ask = [&](std::string_view what) {
    Finding& finding = judge.missing(what, c.id, name_of(c));
    finding.station_m = c.station_m;
    finding.offset_m = c.offset_m;
    finding.elevation_m = c.elevation_m;
  };
  if (c.depth_unknown_at_bore) ask("utility-depth");
  if (c.no_diameter) ask("utility-diameter");
  if (c.no_sd) ask("utility-location-error");
}

Limit gap_limit(const Judge& judge, const Clearance& c, const Utility& utility) {
  const std::string_view id = !c.unexposed                   ? "separation_exposed_m"
                              : c.kind == UtilityKind::gas   ? "separation_gas_m"
                              : c.kind == UtilityKind::power ? "separation_power_m"
                              : c.kind == UtilityKind::steam ? "separation_steam_m"
                                                             : "separation_traced_m";
  Limit limit = judge.limit(id);
  if (utility.required_clearance && utility.required_clearance->m > limit.value)
    limit.source = {"clear gap entered for this utility", SourceLabel::owners_setting};
  if (c.required_m) limit.value = *c.required_m;
  return limit;
}

/// Stop above the one limit, else caution above the other.
void demand_chance(Judge& judge, const Clearance& c, std::string_view code, double chance, std::string_view stop,
                   std::string_view caution) {
  // In a search, with dozens of utilities, most are so far off that no margin but 1 could come of them.
  constexpr double nowhere_near = 1e-6;
  if (judge.kept && chance < nowhere_near * judge.limit(caution).value) return;
  Finding finding = at(c, code, hurts(c) ? Severity::stop : Severity::caution, "");
  finding.limit_base = c.required_fixed_m;
  if (judge.demand(finding, chance, judge.limit(stop)) >= 0) {
    finding.severity = Severity::caution;
    judge.demand(std::move(finding), chance, judge.limit(caution));
  }
}

template <class LimitOf>
ClearanceRules rules_by(LimitOf limit_of) {
  const auto gap = [&](std::string_view id) { return Length{limit_of(id).value}; };
  return {gap("separation_exposed_m"), gap("separation_traced_m"), gap("separation_gas_m"), gap("separation_power_m"),
          gap("separation_steam_m")};
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
  a.by = c.bound ? ContactBy::bound : ContactBy::normal;
  a.expose = c.unexposed && hurts(c) &&
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

ClearanceRules clearance_rules(const Crossing& crossing, const Tables& tables) {
  return rules_by([&](std::string_view id) { return limit_of(crossing, tables, id); });
}

void check_utilities(Judge& judge) {
  const ClearanceRules rules = rules_by([&](std::string_view id) -> const Limit& { return judge.limit(id); });
  const std::vector<Utility>& utilities = judge.crossing.site.utilities;
  const std::vector<Clearance> all =
      clearances(judge.answer.bore, judge.tool.diameter, utilities, judge.crossing.site.ground, rules, judge.tables,
                 judge.crossing.site.test_holes, judge.fans);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Clearance& c = all[i];
    judge.answer.utilities.push_back(answer_of(c));
    ask_for_missing(judge, c);
    check_holes(judge, c, name_of(c));
    if (c.separation_m) {
      const Severity severity = hurts(c) ? Severity::stop : Severity::caution;
      Finding gap = at(c, "utility.separation", severity, "m");
      gap.limit_base = c.required_fixed_m;
      judge.demand(std::move(gap), *c.separation_m, gap_limit(judge, c, utilities[i]));
    }
    if (c.contact_chance_worst)
      demand_chance(judge, c, "utility.contact", *c.contact_chance_worst, "contact_stop", "contact_caution");
    if (c.encroachment_chance)
      demand_chance(judge, c, "utility.encroachment", *c.encroachment_chance, "encroachment_stop",
                    "encroachment_caution");
    if (c.crossed_by_band && c.unexposed && c.dangerous && hurts(c)) {
      Finding finding = at(c, "utility.expose", Severity::caution, "m");
      finding.source = {"expose before passing: an unexposed gas, power or liquid line within the 99 % band",
                        SourceLabel::common_practice};
      judge.say(std::move(finding));
    }
    if (!judge.shows()) continue;
    for (Working& working : working_of(c)) {
      const auto set = [&](const Limit& limit) {
        working.limit = limit.value;
        working.limit_source = limit.source;
      };
      if (working.code.ends_with("contact-worst")) set(judge.limit("contact_stop"));
      if (working.code == "utility.encroachment") set(judge.limit("encroachment_stop"));
      if (working.code == "utility.separation" && c.required_m) set(gap_limit(judge, c, utilities[i]));
      judge.show(std::move(working));
    }
  }
  if (judge.shows()) rank_holes(judge, all);  // what digging would buy is no limit
  check_any_contact(judge, all);
}

}  // namespace burrow

/// Limits that somebody typed: looser ones want a reason and are named, and none may be set beyond sense.

#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "burrow/base/phrase.h"
#include "burrow/crossing/statement.h"
#include "check_run.h"

namespace burrow {

namespace {

const Source house_rule{"a limit looser than the table's wants a reason", SourceLabel::our_default};

Finding about_limit(std::string_view code, Severity severity, std::string subject, Phrase name, double value,
                    double table_value, std::string_view unit) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = std::move(subject);
  finding.name = std::move(name);
  finding.measured = value;
  finding.limit_base = table_value;
  finding.unit = unit;
  finding.source = house_rule;
  return finding;
}

/// Counted and named, or not counted and said so.
void tell(CheckRun& run, LoosenedLimit limit, std::string_view unit, TypedLimit how) {
  const std::string subject = limit.subject.empty() ? "site" : limit.subject;
  const auto add = [&](std::string_view code, Severity severity) {
    run.add(about_limit(code, severity, subject, limit.name, limit.value, limit.table_value, unit));
  };
  switch (how) {
    case TypedLimit::counts:
      return;
    case TypedLimit::impossible:
      return add("limit.impossible", Severity::stop);
    case TypedLimit::no_reason:
      return add("limit.no-reason", Severity::caution);
    case TypedLimit::loosened:
      break;
  }
  add("limit.loosened", Severity::note);
  run.answer.loosened.push_back(std::move(limit));
}

/// What was typed on a thing on top has no reason of its own: the permit that allows it is one.
bool gives_reason(const SurfaceFeature& feature) {
  return says_something(feature.permit);
}

void judge_on(CheckRun& run, const SurfaceFeature& feature, std::string id, Phrase name, Length typed,
              double owners_m) {
  const bool reason = gives_reason(feature);
  tell(run,
       {std::move(id), feature.id, std::move(name), typed.m, owners_m, "m",
        reason ? phrase(translatable("permit {}"), feature.permit) : Phrase()},
       "m", reason ? TypedLimit::loosened : TypedLimit::no_reason);
}

/// Where nothing was typed: of the owner's rule, else of the table.
HeaveLimits usual_heave_limits(const LimitsInForce& in_force, const Tables& tables, const SurfaceFeature& feature) {
  const bool track = feature.kind == SurfaceKind::track;
  HeaveLimits limits{in_force.of(track ? "heave_track_caution_m" : "heave_road_caution_m"),
                     in_force.of(track ? "heave_track_stop_m" : "heave_road_stop_m")};
  const SurfaceRule* rule = feature.rule ? find_rule(tables, *feature.rule) : nullptr;
  if (rule && rule->heave_caution) limits.caution = Limit{rule->heave_caution->m, false, rule->source};
  if (rule && rule->heave_stop) limits.stop = Limit{rule->heave_stop->m, false, rule->source};
  return limits;
}

const Source typed_here{"typed for this crossing", SourceLabel::owners_setting};

}  // namespace

std::optional<Limit> cover_limit(const CheckRun& run, const SurfaceFeature& feature) {
  const SurfaceRule* rule = feature.rule ? find_rule(run.tables, *feature.rule) : nullptr;
  const bool ruled = rule && rule->cover;
  const bool counts =
      feature.required_cover && (!ruled || feature.required_cover->m >= rule->cover->m || gives_reason(feature));
  if (counts) return Limit{feature.required_cover->m, true, typed_here};
  if (!ruled) return std::nullopt;
  constexpr double beyond = 1e3;
  const double least = rule->cover_exceeded ? std::nextafter(rule->cover->m, beyond) : rule->cover->m;
  return Limit{least, true, rule->source};
}

HeaveLimits heave_limits(const CheckRun& run, const SurfaceFeature& feature) {
  return heave_limits(run.limits, run.tables, feature);
}

HeaveLimits heave_limits(const LimitsInForce& limits, const Tables& tables, const SurfaceFeature& feature) {
  HeaveLimits usual = usual_heave_limits(limits, tables, feature);
  if (!feature.heave_limit) return usual;
  const Limit typed{feature.heave_limit->m, false, typed_here};
  if (typed.value <= usual.caution->value || gives_reason(feature)) return {std::nullopt, typed};
  if (typed.value < usual.stop->value) usual.stop = typed;
  return usual;
}

namespace {

/// Room to work beside the tool that was typed shorter than the usual: every floor may then be shorter too.
void judge_work_room(CheckRun& run, const Pit& pit, std::string subject, Phrase name) {
  const double usual = Pit{}.working_length->m;
  if (!pit.working_length.entered || pit.working_length->m >= usual) return;
  tell(run, {"working_length_m", std::move(subject), std::move(name), pit.working_length->m, usual, "m", Phrase()}, "m",
       TypedLimit::no_reason);
}

}  // namespace

void check_typed_limits(CheckRun& run) {
  judge_work_room(run, run.crossing.pits.launch, "launch-pit", translatable("room to work in the launch pit"));
  judge_work_room(run, run.crossing.pits.exit, "exit-pit", translatable("room to work in the exit pit"));
  for (const auto& [id, typed] : run.crossing.limits) {
    const LimitRow* row = find_limit(run.tables, id);
    if (!row) continue;  // of a newer program: its file's version is a finding
    tell(run, {id, "", row->name, typed.value, row->value, row->unit, typed.why}, row->unit, judge_typed(*row, typed));
  }
  for (const SurfaceFeature& feature : run.crossing.site.surface) {
    const SurfaceRule* rule = feature.rule ? find_rule(run.tables, *feature.rule) : nullptr;
    if (feature.required_cover && rule && rule->cover && feature.required_cover->m < rule->cover->m)
      judge_on(run, feature, "required_cover_m", phrase(translatable("cover of {}"), display_name(feature)),
               *feature.required_cover, rule->cover->m);
    if (!feature.heave_limit || !moves_with_ground(feature)) continue;
    if (const double usual = usual_heave_limits(run.limits, run.tables, feature).caution->value;
        feature.heave_limit->m > usual)
      judge_on(run, feature, "heave_limit_m", phrase(translatable("heave of {}"), display_name(feature)),
               *feature.heave_limit, usual);
  }
}

}  // namespace burrow

#include "burrow/file/assessment_file.h"

#include <cmath>
#include <limits>

#include "assessment_air.h"
#include "assessment_day.h"
#include "assessment_pits.h"
#include "burrow/language/say.h"
#include "json_answers.h"

namespace burrow {

namespace {

Json json_of(const Arrival& arrival) {
  return object({{"offset_m", number(arrival.offset_m)},
                 {"elevation_m", number(arrival.elevation_m)},
                 {"sd_lateral_m", number(arrival.sd_lateral_m)},
                 {"sd_vertical_m", number(arrival.sd_vertical_m)},
                 {"chance_inside_exit_pit", number(arrival.chance_inside_exit_pit)}});
}

/// A point of the path, with how the tool gets on there. From a stop on there is no time.
void put_point(PrintedList& points, const PathPoint& p, const AdvancePoint* advance) {
  constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
  const bool moves = advance && advance->rate_m_s > 0;
  const Quantiles time = moves ? Quantiles{advance->time.p10_s, advance->time.p50_s, advance->time.p90_s} : Quantiles();
  points.begin();
  points.number("s_m", p.s_m);
  points.number("x_m", p.x_m);
  points.number("y_m", p.y_m);
  points.number("z_m", p.z_m);
  points.number("grade", std::tan(p.grade_rad));
  points.number("heading_rad", p.heading_rad);
  points.number("sd_lateral_m", p.sd_lateral_m);
  points.number("sd_vertical_m", p.sd_vertical_m);
  points.number("cover_m", p.cover_m);
  points.number("resistance_above_pa", p.resistance_above_Pa);
  points.number("resistance_below_pa", p.resistance_below_Pa);
  points.number("curvature_1_m", p.curvature_1_m);
  points.number("sag_curvature_1_m", p.sag_curvature_1_m);
  points.number("set_m", advance ? advance->set_m : unknown);
  points.number("grip", advance ? advance->grip : unknown);
  points.member("time_s", quantiles_json(time));
  points.end();
}

Json path_of(const Assessment& a) {
  PrintedList points;
  for (std::size_t i = 0; i < a.bore.points.size(); ++i)
    put_point(points, a.bore.points[i], i < a.advance.points.size() ? &a.advance.points[i] : nullptr);
  return points.take();
}

Json json_of(const StopStretch& stretch) {
  return object({{"from_m", Json(stretch.from_m)},
                 {"to_m", Json(stretch.to_m)},
                 {"above", Json(word_of(stretch.above))},
                 {"id", Json(stretch.id)},
                 {"chance", Json(stretch.chance)}});
}

Json json_of(const NeutralPoint& point) {
  return object(
      {{"x_m", Json(point.station_m)}, {"z_m", number(point.elevation_m)}, {"cover_m", number(point.cover_m)}});
}

Json bore_of(const Assessment& a, const Crossing& crossing) {
  const bool at_exit = a.bore.ends == PathEnd::exit && !a.bore.points.empty();
  const bool has_path = !a.bore.points.empty();
  const bool followed = has_path && !too_long_to_follow(crossing.bore);
  const bool advances = !a.advance.points.empty();
  const auto guess = [&](const GuessEffect& effect) {
    return object({{"stratum", Json(crossing.site.strata[effect.stratum].id)},
                   {"shift_low_m", Json(effect.shift_low_m)},
                   {"shift_high_m", Json(effect.shift_high_m)},
                   {"chance_of_loss", Json(effect.chance_of_loss)}});
  };
  return object({{"length_m", followed ? Json(a.bore.length_m) : Json()},
                 {"ends", has_path ? Json(word_of(a.bore.ends)) : Json()},
                 {"path", path_of(a)},
                 {"arrival", json_of(at_exit ? a.arrival : Arrival())},
                 {"neutral_cover_m", number(a.neutral_cover_m)},
                 {"neutral_station_m", number(a.neutral_station_m)},
                 {"neutral_line", list_of(a.neutral_line, [](const NeutralPoint& p) { return json_of(p); })},
                 {"chance_of_refusal", number(a.chance_of_refusal)},
                 {"chance_of_daylight", number(a.chance_of_daylight)},
                 {"refusal_calibrated", Json(a.refusal_calibrated)},
                 {"refusal_station_m", number(a.refusal_station_m)},
                 {"advance_time_s", quantiles_json(a.advance_time_s)},
                 {"least_grip", advances ? Json(a.advance.least_grip) : Json()},
                 {"hold_until_m", number(a.advance.held_until_m)},
                 {"stops", list_of(a.stops, [](const StopStretch& s) { return json_of(s); })},
                 {"guesses", list_of(a.guesses, guess)},
                 {"calibrated_from", Json(std::int64_t{*crossing.bore.model.calibrated_from})}});
}

/// A chance with what a count of this size says about it.
Json chance_of(const Count& count) {
  return object({{"chance", Json(count.chance())},
                 {"standard_error", Json(count.standard_error())},
                 {"upper_95", Json(count.upper_95())}});
}

Json json_of(const Trials& trials) {
  const auto value = [](const std::optional<Estimate>& e) { return e ? Json(e->value) : Json(); };
  const auto error = [](const std::optional<Estimate>& e) { return e ? Json(e->standard_error) : Json(); };
  const auto utility = [](const UtilityTrials& u) {
    return object({{"id", Json(u.id)},
                   {"contact", Json(u.contact.n)},
                   {"encroachment", Json(u.encroachment.n)},
                   {"contact_chance", chance_of(u.contact)},
                   {"encroachment_chance", chance_of(u.encroachment)},
                   {"depth_unknown", Json(u.depth_unknown)}});
  };
  return object({{"count", Json(trials.count)},
                 {"seed", Json(trials.seed)},
                 {"arrived", Json(trials.arrived.n)},
                 {"inside_exit_pit", Json(trials.inside_window.n)},
                 {"daylight", Json(trials.daylight.n)},
                 {"refused", Json(trials.refused.n)},
                 {"contact", Json(trials.contact.n)},
                 {"lost", Json(trials.lost.n)},
                 {"mean_offset_m", value(trials.mean_offset_m)},
                 {"mean_elevation_m", value(trials.mean_elevation_m)},
                 {"sd_lateral_m", value(trials.sd_offset_m)},
                 {"sd_vertical_m", value(trials.sd_elevation_m)},
                 {"standard_errors", object({{"mean_offset_m", error(trials.mean_offset_m)},
                                             {"mean_elevation_m", error(trials.mean_elevation_m)},
                                             {"sd_lateral_m", error(trials.sd_offset_m)},
                                             {"sd_vertical_m", error(trials.sd_elevation_m)}})},
                 {"chances", object({{"arrived", chance_of(trials.arrived)},
                                     {"inside_exit_pit", chance_of(trials.inside_window)},
                                     {"daylight", chance_of(trials.daylight)},
                                     {"refused", chance_of(trials.refused)},
                                     {"contact", chance_of(trials.contact)}})},
                 {"grounds", Json(static_cast<std::int64_t>(trials.grounds))},
                 {"utilities", list_of(trials.utilities, utility)}});
}

Json json_of(const CoverAnswer& cover) {
  return object({{"least_m", number(cover.least_m)},
                 {"least_low_m", number(cover.least_low_m)},
                 {"station_m", number(cover.station_m)},
                 {"required_m", number(cover.required_m)},
                 {"chance_below", number(cover.chance_below)}});
}

Json json_of(const UtilityAnswer& u) {
  return object({{"id", Json(u.id)},
                 {"name", Json(u.name)},
                 {"separation_m", number(u.separation_m)},
                 {"gap_low_m", number(u.gap_low_m)},
                 {"station_m", number(u.station_m)},
                 {"offset_m", number(u.offset_m)},
                 {"elevation_m", number(u.elevation_m)},
                 {"angle_rad", number(u.angle_rad)},
                 {"required_m", number(u.required_m)},
                 {"contact_chance", number(u.contact_chance)},
                 {"contact_chance_worst", number(u.contact_chance_worst)},
                 {"encroachment_chance", number(u.encroachment_chance)},
                 {"by", u.contact_chance ? Json(word_of(u.by)) : Json()},
                 {"ground_movement_m", number(u.ground_movement_m)},
                 {"strain", number(u.strain)},
                 {"vibration_m_s", number(u.vibration_m_s)},
                 {"lateral_sd_m", number(u.lateral_sd_m)},
                 {"vertical_sd_m", number(u.vertical_sd_m)},
                 {"expose", Json(u.expose)},
                 {"expose_rank", number(u.expose_rank)},
                 {"chance_to_go_on", number(u.chance_to_go_on)},
                 {"chance_after_hole", number(u.chance_after_hole)},
                 {"required_after_hole_m", number(u.required_after_hole_m)},
                 {"hole_station_m", number(u.hole_station_m)},
                 {"hole_offset_m", number(u.hole_offset_m)},
                 {"hole_depth_low_m", number(u.hole_depth_low_m)},
                 {"hole_depth_high_m", number(u.hole_depth_high_m)}});
}

Json json_of(const SurfaceAnswer& s) {
  return object({{"heave_m", number(s.heave_m)},
                 {"heave_high_m", number(s.heave_high_m)},
                 {"station_m", number(s.station_m)},
                 {"limit_m", number(s.limit_m)},
                 {"settlement_m", number(s.settlement_m)},
                 {"settlement_abandoned_m", number(s.settlement_abandoned_m)},
                 {"grout_annulus_m3", number(s.grout_annulus_m3)},
                 {"grout_hole_m3", number(s.grout_hole_m3)}});
}

Json json_of(const StructureAnswer& s) {
  return object({{"id", Json(s.id)},
                 {"name", Json(s.name)},
                 {"distance_m", number(s.distance_m)},
                 {"station_m", number(s.station_m)},
                 {"vibration_m_s", number(s.vibration_m_s)},
                 {"vibration_percussive_m_s", number(s.vibration_percussive_m_s)},
                 {"vibration_distance_m_s", number(s.vibration_distance_m_s)},
                 {"vibration_limit_m_s", number(s.vibration_limit_m_s)},
                 {"spread_gap_m", number(s.spread_gap_m)},
                 {"spread_gap_wanted_m", number(s.spread_gap_wanted_m)}});
}

Json json_of(const PipeCheck& check) {
  return object({{"name", Json(check.name)},
                 {"value", number(check.value)},
                 {"limit", number(check.limit)},
                 {"unit", Json(check.unit)},
                 {"station_m", number(check.station_m)},
                 {"code", Json(check.code)},
                 {"utilisation", number(check.utilisation)},
                 {"at_least", Json(check.at_least)},
                 {"source", check.source.text.empty() ? Json() : Json(check.source.text.english())},
                 {"source_label", check.source.text.empty() ? Json() : Json(word_of(check.source.label))},
                 {"text", Json(translated_phrase(check.text))}});
}

Json json_of(const LoadPoint& load) {
  return object({{"station_m", Json(load.station_m)},
                 {"depth_m", Json(load.depth_m)},
                 {"earth_pa", Json(load.earth_Pa)},
                 {"earth_arched_pa", Json(load.earth_arched_Pa)},
                 {"live_pa", Json(load.live_Pa)},
                 {"water_pa", Json(load.water_Pa)},
                 {"live", Json(load.live)}});
}

Json json_of(const std::optional<Muted>& muted) {
  if (!muted) return {};
  return object({{"reason", Json(muted->reason)}, {"by", Json(muted->by)}, {"date", Json(muted->date)}});
}

Json json_of(const Finding& f, UnitSystem units) {
  return object({{"code", Json(f.code)},
                 {"severity", Json(word_of(f.severity))},
                 {"subject", Json(f.subject)},
                 {"station_m", number(f.station_m)},
                 {"offset_m", number(f.offset_m)},
                 {"elevation_m", number(f.elevation_m)},
                 {"measured", number(f.measured)},
                 {"limit", number(f.limit)},
                 {"unit", Json(f.unit)},
                 {"source", Json(f.source.text.english())},
                 {"source_label", Json(word_of(f.source.label))},
                 {"muted", json_of(f.muted)},
                 {"text", Json(finding_text(f, units))}});
}

Json json_of(const LoosenedLimit& l) {
  return object({{"id", Json(l.id)},
                 {"subject", Json(l.subject)},
                 {"name", Json(l.name.english())},
                 {"value", Json(l.value)},
                 {"table_value", Json(l.table_value)},
                 {"unit", Json(l.unit)},
                 {"why", Json(l.why.english())}});
}

Json json_of(const Working& w) {
  const auto input = [](const WorkingInput& i) {
    return object({{"symbol", Json(i.symbol)}, {"value", Json(i.value)}, {"unit", Json(i.unit)}});
  };
  return object({{"code", Json(w.code)},
                 {"subject", Json(w.subject)},
                 {"formula", Json(w.formula)},
                 {"inputs", list_of(w.inputs, input)},
                 {"value", Json(w.value)},
                 {"unit", Json(w.unit)},
                 {"limit", number(w.limit)},
                 {"source", Json(w.source.text.english())},
                 {"source_label", Json(word_of(w.source.label))},
                 {"limit_source", w.limit_source ? Json(w.limit_source->text.english()) : Json()},
                 {"limit_source_label", w.limit_source ? Json(word_of(w.limit_source->label)) : Json()}});
}

template <class List>
Json json_list(const List& list) {
  return list_of(list, [](const auto& item) { return json_of(item); });
}

Json json_of(const ProgramVersion& program) {
  const auto known = [](const std::string& text) { return text.empty() ? Json() : Json(text); };
  return object(
      {{"version", known(program.version)}, {"commit", known(program.commit)}, {"tables", known(program.tables)}});
}

Json heading_of(const std::string& file, Json::Object rest) {
  Json::Object members{
      {"format", Json("burrowline-assessment")}, {"version", Json(std::int64_t{1})}, {"file", Json(file)}};
  for (JsonMember& member : rest) members.push_back(std::move(member));
  return object(std::move(members));
}

}  // namespace

std::string write_assessment(const Crossing& crossing, const Assessment& assessment, const std::string& file,
                             const AssessmentOptions& options) {
  const auto finding = [&](const Finding& f) { return json_of(f, options.units); };
  Json::Object members = members_of(
      {{"crossing", Json(crossing.name)},
       {"verdict", Json(word_of(assessment.verdict))},
       {"judged_on", assessment.judged_on ? Json(text_of(*assessment.judged_on)) : Json()},
       {"program", json_of(options.program)},
       {"bore", bore_of(assessment, crossing)},
       {"cover", json_of(assessment.cover)},
       {"utilities", json_list(assessment.utilities)},
       {"services", object({{"contact_chance_any", number(assessment.contact_chance_any)},
                            {"chance_unknown_service", number(assessment.chance_unknown_service)}})},
       {"surface", json_of(assessment.surface)},
       {"structures", json_list(assessment.structures)},
       {"pits", object({{"launch", pit_json(assessment.launch_pit, assessment.launch_pit_work)},
                        {"exit", pit_json(assessment.exit_pit, assessment.exit_pit_work)}})},
       {"pipe", object({{"checks", json_list(assessment.pipe_checks)}, {"loads", json_list(assessment.loads)}})},
       {"air", air_json(assessment.air, crossing.air)},
       {"marks", marks_json(assessment.marks)},
       {"day", day_json(options.day, crossing)},
       {"loosened", json_list(assessment.loosened)},
       {"findings", list_of(assessment.findings, finding)}});
  if (options.trials) members.push_back({"trials", json_of(*options.trials)});
  if (options.working) members.push_back({"working", json_list(assessment.working)});
  return compact_json(heading_of(file, std::move(members)));
}

std::string write_failure(const std::string& file, const Error& error) {
  const Json shown = object({{"pointer", Json(error.place.english())},
                             {"found", Json(error.found.english())},
                             {"expected", Json(error.expected.english())}});
  return compact_json(heading_of(file, {{"error", shown}}));
}

}  // namespace burrow

#include "assessment_air.h"

#include "json_answers.h"

namespace burrow {

namespace {

Json water_json(const std::optional<AirWater>& water) {
  const auto known = [&](double AirWater::*member) { return water ? Json((*water).*member) : Json(); };
  return object({{"humidity", known(&AirWater::humidity)},
                 {"humidity_known", water ? Json(water->humidity_known) : Json()},
                 {"drawn_in_kg_s", known(&AirWater::drawn_in_kg_s)},
                 {"comes_out_kg_s", known(&AirWater::comes_out_kg_s)},
                 {"exhaust_ideal_k", water ? Json(water->exhaust_ideal.K) : Json()},
                 {"icing", water ? Json(word_of(water->icing)) : Json()}});
}

/// Without a rate nothing was planned.
Json oil_json(const OilPlan& oil) {
  const auto volume = [](const std::optional<Volume>& v) { return v ? Json(v->m3) : Json(); };
  const auto time = [](const std::optional<Duration>& t) { return t ? Json(t->s) : Json(); };
  const bool planned = oil.rate_entered || oil.rate.m3_s > 0;
  return object({{"rate_m3_s", planned ? Json(oil.rate.m3_s) : Json()},
                 {"rate_entered", Json(oil.rate_entered)},
                 {"first_fill_m3", planned ? Json(oil.first_fill.m3) : Json()},
                 {"for_p50_m3", volume(oil.for_half)},
                 {"for_p90_m3", volume(oil.for_nine_in_ten)},
                 {"fill_lasts_s", time(oil.fill_lasts)},
                 {"look_every_s", time(oil.look_every)}});
}

Json along_json(const std::optional<AirSupply>& supply, const Air& entered) {
  Json::Array parts;
  if (supply)
    for (const PartFlow& part : supply->along)
      parts.push_back(object(
          {{"kind", part.entered < entered.line.size() ? Json(word_of(entered.line[part.entered].kind)) : Json()},
           {"inlet_pa", Json(part.inlet_Pa - supply->ambient.Pa)},
           {"outlet_pa", Json(part.outlet_Pa - supply->ambient.Pa)},
           {"speed_m_s", Json(part.speed_m_s)},
           {"choked", Json(part.choked)}}));
  return Json(std::move(parts));
}

std::string_view word_of_end(IterationEnd end) {
  switch (end) {
    case IterationEnd::residual_small:
      return "residual-small";
    case IterationEnd::step_small:
      return "step-small";
    case IterationEnd::out_of_steps:
      break;
  }
  return "out-of-steps";
}

Json iteration_json(const std::optional<AirSupply>& supply) {
  return object({{"ended", supply ? Json(word_of_end(supply->iteration.ended)) : Json()},
                 {"steps", supply ? Json(std::int64_t{supply->iteration.steps}) : Json()},
                 {"residual", supply ? Json(supply->iteration.residual) : Json()}});
}

Json near_json(const MarkNear& near) {
  return object({{"id", Json(near.id)},
                 {"above_m", number(near.above_m)},
                 {"clear_m", number(near.clear_m)},
                 {"name", Json(near.name)},
                 {"gap_m", number(near.gap_m)},
                 {"ahead_m", Json(near.ahead_m)},
                 {"expose", Json(near.expose)}});
}

Json mark_json(const Mark& mark) {
  return object({{"hose_m", number(mark.hose_m)},
                 {"nose_m", number(mark.nose_m)},
                 {"station_m", number(mark.station_m)},
                 {"depth_m", number(mark.depth_m)},
                 {"depth_low_m", number(mark.depth_low_m)},
                 {"depth_high_m", number(mark.depth_high_m)},
                 {"time_s", quantiles_json(mark.time_s)},
                 {"near", list_of(mark.near, near_json)},
                 {"offset_m", number(mark.offset_m)},
                 {"elevation_m", number(mark.elevation_m)},
                 {"tasks", list_of(mark.tasks, [](MarkTask task) { return Json(word_of(task)); })},
                 {"under", list_of(mark.under, [](const std::string& id) { return Json(id); })}});
}

}  // namespace

Json quantiles_json(const Quantiles& q) {
  return object({{"p10", number(q.p10)}, {"p50", number(q.p50)}, {"p90", number(q.p90)}});
}

Json air_json(const AirAnswer& air, const Air& entered) {
  const std::optional<AirSupply>& supply = air.supply;
  const auto known = [&](auto member) { return supply ? Json(member(*supply)) : Json(); };
  return object({{"pressure_at_tool_pa", number(air.pressure_at_tool_Pa)},
                 {"free_air_m3_s", number(air.free_air_m3_s)},
                 {"standing_pressure_pa", number(air.standing_Pa)},
                 {"pressure_worked_with_pa", number(air.pressure_worked_with_Pa)},
                 {"pressure_typed", Json(air.pressure_typed)},
                 {"not_judged", air.not_judged.empty() ? Json() : Json(air.not_judged.english())},
                 {"pressure_at_compressor_pa", known([](const AirSupply& s) { return s.at_compressor.Pa; })},
                 {"compressor_pressure_pa", known([](const AirSupply& s) { return s.compressor_most.Pa; })},
                 {"wanted_free_air_m3_s", known([](const AirSupply& s) { return s.wanted.m3_s; })},
                 {"ambient_pa", known([](const AirSupply& s) { return s.ambient.Pa; })},
                 {"held_by", known([](const AirSupply& s) { return word_of(s.held_by); })},
                 {"loss_harris_pa", number(air.loss_harris_Pa)},
                 {"iteration", iteration_json(supply)},
                 {"along", along_json(supply, entered)},
                 {"water", water_json(air.water)},
                 {"oil", oil_json(air.oil)}});
}

Json marks_json(const std::vector<Mark>& marks) {
  return list_of(marks, mark_json);
}

}  // namespace burrow

#include "assessment_day.h"

#include "json_answers.h"

namespace burrow {

namespace {

Json arrival_json(const Arrival& arrival) {
  return object({{"offset_m", number(arrival.offset_m)},
                 {"elevation_m", number(arrival.elevation_m)},
                 {"sd_lateral_m", number(arrival.sd_lateral_m)},
                 {"sd_vertical_m", number(arrival.sd_vertical_m)},
                 {"chance_inside_exit_pit", number(arrival.chance_inside_exit_pit)}});
}

Json utility_json(const DayUtility& u) {
  return object({{"id", Json(u.id)},
                 {"name", Json(u.name.english())},
                 {"separation_m", number(u.separation_m)},
                 {"gap_low_m", number(u.gap_low_m)},
                 {"station_m", number(u.station_m)},
                 {"ahead_m", number(u.ahead_m)},
                 {"required_m", number(u.required_m)},
                 {"contact_chance", number(u.contact_chance)},
                 {"contact_chance_worst", number(u.contact_chance_worst)},
                 {"by", u.contact_chance ? Json(word_of(u.by)) : Json()},
                 {"unexposed", Json(u.unexposed)}});
}

Json near_json(const NearService& n) {
  return object({{"id", Json(n.id)},
                 {"name", Json(n.name.english())},
                 {"gap_m", Json(n.gap_m)},
                 {"depth_unknown", Json(n.depth_unknown)},
                 {"within_band", Json(n.within_band)},
                 {"can_hurt", Json(n.can_hurt)},
                 {"too_near", Json(n.too_near)}});
}

Json reason_json(const DayReason& r) {
  return object({{"code", Json(r.code)},
                 {"subject", Json(r.subject)},
                 {"leads_to", Json(word_of(r.leads_to))},
                 {"broken", Json(r.broken)},
                 {"station_m", number(r.station_m)},
                 {"offset_m", number(r.offset_m)},
                 {"elevation_m", number(r.elevation_m)},
                 {"measured", Json(r.measured)},
                 {"limit", Json(r.limit)},
                 {"unit", Json(r.unit)},
                 {"source", Json(r.source.text.english())},
                 {"source_label", Json(word_of(r.source.label))}});
}

Json rate_json(const RateAnswer& rate) {
  Json::Array pieces;
  for (std::size_t i = 0; i < rate.pieces.size(); ++i) {
    const RatePiece& p = rate.pieces[i];
    const auto odd = [](const OddRateChance& c) {
      return object({{"what", Json(word_of(c.what))}, {"chance", Json(c.chance)}});
    };
    pieces.push_back(object({{"from_m", Json(p.from_m)},
                             {"to_m", Json(p.to_m)},
                             {"taken_s", Json(p.taken_s)},
                             {"expected_s", Json(p.expected_s)},
                             {"odds", list_of(rate.odds[i], odd)}}));
  }
  return Json(std::move(pieces));
}

Json next_json(const NextReading& n) {
  return object({{"kind", Json(word_of(n.kind))},
                 {"subject", Json(n.subject)},
                 {"sd_lateral_m", Json(n.sd_lateral_m)},
                 {"sd_vertical_m", Json(n.sd_vertical_m)},
                 {"decides", n.decides.empty() ? Json() : Json(n.decides)},
                 {"chance_to_turn", Json(n.chance_to_turn)}});
}

std::string_view trouble_word(ReadingTrouble trouble) {
  switch (trouble) {
    case ReadingTrouble::beyond_path:
      return "beyond-path";
    case ReadingTrouble::no_nose:
      return "no-nose";
    case ReadingTrouble::runs_back:
      return "runs-back";
    case ReadingTrouble::no_value:
      break;
  }
  return "no-value";
}

/// The line as it is now believed to run: behind the nose as built, ahead as predicted.
Json path_json(const BorePath& path) {
  return list_of(path.points, [](const PathPoint& p) {
    return object({{"s_m", Json(p.s_m)},
                   {"x_m", Json(p.x_m)},
                   {"y_m", Json(p.y_m)},
                   {"z_m", Json(p.z_m)},
                   {"sd_lateral_m", Json(p.sd_lateral_m)},
                   {"sd_vertical_m", Json(p.sd_vertical_m)}});
  });
}

Json time_json(const RateAnswer& rate) {
  return object({{"p10", number(rate.left_p10_s)}, {"p50", number(rate.left_p50_s)}, {"p90", number(rate.left_p90_s)}});
}

}  // namespace

Json day_json(const DayAnswer* day, const Crossing& crossing) {
  static const DayAnswer none;
  const DayAnswer& d = day ? *day : none;
  const DayRecord* record = nullptr;
  for (const DayRecord& one : crossing.record)
    if (day && one.id == d.record) record = &one;
  const auto kind_of = [&](std::size_t reading) {
    return record && reading < record->readings.size() ? Json(word_of(record->readings[reading].kind)) : Json();
  };
  const auto index = [](std::size_t i) { return Json(static_cast<std::int64_t>(i)); };
  const auto odd = [&](const OddReading& o) {
    return object({{"reading", index(o.reading)}, {"kind", kind_of(o.reading)}, {"in_sd", Json(o.in_sd)}});
  };
  const auto left_out = [&](const ReadingLeftOut& l) {
    return object(
        {{"reading", index(l.reading)}, {"kind", kind_of(l.reading)}, {"why", Json(trouble_word(l.trouble))}});
  };
  const auto queried = [&](const ReadingQuery& q) {
    return object({{"reading", index(q.reading)},
                   {"kind", kind_of(q.reading)},
                   {"why", Json(word_of(q.why))},
                   {"in_sd", q.why == QueryWhy::far_off ? Json(q.in_sd) : Json()}});
  };
  const auto task = [](const DayTask& t) { return object({{"task", Json(word_of(t.task))}, {"done", Json(t.done)}}); };
  const auto name = [](const Phrase& one) { return Json(one.english()); };
  const auto value = [&](double v) { return day ? Json(v) : Json(); };
  return object({{"record", day ? Json(d.record) : Json()},
                 {"nose_m", value(d.nose_m)},
                 {"advice", d.advice ? Json(word_of(*d.advice)) : Json()},
                 {"arrival", arrival_json(d.arrival)},
                 {"utilities", list_of(d.utilities, utility_json)},
                 {"near", list_of(d.near, near_json)},
                 {"reasons", list_of(d.reasons, reason_json)},
                 {"next", list_of(d.next, next_json)},
                 {"time_left_s", time_json(d.rate)},
                 {"rate", rate_json(d.rate)},
                 {"odd", list_of(d.odd, odd)},
                 {"left_out", list_of(d.left_out, left_out)},
                 {"queried", list_of(d.queried, queried)},
                 {"tasks", list_of(d.tasks, task)},
                 {"to_expose", list_of(d.to_expose, name)},
                 {"path", path_json(d.smoothed)},
                 {"may_back_out", Json(d.may_back_out)},
                 {"bands_in_doubt", Json(d.bands_in_doubt)},
                 {"with_care", Json(d.with_care)},
                 {"layout_stands", Json(d.layout_stands)}});
}

}  // namespace burrow

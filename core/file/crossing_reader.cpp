#include "crossing_reader.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <unordered_map>
#include <unordered_set>

#include "key_likeness.h"

namespace burrow {

void Reader::refuse(std::string place, Phrase found, Phrase expected) {
  if (!error_) error_ = Error{std::move(place), std::move(found), std::move(expected)};
}

const Json* Reader::find(std::string_view key) {
  if (error_) return nullptr;
  frame_.asked.push_back(key);
  for (std::size_t i = 0; i < frame_.members->size(); ++i) {
    const JsonMember& member = (*frame_.members)[i];
    if (member.key != key) continue;
    frame_.used[i] = true;
    return &member.value;
  }
  return nullptr;
}

bool Reader::must_find(std::string_view key, std::string_view expected) {
  if (!error_ && !find(key)) refuse(json_pointer(place_, key), "nothing", std::string(expected));
  return !error_;
}

void Reader::take(const Json& json, double& target, const Range& range) {
  const Json::Number* number = json.number();
  if (!number || !range.contains(number->value)) return refuse_here(json, std::string(range.words));
  target = number->value;
}

/// A whole number, however it is spelt: 20000, 2e4.
void Reader::take(const Json& json, std::int64_t& target, const Range& range) {
  const Json::Number* number = json.number();
  const std::string words(range.words == range::any.words ? range::whole.words : range.words);
  if (!number || !range.contains(number->value)) return refuse_here(json, words);
  const char* end = number->token.data() + number->token.size();
  const auto parsed = std::from_chars(number->token.data(), end, target);
  if (!number->token.empty() && parsed.ec == std::errc() && parsed.ptr == end) return;
  if (!(std::abs(number->value) <= 9e15) || number->value != std::trunc(number->value)) return refuse_here(json, words);
  target = static_cast<std::int64_t>(number->value);
}

void Reader::take(const Json& json, bool& target, const Range& /*range*/) {
  if (!json.boolean()) return refuse_here(json, "true or false");
  target = *json.boolean();
}

void Reader::take(const Json& json, std::string& target, const Range& /*range*/) {
  if (!json.text()) return refuse_here(json, "a text");
  target = *json.text();
}

void Reader::coordinate(double& target, const Range& range) {
  const std::size_t i = next_++;
  step(json_pointer(place_, i), [&] { take((*tuple_)[i], target, range); });
}

void Reader::coordinate(std::optional<double>& target, const Range& range) {
  const std::size_t i = next_++;
  if ((*tuple_)[i].is_null()) return;
  step(json_pointer(place_, i), [&] { take((*tuple_)[i], target.emplace(), range); });
}

void Reader::check_level_line(const Json& json, const LevelLine& line) {
  if (error_) return;
  if (line.empty()) return refuse_here(json, "at least one point [station, elevation]");
  const auto stood = [&](std::size_t k, std::size_t number) {
    return compact_json((*(*json.array())[k].array())[number]);
  };
  for (std::size_t i = 1; i < line.size(); ++i) {
    const LevelPoint &from = line[i - 1], &to = line[i];
    const double run = to.station_m - from.station_m, rise = std::abs(to.elevation_m - from.elevation_m);
    if (!(run >= least_station_step_m))
      return refuse(json_pointer(json_pointer(place_, i), 0), stood(i, 0),
                    "stations that increase: more than " + stood(i - 1, 0) +
                        ", the station before, by a millimetre (0.001) or more, also where the ground drops upright");
    if (!(rise <= steepest_level_line * run))
      return refuse(json_pointer(json_pointer(place_, i), 1), stood(i, 1),
                    "an elevation that rises or falls from " + stood(i - 1, 1) +
                        ", the one before, by no more than 10000 times the run between them");
  }
}

void Reader::lines(std::string_view key, std::vector<PlanLine>& target) {
  const Json* json = find(key);
  const auto one = [this](const Json& item, PlanLine& line) { take_points(item, line); };
  if (json) at(key, [&] { read_list(*json, target, 0, one); });
}

void Reader::origin(std::string_view key, PlanPoint& target) {
  const Json* json = find(key);
  if (!json) return;
  at(key, [&] {
    if (!json->array() || json->array()->size() != 2) return refuse_here(*json, "a point of two numbers");
    tuple_ = json->array();
    next_ = 0;
    coordinate(target.x_m, range::foreign);
    coordinate(target.y_m, range::foreign);
  });
}

bool Reader::is_known(NameOf table, const std::string& name) const {
  switch (table) {
    case NameOf::soil:
      return find_soil(tables_, name);
    case NameOf::tool:
      return find_tool(tables_, name);
    case NameOf::pipe:
      return find_pipe(tables_, name);
    case NameOf::rule:
      return find_rule(tables_, name);
    case NameOf::locating:
      break;
  }
  return std::any_of(tables_.locating.begin(), tables_.locating.end(), [&](const auto& row) { return row.id == name; });
}

std::string Reader::known_names(NameOf table) const {
  switch (table) {
    case NameOf::soil:
      return "one of the soils: " + known_ids(tables_.soils);
    case NameOf::tool:
      return "one of the tool classes: " + known_ids(tables_.tools);
    case NameOf::pipe:
      return "one of the pipe materials: " + known_ids(tables_.pipes);
    case NameOf::rule:
      return "one of the owners' rules: " + known_ids(tables_.surface_rules);
    case NameOf::locating:
      break;
  }
  return "one of the locating presets: " + known_ids(tables_.locating);
}

void Reader::name(std::string_view key, std::string& target, NameOf table) {
  const Json* json = find(key);
  if (!json) return;
  at(key, [&] {
    if (!json->text() || !is_known(table, *json->text())) return refuse_here(*json, known_names(table));
    target = *json->text();
  });
}

void Reader::name(std::string_view key, std::optional<std::string>& target, NameOf table) {
  const Json* json = find(key);
  if (json && !json->is_null()) name(key, target.emplace(), table);
}

void Reader::required_name(std::string_view key, std::string& target, NameOf table) {
  if (must_find(key, known_names(table))) name(key, target, table);
}

/// `format` must be ours; `version` decides how strictly unknown names of limits are taken.
void Reader::header(Crossing& item) {
  static constexpr Range versions{1, 2147483647, false, "a version, a whole number from 1"};
  if (!must_find("format", "\"burrowline-crossing\"")) return;
  const Json* format = find("format");
  if (!format->text() || *format->text() != "burrowline-crossing")
    return refuse("/format", shown_json(*format), "\"burrowline-crossing\"");
  std::int64_t version = 0;
  required("version", version, versions);
  if (error_) return;
  item.version = static_cast<int>(version);
  newer_ = item.version > known_file_version;
}

void Reader::texts(std::string_view key, std::vector<std::string>& target) {
  const Json* json = find(key);
  const auto one = [this](const Json& item, std::string& text) { take(item, text, range::any); };
  if (json) at(key, [&] { read_list(*json, target, 0, one); });
}

void Reader::raw(std::string_view key, std::string& target) {
  const Json* json = find(key);
  if (json && !json->is_null()) target = compact_json(*json);
}

void Reader::limits(std::string_view key, std::map<std::string, LimitOverride>& target) {
  const Json* json = find(key);
  if (!json) return;
  at(key, [&] {
    if (!json->object()) return refuse_here(*json, "an object");
    for (const JsonMember& member : *json->object()) {
      if (!newer_ && !find_limit(tables_, member.key))
        return refuse(json_pointer(place_, member.key), '"' + member.key + '"',
                      "one of the limits: " + known_ids(tables_.limits));
      const LimitRow* row = find_limit(tables_, member.key);
      const Range& range = range::limit_in(row ? std::string_view(row->unit) : std::string_view());
      // A gap below zero is read, so that the verdict can name it: a stop.
      const bool gap = member.key.starts_with("separation_");
      at(member.key, [&] { take_limit(member.value, target[member.key], gap ? range::limit_gap : range); });
    }
  });
}

void Reader::take_limit(const Json& json, LimitOverride& target, const Range& range) {
  if (!json.object()) {
    const std::string words = std::string(range.words) + R"(, or {"value": …, "why": "…"})";
    return take(json, target.value, Range{range.low, range.high, range.above_low, words});
  }
  Frame frame{json.object(), std::vector<bool>(json.object()->size())};
  std::swap(frame_, frame);
  required("value", target.value, range);
  field("why", target.why);
  field("by", target.by);
  extra(target.extra);
  std::swap(frame_, frame);
}

void Reader::id(std::string& target, std::string_view prefix) {
  static constexpr std::array<std::string_view, 6> reserved{"bore", "launch-pit", "exit-pit", "pipe", "air", "site"};
  if (const Json* json = find("id")) {
    at("id", [&] {
      take(*json, target, range::any);
      if (!error_ && (target.empty() || std::find(reserved.begin(), reserved.end(), target) != reserved.end()))
        refuse_here(*json, "an id that is not empty and none of: bore, launch-pit, exit-pit, pipe, air, site");
    });
  }
  ids_.push_back({&target, prefix, json_pointer(place_, "id")});
}

void Reader::settle_ids() {
  std::unordered_set<std::string> used;
  for (const Id& id : ids_)
    if (!error_ && !id.text->empty() && !used.insert(*id.text).second)
      refuse(id.place, '"' + *id.text + '"', "an id that nothing else in the file has");
  std::unordered_map<std::string_view, int> last;
  for (const Id& id : ids_) {
    if (error_ || !id.text->empty()) continue;
    int& n = last[id.prefix];
    do *id.text = std::string(id.prefix) + std::to_string(++n);
    while (!used.insert(*id.text).second);
  }
}

void Reader::extra(std::string& target) {
  if (error_) return;
  Json::Object unknown;
  for (std::size_t i = 0; i < frame_.members->size(); ++i) {
    if (frame_.used[i]) continue;
    const JsonMember& member = (*frame_.members)[i];
    unknown.push_back(member);
    if (newer_) continue;  // a later version may well know it
    if (const std::string_view like = looks_like(member.key, frame_.asked); !like.empty())
      unknown_keys_.push_back({place_, member.key, std::string(like)});
  }
  if (!unknown.empty()) target = compact_json(Json(std::move(unknown)));
}

}  // namespace burrow

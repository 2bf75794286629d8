#include "schema_describer.h"

#include <algorithm>

namespace burrow {

std::string_view unit_of(const Length& /*q*/) {
  return "m";
}
std::string_view unit_of(const Angle& /*q*/) {
  return "rad";
}
std::string_view unit_of(const Ratio& /*q*/) {
  return "1";
}
std::string_view unit_of(const Area& /*q*/) {
  return "m2";
}
std::string_view unit_of(const Volume& /*q*/) {
  return "m3";
}
std::string_view unit_of(const Pressure& /*q*/) {
  return "Pa";
}
std::string_view unit_of(const Force& /*q*/) {
  return "N";
}
std::string_view unit_of(const UnitWeight& /*q*/) {
  return "N/m3";
}
std::string_view unit_of(const Mass& /*q*/) {
  return "kg";
}
std::string_view unit_of(const Duration& /*q*/) {
  return "s";
}
std::string_view unit_of(const Frequency& /*q*/) {
  return "Hz";
}
std::string_view unit_of(const VolumeFlow& /*q*/) {
  return "m3/s";
}
std::string_view unit_of(const Temperature& /*q*/) {
  return "K";
}
std::string_view unit_of(const RatePerLength& /*q*/) {
  return "1/m";
}
std::string_view unit_of(const RatePerArea& /*q*/) {
  return "1/m2";
}
std::string_view unit_of(const Wander& /*q*/) {
  return "rad/sqrt(m)";
}

Json Describer::type(std::string_view name) {
  return burrow::object({{"type", Json(name)}});
}

Json Describer::any_of(Json::Array choices) {
  return burrow::object({{"anyOf", Json(std::move(choices))}});
}

/// Null says "not known".
Json Describer::or_null(Json schema) {
  for (JsonMember& member : std::get<Json::Object>(schema.value)) {
    if (member.key == "type") member.value = Json(Json::Array{member.value, Json("null")});
    if (member.key == "enum") std::get<Json::Array>(member.value.value).emplace_back();
  }
  return schema;
}

Json Describer::array_of(Json items, std::size_t least) {
  Json::Object members{{"type", Json("array")}, {"items", std::move(items)}};
  if (least > 0) members.push_back({"minItems", Json(static_cast<std::int64_t>(least))});
  return Json(std::move(members));
}

Json Describer::tuple(Json::Array of) {
  const auto count = static_cast<std::int64_t>(of.size());
  return burrow::object({{"type", Json("array")},
                         {"prefixItems", Json(std::move(of))},
                         {"minItems", Json(count)},
                         {"maxItems", Json(count)}});
}

Json Describer::number_in(const Range& range, std::string_view unit) {
  Json::Object members{{"type", Json("number")},
                       {range.above_low ? "exclusiveMinimum" : "minimum", Json(range.low)},
                       {"maximum", Json(range.high)}};
  if (range.words != range::any.words) members.push_back({"description", Json(range.words)});
  if (!unit.empty()) members.push_back({"unit", Json(unit)});
  return Json(std::move(members));
}

Json Describer::type_of(std::int64_t /*value*/, const Range& range) {
  Json schema = number_in(range.words == range::any.words ? range::whole : range, "");
  std::get<Json::Object>(schema.value).front().value = Json("integer");
  return schema;
}

Json Describer::words_of(const std::vector<std::string_view>& words) {
  Json::Array choices;
  for (const std::string_view word : words) choices.emplace_back(word);
  return burrow::object({{"type", Json("string")}, {"enum", Json(std::move(choices))}});
}

Json Describer::names_of(NameOf table) const {
  std::vector<std::string_view> ids;
  const auto take = [&](const auto& rows) {
    for (const auto& row : rows) ids.push_back(row.id);
  };
  switch (table) {
    case NameOf::soil:
      take(tables_.soils);
      break;
    case NameOf::tool:
      take(tables_.tools);
      break;
    case NameOf::pipe:
      take(tables_.pipes);
      break;
    case NameOf::rule:
      take(tables_.surface_rules);
      break;
    case NameOf::locating:
      take(tables_.locating);
      break;
  }
  return words_of(ids);
}

void Describer::define(std::string_view name, Json schema) {
  if (std::none_of(defs_.begin(), defs_.end(), [&](const JsonMember& known) { return known.key == name; }))
    defs_.push_back({std::string(name), std::move(schema)});
}

void Describer::origin(std::string_view key, const PlanPoint& /*point*/) {
  put(key, tuple({number_in(range::foreign, "m"), number_in(range::foreign, "m")}));
}

/// The schema is that of one version: a newer file has another.
void Describer::header(const Crossing& /*item*/) {
  for (const char* key : {"format", "version"}) required_.emplace_back(key);
  put("format", burrow::object({{"const", Json("burrowline-crossing")}}));
  put("version", burrow::object({{"const", Json(std::int64_t{known_file_version})}}));
}

void Describer::texts(std::string_view key, const std::vector<std::string>& /*texts*/) {
  put(key, array_of(type("string"), 0));
}

/// Whatever stands there is kept as it is.
void Describer::raw(std::string_view key, const std::string& /*json_text*/) {
  put(key, Json(true));
}

void Describer::limits(std::string_view key, const std::map<std::string, LimitOverride>& /*limits*/) {
  Json::Object entries;
  for (const LimitRow& row : tables_.limits) {
    const Range& in = row.id.starts_with("separation_") ? range::limit_gap : range::limit_in(row.unit);
    const Json value = number_in(in, row.unit.empty() ? "1" : std::string_view(row.unit));
    const Json with_reason = burrow::object(
        {{"type", Json("object")},
         {"properties", burrow::object({{"value", value}, {"why", type("string")}, {"by", type("string")}})},
         {"required", Json(Json::Array{Json("value")})}});
    entries.push_back({row.id, any_of({value, with_reason})});
  }
  put(key,
      burrow::object(
          {{"type", Json("object")}, {"properties", Json(std::move(entries))}, {"additionalProperties", Json(false)}}));
}

void Describer::id(const std::string& /*text*/, std::string_view /*prefix*/) {
  const Json reserved = words_of({"bore", "launch-pit", "exit-pit", "pipe", "air", "site"});
  put("id", burrow::object({{"type", Json("string")}, {"minLength", Json(std::int64_t{1})}, {"not", reserved}}));
}

}  // namespace burrow

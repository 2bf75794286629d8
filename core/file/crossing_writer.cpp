#include "crossing_writer.h"

#include <algorithm>

namespace burrow {

void Writer::header(const Crossing& item) {
  put("format", Json("burrowline-crossing"));
  put("version", Json(std::int64_t{item.version}));
}

void Writer::lines(std::string_view key, const std::vector<PlanLine>& lines) {
  Json::Array items;
  for (const PlanLine& points : lines) items.push_back(json_of_points(points));
  if (!items.empty()) put(key, Json(std::move(items)));
}

void Writer::texts(std::string_view key, const std::vector<std::string>& texts) {
  Json::Array items;
  for (const std::string& text : texts) items.emplace_back(text);
  if (!items.empty()) put(key, Json(std::move(items)));
}

void Writer::raw(std::string_view key, const std::string& json_text) {
  if (json_text.empty()) return;
  if (Result<Json> json = parse_json(json_text)) put(key, std::move(*json));
}

void Writer::limits(std::string_view key, const std::map<std::string, LimitOverride>& limits) {
  Json::Object entries;
  for (const auto& [name, limit] : limits) {
    if (limit.why.empty() && limit.by.empty() && limit.extra.empty()) {
      entries.push_back({name, Json(limit.value)});
      continue;
    }
    Json::Object members;
    std::swap(members_, members);
    field("value", limit.value);
    field("why", limit.why);
    field("by", limit.by);
    extra(limit.extra);
    std::swap(members_, members);
    entries.push_back({name, Json(std::move(members))});
  }
  if (!entries.empty()) put(key, Json(std::move(entries)));
}

void Writer::extra(const std::string& json_text) {
  if (json_text.empty()) return;
  const Result<Json> json = parse_json(json_text);
  if (!json || !json->object()) return;
  for (const JsonMember& member : *json->object()) {
    const auto same_key = [&](const JsonMember& written) { return written.key == member.key; };
    if (std::none_of(members_.begin(), members_.end(), same_key)) members_.push_back(member);
  }
}

}  // namespace burrow

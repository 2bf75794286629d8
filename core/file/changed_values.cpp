#include "burrow/file/changed_values.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "burrow/base/quantity_text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/schema_file.h"
#include "json_tree.h"
#include "key_likeness.h"

namespace burrow {

struct ChangedValues::Parts {
  const Tables& tables;
  Json schema;
  Json crossing;
};

namespace {

const Json* member_of(const Json& object, std::string_view key) {
  if (const Json::Object* members = object.object())
    for (const JsonMember& member : *members)
      if (member.key == key) return &member.value;
  return nullptr;
}

/// The member, made where it is not there.
Json& member_for(Json& object, std::string_view key) {
  if (!object.object()) object = Json(Json::Object());
  auto& members = std::get<Json::Object>(object.value);
  for (JsonMember& member : members)
    if (member.key == key) return member.value;
  return members.emplace_back(JsonMember{std::string(key), Json()}).value;
}

/// What stands behind a reference, and in front of "or null".
const Json& resolved(const Json& root, const Json& schema) {
  const Json* at = &schema;
  while (true) {
    if (const Json* choices = member_of(*at, "anyOf")) {
      at = &choices->array()->front();
    } else if (const Json* reference = member_of(*at, "$ref")) {
      const std::string& target = *reference->text();
      at = member_of(*member_of(root, "$defs"), std::string_view(target).substr(target.rfind('/') + 1));
    } else {
      return *at;
    }
  }
}

bool is_type(const Json& schema, std::string_view name) {
  const Json* type = member_of(schema, "type");
  if (!type) return false;
  if (type->text()) return *type->text() == name;
  return std::any_of(type->array()->begin(), type->array()->end(),
                     [&](const Json& one) { return *one.text() == name; });
}

bool may_be_null(const Json& schema) {
  if (const Json* choices = member_of(schema, "anyOf"))
    return std::any_of(choices->array()->begin(), choices->array()->end(), may_be_null);
  return is_type(schema, "null");
}

Result<std::vector<std::string>> segments_of(std::string_view pointer) {
  const std::string found(pointer);
  if (!pointer.starts_with('/')) return fail(found, found, translatable("a JSON pointer, as /bore/launch/elevation_m"));
  std::vector<std::string> segments;
  for (std::size_t at = 0; at < pointer.size(); ++at) {
    if (pointer[at] == '/')
      segments.emplace_back();
    else if (pointer[at] != '~')
      segments.back() += pointer[at];
    else if (++at < pointer.size() && (pointer[at] == '0' || pointer[at] == '1'))
      segments.back() += pointer[at] == '0' ? '~' : '/';
    else
      return fail(found, found, translatable("in a JSON pointer ~0 for ~ and ~1 for /"));
  }
  return segments;
}

/// A place of the file: what may stand there, under which name.
struct Place {
  const Json* schema = nullptr;  ///< before "or null" is taken off
  std::string key;
};

tl::unexpected<Error> unknown(const std::string& parent, const std::string& key, const Json* properties) {
  const std::string place = json_pointer(parent, key);
  std::vector<std::string_view> known;
  std::string all;
  if (properties)
    for (const JsonMember& member : *properties->object()) {
      known.push_back(member.key);
      all += (all.empty() ? "" : ", ") + member.key;
    }
  if (known.empty()) return fail(place, "\"" + key + "\"", phrase(translatable("nothing lies below {}"), parent));
  const std::string_view like = looks_like(key, known);
  if (!like.empty())
    return fail(place, "\"" + key + "\"",
                phrase(translatable("near it: {}; known there: {}"), json_pointer(parent, like), all));
  return fail(place, "\"" + key + "\"", phrase(translatable("known there: {}"), all));
}

std::optional<std::size_t> index_of(const std::string& segment) {
  std::size_t index = 0;
  const auto [end, error] = std::from_chars(segment.data(), segment.data() + segment.size(), index);
  if (error != std::errc() || end != segment.data() + segment.size()) return std::nullopt;
  return index;
}

/// The place in a list by number or by id.
Result<std::size_t> place_in(const Json& list, const std::string& parent, const std::string& segment) {
  static const Json::Array none;
  const Json::Array& items = list.array() ? *list.array() : none;
  if (const auto index = index_of(segment); index && *index < items.size()) return *index;
  std::string ids;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Json* id = member_of(items[i], "id");
    if (!id || !id->text()) continue;
    if (*id->text() == segment) return i;
    ids += (ids.empty() ? "" : ", ") + *id->text();
  }
  if (items.empty())
    return fail(json_pointer(parent, segment), "\"" + segment + "\"",
                phrase(translatable("the list {} is empty: give it whole, as JSON"), parent));
  const std::string last = std::to_string(items.size() - 1);
  return fail(json_pointer(parent, segment), "\"" + segment + "\"",
              ids.empty() ? phrase(translatable("a number from 0 to {}"), last)
                          : phrase(translatable("a number from 0 to {}, or one of the ids: {}"), last, ids));
}

/// Follows a pointer through schema and file; `put` does what is wanted with the value there (made on the way) and with
/// what may stand there.
template <class Put>
Result<void> at_place(const Json& root, const Json& schema, Json& value, const std::string& parent,
                      const std::vector<std::string>& segments, std::size_t next, Place here, const Put& put) {
  here.schema = &schema;
  if (next == segments.size()) return put(here, value);
  const Json& what = resolved(root, schema);
  const std::string& segment = segments[next];
  const std::string place = json_pointer(parent, segment);
  if (const Json* items = member_of(what, "items")) {
    const Result<std::size_t> index = place_in(value, parent, segment);
    if (!index) return tl::unexpected(index.error());
    return at_place(root, *items, std::get<Json::Array>(value.value)[*index], place, segments, next + 1, here, put);
  }
  if (const Json* members = member_of(what, "prefixItems")) {
    const Result<std::size_t> index = place_in(value, parent, segment);
    if (!index) return tl::unexpected(index.error());
    return at_place(root, (*members->array())[*index], std::get<Json::Array>(value.value)[*index], place, segments,
                    next + 1, here, put);
  }
  const Json* properties = member_of(what, "properties");
  const Json* inner = properties ? member_of(*properties, segment) : nullptr;
  if (!inner) return unknown(parent, segment, properties);
  return at_place(root, *inner, member_for(value, segment), place, segments, next + 1, Place{nullptr, segment}, put);
}

std::optional<Dimension> dimension_of(std::string_view unit) {
  static constexpr std::pair<std::string_view, Dimension> dimensions[] = {
      {"m", Dimension::length},    {"rad", Dimension::angle},  {"grade", Dimension::grade},
      {"Pa", Dimension::pressure}, {"N", Dimension::force},    {"N/m3", Dimension::unit_weight},
      {"kg", Dimension::mass},     {"s", Dimension::duration}, {"Hz", Dimension::blow_rate},
      {"m3/s", Dimension::flow},   {"m3", Dimension::volume},  {"K", Dimension::temperature},
      {"1", Dimension::ratio}};
  for (const auto& [name, dimension] : dimensions)
    if (name == unit) return dimension;
  return std::nullopt;
}

/// SI. A bare number is in the unit of its key, as in the file.
Result<double> number_of(const std::string& text, const Json& schema) {
  double value = 0;
  const char* end = text.data() + text.size();
  if (const auto read = std::from_chars(text.data(), end, value); read.ec == std::errc() && read.ptr == end)
    if (std::isfinite(value)) return value;
  const bool bare = text.find_first_not_of("0123456789.,+-/ ") == std::string::npos;
  const Json* unit = member_of(schema, "unit");
  const std::optional<Dimension> dimension = dimension_of(unit ? std::string_view(*unit->text()) : "");
  if (bare) return parse(text, Dimension::ratio, UnitSystem::metric);
  if (dimension) return parse(text, *dimension, UnitSystem::metric);
  return fail("", "\"" + text + "\"", translatable("a number without a unit"));
}

Result<Json> json_of(const std::string& text, const Json& schema, EmptyText empty) {
  const Json& what = schema;
  if (text.empty()) {
    if (empty == EmptyText::not_known && may_be_null(schema)) return Json();
    if (empty == EmptyText::not_known && is_type(schema, "string") && !member_of(schema, "enum"))
      return Json(std::string());
    return fail("", translatable("nothing"),
                translatable("a value: it cannot be left unknown here, and no default is taken in its place"));
  }
  if (text == "null" && may_be_null(schema)) return Json();
  if (is_type(what, "string") || member_of(what, "const")) return Json(text);
  if (is_type(what, "boolean")) {
    if (text != "true" && text != "false") return fail("", "\"" + text + "\"", translatable("true or false"));
    return Json(text == "true");
  }
  const Json* choices = member_of(what, "anyOf");
  const bool number = is_type(what, "number") || is_type(what, "integer") ||
                      (choices && is_type(choices->array()->front(), "number") && text.front() != '{');
  if (!number) return parse_json(text);
  const Result<double> value = number_of(text, choices ? choices->array()->front() : what);
  if (!value) return tl::unexpected(value.error());
  return Json(*value);
}

/// Kinds of things, and members of others, that say what was found out, agreed or done at one place.
bool is_evidence(const Json& schema, std::string_view key, std::string_view of) {
  static constexpr std::string_view things[] = {"Statement", "AgreedGap", "StuckPlan",   "UtilitySearch",
                                                "TestHole",  "Located",   "LineEnds",    "PitSigns",
                                                "Mute",      "DayRecord", "LevelRecord", "Permit"};
  static constexpr std::pair<std::string_view, std::string_view> members[] = {{"SurfaceFeature", "permission"},
                                                                              {"SurfaceFeature", "permit"},
                                                                              {"Stratum", "known"},
                                                                              {"Pit", "soil_type"},
                                                                              {"Pit", "confirmed_by"},
                                                                              {"Pit", "open_time_s"},
                                                                              {"Site", "water"},
                                                                              {"SheetSettings", "checked_by"},
                                                                              {"SheetSettings", "date"},
                                                                              {"Crossing", "practice"}};
  const Json* items = member_of(schema, "items");
  const Json* reference = member_of(items ? *items : schema, "$ref");
  if (reference) {
    const std::string_view name = std::string_view(*reference->text()).substr(reference->text()->rfind('/') + 1);
    if (std::find(std::begin(things), std::end(things), name) != std::end(things)) return true;
  }
  return std::find(std::begin(members), std::end(members), std::pair(of, key)) != std::end(members);
}

std::string name_of(const Json& schema) {
  const Json* choices = member_of(schema, "anyOf");
  const Json* reference = member_of(choices ? choices->array()->front() : schema, "$ref");
  return reference ? reference->text()->substr(reference->text()->rfind('/') + 1) : std::string();
}

void leave_out(const Json& root, const Json& schema, const std::string& name, Json& value, const std::string& place,
               std::vector<std::string>& left_out) {
  const Json& what = resolved(root, schema);
  if (const Json* items = member_of(what, "items"); items && std::holds_alternative<Json::Array>(value.value)) {
    auto& list = std::get<Json::Array>(value.value);
    if (name_of(*items).empty()) return;
    for (std::size_t i = 0; i < list.size(); ++i)
      leave_out(root, *items, name_of(*items), list[i], json_pointer(place, i), left_out);
    return;
  }
  const Json* properties = member_of(what, "properties");
  if (!properties || !value.object()) return;
  auto& members = std::get<Json::Object>(value.value);
  std::erase_if(members, [&](JsonMember& member) {
    const Json* inner = member_of(*properties, member.key);
    if (!inner) return false;
    const std::string here = json_pointer(place, member.key);
    if (is_evidence(*inner, member.key, name)) {
      if (!member.value.is_null()) left_out.push_back(here);
      return true;
    }
    leave_out(root, *inner, name_of(*inner), member.value, here, left_out);
    return false;
  });
}

}  // namespace

Result<ChangedValues> ChangedValues::open(std::string_view crossing_text, const Tables& tables) {
  const Result<Crossing> crossing = read_crossing(crossing_text, tables);
  if (!crossing) return tl::unexpected(crossing.error());
  if (crossing->version > known_file_version)
    return fail("/version", std::to_string(crossing->version),
                translatable("a version that this program knows: it would write a newer one back as an older"));
  // As the program writes it, so that every thing of a list has its id.
  Result<Json> json = parse_json(write_crossing(*crossing));
  if (!json) return tl::unexpected(json.error());
  Result<Json> schema = parse_json(crossing_schema(tables));
  if (!schema) return tl::unexpected(schema.error());
  return ChangedValues(std::make_shared<Parts>(Parts{tables, std::move(*schema), std::move(*json)}));
}

Result<void> ChangedValues::check(std::string_view pointer) const {
  const Result<std::vector<std::string>> segments = segments_of(pointer);
  if (!segments) return tl::unexpected(segments.error());
  Json copy = parts_->crossing;
  return at_place(parts_->schema, parts_->schema, copy, "", *segments, 0, {},
                  [](const Place&, Json&) { return Result<void>(); });
}

std::vector<std::string> ChangedValues::leave_out_evidence() {
  std::vector<std::string> left_out;
  leave_out(parts_->schema, parts_->schema, "Crossing", parts_->crossing, "", left_out);
  return left_out;
}

Result<std::string> ChangedValues::with(const std::vector<NewValue>& values, EmptyText empty) const {
  Json crossing = parts_->crossing;
  for (const NewValue& one : values) {
    const Result<std::vector<std::string>> segments = segments_of(one.pointer);
    if (!segments) return tl::unexpected(segments.error());
    const Result<void> put = at_place(parts_->schema, parts_->schema, crossing, "", *segments, 0, {},
                                      [&](const Place& place, Json& value) -> Result<void> {
                                        Result<Json> json = json_of(one.text, *place.schema, empty);
                                        if (!json) {
                                          Error error = std::move(json).error();
                                          error.place = one.pointer;
                                          return tl::unexpected(std::move(error));
                                        }
                                        value = std::move(*json);
                                        return {};
                                      });
    if (!put) return tl::unexpected(put.error());
  }
  const Result<Crossing> read = read_crossing(compact_json(crossing), parts_->tables);
  if (!read) return tl::unexpected(read.error());
  return write_crossing(*read);
}

}  // namespace burrow

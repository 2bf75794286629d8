#pragma once
/// The io of `crossing_fields.h` that describes: what the reader takes, as JSON Schema (draft 2020-12). Each kind of
/// thing stands once under `$defs`; numbers carry their unit in `unit`, an annotation that validators pass over.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"
#include "crossing_fields.h"
#include "json_answers.h"
#include "json_tree.h"

namespace burrow {

std::string_view unit_of(const Length&);
std::string_view unit_of(const Angle&);
std::string_view unit_of(const Ratio&);
std::string_view unit_of(const Area&);
std::string_view unit_of(const Volume&);
std::string_view unit_of(const Pressure&);
std::string_view unit_of(const Force&);
std::string_view unit_of(const UnitWeight&);
std::string_view unit_of(const Mass&);
std::string_view unit_of(const Duration&);
std::string_view unit_of(const Frequency&);
std::string_view unit_of(const VolumeFlow&);
std::string_view unit_of(const Temperature&);
std::string_view unit_of(const RatePerLength&);
std::string_view unit_of(const RatePerArea&);
std::string_view unit_of(const Wander&);

class Describer {
 public:
  explicit Describer(const Tables& tables) : tables_(tables) {}

  /// The whole schema of T, with everything below it in `$defs`.
  template <class T>
  Json::Object describe_all() {
    Json::Object members = describe(T{});
    members.push_back({"$defs", Json(std::move(defs_))});
    return members;
  }

  template <class T>
  void field(std::string_view key, const T& value, const Range& range = range::any) {
    put(key, with_default(type_of(value, range), value));
  }
  template <class T>
  void field(std::string_view key, const Given<T>& value, const Range& range = range::any) {
    field(key, value.value, range);
  }
  template <class T>
  void field(std::string_view key, const std::optional<T>& /*value*/, const Range& range = range::any) {
    put(key, or_null(type_of(T{}, range)));
  }
  template <class T>
  void required(std::string_view key, const T& value, const Range& range = range::any) {
    required_.emplace_back(key);
    put(key, type_of(value, range));
  }

  void name(std::string_view key, const std::string& /*value*/, NameOf table) { put(key, names_of(table)); }
  void name(std::string_view key, const std::optional<std::string>& /*value*/, NameOf table) {
    put(key, or_null(names_of(table)));
  }
  void required_name(std::string_view key, const std::string& value, NameOf table) {
    required_.emplace_back(key);
    name(key, value, table);
  }

  template <class T>
  void object(std::string_view key, const T& item) {
    put(key, reference(item));
  }
  template <class T>
  void object(std::string_view key, const std::optional<T>& /*item*/) {
    put(key, any_of({reference(T{}), type("null")}));
  }
  template <class T>
  void required_object(std::string_view key, const T& item) {
    required_.emplace_back(key);
    object(key, item);
  }
  template <class T>
  void object_unless_empty(std::string_view key, const std::optional<T>& /*item*/) {
    Json::Object empty{{"type", Json("object")}, {"maxProperties", Json(std::int64_t{0})}};
    put(key, any_of({reference(T{}), type("null"), Json(std::move(empty))}));
  }

  template <class T>
  void list(std::string_view key, const std::vector<T>& /*items*/, std::size_t least = 0) {
    if (least > 0) required_.emplace_back(key);
    put(key, array_of(reference(T{}), least));
  }

  template <class P>
  void line(std::string_view key, const std::vector<P>& /*points*/) {
    put(key, line_of<P>());
  }
  void line(std::string_view key, const std::optional<LevelLine>& /*points*/) {
    put(key, any_of({line_of<LevelPoint>(), type("null")}));
  }
  void required_line(std::string_view key, const LevelLine& /*points*/) {
    required_.emplace_back(key);
    put(key, line_of<LevelPoint>());
  }
  void lines(std::string_view key, const std::vector<PlanLine>& /*lines*/) {
    put(key, array_of(line_of<PlanPoint>(), 0));
  }
  void origin(std::string_view key, const PlanPoint& point);
  void coordinate(const double& /*value*/, const Range& range) { tuple_.push_back(number_in(range, "m")); }
  void coordinate(const std::optional<double>& /*value*/, const Range& range) {
    tuple_.push_back(or_null(number_in(range, "m")));
  }

  void header(const Crossing& item);
  void texts(std::string_view key, const std::vector<std::string>& texts);
  void raw(std::string_view key, const std::string& json_text);
  void limits(std::string_view key, const std::map<std::string, LimitOverride>& limits);
  void id(const std::string& text, std::string_view prefix);
  void extra(const std::string& /*foreign keys are kept*/) {}
  void unknown_keys(const std::vector<UnknownKey>& /*found*/) {}

 private:
  void put(std::string_view key, Json json) { properties_.push_back({std::string(key), std::move(json)}); }

  static Json type(std::string_view name);
  static Json any_of(Json::Array choices);
  static Json or_null(Json schema);
  static Json array_of(Json items, std::size_t least);
  static Json number_in(const Range& range, std::string_view unit);
  static Json words_of(const std::vector<std::string_view>& words);
  [[nodiscard]] Json names_of(NameOf table) const;
  static Json tuple(Json::Array of);

  static Json type_of(double /*value*/, const Range& range) { return number_in(range, ""); }
  static Json type_of(std::int64_t value, const Range& range);
  static Json type_of(bool /*value*/, const Range& /*range*/) { return type("boolean"); }
  static Json type_of(const std::string& /*value*/, const Range& /*range*/) { return type("string"); }
  template <Quantity Q>
  static Json type_of(const Q& value, const Range& range) {
    return number_in(range, &range == &range::grade ? "grade" : unit_of(value));
  }
  template <Worded E>
  static Json type_of(E /*value*/, const Range& /*range*/) {
    std::vector<std::string_view> words;
    for (const auto& [value, word] : EnumNames<E>::list) words.push_back(word);
    return words_of(words);
  }

  static Json value_of(double value) { return Json(value); }
  static Json value_of(std::int64_t value) { return Json(value); }
  static Json value_of(bool value) { return Json(value); }
  static Json value_of(const std::string& value) { return Json(value); }
  template <Quantity Q>
  static Json value_of(const Q& value) {
    return Json(burrow::number_in(value));
  }
  template <Worded E>
  static Json value_of(E value) {
    return Json(word_of(value));
  }
  template <class T>
  static Json with_default(Json schema, const T& value) {
    if constexpr (std::is_same_v<T, std::string>)
      if (value.empty()) return schema;
    std::get<Json::Object>(schema.value).push_back({"default", value_of(value)});
    return schema;
  }

  template <class T>
  Json::Object describe(const T& item) {
    Json::Object properties;
    Json::Array required;
    std::swap(properties_, properties);
    std::swap(required_, required);
    fields(*this, item);
    std::swap(properties_, properties);
    std::swap(required_, required);
    Json::Object members{{"type", Json("object")}, {"properties", Json(std::move(properties))}};
    if (!required.empty()) members.push_back({"required", Json(std::move(required))});
    return members;
  }

  /// A thing by its name under `$defs`; one that stands there with other defaults than usual, in place.
  template <class T>
  Json reference(const T& item) {
    const std::string_view name = thing_name(item);
    Json own(describe(item));
    for (const JsonMember& known : defs_)
      if (known.key == name && compact_json(known.value) != compact_json(own)) return own;
    define(name, std::move(own));
    return burrow::object({{"$ref", Json("#/$defs/" + std::string(name))}});
  }
  void define(std::string_view name, Json schema);

  template <class P>
  Json line_of() {
    P point{};
    tuple_.clear();
    coordinates(*this, point);
    return array_of(tuple(std::move(tuple_)), std::is_same_v<P, LevelPoint> ? 1 : 0);
  }

  const Tables& tables_;
  Json::Object defs_;
  Json::Object properties_;
  Json::Array required_;
  Json::Array tuple_;
};

}  // namespace burrow

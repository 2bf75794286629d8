#pragma once
/// The io of `crossing_fields.h` that writes: builds the JSON tree in file order.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/crossing/crossing.h"
#include "crossing_fields.h"
#include "json_tree.h"

namespace burrow {

class Writer {
 public:
  template <class T>
  Json write(const T& item) {
    Json::Object members;
    std::swap(members_, members);
    fields(*this, item);
    std::swap(members_, members);
    return Json(std::move(members));
  }

  template <class T>
  void field(std::string_view key, const T& value, const Range& /*range*/ = range::any) {
    put(key, json_of(value));
  }
  /// An empty text says nothing: it is left out.
  void field(std::string_view key, const std::string& value) {
    if (!value.empty()) put(key, Json(value));
  }
  template <class T>
  void field(std::string_view key, const Given<T>& value, const Range& /*range*/ = range::any) {
    if (value.entered) put(key, json_of(value.value));
  }
  template <class T>
  void field(std::string_view key, const std::optional<T>& value, const Range& /*range*/ = range::any) {
    if (value) put(key, json_of(*value));
  }
  template <class T>
  void required(std::string_view key, const T& value, const Range& /*range*/ = range::any) {
    put(key, json_of(value));
  }

  void name(std::string_view key, const std::string& value, NameOf /*table*/) { field(key, value); }
  void name(std::string_view key, const std::optional<std::string>& value, NameOf /*table*/) {
    if (value) field(key, *value);
  }
  void required_name(std::string_view key, const std::string& value, NameOf /*table*/) { put(key, Json(value)); }

  template <class T>
  void object(std::string_view key, const T& item) {
    Json json = write(item);
    if (!json.object()->empty()) put(key, std::move(json));
  }
  template <class T>
  void object(std::string_view key, const std::optional<T>& item) {
    if (item) put(key, write(*item));
  }
  template <class T>
  void required_object(std::string_view key, const T& item) {
    put(key, write(item));
  }
  template <class T>
  void object_unless_empty(std::string_view key, const std::optional<T>& item) {
    object(key, item);
  }

  template <class T>
  void list(std::string_view key, const std::vector<T>& items, std::size_t /*least*/ = 0) {
    Json::Array written;
    for (const T& item : items) written.push_back(write(item));
    if (!written.empty()) put(key, Json(std::move(written)));
  }

  template <class P>
  void line(std::string_view key, const std::vector<P>& points) {
    if (!points.empty()) put(key, json_of_points(points));
  }
  /// No line means "not known" or "the ground line": null, so that a reader of the file sees it.
  void line(std::string_view key, const std::optional<LevelLine>& points) {
    put(key, points ? json_of_points(*points) : Json());
  }
  void required_line(std::string_view key, const LevelLine& points) { put(key, json_of_points(points)); }
  void lines(std::string_view key, const std::vector<PlanLine>& lines);
  void origin(std::string_view key, const PlanPoint& point) { put(key, json_of_point(point)); }
  void coordinate(double value, const Range& /*range*/) { tuple_.emplace_back(value); }
  void coordinate(const std::optional<double>& value, const Range& /*range*/) {
    tuple_.push_back(value ? Json(*value) : Json());
  }

  void header(const Crossing& item);
  void texts(std::string_view key, const std::vector<std::string>& texts);
  void raw(std::string_view key, const std::string& json_text);
  void limits(std::string_view key, const std::map<std::string, LimitOverride>& limits);
  void id(const std::string& text, std::string_view /*prefix*/) { field("id", text); }
  /// Puts back the keys that this program does not know.
  void extra(const std::string& json_text);
  void unknown_keys(const std::vector<UnknownKey>& /*found*/) {}

 private:
  void put(std::string_view key, Json json) { members_.push_back({std::string(key), std::move(json)}); }

  static Json json_of(double value) { return Json(value); }
  static Json json_of(std::int64_t value) { return Json(value); }
  static Json json_of(bool value) { return Json(value); }
  static Json json_of(const std::string& value) { return Json(value); }
  template <Quantity Q>
  static Json json_of(const Q& value) {
    return Json(number_in(value));
  }
  template <Worded E>
  static Json json_of(E value) {
    return Json(word_of(value));
  }

  template <class P>
  Json json_of_point(const P& point) {
    tuple_.clear();
    coordinates(*this, point);
    return Json(std::move(tuple_));
  }
  template <class P>
  Json json_of_points(const std::vector<P>& points) {
    Json::Array items;
    items.reserve(points.size());
    for (const P& point : points) items.push_back(json_of_point(point));
    return Json(std::move(items));
  }

  Json::Object members_;
  Json::Array tuple_;
};

}  // namespace burrow

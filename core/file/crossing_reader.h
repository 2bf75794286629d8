#pragma once
/// The io of `crossing_fields.h` that reads. It remembers the first thing that is wrong and does nothing after it, so
/// the descriptions need no branches.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"
#include "crossing_fields.h"
#include "json_tree.h"

namespace burrow {

class Reader {
 public:
  explicit Reader(const Tables& tables) : tables_(tables) {}
  [[nodiscard]] const Tables& tables() const { return tables_; }

  /// Reads `json` into `item`. The reader keeps addresses of ids inside it until `settle_ids`.
  template <class T>
  void read(const Json& json, T& item) {
    read_object(json, item);
  }
  /// Gives the absent ids in file order and refuses an id twice.
  void settle_ids();
  void refuse(std::string place, Phrase found, Phrase expected);
  [[nodiscard]] const std::optional<Error>& error() const { return error_; }

  template <class T>
  void field(std::string_view key, T& target, const Range& range = range::any) {
    if (const Json* json = find(key)) at(key, [&] { take(*json, target, range); });
  }
  template <class T>
  void field(std::string_view key, Given<T>& target, const Range& range = range::any) {
    if (const Json* json = find(key)) {
      at(key, [&] { take(*json, target.value, range); });
      target.entered = true;
    }
  }
  template <class T>
  void field(std::string_view key, std::optional<T>& target, const Range& range = range::any) {
    const Json* json = find(key);
    if (json && !json->is_null()) at(key, [&] { take(*json, target.emplace(), range); });
  }
  template <class T>
  void required(std::string_view key, T& target, const Range& range = range::any) {
    if (must_find(key, range.words)) field(key, target, range);
  }

  void name(std::string_view key, std::string& target, NameOf table);
  void name(std::string_view key, std::optional<std::string>& target, NameOf table);
  void required_name(std::string_view key, std::string& target, NameOf table);

  template <class T>
  void object(std::string_view key, T& target) {
    if (const Json* json = find(key)) at(key, [&] { read_object(*json, target); });
  }
  template <class T>
  void object(std::string_view key, std::optional<T>& target) {
    const Json* json = find(key);
    if (json && !json->is_null()) at(key, [&] { read_object(*json, target.emplace()); });
  }
  template <class T>
  void required_object(std::string_view key, T& target) {
    if (must_find(key, "an object")) object(key, target);
  }
  /// As `object`, but {} means the same as absent.
  template <class T>
  void object_unless_empty(std::string_view key, std::optional<T>& target) {
    const Json* json = find(key);
    const Json::Object* members = json ? json->object() : nullptr;
    if (!members || !members->empty()) object(key, target);
  }

  template <class T>
  void list(std::string_view key, std::vector<T>& target, std::size_t least = 0) {
    if (least > 0 && !must_find(key, "a list of at least one")) return;
    const Json* json = find(key);
    if (json)
      at(key, [&] { read_list(*json, target, least, [this](const Json& one, T& item) { read_object(one, item); }); });
  }

  template <class P>
  void line(std::string_view key, std::vector<P>& target) {
    if (const Json* json = find(key)) at(key, [&] { take_points(*json, target); });
  }
  void line(std::string_view key, std::optional<LevelLine>& target) {
    const Json* json = find(key);
    if (json && !json->is_null()) at(key, [&] { take_points(*json, target.emplace()); });
  }
  void required_line(std::string_view key, LevelLine& target) {
    if (must_find(key, "a list of points [station, elevation]")) line(key, target);
  }
  void lines(std::string_view key, std::vector<PlanLine>& target);
  /// A point of a foreign frame, any size.
  void origin(std::string_view key, PlanPoint& target);

  void coordinate(double& target, const Range& range);
  void coordinate(std::optional<double>& target, const Range& range);

  void header(Crossing& item);
  void texts(std::string_view key, std::vector<std::string>& target);
  void raw(std::string_view key, std::string& target);
  void limits(std::string_view key, std::map<std::string, LimitOverride>& target);
  void id(std::string& target, std::string_view prefix);
  void extra(std::string& target);
  void unknown_keys(std::vector<UnknownKey>& target) { target = unknown_keys_; }

 private:
  struct Frame {
    const Json::Object* members = nullptr;
    std::vector<bool> used;
    std::vector<std::string_view> asked{};  ///< keys that the description knows
  };
  struct Id {
    std::string* text;
    std::string_view prefix;
    std::string place;
  };

  const Json* find(std::string_view key);
  bool must_find(std::string_view key, std::string_view expected);

  template <class Body>
  void at(std::string_view key, Body body) {
    step(json_pointer(place_, key), body);
  }
  template <class Body>
  void step(std::string place, Body body) {
    if (error_) return;
    std::swap(place_, place);
    body();
    std::swap(place_, place);
  }

  template <class T>
  void read_object(const Json& json, T& item) {
    if (!json.object()) return refuse_here(json, "an object");
    Frame frame{json.object(), std::vector<bool>(json.object()->size())};
    std::swap(frame_, frame);
    fields(*this, item);
    std::swap(frame_, frame);
  }

  template <class T, class One>
  void read_list(const Json& json, std::vector<T>& target, std::size_t least, One one) {
    const Json::Array* items = json.array();
    if (!items) return refuse_here(json, "a list");
    if (items->size() < least) return refuse_here(json, "a list of at least one");
    target.resize(items->size());  // first, so that addresses of ids hold
    for (std::size_t i = 0; i < items->size() && !error_; ++i)
      step(json_pointer(place_, i), [&] { one((*items)[i], target[i]); });
  }

  template <class P>
  void take_points(const Json& json, std::vector<P>& target) {
    read_list(json, target, 0, [this](const Json& item, P& point) { take_point(item, point); });
    if constexpr (std::is_same_v<P, LevelPoint>) check_level_line(json, target);
  }
  template <class P>
  void take_point(const Json& json, P& point) {
    constexpr std::size_t arity = std::is_same_v<P, LevelPoint> || std::is_same_v<P, PlanPoint> ? 2 : 3;
    if (!json.array() || json.array()->size() != arity)
      return refuse_here(json, arity == 2 ? "a point of two numbers" : "a point of three numbers");
    tuple_ = json.array();
    next_ = 0;
    coordinates(*this, point);
  }
  void check_level_line(const Json& json, const LevelLine& line);

  void take(const Json& json, double& target, const Range& range);
  void take(const Json& json, std::int64_t& target, const Range& range);
  void take(const Json& json, bool& target, const Range& range);
  void take(const Json& json, std::string& target, const Range& range);
  template <Quantity Q>
  void take(const Json& json, Q& target, const Range& range) {
    take(json, number_in(target), range);
  }
  template <Worded E>
  void take(const Json& json, E& target, const Range& /*range*/) {
    const std::optional<E> known = json.text() ? from_word<E>(*json.text()) : std::nullopt;
    if (!known) return refuse_here(json, "one of: " + known_words<E>());
    target = *known;
  }
  void take_limit(const Json& json, LimitOverride& target, const Range& range);
  [[nodiscard]] bool is_known(NameOf table, const std::string& name) const;
  [[nodiscard]] std::string known_names(NameOf table) const;
  void refuse_here(const Json& found, Phrase expected) { refuse(place_, shown_json(found), std::move(expected)); }

  const Tables& tables_;
  std::optional<Error> error_;
  std::string place_;  ///< JSON pointer of what is being read
  Frame frame_;
  const Json::Array* tuple_ = nullptr;
  std::size_t next_ = 0;
  std::vector<Id> ids_;
  std::vector<UnknownKey> unknown_keys_;
  bool newer_ = false;  ///< the file is newer than this program
};

}  // namespace burrow

#pragma once
/// A JSON text as a tree that keeps the order of members and the digits of numbers, so that what this program does not
/// know is written back as it was.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct JsonMember;

struct Json {
  struct Number {
    std::string token;  ///< as it stood: "1.10"; empty: made by this program, printed from the value
    double value = 0;
  };
  /// Printed already: a long list of numbers, for which a tree would be the dearer half of an answer.
  struct Printed {
    std::string text;
  };
  using Array = std::vector<Json>;
  using Object = std::vector<JsonMember>;

  std::variant<std::monostate, bool, Number, std::string, Array, Object, Printed> value;

  Json();  ///< null
  explicit Json(bool b);
  explicit Json(double number);  ///< null when not finite
  explicit Json(std::int64_t number);
  explicit Json(std::string text);
  explicit Json(std::string_view text);
  explicit Json(const char* text);
  explicit Json(Array items);
  explicit Json(Object members);
  explicit Json(Printed printed);

  [[nodiscard]] bool is_null() const { return std::holds_alternative<std::monostate>(value); }
  [[nodiscard]] const bool* boolean() const { return std::get_if<bool>(&value); }
  [[nodiscard]] const Number* number() const { return std::get_if<Number>(&value); }
  [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&value); }
  [[nodiscard]] const Array* array() const { return std::get_if<Array>(&value); }
  [[nodiscard]] const Object* object() const { return std::get_if<Object>(&value); }
};

struct JsonMember {
  std::string key;
  Json value;
};

// Here, where a member is a complete type.
inline Json::Json() = default;
inline Json::Json(bool b) : value(b) {}
inline Json::Json(std::string text) : value(std::move(text)) {}
inline Json::Json(std::string_view text) : value(std::string(text)) {}
inline Json::Json(const char* text) : value(std::string(text)) {}
inline Json::Json(Array items) : value(std::move(items)) {}
inline Json::Json(Object members) : value(std::move(members)) {}
inline Json::Json(Printed printed) : value(std::move(printed)) {}

inline constexpr std::size_t max_json_bytes = 64'000'000;
inline constexpr std::size_t max_json_depth = 64;
inline constexpr std::size_t max_json_values = 4'000'000;

/// RFC 8259 to the letter, independent of the locale; a leading byte order mark is allowed.
/// Errors: `place` is the JSON pointer of the innermost value reached. Invalid UTF-8, a key twice, a number that is not
/// finite, bad syntax with its line and column, anything after the value, more than 64 levels, more than 64 MB.
/// Evidence: Refusals.Text_*, Refusals.Nesting_*, CrossingFile.UnknownNumbers_*
Result<Json> parse_json(std::string_view text);

/// A list of objects of numbers, printed as it is made: `begin`, then `number` for each member, `end`; `take` at last.
/// The same text as `compact_json` of the tree would give.   Evidence: JsonTree.PrintedList_*
class PrintedList {
 public:
  void begin();
  void number(std::string_view key, double value);  ///< null when not finite
  void member(std::string_view key, const Json& value);
  void end() { text_ += '}'; }
  Json take();

 private:
  void key(std::string_view key);
  std::string text_;
};

/// On one line without spaces.
std::string compact_json(const Json& json);
/// Indented by two; what is short and flat (a point, a line of points, a small object) stays on one line.
std::string pretty_json(const Json& json);
/// For an error message: on one line, cut after 60 characters.
std::string shown_json(const Json& json);

/// "/site/utilities" + "a/b" = "/site/utilities/a~1b".
std::string json_pointer(std::string_view parent, std::string_view key);
std::string json_pointer(std::string_view parent, std::size_t index);

}  // namespace burrow

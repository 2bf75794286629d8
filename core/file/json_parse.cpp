#include <locale.h>
#include <algorithm>
#include <charconv>
#include <clocale>
#include <nlohmann/json.hpp>
#include <unordered_set>

#include "json_tree.h"

namespace burrow {

namespace {

/// The library scans numbers by the C locale of the thread: hold it at "C" while it runs, whatever the program set.
class PlainNumbers {
 public:
  PlainNumbers() : plain_(newlocale(LC_ALL_MASK, "C", nullptr)), before_(plain_ ? uselocale(plain_) : nullptr) {}
  ~PlainNumbers() {
    if (!plain_) return;
    uselocale(before_);
    freelocale(plain_);
  }
  PlainNumbers(const PlainNumbers&) = delete;
  PlainNumbers& operator=(const PlainNumbers&) = delete;

 private:
  locale_t plain_;
  locale_t before_;
};

std::string line_and_column(std::string_view text, std::size_t byte) {
  const std::string_view before = text.substr(0, std::min(byte, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t start = before.rfind('\n');
  const std::size_t column = start == std::string_view::npos ? before.size() : before.size() - start - 1;
  return "line " + std::to_string(line) + ", column " + std::to_string(std::max<std::size_t>(column, 1));
}

/// What the library says after "syntax error while parsing … - ": the reason, then "; expected …" or "; last read …".
Error syntax_error(std::string place, std::string_view message, const std::string& where) {
  const std::size_t dash = message.find(" - ");
  std::string_view reason = dash == std::string_view::npos ? message : message.substr(dash + 3);
  std::string expected = "JSON as in RFC 8259";
  if (const std::size_t at = reason.rfind("; expected "); at != std::string_view::npos)
    expected = std::string(reason.substr(at + 11));
  if (reason.find("UTF-8") != std::string_view::npos) expected = "valid UTF-8";
  reason = reason.substr(0, reason.find("; "));
  return {std::move(place), std::string(reason) + " at " + where, std::move(expected)};
}

/// Builds the tree from the events of the library's parser, which keeps no stack of its own calls.
class TreeBuilder {
 public:
  explicit TreeBuilder(std::string_view text) : text_(text) {}

  Json root;
  std::optional<Error> error;

  bool null() { return put(Json()); }
  bool boolean(bool value) { return put(Json(value)); }
  bool number_integer(std::int64_t value) { return put(Json(value)); }
  bool number_unsigned(std::uint64_t value) { return put_number(std::to_string(value), static_cast<double>(value)); }
  bool number_float(double /*by_strtod*/, const std::string& token) {
    double value = 0;  // stays 0 when the number is too small for a double
    std::from_chars(token.data(), token.data() + token.size(), value);
    return put_number(token, value);
  }
  bool string(std::string& text) { return put(Json(std::move(text))); }
  bool binary(nlohmann::json::binary_t& /*bytes*/) { return false; }
  bool start_object(std::size_t /*size*/) { return open(Json(Json::Object())); }
  bool start_array(std::size_t /*size*/) { return open(Json(Json::Array())); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool key(std::string& key) {
    Frame& frame = open_.back();
    if (key_is_there(frame, key))
      return refuse(json_pointer(pointer(open_.size()), key), "the key \"" + key + "\" twice", "each key once");
    frame.key = key;
    frame.key_pending = true;
    return true;
  }

  bool parse_error(std::size_t byte, const std::string& token, const nlohmann::json::exception& problem) {
    if (problem.id == 406) return refuse(next_pointer(), token, "a finite number");
    std::string place = pointer(open_.size());
    if (!open_.empty() && open_.back().key_pending) place = json_pointer(place, open_.back().key);
    error = syntax_error(std::move(place), problem.what(), line_and_column(text_, byte));
    return false;
  }

 private:
  struct Frame {
    Json* value;
    std::string key;  ///< of the member being read
    bool key_pending = false;
    std::unordered_set<std::string> keys;
  };

  /// Of few keys each is looked at; more than that are kept apart, so that a hostile file is read in no longer time.
  static bool key_is_there(Frame& frame, const std::string& key) {
    constexpr std::size_t few = 24;
    const Json::Object& members = *frame.value->object();
    if (members.size() < few)
      return std::any_of(members.begin(), members.end(), [&](const JsonMember& one) { return one.key == key; });
    if (frame.keys.empty())
      for (const JsonMember& one : members) frame.keys.insert(one.key);
    return !frame.keys.insert(key).second;
  }

  bool refuse(std::string place, std::string found, std::string expected) {
    error = Error{std::move(place), std::move(found), std::move(expected)};
    return false;
  }

  /// Pointer of the innermost of the first `depth` open containers.
  std::string pointer(std::size_t depth) const {
    std::string place;
    for (std::size_t i = 1; i < depth; ++i) {
      const Frame& outer = open_[i - 1];
      const Json::Array* items = outer.value->array();
      place = items ? json_pointer(place, items->size() - 1) : json_pointer(place, outer.key);
    }
    return place;
  }
  std::string next_pointer() const {
    if (open_.empty()) return "";
    const Json::Array* items = open_.back().value->array();
    const std::string place = pointer(open_.size());
    return items ? json_pointer(place, items->size()) : json_pointer(place, open_.back().key);
  }

  bool put_number(std::string token, double value) {
    Json json;
    json.value = Json::Number{std::move(token), value};
    return put(std::move(json));
  }
  bool put(Json json) { return place_value(std::move(json)) != nullptr; }

  Json* place_value(Json json) {
    if (++values_ > max_json_values) {
      refuse(next_pointer(), "more than 4,000,000 values", "at most 4,000,000 values in a file");
      return nullptr;
    }
    if (open_.empty()) return &(root = std::move(json));
    Frame& frame = open_.back();
    frame.key_pending = false;
    if (auto* items = std::get_if<Json::Array>(&frame.value->value)) return &items->emplace_back(std::move(json));
    return &std::get<Json::Object>(frame.value->value).emplace_back(JsonMember{frame.key, std::move(json)}).value;
  }

  bool open(Json json) {
    if (open_.size() >= max_json_depth)
      return refuse(next_pointer(), "more than 64 levels of nesting", "at most 64 levels");
    Json* placed = place_value(std::move(json));
    if (!placed) return false;
    open_.push_back(Frame{placed, {}, false, {}});
    return true;
  }
  bool close() {
    open_.pop_back();
    return true;
  }

  std::string_view text_;
  std::vector<Frame> open_;  // an open container is the last element of its parent, so its address holds
  std::size_t values_ = 0;
};

}  // namespace

Result<Json> parse_json(std::string_view text) {
  if (text.size() > max_json_bytes)
    return fail("", std::to_string(text.size()) + " bytes", "at most 64 MB (64,000,000 bytes)");
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return fail("", "an empty file", "a JSON object");
  const PlainNumbers plain_numbers;
  TreeBuilder builder(text);
  try {
    nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
  } catch (const std::exception& problem) {  // the library's edge: out of memory, or its own checks
    return fail("", problem.what(), "JSON as in RFC 8259");
  }
  if (builder.error) return tl::unexpected<Error>(std::move(*builder.error));
  return std::move(builder.root);
}

}  // namespace burrow

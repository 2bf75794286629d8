#include "table_row.h"

#include "burrow/language/say.h"

#include <fmt/format.h>

namespace burrow::table_file {

using nlohmann::json;

std::string shown(const json& value) {
  constexpr std::size_t longest = 60;
  std::string text = value.dump(-1, ' ', false, json::error_handler_t::replace);
  if (text.size() <= longest) return text;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u) --end;  // not inside a character
  return text.substr(0, end) + "…";
}

Result<json> parse_table(const std::string& text, const std::string& place) {
  std::vector<std::set<std::string>> keys;
  std::string twice;
  const auto watch = [&](int, json::parse_event_t event, json& parsed) {
    if (event == json::parse_event_t::object_start) keys.emplace_back();
    if (event == json::parse_event_t::object_end) keys.pop_back();
    if (event == json::parse_event_t::key && !keys.back().insert(parsed.get<std::string>()).second && twice.empty())
      twice = parsed.get<std::string>();
    return true;
  };
  try {
    json rows = json::parse(text, watch);
    if (!twice.empty()) return fail(place, "the key \"" + twice + "\" twice in one object", "each key once");
    if (!rows.is_array()) return fail(place, shown(rows), "a list of rows");
    return rows;
  } catch (const json::exception& error) {
    return fail(place, error.what(), "JSON in UTF-8");
  }
}

Row::Row(const json& object, std::string pointer) : object_(object), pointer_(std::move(pointer)) {
  if (!object.is_object()) wrong(Error{pointer_, shown(object), "an object"});
}

void Row::wrong(Error error) {
  if (!error_) error_ = std::move(error);
}

void Row::wrong(const std::string& key, std::string found, std::string expected) {
  wrong(Error{pointer_ + "/" + key, std::move(found), std::move(expected)});
}

const json* Row::member(const char* key, bool required) {
  asked_.insert(key);
  if (!object_.is_object()) return nullptr;
  const auto it = object_.find(key);
  if (it != object_.end() && (required || !it->is_null())) return &*it;
  if (required) wrong(key, "nothing", "a value");
  return nullptr;
}

std::optional<double> Row::number_or_null(const char* key, double least, double most) {
  const json* value = member(key, false);
  if (!value) return std::nullopt;
  const double number = value->is_number() ? value->get<double>() : std::nan("");
  if (number >= least && number <= most) return number;
  wrong(key, shown(*value), fmt::format("a number from {} to {}, or null", least, most));
  return std::nullopt;
}

double Row::number(const char* key, double least, double most) {
  const json* value = member(key, true);
  if (!value) return 0;
  const double number = value->is_number() ? value->get<double>() : std::nan("");
  if (number >= least && number <= most) return number;
  wrong(key, shown(*value), fmt::format("a number from {} to {}", least, most));
  return 0;
}

bool Row::flag(const char* key) {
  const json* value = member(key, true);
  if (!value) return false;
  if (!value->is_boolean()) wrong(key, shown(*value), "true or false");
  return value->is_boolean() && value->get<bool>();
}

bool Row::flag_or_no(const char* key) {
  return member(key, false) && flag(key);
}

std::string Row::text(const char* key) {
  const json* value = member(key, true);
  if (!value) return {};
  std::string text = value->is_string() ? value->get<std::string>() : std::string();
  if (text.empty()) wrong(key, shown(*value), "a text that is not empty");
  return text;
}

std::string Row::unit(const char* key) {
  const json* value = member(key, true);
  if (!value) return {};
  for (const char* known : {"m", "m/s", "m3", "Pa", "K", ""})
    if (*value == known) return value->get<std::string>();
  wrong(key, shown(*value), "\"m\", \"m/s\", \"m3\", \"Pa\", \"K\", or \"\" for a ratio");
  return {};
}

std::string Row::colour(const char* key) {
  std::string value = text(key);
  const bool good =
      value.size() == 7 && value[0] == '#' && value.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string::npos;
  if (!good) wrong(key, "\"" + value + "\"", "a colour like \"#1464c8\"");
  return value;
}

const json& Row::list(const char* key) {
  static const json none = json::array();
  const json* value = member(key, true);
  if (!value) return none;
  if (value->is_array()) return *value;
  wrong(key, shown(*value), "a list");
  return none;
}

const json& Row::list_or_nothing(const char* key) {
  static const json none = json::array();
  return member(key, false) ? list(key) : none;
}

std::string Row::text_or_nothing(const char* key) {
  return member(key, false) ? text(key) : std::string();
}

std::vector<double> Row::numbers(const char* key, double least, double most) {
  std::vector<double> all;
  for (const json& value : list(key)) {
    const double number = value.is_number() ? value.get<double>() : std::nan("");
    if (!(number >= least && number <= most))
      wrong(key + ("/" + std::to_string(all.size())), shown(value), fmt::format("a number from {} to {}", least, most));
    all.push_back(number);
  }
  return all;
}

std::vector<std::string> Row::texts_or_nothing(const char* key) {
  std::vector<std::string> all;
  for (const json& value : list_or_nothing(key)) {
    const std::string text = value.is_string() ? value.get<std::string>() : std::string();
    if (text.empty()) wrong(key + ("/" + std::to_string(all.size())), shown(value), "a text");
    all.push_back(text);
  }
  return all;
}

Source Row::source() {
  const std::string label_text = text("source_label");
  const auto label = source_label_from_words(label_text);
  if (!label) {
    std::string known;
    for (const SourceLabel each : all_source_labels) known += (known.empty() ? "" : ", ") + std::string(word_of(each));
    wrong("source_label", "\"" + label_text + "\"", "one of: " + known);
  }
  return {phrase("source"), label.value_or(SourceLabel::our_default)};
}

std::optional<Error> Row::finish() {
  if (error_ || !object_.is_object()) return error_;
  for (const auto& [key, value] : object_.items()) {
    if (asked_.contains(key)) continue;
    std::string known;
    for (const std::string& each : asked_) known += (known.empty() ? "" : ", ") + each;
    wrong(key, shown(value), "no such member; the known are: " + known);
    break;
  }
  return error_;
}

}  // namespace burrow::table_file

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "json_tree.h"

namespace burrow {

namespace {

constexpr std::size_t line_width = 120;

/// Length of the UTF-8 character that starts at `at`; 0: none does (RFC 3629: no overlong forms, no surrogates).
std::size_t utf8_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U; };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned first = byte(0);
  const unsigned second = byte(1);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const bool allowed = (first != 0xE0 || second >= 0xA0) && (first != 0xED || second <= 0x9F);
    return allowed && follows(1) && follows(2) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const bool allowed = (first != 0xF0 || second >= 0x90) && (first != 0xF4 || second <= 0x8F);
    return allowed && follows(1) && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

void put_ascii(std::string& out, char c) {
  static constexpr std::string_view hex = "0123456789abcdef";
  const auto byte = static_cast<unsigned char>(c);
  if (c == '"' || c == '\\') {
    out += '\\';
    out += c;
  } else if (c == '\n') {
    out += "\\n";
  } else if (c == '\t') {
    out += "\\t";
  } else if (byte < 0x20 || byte == 0x7f) {
    out += "\\u00";
    out += hex[byte >> 4U];
    out += hex[byte & 15U];
  } else {
    out += c;
  }
}

bool is_plain(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x20 && byte < 0x7f && c != '"' && c != '\\';
}

/// What is not UTF-8 (a file name may hold any bytes) becomes the replacement character, so that the text is JSON.
void put_text(std::string& out, std::string_view text) {
  out += '"';
  // Most of it is plain: that much is taken at once.
  const auto plain = static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), is_plain) - text.begin());
  out += text.substr(0, plain);
  for (std::size_t at = plain; at < text.size();) {
    const std::size_t length = utf8_length(text, at);
    if (length == 1)
      put_ascii(out, text[at]);
    else
      out += length == 0 ? "\xEF\xBF\xBD" : text.substr(at, length);
    at += length == 0 ? 1 : length;
  }
  out += '"';
}

/// The shortest text that reads back as the same number.
void put_number(std::string& out, double value) {
  std::array<char, 32> digits{};
  out.append(digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), value == 0 ? 0.0 : value).ptr);
}

/// Compact text; stops early once `out` is longer than `enough`.
void put_compact(std::string& out, const Json& json, std::size_t enough) {
  if (out.size() > enough) return;
  if (json.is_null()) {
    out += "null";
  } else if (const bool* b = json.boolean()) {
    out += *b ? "true" : "false";
  } else if (const Json::Number* number = json.number()) {
    if (number->token.empty())
      put_number(out, number->value);
    else
      out += number->token;
  } else if (const auto* printed = std::get_if<Json::Printed>(&json.value)) {
    out += printed->text;
  } else if (const std::string* text = json.text()) {
    put_text(out, *text);
  } else if (const Json::Array* items = json.array()) {
    char before = '[';
    for (const Json& item : *items) {
      if (out.size() > enough) return;
      out += before;
      put_compact(out, item, enough);
      before = ',';
    }
    out += items->empty() ? "[]" : "]";
  } else {
    char before = '{';
    for (const JsonMember& member : *json.object()) {
      if (out.size() > enough) return;
      out += before;
      put_text(out, member.key);
      out += ':';
      put_compact(out, member.value, enough);
      before = ',';
    }
    out += json.object()->empty() ? "{}" : "}";
  }
}

bool holds_object(const Json& json) {
  if (json.object()) return true;
  if (const Json::Array* items = json.array())
    for (const Json& item : *items)
      if (holds_object(item)) return true;
  return false;
}

/// Flat: an array without objects, or an object without objects and without lists of lists.
bool is_flat(const Json& json) {
  const Json::Object* members = json.object();
  if (!members) return !holds_object(json);
  for (const JsonMember& member : *members)
    if (holds_object(member.value)) return false;
  return true;
}

void put_pretty(std::string& out, const Json& json, std::size_t indent, std::size_t column);

void put_broken(std::string& out, const Json& json, std::size_t indent) {
  const std::string margin(indent + 2, ' ');
  const bool is_object = json.object() != nullptr;
  out += is_object ? '{' : '[';
  const std::size_t count = is_object ? json.object()->size() : json.array()->size();
  for (std::size_t i = 0; i < count; ++i) {
    out += i == 0 ? "\n" : ",\n";
    const std::size_t start = out.size();
    out += margin;
    if (is_object) {
      put_text(out, (*json.object())[i].key);
      out += ": ";
    }
    put_pretty(out, is_object ? (*json.object())[i].value : (*json.array())[i], indent + 2, out.size() - start);
  }
  out += '\n' + std::string(indent, ' ') + (is_object ? '}' : ']');
}

void put_pretty(std::string& out, const Json& json, std::size_t indent, std::size_t column) {
  const bool container = json.array() || json.object();
  std::string line;
  put_compact(line, json, container ? line_width : std::string::npos);
  const bool fits = line.size() + column < line_width && is_flat(json);
  if (!container || fits || line == "[]" || line == "{}")
    out += line;
  else
    put_broken(out, json, indent);
}

}  // namespace

Json::Json(double number) {
  if (std::isfinite(number)) value = Number{{}, number};
}

Json::Json(std::int64_t number) : value(Number{std::to_string(number), static_cast<double>(number)}) {}

void PrintedList::begin() {
  text_ += text_.empty() ? "[{" : ",{";
}

void PrintedList::key(std::string_view key) {
  if (text_.back() != '{') text_ += ',';
  put_text(text_, key);
  text_ += ':';
}

void PrintedList::number(std::string_view key, double value) {
  this->key(key);
  if (std::isfinite(value))
    put_number(text_, value);
  else
    text_ += "null";
}

void PrintedList::member(std::string_view key, const Json& value) {
  this->key(key);
  put_compact(text_, value, std::string::npos);
}

Json PrintedList::take() {
  text_ += text_.empty() ? "[]" : "]";
  return Json(Json::Printed{std::move(text_)});
}

std::string compact_json(const Json& json) {
  std::string out;
  put_compact(out, json, std::string::npos);
  return out;
}

std::string pretty_json(const Json& json) {
  std::string out;
  put_pretty(out, json, 0, line_width);
  return out + '\n';
}

std::string shown_json(const Json& json) {
  constexpr std::size_t longest = 60;
  std::string out;
  put_compact(out, json, longest);
  if (out.size() <= longest) return out;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0U) == 0x80U) --end;  // not inside a UTF-8 sequence
  return out.substr(0, end) + "…";
}

std::string json_pointer(std::string_view parent, std::string_view key) {
  std::string place(parent);
  place += '/';
  for (const char c : key) {
    if (c == '~')
      place += "~0";
    else if (c == '/')
      place += "~1";
    else
      place += c;
  }
  return place;
}

std::string json_pointer(std::string_view parent, std::size_t index) {
  return std::string(parent) + '/' + std::to_string(index);
}

}  // namespace burrow

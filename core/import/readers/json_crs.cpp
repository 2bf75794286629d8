#include "json_crs.h"

#include <cpl_vsi.h>

#include <array>
#include <nlohmann/json.hpp>

#include "../csv_fields.h"
#include "project.h"

namespace burrow {

namespace {

using nlohmann::json;

std::optional<std::string> file_named_in(const json& value) {
  if (value.is_string() && frames::names_file(value.get<std::string>())) return value.get<std::string>();
  if (value.is_structured())
    for (const json& member : value)
      if (auto named = file_named_in(member)) return named;
  return std::nullopt;
}

/// Reads the text of a file sign by sign; what belongs to a "crs" object is kept.
class Scanner {
 public:
  /// True: a "crs" object has just ended; it is `kept`.
  bool take(char c) {
    if (depth_ > 0) kept += c;
    if (in_text_) {
      in_text_ = escaped_ || c != '"';
      escaped_ = !escaped_ && c == '\\';
      if (in_text_ && text_.size() < longest_key) text_ += c;
      return false;
    }
    if (c == '"') {
      in_text_ = true;
      text_.clear();
    } else if (depth_ > 0) {
      depth_ += c == '{' ? 1 : c == '}' ? -1 : 0;
      return depth_ == 0;
    } else if (c == ':') {
      is_crs_ = says_crs();
    } else if (c == '{' && is_crs_) {
      depth_ = 1;
      kept = c;
    } else if (std::string_view(" \t\r\n").find(c) == std::string_view::npos) {
      is_crs_ = false;
    }
    return false;
  }
  [[nodiscard]] bool too_long() const { return kept.size() > 100'000; }
  std::string kept;

 private:
  static constexpr std::size_t longest_key = 64;
  /// By any spelling: "\u0063rs" is the same key, and the library takes capitals too.
  [[nodiscard]] bool says_crs() const {
    if (text_.find('\\') == std::string::npos) return text_.size() == 3 && csv::lower(text_) == "crs";
    const json key = json::parse('"' + text_ + '"', nullptr, false);
    return key.is_string() && csv::lower(key.get<std::string>()) == "crs";
  }
  bool in_text_ = false, escaped_ = false, is_crs_ = false;
  int depth_ = 0;
  std::string text_;
};

}  // namespace

std::optional<std::string> file_named_by_crs(const std::string& path) {
  VSILFILE* in = VSIFOpenL(path.c_str(), "rb");  // also within a zipped file
  if (!in) return std::nullopt;
  std::array<char, 1u << 16u> some{};
  Scanner scanner;
  std::optional<std::string> named;
  for (std::size_t got = 0; !named && (got = VSIFReadL(some.data(), 1, some.size(), in)) > 0;)
    for (std::size_t i = 0; i < got && !named; ++i) {
      const bool ended = scanner.take(some[i]);
      if (scanner.too_long()) named = scanner.kept.substr(0, 80);
      if (!ended) continue;
      // Where this reader cannot follow, another may: what it would have opened is not known.
      const json crs = json::parse(scanner.kept, nullptr, false);
      named = crs.is_discarded() ? scanner.kept : file_named_in(crs);
    }
  VSIFCloseL(in);
  return named;
}

}  // namespace burrow

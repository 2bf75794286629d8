#pragma once
/// One row of a table's JSON, read member by member. The first error is kept; what is read after it does not matter.

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/result.h"
#include "burrow/base/source.h"

namespace burrow::table_file {

class Row {
 public:
  Row(const nlohmann::json& object, std::string pointer);

  double number(const char* key, double least = 0, double most = 1e12);
  std::optional<double> number_or_null(const char* key, double least = 0, double most = 1e12);
  bool flag(const char* key);
  bool flag_or_no(const char* key);   ///< false where absent or null
  std::string text(const char* key);  ///< not empty
  Phrase phrase(const char* key) { return Phrase::of_table(text(key)); }
  std::string unit(const char* key);  ///< "m", "m/s", "m3", or "" for a plain ratio
  std::string colour(const char* key);
  std::vector<double> numbers(const char* key, double least = 0, double most = 1e12);
  const nlohmann::json& list(const char* key);  ///< an array, or the empty one
  const nlohmann::json& list_or_nothing(const char* key);
  std::string text_or_nothing(const char* key);                ///< empty where absent or null
  std::vector<std::string> texts_or_nothing(const char* key);  ///< none of them empty
  Source source();

  template <class E>
  E word(const char* key) {
    const std::string found = text(key);
    if (const auto value = from_word<E>(found)) return *value;
    wrong(key, "\"" + found + "\"", "one of: " + known_words<E>());
    return E{};
  }

  template <class E>
  std::optional<E> word_or_nothing(const char* key) {
    return member(key, false) ? std::optional<E>(word<E>(key)) : std::nullopt;
  }

  void wrong(const std::string& key, std::string found, std::string expected);
  void wrong(Error error);

  /// The first error, or a member that no table of this kind has.
  [[nodiscard]] std::optional<Error> finish();
  [[nodiscard]] const std::string& pointer() const { return pointer_; }

 private:
  const nlohmann::json* member(const char* key, bool required);

  const nlohmann::json& object_;
  std::string pointer_;
  std::set<std::string, std::less<>> asked_;
  std::optional<Error> error_;
};

/// A JSON value as a person would see it, shortened.
std::string shown(const nlohmann::json& value);

/// Parses text. Errors: not JSON, a key twice, not a list.
Result<nlohmann::json> parse_table(const std::string& text, const std::string& place);

}  // namespace burrow::table_file

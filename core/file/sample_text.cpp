#include "burrow/file/sample_text.h"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>

#include "burrow/language/say.h"

namespace burrow {

namespace {

constexpr std::string_view context = "sample";

/// "gas main of the western zone 07" is looked up without its number.
std::string in_words(const std::string& english) {
  const auto& texts = dictionary().texts;
  const std::size_t words = english.find_last_not_of(" 0123456789") + 1;
  for (const std::size_t length : {english.size(), words})
    if (const auto it = texts.find(in_context(context, english.substr(0, length))); it != texts.end())
      return it->second + english.substr(length);
  return english;
}

/// What a person reads; "kind": "sewer" is a word of the file, "name": "sewer" is not.
bool is_read(std::string_view key) {
  constexpr std::string_view read[] = {"name", "notes", "title", "aim",    "question",    "rule",      "source",
                                       "how",  "with",  "why",   "permit", "agreed_with", "precaution"};
  return std::find(std::begin(read), std::end(read), key) != std::end(read);
}

void put_in_words(nlohmann::ordered_json& value) {
  for (const auto& [key, member] : value.items()) {
    if (member.is_structured()) put_in_words(member);
    if (member.is_string() && is_read(key)) member = in_words(member.get_ref<const std::string&>());
  }
}

}  // namespace

std::string sample_in_language(std::string_view crossing_text) {
  if (dictionary().language == "en") return std::string(crossing_text);
  nlohmann::ordered_json sample = nlohmann::ordered_json::parse(crossing_text, nullptr, false);
  if (sample.is_discarded()) return std::string(crossing_text);
  put_in_words(sample);
  return sample.dump(1);
}

}  // namespace burrow

#include "burrow/file/sample_text.h"

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

void put_in_words(nlohmann::ordered_json& value) {
  if (value.is_structured()) {
    for (auto& member : value) put_in_words(member);
  } else if (value.is_string()) {
    value = in_words(value.get_ref<const std::string&>());
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

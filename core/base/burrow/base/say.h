#pragma once
/// Texts in the language of the person at the screen. The English text, as it stands in the code, is the key; a
/// dictionary (`resources/words/de.json`, read by `core/file/dictionary_file.h`) holds the other language. Without
/// one, or for a text it does not know, everything stays English. Codes and file words are never turned, of sources our
/// own words alone;
/// numbers keep the decimal point of the files, and a comma typed is understood in both languages. Evidence:
/// tests/core/base/say_test.cpp; that the dictionary is complete: tests/dictionary_test.cpp.

#include <fmt/format.h>

#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "burrow/base/phrase.h"
#include "burrow/base/words.h"

namespace burrow {

struct Dictionary {
  std::string language = "en";  ///< ISO 639-1
  std::map<std::string, std::string, std::less<>> texts;
};

/// From now on texts are made in that language. Call it before the first window, table or assessment is made: what
/// exists already keeps its language. A dictionary once given lives as long as the program, so that the pointers
/// `said` handed out stay good; other threads may make texts meanwhile.
void speak(Dictionary dictionary);
/// The dictionary in use; an empty English one at first.
const Dictionary& spoken();

/// The text in the language spoken. `said(const char*)` serves where a literal stood: it turns into a string or a
/// string_view by itself.
const char* said(const char* english);
std::string said(std::string_view english);

/// A label that may be put together of parts: "bore side, first step, high". The whole if it is known, else its parts
/// ("bore side", ", first step", ", high").
std::string said_label(std::string_view english);

/// Marks a text of a table that is made before a language is chosen; whoever shows it asks `said`.
constexpr const char* noted(const char* english) {
  return english;
}

/// fmt::format with the pattern in the language spoken, whose arguments may stand in another order ("{1}").
template <class... Args>
std::string say(fmt::format_string<Args...> pattern, Args&&... args) {
  const fmt::string_view english = pattern;
  return fmt::vformat(said(std::string_view(english.data(), english.size())), fmt::make_format_args(args...));
}

/// In the language spoken; what somebody entered stays.
std::string said_phrase(const Phrase& phrase);

/// The word of a choice, as a person reads it: said_word(UtilityKind::steam).
template <class E>
std::string said_word(E value) {
  return said(word_of(value));
}

}  // namespace burrow

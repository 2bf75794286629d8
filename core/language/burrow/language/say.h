#pragma once
/// Texts in the language of the person at the screen. The English text, as it stands in the code, is the key; a
/// dictionary (`resources/words/de.po`, read by `burrow/file/dictionary_file.h`) holds the other language. Without
/// one, or for a text it does not know, everything stays English. Codes and file words are never turned, of sources our
/// own words alone;
/// numbers have the decimal mark of the language, those of files the point. A text is a whole
/// sentence or a whole label with placeholders, never a piece with a blank at its end: another language has another
/// order. Evidence: Say.*; that the dictionary is complete: Dictionary.*

#include <fmt/format.h>

#include <concepts>
#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/base/decimal_mark.h"
#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/base/result.h"
#include "burrow/language/plural.h"

namespace burrow {

struct Dictionary {
  std::string language = "en";                                 ///< ISO 639-1
  std::map<std::string, std::string, std::less<>> texts = {};  ///< by the English text, or `in_context(…)`
  /// The forms of counted texts, by the English one for one; as many as the rule has.
  std::map<std::string, std::vector<std::string>, std::less<>> counted = {};
  PluralRule plural = {};
  DecimalMark mark = DecimalMark::point;
  bool read_twice = true;  ///< by somebody else than who translated it; else whoever chooses it is told
};

/// The key of a text that has another meaning elsewhere, as gettext has it.
std::string in_context(std::string_view context, std::string_view english);

/// From now on texts are made in that language, numbers with its decimal mark. Call it before the first window, table
/// or assessment is made: what exists already keeps its language. A dictionary once given lives as long as the program,
/// so that the pointers `translated` handed out stay good; other threads may make texts meanwhile.
void use_dictionary(Dictionary dictionary);
/// The dictionary in use; an empty English one at first.
const Dictionary& dictionary();

/// The text in the language spoken. `translated(const char*)` serves where a literal stood: it turns into a string or a
/// string_view by itself.
const char* translated(const char* english);
std::string translated(std::string_view english);

/// A text that means something else in another place: translated_in("of a line", "level"). The context is not shown.
/// Where the dictionary knows the text only without a context, that.
const char* translated_in(const char* context, const char* english);

/// A label that lists parts: "bore side, first step, high". The whole if it is known, else its parts: "bore side", and
/// "first step" and "high" in the context "part of a label".
std::string translated_label(std::string_view english);

/// fmt::format with the pattern in the language spoken, whose arguments may stand in another order ("{1}").
template <class... Args>
std::string say(fmt::format_string<Args...> pattern, Args&&... args) {
  const fmt::string_view english = pattern;
  return fmt::vformat(translated(std::string_view(english.data(), english.size())), fmt::make_format_args(args...));
}

/// The form of a counted text that the dictionary has for n, or nothing. `one` is the English text for one.
const std::string* counted_text(std::string_view one, unsigned long long n);
const std::string* counted_text_in(std::string_view context, std::string_view one, unsigned long long n);

/// A text by the count in it: say_count("one pit", "{} pits", n). The count is the first value; further ones follow.
/// English has the first pattern for 1 and the second for all else, 0 too; another language as many as its rule wants.
template <std::integral N, class... Args>
std::string say_count(fmt::format_string<N&, Args...> one, fmt::format_string<N&, Args...> many, N n, Args&&... args) {
  const fmt::string_view single = one, plural = many;
  const std::string* text =
      counted_text(std::string_view(single.data(), single.size()), static_cast<unsigned long long>(n));
  const fmt::string_view pattern = text ? fmt::string_view(*text) : n == 1 ? single : plural;
  return fmt::vformat(pattern, fmt::make_format_args(n, args...));
}

/// The same for a text that means something else in another place.
template <std::integral N>
std::string say_count_in(const char* context, fmt::format_string<N&> one, fmt::format_string<N&> many, N n) {
  const fmt::string_view single = one, plural = many;
  const std::string* text =
      counted_text_in(context, std::string_view(single.data(), single.size()), static_cast<unsigned long long>(n));
  const fmt::string_view pattern = text ? fmt::string_view(*text) : n == 1 ? single : plural;
  return fmt::vformat(pattern, fmt::make_format_args(n));
}

/// Whole sentences one after the other; empty ones are left out.
std::string sentences(std::initializer_list<std::string> all);

/// In the language spoken; what somebody entered stays.
std::string translated_phrase(const Phrase& phrase);
/// One line: "grade: found 2, expected |grade| <= 1".
std::string translated_error(const Error& error);

/// The word of a choice, as a person reads it: translated_word(UtilityKind::steam).
template <class E>
std::string translated_word(E value) {
  return translated(word_of(value));
}

}  // namespace burrow

#pragma once
/// Words for a person, kept without a language: a text of the program with what stands in it, or words that somebody
/// entered. What computes makes phrases; whoever shows them puts them into the language of the screen
/// (`translated_phrase`). So an answer is the same in every language, and a name that somebody typed is never
/// translated. Evidence: Phrase.*

#include <concepts>
#include <iosfwd>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/base/enum_names.h"

namespace burrow {

/// Marks a text of the program that is not yet put into a language; whoever shows it does that.
constexpr const char* translatable(const char* english) {
  return english;
}

class Phrase {
 public:
  Phrase() = default;
  /// A text of the program: marked by `translatable`, or of a table.
  Phrase(const char* text) : text_(text), ours_(true) {}  // NOLINT: stands wherever a literal stood
  /// Entered by somebody.
  Phrase(std::string entered) : text_(std::move(entered)) {}  // NOLINT: the same
  static Phrase of_table(std::string text);
  /// `pattern` is a text of the program, with {} or {1} for each part.
  static Phrase with(std::string_view pattern, std::vector<Phrase> parts);
  /// A text by the count in it, which is its first part.
  static Phrase counted(std::string_view one, std::string_view many, unsigned long long count,
                        std::vector<Phrase> more);

  [[nodiscard]] bool empty() const { return text_.empty(); }
  [[nodiscard]] std::string english() const;
  /// Each text of the program through `translate(text)`, counted ones through `translate(one, many, count)`.
  template <class Translate>
  [[nodiscard]] std::string in_words(const Translate& translate) const {
    if (!ours_) return text_;
    std::vector<std::string> words;
    words.reserve(parts_.size());
    for (const Phrase& part : parts_) words.push_back(part.in_words(translate));
    if (many_.empty()) return put_together(translate(std::string_view(text_)), words);
    return put_together(translate(std::string_view(text_), std::string_view(many_), count_), words);
  }

  bool operator==(const Phrase&) const = default;
  friend bool operator==(const Phrase& one, const char* english) { return one.english() == english; }
  friend bool operator==(const Phrase& one, const std::string& english) { return one.english() == english; }
  friend void PrintTo(const Phrase& one, std::ostream* out);  // in a failed test

 private:
  static std::string put_together(const std::string& pattern, const std::vector<std::string>& words);

  std::string text_;
  std::string many_;              // of a counted text; `text_` is its form for one
  unsigned long long count_ = 0;  // of a counted text
  std::vector<Phrase> parts_;
  bool ours_ = false;
};

/// phrase("cover of {}", name)
template <class... Parts>
Phrase phrase(const char* pattern, Parts&&... parts) {
  return Phrase::with(pattern, {Phrase(std::forward<Parts>(parts))...});
}

/// phrase_count("one pit", "{} pits", n): English has the first for 1, the second for all else.
template <std::integral N, class... Parts>
Phrase phrase_count(const char* one, const char* many, N count, Parts&&... more) {
  return Phrase::counted(one, many, static_cast<unsigned long long>(count), {Phrase(std::forward<Parts>(more))...});
}

/// The word of a choice.
template <class E>
Phrase phrase_of_word(E value) {
  return Phrase::of_table(std::string(word_of(value)));
}

}  // namespace burrow

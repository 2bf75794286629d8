#pragma once
/// Words for a person, kept without a language: a text of the program with what stands in it, or words that somebody
/// entered. What computes makes phrases; whoever shows them puts them into the language of the screen (`translated_phrase`).
/// So an answer is the same in every language, and a name that somebody typed is never translated.
/// Evidence: Phrase.*

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"

namespace burrow {

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

  [[nodiscard]] bool empty() const { return text_.empty(); }
  [[nodiscard]] std::string english() const;
  /// Each text of the program through `translate`.
  template <class Translate>
  [[nodiscard]] std::string in_words(const Translate& translate) const {
    if (!ours_) return text_;
    std::vector<std::string> words;
    words.reserve(parts_.size());
    for (const Phrase& part : parts_) words.push_back(part.in_words(translate));
    return put_together(translate(std::string_view(text_)), words);
  }

  bool operator==(const Phrase&) const = default;
  friend bool operator==(const Phrase& one, const char* english) { return one.english() == english; }
  friend bool operator==(const Phrase& one, const std::string& english) { return one.english() == english; }
  friend void PrintTo(const Phrase& one, std::ostream* out);  // in a failed test

 private:
  static std::string put_together(const std::string& pattern, const std::vector<std::string>& words);

  std::string text_;
  std::vector<Phrase> parts_;
  bool ours_ = false;
};

/// phrase("cover of {}", name)
template <class... Parts>
Phrase phrase(const char* pattern, Parts&&... parts) {
  return Phrase::with(pattern, {Phrase(std::forward<Parts>(parts))...});
}

/// The word of a choice.
template <class E>
Phrase phrase_of_word(E value) {
  return Phrase::of_table(std::string(word_of(value)));
}

}  // namespace burrow

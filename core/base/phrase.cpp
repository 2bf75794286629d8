#include "burrow/base/phrase.h"

#include <fmt/args.h>

#include <ostream>

namespace burrow {

Phrase Phrase::of_table(std::string text) {
  Phrase phrase(std::move(text));
  phrase.ours_ = true;
  return phrase;
}

Phrase Phrase::with(std::string_view pattern, std::vector<Phrase> parts) {
  Phrase phrase = of_table(std::string(pattern));
  phrase.parts_ = std::move(parts);
  return phrase;
}

std::string Phrase::english() const {
  return in_words([](std::string_view text) { return std::string(text); });
}

std::string Phrase::put_together(const std::string& pattern, const std::vector<std::string>& words) {
  if (words.empty()) return pattern;
  fmt::dynamic_format_arg_store<fmt::format_context> values;
  for (const std::string& word : words) values.push_back(std::cref(word));
  return fmt::vformat(pattern, values);
}

void PrintTo(const Phrase& one, std::ostream* out) {
  *out << one.english();
}

}  // namespace burrow

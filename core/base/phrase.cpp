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

Phrase Phrase::counted(std::string_view one, std::string_view many, unsigned long long count,
                       std::vector<Phrase> more) {
  Phrase phrase = of_table(std::string(one));
  phrase.many_ = many;
  phrase.count_ = count;
  phrase.parts_ = std::move(more);
  phrase.parts_.insert(phrase.parts_.begin(), Phrase(std::to_string(count)));
  return phrase;
}

namespace {
struct English {
  std::string operator()(std::string_view text) const { return std::string(text); }
  std::string operator()(std::string_view one, std::string_view many, unsigned long long count) const {
    return std::string(count == 1 ? one : many);
  }
};
}  // namespace

std::string Phrase::english() const {
  return in_words(English());
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

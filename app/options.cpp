#include "options.h"

#include <charconv>

namespace burrow {

std::string Options::value(std::string_view name, std::string_view otherwise) const {
  const auto it = values.find(name);
  return it == values.end() ? std::string(otherwise) : it->second;
}

Result<Options> read_options(const std::vector<std::string>& args, const KnownOptions& known) {
  Options options;
  bool only_files = false;
  for (std::size_t i = 0; i < args.size(); ++i) {
    const std::string& word = args[i];
    if (only_files || word.size() < 2 || word[0] != '-') {
      options.standard_input = options.standard_input || (!only_files && word == "-");
      options.files.push_back(word);
      continue;
    }
    if (word == "--") {
      only_files = true;
      continue;
    }
    const auto it = known.find(word);
    if (it == known.end()) {
      std::string all;
      for (const auto& [name, takes] : known) all += (all.empty() ? "" : " ") + name;
      return fail("option", word, all.empty() ? "no options" : all);
    }
    if (options.has(word)) return fail(word, "given twice", "once");
    if (it->second && i + 1 >= args.size()) return fail(word, "nothing after it", "a value");
    options.values[word] = it->second ? args[++i] : std::string();
  }
  return options;
}

Result<UnitSystem> units_of(const Options& options) {
  const std::string word = options.value("--units", "metric");
  if (const auto units = from_word<UnitSystem>(word)) return *units;
  return fail("--units", word, known_words<UnitSystem>());
}

Result<long> whole_number(const Options& options, std::string_view name, long otherwise, long least, long most) {
  if (!options.has(name)) return otherwise;
  const std::string text = options.value(name, "");
  long value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || value < least || value > most)
    return fail(std::string(name), text,
                "a whole number from " + std::to_string(least) + " to " + std::to_string(most));
  return value;
}

}  // namespace burrow

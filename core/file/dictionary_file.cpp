#include "burrow/file/dictionary_file.h"

#include <algorithm>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "burrow_resources.h"
#include "po_text.h"

namespace burrow {

namespace {

/// The value of one line of the header: "Language: de\n".
std::string header_value(const std::string& header, const std::string& name) {
  const std::size_t at = ("\n" + header).find("\n" + name + ":");
  if (at == std::string::npos) return {};
  const std::size_t from = std::min(header.find_first_not_of(' ', at + name.size() + 1), header.size());
  return header.substr(from, header.find('\n', from) - from);
}

Result<Dictionary> from_header(const std::vector<PoEntry>& entries) {
  if (entries.empty() || entries.front().context || !entries.front().text.empty())
    return fail(po_place(1), "no header", "msgid \"\"");
  const std::string header = entries.front().forms.empty() ? std::string() : entries.front().forms.front();
  Dictionary dictionary;
  dictionary.language = header_value(header, "Language");
  if (dictionary.language.empty()) return fail("Language", "nothing", "a language, as \"de\"");
  const std::string type = header_value(header, "Content-Type");
  if (type.find("charset=UTF-8") == std::string::npos) return fail("Content-Type", type, "charset=UTF-8");
  const Result<PluralRule> rule = PluralRule::read(header_value(header, "Plural-Forms"));
  if (!rule) return tl::unexpected(rule.error());
  dictionary.plural = *rule;
  if (const std::string mark = header_value(header, "X-Decimal-Mark"); mark == ",") {
    dictionary.mark = DecimalMark::comma;
  } else if (!mark.empty() && mark != ".") {
    return fail("X-Decimal-Mark", mark, ". or ,");
  }
  dictionary.read_twice = header_value(header, "X-Second-Reader") != "none";
  return dictionary;
}

}  // namespace

Result<Dictionary> read_dictionary(std::string_view po_text) {
  Result<std::vector<PoEntry>> entries = read_po(po_text);
  if (!entries) return tl::unexpected(entries.error());
  Result<Dictionary> dictionary = from_header(*entries);
  if (!dictionary) return dictionary;
  for (std::size_t i = 1; i < entries->size(); ++i) {
    PoEntry& entry = (*entries)[i];
    const std::string key = entry.context ? in_context(*entry.context, entry.text) : entry.text;
    if (key.empty()) return fail(po_place(entry.line), "a second header", "a text");
    if (entry.plural && entry.forms.size() != dictionary->plural.forms())
      return fail(po_place(entry.line), std::to_string(entry.forms.size()) + " forms",
                  std::to_string(dictionary->plural.forms()));
    const bool translated =
        std::none_of(entry.forms.begin(), entry.forms.end(), [](const auto& f) { return f.empty(); });
    if (!translated || entry.fuzzy) continue;
    if (!dictionary->texts.emplace(key, entry.forms.front()).second)
      return fail(po_place(entry.line), entry.text, "each text once");
    if (entry.plural) dictionary->counted.emplace(key, std::move(entry.forms));
  }
  return dictionary;
}

std::optional<Dictionary> dictionary_of(std::string_view language) {
  const std::string_view text = embedded_text("words/" + std::string(language) + ".po");
  if (text.empty()) return std::nullopt;
  Result<Dictionary> read = read_dictionary(text);
  return read ? std::optional(std::move(*read)) : std::nullopt;
}

std::vector<std::string> languages_known() {
  std::vector<std::string> all{"en"};
  std::istringstream lines{std::string(embedded_text("languages"))};
  for (std::string one; std::getline(lines, one);)
    if (one != "en") all.push_back(one);
  std::sort(all.begin() + 1, all.end());
  return all;
}

}  // namespace burrow

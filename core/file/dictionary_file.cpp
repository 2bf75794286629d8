#include "burrow/file/dictionary_file.h"

#include <string>

#include "burrow_resources.h"
#include "json_tree.h"

namespace burrow {

Result<Dictionary> read_dictionary(std::string_view json_text) {
  const Result<Json> json = parse_json(json_text);
  if (!json) return tl::unexpected(json.error());
  if (!json->object()) return fail("", shown_json(*json), "a JSON object");
  Dictionary dictionary;
  dictionary.language.clear();
  for (const JsonMember& member : *json->object()) {
    if (member.key == "language" && member.value.text()) dictionary.language = *member.value.text();
    if (member.key != "texts") continue;
    if (!member.value.object()) return fail("/texts", shown_json(member.value), "an object of texts");
    for (const JsonMember& entry : *member.value.object()) {
      const std::string* text = entry.value.text();
      if (!text || text->empty())
        return fail(json_pointer("/texts", entry.key), shown_json(entry.value), "a text that is not empty");
      dictionary.texts.emplace(entry.key, *text);
    }
  }
  if (dictionary.language.empty()) return fail("/language", "nothing", "a language, as \"de\"");
  return dictionary;
}

std::optional<Dictionary> dictionary_of(std::string_view language) {
  const std::string_view text = embedded_text("words/" + std::string(language) + ".json");
  if (text.empty()) return std::nullopt;
  Result<Dictionary> read = read_dictionary(text);
  return read ? std::optional(std::move(*read)) : std::nullopt;
}

}  // namespace burrow

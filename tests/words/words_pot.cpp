// Writes, as a gettext template, the texts of the source that xgettext cannot tell from ids: words of choices, sources,
// labels of entries, texts of the tables. For resources/words/update.

#include <exception>
#include <iostream>

#include "support/texts_in_source.h"

namespace {

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '\n') {
      out += "\\n";
      continue;
    }
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

void write_template() {
  std::cout << "msgid \"\"\nmsgstr \"Content-Type: text/plain; charset=UTF-8\\n\"\n";
  for (const auto& [key, found] : burrow::test::texts_in_source()) {
    if (found.other_files.empty()) continue;
    std::cout << '\n';
    for (const std::string& file : found.other_files) std::cout << "#: " << file << '\n';
    if (!key.context.empty()) std::cout << "msgctxt " << quoted(key.context) << '\n';
    std::cout << "msgid " << quoted(key.text) << "\nmsgstr \"\"\n";
  }
}

}  // namespace

int main() {
  try {
    write_template();
  } catch (const std::exception& fault) {
    std::cerr << fault.what() << '\n';
    return 1;
  }
}

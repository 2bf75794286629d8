#include "po_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace burrow {

namespace {

/// What stands between the quotes that begin and end `line`; nothing where it is not one quoted text.
std::optional<std::string> quoted(std::string_view line) {
  if (line.size() < 2 || line.front() != '"' || line.back() != '"') return std::nullopt;
  std::string text;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    if (line[i] == '"') return std::nullopt;
    if (line[i] != '\\') {
      text += line[i];
      continue;
    }
    const char escaped = line[++i];
    if (i + 1 == line.size()) return std::nullopt;  // the last quote was an escaped one
    if (escaped == 'n')
      text += '\n';
    else if (escaped == 't')
      text += '\t';
    else if (escaped == '"' || escaped == '\\')
      text += escaped;
    else
      return std::nullopt;
  }
  return text;
}

std::string_view without_blanks(std::string_view line) {
  while (!line.empty() && (line.front() == ' ' || line.front() == '\t')) line.remove_prefix(1);
  while (!line.empty() && (line.back() == ' ' || line.back() == '\t' || line.back() == '\r')) line.remove_suffix(1);
  return line;
}

class Reader {
 public:
  /// False where the line is none of a catalogue.
  bool read(std::string_view line, int number) {
    if (line.empty()) return true;
    if (line.starts_with("#")) return comment(line);
    if (line.starts_with("\"")) return append(line);
    const std::size_t end = line.find_first_of(" \t\"");
    if (end == std::string_view::npos) return false;
    const std::string_view keyword = line.substr(0, end);
    if (keyword == "msgctxt" || (keyword == "msgid" && stage_ != Stage::context)) begin(number);
    return goes_to(keyword) && append(without_blanks(line.substr(end)));
  }

  /// Nothing where the last entry is not whole.
  std::optional<std::vector<PoEntry>> all() {
    if (!whole()) return std::nullopt;
    return std::move(entries_);
  }

 private:
  enum class Stage { none, context, text, plural, form };

  [[nodiscard]] bool whole() const { return stage_ == Stage::none || stage_ == Stage::form; }

  bool comment(std::string_view line) {
    if (line.starts_with("#,") && line.find("fuzzy") != std::string_view::npos) fuzzy_ = true;
    return whole();
  }

  void begin(int number) {
    broken_ = broken_ || !whole();
    entries_.emplace_back();
    entries_.back().line = number;
    entries_.back().fuzzy = std::exchange(fuzzy_, false);
    stage_ = Stage::none;
  }

  /// Where the texts that follow belong.
  bool goes_to(std::string_view keyword) {
    if (broken_ || entries_.empty()) return false;
    PoEntry& entry = entries_.back();
    const Stage before = stage_;
    if (keyword == "msgctxt") {
      stage_ = Stage::context;
      into_ = &entry.context.emplace();
    } else if (keyword == "msgid" && (before == Stage::none || before == Stage::context)) {
      stage_ = Stage::text;
      into_ = &entry.text;
    } else if (keyword == "msgid_plural" && before == Stage::text) {
      stage_ = Stage::plural;
      into_ = &entry.plural.emplace();
    } else if ((keyword == "msgstr" && before == Stage::text) ||
               (keyword == fmt::format("msgstr[{}]", entry.forms.size()) && entry.plural &&
                (before == Stage::plural || before == Stage::form))) {
      stage_ = Stage::form;
      into_ = &entry.forms.emplace_back();
    } else {
      return false;
    }
    return true;
  }

  bool append(std::string_view line) {
    const std::optional<std::string> text = quoted(line);
    if (!text || stage_ == Stage::none) return false;
    *into_ += *text;
    return true;
  }

  std::vector<PoEntry> entries_;
  std::string* into_ = nullptr;
  Stage stage_ = Stage::none;
  bool fuzzy_ = false, broken_ = false;
};

}  // namespace

std::string po_place(int line) {
  return fmt::format("line {}", line);
}

Result<std::vector<PoEntry>> read_po(std::string_view text) {
  Reader reader;
  int number = 0;
  while (!text.empty()) {
    ++number;
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = without_blanks(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (!reader.read(line, number)) return fail(po_place(number), std::string(line), "a line of a gettext catalogue");
  }
  std::optional<std::vector<PoEntry>> all = reader.all();
  if (!all) return fail(po_place(number), "the end of the file", "a line of a gettext catalogue");
  return std::move(*all);
}

}  // namespace burrow

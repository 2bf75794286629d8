#include "csv_table.h"

#include <algorithm>
#include <set>

#include "burrow/base/phrase.h"

namespace burrow {

namespace {

std::string trimmed(std::string_view text) {
  const std::size_t from = text.find_first_not_of(" \t\r");
  if (from == std::string_view::npos) return {};
  return std::string(text.substr(from, text.find_last_not_of(" \t\r") - from + 1));
}

Phrase line_place(std::size_t line) {
  return phrase(translatable("line {}"), std::to_string(line));
}

class Cells {
 public:
  explicit Cells(std::string_view text) : text_(text) {
    if (text_.starts_with("\xEF\xBB\xBF")) text_.remove_prefix(3);
    const std::string_view first = text_.substr(0, text_.find('\n'));
    for (const char mark : {'\t', ';'})
      if (first.find(mark) != std::string_view::npos) separator_ = mark;
    if (first.find(',') != std::string_view::npos && first.find(';') == std::string_view::npos) separator_ = ',';
  }

  [[nodiscard]] bool at_end() const { return at_ >= text_.size(); }

  Result<CsvRow> row() {
    CsvRow row{line_, {}};
    do {
      Result<std::string> one = cell();
      if (!one) return tl::unexpected(one.error());
      row.cells.push_back(std::move(*one));
    } while (!at_end() && text_[at_++] == separator_);
    if (at_ > 0 && text_[at_ - 1] == '\n') ++line_;
    return row;
  }

 private:
  /// Up to what ends it, which stays.
  Result<std::string> cell() {
    const std::size_t first = text_.find_first_not_of(' ', at_);
    if (first != std::string_view::npos && text_[first] == '"') {
      at_ = first + 1;
      return in_quotes();
    }
    const std::size_t end = std::min(text_.find_first_of(std::string{separator_, '\n'}, at_), text_.size());
    const std::string_view all = text_.substr(at_, end - at_);
    at_ = end;
    return trimmed(all);
  }

  Result<std::string> in_quotes() {
    const std::size_t began = line_;
    std::string text;
    for (; !at_end(); ++at_) {
      const char c = text_[at_];
      if (c == '\n') ++line_;
      if (c != '"') {
        text += c;
        continue;
      }
      if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
        text += c;
        ++at_;
        continue;
      }
      ++at_;
      const std::size_t end = std::min(text_.find_first_of(std::string{separator_, '\n'}, at_), text_.size());
      if (!trimmed(text_.substr(at_, end - at_)).empty())
        return fail(line_place(line_), translatable("text behind a cell in quotes"),
                    translatable("quotes around the whole cell, doubled within"));
      at_ = end;
      return text;
    }
    return fail(line_place(began), translatable("quotes that do not close"),
                translatable("quotes around a whole cell"));
  }

  std::string_view text_;
  char separator_ = ',';
  std::size_t at_ = 0, line_ = 1;
};

}  // namespace

Result<CsvContent> read_csv_content(std::string_view text) {
  CsvContent content;
  Cells cells(text);
  while (!cells.at_end()) {
    Result<CsvRow> row = cells.row();
    if (!row) return tl::unexpected(row.error());
    if (std::all_of(row->cells.begin(), row->cells.end(), [](const std::string& cell) { return cell.empty(); }))
      continue;
    if (!content.names.empty()) {
      content.rows.push_back(std::move(*row));
      continue;
    }
    content.names = row->cells;
    std::set<std::string> seen;
    for (const std::string& name : content.names)
      if (name.empty() || !seen.insert(name).second)
        return fail(line_place(row->line),
                    name.empty() ? Phrase(translatable("a column without a name")) : Phrase(name),
                    translatable("a name for each column, each once"));
  }
  if (content.names.empty()) return fail("", translatable("an empty table"), translatable("a line of names"));
  return content;
}

}  // namespace burrow

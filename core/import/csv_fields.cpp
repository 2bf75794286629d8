#include "csv_fields.h"

#include <algorithm>

namespace burrow::csv {

namespace {

constexpr std::string_view space = " \t\r\n";

std::string_view trimmed(std::string_view text) {
  const std::size_t from = text.find_first_not_of(space);
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(space) - from + 1);
}

}  // namespace

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  int number = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string_view content = trimmed(text.substr(0, end));
    ++number;
    if (!content.empty() && content.front() != '#') lines.push_back({number, std::string(content), {}, false});
    const bool two = text.substr(end).starts_with("\r\n");
    text.remove_prefix(std::min(text.size(), end + (two ? 2 : 1)));
  }
  return lines;
}

char delimiter_of(const std::vector<Line>& lines) {
  const auto has = [](const Line& line, char c) { return line.text.find(c) != std::string::npos; };
  const auto any_has = [&](char c) {
    return std::any_of(lines.begin(), lines.end(), [&](const Line& l) { return has(l, c); });
  };
  const auto numbers_have = [&](char c) {
    return std::all_of(lines.begin(), lines.end(),
                       [&](const Line& l) { return l.text.find_first_of("0123456789") != 0 || has(l, c); });
  };
  if (any_has(';')) return ';';
  if (any_has('\t') && numbers_have('\t')) return '\t';
  return any_has(',') ? ',' : ' ';
}

void split(Line& line, char delimiter) {
  std::string_view rest = line.text;
  while (true) {
    if (delimiter == ' ') rest.remove_prefix(std::min(rest.find_first_not_of(" \t"), rest.size()));
    std::string field;
    const std::string_view start = trimmed(rest);
    if (start.starts_with('"')) {
      rest = start.substr(1);
      bool closed = false;
      while (!rest.empty() && !closed) {
        const bool quote = rest.front() == '"';
        const bool doubled = quote && rest.size() > 1 && rest[1] == '"';
        closed = quote && !doubled;
        if (!closed) field += rest.front();
        rest.remove_prefix(doubled ? 2 : 1);
      }
      line.open_quote = line.open_quote || !closed;
    }
    const std::size_t end = std::min(delimiter == ' ' ? rest.find_first_of(" \t") : rest.find(delimiter), rest.size());
    field += rest.substr(0, end);
    line.fields.push_back({std::string(trimmed(field))});
    if (end == rest.size()) return;
    rest.remove_prefix(end + 1);
  }
}

std::string plain_number(std::string_view field) {
  constexpr std::string_view true_minus = "\u2212";
  if (field.starts_with(true_minus)) return "-" + std::string(field.substr(true_minus.size()));
  if (field.starts_with('+')) field.remove_prefix(1);
  return std::string(field);
}

bool looks_like_number(std::string_view field) {
  std::string text = lower(plain_number(field));
  if (text.starts_with('-')) text.erase(0, 1);
  if (text == "nan" || text == "inf" || text == "infinity") return true;
  const bool digit = text.find_first_of("0123456789") != std::string::npos;
  return digit && text.find_first_not_of("0123456789.,e+-") == std::string::npos && text.front() != 'e';
}

}  // namespace burrow::csv

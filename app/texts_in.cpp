#include "texts_in.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "burrow/base/phrase.h"

namespace burrow {

namespace {

constexpr std::size_t longest = 64'000'001;  ///< one more than a file may have

bool blank(const std::string& line) {
  return line.find_first_not_of(" \t\r") == std::string::npos;
}

char first_of(const std::string& line) {
  const std::size_t at = line.find_first_not_of(" \t\r");
  return at == std::string::npos ? '\0' : line[at];
}

/// Whether brackets that the text opens stay open at its end; what stands in quotes does not count.
bool stays_open(std::string_view text) {
  long depth = 0;
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted && c == '\\')
      ++i;
    else if (c == '"')
      quoted = !quoted;
    else if (!quoted && (c == '{' || c == '['))
      ++depth;
    else if (!quoted && (c == '}' || c == ']'))
      --depth;
  }
  return depth > 0 || quoted;
}

std::string name_of(std::size_t line) {
  return "-:" + std::to_string(line);
}

}  // namespace

bool TextsIn::read_line(std::string& line) {
  line.clear();
  std::streambuf* bytes = in_.rdbuf();
  constexpr int end = std::char_traits<char>::eof();
  int c = end;
  try {
    for (c = bytes ? bytes->sbumpc() : end; c != end && c != '\n'; c = bytes->sbumpc())
      if (line.size() < longest) line += static_cast<char>(c);
  } catch (const std::ios::failure&) {
    in_.setstate(std::ios::badbit);
  }
  ++line_;
  return c != end || !line.empty();
}

void TextsIn::read_first() {
  started_ = true;
  std::string first;
  while (read_line(first) && blank(first)) {
  }
  if (blank(first)) return;
  if (first_of(first) != '{' || !stays_open(first)) {
    waiting_.push_back({name_of(line_), std::move(first), {}});
    return;
  }
  std::vector<TextIn> lines{{name_of(line_), first, {}}};
  std::string whole = std::move(first);
  bool each_opens = true;
  for (std::string line; read_line(line);) {
    if (whole.size() < longest) whole += "\n" + line;
    if (blank(line)) continue;
    each_opens = each_opens && line.front() == '{';
    if (each_opens) lines.push_back({name_of(line_), line, {}});
  }
  if (each_opens && lines.size() > 1 && stays_open(whole))
    waiting_.assign(std::make_move_iterator(lines.begin()), std::make_move_iterator(lines.end()));
  else
    waiting_.push_back({"-", std::move(whole), {}});
}

std::optional<TextIn> TextsIn::end() {
  if (std::exchange(ended_, true)) return std::nullopt;
  if (in_.bad())
    return TextIn{"-", "", Error{"", translatable("standard input broke off"), translatable("crossings to its end")}};
  if (any_) return std::nullopt;
  return TextIn{"-", "",
                Error{"", translatable("nothing on standard input"), translatable("a crossing, or one on each line")}};
}

std::optional<TextIn> TextsIn::next() {
  if (!started_) read_first();
  if (waiting_.empty() && !ended_) {
    std::string line;
    bool there = read_line(line);
    while (there && blank(line)) there = read_line(line);
    if (there) waiting_.push_back({name_of(line_), std::move(line), {}});
  }
  if (waiting_.empty()) return end();
  any_ = true;
  TextIn first = std::move(waiting_.front());
  waiting_.pop_front();
  return first;
}

}  // namespace burrow

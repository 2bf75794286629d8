#include "one_spelling.h"

#include <algorithm>
#include <array>
#include <utility>

namespace burrow {

std::string one_spelling(std::string_view typed) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 30> spellings{{
      {"\u2212", "-"},    {"\u2013", "-"},    {"\u2010", "-"},    {"\u2011", "-"},    {"\u2032", "'"},
      {"\u2019", "'"},    {"\u2018", "'"},    {"\u00B4", "'"},    {"\u2033", "\""},   {"\u201D", "\""},
      {"\u201C", "\""},   {"''", "\""},       {"\u00A0", " "},    {"\u202F", " "},    {"\u2009", " "},
      {"\u2007", " "},    {"\t", " "},        {"\u00B2", "2"},    {"\u00B3", "3"},    {"^", ""},
      {"\u00BA", "°"},    {"\u2044", "/"},    {"\u2236", ":"},    {"\u00BD", " 1/2"}, {"\u00BC", " 1/4"},
      {"\u00BE", " 3/4"}, {"\u215B", " 1/8"}, {"\u215C", " 3/8"}, {"\u215D", " 5/8"}, {"\u215E", " 7/8"},
  }};
  std::string text;
  while (!typed.empty()) {
    const auto it =
        std::find_if(spellings.begin(), spellings.end(), [&](const auto& s) { return typed.starts_with(s.first); });
    if (it != spellings.end()) {
      text += it->second;
      typed.remove_prefix(it->first.size());
      continue;
    }
    const char c = typed.front();
    text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    typed.remove_prefix(1);
  }
  return text;
}

}  // namespace burrow

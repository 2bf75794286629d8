#include "burrow/tables/material_rows.h"

#include <algorithm>
#include <string>

namespace burrow {

namespace {

bool letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

/// A word with a star at an end may go on there; else no letter stands beside it.
bool stands_in(std::string_view text, std::string_view word) {
  const bool open_before = word.starts_with('*'), open_after = word.size() > 1 && word.ends_with('*');
  if (open_before) word.remove_prefix(1);
  if (open_after) word.remove_suffix(1);
  if (word.empty()) return false;
  for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    const auto end = at + word.size();
    if ((open_before || at == 0 || !letter(text[at - 1])) && (open_after || end == text.size() || !letter(text[end])))
      return true;
  }
  return false;
}

bool made_for(const UtilityMaterialRow& row, UtilityKind kind) {
  return row.kinds.empty() || std::find(row.kinds.begin(), row.kinds.end(), kind) != row.kinds.end();
}

}  // namespace

std::string matched_form(std::string_view text) {
  constexpr std::pair<std::string_view, std::string_view> letters[] = {
      {"ä", "ae"}, {"Ä", "ae"}, {"ö", "oe"}, {"Ö", "oe"}, {"ü", "ue"}, {"Ü", "ue"}, {"ß", "ss"}};
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const auto umlaut = std::find_if(std::begin(letters), std::end(letters),
                                     [&](const auto& l) { return text.substr(i).starts_with(l.first); });
    if (umlaut != std::end(letters)) {
      out += umlaut->second;
      i += umlaut->first.size();
      continue;
    }
    const char c = text[i++];
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  const auto from = out.find_first_not_of(" \t"), to = out.find_last_not_of(" \t");
  return from == std::string::npos ? std::string() : out.substr(from, to - from + 1);
}

const UtilityMaterialRow* find_material(const Tables& tables, std::string_view text, UtilityKind kind) {
  const std::string entry = matched_form(text);
  if (entry.empty()) return nullptr;
  for (const UtilityMaterialRow& row : tables.utility_materials)
    if (entry == row.id && made_for(row, kind)) return &row;
  for (const UtilityMaterialRow& row : tables.utility_materials) {
    if (!made_for(row, kind)) continue;
    for (const std::string& word : row.words)
      if (stands_in(entry, word)) return &row;
  }
  return nullptr;
}

UtilityWall wall_of(const Tables& tables, const Utility& utility) {
  const UtilityMaterialRow* row = find_material(tables, utility.material, utility.kind);
  return row ? row->wall : UtilityWall::unknown;
}

const StructureRow* find_structure(const Tables& tables, std::string_view text) {
  const std::string entry = matched_form(text);
  for (const StructureRow& row : tables.structures)
    if (entry == row.id || std::find(row.words.begin(), row.words.end(), entry) != row.words.end()) return &row;
  return nullptr;
}

}  // namespace burrow

#include "utility_wall.h"

#include <string>

namespace burrow {

namespace {

bool letter(char c) {
  return c >= 'a' && c <= 'z';
}

struct Word {
  std::string_view text;
  UtilityWall wall;
  bool whole = false;  ///< not within a longer word
};

// The first that is met counts: ductile iron is iron too, and a steel pipe in a plastic coat is steel.
constexpr Word words_of_walls[] = {{"ductile", UtilityWall::ductile_iron}, {"di", UtilityWall::ductile_iron, true},
                                   {"cable", UtilityWall::cable},          {"armoured", UtilityWall::cable},
                                   {"armored", UtilityWall::cable},        {"copper", UtilityWall::cable},
                                   {"optic", UtilityWall::cable},          {"steel", UtilityWall::steel},
                                   {"iron", UtilityWall::grey_iron},       {"cast", UtilityWall::grey_iron},
                                   {"ci", UtilityWall::grey_iron, true},   {"clay", UtilityWall::rigid},
                                   {"stoneware", UtilityWall::rigid},      {"concrete", UtilityWall::rigid},
                                   {"cement", UtilityWall::rigid},         {"asbestos", UtilityWall::rigid},
                                   {"brick", UtilityWall::rigid},          {"masonry", UtilityWall::rigid},
                                   {"plastic", UtilityWall::plastic},      {"poly", UtilityWall::plastic},
                                   {"pvc", UtilityWall::plastic},          {"hdpe", UtilityWall::plastic},
                                   {"mdpe", UtilityWall::plastic},         {"pe", UtilityWall::plastic, true},
                                   {"pp", UtilityWall::plastic, true},     {"abs", UtilityWall::plastic, true},
                                   {"grp", UtilityWall::plastic, true}};

bool has(std::string_view text, const Word& word) {
  for (auto at = text.find(word.text); at != std::string_view::npos; at = text.find(word.text, at + 1)) {
    const auto end = at + word.text.size();
    if (!word.whole || ((at == 0 || !letter(text[at - 1])) && (end == text.size() || !letter(text[end])))) return true;
  }
  return false;
}

}  // namespace

UtilityWall wall_of(std::string_view material) {
  std::string text(material);
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  for (const Word& word : words_of_walls)
    if (has(text, word)) return word.wall;
  return UtilityWall::unknown;
}

}  // namespace burrow

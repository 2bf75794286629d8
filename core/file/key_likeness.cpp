#include "key_likeness.h"

#include <algorithm>
#include <array>
#include <string>

namespace burrow {

namespace {

constexpr std::size_t longest = 64;  ///< no key of ours is longer

std::string bare(std::string_view key) {
  std::string letters;
  for (const char c : key)
    if (c != '_' && c != '-' && c != ' ') letters += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return letters;
}

/// Letters added, left out, changed, or two neighbours swapped.
std::size_t slips(const std::string& a, const std::string& b) {
  std::array<std::array<std::size_t, longest + 1>, 3> rows{};
  for (std::size_t j = 0; j <= b.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto &row = rows[i % 3], &above = rows[(i + 2) % 3], &two_above = rows[(i + 1) % 3];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], two_above[j - 2] + 1);
    }
  }
  return rows[a.size() % 3][b.size()];
}

/// Without "_m", "_pa", "_rad" … at its end.
std::string_view without_unit(std::string_view key) {
  for (const std::string_view unit :
       {"_m", "_pa", "_rad", "_k", "_s", "_n", "_kg", "_hz", "_m3", "_m3_s", "_n_m3", "_1_m", "_1_m2"})
    if (key.size() > unit.size() && key.ends_with(unit)) return key.substr(0, key.size() - unit.size());
  return key;
}

}  // namespace

std::string_view looks_like(std::string_view key, const std::vector<std::string_view>& known) {
  const std::string mine = bare(key);
  if (mine.empty() || mine.size() > longest) return {};
  for (const std::string_view one : known) {
    const std::string theirs = bare(one);
    if (theirs.size() > longest) continue;
    const std::size_t shorter = std::min(mine.size(), theirs.size());
    const std::size_t allowed = shorter >= 8 ? 2 : shorter >= 4 ? 1 : 0;
    if (slips(mine, theirs) <= allowed) return one;
    if (bare(without_unit(one)) == bare(without_unit(key)) && without_unit(one).size() >= 3) return one;
  }
  return {};
}

}  // namespace burrow

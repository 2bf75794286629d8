#include "waiting_lines.h"

#include <algorithm>
#include <numeric>

namespace burrow {

std::vector<LineLot> lots_of(const std::vector<WaitingLine>& lines, std::size_t most_asked, std::size_t most_parts) {
  std::vector<std::size_t> nearest(lines.size());
  std::iota(nearest.begin(), nearest.end(), std::size_t{0});
  std::stable_sort(nearest.begin(), nearest.end(),
                   [&](std::size_t a, std::size_t b) { return lines[a].away_m < lines[b].away_m; });
  std::vector<LineLot> lots(lines.size(), LineLot::utility);
  std::size_t asked = 0, parts = 0;
  for (const std::size_t i : nearest) {
    if (lines[i].asked && asked >= most_asked) {
      lots[i] = LineLot::drawn_only;
    } else if (parts + lines[i].parts.size() > most_parts) {
      lots[i] = LineLot::no_room;
    } else {
      asked += lines[i].asked ? 1u : 0u;
      parts += lines[i].parts.size();
    }
  }
  return lots;
}

}  // namespace burrow

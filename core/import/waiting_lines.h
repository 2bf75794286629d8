#pragma once
/// Lines that are to become utilities, until all are known and the nearest of them can be told. Private to this room.

#include <string>
#include <utility>
#include <vector>

#include "placed_plan.h"

namespace burrow {

struct WaitingLine {
  UtilityKind kind = UtilityKind::unknown;
  bool asked = false;  ///< nobody said what it is
  const PlacedFile* file = nullptr;
  const FoundFeature* feature = nullptr;
  std::vector<std::vector<PathVertex>> parts;  ///< near the crossing line
  bool whole = false;                          ///< the one part is all of it
  double away_m = 0;                           ///< least distance from the crossing line
  std::string where;
};

/// What becomes of one: a utility; only drawn, because so many that nobody decided lie nearer; left out, because so
/// many utilities lie nearer.
enum class LineLot { utility, drawn_only, no_room };

/// The nearest win, whatever order the files have.   Evidence: NothingVanishes.NearestOfManyUnknownLines_IsAsked
std::vector<LineLot> lots_of(const std::vector<WaitingLine>& lines, std::size_t most_asked, std::size_t most_parts);

/// How many at each place, in the order in which the places were met.
class CountByPlace {
 public:
  void add(const std::string& place) {
    if (all_.empty() || all_.back().first != place) all_.emplace_back(place, 0);
    ++all_.back().second;
  }
  [[nodiscard]] const std::vector<std::pair<std::string, std::size_t>>& all() const { return all_; }

 private:
  std::vector<std::pair<std::string, std::size_t>> all_;
};

}  // namespace burrow

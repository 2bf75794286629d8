#include "burrow/clearance/course.h"

#include <algorithm>
#include <cmath>

#include "burrow/clearance/clearance.h"
#include "burrow/clearance/contact.h"
#include "burrow/crossing/statement.h"

namespace burrow {

namespace {

double reach_of(const std::optional<LineEnd>& end, double lateral_sd_m) {
  if (!end) return 0;
  return *end == LineEnd::edge_of_record ? goes_on_m : band_90_sd * lateral_sd_m;
}

/// A vertex that far beyond `end`, coming from `before`.
std::optional<PathVertex> beyond(const PathVertex& before, const PathVertex& end, double by_m) {
  const double dx = end.x_m - before.x_m, dy = end.y_m - before.y_m;
  const double dz = end.z_m && before.z_m ? *end.z_m - *before.z_m : 0;
  const double length = std::sqrt(dx * dx + dy * dy + dz * dz);
  if (!(length > 1e-9)) return std::nullopt;
  const double share = by_m / length;
  PathVertex vertex{end.x_m + share * dx, end.y_m + share * dy, end.z_m};
  if (vertex.z_m) *vertex.z_m += share * dz;
  return vertex;
}

}  // namespace

LineReach reach_of(const Utility& utility, double lateral_sd_m) {
  return {reach_of(utility.ends.first, lateral_sd_m), reach_of(utility.ends.last, lateral_sd_m)};
}

LineReach reach_of(const Utility& utility, const LevelLine& ground, const Tables& tables) {
  if (!utility.ends.first && !utility.ends.last) return {};
  const PathVertex* first = utility.path.empty() ? nullptr : &utility.path.front();
  const double depth =
      !first || !first->z_m || ground.empty() ? 0 : std::max(elevation_at(ground, first->x_m) - *first->z_m, 0.0);
  return reach_of(utility, location_sd(utility.located, tables, depth).lateral_m.value_or(0));
}

std::vector<PathVertex> lengthened(const std::vector<PathVertex>& path, const LineReach& reach) {
  if (path.size() < 2) return path;
  // A vertex entered twice shows no direction: the last one that lies elsewhere does.
  const auto first = [&]() -> std::optional<PathVertex> {
    for (std::size_t i = 1; i < path.size(); ++i)
      if (const auto vertex = beyond(path[i], path.front(), reach.first_m)) return vertex;
    return std::nullopt;
  };
  const auto last = [&]() -> std::optional<PathVertex> {
    for (std::size_t i = path.size() - 1; i-- > 0;)
      if (const auto vertex = beyond(path[i], path.back(), reach.last_m)) return vertex;
    return std::nullopt;
  };
  std::vector<PathVertex> line;
  line.reserve(path.size() + 2);
  if (reach.first_m > 0)
    if (const auto vertex = first()) line.push_back(*vertex);
  line.insert(line.end(), path.begin(), path.end());
  if (reach.last_m > 0)
    if (const auto vertex = last()) line.push_back(*vertex);
  return line;
}

std::vector<PathVertex> judged_line(const Utility& utility, const LevelLine& ground, const Tables& tables) {
  return lengthened(utility.path, reach_of(utility, ground, tables));
}

bool may_be_live(const Utility& utility, const Tables& tables) {
  switch (*utility.status) {
    case UtilityStatus::live:
    case UtilityStatus::unknown:
      return true;
    case UtilityStatus::abandoned:
      return !vouched(utility.abandonment, tables.judged_on);
    case UtilityStatus::proposed:
      break;
  }
  return false;
}

}  // namespace burrow

#include "burrow/crossing/crossing.h"

#include <algorithm>
#include <set>

namespace burrow {

Crossing with_alternative(const Crossing& crossing, std::string_view id) {
  const auto it = std::find_if(crossing.alternatives.begin(), crossing.alternatives.end(),
                               [&](const Alternative& a) { return a.id == id; });
  if (it == crossing.alternatives.end()) return crossing;
  Crossing variant = crossing;
  if (it->bore) variant.bore = *it->bore;
  if (it->pipe) variant.pipe = *it->pipe;
  if (it->pits) variant.pits = *it->pits;
  if (it->air) variant.air = *it->air;
  variant.locks = it->locks;
  return variant;
}

std::string name_of_crs(std::string_view crs) {
  // WKT begins KIND["name", …; PROJJSON has "name": "…".
  constexpr std::string_view member = "\"name\"";
  const bool json = crs.starts_with('{');
  std::size_t from = json ? crs.find(member) : crs.find('[');
  if (from == std::string_view::npos) return std::string(crs);
  from = crs.find('"', json ? from + member.size() : from);
  const std::size_t to = from == std::string_view::npos ? from : crs.find('"', from + 1);
  return std::string(to == std::string_view::npos ? crs : crs.substr(from + 1, to - from - 1));
}

namespace {
template <class List>
void collect_ids(const List& list, std::set<std::string, std::less<>>& ids) {
  for (const auto& element : list) ids.insert(element.id);
}
}  // namespace

std::string free_id(const Crossing& crossing, std::string_view prefix) {
  std::set<std::string, std::less<>> ids;
  const Site& site = crossing.site;
  collect_ids(site.strata, ids);
  collect_ids(site.strips, ids);
  collect_ids(site.surface, ids);
  collect_ids(site.boundaries, ids);
  collect_ids(site.trees, ids);
  collect_ids(site.plant, ids);
  collect_ids(site.utilities, ids);
  collect_ids(site.test_holes, ids);
  collect_ids(site.background, ids);
  collect_ids(crossing.record, ids);
  collect_ids(crossing.alternatives, ids);
  // Ids are never given out again while anything still names them.
  for (const TestHole& hole : site.test_holes) ids.insert(hole.utility);
  for (const Mute& mute : crossing.muted) ids.insert(mute.subject);
  for (const std::string& lock : crossing.locks)
    for (std::size_t from = 0; from < lock.size();) {
      const std::size_t to = std::min(lock.find('/', from), lock.size());
      ids.insert(lock.substr(from, to - from));
      from = to + 1;
    }
  for (int n = 1;; ++n) {
    std::string id = std::string(prefix) + std::to_string(n);
    if (!ids.contains(id)) return id;
  }
}

}  // namespace burrow

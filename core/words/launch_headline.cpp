/// What the search answers, in a few sentences.

#include "burrow/language/say.h"
#include "burrow/search/launch_rank.h"
#include "burrow/words/launch_text.h"

namespace burrow {

namespace {

std::string everywhere_words(const LaunchMap& map, UnitSystem units) {
  std::string stops;
  for (const Finding& finding : map.everywhere) {
    if (finding.severity != Severity::stop) continue;
    if (!stops.empty()) stops += "; ";
    stops += finding_text(finding, units);
  }
  return stops;
}

std::string chance_words(const LaunchCell& cell, UnitSystem units) {
  return cell.chance_clean ? format(*cell.chance_clean, Dimension::chance, units)
                           : std::string(translated("not known"));
}

/// Where a launch without a stop stands back, since the present one is cleaner.
std::string stands_back(const LaunchMap& map, UnitSystem units) {
  return say(
      "No launch without a stop has as great a chance of a clean bore as the one that stands, {}. By the limits alone: "
      "{}, with {}.",
      chance_words(map.here, units), place_text(map.over, map.best_by_limits->place, units),
      chance_words(*map.best_by_limits, units));
}

std::string best_words(const LaunchMap& map, UnitSystem units) {
  const LaunchCell& best = *map.best;
  const std::string place = place_text(map.over, best.place, units);
  if (!map.works && !best.arrives) return translated("No launch on this map arrives.");
  if (!map.works)
    return say("No launch on this map works. The nearest: {}, {}.", place, binding_text(map, best, units));
  if (best.verdict == Verdict::stop) return stands_back(map, units);
  const std::string binds =
      best.binds < 0 ? std::string() : limit_title(map.limits[static_cast<std::size_t>(best.binds)]);
  const std::string margin = margin_text(best);
  if (best.margin < 0)
    return say("Best launch: {}. No stop, but not without a caution; the worst: {}, {}.", place, binds, margin);
  if (best.verdict == Verdict::within_limits && map.everywhere.empty())
    return binds.empty() ? say("Best launch: {}.", place) : say("Best launch: {}; least {}: {}.", place, margin, binds);
  if (binds.empty()) return say("Best launch: {}. No limit is broken, but it is not without a caution.", place);
  return say("Best launch: {}. No limit is broken, but it is not without a caution; least {}: {}.", place, margin,
             binds);
}

std::string missing_words(const LaunchCell& best) {
  if (best.missing == 0) return {};
  return say_count("Incomplete: one thing is not known, and nothing here counts it.",
                   "Incomplete: {} things are not known, and nothing here counts them.", best.missing);
}

/// A better one by the limits, told where a launch is recommended in its place.
std::string cleaner_words(const LaunchMap& map, UnitSystem units) {
  if (!map.best_by_limits || map.best->verdict == Verdict::stop) return {};
  if (!launch::better(*map.best_by_limits, *map.best, {})) return {};
  const double less = map.here.chance_clean.value_or(0) - map.best_by_limits->chance_clean.value_or(0);
  if (map.best_by_limits->chance_clean && less < half_shown_chance) return {};  // it would say one number twice
  return say(
      "By the limits alone {} would be better, but its chance of a clean bore is {}, that of the one that stands {}.",
      place_text(map.over, map.best_by_limits->place, units), chance_words(*map.best_by_limits, units),
      chance_words(map.here, units));
}

std::string reason(MapOver over, const MapEdge& edge) {
  if (!edge.last) return translated("what lies beyond was not searched");
  const bool depth = over == MapOver::depth_and_grade;
  switch (edge.side) {
    case MapSide::across_from:
      return depth ? translated("steeper launches are not searched")
                   : translated("launches further back are not searched");
    case MapSide::across_to:
      return depth ? translated("steeper launches are not searched")
                   : translated("launches nearer to the exit are not searched");
    case MapSide::down_from:
      return depth ? translated("less cover is not searched") : translated("launches further aside are not searched");
    case MapSide::down_to:
      break;
  }
  return depth ? translated("a deeper pit wants an engineer") : translated("launches further aside are not searched");
}

}  // namespace

std::string edge_text(const LaunchMap& map) {
  if (map.edges.empty()) return {};
  std::string reasons;
  for (const MapEdge& edge : map.edges) {
    const std::string one = reason(map.over, edge);
    if (reasons.find(one) != std::string::npos) continue;
    if (!reasons.empty()) reasons += "; ";
    reasons += one;
  }
  return say("It lies on the edge of the map: {}.", reasons);
}

std::string search_headline(const LaunchMap& map, UnitSystem units) {
  if (!map.best) return translated("Nothing was judged.");
  if (const std::string stops = everywhere_words(map, units); !stops.empty())
    return sentences({say("No launch works: {}, wherever the launch is.", stops), missing_words(*map.best)});
  const bool names_it = (map.works || map.best->arrives) && !(map.works && map.best->verdict == Verdict::stop);
  return sentences({best_words(map, units), cleaner_words(map, units), names_it ? edge_text(map) : std::string(),
                    missing_words(*map.best)});
}

}  // namespace burrow

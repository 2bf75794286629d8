#include "burrow/document/part.h"

#include <algorithm>

#include "burrow/base/ensure.h"
#include "burrow/base/say.h"

namespace burrow {

namespace {

template <class T>
Element<T> take_element(const std::vector<T>& list, const std::string& id) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const T& e) { return e.id == id; });
  if (it == list.end()) return {std::nullopt, list.size()};
  return {*it, static_cast<std::size_t>(it - list.begin())};
}

template <class T>
void put_element(std::vector<T>& list, const std::string& id, Element<T> element) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const T& e) { return e.id == id; });
  if (it != list.end() && element.value) {
    *it = std::move(*element.value);
  } else if (it != list.end()) {
    list.erase(it);
  } else if (element.value) {
    const std::size_t at = std::min(element.at, list.size());
    list.insert(list.begin() + static_cast<std::ptrdiff_t>(at), std::move(*element.value));
  }
}

std::string edge_name(const PartRef& part) {
  if (part.index >= first_floor_corner) return say("corner {} of the floor", part.index - first_floor_corner + 1);
  switch (static_cast<PitEdge>(part.index)) {
    case PitEdge::floor_back:
      return burrow::translated("far end of the floor");
    case PitEdge::floor_level:
      return burrow::translated("level of the floor");
    case PitEdge::floor_left:
      return burrow::translated("left edge of the floor");
    case PitEdge::floor_right:
      return burrow::translated("right edge of the floor");
    case PitEdge::top_bore:
      return burrow::translated("top of the bore side");
    case PitEdge::top_back:
      return burrow::translated("top of the back");
    case PitEdge::top_left:
      return burrow::translated("top of the left side");
    case PitEdge::top_right:
      return burrow::translated("top of the right side");
  }
  return {};
}

std::string pit_edge_name(const PartRef& part) {
  const std::string pit = part.id == "launch" ? burrow::translated("launch pit") : burrow::translated("exit pit");
  const std::string edge = edge_name(part);
  return edge.empty() ? pit : pit + ", " + edge;
}

template <class T>
T expect(PartValue&& value) {
  BURROW_ENSURE(std::holds_alternative<T>(value));
  return std::get<T>(std::move(value));
}

}  // namespace

PartValue take(const Crossing& crossing, const PartRef& part) {
  switch (part.kind) {
    case PartKind::launch:
    case PartKind::grade:
      return crossing.bore.launch;
    case PartKind::exit:
      return crossing.bore.exit;
    case PartKind::utility:
      return take_element(crossing.site.utilities, part.id);
    case PartKind::utility_and_holes:
      return UtilityAndHoles{take_element(crossing.site.utilities, part.id), crossing.site.test_holes};
    case PartKind::test_holes:
      return crossing.site.test_holes;
    case PartKind::utility_search:
      return crossing.site.utility_search;
    case PartKind::ground:
      return crossing.site.ground;
    case PartKind::strips:
      return crossing.site.strips;
    case PartKind::stratum:
      return take_element(crossing.site.strata, part.id);
    case PartKind::water:
      return crossing.site.water;
    case PartKind::surface:
      return take_element(crossing.site.surface, part.id);
    case PartKind::pits:
    case PartKind::pit_edge:
      return crossing.pits;
    case PartKind::pipe:
      return crossing.pipe;
    case PartKind::tool:
      return crossing.bore.tool;
    case PartKind::model:
      return crossing.bore.model;
    case PartKind::trials:
      return crossing.bore.trials;
    case PartKind::head_located:
      return crossing.bore.head_located;
    case PartKind::name:
      return crossing.name;
    case PartKind::site:
      return crossing.site;
    case PartKind::air:
      return crossing.air;
    case PartKind::record:
      return take_element(crossing.record, part.id);
    case PartKind::practice:
      return crossing.practice;
    case PartKind::layouts:
      return Layouts{crossing.bore, crossing.pipe, crossing.pits, crossing.air, crossing.locks, crossing.alternatives};
    case PartKind::muted:
      return crossing.muted;
    case PartKind::none:
      break;
  }
  return std::monostate{};
}

void put(Crossing& crossing, const PartRef& part, PartValue value) {
  switch (part.kind) {
    case PartKind::launch:
    case PartKind::grade:
      crossing.bore.launch = expect<Launch>(std::move(value));
      return;
    case PartKind::exit:
      crossing.bore.exit = expect<Exit>(std::move(value));
      return;
    case PartKind::utility:
      put_element(crossing.site.utilities, part.id, expect<Element<Utility>>(std::move(value)));
      return;
    case PartKind::utility_and_holes: {
      auto both = expect<UtilityAndHoles>(std::move(value));
      put_element(crossing.site.utilities, part.id, std::move(both.utility));
      crossing.site.test_holes = std::move(both.holes);
      return;
    }
    case PartKind::test_holes:
      crossing.site.test_holes = expect<std::vector<TestHole>>(std::move(value));
      return;
    case PartKind::utility_search:
      crossing.site.utility_search = expect<UtilitySearch>(std::move(value));
      return;
    case PartKind::ground:
      crossing.site.ground = expect<LevelLine>(std::move(value));
      return;
    case PartKind::strips:
      crossing.site.strips = expect<std::vector<Strip>>(std::move(value));
      return;
    case PartKind::stratum:
      put_element(crossing.site.strata, part.id, expect<Element<Stratum>>(std::move(value)));
      return;
    case PartKind::water:
      crossing.site.water = expect<std::optional<LevelLine>>(std::move(value));
      return;
    case PartKind::surface:
      put_element(crossing.site.surface, part.id, expect<Element<SurfaceFeature>>(std::move(value)));
      return;
    case PartKind::pits:
    case PartKind::pit_edge:
      crossing.pits = expect<Pits>(std::move(value));
      return;
    case PartKind::pipe:
      crossing.pipe = expect<std::optional<Pipe>>(std::move(value));
      return;
    case PartKind::tool:
      crossing.bore.tool = expect<ToolChoice>(std::move(value));
      return;
    case PartKind::model:
      crossing.bore.model = expect<ModelConstants>(std::move(value));
      return;
    case PartKind::trials:
      crossing.bore.trials = expect<TrialsRequest>(std::move(value));
      return;
    case PartKind::head_located:
      crossing.bore.head_located = expect<Statement>(std::move(value));
      return;
    case PartKind::name:
      crossing.name = expect<std::string>(std::move(value));
      return;
    case PartKind::site:
      crossing.site = expect<Site>(std::move(value));
      return;
    case PartKind::air:
      crossing.air = expect<Air>(std::move(value));
      return;
    case PartKind::record:
      put_element(crossing.record, part.id, expect<Element<DayRecord>>(std::move(value)));
      return;
    case PartKind::practice:
      crossing.practice = expect<std::string>(std::move(value));
      return;
    case PartKind::layouts: {
      auto layouts = expect<Layouts>(std::move(value));
      crossing.bore = std::move(layouts.bore);
      crossing.pipe = std::move(layouts.pipe);
      crossing.pits = std::move(layouts.pits);
      crossing.air = std::move(layouts.air);
      crossing.locks = std::move(layouts.locks);
      crossing.alternatives = std::move(layouts.alternatives);
      return;
    }
    case PartKind::muted:
      crossing.muted = expect<std::vector<Mute>>(std::move(value));
      return;
    case PartKind::none:
      return;
  }
}

bool holds(const Crossing& crossing, const PartRef& part) {
  const auto in = [&](const auto& list) {
    return std::any_of(list.begin(), list.end(), [&](const auto& e) { return e.id == part.id; });
  };
  const auto vertex = [&](std::size_t count) { return part.index < 0 || static_cast<std::size_t>(part.index) < count; };
  switch (part.kind) {
    case PartKind::utility:
    case PartKind::utility_and_holes:
      for (const Utility& u : crossing.site.utilities)
        if (u.id == part.id) return vertex(u.path.size());
      return false;
    case PartKind::surface:
      return in(crossing.site.surface);
    case PartKind::stratum:
      for (const Stratum& s : crossing.site.strata)
        if (s.id == part.id) return vertex(s.top ? s.top->size() : 0);
      return false;
    case PartKind::ground:
      return vertex(crossing.site.ground.size());
    case PartKind::record:
      return in(crossing.record);
    case PartKind::water:
      return crossing.site.water && vertex(crossing.site.water->size());
    default:
      return true;
  }
}

bool part_locked(const Crossing& crossing, const PartRef& part) {
  switch (part.kind) {
    case PartKind::launch:
      return member_locked(crossing, "/bore/launch");
    case PartKind::grade:
      return member_locked(crossing, "/bore/launch");
    case PartKind::exit:
      return member_locked(crossing, "/bore/exit");
    case PartKind::utility:
      return member_locked(crossing, "/site/utilities/" + part.id + "/path");
    case PartKind::ground:
      return member_locked(crossing, "/site/ground");
    case PartKind::stratum:
      return member_locked(crossing, "/site/strata/" + part.id + "/top");
    case PartKind::water:
      return member_locked(crossing, "/site/water");
    case PartKind::surface:
      return member_locked(crossing, "/site/surface/" + part.id);
    case PartKind::pits:
      return member_locked(crossing, "/pits");
    case PartKind::pit_edge:
      return member_locked(crossing, "/pits/" + part.id);
    case PartKind::tool:
      return member_locked(crossing, "/bore/tool");
    case PartKind::model:
      return member_locked(crossing, "/bore/model");
    case PartKind::trials:
      return member_locked(crossing, "/bore/trials");
    case PartKind::head_located:
      return member_locked(crossing, "/bore/head_located");
    default:
      return false;
  }
}

std::string part_name(const Crossing& crossing, const PartRef& part) {
  const auto named = [&](const auto& list, const char* what) -> std::string {
    for (const auto& element : list)
      if (element.id == part.id) return element.name.empty() ? std::string(what) + " " + element.id : element.name;
    return what;
  };
  switch (part.kind) {
    case PartKind::launch:
      return burrow::translated("launch pit");
    case PartKind::grade:
      return burrow::translated("launch grade");
    case PartKind::exit:
      return burrow::translated("exit pit");
    case PartKind::utility_and_holes:
    case PartKind::utility:
      return named(crossing.site.utilities, burrow::translated("utility"));
    case PartKind::test_holes:
      return burrow::translated("test holes");
    case PartKind::utility_search:
      return burrow::translated("utility search");
    case PartKind::ground:
      return part.index < 0 ? burrow::translated("ground line") : burrow::translated("ground point");
    case PartKind::strips:
      return burrow::translated("strips of other soil");
    case PartKind::stratum: {
      for (const Stratum& s : crossing.site.strata)
        if (s.id == part.id) return say("top of {}", s.soil);
      return burrow::translated("stratum");
    }
    case PartKind::water:
      return burrow::translated("water line");
    case PartKind::surface:
      return named(crossing.site.surface, burrow::translated("surface"));
    case PartKind::pits:
      return burrow::translated("pits");
    case PartKind::pit_edge:
      return pit_edge_name(part);
    case PartKind::pipe:
      return burrow::translated("pipe");
    case PartKind::tool:
      return burrow::translated("tool");
    case PartKind::model:
      return burrow::translated("path model");
    case PartKind::trials:
      return burrow::translated("random trials");
    case PartKind::head_located:
      return burrow::translated("location of the head");
    case PartKind::name:
      return burrow::translated("name");
    case PartKind::site:
      return burrow::translated("site");
    case PartKind::air:
      return burrow::translated("air");
    case PartKind::record:
      return burrow::translated("record");
    case PartKind::practice:
      return burrow::translated("practice bore");
    case PartKind::layouts:
      return burrow::translated("layouts");
    case PartKind::muted:
      return burrow::translated("muted findings");
    case PartKind::none:
      break;
  }
  return {};
}

std::string part_subject(const PartRef& part) {
  switch (part.kind) {
    case PartKind::launch:
      return "launch-pit";
    case PartKind::exit:
      return "exit-pit";
    case PartKind::pit_edge:
      return part.id + "-pit";
    case PartKind::grade:
    case PartKind::tool:
    case PartKind::model:
    case PartKind::trials:
    case PartKind::head_located:
      return "bore";
    case PartKind::pipe:
      return "pipe";
    case PartKind::air:
      return "air";
    case PartKind::utility_search:
      return "site";
    case PartKind::utility:
    case PartKind::surface:
    case PartKind::stratum:
      return part.id;
    default:
      return {};
  }
}

}  // namespace burrow

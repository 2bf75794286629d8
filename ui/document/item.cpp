#include "burrow/document/item.h"

#include <algorithm>

#include "burrow/base/ensure.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

template <class T>
ListSlot<T> take_element(const std::vector<T>& list, const std::string& id) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const T& e) { return e.id == id; });
  if (it == list.end()) return {std::nullopt, list.size()};
  return {*it, static_cast<std::size_t>(it - list.begin())};
}

template <class T>
void put_element(std::vector<T>& list, const std::string& id, ListSlot<T> element) {
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

std::string edge_name(const ItemRef& part) {
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

std::string pit_edge_name(const ItemRef& part) {
  const std::string pit = part.id == "launch" ? burrow::translated("launch pit") : burrow::translated("exit pit");
  const std::string edge = edge_name(part);
  return edge.empty() ? pit : pit + ", " + edge;
}

template <class T>
T expect(ItemValue&& value) {
  BURROW_ENSURE(std::holds_alternative<T>(value));
  return std::get<T>(std::move(value));
}

}  // namespace

ItemValue value_of(const Crossing& crossing, const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::launch:
    case ItemKind::grade:
      return crossing.bore.launch;
    case ItemKind::exit:
      return crossing.bore.exit;
    case ItemKind::utility:
      return take_element(crossing.site.utilities, part.id);
    case ItemKind::utility_and_holes:
      return UtilityAndHoles{take_element(crossing.site.utilities, part.id), crossing.site.test_holes};
    case ItemKind::test_holes:
      return crossing.site.test_holes;
    case ItemKind::utility_search:
      return crossing.site.utility_search;
    case ItemKind::ground:
      return crossing.site.ground;
    case ItemKind::strips:
      return crossing.site.strips;
    case ItemKind::stratum:
      return take_element(crossing.site.strata, part.id);
    case ItemKind::water:
      return crossing.site.water;
    case ItemKind::surface:
      return take_element(crossing.site.surface, part.id);
    case ItemKind::pits:
    case ItemKind::pit_edge:
      return crossing.pits;
    case ItemKind::pipe:
      return crossing.pipe;
    case ItemKind::tool:
      return crossing.bore.tool;
    case ItemKind::model:
      return crossing.bore.model;
    case ItemKind::trials:
      return crossing.bore.trials;
    case ItemKind::head_located:
      return crossing.bore.head_located;
    case ItemKind::name:
      return crossing.name;
    case ItemKind::site:
      return crossing.site;
    case ItemKind::air:
      return crossing.air;
    case ItemKind::record:
      return take_element(crossing.record, part.id);
    case ItemKind::practice:
      return crossing.practice;
    case ItemKind::layouts:
      return Layouts{crossing.bore, crossing.pipe, crossing.pits, crossing.air, crossing.locks, crossing.alternatives};
    case ItemKind::muted:
      return crossing.muted;
    case ItemKind::none:
      break;
  }
  return std::monostate{};
}

void set_value(Crossing& crossing, const ItemRef& part, ItemValue value) {
  switch (part.kind) {
    case ItemKind::launch:
    case ItemKind::grade:
      crossing.bore.launch = expect<Launch>(std::move(value));
      return;
    case ItemKind::exit:
      crossing.bore.exit = expect<Exit>(std::move(value));
      return;
    case ItemKind::utility:
      put_element(crossing.site.utilities, part.id, expect<ListSlot<Utility>>(std::move(value)));
      return;
    case ItemKind::utility_and_holes: {
      auto both = expect<UtilityAndHoles>(std::move(value));
      put_element(crossing.site.utilities, part.id, std::move(both.utility));
      crossing.site.test_holes = std::move(both.holes);
      return;
    }
    case ItemKind::test_holes:
      crossing.site.test_holes = expect<std::vector<TestHole>>(std::move(value));
      return;
    case ItemKind::utility_search:
      crossing.site.utility_search = expect<UtilitySearch>(std::move(value));
      return;
    case ItemKind::ground:
      crossing.site.ground = expect<LevelLine>(std::move(value));
      return;
    case ItemKind::strips:
      crossing.site.strips = expect<std::vector<Strip>>(std::move(value));
      return;
    case ItemKind::stratum:
      put_element(crossing.site.strata, part.id, expect<ListSlot<Stratum>>(std::move(value)));
      return;
    case ItemKind::water:
      crossing.site.water = expect<std::optional<LevelLine>>(std::move(value));
      return;
    case ItemKind::surface:
      put_element(crossing.site.surface, part.id, expect<ListSlot<SurfaceFeature>>(std::move(value)));
      return;
    case ItemKind::pits:
    case ItemKind::pit_edge:
      crossing.pits = expect<Pits>(std::move(value));
      return;
    case ItemKind::pipe:
      crossing.pipe = expect<std::optional<Pipe>>(std::move(value));
      return;
    case ItemKind::tool:
      crossing.bore.tool = expect<ToolChoice>(std::move(value));
      return;
    case ItemKind::model:
      crossing.bore.model = expect<ModelConstants>(std::move(value));
      return;
    case ItemKind::trials:
      crossing.bore.trials = expect<TrialsRequest>(std::move(value));
      return;
    case ItemKind::head_located:
      crossing.bore.head_located = expect<Statement>(std::move(value));
      return;
    case ItemKind::name:
      crossing.name = expect<std::string>(std::move(value));
      return;
    case ItemKind::site:
      crossing.site = expect<Site>(std::move(value));
      return;
    case ItemKind::air:
      crossing.air = expect<Air>(std::move(value));
      return;
    case ItemKind::record:
      put_element(crossing.record, part.id, expect<ListSlot<DayRecord>>(std::move(value)));
      return;
    case ItemKind::practice:
      crossing.practice = expect<std::string>(std::move(value));
      return;
    case ItemKind::layouts: {
      auto layouts = expect<Layouts>(std::move(value));
      crossing.bore = std::move(layouts.bore);
      crossing.pipe = std::move(layouts.pipe);
      crossing.pits = std::move(layouts.pits);
      crossing.air = std::move(layouts.air);
      crossing.locks = std::move(layouts.locks);
      crossing.alternatives = std::move(layouts.alternatives);
      return;
    }
    case ItemKind::muted:
      crossing.muted = expect<std::vector<Mute>>(std::move(value));
      return;
    case ItemKind::none:
      return;
  }
}

bool exists_in(const Crossing& crossing, const ItemRef& part) {
  const auto in = [&](const auto& list) {
    return std::any_of(list.begin(), list.end(), [&](const auto& e) { return e.id == part.id; });
  };
  const auto vertex = [&](std::size_t count) { return part.index < 0 || static_cast<std::size_t>(part.index) < count; };
  switch (part.kind) {
    case ItemKind::utility:
    case ItemKind::utility_and_holes:
      for (const Utility& u : crossing.site.utilities)
        if (u.id == part.id) return vertex(u.path.size());
      return false;
    case ItemKind::surface:
      return in(crossing.site.surface);
    case ItemKind::stratum:
      for (const Stratum& s : crossing.site.strata)
        if (s.id == part.id) return vertex(s.top ? s.top->size() : 0);
      return false;
    case ItemKind::ground:
      return vertex(crossing.site.ground.size());
    case ItemKind::record:
      return in(crossing.record);
    case ItemKind::water:
      return crossing.site.water && vertex(crossing.site.water->size());
    default:
      return true;
  }
}

bool part_locked(const Crossing& crossing, const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::launch:
      return member_locked(crossing, "/bore/launch");
    case ItemKind::grade:
      return member_locked(crossing, "/bore/launch");
    case ItemKind::exit:
      return member_locked(crossing, "/bore/exit");
    case ItemKind::utility:
      return member_locked(crossing, "/site/utilities/" + part.id + "/path");
    case ItemKind::ground:
      return member_locked(crossing, "/site/ground");
    case ItemKind::stratum:
      return member_locked(crossing, "/site/strata/" + part.id + "/top");
    case ItemKind::water:
      return member_locked(crossing, "/site/water");
    case ItemKind::surface:
      return member_locked(crossing, "/site/surface/" + part.id);
    case ItemKind::pits:
      return member_locked(crossing, "/pits");
    case ItemKind::pit_edge:
      return member_locked(crossing, "/pits/" + part.id);
    case ItemKind::tool:
      return member_locked(crossing, "/bore/tool");
    case ItemKind::model:
      return member_locked(crossing, "/bore/model");
    case ItemKind::trials:
      return member_locked(crossing, "/bore/trials");
    case ItemKind::head_located:
      return member_locked(crossing, "/bore/head_located");
    default:
      return false;
  }
}

std::string part_name(const Crossing& crossing, const ItemRef& part) {
  const auto named = [&](const auto& list, const char* what) -> std::string {
    for (const auto& element : list)
      if (element.id == part.id) return element.name.empty() ? std::string(what) + " " + element.id : element.name;
    return what;
  };
  switch (part.kind) {
    case ItemKind::launch:
      return burrow::translated("launch pit");
    case ItemKind::grade:
      return burrow::translated("launch grade");
    case ItemKind::exit:
      return burrow::translated("exit pit");
    case ItemKind::utility_and_holes:
    case ItemKind::utility:
      return named(crossing.site.utilities, burrow::translated("utility"));
    case ItemKind::test_holes:
      return burrow::translated("test holes");
    case ItemKind::utility_search:
      return burrow::translated("utility search");
    case ItemKind::ground:
      return part.index < 0 ? burrow::translated("ground line") : burrow::translated("ground point");
    case ItemKind::strips:
      return burrow::translated("strips of other soil");
    case ItemKind::stratum: {
      for (const Stratum& s : crossing.site.strata)
        if (s.id == part.id) return say("top of {}", s.soil);
      return burrow::translated("stratum");
    }
    case ItemKind::water:
      return burrow::translated("water line");
    case ItemKind::surface:
      return named(crossing.site.surface, burrow::translated("surface"));
    case ItemKind::pits:
      return burrow::translated("pits");
    case ItemKind::pit_edge:
      return pit_edge_name(part);
    case ItemKind::pipe:
      return burrow::translated("pipe");
    case ItemKind::tool:
      return burrow::translated("tool");
    case ItemKind::model:
      return burrow::translated("path model");
    case ItemKind::trials:
      return burrow::translated("random trials");
    case ItemKind::head_located:
      return burrow::translated("location of the head");
    case ItemKind::name:
      return burrow::translated("name");
    case ItemKind::site:
      return burrow::translated("site");
    case ItemKind::air:
      return burrow::translated("air");
    case ItemKind::record:
      return burrow::translated("record");
    case ItemKind::practice:
      return burrow::translated("practice bore");
    case ItemKind::layouts:
      return burrow::translated("layouts");
    case ItemKind::muted:
      return burrow::translated("muted findings");
    case ItemKind::none:
      break;
  }
  return {};
}

std::string part_subject(const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::launch:
      return "launch-pit";
    case ItemKind::exit:
      return "exit-pit";
    case ItemKind::pit_edge:
      return part.id + "-pit";
    case ItemKind::grade:
    case ItemKind::tool:
    case ItemKind::model:
    case ItemKind::trials:
    case ItemKind::head_located:
      return "bore";
    case ItemKind::pipe:
      return "pipe";
    case ItemKind::air:
      return "air";
    case ItemKind::utility_search:
      return "site";
    case ItemKind::utility:
    case ItemKind::surface:
    case ItemKind::stratum:
      return part.id;
    default:
      return {};
  }
}

}  // namespace burrow

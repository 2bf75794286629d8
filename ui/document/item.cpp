#include "burrow/document/item.h"

#include <algorithm>

#include "burrow/crossing/find.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

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

/// Of whatever list holds that id.
std::string around_part_name(const Crossing& crossing, const std::string& id) {
  std::string name;
  const auto look = [&](const auto& list) {
    if (const auto* one = find_by_id(list, id)) name = one->name.empty() ? one->id : one->name;
  };
  look(crossing.site.boundaries);
  look(crossing.site.trees);
  look(crossing.site.plant);
  look(crossing.site.strips);
  return name;
}

std::string hole_name(const Crossing& crossing, const std::string& id) {
  const TestHole* hole = find_by_id(crossing.site.test_holes, id);
  if (!hole) return burrow::translated("test holes");
  const Utility* utility = find_by_id(crossing.site.utilities, hole->utility);
  if (!utility) return say("test hole {}", id);
  return say("test hole {} at {}", id, utility->name.empty() ? utility->id : utility->name);
}

/// Of whatever list holds that id: its corners; none where it has none.
std::size_t corners_around(const Crossing& crossing, const std::string& id) {
  if (const Boundary* boundary = find_by_id(crossing.site.boundaries, id)) return boundary->line.size();
  if (const Strip* strip = find_by_id(crossing.site.strips, id)) return strip->outline.size();
  return 0;
}

bool there_around(const Crossing& crossing, const std::string& id) {
  const Site& site = crossing.site;
  return find_by_id(site.boundaries, id) || find_by_id(site.trees, id) || find_by_id(site.plant, id) ||
         find_by_id(site.strips, id);
}

/// Any of them.
bool one_locked(const Crossing& crossing, const std::vector<std::string>& places) {
  return std::any_of(places.begin(), places.end(),
                     [&](const std::string& place) { return member_locked(crossing, place); });
}

std::string around_place(const Crossing& crossing, const std::string& id) {
  const Site& site = crossing.site;
  const char* list = find_by_id(site.boundaries, id) ? "boundaries"
                     : find_by_id(site.trees, id)    ? "trees"
                     : find_by_id(site.plant, id)    ? "plant"
                                                     : "strips";
  return std::string("/site/") + list + '/' + id;
}

}  // namespace

bool exists_in(const Crossing& crossing, const ItemRef& part) {
  const auto vertex = [&](std::size_t count) { return part.index < 0 || static_cast<std::size_t>(part.index) < count; };
  switch (part.kind) {
    case ItemKind::utility: {
      const Utility* utility = find_by_id(crossing.site.utilities, part.id);
      return utility && vertex(utility->path.size());
    }
    case ItemKind::surface: {
      const SurfaceFeature* feature = find_by_id(crossing.site.surface, part.id);
      return feature && (part.index < first_outline_corner ||
                         static_cast<std::size_t>(part.index - first_outline_corner) < feature->outline.size());
    }
    case ItemKind::test_holes:
      return part.id.empty() || find_by_id(crossing.site.test_holes, part.id);
    case ItemKind::around:
      return part.id.empty() ||
             (there_around(crossing, part.id) && (part.index < 0 || vertex(corners_around(crossing, part.id))));
    case ItemKind::stratum: {
      const Stratum* stratum = find_by_id(crossing.site.strata, part.id);
      return stratum && vertex(stratum->top ? stratum->top->size() : 0);
    }
    case ItemKind::ground:
      return vertex(crossing.site.ground.size());
    case ItemKind::water:
      return crossing.site.water && vertex(crossing.site.water->size());
    default:
      return true;
  }
}

std::vector<std::string> lock_places(const Crossing& crossing, const ItemRef& part) {
  std::vector<std::string> places;
  const auto launch = [&](std::initializer_list<const char*> members) {
    for (const char* member : members) places.push_back(std::string("/bore/launch/") + member);
  };
  switch (part.kind) {
    case ItemKind::launch:
      launch({"station_m", "elevation_m", "offset_m"});
      break;
    case ItemKind::grade:
      launch({"grade", "heading_rad"});
      break;
    case ItemKind::bore:
      launch({"station_m", "elevation_m", "offset_m"});
      [[fallthrough]];
    case ItemKind::exit:
      for (const char* member : {"station_m", "offset_m"}) places.push_back(std::string("/bore/exit/") + member);
      break;
    case ItemKind::utility:
      places.push_back("/site/utilities/" + part.id + "/path");
      break;
    case ItemKind::ground:
      places.emplace_back("/site/ground");
      break;
    case ItemKind::stratum:
      places.push_back("/site/strata/" + part.id + "/top");
      break;
    case ItemKind::water:
      places.emplace_back("/site/water");
      break;
    case ItemKind::surface:
      places.push_back("/site/surface/" + part.id);
      break;
    case ItemKind::test_holes:
      if (!part.id.empty()) places.push_back("/site/test_holes/" + part.id);
      break;
    case ItemKind::around:
      if (!part.id.empty()) places.push_back(around_place(crossing, part.id));
      break;
    case ItemKind::pit_edge:
      places.push_back("/pits/" + part.id);
      break;
    default:
      break;
  }
  return places;
}

bool is_surveyed(const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::utility:
    case ItemKind::test_holes:
    case ItemKind::ground:
    case ItemKind::stratum:
    case ItemKind::water:
    case ItemKind::surface:
    case ItemKind::around:
      return true;
    default:
      return false;
  }
}

bool part_locked(const Crossing& crossing, const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::launch:
    case ItemKind::grade:
    case ItemKind::exit: {  // as long as one member is free, that one moves
      const std::vector<std::string> places = lock_places(crossing, part);
      return std::all_of(places.begin(), places.end(),
                         [&](const std::string& place) { return member_locked(crossing, place); });
    }
    case ItemKind::bore:
    case ItemKind::utility:
    case ItemKind::ground:
    case ItemKind::stratum:
    case ItemKind::water:
    case ItemKind::surface:
    case ItemKind::test_holes:
    case ItemKind::around:
      return one_locked(crossing, lock_places(crossing, part));
    case ItemKind::pits:
      return member_locked(crossing, "/pits");
    case ItemKind::pit_edge:
      return member_locked(crossing, "/pits/" + part.id);
    case ItemKind::tool:
      return member_locked(crossing, "/bore/tool");
    case ItemKind::model:
      return member_locked(crossing, "/bore/model");
    case ItemKind::head_located:
      return member_locked(crossing, "/bore/head_located");
    default:
      return false;
  }
}

std::string part_name(const Crossing& crossing, const ItemRef& part) {
  const auto named = [&](const auto& list, const char* what) -> std::string {
    const auto* element = find_by_id(list, part.id);
    if (!element) return what;
    return element->name.empty() ? std::string(what) + " " + element->id : element->name;
  };
  switch (part.kind) {
    case ItemKind::launch:
      return burrow::translated("launch pit");
    case ItemKind::grade:
      return burrow::translated("launch grade");
    case ItemKind::exit:
      return burrow::translated("exit pit");
    case ItemKind::utility:
      return named(crossing.site.utilities, burrow::translated("utility"));
    case ItemKind::bore:
      return burrow::translated("whole bore");
    case ItemKind::test_holes:
      return hole_name(crossing, part.id);
    case ItemKind::utility_search:
      return burrow::translated("utility search");
    case ItemKind::ground:
      return part.index < 0 ? burrow::translated("ground line") : burrow::translated("ground point");
    case ItemKind::stratum: {
      const Stratum* stratum = find_by_id(crossing.site.strata, part.id);
      return stratum ? say("top of {}", stratum->soil) : burrow::translated("stratum");
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
    case ItemKind::head_located:
      return burrow::translated("location of the head");
    case ItemKind::site:
      return burrow::translated("site");
    case ItemKind::air:
      return burrow::translated("air");
    case ItemKind::practice:
      return burrow::translated("practice bore");
    case ItemKind::around:
      return around_part_name(crossing, part.id);
    case ItemKind::limit:
      return burrow::translated("limit");
    case ItemKind::sheet:
      return burrow::translated("sheet");
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
    case ItemKind::bore:
    case ItemKind::tool:
    case ItemKind::model:
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

#include "burrow/document/item.h"

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

}  // namespace

bool exists_in(const Crossing& crossing, const ItemRef& part) {
  const auto vertex = [&](std::size_t count) { return part.index < 0 || static_cast<std::size_t>(part.index) < count; };
  switch (part.kind) {
    case ItemKind::utility: {
      const Utility* utility = find_by_id(crossing.site.utilities, part.id);
      return utility && vertex(utility->path.size());
    }
    case ItemKind::surface:
      return find_by_id(crossing.site.surface, part.id) != nullptr;
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
    case ItemKind::test_holes:
      return burrow::translated("test holes");
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

#include "burrow/document/several.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "burrow/crossing/find.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/utility_fields.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

constexpr double beside_m = 0.5;
constexpr double farthest_m = 1e5, lowest_m = -1e4;

std::vector<Field> own_fields(const Crossing& crossing, const ItemRef& part, const Tables& tables) {
  switch (part.kind) {
    case ItemKind::stratum:
      return soil_fields(crossing, part.id, tables);
    case ItemKind::test_holes:
      return hole_fields(crossing, part.id);
    default:
      return fields_of(crossing, {part.kind, part.id, -1});
  }
}

/// Where a thing lies along and across, which is its own.
bool is_place(const Field& field) {
  return field.label.starts_with("station") || field.label.starts_with("offset") ||
         field.label.starts_with("from station") || field.label.starts_with("to station");
}

double moved_along(double station_m, double by) {
  return std::clamp(station_m + by, -farthest_m, farthest_m);
}

std::string copy_name(const std::string& name) {
  return name.empty() ? name : say("{} (copy)", name);
}

}  // namespace

bool may_be_several(const ItemRef& part) {
  return part.kind == ItemKind::utility || part.kind == ItemKind::surface || part.kind == ItemKind::stratum ||
         (part.kind == ItemKind::test_holes && !part.id.empty());
}

bool there_is(const Crossing& crossing, const ItemRef& part) {
  if (part.kind == ItemKind::test_holes && !part.id.empty())
    return find_by_id(crossing.site.test_holes, part.id) != nullptr;
  return exists_in(crossing, part);
}

namespace {

/// What is counted together: surface features by their own kind.
using Counted = std::pair<ItemKind, std::optional<SurfaceKind>>;

std::string counted_name(const Counted& counted, int n) {
  if (counted.first == ItemKind::utility) return say_count("{} utility", "{} utilities", n);
  if (counted.first == ItemKind::stratum) return say_count("{} stratum", "{} strata", n);
  if (!counted.second) return say_count("{} test hole", "{} test holes", n);
  switch (*counted.second) {
    case SurfaceKind::road:
      return say_count("{} road", "{} roads", n);
    case SurfaceKind::track:
      return say_count("{} track", "{} tracks", n);
    case SurfaceKind::ditch:
      return say_count("{} ditch", "{} ditches", n);
    case SurfaceKind::drive:
      return say_count("{} drive", "{} drives", n);
    case SurfaceKind::footway:
      return say_count("{} footway", "{} footways", n);
    case SurfaceKind::footing:
      return say_count("{} footing", "{} footings", n);
    case SurfaceKind::building:
      return say_count("{} building", "{} buildings", n);
    case SurfaceKind::wall:
      break;
  }
  return say_count("{} wall", "{} walls", n);
}

}  // namespace

std::string several_name(const Crossing& crossing, const std::vector<ItemRef>& parts) {
  std::map<Counted, int> counts;
  std::vector<Counted> order;
  for (const ItemRef& part : parts) {
    Counted kind{part.kind, std::nullopt};
    if (const SurfaceFeature* feature = find_by_id(crossing.site.surface, part.id);
        part.kind == ItemKind::surface && feature)
      kind.second = feature->kind;
    if (counts[kind]++ == 0) order.push_back(kind);
  }
  std::string name;
  for (const Counted& kind : order) name += (name.empty() ? "" : ", ") + counted_name(kind, counts[kind]);
  return name;
}

std::vector<Field> shared_fields(const Crossing& crossing, const std::vector<ItemRef>& parts, const Tables& tables) {
  if (parts.empty()) return {};
  std::vector<Field> shared = own_fields(crossing, parts.front(), tables);
  std::erase_if(shared, is_place);
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const std::vector<Field> own = own_fields(crossing, parts[i], tables);
    std::erase_if(shared, [&](Field& field) {
      const auto same = std::find_if(own.begin(), own.end(), [&](const Field& f) {
        return f.label == field.label && f.dimension == field.dimension;
      });
      if (same == own.end()) return true;
      if (same->value != field.value || same->entered != field.entered) field.mixed = true;
      field.low = std::max(field.low, same->low);
      field.high = std::min(field.high, same->high);
      field.may_be_empty = field.may_be_empty && same->may_be_empty;
      if (same->default_value != field.default_value) field.default_value.reset();
      return false;
    });
  }
  for (Field& field : shared) {
    if (field.mixed) {
      field.value.reset();
      field.default_value.reset();
    }
    const std::string label = field.label;
    const Tables* known = &tables;
    /// The crossing with the value set for one after the other, or what the first that refuses says.
    const auto all_set = [label, parts, known](const Crossing& c, std::optional<double> value) -> Result<Crossing> {
      Crossing draft = c;
      for (const ItemRef& part : parts)
        for (const Field& own : own_fields(draft, part, *known)) {
          if (own.label != label) continue;
          if (own.validate)
            if (Result<void> holds = own.validate(draft, value); !holds) return tl::unexpected(holds.error());
          own.apply(draft, value);
          break;
        }
      return draft;
    };
    field.apply = [all_set](Crossing& c, std::optional<double> value) {
      if (Result<Crossing> set = all_set(c, value)) c = std::move(*set);
    };
    field.validate = [all_set](const Crossing& c, std::optional<double> value) -> Result<void> {
      if (const Result<Crossing> set = all_set(c, value); !set) return tl::unexpected(set.error());
      return {};
    };
  }
  return shared;
}

Site site_without(const Crossing& crossing, const std::vector<ItemRef>& parts) {
  Site site = crossing.site;
  for (const ItemRef& part : parts) {
    const auto this_one = [&](const auto& e) { return e.id == part.id; };
    switch (part.kind) {
      case ItemKind::utility:
        std::erase_if(site.utilities, this_one);
        std::erase_if(site.test_holes, [&](const TestHole& hole) { return hole.utility == part.id; });
        break;
      case ItemKind::surface:
        std::erase_if(site.surface, this_one);
        break;
      case ItemKind::test_holes:
        std::erase_if(site.test_holes, this_one);
        break;
      case ItemKind::stratum:
        if (site.strata.size() > 1) std::erase_if(site.strata, this_one);
        break;
      default:
        break;
    }
  }
  // The uppermost begins at the ground.
  if (!site.strata.empty() && site.strata.front().top && crossing.site.strata.front().id != site.strata.front().id)
    site.strata.front().top.reset();
  return site;
}

Copies site_with_copies(const Crossing& crossing, const std::vector<ItemRef>& parts) {
  Crossing draft = crossing;
  Copies copies;
  const auto add = [&](auto& list, auto copy, const char* prefix, ItemKind kind) {
    copy.id = free_id(draft, prefix);
    copies.parts.push_back({kind, copy.id, -1});
    list.push_back(std::move(copy));
  };
  for (const ItemRef& part : parts) {
    Site& site = draft.site;
    if (const Utility* u = find_by_id(site.utilities, part.id); part.kind == ItemKind::utility && u) {
      Utility copy = *u;
      copy.name = copy_name(copy.name);
      for (PathVertex& p : copy.path) p.x_m = moved_along(p.x_m, beside_m);
      add(site.utilities, std::move(copy), "u", ItemKind::utility);
    } else if (const SurfaceFeature* s = find_by_id(site.surface, part.id); part.kind == ItemKind::surface && s) {
      SurfaceFeature copy = *s;
      copy.name = copy_name(copy.name);
      for (std::optional<Length>* end : {&copy.from, &copy.to})
        if (*end) (*end)->m = moved_along((*end)->m, beside_m);
      for (PlanPoint& p : copy.outline) p.x_m = moved_along(p.x_m, beside_m);
      copy.levels = {};  // taken there, not here
      add(site.surface, std::move(copy), "f", ItemKind::surface);
    } else if (const TestHole* h = find_by_id(site.test_holes, part.id); part.kind == ItemKind::test_holes && h) {
      TestHole copy = *h;
      copy.station.m = moved_along(copy.station.m, beside_m);
      add(site.test_holes, std::move(copy), "h", ItemKind::test_holes);
    } else if (const Stratum* layer = find_by_id(site.strata, part.id); part.kind == ItemKind::stratum && layer) {
      Stratum copy = *layer;
      LevelLine top = copy.top ? *copy.top : site.ground;
      for (LevelPoint& p : top) p.elevation_m = std::max(p.elevation_m - beside_m, lowest_m);
      copy.top = top;
      copy.id = free_id(draft, "l");
      copies.parts.push_back({ItemKind::stratum, copy.id, -1});
      const auto at = std::find_if(site.strata.begin(), site.strata.end(),
                                   [&](const Stratum& other) { return other.id == part.id; });
      site.strata.insert(at + 1, std::move(copy));
    }
  }
  copies.site = std::move(draft.site);
  return copies;
}

}  // namespace burrow

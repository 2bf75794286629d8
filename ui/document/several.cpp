#include "burrow/document/several.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <type_traits>
#include <utility>

#include "burrow/crossing/find.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/surroundings.h"
#include "burrow/document/utility_fields.h"
#include "burrow/file/clip_file.h"
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
         ((part.kind == ItemKind::test_holes || part.kind == ItemKind::around) && !part.id.empty());
}

bool there_is(const Crossing& crossing, const ItemRef& part) {
  return exists_in(crossing, part);
}

namespace {

/// What is counted together: surface features by their own kind.
using Counted = std::pair<ItemKind, std::optional<SurfaceKind>>;

/// Boundaries, trees, machines and trenches by what they are.
std::optional<AroundKind> around_kind(const Crossing& crossing, const std::string& id) {
  for (const Around& one : surroundings(crossing))
    if (one.id == id) return one.kind;
  return std::nullopt;
}

std::string counted_around(AroundKind kind, int n) {
  switch (kind) {
    case AroundKind::boundary:
      return say_count("{} boundary", "{} boundaries", n);
    case AroundKind::tree:
      return say_count("{} tree", "{} trees", n);
    case AroundKind::machine:
      return say_count("{} machine", "{} machines", n);
    case AroundKind::trench:
      break;
  }
  return say_count("{} old trench", "{} old trenches", n);
}

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
  std::map<AroundKind, int> around;
  for (const ItemRef& part : parts) {
    if (part.kind == ItemKind::around) {
      if (const auto kind = around_kind(crossing, part.id)) ++around[*kind];
      continue;
    }
    Counted kind{part.kind, std::nullopt};
    if (const SurfaceFeature* feature = find_by_id(crossing.site.surface, part.id);
        part.kind == ItemKind::surface && feature)
      kind.second = feature->kind;
    if (counts[kind]++ == 0) order.push_back(kind);
  }
  std::string name;
  for (const Counted& kind : order) name += (name.empty() ? "" : ", ") + counted_name(kind, counts[kind]);
  for (const auto& [kind, n] : around) name += (name.empty() ? "" : ", ") + counted_around(kind, n);
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

namespace {

/// The list of a site that a kind of thing stands in, one after the other.
template <class Do>
void each_list(const Do& one) {
  one(&Site::strata, "l", ItemKind::stratum);
  one(&Site::strips, "s", ItemKind::around);
  one(&Site::surface, "f", ItemKind::surface);
  one(&Site::boundaries, "b", ItemKind::around);
  one(&Site::trees, "t", ItemKind::around);
  one(&Site::plant, "p", ItemKind::around);
  one(&Site::utilities, "u", ItemKind::utility);
  one(&Site::test_holes, "h", ItemKind::test_holes);
}

bool among(const std::vector<ItemRef>& parts, ItemKind kind, const std::string& id) {
  return std::any_of(parts.begin(), parts.end(),
                     [&](const ItemRef& part) { return part.kind == kind && part.id == id; });
}

/// One of these, or a hole at one of these.
template <class Thing>
bool goes_along(const std::vector<ItemRef>& parts, ItemKind kind, const Thing& one) {
  if (among(parts, kind, one.id)) return true;
  if constexpr (std::is_same_v<Thing, TestHole>) return among(parts, ItemKind::utility, one.utility);
  return false;
}

void shift(PlanLine& line, double along_m) {
  for (PlanPoint& p : line) p.x_m = moved_along(p.x_m, along_m);
}
void shift(Length& station, double along_m) {
  station.m = moved_along(station.m, along_m);
}
void shift(Utility& utility, double along_m) {
  for (PathVertex& p : utility.path) p.x_m = moved_along(p.x_m, along_m);
}
void shift(SurfaceFeature& feature, double along_m) {
  for (std::optional<Length>* end : {&feature.from, &feature.to})
    if (*end) shift(**end, along_m);
  shift(feature.outline, along_m);
  feature.levels = {};  // taken there, not here
}
void shift(Boundary& boundary, double along_m) {
  shift(boundary.line, along_m);
}
void shift(Strip& strip, double along_m) {
  shift(strip.outline, along_m);
}
void shift(Tree& tree, double along_m) {
  shift(tree.station, along_m);
}
void shift(Plant& machine, double along_m) {
  shift(machine.station, along_m);
}
void shift(TestHole& hole, double along_m) {
  shift(hole.station, along_m);
}
void shift(Stratum& stratum, double along_m) {
  if (stratum.top)
    for (LevelPoint& p : *stratum.top) p.station_m = moved_along(p.station_m, along_m);
}

/// What it is called, where it has a name.
template <class Thing>
auto* name_in(Thing& thing) {
  if constexpr (requires { thing.name; })
    return &thing.name;
  else
    return static_cast<std::string*>(nullptr);
}

/// Where a stratum belongs among others, from the top down: below the first with a higher top where its own begins.
std::ptrdiff_t place_among(const Site& site, const Stratum& fresh) {
  if (!fresh.top || fresh.top->empty()) return static_cast<std::ptrdiff_t>(site.strata.size());
  const double station = fresh.top->front().station_m, level = fresh.top->front().elevation_m;
  std::ptrdiff_t at = 0;
  for (const Stratum& other : site.strata) {
    const double top = elevation_at(other.top && !other.top->empty() ? *other.top : site.ground, station);
    if (top < level) break;
    ++at;
  }
  return std::clamp<std::ptrdiff_t>(at, site.strata.empty() ? 0 : 1, static_cast<std::ptrdiff_t>(site.strata.size()));
}

}  // namespace

std::vector<ItemRef> all_items(const Crossing& crossing) {
  std::vector<ItemRef> all;
  each_list([&](auto list, const char*, ItemKind kind) {
    for (const auto& one : crossing.site.*list) all.push_back({kind, one.id, -1});
  });
  return all;
}

bool same_kind(const Crossing& crossing, const ItemRef& one, const ItemRef& other) {
  if (one.kind != other.kind) return false;
  const auto both = [&](const auto& list, const auto& alike) {
    const auto *a = find_by_id(list, one.id), *b = find_by_id(list, other.id);
    return a && b && alike(*a, *b);
  };
  const Site& site = crossing.site;
  const auto kind = [](const auto& a, const auto& b) { return a.kind == b.kind; };
  const auto any = [](const auto&, const auto&) { return true; };
  switch (one.kind) {
    case ItemKind::utility:
      return both(site.utilities, kind);
    case ItemKind::surface:
      return both(site.surface, kind);
    case ItemKind::around:
      return both(site.boundaries, any) || both(site.trees, any) || both(site.plant, any) || both(site.strips, any);
    default:
      return true;
  }
}

Site site_without(const Crossing& crossing, const std::vector<ItemRef>& parts) {
  Site site = crossing.site;
  each_list([&](auto list, const char*, ItemKind kind) {
    auto& all = site.*list;
    auto left = all;
    std::erase_if(left, [&](const auto& one) { return goes_along(parts, kind, one); });
    if (kind == ItemKind::stratum && left.empty() && !all.empty()) left = {all.front()};
    all = std::move(left);
  });
  // The uppermost begins at the ground.
  if (!site.strata.empty() && site.strata.front().top && crossing.site.strata.front().id != site.strata.front().id)
    site.strata.front().top.reset();
  return site;
}

Site clip_of(const Crossing& crossing, const std::vector<ItemRef>& parts) {
  Site clip;
  each_list([&](auto list, const char*, ItemKind kind) {
    for (const auto& one : crossing.site.*list)
      if (goes_along(parts, kind, one)) (clip.*list).push_back(one);
  });
  // The uppermost has no top of its own; elsewhere it is to lie where it lay.
  for (Stratum& stratum : clip.strata)
    if (!stratum.top) stratum.top = crossing.site.ground;
  return clip;
}

Copies site_with_clip(const Crossing& crossing, const Site& clip, double along_m) {
  Crossing draft = crossing;
  Copies copies;
  std::map<std::string, std::string> new_utility;
  each_list([&](auto list, const char* prefix, ItemKind kind) {
    for (const auto& one : clip.*list) {
      auto copy = one;
      copy.id = free_id(draft, prefix);
      shift(copy, along_m);
      if (std::string* name = name_in(copy)) {
        const auto& there = draft.site.*list;
        if (std::any_of(there.begin(), there.end(), [&](auto& old) { return *name_in(old) == *name; }))
          *name = copy_name(*name);
      }
      if constexpr (std::is_same_v<decltype(copy), Utility>) new_utility[one.id] = copy.id;
      if constexpr (std::is_same_v<decltype(copy), TestHole>) {
        const auto at = new_utility.find(one.utility);
        copy.utility = at == new_utility.end() ? std::string() : at->second;
      }
      copies.parts.push_back({kind, copy.id, -1});
      auto& all = draft.site.*list;
      if constexpr (std::is_same_v<decltype(copy), Stratum>)
        all.insert(all.begin() + place_among(draft.site, copy), std::move(copy));
      else
        all.push_back(std::move(copy));
    }
  });
  copies.site = std::move(draft.site);
  return copies;
}

Copies site_with_copies(const Crossing& crossing, const std::vector<ItemRef>& parts) {
  std::vector<ItemRef> others = parts;
  std::erase_if(
      others, [](const ItemRef& part) { return part.kind == ItemKind::stratum || part.kind == ItemKind::test_holes; });
  Site clip = without_evidence(clip_of(crossing, others));
  clip.test_holes.clear();  // what was dug is at the old one
  Copies copies = site_with_clip(crossing, clip, beside_m);
  Crossing draft = crossing;
  draft.site = copies.site;
  for (const ItemRef& part : parts) {
    if (const TestHole* h = find_by_id(crossing.site.test_holes, part.id); part.kind == ItemKind::test_holes && h) {
      Site alone;
      alone.test_holes = {*h};
      TestHole copy = without_evidence(std::move(alone)).test_holes.front();
      copy.id = free_id(draft, "h");
      shift(copy, beside_m);
      copies.parts.push_back({ItemKind::test_holes, copy.id, -1});
      draft.site.test_holes.push_back(std::move(copy));
    }
    if (const Stratum* layer = find_by_id(crossing.site.strata, part.id); part.kind == ItemKind::stratum && layer) {
      Stratum copy = *layer;
      copy.known = Stratum().known;  // nobody has seen that one
      LevelLine top = copy.top ? *copy.top : crossing.site.ground;
      for (LevelPoint& p : top) p.elevation_m = std::max(p.elevation_m - beside_m, lowest_m);
      copy.top = top;
      copy.id = free_id(draft, "l");
      copies.parts.push_back({ItemKind::stratum, copy.id, -1});
      auto& strata = draft.site.strata;
      const auto at = std::find_if(strata.begin(), strata.end(), [&](const Stratum& s) { return s.id == part.id; });
      strata.insert(at + 1, std::move(copy));
    }
  }
  copies.site = std::move(draft.site);
  return copies;
}

}  // namespace burrow

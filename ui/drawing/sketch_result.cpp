#include "sketch_result.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

SurfaceKind surface_kind(SketchKind kind) {
  switch (kind) {
    case SketchKind::track:
      return SurfaceKind::track;
    case SketchKind::footway:
      return SurfaceKind::footway;
    case SketchKind::drive:
      return SurfaceKind::drive;
    case SketchKind::ditch:
      return SurfaceKind::ditch;
    case SketchKind::building:
      return SurfaceKind::building;
    default:
      return SurfaceKind::road;
  }
}

/// Four corners from two opposite ones.
PlanLine rectangle(const SketchPoint& a, const SketchPoint& b) {
  return {{a.station_m, a.up_m}, {b.station_m, a.up_m}, {b.station_m, b.up_m}, {a.station_m, b.up_m}};
}

/// The utility that passes within that, seen from above; its nearest place.
struct Passing {
  std::string id;
  double x_m = 0, y_m = 0;
};
std::optional<Passing> nearest_utility(const Crossing& crossing, const SketchPoint& point) {
  constexpr double reach_m = 0.5;
  std::optional<Passing> best;
  double least = reach_m;
  for (const Utility& utility : crossing.site.utilities)
    for (std::size_t i = 1; i < utility.path.size(); ++i) {
      const PathVertex &a = utility.path[i - 1], &b = utility.path[i];
      const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, long2 = dx * dx + dy * dy;
      if (!(long2 > 0)) continue;
      const double t = std::clamp(((point.station_m - a.x_m) * dx + (point.up_m - a.y_m) * dy) / long2, 0.0, 1.0);
      const Passing at{utility.id, a.x_m + t * dx, a.y_m + t * dy};
      const double away = std::hypot(at.x_m - point.station_m, at.y_m - point.up_m);
      if (away > least) continue;
      least = away;
      best = at;
    }
  return best;
}

void insert_level(LevelLine& line, const LevelPoint& point) {
  line.insert(
      std::find_if(line.begin(), line.end(), [&](const LevelPoint& p) { return p.station_m > point.station_m; }),
      point);
}

void add_utility(Drawn& drawn, const Sketched& sketched) {
  Site& site = drawn.crossing.site;
  Utility utility;
  utility.id = free_id(drawn.crossing, "u");
  for (const SketchPoint& p : sketched.points) {
    PathVertex bend{p.station_m, p.up_m, std::nullopt};
    if (p.typed) bend.z_m = elevation_at(site.ground, p.station_m) - *p.typed;
    utility.path.push_back(bend);
  }
  drawn.part = {ItemKind::utility, utility.id, -1};
  drawn.step = QObject::tr("Draw a utility");
  site.utilities.push_back(std::move(utility));
}

void add_on_top(Drawn& drawn, const Sketched& sketched) {
  const SketchPoint &first = sketched.points.front(), &last = sketched.points.back();
  SurfaceFeature feature;
  feature.id = free_id(drawn.crossing, "f");
  feature.kind = surface_kind(sketched.kind);
  if (sketched.kind == SketchKind::building) {
    feature.outline = rectangle(first, last);
  } else {
    feature.from = Length{std::min(first.station_m, last.station_m)};
    feature.to = Length{std::max(first.station_m, last.station_m)};
  }
  drawn.part = {ItemKind::surface, feature.id, -1};
  drawn.step = QObject::tr("Draw: %1").arg(text_from(translated_word(feature.kind)));
  drawn.crossing.site.surface.push_back(std::move(feature));
}

void add_boundary(Drawn& drawn, const Sketched& sketched) {
  Boundary boundary;
  boundary.id = free_id(drawn.crossing, "b");
  for (const SketchPoint& p : sketched.points) boundary.line.push_back({p.station_m, p.up_m});
  drawn.part = {ItemKind::around, boundary.id, -1};
  drawn.step = QObject::tr("Draw a boundary");
  drawn.crossing.site.boundaries.push_back(std::move(boundary));
}

void add_tree(Drawn& drawn, const Sketched& sketched) {
  const SketchPoint &trunk = sketched.points.front(), &edge = sketched.points.back();
  Tree tree;
  tree.id = free_id(drawn.crossing, "t");
  tree.station = Length{trunk.station_m};
  tree.offset = Length{trunk.up_m};
  tree.protection_radius =
      Length{sketched.number ? *sketched.number : std::hypot(edge.station_m - trunk.station_m, edge.up_m - trunk.up_m)};
  drawn.part = {ItemKind::around, tree.id, -1};
  drawn.step = QObject::tr("Draw a tree");
  drawn.crossing.site.trees.push_back(std::move(tree));
}

void add_machine(Drawn& drawn, const Sketched& sketched) {
  const SketchPoint &first = sketched.points.front(), &last = sketched.points.back();
  Plant machine;
  machine.id = free_id(drawn.crossing, "p");
  machine.station = Length{(first.station_m + last.station_m) / 2};
  machine.offset = Length{(first.up_m + last.up_m) / 2};
  machine.length = Length{std::abs(last.station_m - first.station_m)};
  machine.width = Length{std::abs(last.up_m - first.up_m)};
  machine.load = Force{sketched.number.value_or(0)};
  drawn.part = {ItemKind::around, machine.id, -1};
  drawn.step = QObject::tr("Draw a machine");
  drawn.crossing.site.plant.push_back(std::move(machine));
}

void add_hole(Drawn& drawn, const Sketched& sketched) {
  const SketchPoint& place = sketched.points.front();
  TestHole hole;
  hole.id = free_id(drawn.crossing, "h");
  hole.station = Length{place.station_m};
  hole.offset = Length{place.up_m};
  if (const std::optional<Passing> at = nearest_utility(drawn.crossing, place)) {
    hole.utility = at->id;
    hole.station = Length{at->x_m};
    hole.offset = Length{at->y_m};
  }
  drawn.part = {ItemKind::test_holes, hole.id, -1};
  drawn.step = QObject::tr("Draw a test hole");
  drawn.crossing.site.test_holes.push_back(std::move(hole));
}

void add_stratum(Drawn& drawn, const Sketched& sketched) {
  Site& site = drawn.crossing.site;
  const SketchPoint& first = sketched.points.front();
  Stratum stratum;
  stratum.id = free_id(drawn.crossing, "l");
  stratum.soil = sketched.soil;
  stratum.top.emplace();
  for (const SketchPoint& p : sketched.points) insert_level(*stratum.top, {p.station_m, p.up_m});
  drawn.part = {ItemKind::stratum, stratum.id, -1};
  drawn.step = QObject::tr("Draw a stratum");
  // From the top down: below those that lie higher there.
  auto at = site.strata.begin();
  while (at != site.strata.end() &&
         (!at->top || at->top->empty() || elevation_at(*at->top, first.station_m) >= first.up_m))
    ++at;
  site.strata.insert(at, std::move(stratum));
}

void add_level_point(Drawn& drawn, const Sketched& sketched) {
  Site& site = drawn.crossing.site;
  const SketchPoint& place = sketched.points.front();
  const bool water = sketched.kind == SketchKind::water_point;
  if (water && !site.water) site.water.emplace();
  LevelLine& line = water ? *site.water : site.ground;
  insert_level(line, {place.station_m, place.up_m});
  const auto at =
      std::find_if(line.begin(), line.end(), [&](const LevelPoint& p) { return p.station_m == place.station_m; });
  drawn.part = {water ? ItemKind::water : ItemKind::ground, {}, static_cast<int>(at - line.begin())};
  drawn.step = water ? QObject::tr("Draw a point of the water level") : QObject::tr("Draw a ground point");
}

}  // namespace

Drawn sketch_result(const Crossing& crossing, const Sketched& sketched) {
  Drawn drawn{crossing, {}, {}};
  switch (sketched.kind) {
    case SketchKind::utility:
      add_utility(drawn, sketched);
      break;
    case SketchKind::boundary:
      add_boundary(drawn, sketched);
      break;
    case SketchKind::tree:
      add_tree(drawn, sketched);
      break;
    case SketchKind::machine:
      add_machine(drawn, sketched);
      break;
    case SketchKind::test_hole:
      add_hole(drawn, sketched);
      break;
    case SketchKind::stratum:
      add_stratum(drawn, sketched);
      break;
    case SketchKind::ground_point:
    case SketchKind::water_point:
      add_level_point(drawn, sketched);
      break;
    default:
      add_on_top(drawn, sketched);
  }
  return drawn;
}

}  // namespace burrow

/// Where the ground yields as far as the surface or a utility: the limit pressure of endless ground is too high there.

#include <optional>
#include <vector>

#include "burrow/base/phrase.h"
#include "burrow/soil/plastic_zone.h"
#include "check_run.h"

namespace burrow {

namespace {

/// One soil on the way, with r_p/a where it is least pressed together: its widest zone.
struct SoilOnTheWay {
  const Soil* soil = nullptr;
  const PathPoint* shallowest = nullptr;
  double ratio = 0;
};

std::vector<SoilOnTheWay> soils_on_the_way(const CheckRun& run) {
  std::vector<SoilOnTheWay> all;
  for (const PathPoint& p : run.answer.bore.points) {
    const Soil* soil = &run.ground.soil_at(p.x_m, p.y_m, p.z_m);
    SoilOnTheWay* same = nullptr;
    for (SoilOnTheWay& other : all)
      if (other.soil == soil) same = &other;
    if (!same) all.push_back({soil, &p, 0});
    if (same && p.cover_m < same->shallowest->cover_m) same->shallowest = &p;
  }
  Column column;
  for (SoilOnTheWay& one : all) {
    const PathPoint& p = *one.shallowest;
    run.ground.fill(column, p.x_m, p.y_m);
    const double mean =
        0.5 * (1 + one.soil->earth_pressure_ratio.v) * (column.vertical_stress(p.z_m) - column.pore_pressure(p.z_m));
    one.ratio = plastic_radius_ratio(*one.soil, mean).value_or(0);  // none: outside the method, nothing is claimed
  }
  return all;
}

Source source_of(const Soil& soil) {
  return {soil.drained
              ? translatable("Yu and Houlsby 1991, endless ground: its limit pressure is an upper bound here, less "
                             "ground takes part")
              : translatable("Gibson and Anderson 1961, endless ground: its limit pressure is an upper bound here, "
                             "less ground takes part"),
          SourceLabel::derived};
}

struct Reach {
  double reach_m = 0, distance_m = 0, radius_m = 0;
  const Soil* soil = nullptr;
  Finding place;
};

/// `code`: that of its finding, a literal.
void say(CheckRun& run, Reach&& reach, std::string_view code) {
  if (!reach.soil) return;
  run.add_working(
      {code,
       reach.place.subject,
       reach.soil->drained ? translatable("r = a n, n of a cylinder opened from nothing") : "r = a n, n = √(G/s_u)",
       {{"a", reach.radius_m, "m"}, {"n", reach.reach_m / reach.radius_m, ""}},
       "r",
       reach.reach_m,
       "m",
       reach.distance_m,
       source_of(*reach.soil),
       Source{"distance of the bore's axis", SourceLabel::derived}});
  reach.place.measured = reach.reach_m;  // the form holds for ground that goes on: nothing to hold it against
  reach.place.source = source_of(*reach.soil);
  run.add(std::move(reach.place));
}

}  // namespace

void check_plastic_zone(CheckRun& run) {
  const std::vector<SoilOnTheWay> soils = soils_on_the_way(run);
  const double a = run.tool.diameter.m / 2;
  Reach surface;
  for (const SoilOnTheWay& one : soils) {
    const PathPoint& p = *one.shallowest;
    const double depth = elevation_at(run.crossing.site.ground, p.x_m) - p.z_m;
    if (!(depth > 0) || !(a * one.ratio > depth)) continue;
    if (surface.soil && a * one.ratio / depth <= surface.reach_m / surface.distance_m) continue;
    surface = {a * one.ratio, depth, a, one.soil,
               finding_at("bore.plastic-zone", Severity::note, "bore", "bore", p.x_m, p.y_m, p.z_m)};
  }
  say(run, std::move(surface), "bore.plastic-zone");

  // One note for all utilities: in sand the zone takes in most of them.
  Reach nearest;
  for (std::size_t i = 0; i < run.answer.utilities.size(); ++i) {
    const UtilityAnswer& u = run.answer.utilities[i];
    if (!u.on_bore || !u.separation_m) continue;
    const double distance = *u.separation_m + a;  // of the bore's axis to the wall
    if (!(distance > a)) continue;
    const Soil* soil = &run.ground.soil_at(u.on_bore->x_m, u.on_bore->y_m, u.on_bore->z_m);
    for (const SoilOnTheWay& one : soils) {
      if (one.soil != soil || !(a * one.ratio > distance)) continue;
      if (nearest.soil && distance >= nearest.distance_m) continue;
      nearest = {a * one.ratio, distance, a, soil,
                 finding_at("utility.plastic-zone", Severity::note, u.id, display_name(run.crossing.site.utilities[i]),
                            u.on_utility->x_m, u.on_utility->y_m, u.on_utility->z_m)};
    }
  }
  say(run, std::move(nearest), "utility.plastic-zone");
}

}  // namespace burrow

#include "burrow/pit/plan.h"

#include <algorithm>
#include <cmath>

#include "burrow/base/ensure.h"
#include "burrow/pit/cut.h"
#include "burrow/pit/rescue.h"
#include "layers.h"

namespace burrow {

namespace {

constexpr double least_width_m = 0.9;
constexpr double side_room_m = 0.8;    // 0.4 m on either side of the tool
constexpr double window_sill_m = 0.1;  // the tool must clear the floor
constexpr double band_90_sd = 1.645;
constexpr double rescue_room_m = 0.5;   // before the nose and behind the tail
constexpr double rescue_below_m = 0.2;  // under the tool, to get a sling round it

double deepest(const FloorRectangle& floor, const LevelLine& ground) {
  double high = std::max(elevation_at(ground, floor.from_m), elevation_at(ground, floor.to_m));
  for (const LevelPoint& p : ground)
    if (p.station_m > floor.from_m && p.station_m < floor.to_m) high = std::max(high, p.elevation_m);
  return high - floor.elevation_m;
}

/// Sides by the layers at each of them: those of the long sides half way along the floor.
CutSides sides_of(const Crossing& crossing, const Pit& pit, const ExcavationRuleSet& rules, const FloorRectangle& floor,
                  double depth_m, bool bore_side_high, std::vector<PitLayer>& middle) {
  double highest = floor.elevation_m;  // the ground may rise behind the pit
  for (const LevelPoint& p : crossing.site.ground) highest = std::max(highest, p.elevation_m);
  const auto layers = [&](double station) {
    std::vector<PitLayer> all = layers_at(crossing.site, pit, station, floor.elevation_m);
    if (all.empty()) all.push_back({0, floor.elevation_m, floor.elevation_m, type_in_force(crossing.site, 0, pit)});
    slope_layers(all, rules, depth_m, pit);
    return all;
  };
  const auto profile = [&](const PitSide& side, const std::vector<PitLayer>& there) {
    return SideProfile(side, steps_of(there, side, rules, floor.elevation_m, depth_m), highest - floor.elevation_m);
  };
  middle = layers((floor.from_m + floor.to_m) / 2);
  const bool one = crossing.site.strata.size() < 2;
  const std::vector<PitLayer> low = one ? middle : layers(floor.from_m), high = one ? middle : layers(floor.to_m);
  const PitSides& s = pit.sides;
  return {profile(bore_side_high ? s.back : s.bore, low), profile(bore_side_high ? s.bore : s.back, high),
          profile(s.left, middle), profile(s.right, middle)};
}

/// What of the cut lies in each stratum: what lies below its top, less what lies below the next one's.
void share_out(const Site& site, const Pit& pit, const FloorRectangle& floor, const Cut& cut, const CutSides& sides,
               std::vector<PitLayer>& layers) {
  if (layers.empty()) return;
  if (site.strata.size() < 2) {
    layers.front().volume_m3 = cut.volume_m3;
    return;
  }
  double below = 0;
  for (std::size_t i = site.strata.size(); i-- > 0;) {
    const double from_here =
        i == 0 ? cut.volume_m3
               : volume_below(floor, sides, surface_of(site, i, cut.from_m, cut.to_m), cut.from_m, cut.to_m);
    const double volume = std::max(from_here - below, 0.0);
    below = std::max(below, from_here);
    const auto layer = std::find_if(layers.begin(), layers.end(), [&](const PitLayer& l) { return l.stratum == i; });
    if (layer != layers.end()) {
      layer->volume_m3 = volume;
    } else if (volume > 0) {  // cut at one end of the pit only
      const auto next = std::find_if(layers.begin(), layers.end(), [&](const PitLayer& l) { return l.stratum > i; });
      const double level = next != layers.end() ? next->top_m : floor.elevation_m;
      PitLayer thin = layers.front();
      thin.stratum = i;
      thin.top_m = thin.bottom_m = level;
      thin.type = type_in_force(site, i, pit);
      thin.volume_m3 = volume;
      layers.insert(next, thin);
    }
  }
}

PitShape shape_of(const Crossing& crossing, const Pit& pit, const Tables& tables, const FloorRectangle& floor,
                  double face_station_m, double axis_elevation_m, bool bore_side_high) {
  PitShape shape;
  shape.face_station_m = face_station_m;
  shape.floor_from_m = floor.from_m;
  shape.floor_to_m = floor.to_m;
  shape.floor_right_m = floor.right_m;
  shape.floor_left_m = floor.left_m;
  shape.floor_elevation_m = floor.elevation_m;
  shape.axis_elevation_m = axis_elevation_m;
  shape.floor_length_m = floor.to_m - floor.from_m;
  shape.floor_width_m = floor.left_m - floor.right_m;
  shape.soil_type = type_in_force(crossing.site, 0, pit);
  shape.bore_side_high = bore_side_high;
  shape.floor = {{floor.from_m, floor.right_m},
                 {floor.to_m, floor.right_m},
                 {floor.to_m, floor.left_m},
                 {floor.from_m, floor.left_m}};
  const LevelLine& ground = crossing.site.ground;
  if (ground.empty()) return shape;  // nothing is known above the floor
  const double depth_m = deepest(floor, ground);
  const ExcavationRuleSet& rules = row_of(tables, *crossing.pits.rules);
  shape.sides = sides_of(crossing, pit, rules, floor, depth_m, bore_side_high, shape.layers);
  const Cut cut = cut_out(floor, shape.sides, ground);
  share_out(crossing.site, pit, floor, cut, shape.sides, shape.layers);
  for (const PitLayer& layer : shape.layers) shape.soil_type = std::max(shape.soil_type, layer.type);
  shape.depth_m = cut.depth_m;
  shape.top_length_m = cut.top_length_m;
  shape.top_width_m = cut.top_width_m;
  shape.volume_m3 = cut.volume_m3;
  shape.footprint = cut.footprint;
  shape.section = cut.section;
  return shape;
}

/// The mean arrival, or the straight launch line where the path does not come to the exit face.
ArrivalSpread expected_arrival(const Crossing& crossing, const BorePath& path) {
  ArrivalSpread arrival;
  if (!path.points.empty()) {
    const PathPoint& last = path.points.back();
    arrival = {last.y_m, last.z_m, last.sd_lateral_m, last.sd_vertical_m};
    if (path.ends == PathEnd::exit) return arrival;
  }
  const Launch& launch = crossing.bore.launch;
  const double run = crossing.bore.exit.station.m - launch.station.m;
  arrival.offset_m = launch.offset->m + run * std::tan(launch.heading->rad);
  arrival.elevation_m = launch.elevation.m + run * launch.grade.v;
  arrival.sd_lateral_m = std::max(arrival.sd_lateral_m, std::hypot(launch.position_sd->m, launch.aim_sd->rad * run));
  arrival.sd_vertical_m =
      std::max(arrival.sd_vertical_m, std::hypot(launch.position_sd->m, launch.level_sd->rad * run));
  return arrival;
}

/// What must lie in the launch pit: the tool, and behind it each piece of a pipe that is pushed in.
double longest_in(const std::optional<Pipe>& pipe, const Tool& tool) {
  const bool pushed = pipe && *pipe->insertion == Insertion::pushed && pipe->piece_length;
  return pushed ? std::max(tool.length.m, pipe->piece_length->m) : tool.length.m;
}

double typed_or(const std::optional<Length>& typed, double proposed) {
  return typed ? typed->m : proposed;
}

}  // namespace

PitShape launch_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables) {
  const Launch& launch = crossing.bore.launch;
  const Pit& pit = crossing.pits.launch;
  const double length = typed_or(pit.floor_length, longest_in(crossing.pipe, tool) + pit.working_length->m);
  const double width = typed_or(pit.floor_width, std::max(least_width_m, tool.diameter.m + side_room_m));
  const double centre = typed_or(pit.floor_offset, launch.offset->m);
  const double below_axis = tool.diameter.m / 2 + pit.cradle_height->m + pit.slab_thickness->m;
  const FloorRectangle floor{launch.station.m - length, launch.station.m, centre - width / 2, centre + width / 2,
                             typed_or(pit.floor_elevation, launch.elevation.m - below_axis)};
  return shape_of(crossing, pit, tables, floor, launch.station.m, launch.elevation.m, true);
}

PitShape exit_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path) {
  const Exit& exit = crossing.bore.exit;
  const Pit& pit = crossing.pits.exit;
  const ArrivalSpread arrival = expected_arrival(crossing, path);
  const double room = tool.diameter.m / 2 + pit.allowance->m;
  const double proposed_centre = exit.offset.entered ? exit.offset->m : arrival.offset_m;
  const double centre = typed_or(pit.floor_offset, proposed_centre);
  const double off_centre = std::abs(arrival.offset_m - centre);
  const double half_band = off_centre + band_90_sd * arrival.sd_lateral_m + room;
  const double width = typed_or(pit.floor_width, std::max(least_width_m, 2 * half_band));
  const double length = typed_or(pit.floor_length, tool.length.m + pit.working_length->m);
  const double level = arrival.elevation_m - band_90_sd * arrival.sd_vertical_m - room;
  const FloorRectangle floor{exit.station.m, exit.station.m + length, centre - width / 2, centre + width / 2,
                             typed_or(pit.floor_elevation, level)};
  return shape_of(crossing, pit, tables, floor, exit.station.m, arrival.elevation_m, false);
}

PitShape rescue_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                          Length nose) {
  BURROW_ENSURE(!path.points.empty());
  const double to = std::clamp(nose.m, 0.0, path.length_m), from = to - tool.length.m;
  const PathPoint* at = &path.points.front();
  double lowest = at->z_m, right = at->y_m, left = at->y_m;
  for (const PathPoint& p : path.points) {
    if (p.s_m > to + 1e-9) break;
    if (p.s_m < from) {
      at = &p;
      lowest = p.z_m;
      right = left = p.y_m;
      continue;
    }
    lowest = std::min(lowest, p.z_m);
    right = std::min(right, p.y_m);
    left = std::max(left, p.y_m);
    at = &p;
  }
  Pit pit;
  pit.soil_type = crossing.pits.launch.soil_type;
  for (PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right})
    side->kind.set(SideKind::sloped);
  const double half = std::max(least_width_m, left - right + tool.diameter.m + side_room_m) / 2;
  const double middle = (left + right) / 2;
  const double run = tool.length.m * std::cos(at->heading_rad) * std::cos(at->grade_rad);
  const FloorRectangle floor{at->x_m - run - rescue_room_m, at->x_m + rescue_room_m, middle - half, middle + half,
                             lowest - tool.diameter.m / 2 - rescue_below_m};
  return shape_of(crossing, pit, tables, floor, at->x_m, at->z_m, true);
}

ExitOpening exit_opening(const PitShape& exit, Length ground, std::optional<Length> widest) {
  const double centre = (exit.floor_right_m + exit.floor_left_m) / 2;
  const double width = std::max(exit.floor_left_m - exit.floor_right_m, widest ? widest->m : 0);
  return {centre - width / 2, centre + width / 2, exit.floor_elevation_m + window_sill_m, ground.m};
}

double chance_inside(const PitShape& exit, const ArrivalSpread& arrival, Length ground, std::optional<Length> widest) {
  const auto between = [](double low, double high, double mean, double sd) {
    if (!(high > low)) return 0.0;
    if (!(sd > 0)) return mean >= low && mean <= high ? 1.0 : 0.0;
    const double scale = 1 / (sd * std::sqrt(2.0));
    return 0.5 * (std::erf((high - mean) * scale) - std::erf((low - mean) * scale));
  };
  const ExitOpening opening = exit_opening(exit, ground, widest);
  return between(opening.right_m, opening.left_m, arrival.offset_m, arrival.sd_lateral_m) *
         between(opening.low_m, opening.high_m, arrival.elevation_m, arrival.sd_vertical_m);
}

}  // namespace burrow

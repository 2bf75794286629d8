#include "burrow/pit/pit_shapes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>

#include "burrow/base/ensure.h"
#include "burrow/pit/rescue.h"
#include "excavate.h"

namespace burrow {

namespace {

constexpr double least_width_m = 0.9;
constexpr double side_room_m = 0.8;    // 0.4 m on either side of the tool
constexpr double window_sill_m = 0.1;  // the tool must clear the floor
constexpr double band_90_sd = 1.645;
constexpr double rescue_room_m = 0.5;   // before the nose and behind the tail
constexpr double rescue_below_m = 0.2;  // under the tool, to get a sling round it

Pit with_sides(Pit pit, const PitSides& sides) {
  pit.sides = sides;
  return pit;
}

/// DIN 4124 as in BG BAU H 906: 1.00 m deeper than 4.00 m; a little before, since the ground may rise along the floor.
double least_width(const Crossing& crossing, Length station, double floor_m) {
  constexpr double deep_from_m = 3.9, wider_m = 1.0;
  const LevelLine& ground = crossing.site.ground;
  return !ground.empty() && elevation_at(ground, station.m) - floor_m > deep_from_m ? wider_m : least_width_m;
}

double typed_or(const std::optional<Length>& typed, double proposed) {
  return typed ? typed->m : proposed;
}

/// The widest exit pit the program may propose, never less than a person needs; no limit in the tables: none.
double widest_exit(const Crossing& crossing, const Tables& tables) {
  constexpr std::string_view id = "exit_widest_m";
  if (const auto typed = crossing.limits.find(std::string(id)); typed != crossing.limits.end())
    return std::max(typed->second.value, least_width_m);
  const LimitRow* row = find_limit(tables, id);
  return row ? row->value : std::numeric_limits<double>::infinity();
}

}  // namespace

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

PieceEntry piece_entry(const Crossing& crossing) {
  const std::optional<Pipe>& pipe = crossing.pipe;
  if (!pipe || !pipe->piece_length) return {};
  const Length piece = *pipe->piece_length;
  const std::optional<Length>& floor = crossing.pits.launch.floor_length;
  const bool from_launch = *pipe->insertion != Insertion::pulled_after || (floor && *floor >= piece);
  return from_launch ? PieceEntry{piece, {}} : PieceEntry{{}, piece};
}

FloorWanted launch_floor_wanted(const Crossing& crossing, const Tool& tool) {
  const Pit& pit = crossing.pits.launch;
  const Launch& launch = crossing.bore.launch;
  const double floor = launch.elevation.m - tool.diameter.m / 2 - pit.cradle_height->m - pit.slab_thickness->m;
  return {Length{std::max(tool.length.m, piece_entry(crossing).at_launch.m) + pit.working_length->m},
          Length{std::max(least_width(crossing, launch.station, floor), tool.diameter.m + side_room_m)}, Length{floor}};
}

FloorWanted exit_floor_wanted(const Crossing& crossing, const Tool& tool, const ArrivalSpread& arrival, Length centre) {
  const Pit& pit = crossing.pits.exit;
  const double room = tool.diameter.m / 2 + pit.allowance->m;
  const double half_band = std::abs(arrival.offset_m - centre.m) + band_90_sd * arrival.sd_lateral_m + room;
  const double floor = arrival.elevation_m - band_90_sd * arrival.sd_vertical_m - room;
  return {Length{std::max(tool.length.m, piece_entry(crossing).at_exit.m) + pit.working_length->m},
          Length{std::max(least_width(crossing, crossing.bore.exit.station, floor), 2 * half_band)}, Length{floor}};
}

namespace {

PlacedFloor launch_floor(const Crossing& crossing, const Tool& tool) {
  const Launch& launch = crossing.bore.launch;
  const Pit& pit = crossing.pits.launch;
  const FloorWanted wanted = launch_floor_wanted(crossing, tool);
  const double length = typed_or(pit.floor_length, wanted.length.m);
  const double width = typed_or(pit.floor_width, wanted.width.m);
  const double centre = typed_or(pit.floor_offset, launch.offset->m);
  const FloorRectangle floor{launch.station.m - length, launch.station.m, centre - width / 2, centre + width / 2,
                             typed_or(pit.floor_elevation, wanted.elevation.m)};
  return {floor, launch.station.m, launch.elevation.m, true};
}

PlacedFloor exit_floor(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path) {
  const Exit& exit = crossing.bore.exit;
  const Pit& pit = crossing.pits.exit;
  const ArrivalSpread arrival = expected_arrival(crossing, path);
  const double proposed_centre = exit.offset.entered ? exit.offset->m : arrival.offset_m;
  const double centre = typed_or(pit.floor_offset, proposed_centre);
  const FloorWanted wanted = exit_floor_wanted(crossing, tool, arrival, Length{centre});
  const double width = typed_or(pit.floor_width, std::min(wanted.width.m, widest_exit(crossing, tables)));
  const double length = typed_or(pit.floor_length, wanted.length.m);
  const FloorRectangle floor{exit.station.m, exit.station.m + length, centre - width / 2, centre + width / 2,
                             typed_or(pit.floor_elevation, wanted.elevation.m)};
  return {floor, exit.station.m, arrival.elevation_m, false};
}

}  // namespace

PitShape launch_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables,
                          const SiteSurface& surface) {
  return excavate(crossing, crossing.pits.launch, tables, launch_floor(crossing, tool), surface);
}

PitShape exit_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                        const SiteSurface& surface) {
  return excavate(crossing, crossing.pits.exit, tables, exit_floor(crossing, tool, tables, path), surface);
}

double launch_pit_m3(const Crossing& crossing, const Tool& tool, const Tables& tables, const PitSides& sides,
                     const SiteSurface& surface) {
  return excavated_m3(crossing, with_sides(crossing.pits.launch, sides), tables, launch_floor(crossing, tool), surface);
}

double exit_pit_m3(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                   const PitSides& sides, const SiteSurface& surface) {
  return excavated_m3(crossing, with_sides(crossing.pits.exit, sides), tables, exit_floor(crossing, tool, tables, path),
                      surface);
}

PitShape rescue_pit_shape(const Crossing& crossing, const Tool& tool, const Tables& tables, const BorePath& path,
                          Length nose, const SiteSurface& surface) {
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
  pit.confirmed_by = crossing.pits.launch.confirmed_by;
  pit.signs = crossing.pits.launch.signs;
  for (PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right})
    side->kind.set(SideKind::sloped);
  const double half = std::max(least_width_m, left - right + tool.diameter.m + side_room_m) / 2;
  const double middle = (left + right) / 2;
  const double run = tool.length.m * std::cos(at->heading_rad) * std::cos(at->grade_rad);
  const FloorRectangle floor{at->x_m - run - rescue_room_m, at->x_m + rescue_room_m, middle - half, middle + half,
                             lowest - tool.diameter.m / 2 - rescue_below_m};
  return excavate(crossing, pit, tables, {floor, at->x_m, at->z_m, true}, surface);
}

ExitOpening exit_opening(const PitShape& exit, Length ground, std::optional<Length> widest) {
  double right = exit.floor_right_m, left = exit.floor_left_m;
  if (exit.outlined) {
    // What of the floor lies against the face; nothing: no way in.
    constexpr double against_m = 1e-6;
    right = left = (right + left) / 2;
    bool any = false;
    for (std::size_t i = 0; i < exit.floor.size(); ++i) {
      const PlanPoint &p = exit.floor[i], &q = exit.floor[(i + 1) % exit.floor.size()];
      if (std::abs(p.x_m - exit.face_station_m) > against_m || std::abs(q.x_m - exit.face_station_m) > against_m)
        continue;
      const auto [low, high] = std::minmax(p.y_m, q.y_m);
      right = any ? std::min(right, low) : low;
      left = any ? std::max(left, high) : high;
      any = true;
    }
  }
  const double centre = (right + left) / 2;
  const double width = std::max(left - right, widest ? widest->m : 0);
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

#include "burrow/drawing/move.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "burrow/base/quantity_text.h"
#include "burrow/crossing/find.h"
#include "burrow/document/text.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/pit_edges.h"

namespace burrow {

namespace {

constexpr double least_run_m = 0.5;  ///< exit beyond launch
constexpr double least_vertex_gap_m = 0.01;

double rounded(double value, double step) {
  return step > 0 ? std::round(value / step) * step : value;
}

// What the file accepts.
double station(double v) {
  return std::clamp(v, -1e5, 1e5);
}
double level(double v) {
  return std::clamp(v, -1e4, 1e4);
}

Edit moved_launch(const Crossing& before, const Move& move) {
  Launch launch = before.bore.launch;
  if (!member_locked(before, "/bore/launch/station_m"))
    launch.station.m =
        std::min(rounded(launch.station.m + move.by_station_m, move.step_m), before.bore.exit.station.m - least_run_m);
  if (move.pane == Pane::plan) {
    if (!member_locked(before, "/bore/launch/offset_m"))
      launch.offset.set(Length{rounded(launch.offset->m + move.by_up_m, move.step_m)});
  } else if (!member_locked(before, "/bore/launch/elevation_m")) {
    launch.elevation.m = level(rounded(launch.elevation.m + move.by_up_m, move.step_m));
  }
  return [launch](Crossing& c) { c.bore.launch = launch; };
}

/// The grip turns the bore about the launch point.
Edit moved_grade(const Crossing& before, const Move& move) {
  Launch launch = before.bore.launch;
  const double run = std::max(0.2, grade_grip_station(before) - launch.station.m);
  const double step = move.step_m > 0 ? 0.001 : 0.0;
  const bool plan = move.pane == Pane::plan;
  if (member_locked(before, plan ? "/bore/launch/heading_rad" : "/bore/launch/grade")) return {};
  if (plan) {
    const double heading = std::clamp(launch.heading->rad + std::atan(move.by_up_m / run), -1.5, 1.5);
    launch.heading.set(Angle{rounded(heading, step)});
  } else {
    launch.grade.v = std::clamp(rounded(launch.grade.v + move.by_up_m / run, step), -1.0, 1.0);
  }
  return [launch](Crossing& c) { c.bore.launch = launch; };
}

Edit moved_exit(const Crossing& before, const Move& move) {
  Exit exit = before.bore.exit;
  if (!member_locked(before, "/bore/exit/station_m"))
    exit.station.m = station(
        std::max(rounded(exit.station.m + move.by_station_m, move.step_m), before.bore.launch.station.m + least_run_m));
  if (move.pane == Pane::plan && !member_locked(before, "/bore/exit/offset_m"))
    exit.offset.set(Length{rounded(exit.offset->m + move.by_up_m, move.step_m)});
  return [exit](Crossing& c) { c.bore.exit = exit; };
}

Edit moved_utility(const Crossing& before, const ItemRef& part, const Move& move) {
  const Utility* utility = find_by_id(before.site.utilities, part.id);
  if (!utility || utility->path.empty()) return {};
  std::vector<PathVertex> path = utility->path;
  const std::size_t only = static_cast<std::size_t>(std::max(part.index, 0));
  // The whole line keeps its shape: one rounded shift for all its points.
  const double dx = rounded(path.front().x_m + move.by_station_m, move.step_m) - path.front().x_m;
  const double up_from = move.pane == Pane::plan ? path.front().y_m : path.front().z_m.value_or(0);
  const double du = rounded(up_from + move.by_up_m, move.step_m) - up_from;
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (part.index >= 0 && i != only) continue;
    path[i].x_m = station(path[i].x_m + dx);
    if (move.pane == Pane::plan) {
      if (part.index >= 0) path[i].y_m = station(path[i].y_m + du);
    } else if (path[i].z_m) {
      *path[i].z_m = level(*path[i].z_m + du);
    }
  }
  return [id = part.id, path](Crossing& c) {
    if (Utility* changed = find_by_id(c.site.utilities, id)) changed->path = path;
  };
}

/// The line that a part of the ground is drawn by; null: it has none of its own.
template <class Any>
auto* line_of(Any& crossing, const ItemRef& part) {
  auto* stratum = part.kind == ItemKind::stratum ? find_by_id(crossing.site.strata, part.id) : nullptr;
  return part.kind == ItemKind::ground                         ? &crossing.site.ground
         : part.kind == ItemKind::water && crossing.site.water ? &*crossing.site.water
         : stratum && stratum->top                             ? &*stratum->top
                                                               : nullptr;
}

bool move_vertex(LevelLine& line, int index, const Move& move) {
  if (index < 0 || static_cast<std::size_t>(index) >= line.size()) return false;
  const auto i = static_cast<std::size_t>(index);
  const double low = i > 0 ? line[i - 1].station_m + least_vertex_gap_m : -1e5;
  const double high = i + 1 < line.size() ? line[i + 1].station_m - least_vertex_gap_m : 1e5;
  // Between close neighbours there is no room: only the level moves.
  if (low < high)
    line[i].station_m = std::clamp(rounded(line[i].station_m + move.by_station_m, move.step_m), low, high);
  line[i].elevation_m = level(rounded(line[i].elevation_m + move.by_up_m, move.step_m));
  return true;
}

Edit moved_vertex(const Crossing& before, const ItemRef& part, const Move& move) {
  const LevelLine* now = line_of(before, part);
  if (move.pane != Pane::elevation || !now) return {};
  LevelLine line = *now;
  if (!move_vertex(line, part.index, move)) return {};
  return [part, line](Crossing& c) { *line_of(c, part) = line; };
}

}  // namespace

Edit moved(const Crossing& before, const ItemRef& part, const Move& move) {
  if (part_locked(before, part)) return {};
  switch (part.kind) {
    case ItemKind::launch:
      return moved_launch(before, move);
    case ItemKind::grade:
      return moved_grade(before, move);
    case ItemKind::exit:
      return moved_exit(before, move);
    case ItemKind::utility:
      return moved_utility(before, part, move);
    case ItemKind::ground:
    case ItemKind::water:
    case ItemKind::stratum:
      return moved_vertex(before, part, move);
    case ItemKind::pit_edge:
      return moved_pit_edge(before, part, move);
    default:
      return {};
  }
}

QString step_name(const Crossing& crossing, const ItemRef& part) {
  const QString name = text_from(part_name(crossing, part));
  return part.kind == ItemKind::grade ? QObject::tr("Turn %1").arg(name) : QObject::tr("Move %1").arg(name);
}

}  // namespace burrow

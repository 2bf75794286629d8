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

/// The whole bore: launch and exit keep their places to each other.
Edit moved_bore(const Crossing& before, const Move& move) {
  Launch launch = before.bore.launch;
  Exit exit = before.bore.exit;
  const double dx = rounded(launch.station.m + move.by_station_m, move.step_m) - launch.station.m;
  launch.station.m += dx;
  exit.station.m += dx;
  if (std::abs(launch.station.m) > 1e5 || std::abs(exit.station.m) > 1e5) return {};
  if (move.pane == Pane::plan) {
    const double dy = rounded(launch.offset->m + move.by_up_m, move.step_m) - launch.offset->m;
    launch.offset.set(Length{launch.offset->m + dy});
    exit.offset.set(Length{exit.offset->m + dy});
  } else {
    launch.elevation.m = level(rounded(launch.elevation.m + move.by_up_m, move.step_m));
  }
  return [launch, exit](Crossing& c) {
    c.bore.launch = launch;
    c.bore.exit = exit;
  };
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
      path[i].y_m = station(path[i].y_m + du);
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
  if (move.pane != Pane::elevation || !now || now->empty()) return {};
  LevelLine line = *now;
  if (part.index < 0) {  // taken along it: the whole line rises or sinks
    const double up = rounded(line.front().elevation_m + move.by_up_m, move.step_m) - line.front().elevation_m;
    for (LevelPoint& p : line) p.elevation_m = level(p.elevation_m + up);
  } else if (!move_vertex(line, part.index, move)) {
    return {};
  }
  return [part, line](Crossing& c) { *line_of(c, part) = line; };
}

/// One rounded shift for all corners, so that a shape keeps itself.
struct Shift {
  double along_m = 0, up_m = 0;
};
Shift shift_of(double x_m, double y_m, const Move& move) {
  Shift shift{rounded(x_m + move.by_station_m, move.step_m) - x_m, 0};
  if (move.pane == Pane::plan) shift.up_m = rounded(y_m + move.by_up_m, move.step_m) - y_m;
  return shift;
}

void shift_corner(PlanPoint& corner, const Shift& by) {
  corner = {station(corner.x_m + by.along_m), station(corner.y_m + by.up_m)};
}

/// All corners of a line, or the one of that number; false: there is none.
bool move_corners(PlanLine& line, int corner, const Move& move) {
  if (line.empty() || corner >= static_cast<int>(line.size())) return false;
  const auto first = static_cast<std::size_t>(std::max(corner, 0));
  const Shift by = shift_of(line[first].x_m, line[first].y_m, move);
  for (std::size_t i = 0; i < line.size(); ++i)
    if (corner < 0 || i == first) shift_corner(line[i], by);
  return true;
}

/// Where the levels of a road were watched goes with it as little as any other survey.
Edit moved_surface(const Crossing& before, const ItemRef& part, const Move& move) {
  const SurfaceFeature* now = find_by_id(before.site.surface, part.id);
  if (!now) return {};
  SurfaceFeature moved = *now;
  if (part.index >= first_outline_corner) {
    if (move.pane != Pane::plan || !move_corners(moved.outline, part.index - first_outline_corner, move)) return {};
  } else if (part.index >= 0) {
    if (!moved.from || !moved.to) return {};
    double& end = part.index == static_cast<int>(SurfaceEdge::from) ? moved.from->m : moved.to->m;
    const double other = part.index == static_cast<int>(SurfaceEdge::from) ? moved.to->m : moved.from->m;
    end = station(rounded(end + move.by_station_m, move.step_m));
    end = part.index == static_cast<int>(SurfaceEdge::from) ? std::min(end, other - least_vertex_gap_m)
                                                            : std::max(end, other + least_vertex_gap_m);
  } else {
    const bool stretch = moved.from && moved.to;
    if (!stretch && moved.outline.empty()) return {};
    const Shift by = stretch ? shift_of(moved.from->m, 0, move)
                             : shift_of(moved.outline.front().x_m, moved.outline.front().y_m, move);
    if (stretch) {
      moved.from->m = station(moved.from->m + by.along_m);
      moved.to->m = station(moved.to->m + by.along_m);
    }
    for (PlanPoint& corner : moved.outline) shift_corner(corner, by);
  }
  return [id = part.id, moved](Crossing& c) {
    if (SurfaceFeature* changed = find_by_id(c.site.surface, id)) *changed = moved;
  };
}

/// A hole with what was measured in it: along, across in the plan, its level in the side elevation.
Edit moved_hole(const Crossing& before, const ItemRef& part, const Move& move) {
  const TestHole* now = find_by_id(before.site.test_holes, part.id);
  if (!now) return {};
  TestHole hole = *now;
  hole.station.m = station(rounded(hole.station.m + move.by_station_m, move.step_m));
  if (move.pane == Pane::plan)
    hole.offset.m = station(rounded(hole.offset.m + move.by_up_m, move.step_m));
  else if (hole.elevation)
    hole.elevation->m = level(rounded(hole.elevation->m + move.by_up_m, move.step_m));
  return [hole](Crossing& c) {
    if (TestHole* changed = find_by_id(c.site.test_holes, hole.id)) *changed = hole;
  };
}

template <class List>
bool move_place(List& list, const std::string& id, const Move& move) {
  auto* one = find_by_id(list, id);
  if (!one) return false;
  const Shift by = shift_of(one->station.m, one->offset.m, move);
  one->station.m = station(one->station.m + by.along_m);
  one->offset.m = station(one->offset.m + by.up_m);
  return true;
}

Edit moved_around(const Crossing& before, const ItemRef& part, const Move& move) {
  if (move.pane != Pane::plan || part.id.empty()) return {};
  Boundary boundary;
  Strip strip;
  if (const Boundary* now = find_by_id(before.site.boundaries, part.id)) boundary = *now;
  if (const Strip* now = find_by_id(before.site.strips, part.id)) strip = *now;
  if (!boundary.id.empty()) {
    if (!move_corners(boundary.line, part.index, move)) return {};
  } else if (!strip.id.empty()) {
    if (!move_corners(strip.outline, part.index, move)) return {};
  }
  return [=](Crossing& c) {
    if (Boundary* changed = find_by_id(c.site.boundaries, part.id)) *changed = boundary;
    if (Strip* changed = find_by_id(c.site.strips, part.id)) *changed = strip;
    move_place(c.site.trees, part.id, move);
    move_place(c.site.plant, part.id, move);
  };
}

}  // namespace

Edit moved_together(const Crossing& before, const std::vector<ItemRef>& parts, const Move& move) {
  Move whole = move;
  whole.by_station_m = rounded(move.by_station_m, move.step_m);
  whole.by_up_m = rounded(move.by_up_m, move.step_m);
  whole.step_m = 0;
  std::vector<Edit> edits;
  for (const ItemRef& part : parts)
    if (Edit edit = moved(before, part, whole)) edits.push_back(std::move(edit));
  if (edits.empty()) return {};
  return [edits = std::move(edits)](Crossing& c) {
    for (const Edit& edit : edits) edit(c);
  };
}

Edit moved(const Crossing& before, const ItemRef& part, const Move& move) {
  if (part_locked(before, part)) return {};
  switch (part.kind) {
    case ItemKind::launch:
      return moved_launch(before, move);
    case ItemKind::grade:
      return moved_grade(before, move);
    case ItemKind::exit:
      return moved_exit(before, move);
    case ItemKind::bore:
      return moved_bore(before, move);
    case ItemKind::surface:
      return moved_surface(before, part, move);
    case ItemKind::test_holes:
      return moved_hole(before, part, move);
    case ItemKind::around:
      return moved_around(before, part, move);
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

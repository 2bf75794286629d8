#include "burrow/drawing/handles.h"

#include "burrow/drawing/labels.h"
#include "burrow/drawing/pit_edges.h"

#include <algorithm>
#include <cmath>

#include "burrow/crossing/find.h"
#include "burrow/crossing/locks.h"

namespace burrow {

double bore_level_at(const Assessment& assessment, const Crossing& crossing, double station) {
  const auto& points = assessment.bore.points;
  const Launch& launch = crossing.bore.launch;
  if (points.empty() || station > points.back().x_m)
    return launch.elevation.m + launch.grade.v * (station - launch.station.m);
  const auto right =
      std::lower_bound(points.begin(), points.end(), station, [](const PathPoint& p, double x) { return p.x_m < x; });
  if (right == points.begin()) return points.front().z_m;
  const PathPoint& a = *(right - 1);
  return a.z_m + (station - a.x_m) / std::max(1e-12, right->x_m - a.x_m) * (right->z_m - a.z_m);
}

QPointF hole_end(const Scene& scene, const TestHole& hole) {
  const double ground = elevation_at(scene.crossing.site.ground, hole.station.m);
  if (hole.elevation) return scene.frame.side(hole.station.m, hole.elevation->m);
  return scene.frame.side(hole.station.m, ground) + QPointF(0, scene.style.text * 1.5);
}

double grade_grip_station(const Crossing& crossing) {
  const double launch = crossing.bore.launch.station.m;
  return launch + 0.42 * (crossing.bore.exit.station.m - launch);
}

QRectF grip_box(const Handle& handle, const Style& style, bool selected) {
  const bool small = handle.shape == Handle::Shape::square && handle.always;
  const double half = style.text * (small ? 0.5 : selected ? 1.15 : 0.8);
  return {handle.at.x() - half, handle.at.y() - half, 2 * half, 2 * half};
}

namespace {

/// Grips that come with the selection: edges and corners of what lies on top or beside, the place of a hole or tree.
void add_selected_handles(const Scene& scene, std::vector<Handle>& all) {
  const Frame& f = scene.frame;
  const Site& site = scene.crossing.site;
  const ItemRef& picked = scene.focus.picked;
  const auto add = [&](int index, Pane pane, const QPointF& at) {
    all.push_back({{picked.kind, picked.id, index}, pane, at, Handle::Shape::square, false});
  };
  const auto corners = [&](const PlanLine& line, int first) {
    for (std::size_t i = 0; i < line.size(); ++i)
      add(first + static_cast<int>(i), Pane::plan, f.above(line[i].x_m, line[i].y_m));
  };
  if (picked.kind == ItemKind::surface) {
    const SurfaceFeature* feature = find_by_id(site.surface, picked.id);
    if (!feature) return;
    corners(feature->outline, first_outline_corner);
    if (!feature->from || !feature->to) return;
    for (const auto& [edge, station] :
         {std::pair{SurfaceEdge::from, feature->from->m}, {SurfaceEdge::to, feature->to->m}}) {
      add(static_cast<int>(edge), Pane::elevation, f.side(station, elevation_at(site.ground, station)));
      if (feature->outline.empty()) add(static_cast<int>(edge), Pane::plan, f.above(station, 0));
    }
  } else if (picked.kind == ItemKind::test_holes) {
    const TestHole* hole = find_by_id(site.test_holes, picked.id);
    if (!hole) return;
    add(-1, Pane::elevation, hole_end(scene, *hole));
    add(-1, Pane::plan, f.above(hole->station.m, hole->offset.m));
  } else if (picked.kind == ItemKind::around) {
    if (const Boundary* boundary = find_by_id(site.boundaries, picked.id)) corners(boundary->line, 0);
    if (const Strip* strip = find_by_id(site.strips, picked.id)) corners(strip->outline, 0);
    if (const Tree* tree = find_by_id(site.trees, picked.id))
      add(-1, Pane::plan, f.above(tree->station.m, tree->offset.m));
    if (const Plant* machine = find_by_id(site.plant, picked.id))
      add(-1, Pane::plan, f.above(machine->station.m, machine->offset.m));
  }
}

}  // namespace

std::vector<Handle> handles(const Scene& scene) {
  const Frame& f = scene.frame;
  const Crossing& crossing = scene.crossing;
  const Launch& launch = crossing.bore.launch;
  std::vector<Handle> all;
  all.reserve(16 + crossing.site.ground.size());
  const auto add = [&all](ItemKind kind, const std::string& id, std::size_t index, Pane pane, const QPointF& at,
                          Handle::Shape shape, bool always) {
    Handle& handle = all.emplace_back();
    handle.part.kind = kind;
    handle.part.id = id;
    handle.part.index = static_cast<int>(index);
    handle.pane = pane;
    handle.at = at;
    handle.shape = shape;
    handle.always = always;
  };
  const auto grip = [&](ItemKind kind, Pane pane, const QPointF& at, Handle::Shape shape) {
    add(kind, {}, 0, pane, at, shape, true);
    all.back().part.index = -1;
  };
  const double turn = grade_grip_station(crossing);
  grip(ItemKind::grade, Pane::elevation, f.side(turn, bore_level_at(scene.assessment, crossing, turn)),
       Handle::Shape::diamond);
  grip(ItemKind::grade, Pane::plan, f.above(turn, bore_offset_at(scene.assessment, crossing, turn)),
       Handle::Shape::diamond);
  grip(ItemKind::launch, Pane::elevation, f.side(launch.station.m, launch.elevation.m), Handle::Shape::round);
  grip(ItemKind::launch, Pane::plan, f.above(launch.station.m, launch.offset->m), Handle::Shape::round);
  const double exit_z = bore_level_at(scene.assessment, crossing, crossing.bore.exit.station.m);
  grip(ItemKind::exit, Pane::elevation, f.side(crossing.bore.exit.station.m, exit_z), Handle::Shape::round);
  grip(ItemKind::exit, Pane::plan, f.above(crossing.bore.exit.station.m, crossing.bore.exit.offset->m),
       Handle::Shape::round);

  const auto vertices = [&](ItemKind kind, const std::string& id, const LevelLine& line) {
    for (std::size_t i = 0; i < line.size(); ++i)
      add(kind, id, i, Pane::elevation, f.side(line[i].station_m, line[i].elevation_m), Handle::Shape::square, true);
  };
  for (const Utility& utility : crossing.site.utilities) {
    if (scene.focus.picked.kind != ItemKind::utility || scene.focus.picked.id != utility.id) continue;
    for (std::size_t i = 0; i < utility.path.size(); ++i)
      add(ItemKind::utility, utility.id, i, Pane::plan, f.above(utility.path[i].x_m, utility.path[i].y_m),
          Handle::Shape::square, false);
  }
  for (const PitEdgePlace& edge : pit_edge_places(scene)) {
    add(ItemKind::pit_edge, edge.part.id, static_cast<std::size_t>(edge.part.index), edge.pane, edge.at,
        Handle::Shape::square, false);
  }
  add_selected_handles(scene, all);
  vertices(ItemKind::ground, {}, crossing.site.ground);
  for (const Stratum& stratum : crossing.site.strata)
    if (stratum.top) vertices(ItemKind::stratum, stratum.id, *stratum.top);
  if (crossing.site.water) vertices(ItemKind::water, {}, *crossing.site.water);
  return all;
}

namespace {

/// Beside what is locked.
void paint_lock(QPainter& painter, const Scene& scene, const QPointF& at) {
  const double text = scene.style.text;
  const QRectF body(at.x() + text * 0.45, at.y() - text * 0.8, text * 0.5, text * 0.38);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(scene.style.theme.ink, 1.3));
  painter.drawArc(QRectF(body.left() + text * 0.08, body.top() - text * 0.26, text * 0.34, text * 0.52), 0, 180 * 16);
  painter.fillRect(body, scene.style.theme.ink);
}

void paint_locks(QPainter& painter, const Scene& scene, const std::vector<Handle>& all) {
  const Crossing& crossing = scene.crossing;
  if (crossing.locks.empty()) return;
  const auto in = [&](const QRectF& pane, const QPointF& at) {
    if (pane.contains(at)) paint_lock(painter, scene, at);
  };
  for (const Handle& handle : all) {
    const std::vector<std::string> places = lock_places(crossing, handle.part);
    if (std::any_of(places.begin(), places.end(),
                    [&](const std::string& place) { return lock_stands(crossing, place); }))
      in(handle.pane == Pane::plan ? scene.frame.plan : scene.frame.elevation, handle.at);
  }
  for (const Utility& utility : crossing.site.utilities)
    if (lock_stands(crossing, "/site/utilities/" + utility.id + "/path"))
      for (const UtilityMark& mark : utility_marks(utility))
        in(scene.frame.elevation,
           scene.frame.side(mark.station_m,
                            mark.depth_known ? mark.elevation_m : elevation_at(crossing.site.ground, mark.station_m)));
}

}  // namespace

void paint_handles(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const std::vector<Handle> all = handles(scene);
  for (const Handle& handle : all) {
    const QRectF pane = handle.pane == Pane::plan ? scene.frame.plan : scene.frame.elevation;
    if (pane.isEmpty() || !pane.adjusted(-4, -4, 4, 4).contains(handle.at)) continue;
    const bool picked = handle.part == scene.focus.picked;
    const bool hovered = handle.part == scene.focus.hovered;
    const bool blocker = handle.shape == Handle::Shape::square && handle.always;
    const double r = scene.style.text * (blocker ? 0.22 : 0.42) * (picked || hovered ? 1.35 : 1.0);
    painter.setPen(QPen(picked || hovered ? theme.focus
                        : blocker         ? theme.ground
                                          : theme.ink,
                        scene.style.hair * (picked ? 2.4 : 1.3)));
    painter.setBrush(picked ? theme.focus : theme.field);
    switch (handle.shape) {
      case Handle::Shape::round:
        painter.drawEllipse(handle.at, r, r);
        break;
      case Handle::Shape::diamond:
        painter.drawPolygon(
            QPolygonF(QList<QPointF>{handle.at + QPointF(0, -r * 1.3), handle.at + QPointF(r * 1.3, 0),
                                     handle.at + QPointF(0, r * 1.3), handle.at + QPointF(-r * 1.3, 0)}));
        break;
      case Handle::Shape::square:
        painter.drawRect(QRectF(handle.at.x() - r, handle.at.y() - r, 2 * r, 2 * r));
        break;
    }
  }
  paint_locks(painter, scene, all);
}

}  // namespace burrow

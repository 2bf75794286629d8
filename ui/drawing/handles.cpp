#include "burrow/drawing/handles.h"

#include "burrow/drawing/labels.h"
#include "burrow/drawing/pit_edges.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

double path_elevation_at(const Assessment& assessment, const Crossing& crossing, double station) {
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

double distance_to_segment(const QPointF& p, const QPointF& a, const QPointF& b) {
  const QPointF d = b - a;
  const double length2 = QPointF::dotProduct(d, d);
  const double t = length2 > 0 ? std::clamp(QPointF::dotProduct(p - a, d) / length2, 0.0, 1.0) : 0;
  const QPointF off = p - (a + t * d);
  return std::hypot(off.x(), off.y());
}

ItemRef utility_at(const Scene& scene, const QPointF& at, double reach) {
  const Frame& f = scene.frame;
  const Pane pane = f.pane_at(at);
  ItemRef best;
  double least = reach;
  for (const Utility& utility : scene.crossing.site.utilities) {
    double distance = 1e300;
    if (pane == Pane::elevation) {
      const UtilityMark mark = utility_mark(utility);
      const double r = utility.outside_diameter.value_or(Length{0}).m / 2 * f.px_per_m;
      if (mark.depth_known) {
        const QPointF off = at - f.side(mark.station_m, mark.elevation_m);
        distance = std::max(0.0, std::hypot(off.x(), off.y()) - std::max(r, scene.style.text * 0.35));
      } else {
        distance = std::abs(at.x() - f.px_x(mark.station_m));
      }
    } else if (pane == Pane::plan) {
      for (std::size_t i = 1; i < utility.path.size(); ++i)
        distance = std::min(distance, distance_to_segment(at, f.above(utility.path[i - 1].x_m, utility.path[i - 1].y_m),
                                                          f.above(utility.path[i].x_m, utility.path[i].y_m)));
    }
    if (distance < least) {
      least = distance;
      best = {ItemKind::utility, utility.id, -1};
    }
  }
  return best;
}

QPolygonF polygon_of(const Frame& f, const PlanLine& line) {
  QPolygonF shape;
  for (const PlanPoint& p : line) shape << f.above(p.x_m, p.y_m);
  return shape;
}

ItemRef pit_at(const Scene& scene, const QPointF& at) {
  const Frame& f = scene.frame;
  for (const auto& [pit, kind] : {std::pair{&scene.assessment.launch_pit, ItemKind::launch},
                                  std::pair{&scene.assessment.exit_pit, ItemKind::exit}}) {
    QPolygonF shape;
    if (f.pane_at(at) == Pane::elevation)
      for (const LevelPoint& p : pit->section) shape << f.side(p.station_m, p.elevation_m);
    else
      shape = polygon_of(f, pit->footprint);
    if (shape.containsPoint(at, Qt::OddEvenFill)) return {kind, {}, -1};
  }
  return {};
}

ItemRef surface_at(const Scene& scene, const QPointF& at) {
  const Frame& f = scene.frame;
  for (const SurfaceFeature& feature : scene.crossing.site.surface) {
    if (!feature.outline.empty() && f.pane_at(at) == Pane::plan) {
      if (polygon_of(f, feature.outline).containsPoint(at, Qt::OddEvenFill)) return {ItemKind::surface, feature.id, -1};
      continue;
    }
    if (!feature.from || !feature.to) continue;
    const double station = f.station_m(at.x());
    const double lean = f.pane_at(at) == Pane::plan ? std::tan(feature.skew->rad) * f.offset_m(at.y()) : 0;
    if (station < feature.from->m + lean || station > feature.to->m + lean) continue;
    if (f.pane_at(at) == Pane::plan) return {ItemKind::surface, feature.id, -1};
    const double ground = f.px_z(elevation_at(scene.crossing.site.ground, station));
    if (std::abs(at.y() - ground) < scene.style.text * 0.8) return {ItemKind::surface, feature.id, -1};
  }
  return {};
}

}  // namespace

double grade_grip_station(const Crossing& crossing) {
  const double launch = crossing.bore.launch.station.m;
  return launch + 0.42 * (crossing.bore.exit.station.m - launch);
}

QRectF grip_box(const Handle& handle, const Style& style, bool selected) {
  const bool small = handle.shape == Handle::Shape::square && handle.always;
  const double half = style.text * (small ? 0.5 : selected ? 1.15 : 0.8);
  return {handle.at.x() - half, handle.at.y() - half, 2 * half, 2 * half};
}

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
  grip(ItemKind::grade, Pane::elevation, f.side(turn, path_elevation_at(scene.assessment, crossing, turn)),
       Handle::Shape::diamond);
  grip(ItemKind::grade, Pane::plan, f.above(turn, bore_offset_at(scene.assessment, crossing, turn)),
       Handle::Shape::diamond);
  grip(ItemKind::launch, Pane::elevation, f.side(launch.station.m, launch.elevation.m), Handle::Shape::round);
  grip(ItemKind::launch, Pane::plan, f.above(launch.station.m, launch.offset->m), Handle::Shape::round);
  const double exit_z = path_elevation_at(scene.assessment, crossing, crossing.bore.exit.station.m);
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
  vertices(ItemKind::ground, {}, crossing.site.ground);
  for (const Stratum& stratum : crossing.site.strata)
    if (stratum.top) vertices(ItemKind::stratum, stratum.id, *stratum.top);
  if (crossing.site.water) vertices(ItemKind::water, {}, *crossing.site.water);
  return all;
}

namespace {

/// By its name in one of the lanes.
ItemRef named_at(const Scene& scene, const QPointF& at) {
  if (!scene.labels) return {};
  for (const UtilityChip& chip : scene.labels->utilities.chips)
    if (chip.box.contains(at)) return {ItemKind::utility, chip.id, -1};
  for (const OnTopPart& part : scene.labels->on_top)
    if (part.name_box.contains(at) || part.stretch.contains(at)) return {ItemKind::surface, part.id, -1};
  return {};
}

}  // namespace

ItemRef part_at(const Scene& scene, const QPointF& at, double reach) {
  const Pane pane = scene.frame.pane_at(at);
  if (pane == Pane::lane) return named_at(scene, at);
  if (pane != Pane::elevation && pane != Pane::plan) return {};
  const std::vector<Handle> all = handles(scene);
  const auto nearest = std::min_element(all.begin(), all.end(), [&](const Handle& a, const Handle& b) {
    const auto far = [&](const Handle& h) {
      return h.pane == pane ? std::hypot(h.at.x() - at.x(), h.at.y() - at.y()) : 1e300;
    };
    return far(a) < far(b);
  });
  const bool grip = nearest != all.end() && nearest->pane == pane &&
                    std::hypot(nearest->at.x() - at.x(), nearest->at.y() - at.y()) <= reach;
  if (grip && (nearest->part.kind == ItemKind::grade || nearest->part.kind == ItemKind::launch ||
               nearest->part.kind == ItemKind::pit_edge || nearest->part.kind == ItemKind::utility))
    return nearest->part;
  if (ItemRef utility = utility_at(scene, at, reach); !utility.none()) return utility;
  if (grip) return nearest->part;
  if (ItemRef pit = pit_at(scene, at); !pit.none()) return pit;
  return surface_at(scene, at);
}

void paint_handles(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  for (const Handle& handle : handles(scene)) {
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
}

}  // namespace burrow

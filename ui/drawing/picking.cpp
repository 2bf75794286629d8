/// What lies under a point of the drawing.

#include <algorithm>
#include <cmath>

#include "burrow/drawing/handles.h"
#include "burrow/drawing/labels.h"

namespace burrow {

namespace {

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
      const double r = utility.outside_diameter.value_or(Length{0}).m / 2 * f.px_per_m;
      for (const UtilityMark& mark : utility_marks(utility)) {
        const QPointF off = at - f.side(mark.station_m, mark.elevation_m);
        distance =
            std::min(distance, mark.depth_known
                                   ? std::max(0.0, std::hypot(off.x(), off.y()) - std::max(r, scene.style.text * 0.35))
                                   : std::abs(off.x()));
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

/// A test hole by its square in the plan, by its two sides in the side elevation.
ItemRef hole_at(const Scene& scene, const QPointF& at, double reach) {
  const Frame& f = scene.frame;
  ItemRef best;
  double least = std::max(reach, scene.style.text * 0.7);
  for (const TestHole& hole : scene.crossing.site.test_holes) {
    double away = 1e300;
    if (f.pane_at(at) == Pane::plan) {
      const QPointF off = at - f.above(hole.station.m, hole.offset.m);
      away = std::max(std::abs(off.x()), std::abs(off.y()));
    } else {
      const QPointF end = hole_end(scene, hole);
      const double top = f.px_z(elevation_at(scene.crossing.site.ground, hole.station.m));
      if (at.y() > std::max(top, end.y()) + reach / 2 || at.y() < std::min(top, end.y())) continue;
      away = std::abs(at.x() - end.x());
    }
    if (away >= least) continue;
    least = away;
    best = {ItemKind::test_holes, hole.id, -1};
  }
  return best;
}

double distance_to_line(const QPointF& at, const QPolygonF& line, bool ring = false) {
  double least = 1e300;
  for (qsizetype i = ring ? 0 : 1; i < line.size(); ++i)
    least = std::min(least, distance_to_segment(at, line[i > 0 ? i - 1 : line.size() - 1], line[i]));
  return least;
}

QPolygonF level_polygon(const Frame& f, const LevelLine& line) {
  QPolygonF shape;
  for (const LevelPoint& p : line) shape << f.side(p.station_m, p.elevation_m);
  if (shape.isEmpty()) return shape;
  // Beyond its ends a line is held level.
  shape.prepend({std::min(f.elevation.left(), shape.front().x()), shape.front().y()});
  shape.append({std::max(f.elevation.right(), shape.back().x()), shape.back().y()});
  return shape;
}

/// The water level or the top of a stratum, anywhere along it.
ItemRef level_line_at(const Scene& scene, const QPointF& at, double reach) {
  if (scene.frame.pane_at(at) != Pane::elevation) return {};
  const Site& site = scene.crossing.site;
  if (site.water && distance_to_line(at, level_polygon(scene.frame, *site.water)) <= reach)
    return {ItemKind::water, {}, -1};
  for (const Stratum& stratum : site.strata)
    if (stratum.top && distance_to_line(at, level_polygon(scene.frame, *stratum.top)) <= reach)
      return {ItemKind::stratum, stratum.id, -1};
  return {};
}

ItemRef ground_line_at(const Scene& scene, const QPointF& at, double reach) {
  const bool on = scene.frame.pane_at(at) == Pane::elevation &&
                  distance_to_line(at, level_polygon(scene.frame, scene.crossing.site.ground)) <= reach;
  return on ? ItemRef{ItemKind::ground, {}, -1} : ItemRef{};
}

/// The bore between its grips.
ItemRef bore_at(const Scene& scene, const QPointF& at, double reach) {
  const Frame& f = scene.frame;
  const bool plan = f.pane_at(at) == Pane::plan;
  const double station = f.station_m(at.x());
  const Bore& bore = scene.crossing.bore;
  if (scene.assessment.bore.points.empty() || station < bore.launch.station.m || station > bore.exit.station.m)
    return {};
  const double along = plan ? f.px_y(bore_offset_at(scene.assessment, scene.crossing, station))
                            : f.px_z(bore_level_at(scene.assessment, scene.crossing, station));
  return std::abs(at.y() - along) <= reach ? ItemRef{ItemKind::bore, {}, -1} : ItemRef{};
}

/// Boundaries, trees, machines and trenches, in the plan.
ItemRef around_at(const Scene& scene, const QPointF& at, double reach) {
  const Frame& f = scene.frame;
  if (f.pane_at(at) != Pane::plan) return {};
  const Site& site = scene.crossing.site;
  const auto part = [](const std::string& id) { return ItemRef{ItemKind::around, id, -1}; };
  for (const Tree& tree : site.trees) {
    const QPointF off = at - f.above(tree.station.m, tree.offset.m);
    const double away = std::hypot(off.x(), off.y()), rim = tree.protection_radius.m * f.px_per_m;
    if (away <= reach || std::abs(away - rim) <= reach / 2) return part(tree.id);
  }
  for (const Plant& machine : site.plant) {
    const QPointF off = at - f.above(machine.station.m, machine.offset.m);
    if (std::abs(off.x()) <= machine.length.m * f.px_per_m / 2 && std::abs(off.y()) <= machine.width.m * f.px_per_m / 2)
      return part(machine.id);
  }
  for (const Boundary& boundary : site.boundaries)
    if (distance_to_line(at, polygon_of(f, boundary.line)) <= reach / 2) return part(boundary.id);
  for (const Strip& strip : site.strips)
    if (polygon_of(f, strip.outline).containsPoint(at, Qt::OddEvenFill)) return part(strip.id);
  return {};
}

}  // namespace

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
  const auto comes_first = [](ItemKind kind) {
    switch (kind) {
      case ItemKind::grade:
      case ItemKind::launch:
      case ItemKind::exit:
      case ItemKind::pit_edge:
      case ItemKind::utility:
      case ItemKind::surface:
      case ItemKind::around:
      case ItemKind::test_holes:
        return true;
      default:
        return false;
    }
  };
  if (grip && comes_first(nearest->part.kind)) return nearest->part;
  // Holes lie on the lines they were dug for, and come before them.
  if (ItemRef hole = hole_at(scene, at, reach); !hole.none()) return hole;
  if (ItemRef utility = utility_at(scene, at, reach); !utility.none()) return utility;
  if (grip) return nearest->part;
  const double along_px = reach / 2;
  if (ItemRef line = level_line_at(scene, at, along_px); !line.none()) return line;
  if (ItemRef bore = bore_at(scene, at, along_px); !bore.none()) return bore;
  if (ItemRef pit = pit_at(scene, at); !pit.none()) return pit;
  if (ItemRef around = around_at(scene, at, reach); !around.none()) return around;
  if (ItemRef surface = surface_at(scene, at); !surface.none()) return surface;
  return ground_line_at(scene, at, along_px);
}

}  // namespace burrow

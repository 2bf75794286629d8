#include "burrow/drawing/box_pick.h"

#include <QLineF>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

/// Whether a piece of the line lies in the box.
bool touches(const QRectF& box, const QPolygonF& line) {
  for (qsizetype i = 0; i < line.size(); ++i) {
    if (box.contains(line[i])) return true;
    if (i == 0) continue;
    const QLineF piece(line[i - 1], line[i]);
    const QLineF edges[] = {{box.topLeft(), box.topRight()},
                            {box.topRight(), box.bottomRight()},
                            {box.bottomRight(), box.bottomLeft()},
                            {box.bottomLeft(), box.topLeft()}};
    for (const QLineF& edge : edges)
      if (piece.intersects(edge, nullptr) == QLineF::BoundedIntersection) return true;
  }
  return false;
}

QPolygonF plan_line(const Frame& f, const Utility& utility) {
  QPolygonF line;
  for (const PathVertex& v : utility.path) line << f.above(v.x_m, v.y_m);
  return line;
}

/// Where the thing on top is grasped by a box: the middle of its band or outline.
std::optional<QPointF> middle_of(const Scene& scene, const SurfaceFeature& feature, Pane pane) {
  double from = 1e300, to = -1e300, across = 0;
  if (feature.from && feature.to) {
    from = feature.from->m;
    to = feature.to->m;
  }
  for (const PlanPoint& p : feature.outline) {
    from = std::min(from, p.x_m);
    to = std::max(to, p.x_m);
    across += p.y_m / static_cast<double>(feature.outline.size());
  }
  if (!(from <= to)) return std::nullopt;
  const double station = (from + to) / 2;
  if (pane == Pane::plan) return scene.frame.above(station, across);
  return scene.frame.side(station, elevation_at(scene.crossing.site.ground, station));
}

QPolygonF top_line(const Scene& scene, const Stratum& stratum) {
  QPolygonF line;
  for (const LevelPoint& p : stratum.top ? *stratum.top : LevelLine{})
    line << scene.frame.side(p.station_m, p.elevation_m);
  return line;
}

std::optional<QPointF> hole_at(const Scene& scene, const TestHole& hole, Pane pane) {
  if (pane == Pane::plan) return scene.frame.above(hole.station.m, hole.offset.m);
  if (!hole.elevation) return std::nullopt;
  return scene.frame.side(hole.station.m, hole.elevation->m);
}

/// Where boundaries, trees, machines and trenches are grasped by a box: their middle.
std::vector<std::pair<std::string, QPointF>> places_around(const Scene& scene) {
  std::vector<std::pair<std::string, QPointF>> places;
  const Site& site = scene.crossing.site;
  const auto middle = [&](const std::string& id, const PlanLine& line) {
    QPointF sum;
    for (const PlanPoint& p : line) sum += scene.frame.above(p.x_m, p.y_m);
    if (!line.empty()) places.emplace_back(id, sum / static_cast<double>(line.size()));
  };
  for (const Boundary& boundary : site.boundaries) middle(boundary.id, boundary.line);
  for (const Strip& strip : site.strips) middle(strip.id, strip.outline);
  for (const Tree& tree : site.trees) places.emplace_back(tree.id, scene.frame.above(tree.station.m, tree.offset.m));
  for (const Plant& machine : site.plant)
    places.emplace_back(machine.id, scene.frame.above(machine.station.m, machine.offset.m));
  return places;
}

}  // namespace

std::vector<ItemRef> items_in_box(const Scene& scene, const QRectF& box, Pane pane) {
  std::vector<ItemRef> parts;
  const Site& site = scene.crossing.site;
  const Frame& f = scene.frame;
  for (const Utility& utility : site.utilities) {
    if (utility.path.empty()) continue;
    bool in = false;
    if (pane == Pane::plan) {
      in = touches(box, plan_line(f, utility));
    } else {
      for (const UtilityMark& mark : utility_marks(utility)) {
        const double x = f.px_x(mark.station_m);
        in = in || (mark.depth_known ? box.contains(f.side(mark.station_m, mark.elevation_m))
                                     : x >= box.left() && x <= box.right() &&
                                           f.px_z(elevation_at(site.ground, mark.station_m)) < box.bottom());
      }
    }
    if (in) parts.push_back({ItemKind::utility, utility.id, -1});
  }
  for (const SurfaceFeature& feature : site.surface)
    if (const auto middle = middle_of(scene, feature, pane); middle && box.contains(*middle))
      parts.push_back({ItemKind::surface, feature.id, -1});
  for (const TestHole& hole : site.test_holes)
    if (const auto at = hole_at(scene, hole, pane); at && box.contains(*at))
      parts.push_back({ItemKind::test_holes, hole.id, -1});
  if (pane == Pane::plan)
    for (const auto& [id, at] : places_around(scene))
      if (box.contains(at)) parts.push_back({ItemKind::around, id, -1});
  if (pane == Pane::elevation)
    for (const Stratum& stratum : site.strata) {
      const QPolygonF line = top_line(scene, stratum);
      if (std::any_of(line.begin(), line.end(), [&](const QPointF& p) { return box.contains(p); }))
        parts.push_back({ItemKind::stratum, stratum.id, -1});
    }
  return parts;
}

void paint_several(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const Frame& f = scene.frame;
  const Site& site = scene.crossing.site;
  const double text = scene.style.text;
  QColor broad = theme.focus;
  broad.setAlpha(90);
  const auto in_pane = [&](const QRectF& pane, auto paint) {
    painter.save();
    painter.setClipRect(pane);
    painter.setBrush(Qt::NoBrush);
    paint();
    painter.restore();
  };
  const auto is = [&](ItemKind kind, const std::string& id) {
    return std::find(scene.focus.several.begin(), scene.focus.several.end(), ItemRef{kind, id, -1}) !=
           scene.focus.several.end();
  };
  const auto ring = [&](const QPointF& at, double r) {
    painter.setPen(QPen(theme.focus, scene.style.hair * 2));
    painter.drawEllipse(at, r, r);
  };
  if (!scene.focus.several.empty()) {
    in_pane(f.elevation, [&] {
      for (const Utility& u : site.utilities) {
        if (!is(ItemKind::utility, u.id) || u.path.empty()) continue;
        const UtilityMark mark = utility_mark(u);
        const double r = u.outside_diameter.value_or(Length{0}).m / 2 * f.px_per_m * f.exaggeration;
        const double level = mark.depth_known ? mark.elevation_m : elevation_at(site.ground, mark.station_m);
        ring(f.side(mark.station_m, level), std::max(r, text * 0.35) + text * 0.3);
      }
      for (const SurfaceFeature& s : site.surface)
        if (const auto at = middle_of(scene, s, Pane::elevation); at && is(ItemKind::surface, s.id) && s.from && s.to) {
          painter.setPen(QPen(broad, text * 0.7, Qt::SolidLine, Qt::FlatCap));
          painter.drawLine(f.side(s.from->m, elevation_at(site.ground, s.from->m)),
                           f.side(s.to->m, elevation_at(site.ground, s.to->m)));
        } else if (at && is(ItemKind::surface, s.id)) {
          ring(*at, text * 0.8);
        }
      for (const Stratum& s : site.strata)
        if (is(ItemKind::stratum, s.id)) {
          painter.setPen(QPen(broad, text * 0.5, Qt::SolidLine, Qt::FlatCap));
          painter.drawPolyline(top_line(scene, s));
        }
      for (const TestHole& h : site.test_holes)
        if (const auto at = hole_at(scene, h, Pane::elevation); at && is(ItemKind::test_holes, h.id))
          ring(*at, text * 0.7);
    });
    in_pane(f.plan, [&] {
      for (const Utility& u : site.utilities)
        if (is(ItemKind::utility, u.id)) draw_run(painter, plan_line(f, u), QPen(broad, text * 0.6));
      for (const SurfaceFeature& s : site.surface)
        if (const auto at = middle_of(scene, s, Pane::plan); at && is(ItemKind::surface, s.id)) ring(*at, text * 0.8);
      for (const TestHole& h : site.test_holes)
        if (is(ItemKind::test_holes, h.id)) ring(f.above(h.station.m, h.offset.m), text * 0.8);
      for (const auto& [id, at] : places_around(scene))
        if (is(ItemKind::around, id)) ring(at, text * 0.8);
    });
  }
  if (scene.focus.box) {
    QColor tint = theme.focus;
    tint.setAlpha(28);
    painter.setBrush(tint);
    painter.setPen(QPen(theme.focus, scene.style.hair * 1.3, Qt::DashLine));
    painter.drawRect(*scene.focus.box);
  }
}

}  // namespace burrow

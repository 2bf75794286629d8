/// Lines and bodies that show no grip of their own when they are selected or lie under the pointer.

#include <algorithm>

#include "burrow/crossing/find.h"
#include "burrow/drawing/box_pick.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

/// What a broad line is drawn along, in one of the views.
struct Course {
  Pane pane = Pane::none;
  QPolygonF line;
  bool ring = false;
};

QPolygonF level_course(const Frame& f, const LevelLine& levels) {
  QPolygonF line;
  for (const LevelPoint& p : levels) line << f.side(p.station_m, p.elevation_m);
  if (line.isEmpty()) return line;
  line.prepend({std::min(f.elevation.left(), line.front().x()), line.front().y()});
  line.append({std::max(f.elevation.right(), line.back().x()), line.back().y()});
  return line;
}

QPolygonF plan_course(const Frame& f, const PlanLine& corners) {
  QPolygonF line;
  for (const PlanPoint& p : corners) line << f.above(p.x_m, p.y_m);
  return line;
}

std::vector<Course> courses_of(const Scene& scene, const ItemRef& part) {
  const Frame& f = scene.frame;
  const Site& site = scene.crossing.site;
  switch (part.kind) {
    case ItemKind::water:
      return site.water ? std::vector<Course>{{Pane::elevation, level_course(f, *site.water)}} : std::vector<Course>{};
    case ItemKind::ground:
      return {{Pane::elevation, level_course(f, site.ground)}};
    case ItemKind::stratum: {
      const Stratum* stratum = find_by_id(site.strata, part.id);
      if (!stratum || !stratum->top) return {};
      return {{Pane::elevation, level_course(f, *stratum->top)}};
    }
    case ItemKind::bore: {
      Course side{Pane::elevation, {}}, plan{Pane::plan, {}};
      for (const PathPoint& p : scene.assessment.bore.points) {
        side.line << f.side(p.x_m, p.z_m);
        plan.line << f.above(p.x_m, p.y_m);
      }
      return {side, plan};
    }
    case ItemKind::surface: {
      const SurfaceFeature* feature = find_by_id(site.surface, part.id);
      if (!feature || feature->outline.empty()) return {};
      return {{Pane::plan, plan_course(f, feature->outline), true}};
    }
    case ItemKind::around: {
      if (const Boundary* boundary = find_by_id(site.boundaries, part.id))
        return {{Pane::plan, plan_course(f, boundary->line)}};
      if (const Strip* strip = find_by_id(site.strips, part.id))
        return {{Pane::plan, plan_course(f, strip->outline), true}};
      return {};
    }
    default:
      return {};
  }
}

}  // namespace

void paint_selected(QPainter& painter, const Scene& scene) {
  if (!scene.style.handles) return;
  const auto paint = [&](const ItemRef& part, int strength) {
    if (part.none() || part.index >= 0) return;
    QColor broad = scene.style.theme.focus;
    broad.setAlpha(strength);
    for (const Course& course : courses_of(scene, part)) {
      if (course.line.size() < 2) continue;
      painter.save();
      painter.setClipRect(course.pane == Pane::plan ? scene.frame.plan : scene.frame.elevation);
      painter.setPen(QPen(broad, scene.style.text * 0.45, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
      painter.setBrush(Qt::NoBrush);
      if (course.ring)
        painter.drawPolygon(course.line);
      else
        painter.drawPolyline(course.line);
      painter.restore();
    }
  };
  constexpr int selected = 95, under_pointer = 50;
  paint(scene.focus.picked, selected);
  if (!(scene.focus.hovered == scene.focus.picked)) paint(scene.focus.hovered, under_pointer);
}

}  // namespace burrow

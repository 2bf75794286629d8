#include <QObject>
#include <algorithm>
#include <cmath>

#include "burrow/drawing/labels.h"
#include "burrow/drawing/pit_edges.h"
#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

QPolygonF plan_line(const Frame& f, const PlanLine& line) {
  QPolygonF shape;
  shape.reserve(static_cast<qsizetype>(line.size()));
  for (const PlanPoint& p : line) shape << f.above(p.x_m, p.y_m);
  return shape;
}

void paint_surface_plan(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  for (const SurfaceFeature& feature : scene.crossing.site.surface) {
    QPolygonF area;
    if (!feature.outline.empty()) {
      area = plan_line(f, feature.outline);
    } else if (feature.from && feature.to) {
      const double top = f.offset_m(f.plan.top());
      const double bottom = f.offset_m(f.plan.bottom());
      const double lean = std::tan(feature.skew->rad);
      area << f.above(feature.from->m + lean * top, top) << f.above(feature.to->m + lean * top, top)
           << f.above(feature.to->m + lean * bottom, bottom) << f.above(feature.from->m + lean * bottom, bottom);
    }
    if (area.isEmpty()) continue;
    QColor fill = feature.kind == SurfaceKind::ditch ? theme.water : theme.road;
    fill.setAlpha(feature.kind == SurfaceKind::building || feature.kind == SurfaceKind::footing ? 70 : 34);
    painter.setPen(
        QPen(theme.road, scene.style.hair, feature.kind == SurfaceKind::track ? Qt::DashLine : Qt::SolidLine));
    painter.setBrush(feature.kind == SurfaceKind::building ? QBrush(fill, Qt::FDiagPattern) : QBrush(fill));
    painter.drawPolygon(area);
    if (feature.kind == SurfaceKind::track && area.size() == 4) {  // two rails about the middle
      for (const double t : {0.32, 0.68}) {
        painter.setPen(QPen(theme.ink, scene.style.hair * 1.8));
        painter.drawLine(area[0] + (area[1] - area[0]) * t, area[3] + (area[2] - area[3]) * t);
      }
    }
  }
}

/// Surveyed points of the ground, as small crosses; where they stand too close, not all of them.
void paint_surveyed_points(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const double arm = scene.style.text * 0.2;
  painter.setPen(QPen(scene.style.theme.ground, scene.style.hair));
  QRectF last;
  for (const Point3& p : scene.crossing.site.ground_points) {
    const QPointF at = f.above(p.x_m, p.y_m);
    if (!f.plan.contains(at) || last.contains(at)) continue;
    last = QRectF(at - QPointF(2 * arm, 2 * arm), QSizeF(4 * arm, 4 * arm));
    painter.drawLine(at - QPointF(arm, arm), at + QPointF(arm, arm));
    painter.drawLine(at - QPointF(arm, -arm), at + QPointF(arm, -arm));
  }
}

void paint_pit_plan(QPainter& painter, const Scene& scene, const PitShape& pit, bool picked) {
  const Theme& theme = scene.style.theme;
  painter.setPen(QPen(picked ? theme.focus : theme.ink, scene.style.hair * (picked ? 2.2 : 1.2)));
  QColor slope = theme.ground;
  slope.setAlpha(36);
  painter.setBrush(slope);
  const QPolygonF footprint = plan_line(scene.frame, pit.footprint);
  const QPolygonF floor = plan_line(scene.frame, pit.floor);
  painter.drawPolygon(footprint);
  painter.setBrush(theme.pit);
  painter.drawPolygon(floor);
  if (!pit.ground.there() && footprint.size() == 4 && floor.size() == 4) {  // edges of the slopes
    painter.setPen(QPen(theme.ink_soft, scene.style.hair * 0.8));
    for (int i = 0; i < 4; ++i) painter.drawLine(footprint[i], floor[i]);
  }
}

QPolygonF utility_line(const Frame& f, const Utility& utility) {
  QPolygonF line;
  line.reserve(static_cast<qsizetype>(utility.path.size()));
  for (const PathVertex& v : utility.path) line << f.above(v.x_m, v.y_m);
  return line;
}

bool picked_one(const Scene& scene, const Utility& utility) {
  return scene.focus.picked.kind == ItemKind::utility && scene.focus.picked.id == utility.id;
}

/// Letter codes on the line, where they were placed.
void paint_letters(QPainter& painter, const Scene& scene, const Utility& utility) {
  for (const PlacedText& text : scene.labels->plan)
    if (text.role == TextRole::letter && text.id == utility.id)
      paint_letter_ring(painter, scene, text.box, utility.kind, text.text);
}

void paint_utility_plan(QPainter& painter, const Scene& scene, const Utility& utility) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const QPolygonF line = utility_line(f, utility);
  if (line.isEmpty() || !line.boundingRect().adjusted(-50, -50, 50, 50).intersects(f.plan)) return;
  const bool picked = picked_one(scene, utility);
  const bool hovered = scene.focus.hovered.kind == ItemKind::utility && scene.focus.hovered.id == utility.id;
  const double diameter = utility.outside_diameter.value_or(Length{0}).m * f.px_per_m;
  const double width = std::max(scene.style.hair * 2, diameter);
  painter.setBrush(Qt::NoBrush);
  // How well it is known across; with test holes that changes along it and is painted with them.
  const UtilityAnswer* answer = answer_for(scene, utility.id);
  const bool pinned = answer && !answer->believed.empty();
  const double stated = utility.located.lateral_sd.value_or(Length{0}).m;
  if (const double sd = answer && answer->lateral_sd_m ? *answer->lateral_sd_m : stated; sd > 0 && !pinned) {
    QColor halo = utility_colour(scene, utility.kind);
    halo.setAlpha(40);
    draw_run(painter, line, QPen(halo, width + 2 * sd * f.px_per_m));
  }
  if (picked || hovered) draw_run(painter, line, QPen(theme.focus, width + scene.style.hair * (picked ? 5 : 3)));
  QPen pen = utility_pen(scene, utility.kind, std::min(width, scene.style.text * 0.5));
  if (utility.status.value == UtilityStatus::abandoned) pen.setDashPattern({1, 2});
  draw_run(painter, line, pen);
  paint_letters(painter, scene, utility);
}

}  // namespace

void paint_plan_base(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  painter.setPen(QPen(theme.ink_soft, scene.style.hair * 0.8));
  painter.setBrush(Qt::NoBrush);
  for (const Background& sheet : scene.crossing.site.background)
    for (const PlanLine& line : sheet.lines) painter.drawPolyline(plan_line(f, line));
  paint_surface_plan(painter, scene);
  paint_surveyed_points(painter, scene);
  painter.setBrush(Qt::NoBrush);
  for (const Boundary& boundary : scene.crossing.site.boundaries) {
    painter.setPen(QPen(theme.ink_soft, scene.style.hair * 1.4, Qt::DashDotDotLine));
    painter.drawPolyline(plan_line(f, boundary.line));
  }
  for (const Tree& tree : scene.crossing.site.trees) {
    painter.setPen(QPen(theme.fine, scene.style.hair, Qt::DashLine));
    const double r = tree.protection_radius.m * f.px_per_m;
    painter.drawEllipse(f.above(tree.station.m, tree.offset.m), r, r);
    painter.drawEllipse(f.above(tree.station.m, tree.offset.m), 3 * scene.style.hair, 3 * scene.style.hair);
  }
  for (const Plant& machine : scene.crossing.site.plant) {
    const QSizeF size(machine.length.m * f.px_per_m, machine.width.m * f.px_per_m);
    QRectF body(QPointF(), size);
    body.moveCenter(f.above(machine.station.m, machine.offset.m));
    painter.setPen(QPen(theme.ink_soft, scene.style.hair * 1.2));
    painter.setBrush(QBrush(theme.line, Qt::DiagCrossPattern));
    painter.drawRect(body);
    painter.setBrush(Qt::NoBrush);
  }
  for (const Strip& strip : scene.crossing.site.strips) {
    QColor tint = soil_fill(strip.soil, theme).tint;
    tint.setAlpha(150);
    painter.setBrush(tint);
    painter.setPen(QPen(theme.ground, scene.style.hair, Qt::DotLine));
    painter.drawPolygon(plan_line(f, strip.outline));
  }
  painter.setPen(QPen(theme.ink_soft, scene.style.hair, Qt::DashDotLine));
  painter.drawLine(QPointF(f.plan.left(), f.px_y(0)), QPointF(f.plan.right(), f.px_y(0)));
}

namespace {

void paint_heap(QPainter& painter, const Scene& scene, const PitAnswer& work) {
  const Style& style = scene.style;
  const QPolygonF heap = plan_line(scene.frame, work.heap.outline);
  if (work.heap.volume_m3 > 0 && heap.size() > 2) {
    QColor earth = style.theme.ground;
    earth.setAlpha(60);
    painter.setPen(QPen(style.theme.ink_soft, style.hair, Qt::DashLine));
    painter.setBrush(QBrush(earth));
    painter.drawPolygon(heap);
  }
}

void paint_ladder(QPainter& painter, const Scene& scene, const PitAnswer& work) {
  if (!work.ladder) return;
  const Style& style = scene.style;
  const QPointF at = scene.frame.above(work.ladder->x_m, work.ladder->y_m);
  const double half = style.text * 0.35;
  painter.setPen(QPen(style.theme.ink, style.hair * 1.2));
  for (const double side : {-half, half}) painter.drawLine(at + QPointF(side, -2 * half), at + QPointF(side, 2 * half));
  for (const double rung : {-1.2, -0.4, 0.4, 1.2})
    painter.drawLine(at + QPointF(-half, rung * half), at + QPointF(half, rung * half));
}

}  // namespace

void paint_pits_plan(QPainter& painter, const Scene& scene) {
  paint_heap(painter, scene, scene.assessment.launch_pit_work);
  paint_heap(painter, scene, scene.assessment.exit_pit_work);
  paint_pit_plan(painter, scene, scene.assessment.launch_pit, pit_picked(scene, "launch"));
  paint_pit_plan(painter, scene, scene.assessment.exit_pit, pit_picked(scene, "exit"));
  paint_ladder(painter, scene, scene.assessment.launch_pit_work);
  paint_ladder(painter, scene, scene.assessment.exit_pit_work);
}

void paint_utilities_plan(QPainter& painter, const Scene& scene) {
  painter.setFont(drawing_font(scene.style.text * 0.82, QFont::Bold));
  for (const Utility& utility : scene.crossing.site.utilities)
    if (!picked_one(scene, utility)) paint_utility_plan(painter, scene, utility);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_picked_utility_plan(QPainter& painter, const Scene& scene) {
  painter.setFont(drawing_font(scene.style.text * 0.82, QFont::Bold));
  for (const Utility& utility : scene.crossing.site.utilities)
    if (picked_one(scene, utility)) paint_utility_plan(painter, scene, utility);
  painter.setFont(drawing_font(scene.style.text));
}

void paint_ghost_utilities_plan(QPainter& painter, const Scene& scene) {
  if (!scene.focus.ghost_crossing) return;
  const auto& now = scene.crossing.site.utilities;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(scene.style.theme.ghost, scene.style.hair * 1.4, Qt::DashLine));
  for (const Utility& old : scene.focus.ghost_crossing->site.utilities) {
    const auto same = std::find_if(now.begin(), now.end(), [&](const Utility& u) { return u.id == old.id; });
    if (same != now.end() && same->path != old.path) painter.drawPolyline(utility_line(scene.frame, old));
  }
}

}  // namespace burrow

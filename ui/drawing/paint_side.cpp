#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "burrow/drawing/pit_edges.h"
#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

void paint_pit_side(QPainter& painter, const Scene& scene, const PitShape& pit, bool launch, bool picked) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  if (pit.section.size() < 3) return;
  QPolygonF cut;
  for (const LevelPoint& p : pit.section) cut << f.side(p.station_m, p.elevation_m);
  painter.setPen(QPen(picked ? theme.focus : theme.ink, scene.style.hair * (picked ? 2.2 : 1.2)));
  painter.setBrush(theme.pit);
  painter.drawPolygon(cut);

  // Boards on the bore side, unless it is sloped.
  const SideKind kind = pit.held.bore;
  if (kind == SideKind::shored || kind == SideKind::shielded) {
    const double x = launch ? pit.floor_to_m : pit.floor_from_m;
    const double top = elevation_at(scene.crossing.site.ground, x);
    const double inward = launch ? -1 : 1;
    painter.setPen(QPen(theme.ink, scene.style.hair * 3.2, Qt::SolidLine, Qt::FlatCap));
    const double px = f.px_x(x) + inward * scene.style.hair * 2;
    painter.drawLine(QPointF(px, f.px_z(top) - scene.style.text * 0.4), QPointF(px, f.px_z(pit.floor_elevation_m)));
  }
}

void paint_tool(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Launch& launch = scene.crossing.bore.launch;
  const ToolClass* row = find_tool(scene.tables, scene.crossing.bore.tool.tool_class);
  const ToolChoice& plate = scene.crossing.bore.tool;
  const double diameter = plate.diameter ? plate.diameter->m : row ? row->diameter.m : 0;
  const double length = plate.length ? plate.length->m : row ? row->length.m : 0;
  if (!(diameter > 0 && length > 0)) return;
  const double angle = std::atan(launch.grade.v);
  const double nose = std::min(length * 0.16, diameter * 2.2);
  const auto at = [&](double along, double up) {
    return f.side(launch.station.m + along * std::cos(angle) - up * std::sin(angle),
                  launch.elevation.m + along * std::sin(angle) + up * std::cos(angle));
  };
  const double r = diameter / 2;
  const QPolygonF body{
      QList<QPointF>{at(-length, r), at(-nose, r), at(0, 0.12 * r), at(0, -0.12 * r), at(-nose, -r), at(-length, -r)}};
  painter.setPen(QPen(scene.style.theme.ink, scene.style.hair));
  painter.setBrush(scene.style.theme.dark ? QColor(0x6d, 0x76, 0x80) : QColor(0xb9, 0xc0, 0xc6));
  painter.drawPolygon(body);
}

QRectF disc_of(const Frame& f, const UtilityMark& mark, double diameter_m, double least_px) {
  const double w = std::max(least_px, diameter_m * f.px_per_m);
  const double h = std::max(least_px, diameter_m * f.px_per_m * f.exaggeration);
  const QPointF c = f.side(mark.station_m, mark.elevation_m);
  return {c.x() - w / 2, c.y() - h / 2, w, h};
}

void paint_ghost_utilities(QPainter& painter, const Scene& scene) {
  if (!scene.focus.ghost_crossing) return;
  const auto& before = scene.focus.ghost_crossing->site.utilities;
  for (const Utility& utility : scene.crossing.site.utilities) {
    const auto old = std::find_if(before.begin(), before.end(), [&](const Utility& u) { return u.id == utility.id; });
    if (old == before.end() || old->path == utility.path) continue;
    const UtilityMark mark = utility_mark(*old);
    if (!mark.depth_known) continue;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(scene.style.theme.ghost, scene.style.hair * 1.3, Qt::DashLine));
    painter.drawEllipse(
        disc_of(scene.frame, mark, old->outside_diameter.value_or(Length{0}).m, scene.style.text * 0.7));
  }
}

}  // namespace

void paint_pits_side(QPainter& painter, const Scene& scene) {
  paint_pit_side(painter, scene, scene.assessment.launch_pit, true, pit_picked(scene, "launch"));
  paint_pit_side(painter, scene, scene.assessment.exit_pit, false, pit_picked(scene, "exit"));
  if (scene.focus.ghost) {
    for (const PitShape* pit : {&scene.focus.ghost->launch_pit, &scene.focus.ghost->exit_pit}) {
      QPolygonF cut;
      for (const LevelPoint& p : pit->section) cut << scene.frame.side(p.station_m, p.elevation_m);
      painter.setBrush(Qt::NoBrush);
      painter.setPen(QPen(scene.style.theme.ghost, scene.style.hair, Qt::DashLine));
      painter.drawPolyline(cut);
    }
  }
  paint_tool(painter, scene);
}

namespace {

/// One of the places where the line meets the plane.
void paint_utility_mark(QPainter& painter, const Scene& scene, const Utility& utility, const UtilityMark& mark) {
  const Frame& f = scene.frame;
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  if (f.px_x(mark.station_m) < f.elevation.left() - 200 || f.px_x(mark.station_m) > f.elevation.right() + 200) return;
  const QColor colour = utility_colour(scene, utility.kind);
  const bool picked = scene.focus.picked.kind == ItemKind::utility && scene.focus.picked.id == utility.id;
  const bool hovered = scene.focus.hovered.kind == ItemKind::utility && scene.focus.hovered.id == utility.id;
  if (!mark.depth_known) {  // depth not known: a mark on the ground and a broken line down
    const double x = f.px_x(mark.station_m);
    const double y = f.px_z(elevation_at(scene.crossing.site.ground, mark.station_m));
    painter.setPen(QPen(colour, scene.style.hair * 1.5, Qt::DotLine));
    painter.drawLine(QPointF(x, y), QPointF(x, f.elevation.bottom()));
    return;
  }
  const double diameter = utility.outside_diameter.value_or(Length{0}).m;
  const QRectF disc = disc_of(f, mark, diameter, text * 0.7);
  const UtilityAnswer* answer = answer_for(scene, utility.id);
  const auto sd = [&](const std::optional<double> UtilityAnswer::*computed, const std::optional<Length>& typed) {
    return answer && answer->*computed ? *(answer->*computed) : typed.value_or(Length{0}).m;
  };
  const double up = sd(&UtilityAnswer::vertical_sd_m, utility.located.vertical_sd);
  if (up > 0) {  // where it may be: one standard deviation up and down
    const double grow = up * f.px_per_m * f.exaggeration;
    const double grow_x = sd(&UtilityAnswer::lateral_sd_m, utility.located.lateral_sd) * f.px_per_m;
    QColor halo = colour;
    halo.setAlpha(45);
    painter.setPen(Qt::NoPen);
    painter.setBrush(halo);
    painter.setRenderHint(QPainter::Antialiasing, false);  // pale: not seen, and several times faster
    painter.drawEllipse(disc.adjusted(-grow_x, -grow, grow_x, grow));
    painter.setRenderHint(QPainter::Antialiasing, true);
  }
  painter.setPen(QPen(picked || hovered ? theme.focus : theme.ink, scene.style.hair * (picked    ? 2.6
                                                                                       : hovered ? 2
                                                                                                 : 1)));
  painter.setBrush(utility.status.value == UtilityStatus::abandoned ? QBrush(colour, Qt::BDiagPattern)
                                                                    : QBrush(colour));
  painter.drawEllipse(disc);
}

}  // namespace

void paint_utilities_side(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  for (const Utility& utility : scene.crossing.site.utilities) {
    if (utility.path.empty()) continue;
    // A line that runs beside the bore shows as a line.
    QPolygonF run;
    for (const PathVertex& v : utility.path)
      if (v.z_m) run << f.side(v.x_m, *v.z_m);
    if (run.size() > 1 && run.boundingRect().width() > scene.style.text * 3) {
      painter.setBrush(Qt::NoBrush);
      draw_run(painter, run, utility_pen(scene, utility.kind, scene.style.hair * 1.6));
    }
    for (const UtilityMark& mark : utility_marks(utility)) paint_utility_mark(painter, scene, utility, mark);
  }
  paint_ghost_utilities(painter, scene);
}

}  // namespace burrow

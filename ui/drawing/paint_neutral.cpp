/// The level at which a level tool runs straight: above it climbs, below it sags.

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

/// The line on the screen, in pieces where it has no level.
std::vector<QPolygonF> pieces(const Scene& scene) {
  std::vector<QPolygonF> all(1);
  for (const NeutralPoint& p : scene.assessment.neutral_line) {
    if (p.elevation_m)
      all.back() << scene.frame.side(p.station_m, *p.elevation_m);
    else if (!all.back().isEmpty())
      all.emplace_back();
  }
  return all;
}

}  // namespace

void paint_neutral_line(QPainter& painter, const Scene& scene) {
  if (!scene.layers.neutral_line) return;
  const Theme& theme = scene.style.theme;
  QPen pen(theme.bore, scene.style.hair * 1.1);
  pen.setDashPattern({9, 4, 1.5, 4});
  for (const QPolygonF& line : pieces(scene))
    if (line.size() > 1 && line.boundingRect().adjusted(0, -1, 0, 1).intersects(scene.frame.elevation))
      draw_run(painter, line, pen);
}

}  // namespace burrow

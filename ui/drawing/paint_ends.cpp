/// Ends of lines that the assessment asks about: nobody said why they end there.

#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

/// A gap in the line and a question mark beside it: open, unlike a handle or a hole.
void open_end(QPainter& painter, const Scene& scene, const QPointF& at) {
  const Style& style = scene.style;
  const double radius = style.text * 0.35;
  painter.setPen(QPen(style.theme.caution_line, style.hair * 1.5, Qt::DashLine));
  painter.setBrush(style.theme.paper);
  painter.drawEllipse(at, radius, radius);
  painter.setFont(drawing_font(style.text, QFont::Bold));
  halo_text(painter, at + QPointF(radius * 1.3, -radius * 0.6), QStringLiteral("?"), style.theme.ink,
            style.theme.paper);
  painter.setFont(drawing_font(style.text));
}

template <class Place>
void each_open_end(const Scene& scene, Place place) {
  for (const Finding& finding : scene.assessment.findings)
    if (finding.code == "missing.utility-course") place(finding);
}

}  // namespace

void paint_open_ends_plan(QPainter& painter, const Scene& scene) {
  each_open_end(scene, [&](const Finding& f) {
    if (f.station_m && f.offset_m) open_end(painter, scene, scene.frame.above(*f.station_m, *f.offset_m));
  });
}

void paint_open_ends_side(QPainter& painter, const Scene& scene) {
  each_open_end(scene, [&](const Finding& f) {
    if (f.station_m && f.elevation_m) open_end(painter, scene, scene.frame.side(*f.station_m, *f.elevation_m));
  });
}

}  // namespace burrow

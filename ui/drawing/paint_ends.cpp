/// Ends of lines that the assessment asks about: nobody said why they end there.

#include "burrow/drawing/picture.h"

namespace burrow {

namespace {

/// A gap in the line and a question mark beside it: open, unlike a handle or a hole.
void open_end(QPainter& painter, const Picture& picture, const QPointF& at) {
  const Look& look = picture.look;
  const double radius = look.text * 0.35;
  painter.setPen(QPen(look.theme.caution_line, look.hair * 1.5, Qt::DashLine));
  painter.setBrush(look.theme.paper);
  painter.drawEllipse(at, radius, radius);
  painter.setFont(drawing_font(look.text, QFont::Bold));
  halo_text(painter, at + QPointF(radius * 1.3, -radius * 0.6), QStringLiteral("?"), look.theme.ink, look.theme.paper);
  painter.setFont(drawing_font(look.text));
}

template <class Place>
void each_open_end(const Picture& picture, Place place) {
  for (const Finding& finding : picture.assessment.findings)
    if (finding.code == "missing.utility-course") place(finding);
}

}  // namespace

void paint_open_ends_plan(QPainter& painter, const Picture& picture) {
  each_open_end(picture, [&](const Finding& f) {
    if (f.station_m && f.offset_m) open_end(painter, picture, picture.frame.above(*f.station_m, *f.offset_m));
  });
}

void paint_open_ends_side(QPainter& painter, const Picture& picture) {
  each_open_end(picture, [&](const Finding& f) {
    if (f.station_m && f.elevation_m) open_end(painter, picture, picture.frame.side(*f.station_m, *f.elevation_m));
  });
}

}  // namespace burrow

/// What the overview strip shows.

#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "burrow/drawing/flags.h"
#include "burrow/drawing/overview.h"
#include "burrow/drawing/small_picture.h"

namespace burrow {

void OverviewStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Theme& theme = drawing_.style().theme;
  const Crossing& crossing = document_.crossing();
  const Assessment& assessment = document_.assessment();
  const OverviewScale s = scale();
  painter.fillRect(rect(), theme.panel);

  painter.save();
  painter.setClipRect(QRectF(s.area.left(), 0, s.area.width(), height()));
  const Scene scene{crossing, assessment, document_.tables(), drawing_.frame(), drawing_.style(), Interaction{}};
  paint_small_picture(painter, s, scene,
                      drawing_.picked().kind == ItemKind::utility ? drawing_.picked().id : std::string());
  painter.restore();

  // What the drawing does not show lies in the shade.
  const QRectF w = window();
  QColor shade = theme.panel;
  shade.setAlpha(150);
  painter.fillRect(QRectF(0, 0, w.left(), height()), shade);
  painter.fillRect(QRectF(w.right(), 0, width() - w.right(), height()), shade);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.focus, 1.6));
  painter.drawRoundedRect(w, 3, 3);
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme.focus);
  const double grip = std::min(4.0, w.width() / 3);
  const double tall = height() * 0.34;
  for (const double x : {w.left() - grip / 2, w.right() - grip / 2})
    painter.drawRoundedRect(QRectF(x, w.center().y() - tall / 2, grip, tall), 1.5, 1.5);

  for (const Mark& mark : marks()) {
    const Finding& f = assessment.findings[static_cast<std::size_t>(mark.finding)];
    paint_finding_mark(painter, mark.box, mark_of(f), theme, QString());
  }
  painter.setPen(QPen(theme.grid, 1));
  painter.drawLine(QPointF(0, 0.5), QPointF(width(), 0.5));
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.focus, 2));
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
}

}  // namespace burrow

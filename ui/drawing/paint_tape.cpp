#include <QObject>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/tape.h"

namespace burrow {

QPointF tape_end(const Scene& scene, Pane pane, const QPointF& at, double reach) {
  QPointF best = at;
  double least = reach;
  const auto offer = [&](const QPointF& p) {
    const double far = std::hypot(p.x() - at.x(), p.y() - at.y());
    if (far >= least) return;
    least = far;
    best = p;
  };
  for (const Handle& handle : handles(scene))
    if (handle.pane == pane) offer(handle.at);
  if (pane == Pane::elevation) {
    for (const Utility& utility : scene.crossing.site.utilities)
      if (const UtilityMark mark = utility_mark(utility); mark.depth_known)
        offer(scene.frame.side(mark.station_m, mark.elevation_m));
  }
  return best;
}

QStringList tape_words(const Tape& tape, UnitSystem units) {
  const auto number = [&](double v, Dimension d) { return text_from(format(v, d, units)); };
  const double along = tape.to_station_m - tape.from_station_m, up = tape.to_up_m - tape.from_up_m;
  QStringList words{number(std::hypot(along, up), Dimension::length),
                    QObject::tr("along %1").arg(number(std::abs(along), Dimension::length))};
  if (tape.pane == Pane::elevation) {
    words << (up >= 0 ? QObject::tr("up %1") : QObject::tr("down %1")).arg(number(std::abs(up), Dimension::length));
    if (std::abs(along) > 0.01) words << QObject::tr("grade %1").arg(number(up / along, Dimension::grade));
  } else {
    words << (up >= 0 ? QObject::tr("to the left %1") : QObject::tr("to the right %1"))
                 .arg(number(std::abs(up), Dimension::length));
  }
  return words;
}

void paint_tape(QPainter& painter, const Scene& scene) {
  if (!scene.layers.tape) return;
  const Tape& tape = *scene.layers.tape;
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  const bool side = tape.pane == Pane::elevation;
  const QPointF from =
      side ? f.side(tape.from_station_m, tape.from_up_m) : f.above(tape.from_station_m, tape.from_up_m);
  const QPointF to = side ? f.side(tape.to_station_m, tape.to_up_m) : f.above(tape.to_station_m, tape.to_up_m);
  painter.save();
  painter.setClipRect(side ? f.elevation : f.plan);
  painter.setPen(QPen(style.theme.focus, style.hair * 1.6));
  painter.drawLine(from, to);
  const double long_px = std::max(1e-9, std::hypot(to.x() - from.x(), to.y() - from.y()));
  const QPointF across = QPointF(from.y() - to.y(), to.x() - from.x()) / long_px * style.text * 0.5;
  for (const QPointF& end : {from, to}) painter.drawLine(end - across, end + across);
  painter.setFont(drawing_font(style.text, QFont::DemiBold));
  const QFontMetricsF metrics(painter.font());
  const QStringList words = tape_words(tape, style.units);
  double wide = 0;
  for (const QString& line : words) wide = std::max(wide, metrics.horizontalAdvance(line));
  QRectF box(0, 0, wide + style.text, metrics.lineSpacing() * static_cast<double>(words.size()) + style.text * 0.5);
  box.moveTopLeft((from + to) / 2 + QPointF(style.text, style.text * 0.6));
  const QRectF& pane = side ? f.elevation : f.plan;
  if (box.right() > pane.right()) box.moveRight(pane.right() - 2);
  if (box.bottom() > pane.bottom()) box.moveBottom((from.y() + to.y()) / 2 - style.text * 0.6);
  painter.setBrush(style.theme.field);
  painter.drawRoundedRect(box, style.text * 0.3, style.text * 0.3);
  painter.setPen(style.theme.ink);
  double y = box.top() + style.text * 0.25 + metrics.ascent();
  for (const QString& line : words) {
    painter.drawText(QPointF(box.left() + style.text * 0.5, y), line);
    y += metrics.lineSpacing();
  }
  painter.restore();
}

}  // namespace burrow

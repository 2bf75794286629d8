#include <QPainter>
#include <QPainterPath>

#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"

namespace burrow {

namespace {

void paint_padlock(QPainter& painter, const QRectF& box, const QColor& ink) {
  const double w = box.width() * 0.62, h = box.height() * 0.34;
  const QRectF body(box.center().x() - w / 2, box.center().y() - h * 0.15, w, h);
  painter.setPen(QPen(ink, 1.3));
  painter.setBrush(Qt::NoBrush);
  painter.drawArc(QRectF(body.left() + w * 0.16, body.top() - h * 0.75, w * 0.68, h * 1.5), 0, 180 * 16);
  painter.fillRect(body, ink);
}

/// A short stroke across the end, as builders draw it.
void paint_end(QPainter& painter, const QPointF& at, double size) {
  painter.drawLine(at + QPointF(-size, size), at + QPointF(size, -size));
}

}  // namespace

void paint_dimension_lines(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text, hair = scene.style.hair;
  for (const DimensionLine& line : scene.labels->dimensions) {
    const bool picked = scene.focus.measure == line.measure;
    const bool hovered = scene.focus.measure_hovered == line.measure;
    const QColor ink = picked || hovered ? theme.focus : line.broken ? theme.stop : theme.ink_soft;
    const QRectF& pane = line.pane == Pane::plan ? scene.frame.plan : scene.frame.elevation;
    painter.save();
    painter.setClipRect(pane);
    painter.setPen(QPen(ink, hair * 0.7));
    if (line.from_foot != line.from) painter.drawLine(line.from_foot, line.from);
    if (line.to_foot != line.to) painter.drawLine(line.to_foot, line.to);
    painter.setPen(QPen(ink, hair * (picked ? 2.0 : 1.1)));
    painter.drawLine(line.from, line.to);
    paint_end(painter, line.from, text * 0.3);
    if (line.lock.empty() && !line.pull.isNull()) {
      painter.setBrush(picked ? theme.focus : theme.field);
      const double r = text * (hovered || picked ? 0.34 : 0.27);
      painter.drawEllipse(line.to, r, r);
    } else {
      paint_end(painter, line.to, text * 0.3);
    }
    painter.restore();

    QColor ground = theme.field;
    ground.setAlpha(232);
    painter.setPen(picked || hovered ? QPen(theme.focus, hair) : QPen(Qt::NoPen));
    painter.setBrush(ground);
    painter.drawRoundedRect(line.label, text * 0.25, text * 0.25);
    QRectF words = line.label;
    if (!line.lock.empty()) {
      paint_padlock(painter, QRectF(words.left() + 2, words.top(), text, words.height()), theme.ink_soft);
      words.setLeft(words.left() + text);
    }
    painter.setFont(drawing_font(text * 0.92, line.broken ? QFont::DemiBold : QFont::Normal));
    painter.setPen(line.broken ? theme.stop : line.lock.empty() ? theme.ink : theme.ink_soft);
    painter.drawText(words, Qt::AlignCenter, line.text);
  }
  painter.setFont(drawing_font(text));
}

}  // namespace burrow

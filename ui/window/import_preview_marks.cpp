/// What lies over the imported plan: the scale with north, and the crossing line.

#include <QPainter>
#include <cmath>

#include "burrow/window/import_preview.h"

namespace burrow {

/// A round length, so that a wrong unit shows at once.
void ImportPreview::draw_scale(QPainter& painter) const {
  if (!files_ || files_->empty()) return;
  const double pixels_per_shown = pixels_per_unit_ / metres_per_unit() * (units_ == UnitSystem::us ? 0.3048 : 1.0);
  const double wanted = 110 / pixels_per_shown;
  const double power = std::pow(10, std::floor(std::log10(wanted)));
  const double round = wanted >= 5 * power ? 5 * power : wanted >= 2 * power ? 2 * power : power;
  const QPointF from(14, height() - 14), to = from + QPointF(round * pixels_per_shown, 0);
  painter.setPen(QPen(theme_.ink, 2));
  painter.drawPolyline(QPolygonF{{from - QPointF(0, 6), from, to, to - QPointF(0, 6)}});
  painter.setFont(drawing_font(12));
  const QString unit = units_ == UnitSystem::us ? QStringLiteral("ft") : QStringLiteral("m");
  painter.drawText(from + QPointF(4, -8), QStringLiteral("%1 %2").arg(round).arg(unit));
  painter.drawText(QPointF(width() - 24, 20), tr("N"));
  const QPointF tip(width() - 19, 26);
  painter.drawLine(tip, tip + QPointF(0, 22));
  painter.drawPolyline(QPolygonF{{tip + QPointF(-4, 7), tip, tip + QPointF(4, 7)}});
}

void ImportPreview::draw_line(QPainter& painter) const {
  std::optional<CrossingLine> line = line_;
  if (first_) line = CrossingLine{*first_, to_plan(pointer_)};
  if (!line) return;
  const QPointF a = to_screen(line->launch), b = to_screen(line->exit);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(theme_.paper, 6));
  painter.drawLine(a, b);
  painter.setPen(QPen(theme_.focus, 3, first_ ? Qt::DashLine : Qt::SolidLine));
  painter.drawLine(a, b);
  painter.setBrush(theme_.paper);
  painter.drawEllipse(a, 5, 5);
  painter.setBrush(theme_.focus);
  painter.drawEllipse(b, 5, 5);
  painter.setFont(drawing_font(12, QFont::DemiBold));
  const auto label = [&](const QPointF& at, const QString& text) {
    const QRectF box = painter.fontMetrics().boundingRect(text).translated((at + QPointF(9, -8)).toPoint());
    painter.fillRect(box.adjusted(-3, -1, 3, 1), theme_.paper);
    painter.setPen(theme_.ink);
    painter.drawText(at + QPointF(9, -8), text);
  };
  label(a, tr("launch"));
  if (!first_) label(b, tr("exit"));
}

}  // namespace burrow

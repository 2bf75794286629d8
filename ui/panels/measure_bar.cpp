#include "measure_bar.h"

#include <QPainter>
#include <algorithm>

namespace burrow {

namespace {
constexpr int bar_px = 7;
constexpr double beyond = 1.2;  ///< of the greater of the two
}  // namespace

void MeasureBar::show_measure(std::optional<Shown> shown) {
  shown_ = std::move(shown);
  setVisible(shown_.has_value());
  if (shown_) setAccessibleName(tr("measured %1, limit %2").arg(shown_->measured_text, shown_->limit_text));
  update();
}

void MeasureBar::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

QSize MeasureBar::sizeHint() const {
  return {200, bar_px + fontMetrics().height() + 8};
}

void MeasureBar::paintEvent(QPaintEvent*) {
  if (!shown_) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double whole = std::max({shown_->measured, shown_->limit, 1e-12}) * beyond;
  const auto px = [&](double value) { return std::clamp(value / whole, 0.0, 1.0) * width(); };
  const double y = 3;
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme_.line);
  painter.drawRoundedRect(QRectF(0, y, width(), bar_px), 3, 3);
  painter.setBrush(shown_->kept ? theme_.fine : theme_.stop);
  painter.drawRoundedRect(QRectF(0, y, std::max(3.0, px(shown_->measured)), bar_px), 3, 3);
  painter.fillRect(QRectF(px(shown_->limit) - 1, 0, 2, bar_px + 6), theme_.ink);
  QFont small = font();
  small.setPointSizeF(small.pointSizeF() * 0.88);
  painter.setFont(small);
  const QFontMetrics metrics(small);
  const double measured_wide = metrics.horizontalAdvance(shown_->measured_text);
  const double limit_wide = metrics.horizontalAdvance(shown_->limit_text);
  double measured_x = std::clamp(px(shown_->measured) - measured_wide / 2, 0.0, width() - measured_wide);
  double limit_x = std::clamp(px(shown_->limit) - limit_wide / 2, 0.0, width() - limit_wide);
  // They keep apart: each gives way to its own side.
  if (measured_x < limit_x && measured_x + measured_wide + 8 > limit_x)
    measured_x = std::max(0.0, limit_x - measured_wide - 8);
  else if (limit_x <= measured_x && limit_x + limit_wide + 8 > measured_x)
    limit_x = std::max(0.0, measured_x - limit_wide - 8);
  const double base = bar_px + 6 + metrics.ascent();
  painter.setPen(theme_.ink);
  painter.drawText(QPointF(measured_x, base), shown_->measured_text);
  painter.setPen(theme_.ink_soft);
  painter.drawText(QPointF(limit_x, base), shown_->limit_text);
}

}  // namespace burrow

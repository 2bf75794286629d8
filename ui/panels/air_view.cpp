#include "burrow/panels/air_view.h"

#include <QPainter>
#include <algorithm>

namespace burrow {

namespace {
constexpr int pad = 6;
}

AirView::AirView(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Pressure along the air line"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

int AirView::row_height() const {
  return 2 * fontMetrics().height() + pad;
}

QSize AirView::sizeHint() const {
  const int rows = static_cast<int>(bars_.size()) * row_height();
  return {280, rows + 2 * pad + (wanted_ ? fontMetrics().height() + pad : 0)};
}

QSize AirView::minimumSizeHint() const {
  return {120, sizeHint().height()};
}

void AirView::show_bars(std::vector<AirBar> bars, std::optional<double> wanted, const QString& wanted_words,
                        const Theme& theme) {
  const bool other_height = bars.size() != bars_.size() || wanted.has_value() != wanted_.has_value();
  bars_ = std::move(bars);
  wanted_ = wanted;
  wanted_words_ = wanted_words;
  theme_ = theme;
  QString all;
  for (const AirBar& bar : bars_) all += bar.name + QStringLiteral(": ") + bar.value + QLatin1Char('\n');
  setAccessibleDescription(all);
  setVisible(!bars_.empty());
  if (other_height) updateGeometry();
  update();
}

/// Name and value on a line of their own, the bar below: nothing is cut off in a narrow column.
void AirView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.paper);
  const int line = fontMetrics().height(), room = width() - 2 * pad;
  QFont bold = font();
  bold.setBold(true);
  int top = pad;
  for (const AirBar& bar : bars_) {
    painter.setFont(bold);
    const int value_width = QFontMetrics(bold).horizontalAdvance(bar.value) + pad;
    painter.setPen(bar.alarm ? theme_.stop : theme_.ink);
    painter.drawText(QRect(pad, top, room, line), Qt::AlignRight | Qt::AlignVCenter, bar.value);
    painter.setFont(font());
    painter.setPen(theme_.ink);
    painter.drawText(QRect(pad, top, room - value_width, line), Qt::AlignLeft | Qt::AlignVCenter,
                     fontMetrics().elidedText(bar.name, Qt::ElideRight, room - value_width));
    const QRect whole(pad, top + line + 1, room, line - pad);
    painter.fillRect(whole, theme_.field);
    QRect filled = whole;
    filled.setWidth(static_cast<int>(room * std::clamp(bar.share, 0.0, 1.0)));
    painter.fillRect(filled, bar.alarm ? theme_.stop : theme_.water);
    top += row_height();
  }
  if (!wanted_ || bars_.empty()) return;
  const int x = pad + static_cast<int>(room * std::clamp(*wanted_, 0.0, 1.0));
  painter.setPen(QPen(theme_.ink, 1, Qt::DashLine));
  // Through the bars only, so that no word is struck out.
  for (std::size_t i = 0; i < bars_.size(); ++i) {
    const int bar_top = pad + static_cast<int>(i) * row_height() + line + 1;
    painter.drawLine(x, bar_top - 2, x, bar_top + line - pad + 2);
  }
  painter.setPen(theme_.ink_soft);
  const int wide = fontMetrics().horizontalAdvance(wanted_words_);
  painter.drawText(QRect(std::clamp(x - wide / 2, pad, std::max(pad, width() - pad - wide)), top, wide + 2, line),
                   Qt::AlignCenter, wanted_words_);
}

}  // namespace burrow

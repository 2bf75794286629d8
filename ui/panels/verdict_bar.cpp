#include "burrow/panels/verdict_bar.h"

#include <QPainter>

#include "burrow/check/headline.h"

namespace burrow {

VerdictBar::VerdictBar(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Verdict"));
  connect(&document_, &Document::changed, this, qOverload<>(&QWidget::update));
}

void VerdictBar::set_units(UnitSystem units) {
  units_ = units;
  update();
}

void VerdictBar::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

QSize VerdictBar::sizeHint() const {
  return {600, fontMetrics().height() * 5 / 2};
}

void VerdictBar::mousePressEvent(QMouseEvent*) {
  Q_EMIT first_wanted();
}

void VerdictBar::paintEvent(QPaintEvent*) {
  const Assessment& assessment = document_.assessment();
  QPainter painter(this);
  painter.fillRect(rect(), theme_.field);
  QFont bold = font();
  bold.setBold(true);
  bold.setPointSizeF(bold.pointSizeF() * 1.15);
  painter.setFont(bold);
  const std::string_view title_text = verdict_title(assessment.verdict);
  const QString title = QString::fromUtf8(title_text.data(), static_cast<qsizetype>(title_text.size()));
  const int pad = fontMetrics().height();
  const QRect block(0, 0, painter.fontMetrics().horizontalAdvance(title) + 2 * pad, height());
  painter.fillRect(block, theme_.verdict(assessment.verdict));
  painter.setPen(theme_.on_verdict(assessment.verdict));
  painter.drawText(block, Qt::AlignCenter, title);
  painter.setFont(font());
  painter.setPen(theme_.ink);
  const QString sentence = QString::fromStdString(headline(assessment, units_));
  const QRect room = rect().adjusted(block.width() + pad, 0, -pad, 0);
  QFontMetrics metrics(font());
  painter.drawText(room, Qt::AlignVCenter | Qt::AlignLeft, metrics.elidedText(sentence, Qt::ElideRight, room.width()));
  setToolTip(metrics.horizontalAdvance(sentence) > room.width() ? sentence : QString());
}

}  // namespace burrow

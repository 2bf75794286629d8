#include "burrow/panels/verdict_bar.h"

#include <QPainter>
#include <QTextLayout>

#include "burrow/document/text.h"
#include "burrow/words/headline.h"

namespace burrow {

namespace {

/// On one line, or on two where one is too short; the second ends with an ellipsis if even that is not enough.
bool paint_sentence(QPainter& painter, const QRect& room, const QString& sentence) {
  const QFontMetrics metrics(painter.font());
  if (metrics.horizontalAdvance(sentence) <= room.width()) {
    painter.drawText(room, Qt::AlignVCenter | Qt::AlignLeft, sentence);
    return true;
  }
  QTextLayout layout(sentence, painter.font());
  layout.beginLayout();
  QTextLine first = layout.createLine();
  first.setLineWidth(room.width());
  layout.endLayout();
  const QString rest = sentence.mid(first.textLength());
  const QString below = metrics.elidedText(rest, Qt::ElideRight, room.width());
  const int top = room.center().y() - metrics.height();
  painter.drawText(QRect(room.left(), top, room.width(), metrics.height()), Qt::AlignVCenter | Qt::AlignLeft,
                   sentence.left(first.textLength()).trimmed());
  painter.drawText(QRect(room.left(), top + metrics.height(), room.width(), metrics.height()),
                   Qt::AlignVCenter | Qt::AlignLeft, below);
  return below == rest;
}

}  // namespace

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
  const QString sentence = text_from(headline(assessment, units_));
  const QRect room = rect().adjusted(block.width() + pad, 0, -pad, 0);
  const bool whole = paint_sentence(painter, room, sentence);
  setToolTip(whole ? QString() : sentence);
  if (accessibleDescription() != sentence) setAccessibleDescription(sentence);
}

}  // namespace burrow

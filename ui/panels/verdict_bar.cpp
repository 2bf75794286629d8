#include "burrow/panels/verdict_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QTextLayout>
#include <QToolButton>
#include <algorithm>
#include <array>

#include "burrow/check/mute.h"
#include "burrow/document/text.h"
#include "burrow/drawing/line_icon.h"
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

constexpr int words_fit_px = 1180;  ///< narrower, counts stand without their words

/// Beside its colour, the verdict has a shape.
QString icon_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::stop:
      return QStringLiteral("stop");
    case Verdict::caution:
      return QStringLiteral("caution");
    case Verdict::incomplete:
      return QStringLiteral("help");
    case Verdict::within_limits:
      break;
  }
  return QStringLiteral("within-limits");
}

}  // namespace

QString count_words(const FindingCount& what) {
  switch (what.mark) {
    case FindingMark::stop:
      return QObject::tr("%n stops", nullptr, what.count);
    case FindingMark::caution:
      return QObject::tr("%n cautions", nullptr, what.count);
    case FindingMark::missing:
      return QObject::tr("%n not known", nullptr, what.count);
    case FindingMark::note:
      break;
  }
  return QObject::tr("%n notes", nullptr, what.count);
}

std::vector<FindingCount> finding_counts(const std::vector<Finding>& findings) {
  std::vector<FindingCount> counts;
  for (const FindingMark mark : {FindingMark::stop, FindingMark::missing, FindingMark::caution, FindingMark::note}) {
    const auto n = std::count_if(findings.begin(), findings.end(), [&](const Finding& f) {
      return mark_of(f) == mark && (!f.muted || counts_in_verdict(f));
    });
    if (n > 0) counts.push_back({mark, static_cast<int>(n)});
  }
  return counts;
}

VerdictBar::VerdictBar(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), next_(new QToolButton(this)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Verdict"));
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  next_->setAutoRaise(true);
  next_->setFocusPolicy(Qt::TabFocus);
  next_->setIcon(line_icon(QStringLiteral("step-forward")));
  next_->setIconSize(QSize(18, 18));
  next_->setText(tr("Next finding"));
  next_->setAccessibleName(tr("Next finding"));
  next_->setToolTip(tr("To the next finding (F8); back with Shift+F8"));
  connect(next_, &QToolButton::clicked, this, &VerdictBar::next_wanted);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 12, 0);
  row->addStretch(1);
  row->addWidget(next_);
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
  return {600, std::max(44, fontMetrics().height() * 5 / 2)};
}

void VerdictBar::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  show_next_in_full();
}

void VerdictBar::show_next_in_full() {
  next_->setToolButtonStyle(width() >= words_fit_px ? Qt::ToolButtonTextBesideIcon : Qt::ToolButtonIconOnly);
}

void VerdictBar::mousePressEvent(QMouseEvent*) {
  Q_EMIT first_wanted();
}

void VerdictBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space)
    Q_EMIT first_wanted();
  else
    QWidget::keyPressEvent(event);
}

void VerdictBar::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  update();
}

void VerdictBar::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  update();
}

int VerdictBar::paint_verdict(QPainter& painter) const {
  const Verdict verdict = document_.assessment().verdict;
  QFont bold = font();
  bold.setBold(true);
  bold.setPointSizeF(bold.pointSizeF() * 1.2);
  painter.setFont(bold);
  const std::string_view word = verdict_title(verdict);
  const QString title = QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  const int pad = fontMetrics().height();
  const int side = fontMetrics().height() + 4;
  const QRect block(0, 0, painter.fontMetrics().horizontalAdvance(title) + 2 * pad + side + pad / 2, height());
  painter.fillRect(block, theme_.verdict(verdict));
  paint_line_icon(painter, QRectF(pad, (height() - side) / 2.0, side, side), icon_of(verdict),
                  theme_.on_verdict(verdict));
  painter.setPen(theme_.on_verdict(verdict));
  painter.drawText(block.adjusted(pad + side + pad / 2, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, title);
  painter.setFont(font());
  return block.right();
}

int VerdictBar::paint_counts(QPainter& painter, int right) const {
  const bool words = width() >= words_fit_px;
  const int side = fontMetrics().height();
  std::vector<FindingCount> counts = finding_counts(document_.assessment().findings);
  std::reverse(counts.begin(), counts.end());
  painter.setPen(theme_.ink);
  for (const FindingCount& what : counts) {
    const QString text = words ? count_words(what) : QString::number(what.count);
    const int wide = fontMetrics().horizontalAdvance(text);
    painter.drawText(QRect(right - wide, 0, wide, height()), Qt::AlignVCenter, text);
    right -= wide + side + 6;
    painter.save();
    paint_finding_mark(painter, QRectF(right, (height() - side) / 2.0, side, side), what.mark, theme_, {});
    painter.restore();
    right -= words ? 14 : 10;
  }
  return right;
}

void VerdictBar::paintEvent(QPaintEvent*) {
  const Assessment& assessment = document_.assessment();
  QPainter painter(this);
  painter.fillRect(rect(), theme_.field);
  const int pad = fontMetrics().height();
  const int left = paint_verdict(painter) + pad;
  const int right = paint_counts(painter, next_->geometry().left() - 14);
  painter.setPen(theme_.ink);
  const QString sentence = text_from(headline(assessment, units_));
  const bool whole = paint_sentence(painter, QRect(left, 0, right - left, height()), sentence);
  setToolTip(whole ? QString() : sentence);
  if (accessibleDescription() != sentence) setAccessibleDescription(sentence);
  painter.fillRect(QRect(0, height() - 1, width(), 1), theme_.line);
  if (!hasFocus()) return;
  painter.setPen(QPen(theme_.focus, 2));
  painter.drawRect(rect().adjusted(1, 1, -2, -2));
}

}  // namespace burrow

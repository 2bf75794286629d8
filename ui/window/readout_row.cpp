#include "burrow/window/readout_row.h"

#include <QPainter>
#include <algorithm>

#include "burrow/drawing/flags.h"
#include "burrow/drawing/line_icon.h"

namespace burrow {

namespace {

constexpr int pad = 12;
constexpr int mark_px = 14;

QFont small(QFont font) {
  font.setPointSizeF(font.pointSizeF() * 0.85);
  return font;
}

QFont in_bold(QFont font) {
  font.setBold(true);
  return font;
}

QString before_words(const ChangedNumber& number) {
  return number.before.isEmpty() || number.before == number.now.value ? QString()
                                                                      : number.before + QStringLiteral(" → ");
}

QString head_words(const ChangedNumber& number) {
  return number.now.limit.isEmpty() ? number.now.what : number.now.what + QStringLiteral(" · ") + number.now.limit;
}

}  // namespace

ReadoutRow::ReadoutRow(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("What the drag changes"));
}

void ReadoutRow::show_readout(const Readout& readout) {
  if (readout == readout_) return;
  readout_ = readout;
  update();
}

void ReadoutRow::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

QString ReadoutRow::sentence() const {
  QStringList parts{readout_.moves};
  for (const ChangedNumber& number : readout_.numbers) {
    QString part = number.now.what + QLatin1Char(' ') + number.now.value;
    if (!number.now.limit.isEmpty()) part += QStringLiteral(" (%1)").arg(number.now.limit);
    parts << part;
  }
  if (!readout_.snapped.isEmpty()) parts << readout_.snapped;
  return parts.join(QStringLiteral(", "));
}

int ReadoutRow::width_of(const ChangedNumber& number) const {
  const int mark = number.now.kept == Kept::broken ? mark_px + 4 : 0;
  const int value = QFontMetrics(font()).horizontalAdvance(before_words(number)) +
                    QFontMetrics(in_bold(font())).horizontalAdvance(number.now.value) + mark;
  return std::max(value, QFontMetrics(small(font())).horizontalAdvance(head_words(number))) + 2 * pad;
}

int ReadoutRow::paint_number(QPainter& painter, int left, const ChangedNumber& number) const {
  const int wide = width_of(number);
  const int half = height() / 2;
  const bool broken = number.now.kept == Kept::broken;
  painter.setFont(small(font()));
  painter.setPen(theme_.ink_soft);
  painter.drawText(QRect(left + pad, 2, wide, half), Qt::AlignLeft | Qt::AlignVCenter, head_words(number));
  int x = left + pad;
  const QRect row(0, half - 2, wide, half);
  if (broken) {
    paint_finding_mark(painter, QRectF(x, row.center().y() - mark_px / 2.0, mark_px, mark_px), FindingMark::stop,
                       theme_, {});
    x += mark_px + 4;
  }
  painter.setFont(font());
  painter.setPen(theme_.ink_soft);
  const QString before = before_words(number);
  painter.drawText(QRect(x, row.top(), wide, row.height()), Qt::AlignLeft | Qt::AlignVCenter, before);
  x += painter.fontMetrics().horizontalAdvance(before);
  painter.setFont(in_bold(font()));
  painter.setPen(broken ? theme_.stop : number.now.kept == Kept::kept ? theme_.fine : theme_.ink);
  painter.drawText(QRect(x, row.top(), wide, row.height()), Qt::AlignLeft | Qt::AlignVCenter, number.now.value);
  painter.fillRect(QRect(left + wide, 0, 1, height()), theme_.line);
  return left + wide + 1;
}

void ReadoutRow::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.select);
  ChangedNumber moving;
  moving.now.what = tr("Moving");
  moving.now.value = readout_.moves;
  int left = paint_number(painter, 0, moving);

  const QString keys = tr("Shift moves freely · Esc puts it back");
  const int keys_wide = QFontMetrics(small(font())).horizontalAdvance(keys) + 2 * pad;
  const QFontMetrics strong(in_bold(font()));
  const int snap_wide =
      readout_.snapped.isEmpty() ? 0 : std::min(strong.horizontalAdvance(readout_.snapped) + 2 * pad + 24, width() / 3);
  // The numbers first, then why it is held, then the keys: what finds no room is left out whole.
  for (const ChangedNumber& number : readout_.numbers) {
    if (left + width_of(number) > width() - snap_wide) break;
    left = paint_number(painter, left, number);
  }
  if (snap_wide > 0) {
    const int icon = 18;
    paint_line_icon(painter, QRectF(left + pad, (height() - icon) / 2.0, icon, icon), QStringLiteral("snap"),
                    theme_.focus);
    painter.setFont(in_bold(font()));
    painter.setPen(theme_.focus);
    const QString words = strong.elidedText(readout_.snapped, Qt::ElideRight, snap_wide - 2 * pad - 24);
    painter.drawText(QRect(left + pad + 24, 0, snap_wide, height()), Qt::AlignVCenter, words);
    left += snap_wide;
  }
  if (left + keys_wide > width()) return;
  painter.setFont(small(font()));
  painter.setPen(theme_.ink_soft);
  painter.drawText(rect().adjusted(0, 0, -pad, 0), Qt::AlignRight | Qt::AlignVCenter, keys);
}

}  // namespace burrow

#include "text_width.h"

#include <QCache>
#include <QFontMetricsF>
#include <cmath>

#include "burrow/document/figures.h"

namespace burrow {

namespace {

constexpr int most_kept = 3000;  // of 60 utilities a frame asks for some 600

// One for each thread: side and plan are painted at once.
QCache<QString, double>& widths() {
  thread_local QCache<QString, double> kept(most_kept);
  return kept;
}

QCache<QString, QString>& shortened() {
  thread_local QCache<QString, QString> kept(most_kept);
  return kept;
}

}  // namespace

TextWidths::TextWidths(const QFont& font)
    : font_(font),
      key_(QStringLiteral("%1 %2 %3 ").arg(font.family()).arg(font.pixelSize()).arg(static_cast<int>(font.weight()))) {}

double TextWidths::of(const QString& text) const {
  if (text.isEmpty()) return 0;
  const QString alike = with_noughts(text);
  const QString key = key_ + alike;
  if (const double* known = widths().object(key)) return *known;
  const double wide = QFontMetricsF(font_).horizontalAdvance(alike);
  widths().insert(key, new double(wide));
  return wide;
}

QString TextWidths::elided(const QString& text, Qt::TextElideMode mode, double room) const {
  if (of(text) <= room) return text;
  const QString key = key_ + QString::number(static_cast<int>(mode)) + QString::number(std::floor(room)) + text;
  if (const QString* known = shortened().object(key)) return *known;
  QString shown = QFontMetricsF(font_).elidedText(text, mode, std::floor(room));
  shortened().insert(key, new QString(shown));
  return shown;
}

double TextWidths::height() const {
  return QFontMetricsF(font_).height();
}

}  // namespace burrow

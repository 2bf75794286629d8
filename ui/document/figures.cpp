#include "burrow/document/figures.h"

#include <QRegularExpression>

namespace burrow {

QString with_noughts(QString text) {
  for (QChar& letter : text)
    if (letter >= u'1' && letter <= u'9') letter = u'0';
  return text;
}

QString with_units_kept(QString text) {
  static const QRegularExpression number_then_unit(QStringLiteral("(\\d) (?=\\S)"));
  return text.replace(number_then_unit, QStringLiteral("\\1\u00a0"));
}

}  // namespace burrow

/// Texts are measured once for all numbers of as many figures: only right in a face whose figures are of one width.

#include <gtest/gtest.h>

#include <QFontMetricsF>

#include "burrow/document/figures.h"
#include "burrow/drawing/theme.h"

namespace burrow {
namespace {

TEST(Figures, OfTheDrawing_AreOfOneWidth_AlsoBesideEachOther) {
  for (const QFont::Weight weight : {QFont::Normal, QFont::DemiBold, QFont::Bold})
    for (const double pixels : {9.0, 12.0, 15.0, 24.0}) {
      const QFontMetricsF metrics(drawing_font(pixels, weight));
      const double nought = metrics.horizontalAdvance(QStringLiteral("0"));
      for (char16_t one = u'0'; one <= u'9'; ++one)
        for (char16_t other = u'0'; other <= u'9'; ++other) {
          const QString pair = QString(QChar(one)) + QChar(other);
          EXPECT_NEAR(metrics.horizontalAdvance(pair), 2 * nought, 0.02) << pair.toStdString() << ' ' << pixels;
        }
    }
}

TEST(Figures, OnlyFiguresChange) {
  EXPECT_EQ(with_noughts(QStringLiteral("0.61 m clear of gas main 12b, 3 %")),
            QStringLiteral("0.00 m clear of gas main 00b, 0 %"));
  EXPECT_EQ(with_noughts({}), QString());
}

}  // namespace
}  // namespace burrow

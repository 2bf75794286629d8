// The comparison of pictures itself: what a person would miss is seen, what only another renderer does is not.

#include "support/picture_tiles.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <cmath>
#include <functional>

namespace burrow {
namespace {

QImage painted(const std::function<void(QPainter&)>& paint, QSize size = {400, 300}) {
  QImage picture(size, QImage::Format_RGB32);
  picture.fill(QColor(245, 240, 230));
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(QApplication::font());
  paint(painter);
  return picture;
}

void paint_drawing(QPainter& painter) {
  painter.setPen(QPen(Qt::black, 1.4));
  painter.drawLine(QPointF(0, 120.3), QPointF(400, 140.6));
  painter.setPen(QColor(60, 60, 60));
  painter.drawText(QPointF(40, 80), QStringLiteral("gas main"));
  painter.drawText(QPointF(230.4, 200), QStringLiteral("1.33 m deep"));
}

/// Every edge softer: each pixel takes this share of its neighbour's colour.
QImage softer(const QImage& picture, double share) {
  QImage soft = picture;
  const auto mix = [share](int a, int b) { return static_cast<int>(std::lround(a + (b - a) * share)); };
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x + 1 < picture.width(); ++x) {
      const QColor a = picture.pixelColor(x, y), b = picture.pixelColor(x + 1, y);
      soft.setPixelColor(x, y, QColor(mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())));
    }
  return soft;
}

TEST(PictureTiles, SamePicture_DiffersNowhere) {
  const QImage a = painted(paint_drawing);
  EXPECT_TRUE(differing_tiles(a, painted(paint_drawing)).empty());
  EXPECT_TRUE(differing_tiles(a, a.convertToFormat(QImage::Format_ARGB32)).empty()) << "the format is no difference";
}

TEST(PictureTiles, EdgesOfLetters_AreNoDifference) {
  const QImage a = painted(paint_drawing);
  const QImage soft = softer(a, 0.1);
  ASSERT_NE(a, soft);
  EXPECT_TRUE(differing_tiles(a, soft).empty());
  const QImage aside = painted([](QPainter& painter) {
    painter.translate(1, 0);
    paint_drawing(painter);
  });
  ASSERT_NE(a, aside);
  EXPECT_TRUE(differing_tiles(a, aside).empty()) << "a pixel aside";
}

// The smallest that the window writes: one digit, in the typeface of the program. Which of the two lacks it is the
// same.
TEST(PictureTiles, SmallMissingLabel_IsSeenAndWhere) {
  for (const char* label : {"3", "T", "1.4 m", "spoil"}) {
    const QPointF at(330, 250);
    const QImage whole = painted([&](QPainter& painter) {
      paint_drawing(painter);
      painter.drawText(at, QLatin1String(label));
    });
    for (const bool lost : {true, false}) {
      const QImage without = painted(paint_drawing);
      const auto found = lost ? differing_tiles(whole, without) : differing_tiles(without, whole);
      ASSERT_FALSE(found.empty()) << label;
      EXPECT_LE(found.size(), 4U) << label;
      for (const DifferingTile& tile : found)
        EXPECT_TRUE(tile.where.intersects(QRect(325, 230, 60, 30))) << label << tile.where.x() << ' ' << tile.where.y();
    }
  }
}

// On the real picture, with a small label painted over in the colour around it.
TEST(PictureTiles, LabelGoneFromTheWindow_IsSeen) {
  const QImage kept(QStringLiteral(BURROW_SOURCE_DIR "/tests/ui/pictures/opened.png"));
  ASSERT_FALSE(kept.isNull());
  for (int edge = 0; edge < kept.width() - 40; edge += 400) {
    QImage marked = kept.convertToFormat(QImage::Format_RGB32);
    {
      QPainter painter(&marked);
      painter.setFont(QApplication::font());
      painter.setPen(QColor(60, 60, 60));
      painter.drawText(QPointF(edge + 6, 700), QStringLiteral("4"));
    }
    EXPECT_FALSE(differing_tiles(marked, kept).empty()) << edge;
  }
}

TEST(PictureTiles, ThinLine_IsSeenAllAlong) {
  const QImage a = painted(paint_drawing);
  const QImage b = painted([](QPainter& painter) {
    paint_drawing(painter);
    painter.setPen(QPen(QColor(120, 120, 120), 1));
    painter.drawLine(0, 270, 400, 270);
  });
  EXPECT_EQ(differing_tiles(a, b).size(), 13U) << "each square that it runs through";
}

TEST(PictureTiles, Colour_ShadesAreAllowedAnotherColourIsNot) {
  QImage a(64, 64, QImage::Format_RGB32), b = a;
  a.fill(QColor(100, 150, 200));
  b.fill(QColor(100 + tiles::allowed_shades, 150, 200 - tiles::allowed_shades));
  EXPECT_TRUE(differing_tiles(a, b).empty());
  b.fill(QColor(100 + tiles::allowed_shades + 1, 150, 200));
  EXPECT_EQ(differing_tiles(a, b).size(), 4U);
  EXPECT_EQ(differing_tiles(a, b).front().pixels, tiles::size_px * tiles::size_px);
}

TEST(PictureTiles, OtherSize_IsAllDifferent) {
  const QImage a = painted(paint_drawing);
  const auto found = differing_tiles(a, a.copy(0, 0, 399, 300));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found.front().where, a.rect());
}

TEST(PictureTiles, Frames_StandAroundWhatDiffers) {
  const QImage a = painted(paint_drawing);
  const QImage framed = with_frames(a, {{QRect(64, 96, 32, 32), 100}});
  EXPECT_EQ(framed.pixelColor(64, 110), QColor(Qt::magenta));
  EXPECT_EQ(framed.pixelColor(80, 110), a.pixelColor(80, 110));
}

}  // namespace
}  // namespace burrow

// A painter's strokes as items of a page, in millimetres.

#include <QPainter>
#include <cmath>

#include "page_recorder.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

Page blank() {
  Page page;
  page.size_mm = {210, 297};
  page.frame_mm = QRectF(10, 10, 190, 277);
  return page;
}

// Second route: the place by hand. A unit is a quarter of a millimetre and the box begins at 20, 30: the point 40, 80
// moved by 8, 4 lies at 20 + 48/4 = 32, 30 + 84/4 = 51.
TEST(PageRecorder, Shapes_StandWhereThePainterPutThem) {
  Page page = blank();
  PageRecorder recorder(page, QRectF(20, 30, 100, 50), 0.25);
  EXPECT_EQ(recorder.room(), QRectF(0, 0, 400, 200));
  {
    QPainter painter(&recorder);
    painter.setPen(QPen(Qt::red, 2, Qt::DashLine));
    painter.drawLine(QPointF(0, 0), QPointF(40, 80));
    painter.translate(8, 4);
    painter.setPen(Qt::NoPen);
    painter.setBrush(Qt::blue);
    painter.drawPolygon(QPolygonF{{0, 0}, {40, 0}, {40, 80}});
    painter.setPen(QPen(Qt::black, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(40, 40), 20, 20);
  }
  ASSERT_EQ(page.items.size(), 3U);
  const PageItem &line = page.items[0], &area = page.items[1], &circle = page.items[2];
  EXPECT_EQ(line.kind, PageItemKind::line);
  EXPECT_EQ(line.points, (QPolygonF{{20, 30}, {30, 50}}));
  EXPECT_EQ(line.stroke.colour, QColor(Qt::red));
  EXPECT_NEAR(line.stroke.width_mm, 0.5, 1e-12);
  EXPECT_FALSE(line.stroke.dash_mm.isEmpty());
  EXPECT_EQ(area.kind, PageItemKind::area);
  EXPECT_EQ(area.fill, QColor(Qt::blue));
  EXPECT_EQ(area.points[2], QPointF(32, 51));
  EXPECT_EQ(area.clip, QRectF(20, 30, 100, 50));
  EXPECT_EQ(circle.kind, PageItemKind::line);
  for (const QPointF& p : circle.points)  // within a hundredth of the radius of 5 mm about 20 + 12, 30 + 11
    EXPECT_NEAR(std::hypot(p.x() - 32, p.y() - 41), 5, 0.05);
}

TEST(PageRecorder, Texts_KeepSizeAndPlace) {
  Page page = blank();
  PageRecorder recorder(page, QRectF(20, 30, 100, 50), 0.25);
  {
    QPainter painter(&recorder);
    QFont font = paper_font(QFont::DemiBold);
    font.setPixelSize(12);
    painter.setFont(font);
    painter.setPen(Qt::darkGreen);
    painter.drawText(QPointF(40, 80), QStringLiteral("2 ft 11.4 in"));
  }
  ASSERT_EQ(page.items.size(), 1U);
  const PageItem& text = page.items[0];
  EXPECT_EQ(text.kind, PageItemKind::text);
  EXPECT_EQ(text.text, QStringLiteral("2 ft 11.4 in"));
  EXPECT_EQ(text.points.front(), QPointF(30, 50));
  EXPECT_NEAR(text.style.size_mm, 3, 1e-9);
  EXPECT_EQ(text.style.weight, QFont::DemiBold);
  EXPECT_EQ(text.style.colour, QColor(Qt::darkGreen));
}

}  // namespace
}  // namespace burrow::test

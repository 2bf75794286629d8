// The drawing and the player alone, for a room: letters that are read at three metres, everything as before after it.

#include "burrow/window/presentation.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QMenuBar>

#include "burrow/window/player_bar.h"
#include "burrow/window/tool_strip.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

double caps_of(const QFont& font) {
  return QFontMetricsF(font).capHeight();
}

void press(TestWindow& w, Qt::Key key) {
  QApplication::setActiveWindow(&w.window);
  QTest::keyClick(&w.window.drawing(), key);
  QCoreApplication::processEvents();
}

// Common practice, no source: letters of 24 px on a projector of 1280 × 720.
TEST(Presentation, LettersForThreeMetres_NothingElseOnTheScreen) {
  TestWindow w("house-service", {1280, 720});
  ASSERT_TRUE(w.opened);
  const double usual = w.window.drawing().style().text;
  press(w, Qt::Key_F5);
  ASSERT_TRUE(w.window.presentation().on());
  EXPECT_GE(caps_of(drawing_font(w.window.drawing().style().text)), cap_height_px - 1);
  EXPECT_LE(w.window.drawing().style().text, 2.85 * usual);
  EXPECT_TRUE(w.window.player().isVisible());
  bool told = false;
  for (const QLabel* label : w.window.player().findChildren<QLabel*>())
    if (label->isVisible() && !label->text().isEmpty()) {
      told = true;
      EXPECT_GE(caps_of(label->font()), cap_height_px) << label->text().toStdString();
      EXPECT_LE(label->sizeHint().height(), label->height() + 1) << label->text().toStdString();
    }
  EXPECT_TRUE(told);
  for (const QWidget* other : std::initializer_list<QWidget*>{&w.window.tools(), &w.window.verdict(), &w.window.side(),
                                                              &w.window.side().rail(), &w.window.overview()})
    EXPECT_FALSE(other->isVisible());
  EXPECT_EQ(w.window.menuBar()->height(), 0);
}

TEST(Presentation, KeysOfTheRoom_AndBackAsItWas) {
  TestWindow w("house-service", {1366, 768});
  ASSERT_TRUE(w.opened);
  const Crossing before = w.crossing();
  const QRect drawing = w.window.drawing().geometry();
  const QSize window = w.window.size();
  const int side = w.window.side().width();
  const double text = w.window.drawing().style().text;
  const bool dark = w.window.drawing().style().theme.dark;
  press(w, Qt::Key_F5);
  press(w, Qt::Key_B);
  EXPECT_TRUE(w.window.presentation().darkened());
  press(w, Qt::Key_B);
  EXPECT_FALSE(w.window.presentation().darkened());
  press(w, Qt::Key_Space);
  EXPECT_TRUE(w.window.player().playing());
  press(w, Qt::Key_B);
  press(w, Qt::Key_Escape);
  EXPECT_FALSE(w.window.presentation().on());
  EXPECT_FALSE(w.window.presentation().darkened());
  settle(w.window);
  EXPECT_EQ(w.window.size(), window);
  EXPECT_EQ(w.window.side().width(), side);
  EXPECT_EQ(w.window.drawing().geometry(), drawing);
  EXPECT_EQ(w.window.drawing().style().text, text);
  EXPECT_EQ(w.window.drawing().style().theme.dark, dark);
  EXPECT_TRUE(w.window.side().isVisible());
  EXPECT_TRUE(w.window.verdict().isVisible());
  EXPECT_GT(w.window.menuBar()->height(), 10);
  EXPECT_FALSE(w.window.player().isVisible());
  EXPECT_EQ(w.crossing(), before);
}

}  // namespace
}  // namespace burrow

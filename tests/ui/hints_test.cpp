// The hints of the first start: what they point at, and that they are in nobody's way.

#include "burrow/window/hints.h"

#include <gtest/gtest.h>

#include <QPushButton>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

QPushButton* button(MainWindow& window, const QString& text) {
  for (QPushButton* b : window.findChildren<QPushButton*>())
    if (b->text() == text && b->isVisible()) return b;
  ADD_FAILURE() << text.toStdString();
  return nullptr;
}

TEST(ThreeHints, PointAtRealThings) {
  TestWindow test("house-service");
  test.window.show_hints();
  QCoreApplication::processEvents();
  Hints* hints = test.window.hints();
  ASSERT_TRUE(hints);
  // The first one at the launch grip, whose drag it speaks of.
  const QPointF grip = test.window.drawing().place_of({ItemKind::launch, {}, -1});
  const QPoint at = test.viewport()->mapTo(&test.window, grip.toPoint());
  EXPECT_LT((hints->tip() - at).manhattanLength(), 24);
  QStringList texts;
  for (int i = 0; i < 3; ++i) {
    EXPECT_EQ(hints->shown(), i);
    EXPECT_TRUE(test.window.rect().contains(hints->box())) << i;
    EXPECT_FALSE(hints->box().contains(hints->tip())) << i << ": the box lies over what it speaks of";
    EXPECT_LT(hints->text().size(), 180) << "short";
    texts << hints->text();
    QTest::mouseClick(button(test.window, i < 2 ? QStringLiteral("Next hint") : QStringLiteral("Begin")),
                      Qt::LeftButton);
  }
  texts.removeDuplicates();
  EXPECT_EQ(texts.size(), 3);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_FALSE(test.window.hints());
}

// What the hint speaks of can be done while it is shown; Esc ends it wherever the focus is.
TEST(ThreeHints, LetTheDragThrough) {
  TestWindow test("house-service");
  test.window.show_hints();
  QCoreApplication::processEvents();
  EXPECT_TRUE(test.window.hints()->testAttribute(Qt::WA_TransparentForMouseEvents));
  const double before = test.crossing().bore.launch.elevation.m;
  const QPointF grip = test.window.drawing().place_of({ItemKind::launch, {}, -1});
  test.drag(grip, grip + QPointF(0, 25));
  EXPECT_LT(test.crossing().bore.launch.elevation.m, before - 0.05);
  test.window.resize(1000, 640);
  QCoreApplication::processEvents();
  EXPECT_TRUE(test.window.rect().contains(test.window.hints()->box()));
  test.window.drawing().setFocus();
  test.key(Qt::Key_Escape);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_FALSE(test.window.hints());
}

}  // namespace
}  // namespace burrow

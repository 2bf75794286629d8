/// What gives way where the window is small: nothing is lost, and it comes back.

#include <gtest/gtest.h>

#include <QAction>
#include <QListView>
#include <QMenu>
#include <QToolButton>

#include "burrow/drawing/handles.h"
#include "burrow/drawing/labels.h"
#include "burrow/window/tool_strip.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

QAction* action_with(MainWindow& window, const QKeySequence& keys) {
  for (QAction* action : window.findChildren<QAction*>())
    if (action->shortcuts().contains(keys)) return action;
  return nullptr;
}

TEST(Folding, Narrow_TheColumnLiesOverTheDrawing_WhenItIsAskedFor) {
  TestWindow w("house-service", {1100, 760});
  SideColumn& side = w.window.side();
  const auto in_window = [&](const QWidget& widget) {
    return QRect(widget.mapTo(&w.window, QPoint(0, 0)), widget.size());
  };
  EXPECT_FALSE(side.isVisible());
  EXPECT_GE(w.window.drawing().width(), 640);
  const int wide = w.window.drawing().width();
  QTest::mouseClick(side.rail().button(2), Qt::LeftButton);
  ASSERT_TRUE(side.isVisible());
  EXPECT_EQ(side.group_of(side.currentIndex()), 2);
  EXPECT_EQ(w.window.drawing().width(), wide) << "the drawing does not move";
  EXPECT_EQ(in_window(side).right() + 1, in_window(side.rail()).left());
  EXPECT_GE(in_window(side).left() - in_window(w.window.drawing()).left(), 120) << "some of the drawing is seen";
  QTest::mouseClick(side.rail().button(3), Qt::LeftButton);
  EXPECT_TRUE(side.isVisible()) << "another group";
  QTest::mouseClick(side.rail().button(3), Qt::LeftButton);
  EXPECT_FALSE(side.isVisible()) << "the same again";

  QTest::mouseClick(&w.window.verdict(), Qt::LeftButton, {}, QPoint(20, 20));
  ASSERT_TRUE(side.isVisible()) << "the verdict leads to its findings";
  QTest::keyClick(w.window.findings().list(), Qt::Key_Escape);
  EXPECT_FALSE(side.isVisible());
  EXPECT_TRUE(w.window.drawing().hasFocus());

  w.window.resize(1500, 900);
  settle(w.window);
  EXPECT_TRUE(side.isVisible());
  EXPECT_LE(in_window(w.window.drawing()).right(), in_window(side).left()) << "beside it again";
}

TEST(Folding, Wide_TheRailLeavesTheColumn) {
  TestWindow w("house-service");
  QTest::mouseClick(w.window.side().rail().button(0), Qt::LeftButton);
  EXPECT_TRUE(w.window.side().isVisible());
  action_with(w.window, QKeySequence(Qt::Key_F9))->trigger();
  EXPECT_FALSE(w.window.side().isVisible());
  w.window.resize(1000, 760);
  settle(w.window);
  w.window.resize(1600, 900);
  settle(w.window);
  EXPECT_FALSE(w.window.side().isVisible()) << "it was hidden before, and is again";
}

TEST(Folding, Low_TheViewsTakeTurns) {
  TestWindow w("house-service", {1280, 520});
  DrawingView& drawing = w.window.drawing();
  ASSERT_TRUE(drawing.one_at_a_time()) << drawing.viewport()->height() << " of " << w.window.height() << ", least "
                                       << w.window.side().minimumSizeHint().height() << ", rail "
                                       << w.window.side().rail().minimumSizeHint().height();
  QAction* swap = action_with(w.window, QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E));
  ASSERT_TRUE(swap);
  settle(w.window);
  EXPECT_TRUE(swap->isEnabled());
  EXPECT_TRUE(drawing.frame().plan.isEmpty());
  const QPointF launch = drawing.place_of({ItemKind::launch, {}, -1});
  EXPECT_TRUE(drawing.frame().elevation.contains(launch));
  w.drag(launch, launch + QPointF(0, 6));
  EXPECT_EQ(w.window.document().undo_stack().index(), 1) << "dragged as ever";
  swap->trigger();
  settle(w.window);
  EXPECT_TRUE(drawing.frame().elevation.isEmpty());
  EXPECT_GT(drawing.frame().plan.height(), 100);
  for (const WrittenBox& box : written_boxes({w.crossing(), w.window.document().assessment(), tables_for_tests(),
                                              drawing.frame(), drawing.style(), Interaction{}},
                                             *drawing.labels()))
    EXPECT_TRUE(QRectF(drawing.viewport()->rect()).contains(box.box)) << box.what.toStdString();
  w.window.resize(1280, 900);
  settle(w.window);
  EXPECT_FALSE(drawing.frame().elevation.isEmpty());
  EXPECT_FALSE(drawing.frame().plan.isEmpty());
  EXPECT_FALSE(swap->isEnabled());
}

// Whatever the width, each tool is in the row or under the button at its end, whole and apart from the others.
TEST(Folding, EveryTool_InTheRowOrUnderMore) {
  TestWindow w("house-service");
  ToolStrip& tools = w.window.tools();
  std::size_t fewest = tools.buttons().size();
  for (const int width : {1600, 1280, 1100, 960, 800}) {
    w.window.resize(width, 800);
    settle(w.window);
    std::size_t seen = 0, offered = 0;
    int right = 0;
    for (QToolButton* button : tools.buttons()) {
      const bool swap = button->defaultAction() && !button->defaultAction()->isEnabled() &&
                        button->defaultAction()->shortcut() == QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E);
      if (swap) continue;
      ++offered;
      if (!button->isVisible()) continue;
      ++seen;
      EXPECT_GE(button->x(), right) << button->accessibleName().toStdString();
      EXPECT_GE(button->width(), button->sizeHint().width()) << width << " " << button->text().toStdString() << " of "
                                                             << tools.width() << " more " << tools.more()->isVisible();
      right = button->geometry().right();
    }
    EXPECT_LT(right, tools.width());
    EXPECT_EQ(tools.more()->isVisible(), seen < offered) << width;
    if (seen < offered) {
      Q_EMIT tools.more()->menu()->aboutToShow();
      std::size_t under = 0;
      for (const QAction* action : tools.more()->menu()->actions()) under += !action->isSeparator();
      EXPECT_EQ(seen + under, offered) << width;
      EXPECT_LT(tools.more()->geometry().right(), tools.width());
    }
    fewest = std::min(fewest, seen);
  }
  EXPECT_LT(fewest, tools.buttons().size()) << "the test met a row that is too narrow";
}

// What is dragged has its level beside the axis.
TEST(LevelTag, DraggedLaunch_BesideTheAxis) {
  TestWindow w("house-service");
  const QPointF from = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  const QImage before = w.viewport()->grab().toImage();
  w.press(from);
  w.move(from + QPointF(0, 10));
  settle(w.window);
  const QImage during = w.viewport()->grab().toImage();
  const QPointF now = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  const int x = static_cast<int>(gutter_width(w.window.drawing().style()) * 0.12);
  EXPECT_EQ(during.pixelColor(x, static_cast<int>(now.y())), Theme::light().focus);
  EXPECT_NE(before.pixelColor(x, static_cast<int>(now.y())), Theme::light().focus);
  w.key(Qt::Key_Escape);
  w.release(from);
}

}  // namespace
}  // namespace burrow

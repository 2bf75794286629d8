/// The find dialog: what it offers, what it finds first, and that it goes there.

#include "burrow/window/find_dialog.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QListWidget>

#include "burrow/drawing/line_icon.h"
#include "burrow/window/help_window.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

std::vector<Findable> some() {
  return {{QStringLiteral("Save as"), QStringLiteral("File"), {}, [] {}},
          {QStringLiteral("gas main"), QStringLiteral("utility"), {}, [] {}},
          {QStringLiteral("Steering balance"), QStringLiteral("View"), {}, [] {}},
          {QStringLiteral("Gas and air"), QStringLiteral("help"), {}, [] {}},
          {QStringLiteral("degas"), QStringLiteral("help"), {}, [] {}}};
}

TEST(FindDialog, BeginningsFirst_EveryWordMustBeThere) {
  EXPECT_EQ(matching(some(), QString()).size(), 5u) << "nothing typed: all of it";
  EXPECT_EQ(matching(some(), QStringLiteral("GAS")), (std::vector<std::size_t>{1, 3, 4}));
  EXPECT_EQ(matching(some(), QStringLiteral("main gas")), (std::vector<std::size_t>{1}));
  EXPECT_EQ(matching(some(), QStringLiteral("view")), (std::vector<std::size_t>{2})) << "where it is counts too";
  EXPECT_TRUE(matching(some(), QStringLiteral("gas nowhere")).empty());
}

FindDialog* open_find(TestWindow& w) {
  w.window.activateWindow();
  settle(w.window);
  QTest::keyClick(&w.window, Qt::Key_K, Qt::ControlModifier);
  return w.window.findChild<FindDialog*>();
}

TEST(FindDialog, GoesToPageUtilityFindingAndCommand) {
  TestWindow w("house-service");
  const auto take = [&](const char* words) {
    FindDialog* dialog = open_find(w);
    ASSERT_TRUE(dialog) << words;
    QTest::keyClicks(dialog->entry(), QString::fromUtf8(words));
    ASSERT_GT(dialog->list()->count(), 0) << words;
    QTest::keyClick(dialog->entry(), Qt::Key_Return);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    settle(w.window);
  };
  take("Run sheet");
  EXPECT_EQ(w.window.side().currentIndex(), static_cast<int>(SideColumn::Page::run));
  take("sewer utility");
  EXPECT_EQ(w.window.drawing().picked().kind, ItemKind::utility);
  take("finding 2");
  EXPECT_EQ(w.window.findings().picked_row(), 1);
  const bool dark = w.window.drawing().style().theme.dark;
  take("Dark colours");
  EXPECT_NE(w.window.drawing().style().theme.dark, dark);
  w.window.set_dark(false);
}

TEST(FindDialog, ArrowsWalk_NothingFoundSaysSo) {
  TestWindow w("house-service");
  FindDialog* dialog = open_find(w);
  ASSERT_TRUE(dialog);
  EXPECT_GT(dialog->list()->count(), 60);
  QTest::keyClick(dialog->entry(), Qt::Key_Down);
  EXPECT_EQ(dialog->list()->currentRow(), 1);
  QTest::keyClick(dialog->entry(), Qt::Key_Up);
  QTest::keyClick(dialog->entry(), Qt::Key_Up);
  EXPECT_EQ(dialog->list()->currentRow(), 0);
  dialog->entry()->setText(QStringLiteral("no such thing"));
  EXPECT_EQ(dialog->list()->count(), 0);
  QTest::keyClick(dialog->entry(), Qt::Key_Return);
  EXPECT_TRUE(dialog->isVisible()) << "Enter on nothing does nothing";
  dialog->close();
}

// The names that the program asks for are files that are there; in both colours something is drawn.
TEST(LineIcon, EveryOneOfTheToolsIsThere) {
  TestWindow w("house-service");
  int seen = 0;
  for (const QAction* action : w.window.findChildren<QAction*>()) {
    if (action->icon().isNull() || !action->icon().availableSizes().isEmpty()) continue;
    ++seen;
    const QImage drawn = action->icon().pixmap(24, 24).toImage();
    bool ink = false;
    for (int y = 0; y < drawn.height() && !ink; ++y)
      for (int x = 0; x < drawn.width() && !ink; ++x) ink = qAlpha(drawn.pixel(x, y)) > 100;
    EXPECT_TRUE(ink) << action->text().toStdString();
  }
  EXPECT_GT(seen, 15);
  EXPECT_TRUE(line_icon(QStringLiteral("no-such-icon")).isNull());
}

}  // namespace
}  // namespace burrow

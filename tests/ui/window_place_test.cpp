/// The window lies on the screen it is on, and comes back where it was.

#include "burrow/window/window_place.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QLineEdit>
#include <QListWidget>
#include <QSplitter>
#include <QTextBlock>
#include <QTextBrowser>

#include "burrow/window/help_window.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(WindowPlace, First_LiesOnEveryScreen) {
  for (const QRect available : {QRect(0, 0, 1366, 728), QRect(0, 0, 1280, 680), QRect(1920, 40, 3840, 2120),
                                QRect(0, 0, 800, 600), QRect(-1600, 0, 1600, 860)}) {
    const QRect place = first_place(available);
    EXPECT_TRUE(available.contains(place)) << available.width() << " x " << available.height();
    EXPECT_GE(place.width(), std::min(960, available.width()));
    EXPECT_GE(place.height(), std::min(600, available.height()));
    EXPECT_LE(place.width(), std::max(1440, available.width() * 85 / 100)) << "a large screen is not filled";
    EXPECT_GE(place.width(), std::min(1440, available.width())) << "a small one is";
  }
}

TEST(WindowPlace, OfAnotherScreen_IsBroughtBack) {
  const QRect available(0, 0, 1366, 728);
  for (const QRect last : {QRect(3000, 100, 1200, 700), QRect(-900, -50, 1200, 700), QRect(10, 10, 3000, 2000),
                           QRect(1300, 700, 1000, 700)})
    EXPECT_TRUE(available.contains(within_screen(last, available))) << last.left() << " " << last.top();
  const QRect fits(50, 20, 1000, 650);
  EXPECT_EQ(within_screen(fits, available), fits);
}

TEST(WindowPlace, Closed_ComesBackWhereItWas) {
  QRect place;
  {
    MainWindow window(tables_for_tests(), QString());
    window.place_on_screen();
    EXPECT_TRUE(window.screen()->availableGeometry().contains(window.geometry()));
    window.show();
    place = QRect(window.geometry().topLeft(), window.minimumSize());
    window.setGeometry(place);
    QCoreApplication::processEvents();
    window.close();
  }
  MainWindow again(tables_for_tests(), QString());
  again.place_on_screen();
  EXPECT_EQ(again.geometry().size(), place.size());
}

QAction* action_of(MainWindow& window, const QKeySequence& keys) {
  for (QAction* action : window.findChildren<QAction*>())
    if (action->shortcuts().contains(keys)) return action;
  return nullptr;
}

// Where a desktop gives none of its own, they still do what the help says.
TEST(WindowKeys, SaveAsAndSettings_HaveTheirs) {
  TestWindow test("house-service");
  for (const char* keys : {"Ctrl+Shift+S", "Ctrl+,", "Ctrl+Q", "F1", "F9", "Ctrl+S", "Ctrl+O", "Ctrl+N", "Ctrl+Z"}) {
    int known = 0;
    for (QAction* action : test.window.findChildren<QAction*>())
      known += action->shortcuts().contains(QKeySequence(QString::fromLatin1(keys)));
    EXPECT_EQ(known, 1) << keys;
  }
}

TEST(WindowKeys, F9_HidesTheColumn_AndAWantedPageShowsIt) {
  TestWindow test("house-service");
  QAction* column = action_of(test.window, QKeySequence(Qt::Key_F9));
  ASSERT_TRUE(column);
  const int wide = test.window.drawing().width();
  column->trigger();
  settle(test.window);
  EXPECT_FALSE(test.window.side().isVisible());
  EXPECT_GT(test.window.drawing().width(), wide);
  test.window.side().show_page(SideColumn::Page::pits);
  settle(test.window);
  EXPECT_TRUE(test.window.side().isVisible());
  EXPECT_TRUE(column->isChecked());
}

TEST(HelpWindow, Heading_IsShownAtItsPlace_ForEveryPage) {
  TestWindow test("house-service");
  HelpWindow help(nullptr);
  help.show();
  auto* text = help.findChild<QTextBrowser*>();
  for (int page = 0; page < test.window.side().count(); ++page) {
    const QString name = test.window.side().page_name(page);
    help.show_heading(name);
    EXPECT_EQ(text->textCursor().block().text(), name);
  }
}

// The watchdog fails it: on the screen, each block of a page laid out the whole of it anew, for seconds.
TEST(HelpWindow, EveryPage_IsShownAtOnce) {
  HelpWindow help(nullptr);
  help.show();
  auto* list = help.findChild<QListWidget*>();
  auto* text = help.findChild<QTextBrowser*>();
  ASSERT_GT(list->count(), 8);
  for (int row = 0; row < list->count(); ++row) {
    QTimer::singleShot(0, list, [list, row] { list->setCurrentRow(row); });
    settle(help);
    ASSERT_TRUE(comes([&] { return list->currentRow() == row; }));
    EXPECT_EQ(text->document()->firstBlock().text(), list->item(row)->text());
  }
}

TEST(HelpWindow, AskedTwice_IsOneWindow) {
  TestWindow test("house-service");
  test.window.show_help();
  test.window.show_help();
  EXPECT_EQ(test.window.findChildren<HelpWindow*>().size(), 1);
}

}  // namespace
}  // namespace burrow

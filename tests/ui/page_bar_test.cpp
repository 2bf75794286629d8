/// The rail of groups and the row of pages beside the drawing, and the keys that lead there.

#include <gtest/gtest.h>

#include <QToolButton>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(PageBar, EveryPageByRailAndTab) {
  TestWindow w("house-service");
  SideColumn& side = w.window.side();
  ASSERT_GE(side.count(), 16);
  for (int page = 0; page < side.count(); ++page) {
    const int group = side.group_of(page);
    QTest::mouseClick(side.rail().button(group), Qt::LeftButton);
    PageButton* tab = side.bar().button(page);
    ASSERT_TRUE(tab->isVisible()) << page << ": its group shows it";
    QTest::mouseClick(tab, Qt::LeftButton);
    EXPECT_EQ(side.currentIndex(), page);
    EXPECT_TRUE(tab->isChecked());
    EXPECT_TRUE(side.rail().button(group)->isChecked());
    EXPECT_FALSE(tab->accessibleName().isEmpty());
    for (int other = 0; other < side.count(); ++other)
      EXPECT_EQ(side.bar().button(other)->isVisible(), side.group_of(other) == group) << page << " " << other;
  }
}

TEST(PageBar, Tabs_AreNeverCut) {
  for (const QSize size : {QSize(1600, 900), QSize(1280, 720)}) {
    TestWindow w("house-service", size);
    SideColumn& side = w.window.side();
    for (int page = 0; page < side.count(); ++page) {
      side.setCurrentIndex(page);
      settle(w.window);
      const PageButton* tab = side.bar().button(page);
      QFont bold = tab->font();
      bold.setBold(true);
      EXPECT_GE(tab->width(), QFontMetrics(bold).horizontalAdvance(tab->text())) << tab->text().toStdString();
      EXPECT_TRUE(side.bar().rect().contains(tab->geometry())) << tab->text().toStdString();
    }
  }
}

TEST(PageBar, ArrowKeys_GoFromTabToTab) {
  TestWindow w("house-service");
  SideColumn& side = w.window.side();
  side.bar().button(0)->setFocus();
  QTest::keyClick(side.bar().button(0), Qt::Key_Right);
  EXPECT_EQ(side.currentIndex(), 1);
  QTest::keyClick(side.bar().button(1), Qt::Key_Left);
  EXPECT_EQ(side.currentIndex(), 0);
}

TEST(PageRail, Group_RemembersItsPage_AndTheKeyTurnsPages) {
  TestWindow w("house-service");
  SideColumn& side = w.window.side();
  const int bore = side.group_of(static_cast<int>(SideColumn::Page::pits));
  side.show_page(SideColumn::Page::pits);
  side.show_page(SideColumn::Page::findings);
  side.show_group(bore);
  EXPECT_EQ(side.currentIndex(), static_cast<int>(SideColumn::Page::pits));
  side.show_next_of(bore);
  EXPECT_EQ(side.currentIndex(), static_cast<int>(SideColumn::Page::pipe));
  side.show_next_of(bore);
  side.show_next_of(bore);
  EXPECT_EQ(side.currentIndex(), static_cast<int>(SideColumn::Page::setup)) << "after the last the first";
}

TEST(PageRail, CountsTheWorstKind) {
  TestWindow w("four-faults");
  long stops = 0;
  for (const Finding& f : w.window.document().assessment().findings) stops += f.severity == Severity::stop;
  ASSERT_GT(stops, 0);
  EXPECT_EQ(w.window.side().rail().button(0)->count(), stops);
}

// F9 hides the column; the rail stays and brings it back.
TEST(PageRail, ShowsTheHiddenColumn) {
  TestWindow w("house-service");
  w.window.side().hide();
  QTest::mouseClick(w.window.side().rail().button(1), Qt::LeftButton);
  settle(w.window);
  EXPECT_TRUE(w.window.side().rail().isVisible());
  EXPECT_EQ(w.window.side().group_of(w.window.side().currentIndex()), 1);
}

TEST(VerdictBar, CountsWhatThereIs_EnterGoesToTheFirst_F8ToTheNext) {
  TestWindow w("four-faults");
  const std::vector<Finding>& findings = w.window.document().assessment().findings;
  int sum = 0;
  for (const FindingCount& what : finding_counts(findings)) sum += what.count;
  EXPECT_EQ(sum, static_cast<int>(
                     std::count_if(findings.begin(), findings.end(), [](const Finding& f) { return !f.muted; })));
  w.window.verdict().setFocus();
  QTest::keyClick(&w.window.verdict(), Qt::Key_Return);
  EXPECT_EQ(w.window.findings().picked_row(), 0);
  QTest::mouseClick(w.window.verdict().next(), Qt::LeftButton);
  EXPECT_EQ(w.window.findings().picked_row(), 1);
  QTest::keyClick(&w.window, Qt::Key_F8);
  EXPECT_EQ(w.window.findings().picked_row(), 2);
  QTest::keyClick(&w.window, Qt::Key_F8, Qt::ShiftModifier);
  EXPECT_EQ(w.window.findings().picked_row(), 1);
}

TEST(Regions, F6_WalksThroughAllOfThem) {
  TestWindow w("house-service");
  w.window.activateWindow();
  w.window.drawing().setFocus();
  std::set<QWidget*> been;
  for (int i = 0; i < 6; ++i) {
    QTest::keyClick(w.window.focusWidget(), Qt::Key_F6);
    been.insert(w.window.focusWidget());
  }
  EXPECT_GE(been.size(), 5u);
  EXPECT_TRUE(been.count(&w.window.drawing()));
}

}  // namespace
}  // namespace burrow

/// The page of the layouts: real widgets, one undo step each.

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

void click(QPushButton* button) {
  ASSERT_TRUE(button->isEnabled());
  QTest::mouseClick(button, Qt::LeftButton);
  QCoreApplication::processEvents();
}

TEST(LayoutsPanel, KeepChangeTakeBack) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::layouts);
  LayoutsPanel& page = w.window.side().layouts();
  EXPECT_FALSE(page.take()->isEnabled());
  EXPECT_TRUE(page.visible_text().contains(QStringLiteral("< 0.01"))) << "a chance that small is no mark-up";
  page.name()->setText(QStringLiteral("level launch"));
  click(page.keep());
  ASSERT_EQ(w.crossing().alternatives.size(), 1u);
  EXPECT_EQ(w.crossing().alternatives[0].name, "level launch");
  const Bore first = w.crossing().bore;

  Launch deeper = w.crossing().bore.launch;
  deeper.elevation.m -= 0.5;
  w.window.document().change(QStringLiteral("deeper"), [&](Crossing& to) { to.bore.launch = deeper; });
  page.refresh_now();
  EXPECT_TRUE(page.visible_text().contains(QStringLiteral("level launch")));

  page.name()->setText(QStringLiteral("half a metre deeper"));
  click(page.take());
  EXPECT_EQ(w.crossing().bore, first);
  ASSERT_EQ(w.crossing().alternatives.size(), 1u);
  EXPECT_EQ(w.crossing().alternatives[0].name, "half a metre deeper");
  EXPECT_EQ(w.window.document().undo_stack().count(), 3);
  const auto again = read_crossing(write_crossing(w.crossing()), tables_for_tests());
  ASSERT_TRUE(again.has_value());
  EXPECT_EQ(*again, w.crossing());

  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing().bore.launch, deeper);
  EXPECT_EQ(w.crossing().alternatives[0].name, "level launch");
}

TEST(LayoutsPanel, RenameAndRemove) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::layouts);
  LayoutsPanel& page = w.window.side().layouts();
  click(page.keep());
  page.name()->setText(QStringLiteral("another name"));
  click(page.rename());
  EXPECT_EQ(w.crossing().alternatives[0].name, "another name");
  EXPECT_EQ(page.other()->currentText(), QStringLiteral("another name"));
  click(page.remove());
  EXPECT_TRUE(w.crossing().alternatives.empty());
  EXPECT_FALSE(page.ghost()->isEnabled());
}

// While a bore is under way its layout is neither swapped nor typed over; the page says why.
TEST(LayoutsPanel, UnderWay_LayoutIsLocked) {
  TestWindow w("day-under-way");
  ASSERT_TRUE(w.crossing().record.back().layout.bore);
  w.window.side().show_page(SideColumn::Page::layouts);
  LayoutsPanel& page = w.window.side().layouts();
  click(page.keep());
  w.window.document().change(QStringLiteral("deeper"),
                             [](Crossing& to) { to.alternatives[0].bore->launch.elevation.m -= 0.3; });
  page.refresh_now();
  const Crossing before = w.crossing();
  click(page.take());
  EXPECT_EQ(w.crossing(), before);
  bool said = false;
  for (const QLabel* one : page.findChildren<QLabel*>())
    said = said || (one->isVisibleTo(&page) && one->text().contains(QStringLiteral("under way")));
  EXPECT_TRUE(said);
  EXPECT_FALSE(w.window.document().change(QStringLiteral("tool"), [](Crossing& to) {
    to.bore.tool.tool_class = "tool-95";
  })) << "typed elsewhere";
  EXPECT_TRUE(w.window.document().change(QStringLiteral("name"), [](Crossing& to) { to.name = "another"; }));
}

TEST(LayoutsPanel, DrawnDashed_ChangesTheDrawingOnly) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::layouts);
  LayoutsPanel& page = w.window.side().layouts();
  click(page.keep());
  Launch deeper = w.crossing().bore.launch;
  deeper.elevation.m -= 0.5;
  w.window.document().change(QStringLiteral("deeper"), [&](Crossing& to) { to.bore.launch = deeper; });
  const Crossing before = w.crossing();
  page.refresh_now();
  QCoreApplication::processEvents();
  const QImage plain = w.viewport()->grab().toImage();
  click(page.ghost());
  EXPECT_NE(w.viewport()->grab().toImage(), plain);
  EXPECT_EQ(w.crossing(), before);
  click(page.ghost());
  EXPECT_EQ(w.viewport()->grab().toImage(), plain);
}

}  // namespace
}  // namespace burrow

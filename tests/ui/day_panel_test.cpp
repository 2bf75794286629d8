/// The page of the day: taps and typed readings are one undo step each, nothing typed is lost, the advice follows.

#include "burrow/panels/day_panel.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>
#include <QTemporaryDir>

#include "burrow/panels/learn_box.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

struct DayPage : PanelBeside<DayPanel> {
  QDateTime now = QDateTime(QDate(2026, 3, 14), QTime(8, 0), Qt::UTC);
  explicit DayPage(const char* sample = "first-lesson", UnitSystem units = UnitSystem::metric)
      : PanelBeside<DayPanel>(sample, units) {
    panel.set_clock([this] { return now; });
    panel.refresh_now();
  }
  void click(const char* begins_with) {
    QPushButton* button = panel.button(QString::fromUtf8(begins_with));
    ASSERT_TRUE(button) << begins_with;
    ASSERT_TRUE(button->isEnabled()) << begins_with;
    QTest::mouseClick(button, Qt::LeftButton);
    panel.refresh_now();
  }
  const DayRecord& record() { return document.crossing().record.back(); }
};

TEST(DayPanel, Taps_AreOneUndoStepEachWithTheirTime) {
  DayPage w;
  ASSERT_TRUE(w.opened);
  const Crossing before = w.crossing();
  EXPECT_FALSE(w.panel.button(QStringLiteral("Mark"))->isEnabled());
  w.click("Start");
  ASSERT_EQ(w.crossing().record.size(), 1u);
  EXPECT_EQ(w.steps(), 1);
  w.now = w.now.addSecs(95);
  w.click("Mark");
  w.now = w.now.addSecs(25);
  w.click("Stop");
  w.now = w.now.addSecs(300);
  w.click("Go on");
  EXPECT_EQ(w.steps(), 4);
  ASSERT_EQ(w.record().readings.size(), 4u);
  EXPECT_EQ(w.record().readings[1].kind, ReadingKind::mark);
  EXPECT_EQ(w.record().readings[1].time.s, 95);
  EXPECT_NEAR(w.record().readings[1].nose->m, tail_to_nose(w.crossing(), tables_for_tests()), 1e-12);
  EXPECT_EQ(w.record().readings[3].time.s, 420);
  w.expect_opens_again();
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(DayPanel, Typed_ReadingInEitherUnitAndItsPlaceInTime) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(600);
  w.click("Mark");
  w.choose("Kind", "fix");
  w.type_into(w.panel.input(QStringLiteral("offset")), "0.05 m");
  ASSERT_EQ(w.record().readings.size(), 3u);
  EXPECT_NEAR(w.record().readings[2].offset->m, 0.05, 1e-12);
  EXPECT_FALSE(w.record().readings[2].depth);
  w.choose("Kind", "grade");
  w.panel.input(QStringLiteral("time since"))->setText(QStringLiteral("5 min"));
  w.type_into(w.panel.input(QStringLiteral("grade")), "1:100");
  ASSERT_EQ(w.record().readings.size(), 4u);
  EXPECT_EQ(w.record().readings[1].kind, ReadingKind::grade);  // before the mark at 10 min
  EXPECT_NEAR(w.record().readings[1].grade->v, 0.01, 1e-12);
  EXPECT_EQ(w.record().readings[1].time.s, 300);
  w.expect_opens_again();
}

TEST(DayPanel, WrongTyping_StaysAndSaysWhy) {
  DayPage w;
  w.click("Start");
  w.choose("Kind", "fix");
  w.type_into(w.panel.input(QStringLiteral("depth")), "deep");
  EXPECT_EQ(w.record().readings.size(), 1u);
  EXPECT_EQ(w.panel.input(QStringLiteral("depth"))->text(), QStringLiteral("deep"));
  // Another kind and back: what was begun stands there still.
  w.choose("Kind", "note");
  w.choose("Kind", "fix");
  EXPECT_EQ(w.panel.input(QStringLiteral("depth"))->text(), QStringLiteral("deep"));
  w.type_into(w.panel.input(QStringLiteral("depth")), "-3 m");
  EXPECT_EQ(w.record().readings.size(), 1u);
}

TEST(DayPanel, Advice_FollowsTheReadings) {
  DayPage w;
  EXPECT_TRUE(w.panel.advice()->text().startsWith(QStringLiteral("Nothing started")));
  w.click("Start");
  EXPECT_TRUE(w.panel.advice()->text().startsWith(QStringLiteral("Go on"))) << w.panel.visible_text().toStdString();
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("arrives")), -1);
  w.now = w.now.addSecs(200);
  w.click("Mark");
  w.choose("Kind", "fix");
  w.panel.input(QStringLiteral("offset"))->setText(QStringLiteral("0.9 m"));
  w.type_into(w.panel.input(QStringLiteral("depth")), "0.9 m");
  EXPECT_FALSE(w.panel.advice()->text().startsWith(QStringLiteral("Go on"))) << w.panel.visible_text().toStdString();
}

TEST(DayPanel, Remove_TakesThePickedReading) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Mark");
  w.panel.readings()->setCurrentRow(0);  // the newest stands first
  w.click("Remove");
  ASSERT_EQ(w.record().readings.size(), 1u);
  EXPECT_EQ(w.record().readings[0].kind, ReadingKind::start);
}

TEST(DayPanel, End_ClosesTheRecord) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Arrived");
  EXPECT_EQ(w.record().readings.back().how, EndHow::arrived);
  EXPECT_FALSE(w.panel.button(QStringLiteral("Mark"))->isEnabled());
  EXPECT_TRUE(w.panel.button(QStringLiteral("Start another"))->isEnabled());
}

TEST(DayPanel, Narrow_NothingBeyondTheEdge) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    DayPage w("house-service", units);
    w.click("Start");
    w.now = w.now.addSecs(60);
    w.click("Mark");
    for (const int width : {260, 400}) w.expect_inside(width);
  }
}

// What the records say goes into the model as one step, and the library comes back from its file.
TEST(DayPanel, Learning_IntoTheCrossingAndIntoAFile) {
  DayPage w;
  w.click("Start");
  for (int i = 0; i < 3; ++i) {
    w.now = w.now.addSecs(90);
    w.click("Mark");
  }
  const int before = w.steps();
  w.click("Learn from");
  ASSERT_EQ(w.panel.learning()->library().soils.size(), 1u) << w.panel.learning()->visible_text().toStdString();
  w.click("Take into");
  EXPECT_EQ(w.steps(), before + 1);
  EXPECT_TRUE(w.crossing().bore.model.field_factor.entered);
  w.expect_opens_again();
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("own.json"));
  const LearnLibrary library = w.panel.learning()->library();
  ASSERT_TRUE(w.panel.learning()->save_library(path));
  ASSERT_TRUE(w.panel.learning()->open_library(path));
  EXPECT_EQ(w.panel.learning()->library(), library);
  EXPECT_FALSE(w.panel.learning()->open_library(folder.filePath(QStringLiteral("none.json"))));
}

// The path as read stands on the drawing of the real window.
TEST(DayPanel, Window_DrawsThePathAsRead) {
  TestWindow w("first-lesson");
  w.window.side().show_page(SideColumn::Page::day);
  EXPECT_FALSE(w.window.drawing().layers().read);
  QTest::mouseClick(w.window.side().day().button(QStringLiteral("Start")), Qt::LeftButton);
  w.window.side().day().refresh_now();
  ASSERT_TRUE(w.window.drawing().layers().read);
  EXPECT_EQ(w.window.drawing().layers().read->nose_m, 0);
}

}  // namespace
}  // namespace burrow

/// The page of the day: taps and typed readings are one undo step each, nothing typed is lost, the advice follows.

#include "burrow/panels/day_panel.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>
#include <QTemporaryDir>

#include "burrow/check/hose_marks.h"
#include "burrow/document/reading_forms.h"
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
    panel.refresh_now();  // its clock may have gone on
    QPushButton* button = panel.button(QString::fromUtf8(begins_with));
    ASSERT_TRUE(button) << begins_with;
    ASSERT_TRUE(button->isEnabled()) << begins_with;
    QTest::mouseClick(button, Qt::LeftButton);
    panel.refresh_now();
  }
  const DayRecord& record() { return document.crossing().record.back(); }
  /// The question that stands in the column; null: nothing is asked.
  QLineEdit* asked() {
    for (QLineEdit* one : panel.findChildren<QLineEdit*>())
      if (one->accessibleName().startsWith(QStringLiteral("Why, and who")) && one->isVisibleTo(&panel)) return one;
    return nullptr;
  }
  bool says_emergency() {
    for (const QLabel* one : panel.findChildren<QLabel*>())
      if (one->accessibleName() == QStringLiteral("Emergency")) return one->isVisibleTo(&panel);
    return false;
  }
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
  w.click("AIR OFF");
  w.now = w.now.addSecs(300);
  w.click("Goes on");
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
  w.choose("Kind", "location");
  w.type_into(w.panel.input(QStringLiteral("offset")), "0.05 m");
  ASSERT_EQ(w.record().readings.size(), 3u);
  EXPECT_NEAR(w.record().readings[2].offset->m, 0.05, 1e-12);
  EXPECT_FALSE(w.record().readings[2].depth);
  w.choose("Kind", "grade");
  w.panel.input(QStringLiteral("time"))->setText(QStringLiteral("5 min"));
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
  w.choose("Kind", "location");
  w.type_into(w.panel.input(QStringLiteral("depth")), "deep");
  EXPECT_EQ(w.record().readings.size(), 1u);
  EXPECT_EQ(w.panel.input(QStringLiteral("depth"))->text(), QStringLiteral("deep"));
  // Another kind and back: what was begun stands there still.
  w.choose("Kind", "note");
  w.choose("Kind", "location");
  EXPECT_EQ(w.panel.input(QStringLiteral("depth"))->text(), QStringLiteral("deep"));
  w.type_into(w.panel.input(QStringLiteral("depth")), "-3 m");
  EXPECT_EQ(w.record().readings.size(), 1u);
}

TEST(DayPanel, Advice_FollowsTheReadings) {
  DayPage w;
  EXPECT_TRUE(w.panel.advice_text().startsWith(QStringLiteral("Permit to bore is open")));
  w.click("Start");
  EXPECT_TRUE(w.panel.advice_text().startsWith(QStringLiteral("Go on"))) << w.panel.visible_text().toStdString();
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("arrives")), -1);
  w.now = w.now.addSecs(200);
  w.click("Mark");
  w.choose("Kind", "location");
  w.panel.input(QStringLiteral("offset"))->setText(QStringLiteral("0.9 m"));
  w.type_into(w.panel.input(QStringLiteral("depth")), "0.9 m");
  EXPECT_FALSE(w.panel.advice_text().startsWith(QStringLiteral("Go on"))) << w.panel.visible_text().toStdString();
}

// A reading is never gone: it stands struck through, and counts no more. Of the list it is asked about first; the
// newest is taken by default, never the start.
TEST(DayPanel, StrikeThrough_AsksAndTakesTheNewest) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Mark");
  w.click("Strike through");
  ASSERT_EQ(w.record().readings.size(), 2u);
  EXPECT_FALSE(w.record().readings[1].cancelled) << "it asks first";
  ASSERT_TRUE(w.asked());
  w.type_into(w.asked(), "tapped twice");
  EXPECT_EQ(w.record().readings[1].cancelled, "tapped twice");
  EXPECT_FALSE(w.record().readings[0].cancelled);
  w.panel.readings()->setCurrentRow(1);
  w.click("Strike through");
  EXPECT_FALSE(w.record().readings[0].cancelled) << "the start wants a reason";
  w.expect_opens_again();
}

// Danger is one tap at any time: before the start and where nothing may be written the card alone comes; while the pipe
// goes in it is written down too.
TEST(DayPanel, Danger_BeforeTheStartAfterTheEndAndReadOnly) {
  DayPage w;
  w.click("DANGER");
  EXPECT_TRUE(w.crossing().record.empty());
  EXPECT_EQ(w.panel.advice_text().indexOf(QStringLiteral("Everybody out")), 0);
  EXPECT_TRUE(w.says_emergency());
  w.click("Close this card");
  EXPECT_FALSE(w.says_emergency());
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Backed out");
  w.click("DANGER");
  EXPECT_EQ(w.record().readings.back().kind, ReadingKind::danger);
  EXPECT_EQ(w.panel.advice_text().indexOf(QStringLiteral("Everybody out")), 0);
  EXPECT_TRUE(w.says_emergency());
  Crossing newer = w.crossing();
  newer.record.clear();
  newer.version = known_file_version + 1;
  w.document.start_from(newer, false);
  w.panel.refresh_now();
  EXPECT_FALSE(w.says_emergency());
  w.click("DANGER");
  EXPECT_TRUE(w.says_emergency());
  EXPECT_EQ(w.crossing(), newer);
}

// A record that stays open from Friday to Monday: its times go on.
TEST(DayPanel, Clock_OverTheWeekend) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(100);
  w.click("Mark");
  w.click("AIR OFF");
  w.now = w.now.addDays(3);
  w.click("Goes on");
  EXPECT_NEAR(w.record().readings.back().time.s, 3 * 86400.0 + 100, 1);
  w.now = w.now.addSecs(100);
  w.click("Mark");
  EXPECT_NEAR(w.record().readings.back().time.s, 3 * 86400.0 + 200, 1);
  w.expect_opens_again();
}

// With one open, another does not begin, whichever is looked at.
TEST(DayPanel, AnotherRecord_NotWhileOneIsOpen) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Backed out");
  w.now = w.now.addSecs(3600);
  w.click("Begin another");
  ASSERT_EQ(w.crossing().record.size(), 2u);
  QComboBox* records = w.choice("Record");
  ASSERT_TRUE(records);
  records->setCurrentIndex(0);
  Q_EMIT records->activated(0);
  w.panel.refresh_now();
  EXPECT_FALSE(w.panel.button(QStringLiteral("Begin another"))->isEnabled());
  w.click("DANGER");
  EXPECT_EQ(w.crossing().record[1].readings.back().kind, ReadingKind::danger) << "of the bore under way";
}

// The cross beside each of the last five takes it back.
TEST(DayPanel, LastFive_EachTakenBackWithOneTap) {
  DayPage w;
  w.click("Start");
  for (int i = 0; i < 6; ++i) {
    w.now = w.now.addSecs(60);
    w.click(i % 2 ? "Goes on" : "AIR OFF");
  }
  std::vector<QPushButton*> crosses;
  for (QPushButton* one : w.panel.findChildren<QPushButton*>())
    if (one->accessibleName().startsWith(QStringLiteral("Take back")) && one->isVisibleTo(&w.panel))
      crosses.push_back(one);
  ASSERT_EQ(crosses.size(), 5u);
  for (const QPushButton* one : crosses) EXPECT_GE(std::min(one->width(), one->height()), 48);
  QTest::mouseClick(crosses[2], Qt::LeftButton);
  EXPECT_EQ(w.record().readings[4].cancelled, "");
}

// Mark and AIR OFF are as large as each other, at least 64 px high, and never move; a tap too soon is none.
TEST(DayPanel, Deck_NeverMovesAndRests) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  QPushButton *mark = w.panel.button(QStringLiteral("Mark")), *off = w.panel.button(QStringLiteral("AIR OFF"));
  w.panel.refresh_now();
  QCoreApplication::processEvents();
  const QRect before(mark->mapTo(&w.panel, QPoint()), mark->size());
  EXPECT_GE(mark->height(), 64);
  EXPECT_LE(std::abs(mark->width() - off->width()), 1);
  EXPECT_EQ(mark->height(), off->height());
  w.click("Mark");
  QTest::mouseClick(mark, Qt::LeftButton);  // the glove taps again
  EXPECT_EQ(w.record().readings.size(), 2u);
  w.now = w.now.addMSecs(1100);
  w.click("Mark");
  EXPECT_EQ(w.record().readings.size(), 3u);
  w.click("DANGER");
  QCoreApplication::processEvents();
  EXPECT_EQ(QRect(mark->mapTo(&w.panel, QPoint()), mark->size()), before);
  EXPECT_EQ(w.panel.advice_text().indexOf(QStringLiteral("Everybody out")), 0);
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("upwind")), -1);
  w.click("Smell");
  EXPECT_EQ(w.record().readings.back().sign, DangerSign::smell);
}

// The next mark has a time, and its button is filled, only while somebody is advised to go on.
TEST(DayPanel, NotAdvised_NothingLooksLikeTheThingToDo) {
  DayPage w;
  const auto filled = [&](const char* name) {
    const QPushButton* button = w.panel.button(QString::fromUtf8(name));
    return button && button->styleSheet().contains(QStringLiteral("background: ") + Theme::light().focus.name());
  };
  EXPECT_FALSE(filled("Start"));  // lines of the permit are open
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Mark");
  EXPECT_TRUE(filled("Mark"));
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("next mark about")), -1);
  w.click("DANGER");
  w.now = w.now.addSecs(60);
  w.panel.refresh_now();
  EXPECT_FALSE(filled("Mark"));
  EXPECT_TRUE(w.panel.button(QStringLiteral("Mark"))->isEnabled());  // a reading is never refused
  EXPECT_EQ(w.panel.visible_text().indexOf(QStringLiteral("next mark")), -1) << w.panel.visible_text().toStdString();

  DayPage stop("house-service");
  ASSERT_TRUE(stop.opened);
  const QPushButton* record_only = stop.panel.button(QStringLiteral("Record only"));
  ASSERT_TRUE(record_only);
  EXPECT_FALSE(record_only->styleSheet().contains(QStringLiteral("background: ") + Theme::light().focus.name()));
}

// Marks are written down to a centimetre: the one that was reached at 5.92 m is not offered again.
TEST(DayPanel, MarksAsWrittenDown_TheNextIsTheNext) {
  DayPage w("day-under-way");
  ASSERT_TRUE(w.opened);
  EXPECT_NEAR(next_mark(w.crossing(), tables_for_tests(), w.record()), 7.42, 0.01);
  const QPushButton* mark = w.panel.button(QStringLiteral("Mark"));
  ASSERT_TRUE(mark);
  EXPECT_NE(mark->text().indexOf(QStringLiteral("7.42")), -1) << mark->text().toStdString();
}

// One key each, and none of them taken from who types.
TEST(DayPanel, Keys_OneEach) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.panel.refresh_now();
  QApplication::setActiveWindow(&w.panel);  // keys of a window go to the active one
  w.panel.setFocus();
  QCoreApplication::processEvents();
  QTest::keyClick(&w.panel, Qt::Key_M);
  ASSERT_EQ(w.record().readings.size(), 2u);
  EXPECT_EQ(w.record().readings[1].kind, ReadingKind::mark);
  QTest::keyClick(&w.panel, Qt::Key_S);
  EXPECT_EQ(w.record().readings.back().kind, ReadingKind::stop);
  w.choose("Kind", "note");
  w.type_into(w.panel.input(QStringLiteral("in words")), "Mmsx");
  ASSERT_EQ(w.record().readings.size(), 4u);
  EXPECT_EQ(w.record().readings.back().text, "Mmsx");
}

// "5:10" and Enter is a mark: four keys and Enter.
TEST(DayPanel, TypedMark_FourKeysAndEnter) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(330);
  w.type_into(w.panel.input(QStringLiteral("time")), "5:10");
  ASSERT_EQ(w.record().readings.size(), 2u);
  EXPECT_EQ(w.record().readings[1].time.s, 310);
  EXPECT_NEAR(w.record().readings[1].nose->m, tail_to_nose(w.crossing(), tables_for_tests()), 1e-12);
  w.now = w.now.addSecs(600);
  w.type_into(w.panel.input(QStringLiteral("time")), "8:14");  // by the clock: it began at eight
  EXPECT_EQ(w.record().readings[2].time.s, 840);
}

// Done ticks all that is open at the mark; the next mark has its own.
TEST(DayPanel, Done_TicksTheTasksOfTheMark) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(100);
  w.click("Mark");
  EXPECT_EQ(w.panel.advice_text().indexOf(QStringLiteral("First do this")), 0);
  w.click("Done");
  EXPECT_FALSE(w.record().readings.back().tasks.empty());
  EXPECT_NE(w.panel.advice_text().indexOf(QStringLiteral("First do this")), 0);
  w.expect_opens_again();
}

// A verdict against it: nobody starts without a name and a reason, which stay in the record.
TEST(DayPanel, TakeOn_NameAndReason) {
  DayPage w;
  w.document.change(QStringLiteral("Water"), [](Crossing& c) { c.site.water.reset(); });
  w.panel.refresh_now();
  EXPECT_EQ(w.panel.advice_text().indexOf(QStringLiteral("Do not start")), 0);
  w.click("Start");
  EXPECT_TRUE(w.crossing().record.empty());
  QLineEdit *name = nullptr, *why = nullptr;
  for (QLineEdit* one : w.panel.findChildren<QLineEdit*>()) {
    if (one->accessibleName().startsWith(QStringLiteral("Who takes it on"))) name = one;
    if (one->accessibleName().startsWith(QStringLiteral("Why it is started"))) why = one;
  }
  ASSERT_TRUE(name && why);
  name->setText(QStringLiteral("A. Nobody"));
  w.click("Take it on");
  EXPECT_TRUE(w.crossing().record.empty()) << "without a reason";
  why->setText(QStringLiteral("water seen below the floor"));
  w.click("Take it on");
  ASSERT_EQ(w.crossing().record.size(), 1u);
  EXPECT_EQ(w.record().taken_on->by, "A. Nobody");
  EXPECT_EQ(w.record().layout.bore, w.crossing().bore);
  EXPECT_EQ(w.panel.advice_text().indexOf(QStringLiteral("Only as taken on")), 0)
      << w.panel.advice_text().toStdString();
  w.expect_opens_again();
}

// A typed 10 km is taken, asked about, and blocks nothing.
TEST(DayPanel, Typed10Kilometres_AskedAbout) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(100);
  w.type_into(w.panel.input(QStringLiteral("or nose")), "10 km");
  if (w.record().readings.size() == 1) w.type_into(w.panel.input(QStringLiteral("or nose")), "10000 m");
  ASSERT_EQ(w.record().readings.size(), 2u);
  w.now = w.now.addSecs(100);
  w.click("Mark");
  EXPECT_NEAR(w.record().readings[2].nose->m, tail_to_nose(w.crossing(), tables_for_tests()), 1e-12);
  w.panel.readings()->setCurrentRow(1);
  w.click("Strike through");
  w.type_into(w.asked(), "slip of the pen");
  EXPECT_EQ(w.record().readings[1].cancelled, "slip of the pen");
}

// Ctrl+Z takes the last reading back, with the hands in an empty entry too.
TEST(DayPanel, Undo_FromAnEmptyEntry) {
  TestWindow w("first-lesson");
  w.window.side().show_page(SideColumn::Page::day);
  DayPanel& day = w.window.side().day();
  QTest::mouseClick(day.button(QStringLiteral("Start")), Qt::LeftButton);
  day.refresh_now();
  QTest::mouseClick(day.button(QStringLiteral("AIR OFF")), Qt::LeftButton);
  ASSERT_EQ(w.window.document().crossing().record.back().readings.size(), 2u);
  QLineEdit* time = day.input(QStringLiteral("time"));
  time->setFocus();
  QTest::keyClick(time, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.window.document().crossing().record.back().readings.size(), 1u);
}

// Ctrl+Z takes back no danger without a reason, tapped or written.
TEST(DayPanel, Danger_UndoAsksWhy) {
  TestWindow w("first-lesson");
  w.window.side().show_page(SideColumn::Page::day);
  DayPanel& day = w.window.side().day();
  const auto tap = [&](const char* name) {
    QTest::mouseClick(day.button(QString::fromUtf8(name)), Qt::LeftButton);
    day.refresh_now();
  };
  const auto asked = [&]() -> QLineEdit* {
    for (QLineEdit* one : day.findChildren<QLineEdit*>())
      if (one->accessibleName().startsWith(QStringLiteral("Why, and who")) && one->isVisibleTo(&day)) return one;
    return nullptr;
  };
  tap("Start");
  tap("DANGER");
  w.window.side().show_page(SideColumn::Page::layouts);
  QTest::keyClick(&w.window, Qt::Key_Z, Qt::ControlModifier);
  ASSERT_EQ(w.crossing().record.back().readings.size(), 2u);
  EXPECT_TRUE(day.isVisible()) << "the question is seen";
  day.refresh_now();
  EXPECT_EQ(day.advice_text().indexOf(QStringLiteral("Everybody out")), 0);
  ASSERT_TRUE(asked());
  QTest::keyClicks(asked(), QStringLiteral("glove"));
  QTest::keyClick(asked(), Qt::Key_Return);
  EXPECT_EQ(w.crossing().record.back().readings[1].cancelled, "glove");
  QTest::keyClick(&w.window, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_FALSE(w.crossing().record.back().readings[1].cancelled) << "the strike is undone";
  QTest::keyClick(&w.window, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing().record.back().readings.size(), 2u);
}

// Begun in a window in feet, a crossing counts its hose marks in round feet.
TEST(DayPanel, NewCrossingInFeet_MarksInFeet) {
  TestWindow w("house-service");
  w.window.set_units(UnitSystem::us);
  QTest::keyClick(&w.window, Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
  ASSERT_TRUE(w.crossing().record.empty());
  EXPECT_EQ(w.crossing().sheet.units, UnitSystem::us);
  EXPECT_NEAR(mark_spacing(w.crossing()).m, 5 * 0.3048, 1e-12);
}

TEST(DayPanel, End_ClosesTheRecord) {
  DayPage w;
  w.click("Start");
  w.now = w.now.addSecs(60);
  w.click("Arrived");
  EXPECT_EQ(w.record().readings.back().how, EndHow::arrived);
  EXPECT_FALSE(w.panel.button(QStringLiteral("Mark"))->isEnabled());
  EXPECT_TRUE(w.panel.button(QStringLiteral("Begin another"))->isEnabled());
}

TEST(DayPanel, Narrow_NothingBeyondTheEdge) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    DayPage w("first-lesson", units);
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

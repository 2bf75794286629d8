// A whole day as a foreman goes through it, by the events a hand makes, on the small screens of a site: nothing that is
// tapped lies out of sight, moves, or is too small for a glove; taps are counted. With BURROW_KEEP_WALKS naming a
// folder each step leaves a picture there.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTextDocument>
#include <cmath>

#include "burrow/crossing/day_record.h"
#include "burrow/document/reading_forms.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

constexpr int glove = 48;

/// The crossing of the sample whose bore is under way, before anybody has started.
class DayWalk : public TestWindow {
 public:
  DayWalk(const char* name, QSize size) : TestWindow("day-under-way", size), name_(QLatin1String(name)) {
    window.document().change(QStringLiteral("before"), [](Crossing& c) { c.record.clear(); });
    window.side().show_page(SideColumn::Page::day);
    day().set_clock([this] { return now; });
    look();
  }
  DayPanel& day() { return window.side().day(); }
  void look() {
    day().refresh_now();
    settle(window);
  }
  void keep(const char* step) {
    look();
    const QString folder = qEnvironmentVariable("BURROW_KEEP_WALKS");
    if (folder.isEmpty()) return;
    QDir().mkpath(folder);
    window.grab().save(
        QDir(folder).filePath(QStringLiteral("%1-%2-%3.png").arg(name_).arg(++step_).arg(QLatin1String(step))));
  }
  /// A finger on a button: it must be there, in sight, and large enough.
  void tap(const char* begins_with) {
    look();
    QPushButton* button = shown(begins_with);
    ASSERT_TRUE(button) << begins_with;
    ASSERT_TRUE(button->isEnabled()) << begins_with << ": " << day().advice_text().toStdString();
    bring_up(button);
    const QRect there(button->mapTo(&window, QPoint()), button->size());
    EXPECT_TRUE(window.rect().contains(there)) << begins_with << " lies out of sight";
    EXPECT_GE(std::min(there.width(), there.height()), glove) << begins_with;
    QWidget* under = window.childAt(there.center());
    ASSERT_EQ(under, button) << begins_with << " is covered";
    QTest::mouseClick(under, Qt::LeftButton);
    ++taps;
    look();
  }
  QPushButton* shown(const char* begins_with) {
    for (QPushButton* one : day().findChildren<QPushButton*>())
      if (one->text().startsWith(QString::fromUtf8(begins_with)) && one->isVisible()) return one;
    return nullptr;
  }
  QRect place_of(const char* begins_with) {
    QPushButton* button = shown(begins_with);
    return button ? QRect(button->mapTo(&window, QPoint()), button->size()) : QRect();
  }
  const DayRecord& record() { return crossing().record.back(); }
  void pass(double seconds) { now = now.addMSecs(static_cast<qint64>(1000 * seconds)); }

  QDateTime now = QDateTime(QDate(2026, 3, 2), QTime(8, 5), Qt::UTC);
  int taps = 0;

 private:
  /// As a finger pulls the page up: one pull is one tap.
  void bring_up(QWidget* widget) {
    for (QWidget* at = widget->parentWidget(); at; at = at->parentWidget())
      if (auto* area = qobject_cast<QScrollArea*>(at); area && area->widget()->isAncestorOf(widget)) {
        const int before = area->verticalScrollBar()->value();
        area->ensureWidgetVisible(widget, 0, 8);
        taps += area->verticalScrollBar()->value() != before;
        settle(window);
      }
  }
  QString name_;
  int step_ = 0;
};

/// Minutes at which the run sheet expects the nose there.
double expected_s(const Assessment& assessment, double nose_m) {
  const std::vector<AdvancePoint>& points = assessment.advance.points;
  for (std::size_t i = 1; i < points.size(); ++i)
    if (nose_m <= points[i].s_m) return points[i].time.p50_s;
  return points.back().time.p50_s;
}

// 14 m from the start to the arrival: a tap a mark, one for its tasks, and what is measured at the end. At most 40.
TEST(DayWalk, FourteenMetres_AtMostFortyTaps) {
  DayWalk w("day", {1366, 768});
  ASSERT_TRUE(w.opened);
  w.keep("before-the-start");
  EXPECT_FALSE(w.day().advice_text().startsWith(QStringLiteral("Do not"))) << w.day().advice_text().toStdString();
  w.tap("Start");
  const QRect mark = w.place_of("Mark"), stop = w.place_of("AIR OFF");
  EXPECT_EQ(mark.size(), stop.size());
  w.keep("started");
  const double length = w.window.document().assessment().bore.length_m;
  const QDateTime start = w.now;
  while (true) {
    const double next = next_mark(w.crossing(), tables_for_tests(), w.record());
    if (next > length) break;
    w.now = start.addMSecs(static_cast<qint64>(1000 * expected_s(w.window.document().assessment(), next)));
    w.tap("Mark");
    ASSERT_FALSE(HasFatalFailure());
    if (QPushButton* done = w.shown("Done"); done && done->isEnabled()) {
      EXPECT_EQ(w.day().advice_text().indexOf(QStringLiteral("First do this")), 0)
          << w.day().advice_text().toStdString();
      w.tap("Done");
    }
    EXPECT_EQ(w.place_of("Mark"), mark) << "it has moved";
    EXPECT_EQ(w.place_of("AIR OFF"), stop) << "it has moved";
    EXPECT_TRUE(w.day().advice_text().startsWith(QStringLiteral("Go on"))) << w.day().advice_text().toStdString();
    if (next > 5 && next < 7) w.keep("half-way");
  }
  w.keep("last-mark");
  w.now = start.addMSecs(static_cast<qint64>(1000 * expected_s(w.window.document().assessment(), length)));
  w.tap("Arrived");
  EXPECT_EQ(end_of(w.record()), EndHow::arrived);
  w.keep("arrived");
  EXPECT_LE(w.taps, 40);
  RecordProperty("taps", w.taps);
}

// From the permit to the pull-in: ticked, bored, measured where it came out, closed up; each of it by hand.
TEST(DayWalk, WholeDay_PermitToPullIn) {
  DayWalk w("whole", {1366, 768});
  ASSERT_TRUE(w.opened);
  w.window.side().show_page(SideColumn::Page::permit);
  PermitPanel& permit = w.window.side().permit();
  permit.set_clock([] { return QDate(2026, 3, 2); });
  permit.refresh_now();
  settle(w.window);
  QCheckBox* box = permit.daily(DailyItem::oil);
  for (int i = 0; i < 2; ++i) {
    const bool was = box->isChecked();
    QTest::mouseClick(box, Qt::LeftButton);
    permit.refresh_now();
    EXPECT_NE(box->isChecked(), was);
  }
  w.keep("permit");
  w.window.side().show_page(SideColumn::Page::day);
  w.tap("Start");
  const Assessment& assessment = w.window.document().assessment();
  const double length = assessment.bore.length_m;
  const QDateTime start = w.now;
  for (double next = 0; (next = next_mark(w.crossing(), tables_for_tests(), w.record())) <= length;) {
    w.now = start.addMSecs(static_cast<qint64>(1000 * expected_s(assessment, next)));
    w.tap("Mark");
    ASSERT_FALSE(HasFatalFailure());
    if (QPushButton* done = w.shown("Done"); done && done->isEnabled()) w.tap("Done");
  }
  w.now = start.addMSecs(static_cast<qint64>(1000 * expected_s(assessment, length)));
  const auto field = [&](const char* begins) -> QLineEdit* {
    for (QLineEdit* one : w.day().findChildren<QLineEdit*>())
      if (one->accessibleName().startsWith(QLatin1String(begins)) && one->isVisible()) return one;
    return nullptr;
  };
  const auto type = [&](const char* begins, const char* text, bool enter = true) {
    QLineEdit* entry = field(begins);
    ASSERT_TRUE(entry) << begins;
    entry->setFocus();
    entry->selectAll();
    QTest::keyClicks(entry, QString::fromUtf8(text));
    if (enter) QTest::keyClick(entry, Qt::Key_Return);
    w.look();
  };
  for (QComboBox* kinds : w.day().findChildren<QComboBox*>())
    if (kinds->accessibleName() == QStringLiteral("Kind")) {
      const int row = kinds->findText(QStringLiteral("arrival in the exit pit"));
      ASSERT_GE(row, 0);
      kinds->setCurrentIndex(row);
      Q_EMIT kinds->activated(row);
    }
  w.look();
  type("offset", "0.03 m", false);
  const std::string level = format(*assessment.arrival.elevation_m, Dimension::station, UnitSystem::metric);
  type("level of the axis", level.c_str());
  ASSERT_EQ(w.record().readings.back().kind, ReadingKind::arrival) << w.day().visible_text().toStdString();
  w.tap("Arrived");
  EXPECT_FALSE(arrival_doubted(w.crossing(), w.record()));
  w.keep("came-out");
  type("pulled in", "14 m PE 63");
  type("pulled in on", "2026-03-02");
  type("watched for strikes", "A. Nobody");
  type("most pull", "2.1 kN");
  const PullIn& pull = w.record().aftermath.pull_in;
  EXPECT_EQ(pull.what, "14 m PE 63");
  EXPECT_EQ(pull.watched_by, "A. Nobody");
  ASSERT_TRUE(pull.peak);
  w.keep("pulled-in");
}

// Struck: one tap, and one card for all; the large buttons stand where they stood.
TEST(DayWalk, Danger_OneTap) {
  DayWalk w("danger", {1366, 768});
  w.tap("Start");
  w.pass(80);
  w.tap("Mark");
  const QRect mark = w.place_of("Mark");
  const int before = w.taps;
  w.tap("DANGER");
  EXPECT_EQ(w.taps, before + 1);
  EXPECT_EQ(w.day().advice_text().indexOf(QStringLiteral("Everybody out")), 0);
  EXPECT_EQ(w.place_of("Mark"), mark);
  for (const char* said : {"upwind", "gas and as live power", "nothing of metal", "valve"})
    EXPECT_TRUE(w.day().advice_text().contains(QLatin1String(said))) << said;
  // Whom to ring: the emergency number in the first line, the owners' numbers below.
  EXPECT_TRUE(w.day().advice_text().section(QLatin1Char('\n'), 0, 0).contains(QStringLiteral("0100 000 112")));
  for (const char* number : {"0100 000 112", "0100 200 311", "0100 200 300"})
    EXPECT_TRUE(w.day().visible_text().contains(QLatin1String(number))) << number;
  w.keep("everybody-out");
  // What to do and whom to ring stands in sight, above what may be asked later.
  const QLabel* card = nullptr;
  for (const QLabel* one : w.day().findChildren<QLabel*>())
    if (one->accessibleName() == QStringLiteral("Emergency")) card = one;
  ASSERT_TRUE(card && card->isVisible());
  const QRect seen = card->visibleRegion().boundingRect();
  EXPECT_EQ(seen.top(), 0) << "its first line";
  EXPECT_GE(seen.height(), std::min(card->height(), 60));
  const QPushButton* smell = w.shown("Smell");
  ASSERT_TRUE(smell);
  EXPECT_GT(smell->mapTo(&w.window, QPoint()).y(), card->mapTo(&w.window, QPoint()).y());
  // Taken back only with a reason.
  const auto crosses = w.day().findChildren<QPushButton*>();
  for (QPushButton* one : crosses)
    if (one->accessibleName().startsWith(QStringLiteral("Take back")) && one->isVisible()) {
      QTest::mouseClick(one, Qt::LeftButton);
      break;
    }
  EXPECT_FALSE(w.record().readings.back().cancelled);
  w.keep("asked-why");
}

// Pressure, grade, location, peg: a tap, the number, Enter; at most one pull of the page.
TEST(DayWalk, TypedReading_TwoTaps) {
  DayWalk w("typed", {1366, 768});
  w.tap("Start");
  w.pass(80);
  w.tap("Mark");
  struct Typed {
    const char* button;
    const char* number;
    ReadingKind kind;
  };
  for (const Typed& one :
       {Typed{"Pressure", "6.8 bar", ReadingKind::pressure}, Typed{"Grade", "1:100", ReadingKind::grade},
        Typed{"Location", "0.02 m", ReadingKind::fix}}) {
    const int before = w.taps;
    w.tap(one.button);
    QWidget* focus = w.window.focusWidget();
    ASSERT_TRUE(qobject_cast<QLineEdit*>(focus)) << one.button;
    QTest::keyClicks(focus, QString::fromUtf8(one.number));
    QTest::keyClick(focus, Qt::Key_Return);
    w.look();
    EXPECT_EQ(w.record().readings.back().kind, one.kind) << one.button;
    EXPECT_LE(w.taps - before, 2) << one.button;
  }
}

// Every screen of a site: 1366 x 768, 1280 x 720, the first at 125 % (1092 x 614 of its points); light, dark, in the
// sun. The block is whole, in sight, never covered, and each of its targets is large enough for a glove.
TEST(DayWalk, Block_WholeOnEveryScreen) {
  struct Screen {
    const char* name;
    QSize size;
    Colours colours;
  };
  for (const Screen& screen :
       {Screen{"usual", {1366, 768}, Colours::light}, Screen{"small", {1280, 720}, Colours::light},
        Screen{"large-type", {1092, 614}, Colours::light}, Screen{"dark", {1366, 768}, Colours::dark},
        Screen{"sun", {1366, 768}, Colours::sunlight}}) {
    DayWalk w(screen.name, screen.size);
    w.window.set_colours(screen.colours);
    settle(w.window);
    EXPECT_LE(w.window.width(), screen.size.width()) << screen.name;
    EXPECT_LE(w.window.height(), screen.size.height()) << screen.name;
    w.tap("Start");
    for (int i = 0; i < 6; ++i) {
      w.pass(90);
      w.tap(i % 2 == 0 ? "Mark" : "AIR OFF");
    }
    for (const char* large : {"Mark", "AIR OFF"}) {
      EXPECT_GE(w.place_of(large).height(), 64) << screen.name << " " << large;
      EXPECT_TRUE(w.window.rect().contains(w.place_of(large))) << screen.name << " " << large;
    }
    for (const char* other : {"Done", "Goes on", "DANGER"}) {
      EXPECT_GE(std::min(w.place_of(other).width(), w.place_of(other).height()), glove) << screen.name << " " << other;
      EXPECT_TRUE(w.window.rect().contains(w.place_of(other))) << screen.name << " " << other;
    }
    int crosses = 0;
    for (QPushButton* one : w.day().findChildren<QPushButton*>()) {
      if (!one->accessibleName().startsWith(QStringLiteral("Take back")) || !one->isVisible()) continue;
      ++crosses;
      const QRect there(one->mapTo(&w.window, QPoint()), one->size());
      EXPECT_TRUE(w.window.rect().contains(there)) << screen.name;
      EXPECT_GE(std::min(there.width(), there.height()), glove) << screen.name;
    }
    EXPECT_EQ(crosses, 5) << screen.name;
    w.keep(screen.name);
    // The longest advice there is: nothing of it is cut.
    w.tap("DANGER");
    QTextDocument page;
    const QLabel* advice = w.day().advice();
    page.setDefaultFont(advice->font());
    page.setDocumentMargin(0);
    page.setHtml(advice->text());
    page.setTextWidth(advice->width() - 2 * advice->margin());
    EXPECT_LE(page.size().height(), advice->height() - 2 * advice->margin()) << screen.name;
    EXPECT_TRUE(w.day().advice_text().contains(QStringLiteral("then the owners"))) << screen.name;
    EXPECT_TRUE(advice->text().contains(QStringLiteral("font-size:13px"))) << screen.name << ": it is no small print";
    w.keep("danger");
  }
}

// What is typed on another page does not matter: Ctrl+Z takes the last reading back wherever the focus is.
TEST(DayWalk, Undo_WhereverTheFocusIs) {
  DayWalk w("undo", {1366, 768});
  w.tap("Start");
  w.pass(80);
  w.tap("AIR OFF");
  ASSERT_EQ(w.record().readings.size(), 2u);
  w.window.drawing().setFocus();
  QTest::keyClick(&w.window.drawing(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.record().readings.size(), 1u);
  w.tap("AIR OFF");
  QPushButton* off = w.shown("AIR OFF");
  off->setFocus();
  QTest::keyClick(off, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.record().readings.size(), 1u);
}

}  // namespace
}  // namespace burrow

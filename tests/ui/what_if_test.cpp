/// Something set wrong on purpose, on the real window: the drawing shows where the bore goes, the plan and its verdict
/// stay until it is kept.

#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QPushButton>
#include <QUndoStack>
#include <cmath>

#include "burrow/file/crossing_file.h"
#include "burrow/practice/try_error.h"
#include "burrow/window/player_bar.h"
#include "burrow/window/what_if_bar.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct Trying : TestWindow {
  explicit Trying(const char* sample = "house-service", QSize size = {1366, 768}) : TestWindow(sample, size) {
    window.findChild<QAction*>(QStringLiteral("what-if"))->setChecked(true);
    settle(window);
  }
  WhatIfBar& bar() { return window.what_if(); }
  void type(WhatIfBar::Turn turn, const QString& text) {
    bar().entry(turn)->setFocus();
    bar().entry(turn)->selectAll();
    QTest::keyClicks(bar().entry(turn), text);
    QTest::keyClick(bar().entry(turn), Qt::Key_Return);
  }
  [[nodiscard]] double seen_px() {
    const std::optional<Miss> miss = bar().miss();
    const Frame& f = window.drawing().frame();
    return std::abs(miss->up_m()) * f.px_per_m * f.exaggeration;
  }
};

TEST(WhatIf, HalfADegreeTyped_MissTold_PlanAndVerdictStay) {
  Trying w;
  const std::string before = write_crossing(w.crossing());
  const Verdict verdict = w.window.document().assessment().verdict;
  EXPECT_FALSE(w.bar().tried());
  w.type(WhatIfBar::level, QStringLiteral("-0.5"));
  ASSERT_TRUE(w.bar().tried());
  EXPECT_NEAR(w.bar().error().level_rad, -0.5 * pi / 180, 1e-9);
  EXPECT_EQ(w.bar().slider(WhatIfBar::level)->value(), -10);
  const double run = w.crossing().bore.exit.station.m - w.crossing().bore.launch.station.m;
  // Derived: nearly straight, the miss is run tan 0.5°; the soil bends it by little.
  EXPECT_NEAR(w.bar().miss()->up_m(), -run * std::tan(0.5 * pi / 180), 0.02);
  EXPECT_TRUE(w.bar().visible_text().contains(QStringLiteral("low"))) << w.bar().visible_text().toStdString();
  QString all;
  for (const QLabel* label : w.bar().findChildren<QLabel*>()) all += label->text();
  EXPECT_TRUE(all.contains(QStringLiteral("verdict is that of the layout"))) << all.toStdString();
  EXPECT_EQ(write_crossing(w.crossing()), before);
  EXPECT_EQ(w.window.document().assessment().verdict, verdict);
  EXPECT_FALSE(w.window.document().modified());
  EXPECT_EQ(w.window.document().undo_stack().count(), 0);
}

TEST(WhatIf, MissIsSeen_HeightsGoBackAfterwards) {
  for (const char* sample : {"house-service", "first-lesson", "car-park-duct"}) {
    Trying w(sample, {1600, 900});
    const Frame before = w.window.drawing().frame();
    w.bar().slider(WhatIfBar::level)->setValue(-10);
    ASSERT_TRUE(w.bar().miss()) << sample;
    const Frame& during = w.window.drawing().frame();
    EXPECT_GE(w.seen_px(), least_miss_px) << sample << " ×" << during.exaggeration;
    for (const PathPoint& p : {w.bar().miss()->planned, w.bar().miss()->other})
      EXPECT_TRUE(during.elevation.contains(during.side(p.x_m, p.z_m))) << sample;
    w.bar().start_again();
    EXPECT_EQ(w.window.drawing().frame(), before) << sample;
  }
}

TEST(WhatIf, KeptIsOneStep_UndoneIsThePlan) {
  Trying w;
  const Crossing before = w.crossing();
  w.bar().slider(WhatIfBar::level)->setValue(4);
  const double there = w.bar().tried()->points.back().z_m;
  QTest::mouseClick(w.bar().findChildren<QPushButton*>().front(), Qt::LeftButton);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
  EXPECT_NEAR(w.window.document().assessment().bore.points.back().z_m, there, 1e-6);
  EXPECT_FALSE(w.bar().tried());
  EXPECT_EQ(w.bar().slider(WhatIfBar::level)->value(), 0);
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(WhatIf, LockedIsTried_NotKept) {
  Trying w;
  w.window.document().change(QStringLiteral("lock"), [](Crossing& c) { c.locks = {"/bore/launch/grade"}; });
  const Crossing before = w.crossing();
  w.bar().slider(WhatIfBar::level)->setValue(4);
  ASSERT_TRUE(w.bar().tried());
  QTest::mouseClick(w.bar().findChildren<QPushButton*>().front(), Qt::LeftButton);
  EXPECT_EQ(w.crossing(), before);
  EXPECT_TRUE(w.bar().visible_text().contains(QStringLiteral("/bore/launch/grade")));
  EXPECT_TRUE(w.bar().tried()) << "nothing that was tried is lost";
}

// A layout that comes out of the ground has no place at the exit to compare with.
TEST(WhatIf, LayoutThatNeverArrives_NoMissAtTheExitIsTold) {
  Trying w;
  w.window.document().change(QStringLiteral("up"), [](Crossing& c) { c.bore.launch.grade.v = 0.5; });
  ASSERT_NE(w.window.document().assessment().bore.ends, PathEnd::exit);
  w.bar().slider(WhatIfBar::level)->setValue(-40);
  EXPECT_FALSE(w.bar().miss());
  EXPECT_FALSE(w.bar().visible_text().contains(QStringLiteral("At the exit"))) << w.bar().visible_text().toStdString();
}

// What nobody tried any more is not shown: closed, another crossing, an edit of the plan.
TEST(WhatIf, ClosedOrAnotherCrossing_NothingIsTried) {
  Trying w;
  w.bar().slider(WhatIfBar::sight)->setValue(10);
  ASSERT_TRUE(w.bar().tried());
  QTest::keyClick(&w.bar(), Qt::Key_Escape);
  EXPECT_FALSE(w.bar().isVisible());
  EXPECT_FALSE(w.bar().tried());
  w.window.findChild<QAction*>(QStringLiteral("what-if"))->setChecked(true);
  EXPECT_FALSE(w.bar().tried());
  w.bar().slider(WhatIfBar::sight)->setValue(10);
  ASSERT_TRUE(w.bar().tried());
  w.window.open_sample(QStringLiteral("first-lesson"));
  settle(w.window);
  EXPECT_FALSE(w.bar().tried());
  EXPECT_EQ(w.bar().slider(WhatIfBar::sight)->value(), 0);
}

TEST(WhatIf, EditOfThePlan_IsTriedAnew) {
  Trying w;
  w.bar().slider(WhatIfBar::level)->setValue(-10);
  const double before = w.bar().tried()->points.front().z_m;
  w.window.document().change(QStringLiteral("lower"), [](Crossing& c) { c.bore.launch.elevation.m -= 0.1; });
  settle(w.window);
  ASSERT_TRUE(w.bar().tried());
  EXPECT_NEAR(w.bar().tried()->points.front().z_m, before - 0.1, 1e-9);
}

TEST(WhatIf, NonsenseTyped_StaysAsItWas) {
  Trying w;
  w.bar().slider(WhatIfBar::level)->setValue(6);
  const double before = w.bar().error().level_rad;
  w.type(WhatIfBar::level, QStringLiteral("gas main"));
  EXPECT_EQ(w.bar().error().level_rad, before);
  w.type(WhatIfBar::level, QStringLiteral("1e9"));
  EXPECT_NEAR(w.bar().error().level_rad, 2 * pi / 180, 1e-9);  // as far as it goes
}

TEST(WhatIf, ThePlayerPlaysIt) {
  Trying w;
  w.window.findChild<QAction*>(QStringLiteral("play"))->setChecked(true);
  const auto choice = [&] { return w.window.player().findChild<QComboBox*>(); };
  EXPECT_EQ(choice()->count(), 1);
  w.bar().slider(WhatIfBar::level)->setValue(10);
  EXPECT_EQ(choice()->count(), 2);
  w.bar().start_again();
  EXPECT_EQ(choice()->count(), 1);
}

// The tool of thumb of the trade, worked out for the bore at hand.
TEST(WhatIf, RuleOfThumb_InTheUnitsShown) {
  Trying w;
  const auto all = [&] {
    QString text;
    for (QLabel* label : w.bar().findChildren<QLabel*>()) text += label->text() + QLatin1Char('\n');
    return text.replace(QChar(0x00a0), QLatin1Char(' '));
  };
  EXPECT_TRUE(all().contains(QStringLiteral("1 mm on a level of 1.2 m"))) << all().toStdString();
  w.window.set_units(UnitSystem::us);
  EXPECT_TRUE(all().contains(QStringLiteral("1/16 in on a level of 4 ft"))) << all().toStdString();
}

TEST(WhatIf, NothingIsCutAtASmallWindow) {
  Trying w("house-service", {1280, 720});
  w.bar().slider(WhatIfBar::level)->setValue(-10);
  settle(w.window);
  for (QWidget* part : w.bar().findChildren<QWidget*>()) {
    if (!part->isVisible() || part->parentWidget() != &w.bar()) continue;
    EXPECT_TRUE(w.bar().rect().contains(part->geometry())) << part->metaObject()->className();
    if (const auto* label = qobject_cast<QLabel*>(part); label && !label->wordWrap()) {
      EXPECT_GE(label->width(), label->sizeHint().width()) << label->text().toStdString();
    }
  }
}

}  // namespace
}  // namespace burrow

/// Trials beside the open crossing: newest request wins, nothing waits on the screen, what is old looks old.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QElapsedTimer>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>

#include "burrow/charts/bore_charts.h"
#include "burrow/plan/conclude_trials.h"
#include "burrow/plan/trials_plan.h"
#include "window_for_tests.h"

namespace burrow {
namespace {

/// Turns the event loop until the desk rests, at most a minute.
void wait_for(TrialsDesk& desk) {
  ASSERT_TRUE(QTest::qWaitFor([&] { return !desk.running(); }, 60000));
}

Launch lowered(const Crossing& crossing, double by_m) {
  Launch launch = crossing.bore.launch;
  launch.elevation.m -= by_m;
  return launch;
}

TEST(TrialsDesk, CountsTheSameAsACallOfItsOwn) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsDesk desk(document);
  EXPECT_EQ(desk.trials(), nullptr);
  desk.run();
  EXPECT_TRUE(desk.running());
  wait_for(desk);
  ASSERT_NE(desk.trials(), nullptr);
  EXPECT_TRUE(desk.current());
  const TrialsSetup setup = trials_setup(document.crossing(), document.tables(), document.assessment());
  EXPECT_EQ(*desk.trials(), run_trials(document.crossing(), document.tables(), setup));
}

// The verdict of the window is that of `check --trials`.
TEST(TrialsDesk, Verdict_AsConcluded) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("sixty-utilities")));
  const Assessment alone = document.assessment();
  TrialsDesk desk(document);
  desk.run();
  wait_for(desk);
  ASSERT_NE(desk.trials(), nullptr);
  const Assessment concluded = conclude_trials(document.crossing(), document.tables(), alone, *desk.trials());
  EXPECT_EQ(document.assessment().verdict, concluded.verdict);
  EXPECT_EQ(document.assessment().findings, concluded.findings);
}

TEST(TrialsDesk, NewestRequestWins_OlderOnesAreDropped) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsDesk desk(document);
  for (int i = 0; i < 6; ++i) {
    document.change({PartKind::launch, {}, -1}, lowered(document.crossing(), 0.02), QStringLiteral("lower"));
    desk.run();
  }
  wait_for(desk);
  ASSERT_NE(desk.trials(), nullptr);
  EXPECT_TRUE(desk.current());
  EXPECT_NEAR(desk.trials()->mean_elevation_m->value, *document.assessment().arrival.elevation_m, 0.01);
}

TEST(TrialsDesk, Cancel_KeepsWhatWasCountedBefore) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsDesk desk(document);
  QElapsedTimer whole;
  whole.start();
  desk.run();
  wait_for(desk);
  const auto whole_ms = static_cast<int>(whole.elapsed());
  const Trials before = *desk.trials();
  TrialsRequest other = document.crossing().bore.trials;
  other.seed.set(2);
  document.change({PartKind::trials, {}, -1}, other, QStringLiteral("another seed"));
  EXPECT_FALSE(desk.current());
  desk.run();
  desk.cancel();
  EXPECT_FALSE(desk.running());
  QTest::qWait(100 + 3 * whole_ms);  // longer than the whole count would take
  ASSERT_NE(desk.trials(), nullptr);
  EXPECT_EQ(*desk.trials(), before);
  EXPECT_FALSE(desk.current());
  document.undo_stack().undo();
  EXPECT_TRUE(desk.current());  // the crossing stands as it did when they were counted
}

TEST(TrialsDesk, Following_CountsAgainOnceNothingMoves) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsDesk desk(document);
  desk.set_following(true);
  wait_for(desk);
  document.change({PartKind::launch, {}, -1}, lowered(document.crossing(), 0.1), QStringLiteral("lower"));
  EXPECT_FALSE(desk.current());
  ASSERT_TRUE(QTest::qWaitFor([&] { return desk.current(); }, 60000));
}

TEST(TrialsDesk, AnotherCrossing_ForgetsThem) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsDesk desk(document);
  desk.run();
  wait_for(desk);
  ASSERT_TRUE(document.open(sample_path("rail-siding")));
  EXPECT_EQ(desk.trials(), nullptr);
  desk.run();
  ASSERT_TRUE(document.open(sample_path("first-lesson")));  // while the worker is at it
  QTest::qWait(400);
  EXPECT_EQ(desk.trials(), nullptr);
}

TEST(TrialsDesk, Destruction_StopsWhatRuns) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("sixty-utilities")));
  TrialsRequest many = document.crossing().bore.trials;
  many.count.set(1000000);
  document.change({PartKind::trials, {}, -1}, many, QStringLiteral("more"));
  {
    TrialsDesk desk(document);
    desk.run();
    QTest::qWait(20);
    ASSERT_TRUE(desk.running());  // a million bores past sixty utilities are far from done
    EXPECT_LT(desk.progress(), 1);
  }
}

TEST(TrialsPanel, ButtonCounts_TableAndChartShowIt_OldLooksOld) {
  TestWindow w("first-lesson");
  w.window.side().show_page(SideColumn::Page::trials);
  TrialsPanel& panel = w.window.side().trials();
  EXPECT_FALSE(panel.table()->isVisible());
  QTest::mouseClick(panel.button(), Qt::LeftButton);
  wait_for(w.window.side().desk());
  QTest::qWait(120);
  ASSERT_TRUE(panel.table()->isVisible());
  EXPECT_GE(panel.table()->rowCount(), 8);
  EXPECT_TRUE(panel.table()->item(0, 1)->text().contains(QLatin1Char('%')));
  EXPECT_GT(panel.chart()->points_shown(), 1000);
  const QColor fresh = panel.table()->item(0, 1)->foreground().color();
  w.window.document().change({PartKind::launch, {}, -1}, lowered(w.crossing(), 0.1), QStringLiteral("lower"));
  QTest::qWait(120);
  EXPECT_NE(panel.table()->item(0, 1)->foreground().color(), fresh);
  EXPECT_TRUE(panel.state()->text().contains(QStringLiteral("changed since")));
}

TEST(TrialsPanel, CountIsTyped_OneUndoStep_WrongIsNotTaken) {
  TestWindow w("first-lesson");
  w.window.side().show_page(SideColumn::Page::trials);
  QLineEdit* count = w.window.side().trials().count();
  count->setText(QStringLiteral("5000"));
  Q_EMIT count->editingFinished();
  EXPECT_EQ(*w.crossing().bore.trials.count, 5000);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
  count->setText(QStringLiteral("0"));
  Q_EMIT count->editingFinished();
  EXPECT_EQ(*w.crossing().bore.trials.count, 5000);
}

TEST(PathPanel, Summary_SaysStatusTimeAndArrival) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::path);
  QTest::qWait(80);
  const QString text = w.window.side().path().summary();
  EXPECT_TRUE(text.contains(QStringLiteral("our model, not calibrated"))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("Takes "))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("Neutral cover"))) << text.toStdString();
}

TEST(PathPanel, RescuePit_IsDrawnOnDemandAndAWrongPlaceIsSaid) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::path);
  PathPanel& panel = w.window.side().path();
  std::optional<PitShape> drawn;
  QObject::connect(&panel, &PathPanel::rescue_changed, [&](const std::optional<PitShape>& pit) { drawn = pit; });
  panel.rescue_wanted()->setChecked(true);
  ASSERT_TRUE(drawn);
  EXPECT_FALSE(panel.nose()->text().isEmpty());
  const double middle = drawn->floor_to_m;
  panel.nose()->setText(QStringLiteral("3 m"));
  Q_EMIT panel.nose()->editingFinished();
  ASSERT_TRUE(drawn);
  EXPECT_LT(drawn->floor_to_m, middle);
  panel.nose()->setText(QStringLiteral("300 m"));
  Q_EMIT panel.nose()->editingFinished();
  EXPECT_FALSE(drawn);
  panel.rescue_wanted()->setChecked(false);
  EXPECT_FALSE(drawn);
}

}  // namespace
}  // namespace burrow

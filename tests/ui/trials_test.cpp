/// Trials beside the open crossing: newest request wins, nothing waits on the screen, what is old looks old.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>

#include "burrow/charts/bore_charts.h"
#include "burrow/check/conclude_trials.h"
#include "burrow/check/trials_plan.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

/// Turns the event loop until the desk rests.
void wait_for(TrialsJob& job) {
  ASSERT_TRUE(comes([&] { return !job.running(); }));
}

/// Every answer that the desk shows. Its worker takes one request after the other: when the last has answered, those
/// before it have had their chance.
class SeenTrials {
 public:
  explicit SeenTrials(TrialsJob& job) {
    QObject::connect(&job, &TrialsJob::changed, &job, [this, &job] {
      if (job.trials()) all.push_back(*job.trials());
    });
  }
  std::vector<Trials> all;
};

Launch lowered(const Crossing& crossing, double by_m) {
  Launch launch = crossing.bore.launch;
  launch.elevation.m -= by_m;
  return launch;
}

TEST(TrialsJob, CountsTheSameAsACallOfItsOwn) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsJob job(document);
  EXPECT_EQ(job.trials(), nullptr);
  job.run();
  EXPECT_TRUE(job.running());
  wait_for(job);
  ASSERT_NE(job.trials(), nullptr);
  EXPECT_TRUE(job.current());
  const TrialsSetup setup = trials_setup(document.crossing(), document.tables(), document.assessment());
  EXPECT_EQ(*job.trials(), run_trials(document.crossing(), document.tables(), setup));
}

// The verdict of the window is that of `check --trials`.
TEST(TrialsJob, Verdict_AsConcluded) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("sixty-utilities")));
  const Assessment alone = document.assessment();
  TrialsJob job(document);
  job.run();
  wait_for(job);
  ASSERT_NE(job.trials(), nullptr);
  const Assessment concluded = conclude_trials(document.crossing(), document.tables(), alone, *job.trials());
  EXPECT_EQ(document.assessment().verdict, concluded.verdict);
  EXPECT_EQ(document.assessment().findings, concluded.findings);
}

TEST(TrialsJob, NewestRequestWins_OlderOnesAreDropped) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsJob job(document);
  for (int i = 0; i < 6; ++i) {
    document.change(QStringLiteral("lower"),
                    [&](Crossing& to) { to.bore.launch = lowered(document.crossing(), 0.02); });
    job.run();
  }
  wait_for(job);
  ASSERT_NE(job.trials(), nullptr);
  EXPECT_TRUE(job.current());
  EXPECT_NEAR(job.trials()->mean_elevation_m->value, *document.assessment().arrival.elevation_m, 0.01);
}

TEST(TrialsJob, Cancel_KeepsWhatWasCountedBefore) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsJob job(document);
  job.run();
  wait_for(job);
  const Trials before = *job.trials();
  TrialsRequest other = document.crossing().bore.trials;
  other.seed.set(2);
  document.change(QStringLiteral("another seed"), [&](Crossing& to) { to.bore.trials = other; });
  EXPECT_FALSE(job.current());
  SeenTrials shown(job);
  job.run();
  job.cancel();
  EXPECT_FALSE(job.running());
  ASSERT_NE(job.trials(), nullptr);
  EXPECT_EQ(*job.trials(), before);
  EXPECT_FALSE(job.current());
  document.undo_stack().undo();
  EXPECT_TRUE(job.current());  // the crossing stands as it did when they were counted
  job.run();
  wait_for(job);
  EXPECT_FALSE(shown.all.empty());
  for (const Trials& trials : shown.all) EXPECT_EQ(trials, before);
}

TEST(TrialsJob, Following_CountsAgainOnceNothingMoves) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsJob job(document);
  job.set_following(true);
  wait_for(job);
  document.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = lowered(document.crossing(), 0.1); });
  EXPECT_FALSE(job.current());
  ASSERT_TRUE(comes([&] { return job.current(); }));
}

TEST(TrialsJob, AnotherCrossing_ForgetsThem) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  TrialsJob job(document);
  job.run();
  wait_for(job);
  ASSERT_TRUE(document.open(sample_path("rail-siding")));
  EXPECT_EQ(job.trials(), nullptr);
  job.run();
  ASSERT_TRUE(document.open(sample_path("first-lesson")));  // while the worker is at it
  EXPECT_EQ(job.trials(), nullptr);
  SeenTrials shown(job);
  job.run();
  wait_for(job);
  const TrialsSetup setup = trials_setup(document.crossing(), document.tables(), document.assessment());
  const Trials own = run_trials(document.crossing(), document.tables(), setup);
  ASSERT_FALSE(shown.all.empty());
  for (const Trials& trials : shown.all) EXPECT_EQ(trials, own);
}

TEST(TrialsJob, Destruction_StopsWhatRuns) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("sixty-utilities")));
  TrialsRequest many = document.crossing().bore.trials;
  many.count.set(1000000);
  document.change(QStringLiteral("more"), [&](Crossing& to) { to.bore.trials = many; });
  {
    TrialsJob job(document);
    job.run();
    ASSERT_TRUE(comes([&] { return job.progress() > 0; }));
    ASSERT_TRUE(job.running());  // a million bores past sixty utilities are far from done
    EXPECT_LT(job.progress(), 1);
  }
}

TEST(TrialsPanel, ButtonCounts_TableAndChartShowIt_OldLooksOld) {
  TestWindow w("first-lesson");
  w.window.side().show_page(SideColumn::Page::trials);
  TrialsPanel& panel = w.window.side().trials();
  EXPECT_FALSE(panel.table()->isVisible());
  QTest::mouseClick(panel.button(), Qt::LeftButton);
  wait_for(w.window.side().job());
  settle(w.window);
  ASSERT_TRUE(panel.table()->isVisible());
  EXPECT_GE(panel.table()->rowCount(), 8);
  EXPECT_TRUE(panel.table()->item(0, 1)->text().contains(QLatin1Char('%')));
  EXPECT_GT(panel.chart()->points_shown(), 1000);
  const QColor fresh = panel.table()->item(0, 1)->foreground().color();
  w.window.document().change(QStringLiteral("lower"),
                             [&](Crossing& to) { to.bore.launch = lowered(w.crossing(), 0.1); });
  settle(w.window);
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
  settle(w.window);
  const QString text = w.window.side().path().summary();
  EXPECT_TRUE(text.contains(QStringLiteral("model not calibrated"))) << text.toStdString();
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

/// The page of the pipe: real widgets, one undo step each, working that can be copied, charts that follow.

#include "burrow/panels/pipe_panel.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>
#include <QPushButton>
#include <QSlider>
#include <cmath>

#include "burrow/charts/load_charts.h"
#include "burrow/check/assess.h"
#include "burrow/panels/check_list.h"
#include "burrow/words/pipe_text.h"
#include "burrow/words/working_text.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

using Page = PanelBeside<PipePanel>;

const PipeCheck* check(const Assessment& answer, std::string_view code) {
  const auto it = std::find_if(answer.pipe_checks.begin(), answer.pipe_checks.end(),
                               [&](const PipeCheck& c) { return c.code == code; });
  return it == answer.pipe_checks.end() ? nullptr : &*it;
}

TEST(PipePanel, EntriesAndChoices_AreOneStepEach) {
  Page w("house-service");
  ASSERT_TRUE(w.opened);
  const Crossing before = w.crossing();
  const auto pipe = [&]() -> const Pipe& { return *w.crossing().pipe; };
  int steps = 0;
  const auto one_more = [&](const char* what) {
    EXPECT_EQ(w.steps(), ++steps) << what;
    w.expect_opens_again();
  };
  w.choose("material", "copper tube type K");
  EXPECT_EQ(pipe().material, "copper-k");
  one_more("material");
  w.choose("size", "1 in");
  EXPECT_NEAR(pipe().outside_diameter->m, 1.125 * 0.0254, 1e-9);
  EXPECT_FALSE(pipe().sdr);
  one_more("size");
  w.choose("material", "polyethylene PE 4710");
  one_more("material back");
  w.choose("size", "1-1/2 in, 48");
  EXPECT_NEAR(pipe().outside_diameter->m, 1.9 * 0.0254, 1e-9);
  EXPECT_EQ(pipe().sdr->v, 11);
  one_more("pe size");
  w.choose("wall of that size", "5.4");  // a hard space stands before the unit
  EXPECT_EQ(pipe().sdr->v, 9);
  one_more("wall");
  w.type(w.panel.size_entries(), "outside diameter", "2.375 in");
  EXPECT_NEAR(pipe().outside_diameter->m, 0.060325, 1e-12);
  one_more("diameter");
  w.type(w.panel.size_entries(), "wall", "6 mm");
  EXPECT_NEAR(pipe().wall->m, 0.006, 1e-12);
  one_more("typed wall");
  w.type(w.panel.size_entries(), "pipes drawn in together", "2");
  EXPECT_EQ(*pipe().count, 2);
  one_more("count");
  w.choose("goes in", "towed");
  EXPECT_EQ(*pipe().insertion, Insertion::towed);
  one_more("insertion");
  w.choose("pulled by", "air hose");
  EXPECT_EQ(*pipe().pull_by, PullBy::hose);
  one_more("pull by");
  w.type(w.panel.pull_entries(), "pull the hose is rated for", "2 kN");
  EXPECT_NEAR(pipe().hose_rating->N, 2000, 1e-9);
  one_more("rating");
  w.type(w.panel.pull_entries(), "pulling head", "75 mm");
  EXPECT_NEAR(pipe().head_diameter->m, 0.075, 1e-12);
  one_more("head");
  w.type(w.panel.pull_entries(), "the pull lasts", "30 min");
  EXPECT_NEAR(pipe().pull_time->s, 1800, 1e-9);
  one_more("time");
  w.type(w.panel.use_entries(), "pressure inside", "5 bar");
  EXPECT_NEAR(pipe().operating_pressure->Pa, 5e5, 1e-6);
  one_more("pressure");
  w.choose("temperature on the day of pulling", "40 °C");
  EXPECT_NEAR(pipe().temperature->K, 313.15, 1e-9);
  one_more("temperature");
  w.choose("warmest temperature in service", "30 °C");
  EXPECT_NEAR(pipe().service_temperature->K, 303.15, 1e-9);
  one_more("service temperature");
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(PipePanel, NoPipe_FirstChoiceMakesOne) {
  Page w("house-service");
  ASSERT_TRUE(w.document.change(QStringLiteral("take out"), [&](Crossing& to) { to.pipe = std::nullopt; }));
  w.panel.refresh_now();
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("No pipe is entered")));
  EXPECT_TRUE(w.panel.checks()->rows().empty());
  w.choose("material", "polyethylene PE 80");
  ASSERT_TRUE(w.crossing().pipe);
  EXPECT_EQ(w.crossing().pipe->material, "pe80");
  EXPECT_FALSE(w.panel.checks()->rows().empty());
  w.expect_opens_again();
}

// Every check of the answer stands in the list, with its number and how much of the limit is used.
TEST(PipePanel, Checks_ShowValueLimitAndUse) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    Page w("house-service", units);
    w.panel.refresh_now();
    const Assessment& now = w.document.assessment();
    ASSERT_EQ(w.panel.checks()->rows().size(), now.pipe_checks.size());
    for (std::size_t i = 0; i < now.pipe_checks.size(); ++i) {
      const PipeCheck& c = now.pipe_checks[i];
      const CheckRow& row = w.panel.checks()->rows()[i];
      EXPECT_TRUE(row.numbers.contains(QString::fromStdString(value_text(c, units)))) << c.code;
      EXPECT_EQ(row.used.isEmpty(), !c.utilisation) << c.code;
    }
  }
}

// A click on a check opens its working; the button copies it, formula, numbers, limit and source.
TEST(PipePanel, Click_OpensTheWorking_AndItIsCopied) {
  Page w("house-service");
  w.panel.resize(320, 3000);
  QCoreApplication::processEvents();
  CheckList* list = w.panel.checks();
  EXPECT_FALSE(w.panel.copy()->isVisible());
  for (std::size_t i = 0; i < list->rows().size(); ++i) {
    const QRect place = list->visualItemRect(list->item(static_cast<int>(i)));
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, place.center());
    const CheckRow& row = list->rows()[i];
    EXPECT_TRUE(w.panel.working().contains(row.name)) << row.code;
    const PipeCheck& c = w.document.assessment().pipe_checks[i];
    if (!c.value) continue;
    EXPECT_TRUE(w.panel.working().contains(QStringLiteral("from: "))) << row.code;
    EXPECT_EQ(w.panel.working().contains(QStringLiteral("\nlimit ")), c.limit.has_value()) << row.code;
    QTest::mouseClick(w.panel.copy(), Qt::LeftButton);
    EXPECT_EQ(QGuiApplication::clipboard()->text(), w.panel.working()) << row.code;
  }
}

TEST(PipePanel, Charts_FollowStationAndDepth) {
  Page w("house-service");
  w.panel.refresh_now();
  const auto at = [&](int step) {
    w.panel.station()->setValue(step);
    return w.panel.by_depth()->points(LoadLine::live);
  };
  // The road lies from 4.0 to 11.5 m of 14 m: the middle is under it, the very end is not.
  const QList<QPointF> under_the_road = at(100);
  // Deep down a truck's load is left out: the code allows it from 8 ft on.
  EXPECT_TRUE(std::any_of(under_the_road.begin(), under_the_road.end(), [](const QPointF& p) { return p.x() > 0; }));
  ASSERT_EQ(w.panel.by_depth()->pipe().size(), 2);
  const double station = 0.5 * (w.crossing().bore.launch.station.m + w.crossing().bore.exit.station.m);
  const LoadProfile profile = load_profile(w.crossing(), tables_for_tests(), w.document.assessment(), station);
  EXPECT_NEAR(w.panel.by_depth()->pipe().front().y(), *profile.pipe_depth_m, 1e-9);
  const auto ground = w.panel.along()->points(LoadLine::ground);
  ASSERT_EQ(static_cast<std::size_t>(ground.size()), w.document.assessment().loads.size());
  EXPECT_NEAR(ground.front().y() * 1e3, w.document.assessment().loads.front().earth_Pa, 1e-6);
}

// A drag or an edit elsewhere is followed.
TEST(PipePanel, LiveUpdate_LoadsFollowTheLaunch) {
  Page w("house-service");
  const double before = *check(w.document.assessment(), "pipe.earth")->value;
  Launch launch = w.crossing().bore.launch;
  launch.elevation.m -= 0.3;
  ASSERT_TRUE(w.document.change(QStringLiteral("deeper"), [&](Crossing& to) { to.bore.launch = launch; }));
  settle(w.panel);
  const CheckRow& row = w.panel.checks()->rows()[1];
  EXPECT_EQ(row.code, "pipe.earth");
  const std::string now = value_text(*check(w.document.assessment(), "pipe.earth"), UnitSystem::metric);
  EXPECT_TRUE(row.numbers.contains(QString::fromStdString(now))) << row.numbers.toStdString() << " for " << now;
  EXPECT_GT(*check(w.document.assessment(), "pipe.earth")->value, before);
}

// The page of the findings: whatever is picked can be copied, with its working where something was computed.
TEST(FindingsPanel, Copy_TakesFindingAndWorking) {
  TestWindow w("four-faults");
  EXPECT_FALSE(w.window.findings().copy()->isEnabled());
  const Assessment& now = w.window.document().assessment();
  ASSERT_GE(now.findings.size(), 4u);
  for (std::size_t i = 0; i < now.findings.size(); ++i) {
    w.window.findings().pick(static_cast<int>(i));
    QTest::mouseClick(w.window.findings().copy(), Qt::LeftButton);
    const QString copied = QGuiApplication::clipboard()->text();
    const Finding& finding = now.findings[i];
    EXPECT_TRUE(copied.startsWith(QString::fromStdString(finding_text(finding, UnitSystem::metric)))) << finding.code;
    EXPECT_EQ(copied.contains(QStringLiteral("from: ")), working_of(now, finding) != nullptr) << finding.code;
  }
}

// Whatever an entry accepts can be written, read again and judged.
TEST(PipeFields, EndsOfEveryRange_OpenAgainAndAreAnswered) {
  Page w("house-service");
  Crossing crossing = w.crossing();
  crossing.pipe->pull_by.set(PullBy::hose);
  std::vector<Field> all = pipe_size_fields(crossing, tables_for_tests());
  for (std::vector<Field> more : {pipe_pull_fields(crossing), pipe_use_fields(crossing)})
    std::move(more.begin(), more.end(), std::back_inserter(all));
  ASSERT_EQ(all.size(), 10u);
  for (const Field& field : all)
    for (const std::optional<double>& typed :
         {std::optional(field.low), std::optional(field.high), std::optional<double>()}) {
      Crossing changed = crossing;
      field.apply(changed, typed);
      const Result<Crossing> again = read_crossing(write_crossing(changed), tables_for_tests());
      ASSERT_TRUE(again) << field.label << ": " << again.error().english();
      EXPECT_EQ(*again, changed) << field.label;
      for (const PipeCheck& c : assess(*again, tables_for_tests()).pipe_checks)
        EXPECT_TRUE(!c.value || std::isfinite(*c.value)) << field.label << " " << c.code;
    }
}

TEST(PipePanel, NarrowColumn_ClipsNothing) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const int width : {240, 260, 370}) {
      Page w("house-service", units);
      w.expect_inside(width);
    }
}

}  // namespace
}  // namespace burrow

/// The page of the launches: real window, real events; the map and the drawing move one another.

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <memory>
#include <set>

#include "burrow/charts/launch_map_view.h"
#include "burrow/check/assess.h"
#include "burrow/words/headline.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

constexpr int quick_cells = 10;  // what the page does does not hang on how fine the map is

struct LaunchPage : TestWindow {
  explicit LaunchPage(const char* sample) : TestWindow(sample) {
    job().set_full_cells(quick_cells);
    window.side().show_page(SideColumn::Page::launch);
    settle();
  }
  LaunchSearchJob& job() { return window.side().launch_job(); }
  LaunchPanel& panel() { return window.side().launch(); }
  LaunchMapView& view() { return *panel().view(); }
  /// Until the full map stands on the screen.
  void settle() {
    ASSERT_TRUE(comes([&] { return job().map() && !job().running() && job().current(); }));
    burrow::settle(window);
  }
  [[nodiscard]] MapPlace here() { return place_of(crossing(), job().over()); }
  void on_map(QEvent::Type type, const QPointF& at, Qt::MouseButton button, Qt::MouseButtons buttons) {
    QMouseEvent event(type, at, view().mapToGlobal(at), button, buttons, Qt::NoModifier);
    QCoreApplication::sendEvent(&view(), &event);
    QCoreApplication::processEvents();
  }
  int steps() { return window.document().undo_stack().index(); }
};

TEST(LaunchPage, Shown_SearchesByItself_CoarseThenFull) {
  TestWindow w("house-service");
  LaunchSearchJob& job = w.window.side().launch_job();
  EXPECT_EQ(job.full_cells(), 64);
  job.set_full_cells(quick_cells);
  EXPECT_FALSE(job.map());
  settle(w.window);
  EXPECT_FALSE(job.running());  // nobody looks
  bool coarse_seen = false;
  QObject::connect(&job, &LaunchSearchJob::changed, [&] { coarse_seen |= job.map() && job.coarse(); });
  w.window.side().show_page(SideColumn::Page::launch);
  ASSERT_TRUE(comes([&] { return job.map() && !job.running(); }));
  EXPECT_TRUE(coarse_seen);
  EXPECT_EQ(job.map()->across.count, quick_cells);
  LaunchMapOptions options;
  options.cells = quick_cells;
  EXPECT_TRUE(*job.map() == search_launches(w.crossing(), w.window.document().tables(), options));
}

TEST(LaunchPage, DragOfTheDot_MovesTheDrawing_OneStep) {
  LaunchPage w("house-service");
  const Launch before = w.crossing().bore.launch;
  const MapPlace from = w.here();
  const MapPlace to{from.across - 0.02, from.down + 0.4};
  const QPointF a = w.view().at(from), b = w.view().at(to);
  w.on_map(QEvent::MouseButtonPress, a, Qt::LeftButton, Qt::LeftButton);
  ASSERT_TRUE(w.view().dragging());
  for (int i = 1; i <= 5; ++i) w.on_map(QEvent::MouseMove, a + (b - a) * i / 5, Qt::NoButton, Qt::LeftButton);
  EXPECT_NEAR(w.here().across, to.across, 1e-3);  // already while it is dragged
  EXPECT_NEAR(w.here().down, to.down, 0.01);
  EXPECT_EQ(w.steps(), 0);
  w.on_map(QEvent::MouseButtonRelease, b, Qt::LeftButton, Qt::NoButton);
  EXPECT_EQ(w.steps(), 1);
  EXPECT_TRUE(w.job().current());  // the map is still the map
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing().bore.launch, before);
}

TEST(LaunchPage, EscWhileDragging_PutsBack) {
  LaunchPage w("house-service");
  const Launch before = w.crossing().bore.launch;
  const QPointF a = w.view().at(w.here());
  w.on_map(QEvent::MouseButtonPress, a, Qt::LeftButton, Qt::LeftButton);
  w.on_map(QEvent::MouseMove, a + QPointF(30, 30), Qt::NoButton, Qt::LeftButton);
  EXPECT_NE(w.crossing().bore.launch, before);
  QTest::keyClick(&w.view(), Qt::Key_Escape);
  EXPECT_EQ(w.crossing().bore.launch, before);
  EXPECT_EQ(w.steps(), 0);
  w.on_map(QEvent::MouseButtonRelease, a, Qt::LeftButton, Qt::NoButton);
  EXPECT_EQ(w.steps(), 0);
}

TEST(LaunchPage, PressBesideTheDot_MovesNothing) {
  LaunchPage w("house-service");
  const QPointF aside = w.view().at(w.here()) + QPointF(60, -40);
  w.on_map(QEvent::MouseButtonPress, aside, Qt::LeftButton, Qt::LeftButton);
  w.on_map(QEvent::MouseMove, aside + QPointF(30, 30), Qt::NoButton, Qt::LeftButton);
  w.on_map(QEvent::MouseButtonRelease, aside, Qt::LeftButton, Qt::NoButton);
  EXPECT_EQ(w.steps(), 0);
}

TEST(LaunchPage, DragInTheDrawing_MovesTheDot) {
  LaunchPage w("house-service");
  const QPointF before = w.view().at(w.here());
  const QPointF pit = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  w.drag(pit, pit + QPointF(0, 25));
  burrow::settle(w.window);
  EXPECT_GT(w.view().at(w.here()).y(), before.y() + 3);  // deeper is further down
}

TEST(LaunchPage, TakeTheBest_OneStepAndItIsWhatAssessSays) {
  LaunchPage w("house-service");
  ASSERT_TRUE(w.job().map()->best);
  const LaunchCell best = *w.job().map()->best;
  EXPECT_NE(best.verdict, Verdict::stop);
  QTest::mouseClick(w.panel().take_best(), Qt::LeftButton);
  EXPECT_EQ(w.steps(), 1);
  EXPECT_NEAR(w.here().across, best.place.across, 1e-4);
  EXPECT_NEAR(w.here().down, best.place.down, 1e-3);
  const Assessment& now = w.window.document().assessment();
  EXPECT_NE(now.verdict, Verdict::stop);
  EXPECT_EQ(now.verdict, best.assessed);
}

TEST(LaunchPage, PointerTellsWhatBinds) {
  LaunchPage w("house-service");
  EXPECT_TRUE(w.panel().pointed()->text().startsWith(QStringLiteral("As it stands: 1.33 m deep")))
      << w.panel().pointed()->text().toStdString();
  const QPointF at = w.view().at({0.05, 0.6});
  w.on_map(QEvent::MouseMove, at, Qt::NoButton, Qt::NoButton);
  const QString text = w.panel().pointed()->text();
  EXPECT_TRUE(text.startsWith(QStringLiteral("Here: "))) << text.toStdString();
  // At 5 % from 0.6 m the path comes out of the ground: nothing else about it is told.
  EXPECT_TRUE(text.contains(QStringLiteral("does not arrive"))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("chance to arrive"))) << text.toStdString();
  w.on_map(QEvent::MouseMove, w.view().at({-0.01, 1.2}), Qt::NoButton, Qt::NoButton);
  const QString near_main = w.panel().pointed()->text();
  EXPECT_TRUE(near_main.contains(QStringLiteral("short"))) << near_main.toStdString();
  EXPECT_TRUE(near_main.contains(QStringLiteral("gas main"))) << near_main.toStdString();
  QEvent leave(QEvent::Leave);
  QCoreApplication::sendEvent(&w.view(), &leave);
  EXPECT_TRUE(w.panel().pointed()->text().startsWith(QStringLiteral("As it stands")));
}

// Moved since it was searched: the page says of the launch as it stands what the bar says, not what another one is
// like.
TEST(LaunchPage, Moved_SaysWhatTheBarSays) {
  LaunchPage w("house-service");
  raise_launch(w.window.document(), 0.2);
  w.panel().refresh_now();
  const std::string said = headline(w.window.document().assessment(), UnitSystem::metric);
  EXPECT_NE(w.panel().pointed()->text().toStdString().find(said), std::string::npos)
      << w.panel().pointed()->text().toStdString() << "\n"
      << said;
}

// The bar over the drawing says incomplete: so does the page of the same launch, and nowhere "within limits".
TEST(LaunchPage, MissingData_SaysWhatTheBarSays) {
  LaunchPage w("first-lesson");
  UtilitySearch search = w.crossing().site.utility_search;
  search.done = false;
  w.window.document().change(QStringLiteral("not searched"), [&](Crossing& to) { to.site.utility_search = search; });
  w.settle();
  ASSERT_EQ(w.window.document().assessment().verdict, Verdict::incomplete);
  EXPECT_TRUE(w.panel().pointed()->text().contains(QStringLiteral("incomplete (")))
      << w.panel().visible_text().toStdString();
  EXPECT_TRUE(w.panel().visible_text().contains(QStringLiteral("Incomplete: ")))
      << w.panel().visible_text().toStdString();
  EXPECT_FALSE(w.panel().visible_text().contains(QStringLiteral("within limits")))
      << w.panel().visible_text().toStdString();
}

TEST(LaunchPage, ArrowKeys_OneStepEach) {
  LaunchPage w("house-service");
  const MapPlace from = w.here();
  QTest::keyClick(&w.view(), Qt::Key_Down);
  EXPECT_NEAR(w.here().down, from.down + 0.01, 0.006);
  QTest::keyClick(&w.view(), Qt::Key_Right);
  EXPECT_NEAR(w.here().across, from.across + 0.001, 1e-9);
  EXPECT_EQ(w.steps(), 2);
}

TEST(LaunchPage, ChangeOfTheSite_LooksOldThenIsSearchedAgain) {
  LaunchPage w("house-service");
  w.window.document().change(QStringLiteral("more cover"),
                             [](Crossing& c) { c.site.surface.front().required_cover = Length{1.4}; });
  EXPECT_FALSE(w.job().current());
  EXPECT_FALSE(w.panel().take_best()->isEnabled());  // at once, without a turn of the event loop
  w.settle();
  EXPECT_TRUE(w.panel().take_best()->isEnabled());
}

TEST(LaunchPage, NewestRequestWins) {
  LaunchPage w("house-service");
  for (int i = 0; i < 5; ++i) {
    ToolChoice tool = w.crossing().bore.tool;
    tool.tool_class = i % 2 ? "tool-65" : "tool-95";
    w.window.document().change(QStringLiteral("tool"), [&](Crossing& to) { to.bore.tool = tool; });
    w.job().run();
  }
  w.settle();
  LaunchMapOptions options;
  options.cells = quick_cells;
  EXPECT_TRUE(*w.job().map() == search_launches(w.crossing(), w.window.document().tables(), options));
}

TEST(LaunchPage, Cancel_KeepsTheMapBefore) {
  LaunchPage w("house-service");
  const auto before = w.job().map();
  w.job().run();
  w.job().cancel();
  EXPECT_FALSE(w.job().running());
  EXPECT_EQ(w.job().map(), before);
  // The worker takes one search after the other: when the next has answered, the cancelled one has had its chance.
  std::set<std::shared_ptr<const LaunchMap>> seen;
  QObject::connect(&w.job(), &LaunchSearchJob::changed, &w.window, [&] { seen.insert(w.job().map()); });
  w.job().run();
  w.settle();
  seen.erase(before);
  EXPECT_EQ(seen.size(), 2U) << "the coarse and the full map of the second search alone";
}

TEST(LaunchPage, StationAndOffset_DragMovesThePit) {
  LaunchPage w("house-service");
  w.job().set_over(MapOver::station_and_offset);
  w.settle();
  const MapPlace from = w.here();
  const QPointF a = w.view().at(from), b = w.view().at({from.across - 0.5, from.down + 0.6});
  EXPECT_LT(b.y(), a.y());  // left is up, as in the plan
  w.on_map(QEvent::MouseButtonPress, a, Qt::LeftButton, Qt::LeftButton);
  w.on_map(QEvent::MouseMove, b, Qt::NoButton, Qt::LeftButton);
  w.on_map(QEvent::MouseButtonRelease, b, Qt::LeftButton, Qt::NoButton);
  EXPECT_NEAR(w.crossing().bore.launch.station.m, from.across - 0.5, 0.02);
  EXPECT_NEAR(w.crossing().bore.launch.offset->m, from.down + 0.6, 0.02);
  EXPECT_EQ(w.steps(), 1);
}

TEST(LaunchPage, ToolsOnDemand_RowsSayWhy) {
  LaunchPage w("house-service");
  QTest::mouseClick(w.panel().tools_button(), Qt::LeftButton);
  ASSERT_TRUE(comes([&] { return w.job().tools() && !w.job().running(); }));
  burrow::settle(w.window);
  const QString shown_text = w.panel().visible_text();
  EXPECT_TRUE(shown_text.contains(QStringLiteral("(now)"))) << shown_text.toStdString();
  EXPECT_TRUE(shown_text.contains(QStringLiteral("the pipe is wider than the hole"))) << shown_text.toStdString();
}

TEST(LaunchPage, AnotherCrossing_ForgetsTheMap) {
  LaunchPage w("house-service");
  w.job().run();
  ASSERT_TRUE(w.window.document().open(sample_path("first-lesson")));
  w.settle();
  LaunchMapOptions options;
  options.cells = quick_cells;
  EXPECT_TRUE(*w.job().map() == search_launches(w.crossing(), w.window.document().tables(), options));
}

TEST(LaunchPage, RegionColours_ToldApartInBothThemes) {
  for (const Theme& theme : {Theme::light(), Theme::night()})
    for (int i = 0; i < region_colours; ++i)
      for (int k = 0; k < i; ++k) {
        const QColor a = region_colour(i, theme), b = region_colour(k, theme);
        const int apart = std::abs(a.red() - b.red()) + std::abs(a.green() - b.green()) + std::abs(a.blue() - b.blue());
        EXPECT_GT(apart, 60) << i << k;
      }
}

}  // namespace
}  // namespace burrow

/// Things drawn by clicks in the real window: each kind, its undo, Esc, Backspace, what is typed on the way; and that
/// nothing is made up.

#include "burrow/drawing/sketch.h"

#include <gtest/gtest.h>

#include <QMenu>
#include <QMenuBar>
#include <set>

#include "burrow/crossing/find.h"
#include "burrow/document/several.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct SketchWindow : TestWindow {
  explicit SketchWindow(const char* sample = "house-service") : TestWindow(sample) {
    window.drawing().set_dimensions(false);
    window.drawing().show_stations(-4, 21, false);
    window.drawing().setFocus();
    settle(window);
  }
  DrawingView& drawing() { return window.drawing(); }
  int steps() { return window.document().undo_stack().index(); }
  QPointF plan(double x, double y) { return drawing().frame().above(x, y); }
  QPointF side(double x, double z) { return drawing().frame().side(x, z); }
  void click_there(const QPointF& at) {
    mouse(QEvent::MouseMove, at, Qt::NoButton, Qt::NoButton);
    press(at);
    release(at);
  }
  void type(const char* text) {
    QTest::keyClicks(&drawing(), QLatin1String(text));
    QCoreApplication::processEvents();
  }
  void expect_opens_again() {
    const Result<Crossing> again = read_crossing(write_crossing(crossing()), tables_for_tests());
    ASSERT_TRUE(again) << again.error().english();
  }
  double ground_at(double x) { return elevation_at(crossing().site.ground, x); }
};

TEST(Sketch, Utility_ByItsBends_DepthTypedOnTheWay_TheRestUnknown) {
  SketchWindow w;
  const std::size_t before = w.crossing().site.utilities.size();
  w.drawing().begin_sketch(SketchKind::utility);
  w.click_there(w.plan(5, -2));
  w.type("1.2");
  w.click_there(w.plan(5.5, 0.5));
  w.click_there(w.plan(6, 2));
  EXPECT_EQ(w.steps(), 0) << "nothing is entered before it is finished";
  w.key(Qt::Key_Return);
  ASSERT_EQ(w.crossing().site.utilities.size(), before + 1);
  EXPECT_EQ(w.steps(), 1);
  const Utility& fresh = w.crossing().site.utilities.back();
  ASSERT_EQ(fresh.path.size(), 3u);
  EXPECT_NEAR(fresh.path[0].x_m, 5, 0.02);
  EXPECT_NEAR(fresh.path[0].y_m, -2, 0.02);
  ASSERT_TRUE(fresh.path[0].z_m);
  EXPECT_NEAR(*fresh.path[0].z_m, w.ground_at(fresh.path[0].x_m) - 1.2, 1e-9);
  EXPECT_FALSE(fresh.path[1].z_m);
  EXPECT_FALSE(fresh.path[2].z_m);
  EXPECT_EQ(fresh.kind, UtilityKind::unknown);
  EXPECT_FALSE(fresh.outside_diameter);
  EXPECT_FALSE(fresh.status.entered);
  EXPECT_EQ(w.drawing().picked().id, fresh.id);
  EXPECT_NE(w.window.document().assessment().verdict, Verdict::within_limits);
  w.expect_opens_again();
  w.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing().site.utilities.size(), before);
}

TEST(Sketch, Utility_DepthInFeet_AndWhatIsNoDepth_StaysTyped) {
  SketchWindow w;
  w.drawing().begin_sketch(SketchKind::utility);
  w.click_there(w.plan(5, -2));
  w.type("4 ft");
  w.key(Qt::Key_Return);
  EXPECT_EQ(w.steps(), 0) << "one point is no line";
  w.type("12 xx");
  w.click_there(w.plan(6, 2));
  ASSERT_TRUE(w.drawing().sketch());
  EXPECT_EQ(w.drawing().sketch()->points().size(), 1u) << "the click waits until the depth is understood";
  EXPECT_EQ(w.drawing().sketch()->typed(), QStringLiteral("12 xx"));
  for (int i = 0; i < 5; ++i) w.key(Qt::Key_Backspace);
  w.click_there(w.plan(6, 2));
  w.key(Qt::Key_Return);
  ASSERT_EQ(w.steps(), 1);
  EXPECT_NEAR(*w.crossing().site.utilities.back().path[0].z_m, w.ground_at(5) - 4 * 0.3048, 0.01);
}

TEST(Sketch, Esc_Backspace_AndTheFileOfANewerVersion) {
  SketchWindow w;
  const Crossing before = w.crossing();
  w.drawing().begin_sketch(SketchKind::utility);
  w.click_there(w.plan(5, -2));
  w.click_there(w.plan(6, 2));
  w.key(Qt::Key_Backspace);
  EXPECT_EQ(w.drawing().sketch()->points().size(), 1u);
  w.key(Qt::Key_Escape);
  EXPECT_FALSE(w.drawing().sketch());
  EXPECT_EQ(w.crossing(), before);
  EXPECT_EQ(w.steps(), 0);
  w.drawing().begin_sketch(SketchKind::tree);
  w.key(Qt::Key_Backspace);
  EXPECT_FALSE(w.drawing().sketch()) << "with nothing left it ends";
  Crossing newer = before;
  newer.version = known_file_version + 1;
  w.window.document().start_from(newer, false);
  w.drawing().begin_sketch(SketchKind::utility);
  EXPECT_FALSE(w.drawing().sketch());
}

struct Stretch {
  SketchKind kind;
  SurfaceKind becomes;
};
class SketchStretch : public testing::TestWithParam<Stretch> {};

TEST_P(SketchStretch, ByTwoClicks_ByADrag_ByTyping) {
  SketchWindow w;
  const auto check = [&](double from, double to, double within) {
    const SurfaceFeature& fresh = w.crossing().site.surface.back();
    EXPECT_EQ(fresh.kind, GetParam().becomes);
    ASSERT_TRUE(fresh.from && fresh.to);
    EXPECT_NEAR(fresh.from->m, from, within);
    EXPECT_NEAR(fresh.to->m, to, within);
    EXPECT_FALSE(fresh.permission.entered);
    EXPECT_FALSE(fresh.rule || fresh.required_cover || fresh.traffic);
    EXPECT_TRUE(fresh.name.empty());
    w.expect_opens_again();
  };
  w.drawing().begin_sketch(GetParam().kind);
  w.click_there(w.plan(9, 1));
  w.click_there(w.plan(6, -1));
  check(6, 9, 0.02);
  w.drawing().begin_sketch(GetParam().kind);
  w.drag(w.side(5, 101.9), w.side(7, 101.9));
  check(5, 7, 0.02);
  w.drawing().begin_sketch(GetParam().kind);
  w.type("4.25");
  w.key(Qt::Key_Return);
  EXPECT_EQ(w.steps(), 2);
  w.type("11.2 m");
  w.key(Qt::Key_Return);
  check(4.25, 11.2, 1e-9);
  EXPECT_EQ(w.steps(), 3);
}

INSTANTIATE_TEST_SUITE_P(Kinds, SketchStretch,
                         testing::Values(Stretch{SketchKind::road, SurfaceKind::road},
                                         Stretch{SketchKind::track, SurfaceKind::track},
                                         Stretch{SketchKind::footway, SurfaceKind::footway},
                                         Stretch{SketchKind::drive, SurfaceKind::drive},
                                         Stretch{SketchKind::ditch, SurfaceKind::ditch}));

TEST(Sketch, Road_ThatNobodyAskedFor_IsMissingInTheVerdict) {
  SketchWindow w;
  w.drawing().begin_sketch(SketchKind::road);
  w.drag(w.plan(5, 1), w.plan(9, -1));
  const std::string id = w.crossing().site.surface.back().id;
  const auto& findings = w.window.document().assessment().findings;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(),
                          [&](const Finding& f) { return f.subject == id && f.code.starts_with("missing."); }));
}

TEST(Sketch, Building_ByCorners_ItsEdgesHaveGripsAfter) {
  SketchWindow w;
  w.drawing().begin_sketch(SketchKind::building);
  w.drag(w.plan(16, 1), w.plan(18, -1));
  const SurfaceFeature fresh = w.crossing().site.surface.back();
  EXPECT_EQ(fresh.kind, SurfaceKind::building);
  ASSERT_EQ(fresh.outline.size(), 4u);
  EXPECT_FALSE(fresh.founding_elevation || fresh.structure);
  EXPECT_EQ(w.drawing().picked().id, fresh.id);
  w.expect_opens_again();
  const QPointF corner = w.plan(fresh.outline[1].x_m, fresh.outline[1].y_m);
  w.drag(corner, corner + QPointF(30, 0));
  const SurfaceFeature after = w.crossing().site.surface.back();
  EXPECT_GT(after.outline[1].x_m, fresh.outline[1].x_m + 0.1);
  EXPECT_EQ(after.outline[3], fresh.outline[3]);
  EXPECT_EQ(w.steps(), 2);
}

TEST(Sketch, Boundary_Tree_Machine_TestHole) {
  SketchWindow w;
  w.drawing().begin_sketch(SketchKind::boundary);
  w.click_there(w.plan(3, -2));
  w.click_there(w.plan(3, 2));
  w.key(Qt::Key_Return);
  EXPECT_EQ(w.crossing().site.boundaries.back().line.size(), 2u);
  w.drawing().begin_sketch(SketchKind::tree);
  w.click_there(w.plan(8, 1.5));
  w.click_there(w.plan(9, 1.5));
  ASSERT_FALSE(w.crossing().site.trees.empty());
  EXPECT_NEAR(w.crossing().site.trees.back().protection_radius.m, 1, 0.03);
  w.drawing().begin_sketch(SketchKind::tree);
  w.click_there(w.plan(8, -1.5));
  w.type("2.5 m");
  w.key(Qt::Key_Return);
  EXPECT_DOUBLE_EQ(w.crossing().site.trees.back().protection_radius.m, 2.5);
  const std::size_t machines = w.crossing().site.plant.size();
  w.drawing().begin_sketch(SketchKind::machine);
  w.click_there(w.plan(1, 1));
  w.click_there(w.plan(3, 2));
  w.key(Qt::Key_Return);
  EXPECT_EQ(w.crossing().site.plant.size(), machines) << "a machine that weighs nothing would look harmless";
  ASSERT_TRUE(w.drawing().sketch());
  w.type("40 kN");
  w.key(Qt::Key_Return);
  ASSERT_EQ(w.crossing().site.plant.size(), machines + 1);
  EXPECT_DOUBLE_EQ(w.crossing().site.plant.back().load.N, 40e3);
  w.drawing().begin_sketch(SketchKind::test_hole);
  const Utility& line = w.crossing().site.utilities.front();
  const double y = 1.0, t = (y - line.path[0].y_m) / (line.path[1].y_m - line.path[0].y_m);
  const double x = line.path[0].x_m + t * (line.path[1].x_m - line.path[0].x_m);
  w.click_there(w.plan(x + 0.1, y));
  const TestHole& hole = w.crossing().site.test_holes.back();
  EXPECT_EQ(hole.utility, line.id) << "near a line it belongs to it";
  EXPECT_NEAR(hole.station.m, x, 0.02);
  EXPECT_FALSE(hole.elevation) << "what nobody measured is not known";
  w.expect_opens_again();
}

TEST(Sketch, GroundPoint_WaterPoint_Stratum_InTheSideElevation) {
  SketchWindow w;
  const std::size_t ground = w.crossing().site.ground.size();
  w.drawing().begin_sketch(SketchKind::ground_point);
  w.click_there(w.plan(5, 0));
  EXPECT_EQ(w.crossing().site.ground.size(), ground) << "the plan has no levels";
  w.click_there(w.side(5, 102.1));
  ASSERT_EQ(w.crossing().site.ground.size(), ground + 1);
  EXPECT_EQ(w.drawing().picked().kind, ItemKind::ground);
  w.drawing().begin_sketch(SketchKind::ground_point);
  w.type("102.37 m");
  w.click_there(w.side(6, 101));
  EXPECT_DOUBLE_EQ(w.crossing().site.ground[static_cast<std::size_t>(w.drawing().picked().index)].elevation_m, 102.37)
      << "the level typed before the click";
  w.window.document().change(QStringLiteral("no water"), [](Crossing& c) { c.site.water.reset(); });
  w.drawing().begin_sketch(SketchKind::water_point);
  w.click_there(w.side(2, 100.6));
  ASSERT_TRUE(w.crossing().site.water);
  EXPECT_EQ(w.crossing().site.water->size(), 1u);
  w.expect_opens_again();
  const std::size_t strata = w.crossing().site.strata.size();
  w.drawing().begin_sketch(SketchKind::stratum, "stiff-clay");
  w.click_there(w.side(2, 100.7));
  w.click_there(w.side(1, 100.7));
  EXPECT_EQ(w.drawing().sketch()->points().size(), 1u) << "from left to right";
  w.click_there(w.side(9, 100.8));
  w.type("100.5");
  w.key(Qt::Key_Return);
  ASSERT_EQ(w.crossing().site.strata.size(), strata + 1);
  const Stratum& fresh = w.crossing().site.strata.back();
  EXPECT_EQ(fresh.soil, "stiff-clay");
  EXPECT_FALSE(fresh.known.entered) << "how well it is known nobody said";
  ASSERT_EQ(fresh.top->size(), 2u);
  EXPECT_DOUBLE_EQ(fresh.top->back().elevation_m, 100.5);
  w.expect_opens_again();
}

/// Every entry of the menu begins a sketch of its own.
TEST(Sketch, InsertMenu_EachEntryDraws) {
  SketchWindow w;
  const QMenu* insert = nullptr;
  for (const QAction* menu : w.window.menuBar()->actions())
    if (menu->text().contains(QStringLiteral("Insert"))) insert = menu->menu();
  ASSERT_TRUE(insert);
  std::set<int> kinds;
  const std::function<void(const QMenu&)> walk = [&](const QMenu& menu) {
    for (QAction* action : menu.actions()) {
      if (action->menu()) {
        walk(*action->menu());
        continue;
      }
      if (action->isSeparator()) continue;
      w.drawing().settle();
      action->trigger();
      if (w.drawing().sketch()) kinds.insert(static_cast<int>(w.drawing().sketch()->kind()));
    }
  };
  walk(*insert);
  EXPECT_EQ(kinds.size(), static_cast<std::size_t>(SketchKind::stratum) + 1) << "all of them";
}

TEST(Sketch, InsertHere_SetsTheFirstPoint) {
  SketchWindow w;
  const QPointF at = w.plan(1.5, 1.5);
  QMenu menu;
  w.window.fill_drawing_menu(menu, w.drawing().under(at), at.toPoint());
  QMenu* here = nullptr;
  for (const QAction* action : menu.actions())
    if (action->menu()) here = action->menu();
  ASSERT_TRUE(here);
  here->actions().front()->trigger();
  ASSERT_TRUE(w.drawing().sketch());
  ASSERT_EQ(w.drawing().sketch()->points().size(), 1u);
  EXPECT_NEAR(w.drawing().sketch()->points().front().station_m, 1.5, 0.03);
}

// Single letters and keys of the drawing are typed into it, and run no command.
TEST(Sketch, KeysGoIntoIt) {
  SketchWindow w;
  const Crossing before = w.crossing();
  w.drawing().begin_sketch(SketchKind::utility);
  w.click_there(w.plan(5, -2));
  // Zooming stays possible meanwhile.
  for (const Qt::Key key : {Qt::Key_N, Qt::Key_D, Qt::Key_Plus, Qt::Key_Space, Qt::Key_Up, Qt::Key_Home}) w.key(key);
  EXPECT_EQ(w.crossing(), before);
  EXPECT_TRUE(w.drawing().picked().none());
  ASSERT_TRUE(w.drawing().sketch());
}

}  // namespace
}  // namespace burrow

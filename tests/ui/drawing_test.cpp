/// The real window, driven with mouse and keys.

#include <gtest/gtest.h>

#include <QClipboard>
#include <QDir>
#include <QLineEdit>
#include <QListView>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QWheelEvent>

#include "burrow/drawing/flags.h"
#include "burrow/drawing/handles.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

QPointF grip(TestWindow& w, ItemKind kind, const std::string& id = {}) {
  return w.window.drawing().place_of({kind, id, -1});
}

const Utility& utility(TestWindow& w, const std::string& name) {
  for (const Utility& u : w.crossing().site.utilities)
    if (u.name == name) return u;
  throw std::runtime_error("no utility " + name);
}

TEST(Window, OpensASampleAndJudgesIt) {
  TestWindow w("house-service");
  ASSERT_TRUE(w.opened);
  EXPECT_EQ(w.window.document().assessment().verdict, Verdict::stop);
  EXPECT_FALSE(w.window.document().modified());
}

TEST(Drag, LaunchPit_MovesStationAndLevel_OneUndoStep_FileHoldsIt) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const Frame frame = w.window.drawing().frame();
  const QPointF from = grip(w, ItemKind::launch);
  w.drag(from, from + QPointF(0.5 * frame.px_per_m, 0.2 * frame.px_per_m * frame.exaggeration));
  EXPECT_NEAR(w.crossing().bore.launch.station.m, before.bore.launch.station.m + 0.5, 0.0051);
  EXPECT_NEAR(w.crossing().bore.launch.elevation.m, before.bore.launch.elevation.m - 0.2, 0.0051);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);

  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("dragged.crossing"));
  ASSERT_TRUE(w.window.document().save_as(path).has_value());
  const auto text = read_text_file(path.toStdString());
  ASSERT_TRUE(text.has_value());
  const auto read = read_crossing(*text, tables_for_tests());
  ASSERT_TRUE(read.has_value());
  EXPECT_EQ(*read, w.crossing());
  EXPECT_FALSE(w.window.document().modified());

  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
  EXPECT_TRUE(w.window.document().modified());
  w.window.document().undo_stack().redo();
  EXPECT_EQ(w.crossing(), *read);
}

TEST(Drag, Escape_PutsEverythingBack) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const QPointF from = grip(w, ItemKind::launch);
  w.press(from);
  w.move(from + QPointF(20, 10));
  w.move(from + QPointF(60, 30));
  EXPECT_NE(w.crossing(), before);
  EXPECT_TRUE(w.window.drawing().dragging());
  w.key(Qt::Key_Escape);
  EXPECT_EQ(w.crossing(), before);
  w.release(from + QPointF(60, 30));
  EXPECT_EQ(w.crossing(), before);
  EXPECT_EQ(w.window.document().undo_stack().count(), 0);
}

TEST(Drag, ReassessesWhileMoving) {
  TestWindow w("house-service");
  const double cover = *w.window.document().assessment().cover.least_m;
  const QPointF from = grip(w, ItemKind::launch);
  const double down = 0.3 * w.window.drawing().frame().px_per_m * w.window.drawing().exaggeration();
  w.press(from);
  w.move(from + QPointF(0, down / 2));
  w.move(from + QPointF(0, down));
  QCoreApplication::processEvents();
  EXPECT_NEAR(*w.window.document().assessment().cover.least_m, cover + 0.3, 0.05);
  w.release(from + QPointF(0, down));
}

TEST(Drag, Grade_TurnsAboutTheLaunch) {
  TestWindow w("house-service");
  const QPointF from = grip(w, ItemKind::grade);
  const double run = grade_grip_station(w.crossing()) - w.crossing().bore.launch.station.m;
  const double before = w.crossing().bore.launch.grade.v;
  const double elevation = w.crossing().bore.launch.elevation.m;
  w.drag(from, from + QPointF(0, 0.1 * w.window.drawing().frame().px_per_m * w.window.drawing().exaggeration()));
  EXPECT_NEAR(w.crossing().bore.launch.grade.v, before - 0.1 / run, 0.0006);
  EXPECT_EQ(w.crossing().bore.launch.elevation.m, elevation);
}

TEST(Drag, ExitPit_MovesItsStation) {
  TestWindow w("house-service");
  const double before = w.crossing().bore.exit.station.m;
  const QPointF from = grip(w, ItemKind::exit);
  w.drag(from, from + QPointF(-1.0 * w.window.drawing().frame().px_per_m, 0));
  EXPECT_NEAR(w.crossing().bore.exit.station.m, before - 1.0, 0.0051);
}

TEST(Drag, Utility_InBothViews) {
  TestWindow w("house-service");
  const Utility gas = utility(w, "gas main");
  const double px = w.window.drawing().frame().px_per_m;
  w.click(grip(w, ItemKind::utility, gas.id));
  w.drag(grip(w, ItemKind::utility, gas.id),
         grip(w, ItemKind::utility, gas.id) + QPointF(0, -0.2 * px * w.window.drawing().exaggeration()));
  for (std::size_t i = 0; i < gas.path.size(); ++i) {
    if (gas.path[i].z_m) {
      EXPECT_NEAR(*utility(w, "gas main").path[i].z_m, *gas.path[i].z_m + 0.2, 0.0051);
    }
  }

  const Frame& frame = w.window.drawing().frame();
  const Utility now = utility(w, "gas main");
  const QPointF on_plan = frame.above(now.path.front().x_m + (now.path.back().x_m - now.path.front().x_m) * 0.44,
                                      now.path.front().y_m + (now.path.back().y_m - now.path.front().y_m) * 0.44);
  ASSERT_TRUE(frame.plan.contains(on_plan));
  w.drag(on_plan, on_plan + QPointF(0.4 * px, 0));
  EXPECT_NEAR(utility(w, "gas main").path.front().x_m, now.path.front().x_m + 0.4, 0.0051);
  EXPECT_EQ(w.window.document().undo_stack().count(), 2);
}

TEST(Drag, GroundAndStratumPoints) {
  TestWindow w("house-service");
  ASSERT_GE(w.crossing().site.ground.size(), 4u);
  const LevelPoint before = w.crossing().site.ground[3];
  const Frame frame = w.window.drawing().frame();
  const QPointF at = frame.side(before.station_m, before.elevation_m);
  w.click(at);
  w.drag(at, at + QPointF(0, -0.15 * frame.px_per_m * frame.exaggeration));
  EXPECT_NEAR(w.crossing().site.ground[3].elevation_m, before.elevation_m + 0.15, 0.0051);

  const auto layer = std::find_if(w.crossing().site.strata.begin(), w.crossing().site.strata.end(),
                                  [](const Stratum& s) { return s.top.has_value(); });
  ASSERT_NE(layer, w.crossing().site.strata.end());
  const std::string id = layer->id;
  const LevelLine top = *layer->top;
  std::size_t index = top.size();
  for (std::size_t i = 0; i < top.size(); ++i)
    if (frame.elevation.adjusted(20, 20, -20, -20).contains(frame.side(top[i].station_m, top[i].elevation_m)))
      index = i;
  ASSERT_LT(index, top.size());
  const QPointF knot = frame.side(top[index].station_m, top[index].elevation_m);
  w.click(knot);
  w.drag(knot, knot + QPointF(0, 0.1 * frame.px_per_m * frame.exaggeration));
  for (const Stratum& s : w.crossing().site.strata) {
    if (s.id == id) {
      EXPECT_NEAR((*s.top)[index].elevation_m, top[index].elevation_m - 0.1, 0.0051);
    }
  }
}

TEST(Drag, LockedThingStays) {
  TestWindow w("house-service");
  Crossing locked = w.crossing();
  locked.locks = {"/bore/launch/elevation_m"};
  w.window.document().start_from(locked, false);
  QCoreApplication::processEvents();
  const QPointF from = grip(w, ItemKind::launch);
  w.drag(from, from + QPointF(50, 30));
  EXPECT_EQ(w.crossing().bore.launch.elevation.m, locked.bore.launch.elevation.m);
  EXPECT_NE(w.crossing().bore.launch.station.m, locked.bore.launch.station.m);
}

TEST(Drag, WithTheMiddleButtonPansTheDrawing) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const Frame frame = w.window.drawing().frame();
  const QPointF sky(frame.elevation.left() + 30, frame.elevation.top() + 60);
  w.mouse(QEvent::MouseButtonPress, sky, Qt::MiddleButton, Qt::MiddleButton);
  w.mouse(QEvent::MouseMove, sky + QPointF(40, 0), Qt::NoButton, Qt::MiddleButton);
  w.mouse(QEvent::MouseButtonRelease, sky + QPointF(40, 0), Qt::MiddleButton, Qt::NoButton);
  EXPECT_EQ(w.crossing(), before);
  EXPECT_NEAR(w.window.drawing().frame().left_station_m, frame.left_station_m - 40 / frame.px_per_m, 1e-9);
}

TEST(Keys, ArrowsNudge_ReleaseIsOneStep) {
  TestWindow w("house-service");
  w.window.drawing().pick({ItemKind::launch, {}, -1});
  const Launch before = w.crossing().bore.launch;
  w.key(Qt::Key_Right);
  w.key(Qt::Key_Down, Qt::ShiftModifier);
  EXPECT_NEAR(w.crossing().bore.launch.station.m, before.station.m + 0.01, 1e-12);
  EXPECT_NEAR(w.crossing().bore.launch.elevation.m, before.elevation.m - 0.1, 1e-12);
  EXPECT_EQ(w.window.document().undo_stack().count(), 2);
  w.window.document().undo_stack().undo();
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing().bore.launch, before);
}

TEST(Keys, HeldArrowIsOneStep) {
  TestWindow w("house-service");
  w.window.drawing().pick({ItemKind::launch, {}, -1});
  for (int i = 0; i < 5; ++i) {
    QKeyEvent press(QEvent::KeyPress, Qt::Key_Up, Qt::NoModifier, QString(), i > 0);
    QCoreApplication::sendEvent(&w.window.drawing(), &press);
  }
  QKeyEvent release(QEvent::KeyRelease, Qt::Key_Up, Qt::NoModifier);
  QCoreApplication::sendEvent(&w.window.drawing(), &release);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
}

// A step that stays open keeps the file from being saved: the key may have been let go over another window.
TEST(Keys, ArrowWhoseReleaseNeverComes_IsOneStepAllTheSame) {
  TestWindow w("house-service");
  w.window.drawing().pick({ItemKind::launch, {}, -1});
  QKeyEvent press(QEvent::KeyPress, Qt::Key_Up, Qt::NoModifier);
  QCoreApplication::sendEvent(&w.window.drawing(), &press);
  EXPECT_TRUE(w.window.document().in_session());
  EXPECT_TRUE(comes([&] { return !w.window.document().in_session(); }));
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
}

TEST(Drag, ButtonWhoseReleaseNeverComes_EndsWithTheNextMove) {
  TestWindow w("house-service");
  const QPointF from = grip(w, ItemKind::launch);
  w.press(from);
  w.move(from + QPointF(20, 10));
  w.move(from + QPointF(60, 30));
  ASSERT_TRUE(w.window.document().in_session());
  const QPointF at = from + QPointF(61, 30);
  QWidget* canvas = w.window.drawing().viewport();
  QMouseEvent move(QEvent::MouseMove, at, canvas->mapToGlobal(at), Qt::NoButton, Qt::NoButton, Qt::NoModifier);
  QCoreApplication::sendEvent(canvas, &move);
  EXPECT_FALSE(w.window.document().in_session());
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
  w.release(at);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
}

TEST(Typing, EnterOpensTheCard_AnyUnitIsRead_WrongIsSaid) {
  TestWindow w("house-service");
  w.window.drawing().pick({ItemKind::launch, {}, -1});
  w.key(Qt::Key_Return);
  ASSERT_TRUE(w.window.value_card().isVisible());
  const auto& entries = w.window.value_card().entries();
  entries[1]->setText(QStringLiteral("331' 6\""));
  QTest::keyClick(entries[1], Qt::Key_Return);
  EXPECT_FALSE(w.window.value_card().isVisible());
  EXPECT_NEAR(w.crossing().bore.launch.elevation.m, 331.5 * 0.3048, 1e-9);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);

  const Crossing before = w.crossing();
  w.key(Qt::Key_Return);
  w.window.value_card().entries()[3]->setText(QStringLiteral("two"));
  QTest::keyClick(w.window.value_card().entries()[3], Qt::Key_Return);
  EXPECT_TRUE(w.window.value_card().isVisible());
  EXPECT_EQ(w.window.value_card().entries()[3]->text(), QStringLiteral("two"));
  EXPECT_EQ(w.crossing(), before);
  QTest::keyClick(w.window.value_card().entries()[3], Qt::Key_Escape);
  EXPECT_FALSE(w.window.value_card().isVisible());
}

TEST(Flags, AreInsideAndDoNotOverlap) {
  for (const char* sample : {"house-service", "four-faults", "sixty-utilities", "rail-siding"}) {
    TestWindow w(sample);
    const Document& document = w.window.document();
    const Scene scene{document.crossing(),        w.window.document().assessment(), document.tables(),
                      w.window.drawing().frame(), w.window.drawing().style(),       Interaction{}};
    const std::vector<Flag> flags = place_flag_lane(scene).flags;
    EXPECT_FALSE(flags.empty()) << sample;
    for (std::size_t i = 0; i < flags.size(); ++i) {
      EXPECT_TRUE(scene.frame.flags.contains(flags[i].box)) << sample << " " << flags[i].text.toStdString();
      for (std::size_t j = i + 1; j < flags.size(); ++j) EXPECT_FALSE(flags[i].box.intersects(flags[j].box)) << sample;
    }
  }
}

TEST(Findings, ListAndFlagsHaveTheSameNumbers_PickingGoesThere) {
  TestWindow w("four-faults");
  QListView* list = w.window.findings().list();
  w.window.findings().filter_bar()->show_all();
  ASSERT_EQ(list->model()->rowCount(), static_cast<int>(w.window.document().assessment().findings.size()));
  w.window.findings().pick(1);
  const Finding& finding = w.window.document().assessment().findings[1];
  EXPECT_EQ(part_subject(w.window.drawing().picked()), finding.subject);
  EXPECT_TRUE(
      w.window.findings().working().contains(QString::fromStdString(finding_text(finding, UnitSystem::metric))));
}

TEST(View, WheelZoomsAtThePointer) {
  TestWindow w("house-service");
  const Frame before = w.window.drawing().frame();
  const QPointF at = before.elevation.center() + QPointF(120, 30);
  QWheelEvent wheel(at, w.viewport()->mapToGlobal(at), QPoint(), QPoint(0, 240), Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(w.viewport(), &wheel);
  const Frame after = w.window.drawing().frame();
  EXPECT_GT(after.px_per_m, before.px_per_m * 1.2);
  EXPECT_NEAR(after.station_m(at.x()), before.station_m(at.x()), 1e-9);
  EXPECT_NEAR(after.elevation_m(at.y()), before.elevation_m(at.y()), 1e-9);
}

TEST(View, BothViewsShareTheStationScale) {
  const Frame frame = TestWindow("car-park-duct").window.drawing().frame();
  EXPECT_DOUBLE_EQ(frame.side(7.5, 0).x(), frame.above(7.5, 0).x());
  EXPECT_DOUBLE_EQ(frame.elevation.left(), frame.plan.left());
}

// The plan is kept as a picture: points that are imported, moved or taken back are painted all the same. The second
// route is a frame of another size, for which everything is painted afresh.
TEST(View, SurveyedPointsComeAndGoInThePlan) {
  TestWindow w("house-service");
  const auto plan = [&] {
    QCoreApplication::processEvents();
    return w.viewport()->grab(w.window.drawing().frame().plan.toRect()).toImage();
  };
  const auto afresh = [&] {
    for (const int by : {-40, 40}) {
      w.window.resize(w.window.width() + by, w.window.height());
      QCoreApplication::processEvents();
      w.window.drawing().zoom_to_fit();
    }
    return plan();
  };
  const QImage bare = afresh();
  // Far from the pits: the answer, and with it all else in the plan, stays as it is.
  const auto put = [&](double offset_m) {
    w.window.document().change(QStringLiteral("survey"), [offset_m](Crossing& c) {
      const double middle = (c.bore.launch.station.m + c.bore.exit.station.m) / 2;
      c.site.ground_points = {{middle, offset_m, c.site.ground.front().elevation_m}};
    });
  };
  put(1.6);
  const QImage with = plan();
  EXPECT_NE(with, bare);
  EXPECT_EQ(with, afresh());
  put(-1.6);
  EXPECT_NE(plan(), with);
  w.window.document().undo_stack().undo();
  w.window.document().undo_stack().undo();
  EXPECT_EQ(plan(), bare);
}

TEST(View, HeightsAreExaggeratedOnlyInTheSideElevation) {
  TestWindow w("house-service");
  w.window.drawing().set_exaggeration(3);
  const Frame f = w.window.drawing().frame();
  EXPECT_NEAR(f.px_z(100) - f.px_z(101), 3 * f.px_per_m, 1e-6);
  EXPECT_NEAR(f.px_y(0) - f.px_y(1), f.px_per_m, 1e-6);
}

TEST(Utilities, AddAndRemoveAreUndone) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const std::string gas = utility(w, "gas main").id;
  w.window.document().change(QStringLiteral("Remove"), [&](Crossing& c) {
    std::erase_if(c.site.utilities, [&](const Utility& u) { return u.id == gas; });
  });
  EXPECT_EQ(w.crossing().site.utilities.size() + 1, before.site.utilities.size());
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

}  // namespace
}  // namespace burrow

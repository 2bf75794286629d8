/// The strip that shows the whole bore: its frame is what the drawing shows, and moves it.

#include "burrow/drawing/overview.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QSettings>
#include <QWheelEvent>

#include "burrow/drawing/flags.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct OverviewWindow : TestWindow {
  explicit OverviewWindow(const char* sample) : TestWindow(sample) {
    strip().shown_action()->setChecked(true);
    QCoreApplication::processEvents();
  }
  OverviewStrip& strip() { return window.overview(); }
  const Frame& frame() { return window.drawing().frame(); }
  void send(QEvent::Type type, const QPointF& at, Qt::MouseButton button, Qt::MouseButtons buttons) {
    QMouseEvent event(type, at, strip().mapToGlobal(at), button, buttons, Qt::NoModifier);
    QCoreApplication::sendEvent(&strip(), &event);
    QCoreApplication::processEvents();
  }
  void pull(const QPointF& from, const QPointF& to) {
    send(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton);
    for (int i = 1; i <= 4; ++i) send(QEvent::MouseMove, from + (to - from) * i / 4, Qt::NoButton, Qt::LeftButton);
    send(QEvent::MouseButtonRelease, to, Qt::LeftButton, Qt::NoButton);
  }
  /// In the middle of the strip, at a station.
  QPointF at(double station_m) { return {strip().scale().px_x(station_m), strip().height() * 0.7}; }
};

TEST(Overview, ShowsAllOfTheBore_UnderTheDrawing) {
  for (const char* sample : {"house-service", "four-faults", "rail-siding", "sixty-utilities", "first-lesson"}) {
    OverviewWindow w(sample);
    const OverviewScale s = w.strip().scale();
    EXPECT_LT(s.from_m, w.crossing().bore.launch.station.m);
    EXPECT_GT(s.to_m, w.crossing().bore.exit.station.m);
    for (const PathPoint& p : w.window.document().assessment().bore.points) {
      if (p.x_m > s.to_m) continue;
      EXPECT_TRUE(s.area.adjusted(-1, -1, 1, 1).contains(QPointF(s.px_x(p.x_m), s.px_z(p.z_m)))) << sample;
    }
    EXPECT_NEAR(s.station_m(s.px_x(3.21)), 3.21, 1e-9);
    const QPoint below = w.strip().mapTo(&w.window, QPoint(0, 0));
    const QPoint drawing = w.window.drawing().mapTo(&w.window, QPoint(0, w.window.drawing().height()));
    EXPECT_GE(below.y(), drawing.y()) << "nothing lies over the drawing";
    EXPECT_FALSE(w.strip().accessibleName().isEmpty());
  }
}

TEST(Overview, FrameIsWhatTheDrawingShows) {
  OverviewWindow w("house-service");
  w.window.drawing().show_stations(3, 6, false);
  const OverviewScale s = w.strip().scale();
  EXPECT_NEAR(w.strip().window().left(), s.px_x(3), 0.01);
  EXPECT_NEAR(w.strip().window().right(), s.px_x(6), 0.01);
}

TEST(Overview, DraggedFrame_MovesTheDrawing) {
  OverviewWindow w("house-service");
  w.window.drawing().show_stations(3, 6, false);
  const Crossing before = w.crossing();
  const double scale = w.frame().px_per_m;
  w.pull(w.at(4.5), w.at(7.5));
  EXPECT_NEAR(w.frame().left_station_m, 6, 0.02);
  EXPECT_NEAR(w.frame().px_per_m, scale, 1e-9);
  EXPECT_EQ(w.crossing(), before) << "looking changes nothing";
}

TEST(Overview, PulledEnds_ZoomAndKeepTheOtherEnd) {
  OverviewWindow w("house-service");
  w.window.drawing().show_stations(3, 6, false);
  const double level = w.frame().elevation_m(w.frame().elevation.center().y());
  w.pull(QPointF(w.strip().window().right(), w.at(0).y()), w.at(8));
  EXPECT_NEAR(w.frame().left_station_m, 3, 0.02);
  EXPECT_NEAR(w.frame().right_station_m(), 8, 0.05);
  w.pull(QPointF(w.strip().window().left(), w.at(0).y()), w.at(5));
  EXPECT_NEAR(w.frame().left_station_m, 5, 0.05);
  EXPECT_NEAR(w.frame().right_station_m(), 8, 0.05);
  EXPECT_NEAR(w.frame().elevation_m(w.frame().elevation.center().y()), level, 1e-9) << "the middle height stays";
  w.pull(QPointF(w.strip().window().left(), w.at(0).y()), w.at(30));
  EXPECT_LT(w.frame().left_station_m, w.frame().right_station_m()) << "an end does not pass the other";
  EXPECT_GE(w.strip().window().width(), 5) << "and the frame can still be grasped";
}

TEST(Overview, ClickBesideTheFrame_LooksThere) {
  OverviewWindow w("house-service");
  w.window.drawing().show_stations(0, 2, false);
  const QPointF there = w.at(8);
  w.send(QEvent::MouseButtonPress, there, Qt::LeftButton, Qt::LeftButton);
  w.send(QEvent::MouseButtonRelease, there, Qt::LeftButton, Qt::NoButton);
  EXPECT_NEAR((w.frame().left_station_m + w.frame().right_station_m()) / 2, 8, 0.05);
}

TEST(Overview, ByKeyboard) {
  OverviewWindow w("house-service");
  EXPECT_NE(w.strip().focusPolicy() & Qt::TabFocus, 0);
  w.window.drawing().show_stations(3, 6, false);
  QTest::keyClick(&w.strip(), Qt::Key_Right);
  EXPECT_NEAR(w.frame().left_station_m, 3.3, 1e-6);
  QTest::keyClick(&w.strip(), Qt::Key_Left, Qt::ShiftModifier);
  EXPECT_NEAR(w.frame().left_station_m, 1.8, 1e-6);
  const double scale = w.frame().px_per_m;
  QTest::keyClick(&w.strip(), Qt::Key_Plus);
  EXPECT_NEAR(w.frame().px_per_m, 1.25 * scale, 1e-6);
  QTest::keyClick(&w.strip(), Qt::Key_0);
  const Frame fitted = w.frame();
  w.window.drawing().zoom_to_fit();
  EXPECT_EQ(w.frame(), fitted);
  QCoreApplication::processEvents();
  EXPECT_TRUE(w.strip().accessibleDescription().contains(QStringLiteral("shows station")));
}

TEST(Overview, MarksLeadToTheirFindings) {
  OverviewWindow w("four-faults");
  const auto marks = w.strip().marks();
  ASSERT_FALSE(marks.empty());
  const auto& findings = w.window.document().assessment().findings;
  const auto wanted = std::count_if(findings.begin(), findings.end(), flag_wanted);
  EXPECT_EQ(static_cast<std::ptrdiff_t>(marks.size()), wanted);
  const auto top = marks.back();  // the worst lies on top
  w.send(QEvent::MouseButtonPress, top.box.center(), Qt::LeftButton, Qt::LeftButton);
  w.send(QEvent::MouseButtonRelease, top.box.center(), Qt::LeftButton, Qt::NoButton);
  EXPECT_EQ(w.window.findings().picked_row(), top.finding);
}

TEST(Overview, PutAway_IsRemembered) {
  {
    OverviewWindow w("house-service");
    EXPECT_TRUE(w.strip().isVisible());
    const int height = w.window.drawing().height();
    w.strip().shown_action()->trigger();
    QCoreApplication::processEvents();
    EXPECT_FALSE(w.strip().isVisible());
    EXPECT_GT(w.window.drawing().height(), height) << "its room goes to the drawing";
  }
  {
    TestWindow again("house-service");
    EXPECT_FALSE(again.window.overview().isVisible());
    again.window.overview().shown_action()->trigger();
    EXPECT_TRUE(again.window.overview().isVisible());
  }
}

TEST(Overview, WheelZoomsAtThePointer) {
  OverviewWindow w("house-service");
  w.window.drawing().show_stations(2, 8, false);
  const QPointF at = w.at(5);
  QWheelEvent wheel(at, w.strip().mapToGlobal(at), QPoint(), QPoint(0, 240), Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(&w.strip(), &wheel);
  const double shown = w.frame().right_station_m() - w.frame().left_station_m;
  EXPECT_LT(shown, 6 / 1.2);
  EXPECT_NEAR((w.frame().left_station_m + w.frame().right_station_m()) / 2, 5, 0.02);
}

TEST(Overview, NotWhileSomethingIsDragged) {
  OverviewWindow w("house-service");
  const QPointF from = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  w.press(from);
  w.move(from + QPointF(20, 10));
  ASSERT_TRUE(w.window.drawing().dragging());
  const Frame before = w.frame();
  QTest::keyClick(&w.strip(), Qt::Key_Right);
  w.pull(w.at(4.5), w.at(7.5));
  EXPECT_EQ(w.frame(), before);
  w.key(Qt::Key_Escape);
  w.release(from);
}

}  // namespace
}  // namespace burrow

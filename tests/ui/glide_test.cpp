/// Smooth ways from one view to another: what stays in place, that input ends them and that nothing is assessed for
/// them. The clock is the test's own.

#include "burrow/drawing/glide.h"

#include <gtest/gtest.h>

#include <QWheelEvent>
#include <cmath>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct GlideWindow : TestWindow {
  explicit GlideWindow(const char* sample) : TestWindow(sample) {
    drawing().set_glide(200, [this] { return time; });
  }
  DrawingView& drawing() { return window.drawing(); }
  void at(qint64 ms) {
    time = ms;
    drawing().step_glide();
    QCoreApplication::processEvents();
  }
  qint64 time = 0;
};

TEST(Glide, ZoomAboutAPoint_ThatPointStaysAllTheWay) {
  GlideWindow w("house-service");
  const Frame from = w.drawing().frame();
  Frame to = from;
  const QPointF fixed = from.elevation.center() + QPointF(200, 40);
  to.zoom(fixed, 6);
  double before = from.px_per_m;
  for (double share = 0.1; share < 1; share += 0.1) {
    const Frame now = on_the_way(from, to, share);
    EXPECT_NEAR(now.station_m(fixed.x()), from.station_m(fixed.x()), 1e-9);
    EXPECT_NEAR(now.elevation_m(fixed.y()), from.elevation_m(fixed.y()), 1e-9);
    EXPECT_GT(now.px_per_m, before);
    before = now.px_per_m;
  }
  EXPECT_EQ(on_the_way(from, to, 1), to);
  EXPECT_NEAR(on_the_way(from, to, 0).left_station_m, from.left_station_m, 1e-12);
}

TEST(Glide, MovingAside_KeepsTheScaleAndSlowsDown) {
  GlideWindow w("house-service");
  const Frame from = w.drawing().frame();
  Frame to = from;
  to.pan(QPointF(-300, 0));
  double last = from.left_station_m, last_step = 1e9;
  for (double share = 0.1; share < 1.05; share += 0.1) {
    const Frame now = on_the_way(from, to, share);
    EXPECT_EQ(now.px_per_m, from.px_per_m);
    const double step = now.left_station_m - last;
    EXPECT_GE(step, -1e-12);
    EXPECT_LE(step, last_step + 1e-12);
    last = now.left_station_m;
    last_step = step;
  }
}

TEST(Glide, ZoomKeys_ComeWhereTheyWouldAtOnce) {
  GlideWindow w("house-service");
  Frame wanted = w.drawing().frame();
  wanted.zoom(wanted.elevation.center(), 1.25);
  wanted.zoom(wanted.elevation.center(), 1.25);
  w.key(Qt::Key_Plus);
  EXPECT_TRUE(w.drawing().gliding());
  w.at(50);
  EXPECT_GT(w.drawing().frame().px_per_m, 0);
  EXPECT_LT(w.drawing().frame().px_per_m, wanted.px_per_m);
  w.key(Qt::Key_Plus);  // while the first is under way
  w.at(50 + 200);
  EXPECT_FALSE(w.drawing().gliding());
  EXPECT_NEAR(w.drawing().frame().px_per_m, wanted.px_per_m, 1e-9);
  EXPECT_NEAR(w.drawing().frame().left_station_m, wanted.left_station_m, 1e-9);
  w.key(Qt::Key_Home);
  w.at(1000);
  const Frame fitted = w.drawing().frame();
  w.drawing().zoom_to_fit();
  EXPECT_EQ(w.drawing().frame(), fitted);
}

TEST(Glide, AnyInputStopsItWhereItIs) {
  for (const int input : {0, 1, 2}) {
    GlideWindow w("house-service");
    w.drawing().zoom_by(3);
    w.at(60);
    const Frame there = w.drawing().frame();
    ASSERT_TRUE(w.drawing().gliding());
    const QPointF spot = there.plan.center() + QPointF(0, there.plan.height() * 0.45);
    if (input == 0) {
      w.press(spot);
      w.release(spot);
    } else if (input == 1) {
      w.key(Qt::Key_N);
    } else {
      QWheelEvent wheel(spot, w.viewport()->mapToGlobal(spot), QPoint(), QPoint(0, 0), Qt::NoButton, Qt::NoModifier,
                        Qt::NoScrollPhase, false);
      QCoreApplication::sendEvent(w.viewport(), &wheel);
    }
    EXPECT_FALSE(w.drawing().gliding()) << input;
    w.at(500);
    EXPECT_NEAR(w.drawing().frame().px_per_m, there.px_per_m, 1e-9) << input;
  }
}

TEST(Glide, NotDuringADrag) {
  GlideWindow w("house-service");
  const QPointF from = w.drawing().place_of({ItemKind::launch, {}, -1});
  w.press(from);
  w.move(from + QPointF(20, 10));
  ASSERT_TRUE(w.drawing().dragging());
  w.drawing().zoom_by(1.25);
  EXPECT_FALSE(w.drawing().gliding());
  w.key(Qt::Key_Escape);
  w.release(from);
}

// The answer is as it was: a glide asks for no assessment, and what is drawn is the same value.
TEST(Glide, AsksForNoNewAnswer) {
  GlideWindow w("house-service");
  const Assessment* answer = &w.window.document().assessment();
  const double* first = &answer->bore.points.front().x_m;
  w.drawing().zoom_by(2);
  for (int ms = 0; ms <= 220; ms += 20) w.at(ms);
  EXPECT_EQ(&w.window.document().assessment().bore.points.front().x_m, first) << "the same points, not made anew";
}

TEST(Glide, ResizedOnTheWay_IsThere) {
  GlideWindow w("house-service");
  w.drawing().zoom_by(0.5);
  w.drawing().glide_to_fit();
  w.at(40);
  w.window.resize(1400, 800);
  QCoreApplication::processEvents();
  EXPECT_FALSE(w.drawing().gliding());
  const Frame there = w.drawing().frame();
  w.drawing().zoom_to_fit();
  EXPECT_EQ(w.drawing().frame(), there) << "a fitted view is fitted again";
}

TEST(Glide, WithoutADisplay_Stands) {
  EXPECT_TRUE(desktop_wants_stillness()) << "these tests run offscreen";
  TestWindow w("house-service");
  const double before = w.window.drawing().frame().px_per_m;
  w.key(Qt::Key_Plus);
  EXPECT_NEAR(w.window.drawing().frame().px_per_m, 1.25 * before, 1e-9);
}

// A finding beyond the edge is brought into view, one that is in view moves nothing.
TEST(Glide, ToAFinding_OnlyWhereItIsNotInView) {
  GlideWindow w("house-service");
  const auto& findings = w.window.document().assessment().findings;
  const auto at = std::find_if(findings.begin(), findings.end(),
                               [](const Finding& f) { return f.station_m && f.severity != Severity::note; });
  ASSERT_NE(at, findings.end());
  const int index = static_cast<int>(at - findings.begin());
  w.drawing().go_to_finding(index);
  EXPECT_FALSE(w.drawing().gliding());
  w.drawing().show_stations(*at->station_m + 3, *at->station_m + 5, false);
  w.drawing().go_to_finding(index);
  EXPECT_TRUE(w.drawing().gliding());
  w.at(300);
  const Frame& f = w.drawing().frame();
  EXPECT_NEAR(f.px_x(*at->station_m), f.elevation.center().x(), 1);
}

}  // namespace
}  // namespace burrow

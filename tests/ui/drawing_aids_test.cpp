/// Aids of the drawing, in the real window: section across, tape, places that draw a drag to them.

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>

#include "burrow/drawing/across.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/snap.h"
#include "burrow/search/just_clear.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

Interaction focused(const ItemRef& part) {
  Interaction focus;
  focus.picked = part;
  return focus;
}

Scene scene_of(TestWindow& w) {
  DrawingView& drawing = w.window.drawing();
  return {w.crossing(),
          w.window.document().assessment(),
          w.window.document().tables(),
          drawing.frame(),
          drawing.style(),
          focused(drawing.picked()),
          nullptr,
          drawing.layers()};
}

Utility straight(double x0, double y0, double z0, double x1, double y1, double z1) {
  Utility u;
  u.id = "u1";
  u.outside_diameter = Length{0.1};
  u.path = {{x0, y0, z0}, {x1, y1, z1}};
  return u;
}

TEST(Across, UtilitySquareToTheBore_IsSeenAsALineAtItsStationOnly) {
  Site site;
  site.utilities = {straight(6, -5, 100, 6, 5, 101)};
  const auto here = utilities_across(site, 6.2, 0.5);
  ASSERT_EQ(here.size(), 1u);
  ASSERT_EQ(here[0].runs.size(), 1u);
  EXPECT_EQ(here[0].runs[0].front(), (PlanPoint{-5, 100}));
  EXPECT_EQ(here[0].runs[0].back(), (PlanPoint{5, 101}));
  EXPECT_TRUE(utilities_across(site, 7.0, 0.5).empty());
}

// A line along the bore passes through the plane at one place: straight between its ends.
TEST(Across, UtilityAlongTheBore_IsADiscWhereItPasses) {
  Site site;
  site.utilities = {straight(0, 1, 100, 10, 2, 99)};
  const auto here = utilities_across(site, 4, 0.5);
  ASSERT_EQ(here.size(), 1u);
  ASSERT_TRUE(here[0].passes);
  EXPECT_NEAR(here[0].passes->x_m, 1.4, 1e-12);
  EXPECT_NEAR(here[0].passes->y_m, 99.6, 1e-12);
  EXPECT_TRUE(here[0].runs.empty());
}

TEST(Across, SkewUtility_OnlyTheStretchNearThePlane) {
  Site site;
  site.utilities = {straight(0, -10, 100, 20, 10, 100)};  // 45 degrees
  const auto here = utilities_across(site, 10, 0.5);
  ASSERT_EQ(here.size(), 1u);
  ASSERT_EQ(here[0].runs.size(), 1u);
  EXPECT_NEAR(here[0].runs[0].front().x_m, -0.5, 1e-12);
  EXPECT_NEAR(here[0].runs[0].back().x_m, 0.5, 1e-12);
}

TEST(Across, UnknownDepth_IsLeftOut) {
  Site site;
  site.utilities = {straight(6, -5, 100, 6, 5, 100)};
  site.utilities[0].path[1].z_m.reset();
  EXPECT_TRUE(utilities_across(site, 6, 0.5).empty());
}

// Second route: counted over a million pairs of normal numbers, the rings hold the share that they name.
TEST(Across, Rings_HoldTheShareTheyName) {
  std::mt19937 random(7);
  std::normal_distribution<double> normal;
  constexpr int pairs = 1'000'000;
  std::array<int, 3> within{};
  for (int i = 0; i < pairs; ++i) {
    const double off = std::hypot(normal(random), normal(random));
    for (std::size_t r = 0; r < within.size(); ++r) within[r] += off < ring_shares[r].sds;
  }
  for (std::size_t r = 0; r < within.size(); ++r) {
    const double share = QString::fromLatin1(ring_shares[r].name).section(QLatin1Char(' '), 0, 0).toDouble() / 100;
    EXPECT_NEAR(static_cast<double>(within[r]) / pairs, share, 0.002) << ring_shares[r].name;
  }
}

TEST(Across, FollowsThePointer_StandsAwayFromIt) {
  TestWindow w("house-service");
  EXPECT_TRUE(across_box(scene_of(w)).isEmpty());
  w.window.drawing().set_across(true);
  const Frame& f = w.window.drawing().frame();
  for (const double station : {2.0, 12.0}) {
    w.mouse(QEvent::MouseMove, f.side(station, 101), Qt::NoButton, Qt::NoButton);
    EXPECT_NEAR(*w.window.drawing().layers().across_station_m, station, 0.02);
    const QRectF box = across_box(scene_of(w));
    ASSERT_FALSE(box.isEmpty());
    EXPECT_TRUE(f.plan.contains(box));
    EXPECT_FALSE(box.left() < f.px_x(station) && f.px_x(station) < box.right());
  }
  const double before = *w.window.drawing().layers().across_station_m;
  w.mouse(QEvent::MouseMove, across_box(scene_of(w)).center(), Qt::NoButton, Qt::NoButton);
  EXPECT_EQ(*w.window.drawing().layers().across_station_m, before) << "one can point into it";
}

TEST(Tape, MeasuresWithCtrl_AndMovesNothing) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const Frame f = w.window.drawing().frame();
  const QPointF from = f.side(3, 100.6), to = f.side(6, 100.2);
  w.mouse(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton, Qt::ControlModifier);
  w.mouse(QEvent::MouseMove, to, Qt::NoButton, Qt::LeftButton, Qt::ControlModifier);
  w.mouse(QEvent::MouseButtonRelease, to, Qt::LeftButton, Qt::NoButton, Qt::ControlModifier);
  ASSERT_TRUE(w.window.drawing().layers().tape);
  const Tape tape = *w.window.drawing().layers().tape;
  EXPECT_NEAR(tape.to_station_m - tape.from_station_m, 3, 1e-6);
  EXPECT_NEAR(tape.to_up_m - tape.from_up_m, -0.4, 1e-6);
  EXPECT_EQ(w.crossing(), before);
  const QStringList words = tape_words(tape, UnitSystem::metric);
  ASSERT_EQ(words.size(), 4);
  EXPECT_EQ(words[0].toStdString(), format(std::hypot(3, 0.4), Dimension::length, UnitSystem::metric));
  EXPECT_TRUE(words[2].startsWith(QStringLiteral("down")));
  w.key(Qt::Key_Escape);
  EXPECT_FALSE(w.window.drawing().layers().tape);
}

TEST(Tape, TakesTheMiddleOfAUtility) {
  TestWindow w("house-service");
  const Scene now = scene_of(w);
  const UtilityMark mark = utility_mark(w.crossing().site.utilities.front());
  ASSERT_TRUE(mark.depth_known);
  const QPointF middle = now.frame.side(mark.station_m, mark.elevation_m);
  EXPECT_EQ(tape_end(now, Pane::elevation, middle + QPointF(3, -3), 9), middle);
  EXPECT_EQ(tape_end(now, Pane::elevation, middle + QPointF(3, -3), 0), middle + QPointF(3, -3));
}

TEST(Snap, LaunchNearTheEdgeOfARoad_StandsOnIt_ShiftDoesNot) {
  TestWindow w("house-service");
  const SurfaceFeature& road = w.crossing().site.surface.front();
  ASSERT_TRUE(road.from);
  const double edge = road.from->m;
  const Frame f = w.window.drawing().frame();
  const QPointF from = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  const double by = edge - w.crossing().bore.launch.station.m - 2.0 / f.px_per_m;
  w.drag(from, from + QPointF(by * f.px_per_m, 0));
  EXPECT_EQ(w.crossing().bore.launch.station.m, edge);
  w.window.document().undo_stack().undo();

  w.press(from);
  for (int i = 1; i <= 4; ++i)
    w.mouse(QEvent::MouseMove, from + QPointF(by * f.px_per_m, 0) * i / 4, Qt::NoButton, Qt::LeftButton,
            Qt::ShiftModifier);
  w.mouse(QEvent::MouseButtonRelease, from + QPointF(by * f.px_per_m, 0), Qt::LeftButton, Qt::NoButton,
          Qt::ShiftModifier);
  EXPECT_NEAR(w.crossing().bore.launch.station.m, edge - 2.0 / f.px_per_m, 1e-6);
}

// Where a snap says that the limits are kept, they are: drag the main there and look.
TEST(Snap, UtilityClear_TheFlagGoes) {
  TestWindow w("house-service");
  const auto gap = [&]() -> double {
    for (const UtilityAnswer& u : w.window.document().assessment().utilities)
      if (u.name == "gas main") return *u.separation_m - *u.required_m;
    return NAN;
  };
  ASSERT_LT(gap(), 0);
  std::string id;
  for (const Utility& u : w.crossing().site.utilities)
    if (u.name == "gas main") id = u.id;
  const auto lines = snap_lines(w.crossing(), w.window.document().tables(), w.window.document().assessment(),
                                {ItemKind::utility, id, -1}, UnitSystem::metric);
  const auto clear = std::find_if(lines.begin(), lines.end(),
                                  [](const SnapLine& l) { return l.reason.contains(QStringLiteral("is kept")); });
  ASSERT_NE(clear, lines.end());
  const Frame f = w.window.drawing().frame();
  const QPointF from = w.window.drawing().place_of({ItemKind::utility, id, -1});
  w.click(from);
  w.drag(from, QPointF(from.x(), f.px_z(clear->value) + 1.5));
  EXPECT_GE(gap(), 0.05) << "to spare";
  EXPECT_TRUE(limits_kept(w.window.document().assessment(), id));
}

TEST(Snap, LockedMemberStays) {
  TestWindow w("house-service");
  Crossing c = w.crossing();
  c.locks.push_back("/bore/launch/elevation_m");
  const double before = c.bore.launch.elevation.m;
  const std::vector<SnapLine> lines{{Pane::elevation, false, before + 0.01, QStringLiteral("near"), {}}};
  EXPECT_TRUE(snap(c, lines, {ItemKind::launch, {}, -1}, Pane::elevation, 0.1, 0.1).empty());
  EXPECT_EQ(c.bore.launch.elevation.m, before);
  c.locks.clear();
  EXPECT_EQ(snap(c, lines, {ItemKind::launch, {}, -1}, Pane::elevation, 0.1, 0.1).size(), 1u);
  EXPECT_EQ(c.bore.launch.elevation.m, before + 0.01);
}

}  // namespace
}  // namespace burrow

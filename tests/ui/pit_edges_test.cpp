/// Edges of a pit, dragged in the real window and moved as plain values. Sizes come from the drag itself: the floor's
/// end, sides and level land where the pointer is; the slope is run over rise of the dragged top.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/drawing/handles.h"
#include "burrow/drawing/pit_edges.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

Interaction focused(const ItemRef& part) {
  Interaction focus;
  focus.picked = part;
  return focus;
}

ItemRef edge(const char* pit, PitEdge which) {
  return {ItemKind::pit_edge, pit, static_cast<int>(which)};
}

/// Where the grip of an edge stands in one of the two views.
QPointF place(TestWindow& w, const ItemRef& part, Pane pane) {
  DrawingView& drawing = w.window.drawing();
  const Scene now{w.crossing(),
                  w.window.document().assessment(),
                  w.window.document().tables(),
                  drawing.frame(),
                  drawing.style(),
                  focused(drawing.picked()),
                  nullptr,
                  drawing.layers()};
  for (const Handle& handle : handles(now))
    if (handle.part == part && handle.pane == pane) return handle.at;
  ADD_FAILURE() << "no grip for " << part_name(w.crossing(), part);
  return {};
}

void pick_pit(TestWindow& w, ItemKind kind) {
  w.window.drawing().pick({kind, {}, -1});
}

TEST(PitEdges, FloorEnd_DraggedInTheSideElevation_IsTyped_OneUndoStep) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const double length = w.window.document().assessment().launch_pit.floor_length_m;
  pick_pit(w, ItemKind::launch);
  const ItemRef end = edge("launch", PitEdge::floor_back);
  const QPointF from = place(w, end, Pane::elevation);
  w.drag(from, from - QPointF(0.4 * w.window.drawing().frame().px_per_m, 0));
  ASSERT_TRUE(w.crossing().pits.launch.floor_length);
  EXPECT_NEAR(w.crossing().pits.launch.floor_length->m, length + 0.4, 0.0101);
  EXPECT_NEAR(w.window.document().assessment().launch_pit.floor_length_m, length + 0.4, 0.0101);
  EXPECT_EQ(w.window.drawing().picked(), end);
  EXPECT_EQ(w.window.document().undo_stack().count(), 1);
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(PitEdges, FloorLevel_DraggedDown_DeepensThePit) {
  TestWindow w("house-service");
  pick_pit(w, ItemKind::exit);
  const PitShape before = w.window.document().assessment().exit_pit;
  const QPointF from = place(w, edge("exit", PitEdge::floor_level), Pane::elevation);
  const Frame& f = w.window.drawing().frame();
  w.drag(from, from + QPointF(0, 0.3 * f.px_per_m * f.exaggeration));
  const PitShape& after = w.window.document().assessment().exit_pit;
  EXPECT_NEAR(after.floor_elevation_m, before.floor_elevation_m - 0.3, 0.0101);
  EXPECT_GT(after.volume_m3, before.volume_m3);
}

TEST(PitEdges, FloorSide_DraggedInThePlan_LeavesTheOtherWhereItIs) {
  TestWindow w("house-service");
  pick_pit(w, ItemKind::launch);
  const PitShape before = w.window.document().assessment().launch_pit;
  const QPointF from = place(w, edge("launch", PitEdge::floor_left), Pane::plan);
  w.drag(from, from - QPointF(0, 0.5 * w.window.drawing().frame().px_per_m));
  const PitShape& after = w.window.document().assessment().launch_pit;
  EXPECT_NEAR(after.floor_left_m, before.floor_left_m + 0.5, 0.0101);
  EXPECT_NEAR(after.floor_right_m, before.floor_right_m, 1e-9);
}

TEST(PitEdges, SlopedBack_DraggedOut_TakesTheSlopeOfThePointer) {
  TestWindow w("house-service");
  Crossing sloped = w.crossing();
  sloped.pits.launch.sides.back = PitSide{};
  sloped.pits.launch.sides.back.kind.set(SideKind::sloped);
  w.window.document().change(QStringLiteral("slope"), [&](Crossing& to) { to.pits = sloped.pits; });
  w.window.drawing().zoom_to_fit();
  QCoreApplication::processEvents();
  pick_pit(w, ItemKind::launch);
  const ItemRef top = edge("launch", PitEdge::top_back);
  const PitShape before = w.window.document().assessment().launch_pit;
  const double by = 0.6;
  const QPointF from = place(w, top, Pane::elevation);
  w.drag(from, from - QPointF(by * w.window.drawing().frame().px_per_m, 0));
  const PitSide& side = w.crossing().pits.launch.sides.back;
  ASSERT_TRUE(side.run_per_rise);
  const double station = before.section.front().station_m - by;
  const double rise = elevation_at(w.crossing().site.ground, station) - before.floor_elevation_m;
  EXPECT_NEAR(side.run_per_rise->v, (before.floor_from_m - station) / rise, 0.0101);
  EXPECT_NEAR(w.window.document().assessment().launch_pit.section.front().station_m, station, 0.02);
}

TEST(PitEdges, ShoredSideHasNoTop) {
  TestWindow w("house-service");
  pick_pit(w, ItemKind::launch);
  DrawingView& drawing = w.window.drawing();
  ASSERT_EQ(*w.crossing().pits.launch.sides.bore.kind, SideKind::shored);
  const Scene now{w.crossing(),
                  w.window.document().assessment(),
                  w.window.document().tables(),
                  drawing.frame(),
                  drawing.style(),
                  focused(drawing.picked()),
                  nullptr,
                  drawing.layers()};
  for (const PitEdgePlace& place : pit_edge_places(now))
    EXPECT_NE(place.part.index, static_cast<int>(PitEdge::top_bore));
}

/// Far too far: every edge stops at what a pit can be, and what comes out can be saved and read again.
TEST(PitEdges, StopAtWhatAPitCanBe) {
  TestWindow w("house-service");
  Crossing c = w.crossing();
  for (PitSide PitSides::*side : {&PitSides::bore, &PitSides::back, &PitSides::left, &PitSides::right})
    c.pits.launch.sides.*side = PitSide{};
  w.window.document().change(QStringLiteral("slopes"), [&](Crossing& to) { to.pits = c.pits; });
  Move move;
  move.pit = w.window.document().assessment().launch_pit;
  for (int index = 0; index <= static_cast<int>(PitEdge::top_right); ++index) {
    for (const Pane pane : {Pane::elevation, Pane::plan}) {
      for (const double far : {-1e4, 1e4}) {
        move.pane = pane;
        move.by_station_m = move.by_up_m = far;
        const Edit edit = moved(c, {ItemKind::pit_edge, "launch", index}, move);
        if (!edit) continue;
        Crossing after = c;
        edit(after);
        const Pit& pit = after.pits.launch;
        EXPECT_GE(pit.floor_length.value_or(Length{1}).m, 0.3 - 1e-9);
        EXPECT_GE(pit.floor_width.value_or(Length{1}).m, 0.3 - 1e-9);
        for (const PitSide* side : {&pit.sides.bore, &pit.sides.back, &pit.sides.left, &pit.sides.right}) {
          if (!side->run_per_rise) continue;
          EXPECT_GE(side->run_per_rise->v, 0);
          EXPECT_LE(side->run_per_rise->v, 20);
        }
      }
    }
  }
}

TEST(PitEdges, Steps_WidenTogether) {
  TestWindow w("house-service");
  Crossing c = w.crossing();
  PitSide& side = c.pits.launch.sides.back;
  side.kind.set(SideKind::benched);
  side.benches = {{Length{0.5}, Length{0.4}, {}, {}}, {Length{0.5}, Length{0.8}, {}, {}}};
  w.window.document().change(QStringLiteral("steps"), [&](Crossing& to) { to.pits = c.pits; });
  c = w.crossing();
  Move move;
  move.pit = w.window.document().assessment().launch_pit;
  move.step_m = 0;
  const double run = move.pit->floor_from_m - move.pit->section.front().station_m;
  ASSERT_GT(run, 0.1);
  move.by_station_m = -0.5 * run;  // half as far again
  const Edit edit = moved(c, edge("launch", PitEdge::top_back), move);
  ASSERT_TRUE(edit);
  edit(c);
  const PitSide& after = c.pits.launch.sides.back;
  ASSERT_EQ(after.benches.size(), 2u);
  EXPECT_NEAR(after.benches[0].tread.m, 0.6, 1e-9);
  EXPECT_NEAR(after.benches[1].tread.m, 1.2, 1e-9);
  EXPECT_EQ(after.benches[0].rise.m, 0.5);
}

TEST(PitEdges, LockedPitStays) {
  TestWindow w("house-service");
  Crossing c = w.crossing();
  c.locks.push_back("/pits/launch");
  Move move;
  move.pit = w.window.document().assessment().launch_pit;
  move.by_station_m = -1;
  EXPECT_FALSE(moved(c, edge("launch", PitEdge::floor_back), move));
  c.locks.back() = "/pits/launch/floor_length_m";
  EXPECT_FALSE(moved(c, edge("launch", PitEdge::floor_back), move));
  c.locks.clear();
  EXPECT_TRUE(moved(c, edge("launch", PitEdge::floor_back), move));
}

TEST(PitEdges, TypingBesideAnEdge_OffersItsSize) {
  TestWindow w("house-service");
  for (const char* pit : {"launch", "exit"})
    for (const PitEdge which : {PitEdge::floor_back, PitEdge::floor_level, PitEdge::floor_left, PitEdge::floor_right})
      EXPECT_FALSE(fields_of(w.crossing(), edge(pit, which)).empty());
}

// A corner of a floor goes where it is dragged, one undo step; it does not go where edges would cross.
TEST(PitEdges, FloorCorner_DraggedInThePlan) {
  TestWindow w("house-service");
  Pits pits = w.crossing().pits;
  pits.launch.floor_outline = {{0, -0.5}, {0, 0.5}, {1.5, 0.5}, {1.5, 1.2}, {3, 1.2}, {3, -0.5}};
  ASSERT_TRUE(w.window.document().change(QStringLiteral("corners"), [&](Crossing& to) { to.pits = pits; }));
  const int steps = w.window.document().undo_stack().count();
  pick_pit(w, ItemKind::launch);
  const ItemRef corner{ItemKind::pit_edge, "launch", first_floor_corner + 3};
  const QPointF from = place(w, corner, Pane::plan);
  const double px = w.window.drawing().frame().px_per_m;
  w.drag(from, from - QPointF(0, 0.3 * px));
  const PlanLine& outline = w.crossing().pits.launch.floor_outline;
  EXPECT_NEAR(outline[3].y_m, 1.5, 0.02);
  EXPECT_NEAR(outline[3].x_m, 1.5, 0.02);
  EXPECT_EQ(w.window.document().undo_stack().count(), steps + 1);
  const double kept = outline[3].y_m;
  const QPointF again = place(w, corner, Pane::plan);
  w.drag(again, again + QPointF(0, 4 * px));  // down across the right edge
  EXPECT_GT(w.crossing().pits.launch.floor_outline[3].y_m, -0.5);
  EXPECT_LE(w.crossing().pits.launch.floor_outline[3].y_m, kept);
}

}  // namespace
}  // namespace burrow

/// Every kind of thing on the drawing, every gesture, by the events of a hand: what a drag does, that one drag is one
/// step, Esc, undo and redo, Shift, arrow keys in the view clicked last, locks; and that what was surveyed moves only
/// once it is selected.

#include <gtest/gtest.h>

#include "burrow/crossing/find.h"
#include "burrow/crossing/locks.h"
#include "burrow/document/several.h"
#include "burrow/drawing/handles.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/window/tool_strip.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

/// One of each, clear of one another.
Crossing one_of_each() {
  Crossing c;
  c = *read_crossing(*read_text_file(sample_path("house-service").toStdString()), tables_for_tests());
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u2";
  hole.station = Length{6};
  hole.offset = Length{1.2};
  hole.elevation = Length{101.2};
  c.site.test_holes = {hole};
  c.site.water = LevelLine{{-5, 99.2}, {6, 99.25}, {20, 99.4}};  // a point in view
  Tree tree;
  tree.id = "t1";
  tree.station = Length{16};
  tree.offset = Length{1.5};
  tree.protection_radius = Length{0.8};
  c.site.trees = {tree};
  Plant machine;
  machine.id = "p1";
  machine.station = Length{18.5};
  machine.offset = Length{-1.2};
  machine.length = Length{1};
  machine.width = Length{0.6};
  machine.load = Force{40e3};
  c.site.plant = {machine};
  return c;
}

struct GestureWindow : TestWindow {
  GestureWindow() : TestWindow("house-service") {
    window.drawing().set_dimensions(false);
    window.document().start_from(one_of_each(), false);
    settle(window);
    window.drawing().zoom_to_fit();
    window.drawing().show_stations(-4, 21, false);
    window.drawing().setFocus();
    settle(window);
  }
  DrawingView& drawing() { return window.drawing(); }
  int steps() { return window.document().undo_stack().index(); }
  const Site& site() { return crossing().site; }
  /// Where a hand takes it, in that view.
  QPointF grip_of(const ItemRef& part, Pane pane) {
    const Scene now{crossing(),
                    window.document().assessment(),
                    window.document().tables(),
                    drawing().frame(),
                    drawing().style(),
                    with_picked(part)};
    for (const Handle& handle : handles(now))
      if (handle.part == part && handle.pane == pane) return handle.at;
    const Frame& f = drawing().frame();
    if (part.kind == ItemKind::utility && pane == Pane::plan) {
      const Utility& u = *find_by_id(site().utilities, part.id);
      const double y = 0.8, t = (y - u.path[0].y_m) / (u.path[1].y_m - u.path[0].y_m);
      return f.above(u.path[0].x_m + t * (u.path[1].x_m - u.path[0].x_m), y);
    }
    if (part.kind == ItemKind::surface) {
      const SurfaceFeature& s = *find_by_id(site().surface, part.id);
      const double middle = (s.from->m + s.to->m) / 2 + 0.6;
      return pane == Pane::plan ? f.above(middle, -1.6) : f.side(middle, elevation_at(site().ground, middle));
    }
    if (part.kind == ItemKind::around)
      if (const Boundary* b = find_by_id(site().boundaries, part.id)) return f.above(b->line[0].x_m, -1.4);
    if (part.kind == ItemKind::bore)
      return pane == Pane::plan ? f.above(8.4, 0) : drawing().place_of(part) + QPointF(25, 0);
    if (part.kind == ItemKind::water) return f.side(17, elevation_at(*site().water, 17));
    return drawing().place_of(part);
  }
  static Interaction with_picked(const ItemRef& part) {
    Interaction focus;
    focus.picked = part;
    return focus;
  }
};

struct Kind {
  const char* name;
  ItemRef part;
  Pane pane;
};

std::ostream& operator<<(std::ostream& out, const Kind& kind) {
  return out << kind.name;
}

class Gestures : public testing::TestWithParam<Kind> {
 protected:
  /// Selects it as a hand would, so that a drag moves it.
  static QPointF taken(GestureWindow& w) {
    const Kind& kind = GetParam();
    w.click(w.drawing().frame().ruler.center() + QPointF(0, -2));  // nothing there
    if (kind.part.index >= 0 && kind.part.kind != ItemKind::ground && kind.part.kind != ItemKind::stratum &&
        kind.part.kind != ItemKind::water)
      w.drawing().pick({kind.part.kind, kind.part.id, -1});  // its grips come with the selection
    else
      w.drawing().pick({});
    const QPointF at = w.grip_of(kind.part, kind.pane);
    w.click(at);
    EXPECT_EQ(w.drawing().picked(), kind.part) << "what is clicked is selected";
    return w.grip_of(kind.part, kind.pane);
  }
  static QPointF away() { return {18, -14}; }
};

TEST_P(Gestures, Drag_IsOneStep_UndoAndRedo) {
  GestureWindow w;
  const QPointF at = taken(w);
  const Crossing before = w.crossing();
  w.drag(at, at + away());
  EXPECT_NE(w.crossing(), before) << "it moves";
  EXPECT_EQ(w.steps(), 1);
  EXPECT_EQ(w.drawing().picked(), GetParam().part) << "and stays selected";
  const Crossing after = w.crossing();
  const Result<Crossing> again = read_crossing(write_crossing(after), tables_for_tests());
  EXPECT_TRUE(again) << again.error().english();
  w.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing(), before);
  w.key(Qt::Key_Y, Qt::ControlModifier);
  EXPECT_EQ(w.crossing(), after);
}

TEST_P(Gestures, Esc_PutsBack_WithItsGhostUntilThen) {
  GestureWindow w;
  const QPointF at = taken(w);
  const Crossing before = w.crossing();
  w.press(at);
  w.move(at + away() / 2);
  w.move(at + away());
  settle(w.window);
  EXPECT_TRUE(w.drawing().dragging());
  EXPECT_TRUE(w.window.tools().reads_out()) << "its numbers stand in place of the tools";
  w.key(Qt::Key_Escape);
  EXPECT_EQ(w.crossing(), before);
  w.release(at + away());
  EXPECT_EQ(w.crossing(), before);
  EXPECT_EQ(w.steps(), 0);
}

TEST_P(Gestures, ArrowKeys_MoveInTheViewClickedLast) {
  GestureWindow w;
  taken(w);
  const Crossing before = w.crossing();
  const Qt::Key key =
      GetParam().part.kind == ItemKind::grade || GetParam().part.kind == ItemKind::water ? Qt::Key_Up : Qt::Key_Right;
  w.key(key);
  EXPECT_NE(w.crossing(), before);
  EXPECT_EQ(w.steps(), 1);
  w.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing(), before);
}

TEST_P(Gestures, Locked_Stays_AndSaysSo) {
  GestureWindow w;
  const QPointF at = taken(w);
  w.key(Qt::Key_L, Qt::ControlModifier);
  ASSERT_FALSE(w.crossing().locks.empty());
  const Site site = w.site();
  const Bore bore = w.crossing().bore;
  w.drag(at, at + away());
  EXPECT_EQ(w.site(), site);
  EXPECT_EQ(w.crossing().bore.exit, bore.exit);
  if (GetParam().part.kind != ItemKind::launch) {
    EXPECT_EQ(w.crossing().bore.launch, bore.launch);
  }
}

TEST_P(Gestures, Surveyed_MovesOnlyOnceSelected) {
  GestureWindow w;
  const Kind& kind = GetParam();
  if (kind.part.index >= 0 && kind.part.kind != ItemKind::ground && kind.part.kind != ItemKind::stratum &&
      kind.part.kind != ItemKind::water)
    return;  // a grip is only there once its thing is selected
  const QPointF at = w.grip_of(kind.part, kind.pane);
  w.drawing().pick({});
  const Crossing before = w.crossing();
  w.drag(at, at + away());
  if (is_surveyed(kind.part)) {
    EXPECT_EQ(w.crossing(), before);
    EXPECT_EQ(w.steps(), 0);
    EXPECT_EQ(w.drawing().picked(), kind.part) << "the first takes hold of it";
  } else {
    EXPECT_NE(w.crossing(), before);
  }
}

TEST_P(Gestures, Shift_FreesFromSteps) {
  GestureWindow w;
  const QPointF at = taken(w);
  const Crossing before = w.crossing();
  w.mouse(QEvent::MouseButtonPress, at, Qt::LeftButton, Qt::LeftButton, Qt::ShiftModifier);
  for (int i = 1; i <= 8; ++i)
    w.mouse(QEvent::MouseMove, at + away() * i / 8, Qt::NoButton, Qt::LeftButton, Qt::ShiftModifier);
  w.mouse(QEvent::MouseButtonRelease, at + away(), Qt::LeftButton, Qt::NoButton, Qt::ShiftModifier);
  const Crossing freely = w.crossing();
  EXPECT_NE(freely, before);
  w.key(Qt::Key_Z, Qt::ControlModifier);
  w.drawing().pick(GetParam().part);
  w.drag(at, at + away());
  EXPECT_NE(w.crossing(), before);
  EXPECT_NE(w.crossing(), freely) << "whole steps without it";
}

INSTANTIATE_TEST_SUITE_P(Kinds, Gestures,
                         testing::Values(Kind{"launch", {ItemKind::launch, {}, -1}, Pane::elevation},
                                         Kind{"launch_in_plan", {ItemKind::launch, {}, -1}, Pane::plan},
                                         Kind{"grade", {ItemKind::grade, {}, -1}, Pane::elevation},
                                         Kind{"heading", {ItemKind::grade, {}, -1}, Pane::plan},
                                         Kind{"exit", {ItemKind::exit, {}, -1}, Pane::elevation},
                                         Kind{"exit_in_plan", {ItemKind::exit, {}, -1}, Pane::plan},
                                         Kind{"bore", {ItemKind::bore, {}, -1}, Pane::elevation},
                                         Kind{"utility", {ItemKind::utility, "u2", -1}, Pane::elevation},
                                         Kind{"utility_in_plan", {ItemKind::utility, "u3", -1}, Pane::plan},
                                         Kind{"test_hole", {ItemKind::test_holes, "h1", -1}, Pane::elevation},
                                         Kind{"test_hole_in_plan", {ItemKind::test_holes, "h1", -1}, Pane::plan},
                                         Kind{"ground_point", {ItemKind::ground, {}, 1}, Pane::elevation},
                                         Kind{"stratum_point", {ItemKind::stratum, "l2", 1}, Pane::elevation},
                                         Kind{"water_point", {ItemKind::water, {}, 1}, Pane::elevation},
                                         Kind{"water_line", {ItemKind::water, {}, -1}, Pane::elevation},
                                         Kind{"road_in_plan", {ItemKind::surface, "f1", -1}, Pane::plan},
                                         Kind{"edge_of_the_road", {ItemKind::surface, "f1", 0}, Pane::plan},
                                         Kind{"boundary", {ItemKind::around, "b1", -1}, Pane::plan},
                                         Kind{"tree", {ItemKind::around, "t1", -1}, Pane::plan},
                                         Kind{"machine", {ItemKind::around, "p1", -1}, Pane::plan}),
                         [](const testing::TestParamInfo<Kind>& one) { return std::string(one.param.name); });

// Several things keep their places to each other, by mouse and by key, as one step.
TEST(Group, DraggedAndNudged_TogetherAsOneStep_OneLockedStays) {
  GestureWindow w;
  w.drawing().pick_several(
      {{ItemKind::utility, "u1", -1}, {ItemKind::utility, "u3", -1}, {ItemKind::utility, "u4", -1}});
  ASSERT_EQ(w.drawing().several().size(), 3u);
  const Crossing before = w.crossing();
  const QPointF at = w.grip_of({ItemKind::utility, "u3", -1}, Pane::plan);
  w.drag(at, at + QPointF(25, 0));
  EXPECT_EQ(w.steps(), 1);
  EXPECT_EQ(w.drawing().several().size(), 3u) << "the selection stays";
  const auto moved_by = [&](const char* id) {
    return find_by_id(w.site().utilities, id)->path[0].x_m - find_by_id(before.site.utilities, id)->path[0].x_m;
  };
  EXPECT_GT(moved_by("u3"), 0.1);
  EXPECT_NEAR(moved_by("u1"), moved_by("u3"), 1e-9);
  EXPECT_NEAR(moved_by("u4"), moved_by("u3"), 1e-9);
  EXPECT_EQ(moved_by("u2"), 0);
  w.key(Qt::Key_Right);
  EXPECT_EQ(w.steps(), 2);
  EXPECT_EQ(w.drawing().several().size(), 3u);
  w.key(Qt::Key_Z, Qt::ControlModifier);
  w.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing(), before);
  w.window.document().change(QStringLiteral("lock"), [](Crossing& c) { set_lock(c, "/site/utilities/u1/path", true); });
  w.drag(at, at + QPointF(25, 0));
  EXPECT_EQ(moved_by("u1"), 0);
  EXPECT_GT(moved_by("u4"), 0.1);
}

TEST(Group, ClickOnOneOfThem_PicksItAlone) {
  GestureWindow w;
  w.drawing().pick_several({{ItemKind::utility, "u1", -1}, {ItemKind::utility, "u3", -1}});
  w.click(w.grip_of({ItemKind::utility, "u3", -1}, Pane::plan));
  EXPECT_EQ(w.drawing().picked(), (ItemRef{ItemKind::utility, "u3", -1}));
  EXPECT_TRUE(w.drawing().several().empty());
}

// A hole lies on the line it was dug for: it is taken, not the line.
TEST(Holes, ComeBeforeTheirLine) {
  GestureWindow w;
  const Utility line = *find_by_id(w.site().utilities, "u2");
  const double t = (1.0 - line.path[0].y_m) / (line.path[1].y_m - line.path[0].y_m);
  w.window.document().change(QStringLiteral("on the line"), [&](Crossing& c) {
    c.site.test_holes[0].station.m = line.path[0].x_m + t * (line.path[1].x_m - line.path[0].x_m);
    c.site.test_holes[0].offset.m = 1.0;
  });
  const QPointF at = w.drawing().frame().above(w.site().test_holes[0].station.m, 1.0);
  w.click(at);
  EXPECT_EQ(w.drawing().picked().kind, ItemKind::test_holes);
  w.drag(at, at + QPointF(15, 0));
  EXPECT_EQ(find_by_id(w.site().utilities, "u2")->path, line.path) << "the recorded main stays";
}

TEST(UtilityMarks, LineThatCrossesTwice_HasTwo_EachCanBeTaken) {
  GestureWindow w;
  w.window.document().change(QStringLiteral("bend"), [](Crossing& c) {
    find_by_id(c.site.utilities, "u1")->path = {{2, -2, 101.5}, {2, 2, 101.5}, {16.5, 2, 101.5}, {16.5, -2, 101.0}};
  });
  const Utility& u = *find_by_id(w.site().utilities, "u1");
  const std::vector<UtilityMark> marks = utility_marks(u);
  ASSERT_EQ(marks.size(), 2u);
  EXPECT_DOUBLE_EQ(marks[0].station_m, 2);
  EXPECT_DOUBLE_EQ(marks[1].station_m, 16.5);
  EXPECT_DOUBLE_EQ(marks[1].elevation_m, 101.25);
  EXPECT_EQ(utility_mark(u).station_m, marks[0].station_m);
  w.click(w.drawing().frame().side(marks[1].station_m, marks[1].elevation_m));
  EXPECT_EQ(w.drawing().picked(), (ItemRef{ItemKind::utility, "u1", -1}));
  Utility beside;
  beside.path = {{3, 4, std::nullopt}, {9, 2, 99.0}};
  ASSERT_EQ(utility_marks(beside).size(), 1u);
  EXPECT_FALSE(utility_marks(beside)[0].meets_line);
}

// A double click on a line makes a point there, which can be dragged at once; its course stays until then.
TEST(DoubleClick, OnALine_AddsAPoint) {
  GestureWindow w;
  const auto twice = [&](const QPointF& at) {
    w.press(at);
    w.release(at);
    w.mouse(QEvent::MouseButtonDblClick, at, Qt::LeftButton, Qt::LeftButton);
    w.release(at);
  };
  const std::size_t bends = find_by_id(w.site().utilities, "u3")->path.size();
  twice(w.grip_of({ItemKind::utility, "u3", -1}, Pane::plan));
  EXPECT_EQ(find_by_id(w.site().utilities, "u3")->path.size(), bends + 1);
  EXPECT_EQ(w.drawing().picked().kind, ItemKind::utility);
  EXPECT_GE(w.drawing().picked().index, 0);
  const std::size_t water = w.site().water->size();
  twice(w.drawing().frame().side(17, elevation_at(*w.site().water, 17)));
  ASSERT_EQ(w.site().water->size(), water + 1);
  EXPECT_NEAR((*w.site().water)[2].station_m, 17, 0.02);
  EXPECT_EQ(w.steps(), 2);
}

// Up in the plan moves across, where it was clicked; Alt the other way.
TEST(ArrowKeys, FollowTheViewClickedLast) {
  GestureWindow w;
  const double level = w.crossing().bore.launch.elevation.m;
  w.click(w.grip_of({ItemKind::launch, {}, -1}, Pane::plan));
  w.key(Qt::Key_Up);
  EXPECT_EQ(w.crossing().bore.launch.elevation.m, level);
  EXPECT_NEAR(w.crossing().bore.launch.offset->m, 0.01, 1e-9);
  w.key(Qt::Key_Up, Qt::AltModifier);
  EXPECT_NEAR(w.crossing().bore.launch.elevation.m, level + 0.01, 1e-9);
  w.click(w.grip_of({ItemKind::launch, {}, -1}, Pane::elevation));
  w.key(Qt::Key_Down);
  EXPECT_NEAR(w.crossing().bore.launch.elevation.m, level, 1e-9);
}

TEST(WholeBore, MovesAsOne_ItsLengthAndLevelDifferenceStay) {
  GestureWindow w;
  const Bore before = w.crossing().bore;
  w.drawing().pick({ItemKind::bore, {}, -1});
  w.key(Qt::Key_Right);
  w.key(Qt::Key_Down);
  const Bore& after = w.crossing().bore;
  EXPECT_NEAR(after.launch.station.m, before.launch.station.m + 0.01, 1e-9);
  EXPECT_NEAR(after.exit.station.m - after.launch.station.m, before.exit.station.m - before.launch.station.m, 1e-9);
  EXPECT_NEAR(after.launch.elevation.m, before.launch.elevation.m - 0.01, 1e-9);
  EXPECT_EQ(after.launch.grade, before.launch.grade);
  w.window.document().change(QStringLiteral("lock"), [](Crossing& c) { set_lock(c, "/bore/exit/station_m", true); });
  w.key(Qt::Key_Right);
  EXPECT_NEAR(w.crossing().bore.launch.station.m, before.launch.station.m + 0.01, 1e-9)
      << "one locked end holds the whole";
}

// N and P, and a screen reader, reach holes and what stands beside the bore.
TEST(Walk, ReachesEveryThing) {
  GestureWindow w;
  std::vector<ItemRef> met;
  for (std::size_t i = 0; i < w.drawing().items().size(); ++i) {
    w.key(Qt::Key_N);
    met.push_back(w.drawing().picked());
    EXPECT_FALSE(w.drawing().item_name(met.back()).isEmpty());
  }
  for (const ItemRef& part : all_items(w.crossing()))
    if (part.kind != ItemKind::stratum) {
      EXPECT_NE(std::find(met.begin(), met.end(), part), met.end()) << part.id;
    }
}

}  // namespace
}  // namespace burrow

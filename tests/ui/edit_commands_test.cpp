/// What the Edit menu does with what is selected: clipboard, selecting by kind, deleting, renaming, locks, the bore
/// turned round. By the real window, keys and menus.

#include "burrow/window/edit_commands.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>
#include <QLineEdit>
#include <QStatusBar>

#include "burrow/crossing/blank.h"
#include "burrow/crossing/find.h"
#include "burrow/crossing/locks.h"
#include "burrow/document/points.h"
#include "burrow/document/several.h"
#include "burrow/file/crossing_file.h"
#include "burrow/widgets/field_lock.h"
#include "burrow/widgets/name_entry.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct EditWindow : TestWindow {
  explicit EditWindow(const char* sample = "house-service") : TestWindow(sample) {
    window.drawing().setFocus();
    settle(window);
  }
  DrawingView& drawing() { return window.drawing(); }
  EditCommands& edits() { return window.edits(); }
  int steps() { return window.document().undo_stack().index(); }
  void window_key(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier) {
    QTest::keyClick(&drawing(), key, keys);
    settle(window);
  }
  void expect_opens_again() {
    const Result<Crossing> again = read_crossing(write_crossing(crossing()), tables_for_tests());
    ASSERT_TRUE(again) << again.error().english();
  }
  QString status() { return window.statusBar()->currentMessage(); }
};

TEST(Clipboard, CopiedAndPasted_BetweenTwoWindows_AsText) {
  EditWindow from;
  const Utility main = *find_by_id(from.crossing().site.utilities, "u2");
  from.drawing().pick({ItemKind::utility, "u2", -1});
  from.window_key(Qt::Key_C, Qt::ControlModifier);
  EXPECT_TRUE(QGuiApplication::clipboard()->text().contains(QStringLiteral("burrowline-clip")));
  EXPECT_EQ(from.steps(), 0) << "copying changes nothing";
  EditWindow to("rail-siding");
  ASSERT_TRUE(to.opened);
  const std::size_t before = to.crossing().site.utilities.size();
  to.window_key(Qt::Key_V, Qt::ControlModifier);
  ASSERT_EQ(to.crossing().site.utilities.size(), before + 1);
  const Utility& fresh = to.crossing().site.utilities.back();
  EXPECT_EQ(fresh.name, main.name);
  EXPECT_EQ(fresh.path, main.path) << "where it was, since nothing like it lies there";
  EXPECT_EQ(to.steps(), 1);
  // Not knowing never looks safe: located somewhere else is not located here.
  EXPECT_EQ(fresh.located, Located());
  EXPECT_NE(to.window.document().assessment().verdict, Verdict::within_limits);
  EXPECT_FALSE(to.status().isEmpty()) << "it says what was left out";
  EXPECT_EQ(to.drawing().picked().id, fresh.id);
  to.expect_opens_again();
  to.window_key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(to.crossing().site.utilities.size(), before);
}

TEST(Clipboard, PastedWhereItStands_GoesHalfAMetreOn_WithANameOfItsOwn) {
  EditWindow w;
  w.drawing().pick({ItemKind::utility, "u2", -1});
  w.edits().copy();
  const Utility old = *find_by_id(w.crossing().site.utilities, "u2");
  w.edits().paste();
  w.edits().paste();
  const std::vector<Utility>& all = w.crossing().site.utilities;
  EXPECT_NEAR(all[all.size() - 2].path.front().x_m, old.path.front().x_m + 0.5, 1e-9);
  EXPECT_NEAR(all.back().path.front().x_m, old.path.front().x_m + 1.0, 1e-9);
  EXPECT_NE(all.back().name, old.name);
  EXPECT_EQ(w.steps(), 2);
}

TEST(Clipboard, Cut_IsOneStep_AndComesBackWithItsHoles) {
  EditWindow w;
  TestHole hole;
  hole.id = "h9";
  hole.utility = "u2";
  hole.station = Length{6};
  w.window.document().change(QStringLiteral("hole"), [&](Crossing& c) { c.site.test_holes.push_back(hole); });
  w.drawing().pick({ItemKind::utility, "u2", -1});
  w.window_key(Qt::Key_X, Qt::ControlModifier);
  EXPECT_EQ(w.steps(), 2);
  EXPECT_FALSE(find_by_id(w.crossing().site.utilities, "u2"));
  w.edits().paste();
  ASSERT_FALSE(w.crossing().site.test_holes.empty());
  EXPECT_EQ(w.crossing().site.test_holes.back().utility, w.crossing().site.utilities.back().id);
  w.expect_opens_again();
}

TEST(Clipboard, OtherText_IsRefusedInWords_AndChangesNothing) {
  EditWindow w;
  for (const char* text : {"", "hello", "{\"format\":\"burrowline-crossing\"}"}) {
    QGuiApplication::clipboard()->setText(QLatin1String(text));
    w.window_key(Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(w.steps(), 0) << text;
    EXPECT_TRUE(w.status().contains(QStringLiteral("Not pasted"))) << text;
  }
}

TEST(Clipboard, RoadPasted_IsNotAllowedThere) {
  EditWindow from;
  from.drawing().pick({ItemKind::surface, "f1", -1});
  ASSERT_EQ(*find_by_id(from.crossing().site.surface, "f1")->permission, Permission::allowed);
  from.edits().copy();
  from.edits().paste(2.0);
  const SurfaceFeature& fresh = from.crossing().site.surface.back();
  EXPECT_DOUBLE_EQ(fresh.from->m, 2.0) << "where it was asked";
  EXPECT_FALSE(fresh.permission.entered);
  const auto& findings = from.window.document().assessment().findings;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(),
                          [&](const Finding& f) { return f.subject == fresh.id && f.code.starts_with("missing."); }));
}

TEST(Select, All_ByKind_AndOfTheSameKind) {
  EditWindow w;
  w.window_key(Qt::Key_A, Qt::ControlModifier);
  EXPECT_EQ(w.drawing().several().size(), all_items(w.crossing()).size());
  w.edits().select_kind(ItemKind::utility);
  EXPECT_EQ(w.drawing().several().size(), w.crossing().site.utilities.size());
  w.drawing().pick({ItemKind::surface, "f2", -1});
  w.window_key(Qt::Key_A, Qt::ControlModifier | Qt::ShiftModifier);
  std::size_t footways = 0;
  for (const SurfaceFeature& f : w.crossing().site.surface) footways += f.kind == SurfaceKind::footway;
  ASSERT_GT(footways, 1u);
  EXPECT_EQ(w.drawing().several().size(), footways);
  EXPECT_EQ(w.steps(), 0);
}

TEST(Select, AllDeleted_OneStep_StratumStays_VerdictIsNotBetter) {
  EditWindow w;
  const Crossing before = w.crossing();
  w.window_key(Qt::Key_A, Qt::ControlModifier);
  w.window_key(Qt::Key_Delete);
  EXPECT_EQ(w.steps(), 1);
  EXPECT_TRUE(w.crossing().site.utilities.empty());
  EXPECT_TRUE(w.crossing().site.boundaries.empty());
  EXPECT_EQ(w.crossing().site.strata.size(), 1u);
  EXPECT_NE(w.window.document().assessment().verdict, Verdict::within_limits)
      << "a site that somebody emptied is not known";
  w.expect_opens_again();
  w.window_key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing(), before);
}

/// One of every kind of thing that has points.
std::vector<ItemRef> points_of_each_kind(const Crossing& c) {
  std::vector<ItemRef> all{{ItemKind::utility, c.site.utilities.front().id, 0},
                           {ItemKind::ground, {}, 1},
                           {ItemKind::stratum, c.site.strata.back().id, 1},
                           {ItemKind::water, {}, 1},
                           {ItemKind::around, c.site.boundaries.front().id, 0}};
  for (const SurfaceFeature& f : c.site.surface)
    if (!f.outline.empty()) all.push_back({ItemKind::surface, f.id, first_outline_corner});
  return all;
}

TEST(Points, Removed_OrToldWhyNot_EachKind) {
  EditWindow w;
  int removed = 0, stayed = 0;
  for (const ItemRef& point : points_of_each_kind(w.crossing())) {
    const Crossing before = w.crossing();
    w.drawing().pick(point);
    ASSERT_EQ(w.drawing().picked(), point) << static_cast<int>(point.kind);
    const int steps = w.steps();
    w.window.statusBar()->clearMessage();
    w.window_key(Qt::Key_Delete);
    if (w.steps() == steps + 1) {
      ++removed;
      EXPECT_NE(w.crossing(), before);
      w.expect_opens_again();
      w.window_key(Qt::Key_Z, Qt::ControlModifier);
    } else {
      ++stayed;
      EXPECT_FALSE(w.status().isEmpty()) << "never without a word: " << static_cast<int>(point.kind);
    }
    EXPECT_EQ(w.crossing(), before);
  }
  EXPECT_GE(removed, 3);
  EXPECT_GE(stayed, 2) << "a line of two points keeps them";
}

TEST(Points, Removed_EndOfALine_WhatWasDeclaredOfItGoes) {
  Crossing c = blank_crossing();
  Utility u;
  u.id = "u1";
  u.path = {{4, -5, 99.0}, {4, 0, 99.0}, {4, 5, 99.0}};
  u.ends.first = LineEnd::cap;
  u.ends.last = LineEnd::pole;
  c.site.utilities = {u};
  const Result<Crossing> without = without_point(c, {ItemKind::utility, "u1", 0});
  ASSERT_TRUE(without);
  EXPECT_FALSE(without->site.utilities[0].ends.first) << "nobody said why it ends at the next one";
  EXPECT_EQ(without->site.utilities[0].ends.last, LineEnd::pole);
  EXPECT_FALSE(without_point(*without_point(c, {ItemKind::utility, "u1", 1}), {ItemKind::utility, "u1", 1}));
}

TEST(Points, Added_TheCourseStays_UnknownDepthStaysUnknown) {
  Crossing c = blank_crossing();
  c.site.ground = {{0, 100}, {10, 102}};
  const auto ground = with_level_point(c, {ItemKind::ground, {}, -1}, 4);
  ASSERT_TRUE(ground);
  EXPECT_EQ(ground->point, (ItemRef{ItemKind::ground, {}, 1}));
  EXPECT_DOUBLE_EQ(ground->crossing.site.ground[1].elevation_m, 100.8);
  EXPECT_FALSE(with_level_point(c, {ItemKind::ground, {}, -1}, 10)) << "a point is there";
  EXPECT_FALSE(with_level_point(c, {ItemKind::water, {}, -1}, 4)) << "no water level is known";
  Utility u;
  u.id = "u1";
  u.path = {{4, -5, 99.0}, {4, 0, 98.0}, {4, 5, std::nullopt}};
  c.site.utilities = {u};
  const auto known = with_plan_point(c, {ItemKind::utility, "u1", -1}, {4.3, -2.5});
  ASSERT_TRUE(known);
  EXPECT_NEAR(*known->crossing.site.utilities[0].path[1].z_m, 98.5, 1e-12);
  EXPECT_NEAR(known->crossing.site.utilities[0].path[1].x_m, 4, 1e-12) << "on the line";
  const auto unknown = with_plan_point(c, {ItemKind::utility, "u1", -1}, {4.3, 2.5});
  ASSERT_TRUE(unknown);
  EXPECT_FALSE(unknown->crossing.site.utilities[0].path[2].z_m) << "between a known and an unknown one";
}

TEST(Delete, WaterLevel_IsNotKnownAfter_VerdictSaysSo) {
  EditWindow w;
  w.drawing().pick({ItemKind::water, {}, -1});
  w.window_key(Qt::Key_Delete);
  EXPECT_FALSE(w.crossing().site.water);
  const auto& findings = w.window.document().assessment().findings;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(),
                          [](const Finding& f) { return f.code.starts_with("missing.water"); }));
}

TEST(Rename, InPlace_ByKey_EscLeavesIt) {
  EditWindow w;
  for (const ItemRef& part : {ItemRef{ItemKind::utility, "u2", -1}, ItemRef{ItemKind::surface, "f1", -1},
                              ItemRef{ItemKind::around, "b1", -1}}) {
    w.drawing().pick(part);
    w.window_key(Qt::Key_F2, Qt::ShiftModifier);
    NameEntry* entry = w.edits().name_entry();
    ASSERT_TRUE(entry->isVisible());
    EXPECT_FALSE(entry->accessibleName().isEmpty());
    QTest::keyClicks(entry, QStringLiteral("other name"));
    QTest::keyClick(entry, Qt::Key_Escape);
    EXPECT_EQ(w.steps(), 0);
    w.window_key(Qt::Key_F2, Qt::ShiftModifier);
    QTest::keyClicks(entry, QStringLiteral("other name"));
    QTest::keyClick(entry, Qt::Key_Return);
    EXPECT_EQ(w.steps(), 1);
    EXPECT_EQ(part_name(w.crossing(), part), "other name");
    EXPECT_FALSE(entry->isVisible());
    w.window_key(Qt::Key_Z, Qt::ControlModifier);
  }
  w.drawing().pick({ItemKind::launch, {}, -1});
  EXPECT_FALSE(w.edits().may_rename());
}

TEST(Rename, NameInItsLane_DoubleClicked) {
  EditWindow w;
  const std::shared_ptr<const Labels> labels = w.drawing().labels();
  const QPointF at = labels->utilities.chips.front().box.center();
  w.press(at);
  w.release(at);
  w.mouse(QEvent::MouseButtonDblClick, at, Qt::LeftButton, Qt::LeftButton);
  w.release(at);
  EXPECT_TRUE(w.edits().name_entry()->isVisible());
}

// A lock keeps from dragging, searching and deleting, never from typing; it changes no verdict.
TEST(LockCommand, SelectedThing_IsNotDraggedNorDeleted_AndIsJudgedTheSame) {
  EditWindow w;
  const Verdict verdict = w.window.document().assessment().verdict;
  const std::size_t findings = w.window.document().assessment().findings.size();
  w.drawing().pick({ItemKind::utility, "u2", -1});
  w.window_key(Qt::Key_L, Qt::ControlModifier);
  EXPECT_EQ(w.crossing().locks, std::vector<std::string>{"/site/utilities/u2/path"});
  EXPECT_TRUE(w.edits().locked());
  EXPECT_EQ(w.window.document().assessment().verdict, verdict);
  EXPECT_EQ(w.window.document().assessment().findings.size(), findings);
  const Site before = w.crossing().site;
  const QPointF at = w.drawing().place_of({ItemKind::utility, "u2", -1});
  w.drag(at, at + QPointF(20, 20));
  w.key(Qt::Key_Up);
  w.window_key(Qt::Key_Delete);
  EXPECT_EQ(w.crossing().site, before);
  EXPECT_TRUE(w.status().contains(QStringLiteral("locked")));
  w.drawing().pick({ItemKind::utility, "u2", -1});
  w.window_key(Qt::Key_L, Qt::ControlModifier);
  EXPECT_TRUE(w.crossing().locks.empty());
  w.window_key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(w.crossing().locks.size(), 1u) << "locks are undone too";
}

TEST(LockCommand, AllOfAKind_AndOpenedAgain) {
  EditWindow w;
  w.edits().lock_kinds({ItemKind::ground, ItemKind::stratum, ItemKind::water}, true);
  EXPECT_TRUE(part_locked(w.crossing(), {ItemKind::ground, {}, 1}));
  EXPECT_TRUE(part_locked(w.crossing(), {ItemKind::water, {}, 0}));
  EXPECT_TRUE(part_locked(w.crossing(), {ItemKind::stratum, w.crossing().site.strata.back().id, 0}));
  EXPECT_FALSE(part_locked(w.crossing(), {ItemKind::utility, "u2", -1}));
  w.edits().lock_kinds({ItemKind::ground, ItemKind::stratum, ItemKind::water}, false);
  EXPECT_TRUE(w.crossing().locks.empty());
  w.expect_opens_again();
}

TEST(LockCommand, BesideAValue_OnItsPageAndOnItsCard) {
  EditWindow w;
  w.drawing().pick({ItemKind::launch, {}, -1});
  w.key(Qt::Key_F2);
  ASSERT_TRUE(w.window.value_card().isVisible());
  QLineEdit* level = w.window.value_card().entries()[1];
  QTest::keyClick(level, Qt::Key_L, Qt::ControlModifier);
  EXPECT_TRUE(lock_stands(w.crossing(), "/bore/launch/elevation_m"));
  EXPECT_FALSE(lock_stands(w.crossing(), "/bore/launch/station_m"));
  level->selectAll();
  QTest::keyClicks(level, QStringLiteral("101.2 m"));
  QTest::keyClick(level, Qt::Key_Return);
  EXPECT_DOUBLE_EQ(w.crossing().bore.launch.elevation.m, 101.2) << "a lock never keeps from typing";
  // Dragged, the launch keeps its level and moves along.
  const double station = w.crossing().bore.launch.station.m;
  const QPointF at = w.drawing().place_of({ItemKind::launch, {}, -1});
  w.drag(at, at + QPointF(-40, 40));
  EXPECT_DOUBLE_EQ(w.crossing().bore.launch.elevation.m, 101.2);
  EXPECT_LT(w.crossing().bore.launch.station.m, station);
}

TEST(Reverse, Command_OneStep_AndNotWithReadings) {
  EditWindow w;
  const Crossing before = w.crossing();
  w.edits().reverse();
  EXPECT_EQ(w.steps(), 1);
  EXPECT_NE(w.crossing(), before);
  w.expect_opens_again();
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
  w.window.document().change(QStringLiteral("record"), [](Crossing& c) { c.record.emplace_back(); });
  const Crossing with_record = w.crossing();
  w.edits().reverse();
  EXPECT_EQ(w.crossing(), with_record);
  EXPECT_TRUE(w.status().contains(QStringLiteral("Not reversed")));
}

// The mirror image of a level bore over a symmetrical site is judged the same.
TEST(Reverse, LevelBore_KeepsItsGaps) {
  EditWindow w;
  w.window.document().change(QStringLiteral("level"), [](Crossing& c) {
    c.bore.launch.grade.v = 0;
    for (LevelPoint& p : c.site.ground) p.elevation_m = 102.3;
    for (Stratum& s : c.site.strata)
      if (s.top)
        for (LevelPoint& p : *s.top) p.elevation_m = 101.5;
    for (Utility& u : c.site.utilities)
      if (u.id == "u2")
        for (PathVertex& v : u.path) v.x_m = 7;  // the middle of launch and exit
    c.bore.launch.station = Length{0};
    c.bore.exit.station = Length{14};
  });
  const auto gap = [&] {
    for (const UtilityAnswer& u : w.window.document().assessment().utilities)
      if (u.id == "u2") return u.separation_m;
    return std::optional<double>();
  };
  const std::optional<double> before = gap();
  ASSERT_TRUE(before);
  w.edits().reverse();
  ASSERT_TRUE(gap());
  EXPECT_NEAR(*gap(), *before, 1e-6);
}

}  // namespace
}  // namespace burrow

/// A change is a function on the whole crossing: one step of undo, a swap back and forth; a drag previews it.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "burrow/crossing/blank.h"
#include "burrow/document/undo_step.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

Edit lower_launch(double by_m) {
  return [by_m](Crossing& c) { c.bore.launch.elevation.m -= by_m; };
}

/// A crossing of a survey: many points, many lines that are drawn only.
Crossing surveyed() {
  Crossing crossing = blank_crossing();
  for (int i = 0; i < 50'000; ++i)
    crossing.site.ground_points.push_back({0.01 * i, static_cast<double>(i % 40) - 20, 100 + 0.001 * (i % 7)});
  for (int i = 0; i < 500; ++i) {
    Background& line = crossing.site.background.emplace_back();
    line.id = "b" + std::to_string(i);
    line.lines.push_back({{0, 0.1 * i}, {10, 0.1 * i}});
  }
  return crossing;
}

const UndoStep& step(Document& document, int at) {
  return dynamic_cast<const UndoStep&>(*document.undo_stack().command(at));
}

TEST(Document, Change_ThatLeavesAllAsItWas_IsNoStep) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  int told = 0;
  QObject::connect(&document, &Document::changed, [&] { ++told; });
  EXPECT_TRUE(document.change(QStringLiteral("nothing"), [](Crossing&) {}));
  EXPECT_TRUE(document.change(QStringLiteral("the same"), [](Crossing& c) { c.name = std::string(c.name); }));
  EXPECT_EQ(document.undo_stack().count(), 0);
  EXPECT_EQ(told, 0);
  EXPECT_FALSE(document.modified());
  EXPECT_TRUE(document.change(QStringLiteral("lower"), lower_launch(0.1)));
  EXPECT_EQ(document.undo_stack().count(), 1);
  EXPECT_EQ(document.undo_stack().undoText(), QStringLiteral("lower"));
  EXPECT_EQ(told, 1);
}

// Whole kind: a step may touch anything, the long lists too; back and forth gives the files byte by byte.
TEST(UndoStep, BackAndForth_GivesTheSameBytes) {
  const std::vector<Edit> edits{
      lower_launch(0.25),
      [](Crossing& c) {
        c.site.ground_points.push_back({1, 2, 103});
      },
      [](Crossing& c) { c.site.utilities.erase(c.site.utilities.begin()); },
      [](Crossing& c) { c.name = "another"; },
      [](Crossing& c) { c.site.background.emplace_back().id = "b1"; },
      [](Crossing& c) { c.site.ground_points.clear(); },
      [](Crossing& c) {
        c.site.utilities.front().name = "renamed";
        c.locks.push_back("/bore/exit");
      },
      [](Crossing& c) { c = blank_crossing(); },
  };
  for (const char* sample : {"house-service", "rail-siding", "sixty-utilities"}) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    std::vector<std::string> files{write_crossing(document.crossing())};
    for (const Edit& edit : edits) {
      ASSERT_TRUE(document.change(QStringLiteral("edit"), edit));
      files.push_back(write_crossing(document.crossing()));
    }
    ASSERT_EQ(document.undo_stack().count(), static_cast<int>(edits.size())) << sample;
    for (int round = 0; round < 2; ++round) {
      for (std::size_t i = edits.size(); i-- > 0;) {
        document.undo_stack().undo();
        EXPECT_EQ(write_crossing(document.crossing()), files[i]) << sample << " back to " << i;
      }
      for (std::size_t i = 1; i < files.size(); ++i) {
        document.undo_stack().redo();
        EXPECT_EQ(write_crossing(document.crossing()), files[i]) << sample << " on to " << i;
      }
    }
  }
}

TEST(UndoStep, HundredSteps_ShareTheSurvey) {
  Document document(tables_for_tests());
  const Crossing before = surveyed();
  document.start_from(before, false);
  for (int i = 0; i < 100; ++i) ASSERT_TRUE(document.change(QStringLiteral("lower"), lower_launch(0.001)));
  ASSERT_EQ(document.undo_stack().count(), 100);
  std::set<const void*> points, background, utilities;
  for (int i = 0; i < 100; ++i) {
    points.insert(step(document, i).lists().ground_points.get());
    background.insert(step(document, i).lists().background.get());
    utilities.insert(step(document, i).lists().utilities.get());
  }
  EXPECT_EQ(points.size(), 1u);
  EXPECT_EQ(background.size(), 1u);
  EXPECT_EQ(utilities.size(), 1u);
  EXPECT_NE(*points.begin(), nullptr);
  // Undo does not copy it either: the list of the crossing stays where it is.
  const Point3* there = document.crossing().site.ground_points.data();
  for (int i = 0; i < 100; ++i) document.undo_stack().undo();
  EXPECT_EQ(document.crossing().site.ground_points.data(), there);
  EXPECT_EQ(document.crossing(), before);
}

// A step that changes the survey holds the other one; those after it share the new one.
TEST(UndoStep, AChangedSurvey_IsHeldOncePerChange) {
  Document document(tables_for_tests());
  const Crossing before = surveyed();
  document.start_from(before, false);
  for (int i = 0; i < 10; ++i) ASSERT_TRUE(document.change(QStringLiteral("lower"), lower_launch(0.001)));
  ASSERT_TRUE(document.change(QStringLiteral("point"), [](Crossing& c) { c.site.ground_points.pop_back(); }));
  const Crossing fewer = document.crossing();
  for (int i = 0; i < 10; ++i) ASSERT_TRUE(document.change(QStringLiteral("lower"), lower_launch(0.001)));
  std::set<const void*> points;
  for (int i = 0; i < 21; ++i) points.insert(step(document, i).lists().ground_points.get());
  EXPECT_EQ(points.size(), 2u);
  for (int i = 0; i < 10; ++i) document.undo_stack().undo();
  EXPECT_EQ(document.crossing(), fewer);
  for (int i = 0; i < 11; ++i) document.undo_stack().undo();
  EXPECT_EQ(document.crossing(), before);
}

TEST(EditSession, Previews_AreNotCumulative) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const Crossing before = document.crossing();
  EditSession session(document, {ItemKind::launch, {}, -1});
  for (int i = 1; i <= 5; ++i) {
    session.preview(lower_launch(0.1));
    EXPECT_DOUBLE_EQ(document.crossing().bore.launch.elevation.m, before.bore.launch.elevation.m - 0.1);
  }
  // What one preview touched and the next does not is as it was.
  session.preview([](Crossing& c) {
    c.site.ground_points.push_back({1, 2, 103});
    c.site.utilities.pop_back();
  });
  session.preview([](Crossing& c) { c.bore.launch.grade.v += 0.01; });
  Crossing wanted = before;
  wanted.bore.launch.grade.v += 0.01;
  EXPECT_EQ(document.crossing(), wanted);
  EXPECT_EQ(document.undo_stack().count(), 0);
  session.finish(QStringLiteral("Turn"));
  EXPECT_EQ(document.crossing(), wanted);
  EXPECT_EQ(document.undo_stack().count(), 1);
  document.undo_stack().undo();
  EXPECT_EQ(write_crossing(document.crossing()), write_crossing(before));
  document.undo_stack().redo();
  EXPECT_EQ(document.crossing(), wanted);
}

TEST(EditSession, Abandoned_PutsEverythingBack) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const Crossing before = document.crossing();
  {
    EditSession session(document, {ItemKind::launch, {}, -1});
    session.preview([](Crossing& c) { c = blank_crossing(); });
    EXPECT_FALSE(document.change(QStringLiteral("in between"), lower_launch(1))) << "a drag is under way";
    EXPECT_EQ(document.crossing(), blank_crossing());
  }
  EXPECT_EQ(document.crossing(), before);
  EditSession back_again(document, {ItemKind::launch, {}, -1});
  back_again.preview(lower_launch(0.1));
  back_again.preview([](Crossing&) {});
  back_again.finish(QStringLiteral("Move"));
  EXPECT_EQ(document.undo_stack().count(), 0) << "dragged back to where it was";
  EXPECT_TRUE(document.change(QStringLiteral("lower"), lower_launch(0.1)));
}

TEST(EditSession, AFrameOfADrag_DoesNotCopyTheSurvey) {
  Document document(tables_for_tests());
  document.start_from(surveyed(), false);
  const Point3* there = document.crossing().site.ground_points.data();
  EditSession session(document, {ItemKind::launch, {}, -1});
  for (int i = 1; i <= 10; ++i) session.preview(lower_launch(0.01 * i));
  EXPECT_EQ(document.crossing().site.ground_points.data(), there);
  session.finish(QStringLiteral("Move"));
  document.undo_stack().undo();
  EXPECT_EQ(document.crossing().site.ground_points.data(), there);
  EXPECT_EQ(document.crossing(), surveyed());
}

}  // namespace
}  // namespace burrow

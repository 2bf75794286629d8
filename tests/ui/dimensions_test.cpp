/// Dimension lines: what they measure, that dragging and typing them sets it, and that labels keep clear of the rest.

#include "burrow/drawing/dimension_lines.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <cmath>

#include "burrow/drawing/flags.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

constexpr const char* samples[] = {"house-service", "rail-siding",  "car-park-duct",
                                   "four-faults",   "first-lesson", "sixty-utilities"};

struct DimensionWindow : TestWindow {
  explicit DimensionWindow(const char* sample, QSize size = {1600, 900}) : TestWindow(sample, size) {}
  DrawingView& drawing() { return window.drawing(); }
  std::vector<DimensionLine> lines() { return drawing().dimension_lines_shown(); }
  std::optional<DimensionLine> line(MeasureKind kind, const std::string& id = {}) {
    for (const DimensionLine& l : lines())
      if (l.measure.kind == kind && (id.empty() || l.measure.id == id)) return l;
    return std::nullopt;
  }
  double value(const MeasureRef& measure) {
    return measure_value(crossing(), window.document().assessment(), measure).value_or(NAN);
  }
  int steps() { return window.document().undo_stack().index(); }
  void doubleclick(const QPointF& at) {
    mouse(QEvent::MouseButtonPress, at, Qt::LeftButton, Qt::LeftButton);
    mouse(QEvent::MouseButtonRelease, at, Qt::LeftButton, Qt::NoButton);
    mouse(QEvent::MouseButtonDblClick, at, Qt::LeftButton, Qt::LeftButton);
    mouse(QEvent::MouseButtonRelease, at, Qt::LeftButton, Qt::NoButton);
  }
  void type(const char* text) {
    QLineEdit* entry = window.value_card().entries().front();
    entry->selectAll();
    QTest::keyClicks(entry, QString::fromUtf8(text));
    QTest::keyClick(entry, Qt::Key_Return);
  }
  std::string utility(const char* name) {
    for (const Utility& u : crossing().site.utilities)
      if (u.name == name) return u.id;
    return {};
  }
};

// Brute force: the same numbers from the points of the path and the ground line, without the code under test.
TEST(Measures, AreThoseOfThePathAndTheGround) {
  for (const char* sample : samples) {
    DimensionWindow w(sample);
    const Crossing& c = w.crossing();
    const Assessment& a = w.window.document().assessment();
    EXPECT_DOUBLE_EQ(w.value({MeasureKind::bore_length, {}}), c.bore.exit.station.m - c.bore.launch.station.m);
    EXPECT_DOUBLE_EQ(w.value({MeasureKind::launch_depth, {}}),
                     elevation_at(c.site.ground, c.bore.launch.station.m) - c.bore.launch.elevation.m);
    if (a.arrival.elevation_m) {
      EXPECT_DOUBLE_EQ(w.value({MeasureKind::exit_depth, {}}),
                       elevation_at(c.site.ground, c.bore.exit.station.m) - *a.arrival.elevation_m);
    }
    for (const MeasureRef& m : measures_of(c, a)) {
      if (m.kind != MeasureKind::surface_cover) continue;
      double least = 1e9;
      for (const SurfaceFeature& f : c.site.surface)
        for (const PathPoint& p : a.bore.points)
          if (f.id == m.id && p.x_m >= f.from->m && p.x_m <= f.to->m) least = std::min(least, p.cover_m);
      EXPECT_DOUBLE_EQ(w.value(m), least) << sample;
    }
  }
}

// Whatever is typed stands afterwards, to half a millimetre, though the path is predicted.
TEST(Measures, EachComesToWhatIsTyped) {
  for (const char* sample : samples) {
    DimensionWindow w(sample);
    const Tables& tables = w.window.document().tables();
    int tried = 0;
    for (const MeasureRef& m : measures_of(w.crossing(), w.window.document().assessment())) {
      if (m.kind == MeasureKind::separation && ++tried > 4) continue;
      const double wanted = w.value(m) + 0.07;
      const Result<Crossing> after = with_measure(w.crossing(), tables, m, wanted);
      if (!after) {
        EXPECT_FALSE(after.error().expected.empty());
        EXPECT_TRUE(m.kind == MeasureKind::separation || m.kind == MeasureKind::exit_depth)
            << sample << " " << after.error().english();
        continue;
      }
      EXPECT_NEAR(measure_value(*after, assess(*after, tables), m).value_or(NAN), wanted, 0.0006)
          << sample << " " << measure_name(*after, m);
      EXPECT_EQ(after->site, w.crossing().site) << "what lies in the ground is a fact";
    }
  }
}

TEST(Measures, OutOfReach_SaysHowNearItComes) {
  DimensionWindow w("house-service");
  const Result<Crossing> after =
      with_measure(w.crossing(), w.window.document().tables(), {MeasureKind::bore_length, {}}, 0.1);
  ASSERT_FALSE(after);
  EXPECT_NE(after.error().expected.english().find("0.50 m"), std::string::npos) << after.error().english();
}

TEST(Dimensions, LabelsKeepClearOfUtilitiesAndEachOther) {
  for (const char* sample : samples)
    for (const QSize size : {QSize(1600, 900), QSize(1000, 640)}) {
      DimensionWindow w(sample, size);
      for (const ItemRef& part : {ItemRef{}, ItemRef{ItemKind::launch, {}, -1}, ItemRef{ItemKind::exit, {}, -1}}) {
        w.drawing().pick(part);
        const std::vector<DimensionLine> lines = w.lines();
        const Frame& frame = w.drawing().frame();
        for (std::size_t i = 0; i < lines.size(); ++i) {
          const QRectF& box = lines[i].label;
          EXPECT_TRUE((lines[i].pane == Pane::plan ? frame.plan : frame.elevation).contains(box));
          for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(box.intersects(lines[j].label)) << sample;
          if (lines[i].pane == Pane::plan) continue;
          for (const Utility& u : w.crossing().site.utilities) {
            const UtilityMark mark = utility_mark(u);
            if (mark.depth_known) {
              EXPECT_FALSE(box.contains(frame.side(mark.station_m, mark.elevation_m))) << sample;
            }
          }
        }
      }
    }
}

TEST(Dimensions, DraggedDepth_MovesTheLevelAlone_OneStep) {
  DimensionWindow w("house-service");
  const auto depth = w.line(MeasureKind::launch_depth);
  ASSERT_TRUE(depth);
  const Crossing before = w.crossing();
  const double by = 0.2;
  w.drag(depth->to, depth->to + QPointF(5, by * depth->pull.y()));
  EXPECT_NEAR(w.value(depth->measure), depth->value_m + by, 0.0051);
  Crossing expected = before;
  expected.bore.launch.elevation = w.crossing().bore.launch.elevation;
  EXPECT_EQ(w.crossing(), expected) << "the station stays though the pointer moved aside";
  EXPECT_EQ(w.steps(), 1);
  EXPECT_NEAR(std::round(w.value(depth->measure) * 100), w.value(depth->measure) * 100, 1e-6) << "whole centimetres";
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(Dimensions, DraggedLengthCoverAndExitDepth_FollowThePointer) {
  for (const MeasureKind kind : {MeasureKind::bore_length, MeasureKind::surface_cover, MeasureKind::exit_depth}) {
    DimensionWindow w("house-service");
    const auto line = w.line(kind);
    ASSERT_TRUE(line) << static_cast<int>(kind);
    w.drag(line->to, line->to + 0.1 * line->pull);
    EXPECT_NEAR(w.value(line->measure), line->value_m + 0.1, 0.03) << static_cast<int>(kind);
    EXPECT_EQ(w.steps(), 1);
  }
}

TEST(Dimensions, GapToThePickedUtility_MovesTheBoreNotTheUtility) {
  DimensionWindow w("house-service");
  const std::string gas = w.utility("gas main");
  EXPECT_TRUE(w.line(MeasureKind::separation, gas)) << "the worst one is measured without being selected";
  w.drawing().pick({ItemKind::utility, gas, -1});
  const auto gap = w.line(MeasureKind::separation, gas);
  ASSERT_TRUE(gap);
  ASSERT_FALSE(gap->pull.isNull());
  const Site before = w.crossing().site;
  const QPointF at = gap->label.center();
  w.drag(at, at + 0.1 * gap->pull);
  EXPECT_NEAR(w.value(gap->measure), gap->value_m + 0.1, 0.02);
  EXPECT_EQ(w.crossing().site, before);
  EXPECT_EQ(w.drawing().picked().id, gas) << "it stays picked";
}

TEST(Dimensions, FloorOfThePickedPit_BothWays) {
  DimensionWindow w("house-service");
  EXPECT_FALSE(w.line(MeasureKind::floor_length));
  for (const char* pit : {"launch", "exit"}) {
    w.drawing().pick({std::string(pit) == "launch" ? ItemKind::launch : ItemKind::exit, {}, -1});
    for (const MeasureKind kind : {MeasureKind::floor_length, MeasureKind::floor_width}) {
      const auto line = w.line(kind, pit);
      ASSERT_TRUE(line) << pit << static_cast<int>(kind);
      w.drag(line->label.center(), line->label.center() + 0.3 * line->pull);
      EXPECT_NEAR(w.value(line->measure), line->value_m + 0.3, 0.0051) << pit << static_cast<int>(kind);
    }
  }
  EXPECT_TRUE(w.crossing().pits.launch.floor_length);
  EXPECT_TRUE(w.crossing().pits.exit.floor_width);
}

TEST(Dimensions, EscDuringTheDrag_PutsBack) {
  DimensionWindow w("house-service");
  const auto depth = w.line(MeasureKind::launch_depth);
  ASSERT_TRUE(depth);
  const Crossing before = w.crossing();
  w.press(depth->to);
  w.move(depth->to + QPointF(0, 30));
  EXPECT_NE(w.crossing(), before);
  w.key(Qt::Key_Escape);
  w.release(depth->to + QPointF(0, 30));
  EXPECT_EQ(w.crossing(), before);
  EXPECT_EQ(w.steps(), 0);
}

TEST(Dimensions, DoubleClickTypes_InAnyUnit_OneStep) {
  DimensionWindow w("house-service");
  const auto cover = w.line(MeasureKind::surface_cover);
  ASSERT_TRUE(cover);
  w.doubleclick(cover->label.center());
  ASSERT_TRUE(w.window.value_card().isVisible());
  ASSERT_EQ(w.window.value_card().entries().size(), 1u);
  w.type("4' 6\"");
  EXPECT_FALSE(w.window.value_card().isVisible());
  EXPECT_NEAR(w.value(cover->measure), 1.3716, 0.0006);
  EXPECT_EQ(w.steps(), 1);
}

TEST(Dimensions, TypedNonsense_StaysAndChangesNothing) {
  DimensionWindow w("house-service");
  const auto length = w.line(MeasureKind::bore_length);
  ASSERT_TRUE(length);
  const Crossing before = w.crossing();
  w.doubleclick(length->label.center());
  ASSERT_TRUE(w.window.value_card().isVisible());
  w.type("long enough");
  EXPECT_TRUE(w.window.value_card().isVisible());
  EXPECT_EQ(w.crossing(), before);
}

TEST(Dimensions, Locked_LooksLockedSaysWhyAndDoesNotMove_ButIsTyped) {
  DimensionWindow w("house-service");
  Crossing locked = w.crossing();
  locked.locks.emplace_back("/bore/launch/elevation_m");
  w.window.document().start_from(locked, false);
  QCoreApplication::processEvents();
  const auto depth = w.line(MeasureKind::launch_depth);
  ASSERT_TRUE(depth);
  EXPECT_EQ(depth->lock, "/bore/launch/elevation_m");
  EXPECT_TRUE(why_held(*depth).contains(QStringLiteral("/bore/launch/elevation_m")));
  w.press(depth->to);
  w.move(depth->to + QPointF(0, 10));
  w.move(depth->to + QPointF(0, 40));
  EXPECT_FALSE(w.drawing().dragging());
  w.release(depth->to + QPointF(0, 40));
  EXPECT_EQ(w.crossing(), locked);
  w.doubleclick(depth->label.center());
  ASSERT_TRUE(w.window.value_card().isVisible());
  w.type("1.5 m");
  EXPECT_NEAR(w.value(depth->measure), 1.5, 1e-9) << "a lock never keeps from typing";
}

TEST(Dimensions, ByKeyboard_DPicksOneAfterTheOther_EnterTypes) {
  DimensionWindow w("house-service");
  const std::vector<DimensionLine> lines = w.lines();
  ASSERT_GE(lines.size(), 3u);
  w.drawing().setFocus();
  for (const DimensionLine& line : lines) {
    w.key(Qt::Key_D);
    EXPECT_EQ(w.drawing().picked_measure(), line.measure);
  }
  w.key(Qt::Key_D, Qt::ShiftModifier);
  EXPECT_EQ(w.drawing().picked_measure(), lines[lines.size() - 2].measure);
  w.key(Qt::Key_Return);
  EXPECT_TRUE(w.window.value_card().isVisible());
  QTest::keyClick(w.window.value_card().entries().front(), Qt::Key_Escape);
  w.key(Qt::Key_Escape);
  EXPECT_FALSE(w.drawing().picked_measure());
}

TEST(Dimensions, FarAway_OnlyTheLengthStays_OffNone) {
  DimensionWindow w("rail-siding");
  EXPECT_GT(w.lines().size(), 2u);
  const double length = w.crossing().bore.exit.station.m - w.crossing().bore.launch.station.m;
  w.drawing().show_stations(-8 * length, 9 * length, false);
  for (const DimensionLine& line : w.lines()) EXPECT_EQ(line.measure.kind, MeasureKind::bore_length);
  w.drawing().set_dimensions(false);
  EXPECT_TRUE(w.lines().empty());
}

TEST(Dimensions, NumbersFollowTheUnits) {
  DimensionWindow w("house-service");
  w.window.set_units(UnitSystem::us);
  const auto length = w.line(MeasureKind::bore_length);
  ASSERT_TRUE(length);
  EXPECT_TRUE(
      length->text.contains(QString::fromStdString(format(length->value_m, Dimension::length, UnitSystem::us))));
}

TEST(Dimensions, NewerFile_IsNotDragged) {
  DimensionWindow w("house-service");
  Crossing newer = w.crossing();
  newer.version = known_file_version + 1;
  w.window.document().start_from(newer, false);
  QCoreApplication::processEvents();
  const auto depth = w.line(MeasureKind::launch_depth);
  ASSERT_TRUE(depth);
  w.drag(depth->to, depth->to + QPointF(0, 40));
  EXPECT_EQ(w.crossing(), newer);
}

}  // namespace
}  // namespace burrow

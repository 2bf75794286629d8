/// Several things at once in the real window: picked by a box and by Shift, changed, duplicated and removed as one
/// step.

#include "burrow/document/several.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <set>

#include "burrow/drawing/box_pick.h"
#include "burrow/drawing/handles.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct SeveralWindow : TestWindow {
  explicit SeveralWindow(const char* sample) : TestWindow(sample) { drawing().set_dimensions(false); }
  DrawingView& drawing() { return window.drawing(); }
  SeveralPanel& panel() { return window.side().several(); }
  int steps() { return window.document().undo_stack().index(); }
  void box(const QPointF& from, const QPointF& to, Qt::KeyboardModifiers keys = Qt::NoModifier) {
    mouse(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton, keys);
    for (int i = 1; i <= 4; ++i)
      mouse(QEvent::MouseMove, from + (to - from) * i / 4, Qt::NoButton, Qt::LeftButton, keys);
    mouse(QEvent::MouseButtonRelease, to, Qt::LeftButton, Qt::NoButton, keys);
  }
  /// An empty place near the upper edge of the plan, as far to the right as there is one.
  QPointF empty_corner() {
    const Scene now{
        crossing(),   window.document().assessment(), window.document().tables(), drawing().frame(), drawing().style(),
        Interaction{}};
    QPointF at = drawing().frame().plan.topRight() + QPointF(-3, 3);
    while (at.x() > now.frame.plan.left() && !part_at(now, at, 9).none()) at.rx() -= 1;
    return at;
  }
  /// Over the plan from there to the lower left corner.
  void box_over_the_plan(Qt::KeyboardModifiers keys = Qt::NoModifier) {
    box(empty_corner(), drawing().frame().plan.bottomLeft() + QPointF(3, -3), keys);
  }
  void pick_all_utilities() {
    std::vector<ItemRef> all;
    for (const Utility& u : crossing().site.utilities) all.push_back({ItemKind::utility, u.id, -1});
    drawing().pick_several(all);
    QCoreApplication::processEvents();
  }
  std::set<std::string> picked_ids() {
    std::set<std::string> ids;
    for (const ItemRef& p : drawing().all_picked()) ids.insert(p.id);
    return ids;
  }
  void expect_opens_again() {
    const Result<Crossing> again = read_crossing(write_crossing(crossing()), tables_for_tests());
    ASSERT_TRUE(again) << again.error().english();
    EXPECT_EQ(*again, crossing());
  }
};

TEST(BoxPick, OverThePlan_TakesEveryLineInIt_ChangesNothing) {
  SeveralWindow w("house-service");
  const Crossing before = w.crossing();
  const Frame frame = w.drawing().frame();
  const QRectF box = QRectF(w.empty_corner(), frame.plan.bottomLeft() + QPointF(3, -3)).normalized();
  w.box_over_the_plan();
  std::set<std::string> wanted;
  for (const Utility& u : w.crossing().site.utilities)
    for (std::size_t i = 0; i + 1 < u.path.size(); ++i)
      for (int k = 0; k <= 200; ++k) {  // brute force along each piece
        const double t = k / 200.0;
        const QPointF at = frame.above(u.path[i].x_m + t * (u.path[i + 1].x_m - u.path[i].x_m),
                                       u.path[i].y_m + t * (u.path[i + 1].y_m - u.path[i].y_m));
        if (box.contains(at)) wanted.insert(u.id);
      }
  ASSERT_GE(wanted.size(), 2u);
  for (const std::string& id : wanted) EXPECT_TRUE(w.picked_ids().contains(id)) << id;
  EXPECT_EQ(w.crossing(), before);
  EXPECT_EQ(w.drawing().frame(), frame) << "it picks, it does not pan";
  EXPECT_TRUE(w.panel().isVisible());
  EXPECT_TRUE(w.drawing().picked().none());
}

TEST(BoxPick, ShiftAdds_WithoutItBeginsAnew_EscLetsGo) {
  SeveralWindow w("house-service");
  const std::string first = w.crossing().site.utilities.front().id;
  w.drawing().pick({ItemKind::utility, first, -1});
  w.box_over_the_plan(Qt::ShiftModifier);
  const auto with_shift = w.picked_ids();
  EXPECT_TRUE(with_shift.contains(first));
  const QPointF corner = w.empty_corner();
  w.box(corner, corner + QPointF(-4, 4));
  EXPECT_TRUE(w.picked_ids().empty()) << "an empty box picks nothing";
  EXPECT_FALSE(w.panel().isVisible());
  w.pick_all_utilities();
  w.drawing().setFocus();
  w.key(Qt::Key_Escape);
  EXPECT_TRUE(w.picked_ids().empty());
}

TEST(BoxPick, EscDuringTheBox_KeepsNothing) {
  SeveralWindow w("house-service");
  const QPointF middle = w.drawing().frame().plan.center();
  w.press(w.empty_corner());
  w.move(middle);
  w.key(Qt::Key_Escape);
  w.release(middle);
  EXPECT_TRUE(w.picked_ids().empty());
}

TEST(BoxPick, ShiftClick_AddsAndTakesAway) {
  SeveralWindow w("house-service");
  std::vector<QPointF> at;
  std::vector<std::string> ids;
  for (const Utility& u : w.crossing().site.utilities) {
    const UtilityMark mark = utility_mark(u);
    if (!mark.depth_known) continue;
    ids.push_back(u.id);
    at.push_back(w.drawing().frame().side(mark.station_m, mark.elevation_m));
  }
  ASSERT_GE(ids.size(), 3u);
  for (std::size_t i = 0; i < 3; ++i) {
    w.mouse(QEvent::MouseButtonPress, at[i], Qt::LeftButton, Qt::LeftButton, Qt::ShiftModifier);
    w.mouse(QEvent::MouseButtonRelease, at[i], Qt::LeftButton, Qt::NoButton, Qt::ShiftModifier);
    EXPECT_EQ(w.picked_ids().size(), i + 1);
  }
  w.mouse(QEvent::MouseButtonPress, at[1], Qt::LeftButton, Qt::LeftButton, Qt::ShiftModifier);
  w.mouse(QEvent::MouseButtonRelease, at[1], Qt::LeftButton, Qt::NoButton, Qt::ShiftModifier);
  EXPECT_EQ(w.picked_ids(), (std::set{ids[0], ids[2]}));
}

// Shift also means "move freely": with a drag it still does.
TEST(BoxPick, ShiftDragOfAThing_MovesItAsBefore) {
  SeveralWindow w("house-service");
  const Utility before = w.crossing().site.utilities.front();
  const QPointF from = w.drawing().place_of({ItemKind::utility, before.id, -1});
  w.click(from);
  w.mouse(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton, Qt::ShiftModifier);
  for (int i = 1; i <= 4; ++i)
    w.mouse(QEvent::MouseMove, from + QPointF(5.0 * i, 4.0 * i), Qt::NoButton, Qt::LeftButton, Qt::ShiftModifier);
  w.mouse(QEvent::MouseButtonRelease, from + QPointF(20, 16), Qt::LeftButton, Qt::NoButton, Qt::ShiftModifier);
  EXPECT_NE(w.crossing().site.utilities.front().path, before.path);
  EXPECT_EQ(w.steps(), 1);
}

TEST(BoxPick, SpaceAndDrag_PansAsTheMiddleButtonDoes) {
  SeveralWindow w("house-service");
  const double before = w.drawing().frame().left_station_m;
  w.drawing().setFocus();
  const QPointF from = w.empty_corner();
  QTest::keyPress(&w.drawing(), Qt::Key_Space);
  w.drag(from, from + QPointF(-100, 0));
  QTest::keyRelease(&w.drawing(), Qt::Key_Space);
  EXPECT_NE(w.drawing().frame().left_station_m, before);
  EXPECT_TRUE(w.picked_ids().empty());
}

TEST(Several, SharedValue_IsTypedForAll_OneStep_VariousWhereTheyDiffer) {
  SeveralWindow w("house-service");
  const Crossing before = w.crossing();
  w.pick_all_utilities();
  EntryForm* form = w.panel().values();
  const int size = form->find(QStringLiteral("outside diameter"));
  ASSERT_GE(size, 0);
  EXPECT_EQ(form->entry(size)->placeholderText(), QStringLiteral("various"));
  EXPECT_EQ(form->find(QStringLiteral("station")), -1) << "they would come to lie on one another";
  form->entry(size)->setFocus();
  QTest::keyClicks(form->entry(size), QStringLiteral("4 in"));
  QTest::keyClick(form->entry(size), Qt::Key_Return);
  for (const Utility& u : w.crossing().site.utilities) EXPECT_NEAR(u.outside_diameter->m, 0.1016, 1e-12);
  EXPECT_EQ(w.steps(), 1);
  w.panel().refresh_now();
  EXPECT_NE(form->entry(size)->placeholderText(), QStringLiteral("various"));
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(Several, WrongValue_IsToldAndNothingChanges) {
  SeveralWindow w("house-service");
  const Crossing before = w.crossing();
  w.pick_all_utilities();
  EntryForm* form = w.panel().values();
  const int size = form->find(QStringLiteral("outside diameter"));
  form->entry(size)->setFocus();
  QTest::keyClicks(form->entry(size), QStringLiteral("90 m"));
  QTest::keyClick(form->entry(size), Qt::Key_Return);
  EXPECT_EQ(w.crossing(), before);
  EXPECT_FALSE(form->complaint(size).isEmpty());
}

TEST(Several, KindAndStatus_ChosenForAll) {
  SeveralWindow w("house-service");
  w.pick_all_utilities();
  EXPECT_EQ(w.panel().kinds()->currentText(), QStringLiteral("various"));
  const int row = w.panel().kinds()->findText(QStringLiteral("water"));
  ASSERT_GT(row, 0);
  w.panel().kinds()->setCurrentIndex(row);
  Q_EMIT w.panel().kinds()->activated(row);
  for (const Utility& u : w.crossing().site.utilities) EXPECT_EQ(u.kind, UtilityKind::water);
  EXPECT_EQ(w.steps(), 1);
  EXPECT_EQ(w.panel().kinds()->currentText(), QStringLiteral("water"));
}

TEST(Several, RemovedAndDuplicated_AsOneStepEach_FileOpensAgain) {
  SeveralWindow w("house-service");
  const Crossing before = w.crossing();
  w.pick_all_utilities();
  QTest::mouseClick(w.panel().button_duplicate(), Qt::LeftButton);
  EXPECT_EQ(w.crossing().site.utilities.size(), 2 * before.site.utilities.size());
  EXPECT_EQ(w.steps(), 1);
  std::set<std::string> ids;
  for (const Utility& u : w.crossing().site.utilities) ids.insert(u.id);
  EXPECT_EQ(ids.size(), w.crossing().site.utilities.size()) << "each has an id of its own";
  EXPECT_EQ(w.picked_ids().size(), before.site.utilities.size()) << "the copies are picked";
  w.expect_opens_again();
  QTest::mouseClick(w.panel().button_remove(), Qt::LeftButton);
  EXPECT_EQ(w.crossing().site.utilities, before.site.utilities);
  EXPECT_EQ(w.steps(), 2);
  w.window.document().undo_stack().undo();
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
  EXPECT_FALSE(w.panel().isVisible());
}

TEST(Several, MixedKinds_ShareNothing_AndSayIt) {
  SeveralWindow w("house-service");
  w.drawing().pick_several({{ItemKind::utility, w.crossing().site.utilities.front().id, -1},
                            {ItemKind::surface, w.crossing().site.surface.front().id, -1}});
  QCoreApplication::processEvents();
  EXPECT_TRUE(w.panel().nothing_shared()->isVisible());
  EXPECT_TRUE(w.panel().heading()->text().contains(QStringLiteral("1 utility, 1 road")))
      << w.panel().heading()->text().toStdString();
  QTest::mouseClick(w.panel().button_remove(), Qt::LeftButton);
  EXPECT_EQ(w.steps(), 1);
  w.expect_opens_again();
}

// Whole kind: everything that can be picked with others, duplicated and removed, leaves a crossing that opens again.
TEST(Several, EverythingDuplicatedAndRemoved_OpensAgain) {
  for (const char* sample : {"house-service", "rail-siding", "four-faults", "sixty-utilities", "first-lesson"}) {
    SeveralWindow w(sample);
    std::vector<ItemRef> all;
    const Site& site = w.crossing().site;
    for (const Utility& u : site.utilities) all.push_back({ItemKind::utility, u.id, -1});
    for (const SurfaceFeature& s : site.surface) all.push_back({ItemKind::surface, s.id, -1});
    for (const Stratum& s : site.strata) all.push_back({ItemKind::stratum, s.id, -1});
    for (const TestHole& h : site.test_holes) all.push_back({ItemKind::test_holes, h.id, -1});
    const Copies copies = site_with_copies(w.crossing(), all);
    ASSERT_EQ(copies.parts.size(), all.size()) << sample;
    ASSERT_TRUE(w.window.document().change(QStringLiteral("copies"), [&](Crossing& to) { to.site = copies.site; }));
    w.expect_opens_again();
    (void)w.window.document().assessment();
    ASSERT_TRUE(w.window.document().change(QStringLiteral("gone"),
                                           [&](Crossing& to) { to.site = site_without(w.crossing(), all); }));
    EXPECT_FALSE(w.crossing().site.strata.empty());
    w.expect_opens_again();
    (void)w.window.document().assessment();
  }
}

// A copy lies where nobody has looked: nothing of what was found at the old place counts there.
TEST(Several, Duplicated_NothingEstablishedGoesAlong) {
  SeveralWindow w("house-service");
  std::vector<ItemRef> all;
  for (const Utility& u : w.crossing().site.utilities) all.push_back({ItemKind::utility, u.id, -1});
  for (const SurfaceFeature& s : w.crossing().site.surface) all.push_back({ItemKind::surface, s.id, -1});
  for (const Stratum& s : w.crossing().site.strata) all.push_back({ItemKind::stratum, s.id, -1});
  for (const TestHole& h : w.crossing().site.test_holes) all.push_back({ItemKind::test_holes, h.id, -1});
  const Copies copies = site_with_copies(w.crossing(), all);
  const auto copied = [&](const std::string& id) {
    return std::any_of(copies.parts.begin(), copies.parts.end(), [&](const ItemRef& part) { return part.id == id; });
  };
  int seen = 0;
  for (const Utility& u : copies.site.utilities)
    if (copied(u.id)) {
      ++seen;
      EXPECT_EQ(u.located, Located()) << u.id;
      EXPECT_EQ(u.ends, LineEnds()) << u.id;
    }
  for (const SurfaceFeature& s : copies.site.surface)
    if (copied(s.id)) {
      ++seen;
      EXPECT_TRUE(s.permit.empty()) << s.id;
    }
  for (const Stratum& s : copies.site.strata)
    if (copied(s.id)) {
      ++seen;
      EXPECT_EQ(s.known, Stratum().known) << s.id;
    }
  for (const TestHole& h : copies.site.test_holes)
    if (copied(h.id)) {
      ++seen;
      EXPECT_TRUE(h.by.empty() && !h.date && !h.elevation) << h.id;
    }
  EXPECT_EQ(seen, static_cast<int>(all.size()));
}

TEST(Several, GoneByUndo_IsNoLongerPicked) {
  SeveralWindow w("house-service");
  w.pick_all_utilities();
  w.panel().duplicate();
  w.window.document().undo_stack().undo();
  QCoreApplication::processEvents();
  EXPECT_TRUE(w.picked_ids().empty());
  EXPECT_FALSE(w.panel().isVisible());
}

}  // namespace
}  // namespace burrow

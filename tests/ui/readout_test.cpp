/// What a drag tells in place of the tool bar.

#include "burrow/drawing/readout.h"

#include <gtest/gtest.h>

#include <memory>

#include "burrow/window/tool_strip.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(Readout, DragOfTheLaunch_BeforeAndNow_TheToolsComeBack) {
  TestWindow w("house-service");
  const QPointF from = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  const int height = w.window.tools().height();
  EXPECT_FALSE(w.window.tools().reads_out());
  w.press(from);
  for (int i = 1; i <= 6; ++i) {
    w.move(from + QPointF(0, 5.0 * i));
    settle(w.window);
  }
  EXPECT_TRUE(w.window.tools().reads_out());
  EXPECT_EQ(w.window.tools().height(), height) << "nothing moves";
  const Readout& readout = w.window.tools().readout().readout();
  const auto number = [&](const QString& what) {
    for (const ChangedNumber& n : readout.numbers)
      if (n.now.what == what) return n;
    ADD_FAILURE() << what.toStdString() << " is not told";
    return ChangedNumber{};
  };
  const ChangedNumber level = number(QStringLiteral("axis level"));
  EXPECT_NE(level.before, level.now.value);
  EXPECT_EQ(level.now.value.toStdString(),
            format(w.crossing().bore.launch.elevation.m, Dimension::station, UnitSystem::metric));
  const ChangedNumber gap = number(QStringLiteral("gas main, clear"));
  EXPECT_FALSE(gap.now.limit.isEmpty()) << "the limit that decides is named";
  EXPECT_NE(gap.now.kept, Kept::kept) << "wide enough, and still to be exposed";
  EXPECT_FALSE(w.window.tools().readout().sentence().isEmpty());
  w.key(Qt::Key_Escape);
  w.release(from);
  settle(w.window);
  EXPECT_FALSE(w.window.tools().reads_out());
}

// The program is ended in the middle of a drag, as by a signal: the drag goes back, and nothing is touched that has
// gone.
TEST(Readout, WindowEndsInADrag) {
  auto w = std::make_unique<TestWindow>("house-service");
  const QPointF from = w->window.drawing().place_of({ItemKind::launch, {}, -1});
  w->press(from);
  for (int i = 1; i <= 3; ++i) {
    w->move(from + QPointF(0, 6.0 * i));
    settle(w->window);
  }
  ASSERT_TRUE(w->window.drawing().dragging());
  w.reset();
}

TEST(Readout, Beside_PairsByWhatItIs) {
  const LiveNumber was{QStringLiteral("cover"), QStringLiteral("1 m"), {}, Kept::kept};
  const LiveNumber is{QStringLiteral("cover"), QStringLiteral("2 m"), {}, Kept::kept};
  const LiveNumber fresh{QStringLiteral("heading"), QStringLiteral("1°"), {}, Kept::not_judged};
  const std::vector<ChangedNumber> both = beside({was}, {fresh, is});
  ASSERT_EQ(both.size(), 2u);
  EXPECT_TRUE(both[0].before.isEmpty());
  EXPECT_EQ(both[1].before, QStringLiteral("1 m"));
}

// Every number that has a limit says whether it is kept, and so does the assessment.
TEST(Readout, BrokenLimits_AreThoseOfTheAssessment) {
  for (const char* sample : {"house-service", "four-faults", "rail-siding"}) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    for (const UtilityAnswer& answer : document.assessment().utilities) {
      if (!answer.separation_m || !answer.required_m) continue;
      const auto numbers = live_numbers(document.crossing(), document.assessment(), {ItemKind::utility, answer.id, -1},
                                        UnitSystem::metric, {});
      ASSERT_FALSE(numbers.empty());
      EXPECT_EQ(numbers.front().kept == Kept::broken, *answer.separation_m < *answer.required_m) << answer.name;
    }
  }
}

// Not knowing never looks safe: a gap that is wide enough is not called kept while a finding about the same line
// counts, nor a cover while an owner's is broken.
TEST(Readout, KeptOnlyWhereNoFindingCounts) {
  Crossing crossing;
  Assessment assessment;
  UtilityAnswer answer;
  answer.id = "gas";
  answer.name = "gas main";
  answer.separation_m = 0.9;
  answer.required_m = 0.5;
  assessment.utilities.push_back(answer);
  assessment.cover.least_m = 1.4;
  assessment.cover.required_m = 1.2;
  const auto kept = [&](const char* what, const ItemRef& part) {
    for (const LiveNumber& n : live_numbers(crossing, assessment, part, UnitSystem::metric, {"gas"}))
      if (n.what == QLatin1String(what)) return n.kept;
    ADD_FAILURE() << what << " is not told";
    return Kept::broken;
  };
  const ItemRef line{ItemKind::utility, "gas", -1}, launch{ItemKind::launch, {}, -1};
  EXPECT_EQ(kept("clear gap", line), Kept::kept);
  EXPECT_EQ(kept("gas main, clear", launch), Kept::kept);
  EXPECT_EQ(kept("least cover", launch), Kept::kept);
  Finding expose;
  expose.severity = Severity::caution;
  expose.code = "utility.expose";
  expose.subject = "gas";
  Finding owner;
  owner.severity = Severity::stop;
  owner.code = "surface.cover";
  owner.subject = "road";
  assessment.findings = {expose, owner};
  EXPECT_EQ(kept("clear gap", line), Kept::not_judged);
  EXPECT_EQ(kept("gas main, clear", launch), Kept::not_judged);
  EXPECT_EQ(kept("least cover", launch), Kept::not_judged);
}

// The owner's cover stands there where it leaves less than the program's own, and only over his road.
TEST(Readout, CoverThatDecides_IsNamed) {
  Crossing crossing;
  SurfaceFeature road;
  road.id = "road";
  road.name = "Mill Lane";
  crossing.site.surface = {road};
  Assessment assessment;
  assessment.cover.least_m = 1.40;
  assessment.cover.required_m = 0.65;
  for (const auto& [x, cover] : {std::pair{1.0, 1.40}, std::pair{5.0, 1.52}, std::pair{9.0, 1.45}}) {
    PathPoint p;
    p.x_m = x;
    p.cover_m = cover;
    assessment.bore.points.push_back(p);
  }
  RuleZone zone;
  zone.id = "road";
  zone.from_m = 4;
  zone.to_m = 6;
  const auto cover_of = [&](std::optional<double> wanted_m) {
    zone.cover_m = wanted_m;
    assessment.zones = {zone};
    for (const LiveNumber& n : live_numbers(crossing, assessment, {ItemKind::launch, {}, -1}, UnitSystem::metric, {}))
      if (n.what.contains(QStringLiteral("cover"))) return n;
    return LiveNumber{};
  };
  EXPECT_EQ(cover_of(std::nullopt).what, QStringLiteral("least cover"));
  EXPECT_EQ(cover_of(0.70).what, QStringLiteral("least cover")) << "0.75 m to spare against 0.82 m";
  const LiveNumber owner = cover_of(1.60);
  EXPECT_TRUE(owner.what.contains(QStringLiteral("Mill Lane"))) << owner.what.toStdString();
  EXPECT_EQ(owner.value, QStringLiteral("1.52 m"));
  EXPECT_EQ(owner.limit, QStringLiteral("1.60 m required"));
  EXPECT_EQ(owner.kept, Kept::broken);
}

}  // namespace
}  // namespace burrow

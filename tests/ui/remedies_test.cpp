/// What mends a finding: each offered change does, and breaks nothing else.

#include "burrow/document/remedies.h"

#include <gtest/gtest.h>

#include <QPointer>
#include <QPushButton>

#include "burrow/check/assess.h"
#include "burrow/check/mute.h"
#include "panels/finding_details.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

long stops(const Assessment& a) {
  return std::count_if(a.findings.begin(), a.findings.end(),
                       [](const Finding& f) { return f.severity == Severity::stop; });
}

// By a second route: the answer of `assess()` for the changed crossing, read finding by finding.
TEST(Remedies, EachTakesItsFindingAway_AndAddsNone) {
  int offered = 0;
  for (const char* sample : {"house-service", "four-faults", "rail-siding", "car-park-duct", "first-lesson"}) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    const Assessment now = document.assessment();
    for (const Finding& finding : now.findings) {
      for (const Remedy& remedy : remedies(document.crossing(), tables_for_tests(), now, finding, {})) {
        ++offered;
        const Assessment then = assess(remedy.after, tables_for_tests());
        EXPECT_LE(stops(then), stops(now)) << sample << " " << finding.code;
        // What comes instead is told, and is less than what goes.
        for (const Finding& f : then.findings) {
          const bool was = std::any_of(now.findings.begin(), now.findings.end(), [&](const Finding& g) {
            return g.code == f.code && g.subject == f.subject && g.severity <= f.severity;
          });
          if (was || !counts_in_verdict(f)) continue;
          EXPECT_GT(f.severity, finding.severity) << sample << " " << finding.code << " brings " << f.code;
          EXPECT_TRUE(std::any_of(remedy.brings.begin(), remedy.brings.end(), [&](const Finding& g) {
            return g.code == f.code && g.subject == f.subject;
          })) << f.code;
        }
        for (const Finding& f : then.findings)
          EXPECT_FALSE(f.code == finding.code && f.subject == finding.subject && counts_in_verdict(f))
              << sample << " " << finding.code;
        EXPECT_EQ(remedy.after.site, document.crossing().site) << "what lies in the ground is a fact";
      }
    }
  }
  EXPECT_GT(offered, 0);
}

TEST(Remedies, HouseService_LowersUntilClear_WithFiftyMillimetresToSpare) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const Assessment now = document.assessment();
  const Finding& finding = now.findings.front();
  ASSERT_EQ(finding.code, "utility.separation");
  const std::vector<Remedy> found = remedies(document.crossing(), tables_for_tests(), now, finding, {});
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found.front().kind, RemedyKind::lower);
  const Assessment then = assess(found.front().after, tables_for_tests());
  for (const UtilityAnswer& answer : then.utilities)
    if (answer.id == finding.subject) {
      EXPECT_GE(*answer.separation_m, *answer.required_m + 0.049);
    }
  EXPECT_NEAR(found.front().value_m * 100, std::round(found.front().value_m * 100), 1e-6) << "a whole centimetre";
}

TEST(Remedies, LockedLevel_IsLeftAlone_OtherFindingsHaveNone) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  Crossing locked = document.crossing();
  locked.locks.push_back("/bore/launch/elevation_m");
  const Assessment now = assess(locked, tables_for_tests());
  EXPECT_TRUE(remedies(locked, tables_for_tests(), now, now.findings.front(), {}).empty());
  Finding other;
  other.code = "bore.length";
  EXPECT_TRUE(remedies(document.crossing(), tables_for_tests(), document.assessment(), other, {}).empty());
}

TEST(Remedies, Button_DoesItInOneStep_AndComesFirstWhereOneCanBeHurt) {
  TestWindow w("house-service");
  w.window.findings().pick(0);
  FindingDetails* details = w.window.findings().details();
  ASSERT_TRUE(comes([&] { return details->actions().size() == 2; }));
  EXPECT_TRUE(details->actions().front()->text().contains(QStringLiteral("Test hole")));
  const Crossing before = w.crossing();
  QTest::mouseClick(details->actions().back(), Qt::LeftButton);
  EXPECT_LT(w.crossing().bore.launch.elevation.m, before.bore.launch.elevation.m);
  EXPECT_EQ(w.window.document().undo_stack().index(), 1);
  for (const Finding& f : w.window.document().assessment().findings) EXPECT_NE(f.code, "utility.separation");
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

// A remedy is a whole layout: one that was found before a change would take the change back without a word.
TEST(Remedies, FoundBeforeAChange_IsNotApplied) {
  TestWindow w("house-service");
  w.window.findings().pick(0);
  FindingDetails* details = w.window.findings().details();
  ASSERT_TRUE(comes([&] { return details->actions().size() == 2; }));
  const QPointer<QPushButton> button = details->actions().back();
  ASSERT_TRUE(w.window.document().change(QStringLiteral("exit"), [](Crossing& c) { c.bore.exit.station.m += 0.25; }));
  const Crossing changed = w.crossing();
  ASSERT_TRUE(button) << "still there: the judging is not done";
  button->click();
  EXPECT_EQ(w.crossing(), changed) << "nothing was taken back";
  // Sought anew, for the crossing as it is.
  ASSERT_TRUE(comes([&] { return details->actions().size() == 2 && details->actions().back() != button; }));
  details->actions().back()->click();
  EXPECT_EQ(w.crossing().bore.exit.station.m, changed.bore.exit.station.m);
  EXPECT_LT(w.crossing().bore.launch.elevation.m, changed.bore.launch.elevation.m);
}

}  // namespace
}  // namespace burrow

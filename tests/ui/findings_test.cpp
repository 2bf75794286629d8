/// The list of findings in the real window: muting with a reason, choosing among them, jumping to their place.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>

#include "burrow/check/mute.h"
#include "burrow/drawing/flags.h"
#include "burrow/file/crossing_file.h"
#include "burrow/words/headline.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct FindingsWindow : TestWindow {
  explicit FindingsWindow(const char* sample) : TestWindow(sample) {
    page().set_today([] { return QDate(2026, 3, 1); });
    page().filter_bar()->show_all();
  }
  FindingsPanel& page() { return window.findings(); }
  const std::vector<Finding>& all() { return window.document().assessment().findings; }
  int first(auto holds) {
    const auto at = std::find_if(all().begin(), all().end(), holds);
    return at == all().end() ? -1 : static_cast<int>(at - all().begin());
  }
  int caution() {
    return first([](const Finding& f) { return f.severity == Severity::caution && !f.muted && !f.missing; });
  }
  int shown() { return page().list()->model()->rowCount(); }
  int steps() { return window.document().undo_stack().index(); }
  QString row_text(int shown_row) {
    return page().list()->model()->index(shown_row, 0).data(Qt::DisplayRole).toString();
  }
  /// By keyboard alone: M on the list, the reason, Enter.
  void mute(int row, const char* reason) {
    page().pick(row);
    QTest::keyClick(page().list(), Qt::Key_M);
    page().mute_form()->reason()->selectAll();
    QTest::keyClicks(page().mute_form()->reason(), QString::fromUtf8(reason));
    page().mute_form()->by()->setText(QStringLiteral("A. M."));
    QTest::keyClick(page().mute_form()->reason(), Qt::Key_Return);
    QCoreApplication::processEvents();
  }
};

TEST(Muting, ByKeyboard_IsOneStepAndInTheFile) {
  FindingsWindow w("car-park-duct");
  const int row = w.caution();
  ASSERT_GE(row, 0);
  const Finding before = w.all()[static_cast<std::size_t>(row)];
  const Crossing crossing_before = w.crossing();
  w.mute(row, "seen on site");
  EXPECT_EQ(w.steps(), 1);
  ASSERT_EQ(w.crossing().muted.size(), 1u);
  EXPECT_EQ(w.crossing().muted.front().reason, "seen on site");
  EXPECT_EQ(w.crossing().muted.front().date, "2026-03-01");
  EXPECT_FALSE(w.page().mute_form()->isVisible());
  const int now = w.page().picked_row();
  ASSERT_GE(now, 0) << "it stays picked, wherever it has gone in the list";
  EXPECT_EQ(w.all()[static_cast<std::size_t>(now)].code, before.code);
  EXPECT_TRUE(w.all()[static_cast<std::size_t>(now)].muted);
  EXPECT_TRUE(w.page().working().contains(QStringLiteral("seen on site")));
  EXPECT_EQ(w.shown(), static_cast<int>(w.all().size())) << "it stays in the list";
  const Result<Crossing> again = read_crossing(write_crossing(w.crossing()), tables_for_tests());
  ASSERT_TRUE(again);
  EXPECT_EQ(again->muted, w.crossing().muted);

  QTest::keyClick(w.page().list(), Qt::Key_U);
  EXPECT_TRUE(w.crossing().muted.empty());
  EXPECT_EQ(w.steps(), 2);
  w.window.document().undo_stack().undo();
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), crossing_before);
}

TEST(Muting, WithoutAReason_IsRefusedAndSaysWhy) {
  FindingsWindow w("car-park-duct");
  ASSERT_GE(w.caution(), 0);
  w.mute(w.caution(), "  ");
  EXPECT_TRUE(w.crossing().muted.empty());
  EXPECT_EQ(w.steps(), 0);
  EXPECT_TRUE(w.page().mute_form()->isVisible());
  EXPECT_TRUE(w.page().mute_form()->wrong()->isVisible());
  EXPECT_TRUE(w.page().mute_form()->wrong()->text().contains(QStringLiteral("reason is missing")))
      << w.page().mute_form()->wrong()->text().toStdString();
  QTest::keyClick(w.page().mute_form()->reason(), Qt::Key_Escape);
  EXPECT_FALSE(w.page().mute_form()->isVisible());
}

TEST(Muting, WithoutAName_IsRefused) {
  FindingsWindow w("car-park-duct");
  ASSERT_GE(w.caution(), 0);
  w.page().pick(w.caution());
  QTest::keyClick(w.page().list(), Qt::Key_M);
  w.page().mute_form()->by()->clear();
  QTest::keyClicks(w.page().mute_form()->reason(), QStringLiteral("seen on site"));
  QTest::keyClick(w.page().mute_form()->reason(), Qt::Key_Return);
  EXPECT_TRUE(w.crossing().muted.empty());
  EXPECT_TRUE(w.page().mute_form()->wrong()->text().contains(QStringLiteral("name is missing")))
      << w.page().mute_form()->wrong()->text().toStdString();
}

TEST(Muting, AStop_StillCountsKeepsItsFlagAndSaysSo) {
  FindingsWindow w("sixty-utilities");
  ASSERT_EQ(w.window.document().assessment().verdict, Verdict::stop);
  const int row = w.first([](const Finding& f) { return f.severity == Severity::stop && f.code == "bore.length"; });
  ASSERT_GE(row, 0);
  w.page().pick(row);
  QTest::mouseClick(w.page().mute(), Qt::LeftButton);
  EXPECT_TRUE(w.page().mute_form()->effect()->text().contains(QStringLiteral("stays “Stop”")));
  w.mute(row, "the owner knows");
  EXPECT_EQ(w.window.document().assessment().verdict, Verdict::stop);
  const Scene scene{w.crossing(),
                    w.window.document().assessment(),
                    w.window.document().tables(),
                    w.window.drawing().frame(),
                    w.window.drawing().style(),
                    Interaction{}};
  const FlagLane lane = place_flag_lane(scene);
  const int now = w.page().picked_row();
  const auto holds = [&](const std::vector<int>& numbers) {
    return std::find(numbers.begin(), numbers.end(), now) != numbers.end();
  };
  EXPECT_TRUE(std::any_of(lane.flags.begin(), lane.flags.end(),
                          [&](const Flag& f) { return f.finding == now || holds(f.others); }) ||
              std::any_of(lane.dots.begin(), lane.dots.end(), [&](const FlagDot& d) { return holds(d.findings); }));
}

TEST(Muting, GotWorse_CountsAgainAndTheListSaysSo) {
  FindingsWindow w("car-park-duct");
  const int row = w.first([](const Finding& f) {
    return f.severity == Severity::caution && f.measured && *f.measured > 0 && !can_hurt_people(f);
  });
  ASSERT_GE(row, 0);
  const Finding finding = w.all()[static_cast<std::size_t>(row)];
  w.mute(row, "agreed");
  std::vector<Mute> muted = w.crossing().muted;
  muted.front().measured = *finding.measured * (finding.at_least ? 1.5 : 0.5);  // it was better when muted
  ASSERT_TRUE(w.window.document().change(QStringLiteral("worse"), [&](Crossing& to) { to.muted = muted; }));
  settle(w.window);
  const int now = w.first([&](const Finding& f) { return f.code == finding.code && f.subject == finding.subject; });
  ASSERT_GE(now, 0);
  EXPECT_FALSE(w.all()[static_cast<std::size_t>(now)].muted);
  w.page().pick(now);
  w.page().filter_bar()->words()->setText(QStringLiteral("has got worse since"));
  EXPECT_EQ(w.shown(), 2) << "the finding, and the note that its mute is void";
  EXPECT_TRUE(w.page().unmute()->isVisible()) << "what no longer holds can be taken away";
}

// At what may hurt people there is nothing to accept: no button, no key, no entry; what a file brings can be taken
// back.
TEST(Muting, WhatMayHurt_IsNotOffered) {
  FindingsWindow w("four-faults");
  const int row = w.first([](const Finding& f) { return can_hurt_people(f) && counts_in_verdict(f) && !f.muted; });
  ASSERT_GE(row, 0);
  w.page().pick(row);
  EXPECT_FALSE(w.page().may_accept(row));
  EXPECT_FALSE(w.page().mute()->isVisible());
  QString why;
  QObject::connect(&w.page(), &FindingsPanel::refused, &w.page(), [&](const QString& shown_text) { why = shown_text; });
  QTest::keyClick(w.page().list(), Qt::Key_M);
  EXPECT_FALSE(w.page().mute_form()->isVisible());
  EXPECT_FALSE(why.isEmpty());

  const Finding finding = w.all()[static_cast<std::size_t>(row)];
  const Result<std::vector<Mute>> muted =
      with_mute(w.crossing(), finding, {"typed into the file", "A. M.", "2026-03-01"});
  ASSERT_TRUE(muted);
  w.window.document().change(QStringLiteral("mute"), [&](Crossing& c) { c.muted = *muted; });
  w.page().set_units(UnitSystem::metric);
  settle(w.window);
  const int now = w.first([&](const Finding& f) { return f.code == finding.code && f.subject == finding.subject; });
  ASSERT_GE(now, 0);
  w.page().pick(now);
  EXPECT_TRUE(w.page().unmute()->isVisible());
}

TEST(Muting, NewerFile_IsRefusedWithItsReason) {
  FindingsWindow w("house-service");
  Crossing newer = w.crossing();
  newer.version = known_file_version + 1;
  w.window.document().start_from(newer, false);
  QString why;
  QObject::connect(&w.page(), &FindingsPanel::refused, &w.page(), [&](const QString& shown_text) { why = shown_text; });
  const int row = w.first([&](const Finding& f) { return !can_hurt_people(f); });
  ASSERT_GE(row, 0);
  w.mute(row, "anything");
  EXPECT_FALSE(why.isEmpty());
  EXPECT_TRUE(w.crossing().muted.empty());
  EXPECT_TRUE(w.page().mute_form()->isVisible()) << "what was typed is not lost";
}

TEST(Filter, Words_KeepNumbersAndSayHowManyAreHidden) {
  FindingsWindow w("house-service");
  const int whole = w.shown();
  QTest::keyClicks(w.page().filter_bar()->words(), QStringLiteral("GAS main"));
  ASSERT_GT(w.shown(), 0);
  ASSERT_LT(w.shown(), whole);
  for (int row = 0; row < w.shown(); ++row) {
    const int number = w.page().list()->model()->index(row, 0).data(finding_number_role).toInt();
    const Finding& f = w.all()[static_cast<std::size_t>(number - 1)];
    EXPECT_EQ(w.row_text(row), QString::fromStdString(finding_text(f, UnitSystem::metric)));
    EXPECT_EQ(f.name, "gas main");
  }
  EXPECT_EQ(w.page().filter_bar()->count()->text(),
            QStringLiteral("%1 of %2 shown, %3 hidden").arg(w.shown()).arg(whole).arg(whole - w.shown()));
  EXPECT_TRUE(w.page().filter_bar()->count()->isVisible());
  QTest::mouseClick(w.page().filter_bar()->all(), Qt::LeftButton);
  EXPECT_EQ(w.shown(), whole);
  EXPECT_FALSE(w.page().filter_bar()->count()->isVisible());
}

TEST(Filter, EachKind_ShowsItsOwn_TogetherAll) {
  FindingsWindow w("four-faults");
  FilterBar* bar = w.page().filter_bar();
  int sum = 0;
  for (const FindingKind kind : {FindingKind::stop, FindingKind::missing, FindingKind::caution, FindingKind::note}) {
    if (!bar->kind(kind)->isVisible()) continue;
    QTest::mouseClick(bar->kind(kind), Qt::LeftButton);
    EXPECT_GT(w.shown(), 0) << "a kind of which there is none has no button";
    EXPECT_TRUE(bar->kind(kind)->text().contains(QString::number(w.shown())));
    sum += w.shown();
  }
  EXPECT_EQ(sum, static_cast<int>(w.all().size()));
  EXPECT_FALSE(bar->kind(FindingKind::muted)->isVisible());
  QTest::keyClicks(bar->words(), QStringLiteral("nothing has this word"));
  EXPECT_EQ(w.shown(), 0);
  EXPECT_TRUE(w.page().empty_note()->isVisible());
  EXPECT_TRUE(w.page().empty_note()->text().contains(QStringLiteral("choose “all”")))
      << w.page().empty_note()->text().toStdString();
  EXPECT_FALSE(w.page().list()->isVisible());
}

TEST(Filter, Accepted_AreOfTheirOwnKind_NumbersAreThoseOfTheBar) {
  FindingsWindow w("car-park-duct");
  ASSERT_GE(w.caution(), 0);
  w.mute(w.caution(), "agreed with the owner");
  FilterBar* bar = w.page().filter_bar();
  ASSERT_TRUE(bar->kind(FindingKind::muted)->isVisible());
  QTest::mouseClick(bar->kind(FindingKind::muted), Qt::LeftButton);
  EXPECT_EQ(w.shown(), 1);
  for (const FindingCount& counted : finding_counts(w.all())) {
    const FindingKind kind = counted.mark == FindingMark::stop      ? FindingKind::stop
                             : counted.mark == FindingMark::missing ? FindingKind::missing
                             : counted.mark == FindingMark::caution ? FindingKind::caution
                                                                    : FindingKind::note;
    QTest::mouseClick(bar->kind(kind), Qt::LeftButton);
    EXPECT_EQ(w.shown(), counted.count) << count_words(counted).toStdString();
  }
}

TEST(Filter, Notes_AreFoldedBelowWhatCounts) {
  TestWindow w("house-service");
  FilterBar* bar = w.window.findings().filter_bar();
  const auto& all = w.window.document().assessment().findings;
  const auto notes = std::count_if(all.begin(), all.end(),
                                   [](const Finding& f) { return f.severity == Severity::note && !f.missing; });
  ASSERT_GT(notes, 0);
  const auto shown = [&] { return w.window.findings().list()->model()->rowCount(); };
  EXPECT_EQ(shown(), static_cast<int>(all.size()) - notes);
  EXPECT_TRUE(bar->notes()->text().contains(QString::number(notes)));
  QTest::mouseClick(bar->notes(), Qt::LeftButton);
  EXPECT_EQ(shown(), static_cast<int>(all.size()));
  QTest::mouseClick(bar->notes(), Qt::LeftButton);
  bar->words()->setText(QStringLiteral("blows"));
  EXPECT_GT(shown(), 0) << "who looks for a note finds it";
  bar->words()->clear();
  for (int i = 0; i < static_cast<int>(all.size()); ++i) {
    w.window.findings().pick(i);
    EXPECT_EQ(w.window.findings().picked_row(), i) << "what is asked for is shown";
  }
}

TEST(Filter, OnlyNotes_AreShown) {
  TestWindow w("first-lesson");
  const auto& all = w.window.document().assessment().findings;
  for (const Finding& f : all) ASSERT_EQ(f.severity, Severity::note) << f.code;
  EXPECT_EQ(w.window.findings().list()->model()->rowCount(), static_cast<int>(all.size()));
}

TEST(Filter, PickedThing_ShowsWhatIsAboutIt) {
  FindingsWindow w("house-service");
  std::string gas;
  for (const Utility& u : w.crossing().site.utilities)
    if (u.name == "gas main") gas = u.id;
  w.page().filter_bar()->picked_only()->setChecked(true);
  EXPECT_EQ(w.shown(), 0);
  EXPECT_TRUE(w.page().empty_note()->text().contains(QStringLiteral("select something on the drawing")));
  w.window.drawing().pick({ItemKind::utility, gas, -1});
  const auto about = std::count_if(w.all().begin(), w.all().end(), [&](const Finding& f) { return f.subject == gas; });
  ASSERT_GT(about, 0);
  EXPECT_EQ(w.shown(), about);
  EXPECT_TRUE(w.page().filter_bar()->picked_only()->text().contains(QStringLiteral("gas main")));
}

// A flag on the drawing leads to its finding, whatever the filter hides.
TEST(Filter, PickingWhatItHides_LiftsIt) {
  FindingsWindow w("house-service");
  w.page().filter_bar()->words()->setText(QStringLiteral("no such words anywhere"));
  ASSERT_EQ(w.shown(), 0);
  w.page().pick(2);
  EXPECT_EQ(w.page().picked_row(), 2);
  EXPECT_EQ(w.shown(), static_cast<int>(w.all().size()));
  EXPECT_TRUE(w.page().filter_bar()->words()->text().isEmpty());
}

TEST(Jump, EnterGoesThereAndOnWithTheDrawing) {
  FindingsWindow w("house-service");
  const int row = w.first([](const Finding& f) { return f.station_m.has_value(); });
  ASSERT_GE(row, 0);
  w.page().pick(row);
  int went = -1;
  QObject::connect(&w.page(), &FindingsPanel::jump_wanted, &w.page(), [&](int to) { went = to; });
  QTest::keyClick(w.page().list(), Qt::Key_Return);
  EXPECT_EQ(went, row);
  went = -1;
  const QRect place = w.page().list()->visualRect(w.page().list()->currentIndex());
  const QPoint words = place.topLeft() + QPoint(40, 20);  // where a row has them, folded or not
  QTest::mouseClick(w.page().list()->viewport(), Qt::LeftButton, Qt::NoModifier, words);
  QTest::mouseDClick(w.page().list()->viewport(), Qt::LeftButton, Qt::NoModifier, words);
  EXPECT_EQ(went, row);
}

// The list is put in order anew while something is dragged; what is picked stays picked and nothing is jumped to.
TEST(Jump, NotByADragThatChangesTheOrder) {
  FindingsWindow w("car-park-duct");
  ASSERT_GE(w.caution(), 0);
  w.page().pick(w.caution());
  const Finding finding = w.all()[static_cast<std::size_t>(w.page().picked_row())];
  int jumps = 0;
  QObject::connect(&w.page(), &FindingsPanel::picked, &w.page(), [&](int) { ++jumps; });
  const QPointF from = w.window.drawing().place_of({ItemKind::launch, {}, -1});
  w.press(from);
  for (int i = 1; i <= 6; ++i) {
    w.move(from + QPointF(0, -6.0 * i));
    settle(w.window);
    const int row = w.page().picked_row();
    if (row < 0) continue;
    EXPECT_EQ(w.all()[static_cast<std::size_t>(row)].code, finding.code);
  }
  w.key(Qt::Key_Escape);
  w.release(from);
  EXPECT_EQ(jumps, 0);
}

}  // namespace
}  // namespace burrow

/// What a person vouches for on the page of the utilities: typed, chosen, undone; several questions answered at once.

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>

#include "burrow/document/answers_at_once.h"
#include "burrow/document/utility_entry.h"
#include "burrow/document/utility_fields.h"
#include "burrow/panels/at_once_form.h"
#include "burrow/panels/utilities_panel.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

using Page = PanelBeside<UtilitiesPanel>;

const Utility& utility_of(const Crossing& crossing, const std::string& id) {
  const auto& all = crossing.site.utilities;
  return *std::find_if(all.begin(), all.end(), [&](const Utility& u) { return u.id == id; });
}

QPushButton* button(QWidget& panel, const char* begins) {
  for (QPushButton* one : panel.findChildren<QPushButton*>())
    if (one->text().startsWith(QString::fromUtf8(begins))) return one;
  return nullptr;
}

QLineEdit* entry(QWidget& form, const char* name) {
  for (QLineEdit* one : form.findChildren<QLineEdit*>())
    if (one->accessibleName() == QString::fromUtf8(name)) return one;
  return nullptr;
}

void type_over(QLineEdit* entry, const char* text) {
  ASSERT_TRUE(entry);
  entry->setFocus();
  entry->selectAll();
  QTest::keyClick(entry, Qt::Key_Delete);
  QTest::keyClicks(entry, QString::fromUtf8(text));
}

/// A crossing of which two lines end near the bore without a word, and whose lines drawn only nobody looked at.
Crossing with_open_questions(Crossing crossing) {
  for (Utility& utility : crossing.site.utilities) utility.ends = {LineEnd::chamber, LineEnd::chamber, {}};
  Utility& first = crossing.site.utilities[0];
  first.ends = {};
  first.path = {{5, 1.0, 99.0}, {5, 30.0, 99.0}};
  Utility& second = crossing.site.utilities[1];
  second.ends = {};
  second.path = {{6, -2.0, 99.0}, {6, 3.0, 99.0}};
  for (const char* id : {"bg1", "bg2"}) {
    Background line;
    line.id = id;
    line.name = id;
    line.lines = {{{0, 3}, {9, 3}}};
    crossing.site.background.push_back(line);
  }
  return crossing;
}

TEST(UtilitiesEntry, EndsTracerAndAbandonment_AreOneStepEach) {
  Page w("house-service");
  ASSERT_TRUE(w.opened);
  Crossing bare = w.crossing();
  for (Utility& utility : bare.site.utilities) {
    utility.ends = {};
    utility.abandonment = {};
    utility.located.tracer.reset();
  }
  w.document.start_from(bare, false);
  w.panel.pick("u2");
  w.panel.refresh_now();
  const auto u2 = [&]() -> const Utility& { return utility_of(w.crossing(), "u2"); };
  int steps = 0;
  const auto one_more = [&](const char* what) {
    EXPECT_EQ(w.steps(), ++steps) << what;
    w.expect_opens_again();
  };
  w.choose("its first end", "pole");
  EXPECT_EQ(u2().ends.first, LineEnd::pole);
  one_more("first end");
  w.choose("its last end", "record ends there");
  EXPECT_EQ(u2().ends.last, LineEnd::edge_of_record);
  one_more("last end");
  w.choose("its last end", "not said");
  EXPECT_FALSE(u2().ends.last);
  one_more("taken back");
  w.choose("the tracing followed", "a sonde");
  EXPECT_EQ(u2().located.tracer, TracedBy::sonde);
  one_more("tracer");
  w.choose("status", "abandoned");
  one_more("status");
  EXPECT_FALSE(w.panel.abandonment()->isHidden());
  w.type(w.panel.abandonment(), "how it was proved to be out of use", "cut and capped, seen");
  one_more("how");
  w.type(w.panel.abandonment(), "proved by", "A. Digger");
  one_more("by");
  w.type(w.panel.abandonment(), "proved on", "2026-02-27");
  one_more("on");
  EXPECT_EQ(u2().abandonment, (Statement{"cut and capped, seen", "A. Digger", "2026-02-27", {}}));
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), bare);
}

TEST(UtilitiesEntry, Hole_WhoMeasuredAndWhoAgreed) {
  Page w("house-service");
  w.panel.pick("u4");  // has its hole
  w.panel.refresh_now();
  const Crossing before = w.crossing();
  const int steps = w.steps();
  const auto hole = [&]() -> const TestHole& { return w.crossing().site.test_holes.front(); };
  w.type(w.panel.hole_texts(), "measured by", "B. Spade");
  w.type(w.panel.hole_texts(), "measured on", "2026-02-26");
  w.type(w.panel.hole_texts(), "where it contradicts the record: why the hole counts", "record of the old line");
  w.type(w.panel.hole_texts(), "agreed by", "the water board");
  w.type(w.panel.hole_texts(), "agreed on", "2026-02-28");
  EXPECT_EQ(hole().by, "B. Spade");
  EXPECT_EQ(hole().date, "2026-02-26");
  EXPECT_EQ(hole().agreed, (Statement{"record of the old line", "the water board", "2026-02-28", {}}));
  EXPECT_GE(w.steps(), steps + 3);
  w.expect_opens_again();
  while (w.steps() > steps) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

// Offered: the day by which the program judges (2 March 2026 in tests) and the name typed last; entered by a person
// only.
TEST(UtilitiesEntry, NameAndDay_AreOfferedAndNeverEnteredByThemselves) {
  Page w("house-service");
  Crossing bare = w.crossing();
  bare.site.test_holes.front().by.clear();
  bare.site.test_holes.front().date.reset();
  bare.site.test_holes.front().agreed = {};
  w.document.start_from(bare, false);
  w.panel.pick("u4");
  w.panel.refresh_now();
  QLineEdit* by = w.panel.hole_texts()->entry(QStringLiteral("measured by"));
  QLineEdit* on = w.panel.hole_texts()->entry(QStringLiteral("measured on"));
  EXPECT_TRUE(by->placeholderText().isEmpty()) << "no name was typed yet";
  EXPECT_TRUE(on->placeholderText().contains(QStringLiteral("2026-03-02")));
  on->setFocus();
  QTest::keyClick(on, Qt::Key_Return);
  QTest::keyClick(on, Qt::Key_Tab);
  EXPECT_EQ(w.crossing(), bare) << "walking through enters nothing";
  QTest::keyClick(on, Qt::Key_Down);
  EXPECT_EQ(w.crossing().site.test_holes.front().date, "2026-03-02");
  EXPECT_EQ(w.steps(), 1);
  w.type(w.panel.hole_texts(), "measured by", "B. Spade");
  QLineEdit* agreed = w.panel.hole_texts()->entry(QStringLiteral("agreed by"));
  EXPECT_TRUE(agreed->text().isEmpty());
  EXPECT_TRUE(agreed->placeholderText().contains(QStringLiteral("B. Spade")));
  EXPECT_TRUE(w.crossing().site.test_holes.front().agreed.by.empty());
  const int steps = w.steps();
  w.type(w.panel.hole_texts(), "agreed on", "2026-02-30");
  EXPECT_EQ(w.steps(), steps) << "no such day";
  EXPECT_TRUE(w.panel.hole_texts()->complaint().contains(QStringLiteral("is no day")));
  w.type(w.panel.hole_texts(), "agreed on", "2026-02-28");
  EXPECT_TRUE(w.panel.hole_texts()->complaint().isEmpty());
  EXPECT_EQ(w.steps(), steps + 1);
}

TEST(UtilitiesEntry, AllOpenEnds_DeclaredInOneStep) {
  Page w("house-service");
  const Crossing before = with_open_questions(w.crossing());
  w.document.start_from(before, false);
  w.panel.refresh_now();
  ASSERT_EQ(open_ends(before, {}).size(), 3u) << "one end of the first lies 30 m away";
  QPushButton* open = button(w.panel, "Declare all open ends (3)");
  ASSERT_TRUE(open);
  QTest::mouseClick(open, Qt::LeftButton);
  AtOnceForm& form = *w.panel.ends_form();
  ASSERT_FALSE(form.isHidden());
  QTest::mouseClick(form.take_button(), Qt::LeftButton);
  EXPECT_EQ(w.crossing(), before) << "no meaning was chosen";
  EXPECT_FALSE(form.complaint().isEmpty());
  auto* meaning = form.findChild<QComboBox*>();
  meaning->setFocus();
  QTest::keyClick(meaning, Qt::Key_Down);
  QTest::keyClick(meaning, Qt::Key_Down);
  EXPECT_EQ(meaning->currentText(), QStringLiteral("cap"));
  QTest::mouseClick(form.take_button(), Qt::LeftButton);
  w.panel.refresh_now();
  const auto& all = w.crossing().site.utilities;
  EXPECT_EQ(all[0].ends.first, LineEnd::cap);
  EXPECT_FALSE(all[0].ends.last) << "far away: not asked, not answered";
  EXPECT_EQ(all[1].ends, (LineEnds{LineEnd::cap, LineEnd::cap, {}}));
  EXPECT_EQ(all[2].ends.first, LineEnd::chamber) << "what was declared before stays";
  EXPECT_EQ(w.steps(), 1);
  EXPECT_TRUE(form.isHidden());
  EXPECT_TRUE(open->parentWidget()->isHidden()) << "nothing left to declare";
  w.expect_opens_again();
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(UtilitiesEntry, NoBackgroundLineIsAService_OneStatementForAll) {
  Page w("house-service");
  Crossing before = with_open_questions(w.crossing());
  before.site.background.front().not_a_service = {"fence, seen", "C. Seer", "2026-01-05", {}};
  w.document.start_from(before, false);
  w.panel.refresh_now();
  QTest::mouseClick(button(w.panel, "None of these is a service"), Qt::LeftButton);
  AtOnceForm& form = *w.panel.background_form();
  ASSERT_FALSE(form.isHidden());
  type_over(entry(form, "who says so"), "D. Looker");
  QTest::mouseClick(form.take_button(), Qt::LeftButton);
  EXPECT_EQ(w.crossing(), before) << "without a day it does not count";
  EXPECT_FALSE(form.complaint().isEmpty());
  QTest::keyClick(entry(form, "on which day"), Qt::Key_Down);
  EXPECT_EQ(entry(form, "on which day")->text(), QStringLiteral("2026-03-02"));
  EXPECT_EQ(w.crossing(), before) << "in the form only";
  QTest::mouseClick(form.take_button(), Qt::LeftButton);
  w.panel.refresh_now();
  const auto& lines = w.crossing().site.background;
  EXPECT_EQ(lines[lines.size() - 1].not_a_service.by, "D. Looker");
  EXPECT_EQ(lines[lines.size() - 1].not_a_service.date, "2026-03-02");
  EXPECT_EQ(lines.front().not_a_service.by, "C. Seer") << "said before";
  EXPECT_EQ(w.steps(), 1);
  EXPECT_TRUE(open_background(w.crossing(), Date{2026, 3, 2}).empty());
  w.expect_opens_again();
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(UtilitiesEntry, BackgroundLine_MadeAUtility) {
  Page w("house-service");
  const Crossing before = with_open_questions(w.crossing());
  w.document.start_from(before, false);
  w.panel.refresh_now();
  QTest::mouseClick(button(w.panel, "It is a service"), Qt::LeftButton);
  ASSERT_EQ(w.crossing().site.background.size(), before.site.background.size() - 1);
  ASSERT_EQ(w.crossing().site.utilities.size(), before.site.utilities.size() + 1);
  const Utility& made = w.crossing().site.utilities.back();
  EXPECT_EQ(made.name, "bg1");
  EXPECT_EQ(made.kind, UtilityKind::unknown);
  ASSERT_EQ(made.path.size(), 2u);
  EXPECT_EQ(made.path[1].x_m, 9);
  EXPECT_FALSE(made.path[1].z_m) << "drawn in plan: no depth is made up";
  EXPECT_EQ(w.steps(), 1);
  w.expect_opens_again();
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(UtilitiesEntry, LoneHole_GivenToTheUtilityItShowed) {
  Page w("house-service");
  Crossing before = w.crossing();
  before.site.test_holes.front().utility.clear();
  w.document.start_from(before, false);
  w.panel.pick("u4");
  w.panel.refresh_now();
  EXPECT_EQ(lone_holes(before), std::vector<std::string>{"h1"});
  QPushButton* take = button(w.panel, "The hole at station");
  ASSERT_TRUE(take);
  QTest::mouseClick(take, Qt::LeftButton);
  EXPECT_EQ(w.crossing().site.test_holes.front().utility, "u4");
  EXPECT_TRUE(lone_holes(w.crossing()).empty());
  EXPECT_TRUE(take->parentWidget()->isHidden());
  EXPECT_EQ(w.steps(), 1);
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(UtilitiesEntry, SearchQuestions_OneByOneAndAtOnce) {
  Page w("house-service");
  Crossing bare = w.crossing();
  bare.site.utility_search = {};
  w.document.start_from(bare, false);
  w.panel.refresh_now();
  w.type(w.panel.search_texts(), "valid from", "2026-02-01");
  w.type(w.panel.search_texts(), "valid to", "2026-04-01");
  w.choose("marks on the ground", "can be seen");
  const auto search = [&]() -> const UtilitySearch& { return w.crossing().site.utility_search; };
  EXPECT_EQ(search().valid_from, "2026-02-01");
  EXPECT_EQ(search().valid_to, "2026-04-01");
  EXPECT_EQ(search().marks_visible, true);
  EXPECT_EQ(w.steps(), 3);
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), bare);
  w.panel.refresh_now();

  QTest::mouseClick(button(w.panel, "Answer these at once"), Qt::LeftButton);
  AtOnceForm& form = *w.panel.search_form();
  type_over(entry(form, "reference of the answer"), "T-4711");
  QTest::keyClick(entry(form, "date of the answer"), Qt::Key_Down);
  type_over(entry(form, "it is valid from"), "2026-03-02");
  type_over(entry(form, "it is valid to"), "2026-13-01");
  QTest::mouseClick(form.take_button(), Qt::LeftButton);
  EXPECT_EQ(w.crossing(), bare) << "no such month";
  EXPECT_TRUE(form.complaint().contains(QStringLiteral("is no day")));
  type_over(entry(form, "it is valid to"), "2026-03-30");
  QTest::keyClick(form.findChild<QComboBox*>(), Qt::Key_Down);
  QTest::keyClick(entry(form, "it is valid to"), Qt::Key_Return);
  EXPECT_EQ(search().reference, "T-4711");
  EXPECT_EQ(search().date, "2026-03-02");
  EXPECT_EQ(search().valid_from, "2026-03-02");
  EXPECT_EQ(search().valid_to, "2026-03-30");
  EXPECT_EQ(search().marks_visible, true);
  EXPECT_EQ(w.steps(), 1);
  w.expect_opens_again();
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), bare);
}

TEST(UtilitiesEntry, AnotherWayOfLocating_TakesItsLevelAndDropsTypedErrors) {
  Page w("house-service");
  w.panel.pick("u1");
  w.type(w.panel.location(), "location error across", "1 mm");
  const Crossing before = w.crossing();
  const int steps = w.steps();
  const std::pair<const char*, const char*> ways[] = {
      {"exposed", "pas128-a"}, {"traced twice", "pas128-b1"}, {"records", "pas128-d"}};
  for (const auto& [way, level] : ways) {
    w.choose("located by", way);
    const Located& now = utility_of(w.crossing(), "u1").located;
    EXPECT_EQ(now.level, level);
    EXPECT_FALSE(now.lateral_sd) << way;
    EXPECT_FALSE(now.vertical_sd) << way;
    EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("Errors typed before gave way"))) << way;
    EXPECT_EQ(w.steps(), steps + 1) << way;
    w.document.undo_stack().undo();
    w.panel.refresh_now();
    EXPECT_EQ(w.crossing(), before) << way;
    EXPECT_FALSE(w.panel.visible_text().contains(QStringLiteral("Errors typed before gave way")))
        << "undone: not said any more";
  }
  w.choose("located by", "not known");
  EXPECT_FALSE(utility_of(w.crossing(), "u1").located.level);
  EXPECT_TRUE(w.finds("missing.utility-location-error", "u1")) << "nothing stands in for what is not known";
}

TEST(UtilitiesEntry, NoError_OnlyOfAnExposedLine) {
  Page w("house-service");
  w.panel.pick("u2");
  w.choose("located by", "traced");
  const Crossing before = w.crossing();
  w.type(w.panel.location(), "location error across", "0");
  EXPECT_EQ(w.crossing(), before);
  EXPECT_TRUE(w.panel.location()->complaint(0).contains(QStringLiteral("exposed")));
  QTest::keyClick(w.panel.location()->entry(0), Qt::Key_Escape);
  for (const Field& field : fields_of(w.crossing(), {ItemKind::utility, "u2", -1}))
    if (field.label.starts_with("location error")) {
      EXPECT_FALSE(field.validate(w.crossing(), 0.0)) << field.label;
    }
  w.choose("located by", "exposed");
  w.type(w.panel.location(), "location error across", "0");
  EXPECT_EQ(utility_of(w.crossing(), "u2").located.lateral_sd, Length{0});
}

TEST(UtilitiesEntry, CtrlU_MakesNothingUp_AndADepthCountsToTheCrown) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  w.window.activateWindow();
  QCoreApplication::processEvents();
  QTest::keyClick(&w.window.drawing(), Qt::Key_U, Qt::ControlModifier);
  ASSERT_EQ(w.crossing().site.utilities.size(), before.site.utilities.size() + 1);
  const Utility fresh = w.crossing().site.utilities.back();
  for (const PathVertex& at : fresh.path) EXPECT_FALSE(at.z_m);
  EXPECT_EQ(fresh.kind, UtilityKind::unknown);
  EXPECT_FALSE(fresh.outside_diameter);
  EXPECT_EQ(fresh.located, Located{});
  EXPECT_EQ(fresh.ends, LineEnds{});
  for (const UtilityAnswer& answer : w.window.document().assessment().utilities)
    if (answer.id == fresh.id) {
      EXPECT_FALSE(answer.contact_chance) << "no chance of what nobody knows";
      EXPECT_FALSE(answer.separation_m);
    }
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
  w.window.document().undo_stack().redo();

  Page page("house-service");
  page.document.start_from(w.crossing(), false);
  page.panel.pick(fresh.id);
  page.panel.refresh_now();
  page.type(page.panel.size_entry(), "outside diameter", "100 mm");
  page.type(page.panel.level(), "depth of its crown below ground", "0.80 m");
  const Utility& typed = utility_of(page.crossing(), fresh.id);
  EXPECT_EQ(typed.recorded.from, DepthFrom::ground);
  EXPECT_EQ(typed.recorded.level, LevelMeant::crown);
  const double ground = elevation_at(page.crossing().site.ground, typed.path[0].x_m);
  EXPECT_NEAR(*typed.path[0].z_m, ground - 0.80 - 0.05, 0.05) << "half the diameter below its crown";
}

TEST(UtilitiesEntry, NarrowColumn_ClipsNothing) {
  Page w("house-service");
  w.document.start_from(with_open_questions(w.crossing()), false);
  w.panel.pick("u2");
  w.panel.refresh_now();
  for (const char* opens : {"Declare all open ends", "None of these is a service", "Answer these at once"})
    QTest::mouseClick(button(w.panel, opens), Qt::LeftButton);
  for (const int width : {240, 370}) w.expect_inside(width);
}

}  // namespace
}  // namespace burrow

/// The page of practice bores: started, driven mark by mark, revealed, entered in the table; and one error tried.

#include "burrow/panels/practice_panel.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLabel>
#include <QPushButton>
#include <QSlider>
#include <QTableWidget>
#include <cmath>

#include "burrow/document/practice_fields.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

struct PracticePage : PanelBeside<PracticePanel> {
  explicit PracticePage(const char* sample = "lesson-level") : PanelBeside<PracticePanel>(sample) {
    panel.refresh_now();
  }
  void click(const char* begins_with) {
    QPushButton* button = panel.button(QString::fromUtf8(begins_with));
    ASSERT_TRUE(button) << begins_with;
    ASSERT_TRUE(button->isEnabled() && button->isVisibleTo(&panel)) << begins_with;
    QTest::mouseClick(button, Qt::LeftButton);
  }
  void drive_to_the_end() {
    for (int i = 0; i < 30 && panel.run() && !panel.run()->over(); ++i) click("Drive");
  }
};

TEST(PracticePanel, Lesson_FromStartToTheTable) {
  PracticePage w;
  ASSERT_TRUE(w.opened);
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("Bore A")), -1);
  w.click("Start boring");
  ASSERT_TRUE(w.panel.run());
  w.click("Drive");
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("You hear")), -1);
  w.click("Locate the tool");
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("The location here")), -1);
  EXPECT_FALSE(w.panel.button(QStringLiteral("Locate the tool"))->isEnabled());  // one a place, and it stays there
  w.drive_to_the_end();
  ASSERT_TRUE(w.panel.run()->over());
  w.panel.finish_reveal();
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("Missed the predicted arrival")), -1);
  EXPECT_EQ(w.steps(), 0);  // a bore changes nothing in the crossing
  w.click("Enter in the table");
  EXPECT_EQ(w.steps(), 1);
  EXPECT_EQ(practice_of(w.crossing(), tables_for_tests()).results.size(), 1u);
  EXPECT_EQ(w.panel.results()->rowCount(), 1);
  w.expect_opens_again();
  w.click("Same bore");
  ASSERT_TRUE(w.panel.run());
  EXPECT_FALSE(w.panel.run()->over());
}

// The truth is told to nobody before the bore is over, and then bit by bit.
TEST(PracticePanel, Truth_IsToldAfterTheEnd) {
  PracticePage w("lesson-shallow");
  std::vector<std::optional<TrueLine>> reported;
  QObject::connect(&w.panel, &PracticePanel::truth_changed,
                   [&](const std::optional<TrueLine>& truth) { reported.push_back(truth); });
  w.click("Start boring");
  EXPECT_FALSE(w.panel.run()) << "its verdict is Stop: asked once";
  w.click("Start boring all the same");
  w.drive_to_the_end();
  for (const auto& truth : reported) EXPECT_FALSE(truth);
  reported.clear();
  w.panel.speed()->setValue(20);
  w.click("Show the true bore");
  for (int frame = 0; frame < 4; ++frame) next_frame(w.panel);
  ASSERT_EQ(reported.size(), 4U) << "a bit more in each frame";
  const double first = reported.front()->points.back().x_m, later = reported.back()->points.back().x_m;
  EXPECT_GT(later, first);
  EXPECT_LT(later, w.panel.run()->truth().bore.path.points.back().x_m);
  w.panel.finish_reveal();
  EXPECT_EQ(reported.back()->points.back().x_m, w.panel.run()->truth().bore.path.points.back().x_m);
}

TEST(PracticePanel, Trainer_SetsTheTruth) {
  PracticePage w("first-lesson");
  EXPECT_FALSE(w.panel.truth()->isVisibleTo(&w.panel));
  w.panel.trainer()->click();
  EXPECT_TRUE(w.panel.truth()->isVisibleTo(&w.panel));
  w.type(w.panel.truth(), "level set wrong", "0.5 deg");
  EXPECT_NEAR(practice_of(w.crossing(), tables_for_tests()).truth.errors.level_rad, 0.5 * pi / 180, 1e-9);
  EXPECT_EQ(w.steps(), 1);
  w.choose("lowest stratum is really", "stiff clay");
  EXPECT_EQ(practice_of(w.crossing(), tables_for_tests()).truth.soils.at(0).soil, "stiff-clay");
  w.expect_opens_again();
  w.click("Random practice");
  EXPECT_EQ(w.steps(), 3);
  w.document.undo_stack().undo();
  EXPECT_NEAR(practice_of(w.crossing(), tables_for_tests()).truth.errors.level_rad, 0.5 * pi / 180, 1e-9);
}

TEST(PracticePanel, Trainer_HidesStonesTrenchAndAServiceByAnyLength) {
  PracticePage w("house-service");
  w.panel.trainer()->click();
  const auto truth = [&] { return practice_of(w.crossing(), tables_for_tests()).truth; };
  const std::size_t stones = truth().stones.size();
  w.click("Add a stone");
  ASSERT_EQ(truth().stones.size(), stones + 1);
  EXPECT_EQ(w.steps(), 1);
  const std::string stone = "stone " + std::to_string(stones + 1);
  w.type(w.panel.hidden_truth(), (stone + ", met after").c_str(), "4.2 m");
  w.type(w.panel.hidden_truth(), (stone + ", turns the nose left").c_str(), "-1.5 deg");
  EXPECT_NEAR(truth().stones.back().s_m, 4.2, 1e-9);
  EXPECT_NEAR(truth().stones.back().left_rad, -1.5 * pi / 180, 1e-9);
  w.choose("old trench across, filled with", "loose sand");
  ASSERT_EQ(truth().trenches.size(), 1U);
  EXPECT_EQ(truth().trenches.front().soil, "loose-sand");
  w.type(w.panel.hidden_truth(), "trench, from station", "3");
  w.type(w.panel.hidden_truth(), "trench, to station", "4.5");
  w.type(w.panel.hidden_truth(), "trench, level of its bottom", "98.7");
  const Strip trench = truth().trenches.front();
  EXPECT_TRUE(inside(trench.outline, 3.1, 0) && inside(trench.outline, 4.4, 5));
  EXPECT_FALSE(inside(trench.outline, 2.9, 0) || inside(trench.outline, 4.6, 0));
  EXPECT_NEAR(trench.bottom_elevation.m, 98.7, 1e-9);
  w.panel.moved()->setCurrentIndex(1);
  Q_EMIT w.panel.moved()->activated(1);
  ASSERT_EQ(truth().services.size(), 1U);
  EXPECT_EQ(truth().services.front().up_m, 0.3);
  w.panel.refresh_now();
  w.type(w.panel.hidden_truth(), "service off its mark, higher", "-0.75");
  w.type(w.panel.hidden_truth(), "service off its mark, to its own left", "1.2");
  EXPECT_NEAR(truth().services.front().up_m, -0.75, 1e-9);
  EXPECT_NEAR(truth().services.front().across_m, 1.2, 1e-9);
  w.expect_opens_again();
  // The bore is made in that ground: the trench and the stone are in it.
  EXPECT_EQ(true_crossing(w.crossing(), truth()).site.strips.size(), w.crossing().site.strips.size() + 1);
  w.choose("old trench across, filled with", "none");
  EXPECT_TRUE(truth().trenches.empty());
  w.click("Remove the last stone");
  EXPECT_EQ(truth().stones.size(), stones);
}

// What ends the bore is pressed twice, and another press in between is no second one.
TEST(PracticePanel, WhatEndsTheBore_AsksOnce) {
  PracticePage w;
  w.click("Start boring");
  w.click("Turn the level");
  w.click("Drive");
  w.click("Stop and look");
  ASSERT_TRUE(w.panel.run());
  EXPECT_FALSE(w.panel.run()->over());
  w.click("Drive");
  w.click("Stop and look");
  EXPECT_FALSE(w.panel.run()->over()) << "the first press was taken back by driving on";
  w.click("Stop and look");
  EXPECT_TRUE(w.panel.run()->over());
  w.panel.finish_reveal();
  EXPECT_NE(w.panel.visible_text().indexOf(QStringLiteral("Turn the level end for end")), -1)
      << "the rule to take home";
}

// A class table has one row a bore, and one that did not arrive has no miss.
TEST(PracticePanel, EnteredOnce_WithoutAMissWhereNothingArrived) {
  PracticePage w;
  w.click("Start boring");
  w.click("Drive");
  w.click("Back out");
  w.click("Back out");
  w.panel.finish_reveal();
  w.click("Enter in the table");
  EXPECT_FALSE(w.panel.button(QStringLiteral("Enter in the table"))->isEnabled());
  ASSERT_EQ(w.panel.results()->rowCount(), 1);
  EXPECT_EQ(w.panel.results()->item(0, 2)->text(), QStringLiteral("–"));
}

TEST(PracticePanel, TryAnError_IsAskedForOnTheDrawing) {
  PracticePage w("lesson-level");
  int asked = 0;
  QObject::connect(&w.panel, &PracticePanel::try_wanted, &w.panel, [&] { ++asked; });
  w.click("Try it on the drawing");
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(w.steps(), 0);
}

TEST(PracticePanel, Narrow_NothingBeyondTheEdge) {
  PracticePage w("lesson-mark");
  w.click("Start boring");
  w.click("Start boring all the same");
  w.click("Drive");
  w.panel.trainer()->click();
  for (const int width : {260, 400}) w.expect_inside(width);
}

}  // namespace
}  // namespace burrow

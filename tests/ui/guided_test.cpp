// The guided new crossing, answered as a person answers it: by keyboard and mouse, with mistakes.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>

#include "burrow/window/guided_crossing.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct Guide {
  explicit Guide(UnitSystem units = UnitSystem::metric)
      : dialog(tables_for_tests(), Theme::light(), units, std::nullopt, nullptr) {
    dialog.show();
    QCoreApplication::processEvents();
  }
  template <class W>
  W* named(const QString& name) {
    for (W* w : dialog.findChildren<W*>())
      if (w->accessibleName() == name) return w;
    ADD_FAILURE() << name.toStdString();
    return nullptr;
  }
  QPushButton* button(const QString& text) {
    for (QPushButton* b : dialog.findChildren<QPushButton*>())
      if (b->text().remove(QLatin1Char('&')) == text) return b;
    ADD_FAILURE() << text.toStdString();
    return nullptr;
  }
  void click(QPushButton* b) {
    QTest::mouseClick(b, Qt::LeftButton);
    QCoreApplication::processEvents();
  }
  void type(const QString& name, const QString& text) {
    auto* entry = named<QLineEdit>(name);
    ASSERT_TRUE(entry);
    entry->setFocus();
    entry->selectAll();
    if (text.isEmpty())
      QTest::keyClick(entry, Qt::Key_Delete);
    else
      QTest::keyClicks(entry, text);
    QCoreApplication::processEvents();
  }
  QString fault() { return named<QLabel>(QStringLiteral("What is wrong with the answers"))->text(); }
  QString outcome() { return named<QLabel>(QStringLiteral("How the crossing stands"))->text(); }

  GuidedCrossing dialog;
};

TEST(Guided, SixTimesNext_GivesAnAssessedCrossing) {
  Guide guide;
  for (int i = 0; i < 5; ++i) {
    EXPECT_EQ(guide.dialog.question(), i);
    guide.click(guide.button(QStringLiteral("Next")));
  }
  EXPECT_EQ(guide.dialog.question(), 5);
  EXPECT_TRUE(guide.outcome().contains(QStringLiteral("Still open"))) << "nobody said that the lines are located";
  guide.click(guide.button(QStringLiteral("Make this crossing")));
  EXPECT_EQ(guide.dialog.result(), QDialog::Accepted);
  EXPECT_EQ(guide.dialog.crossing().bore.exit.station.m, 12);
  EXPECT_EQ(guide.dialog.assessment().verdict, Verdict::incomplete);
}

TEST(Guided, Typed_InAnyUnitAndWithMistakes) {
  Guide guide;
  guide.dialog.go_to(1);
  guide.type(QStringLiteral("Length of the bore"), QStringLiteral("30 ft"));
  EXPECT_NEAR(guide.dialog.crossing().bore.exit.station.m, 9.144, 1e-9);
  guide.type(QStringLiteral("Length of the bore"), QStringLiteral("far"));
  EXPECT_FALSE(guide.fault().isEmpty());
  EXPECT_FALSE(guide.button(QStringLiteral("Next"))->isEnabled());
  EXPECT_NEAR(guide.dialog.crossing().bore.exit.station.m, 9.144, 1e-9) << "the last good answer stands";
  guide.type(QStringLiteral("Length of the bore"), QStringLiteral("5"));
  EXPECT_TRUE(guide.fault().contains(QStringLiteral("less than the length"))) << guide.fault().toStdString();
  EXPECT_FALSE(guide.button(QStringLiteral("Next"))->isEnabled());
  guide.type(QStringLiteral("Length of the bore"), QStringLiteral("14.5"));
  EXPECT_TRUE(guide.fault().isEmpty());
  EXPECT_TRUE(guide.button(QStringLiteral("Next"))->isEnabled());
}

TEST(Guided, Lines_AddedAndRemoved) {
  Guide guide;
  guide.dialog.go_to(3);
  guide.click(guide.button(QStringLiteral("Add a line")));
  guide.click(guide.button(QStringLiteral("Add a line")));
  ASSERT_EQ(guide.dialog.crossing().site.utilities.size(), 2U);
  guide.type(QStringLiteral("Depth of line 2"), QStringLiteral("0.9"));
  guide.type(QStringLiteral("Diameter of line 2"), QStringLiteral("110"));
  guide.type(QStringLiteral("Line 2 crossed at"), QStringLiteral("7"));
  const Utility& second = guide.dialog.crossing().site.utilities[1];
  EXPECT_NEAR(*second.path[0].z_m, 100 - 0.9 - 0.055, 1e-9);
  EXPECT_EQ(second.path[0].x_m, 7);
  // A row with a mistake goes, and its mistake with it.
  guide.type(QStringLiteral("Depth of line 1"), QStringLiteral("deep"));
  EXPECT_FALSE(guide.button(QStringLiteral("Next"))->isEnabled());
  guide.click(guide.named<QPushButton>(QStringLiteral("Remove line 1")));
  EXPECT_EQ(guide.dialog.crossing().site.utilities.size(), 1U);
  EXPECT_TRUE(guide.button(QStringLiteral("Next"))->isEnabled());
  EXPECT_EQ(guide.dialog.crossing().site.utilities[0].path[0].x_m, 7);
}

/// Answers of a person with good data, and how many they are.
struct Answering {
  explicit Answering(Guide& of) : guide(of) {}
  void choose(const char* word) {
    for (QComboBox* box : guide.dialog.findChildren<QComboBox*>())
      if (const int at = box->findText(QLatin1String(word)); at >= 0) {
        box->setCurrentIndex(at);
        ++given;
        return;
      }
    ADD_FAILURE() << word;
  }
  void type(const char* name, const char* text) {
    guide.type(QLatin1String(name), QLatin1String(text));
    ++given;
  }
  /// What is offered is taken by one key.
  void take(const char* name) {
    auto* entry = guide.named<QLineEdit>(QLatin1String(name));
    ASSERT_TRUE(entry);
    QTest::keyClick(entry, Qt::Key_Down);
    EXPECT_FALSE(entry->text().isEmpty()) << name;
    ++given;
  }
  Guide& guide;
  int given = 0;
};

// With everything answered nothing is missing, and the proposed launch is no worse than the usual depth.
// Our own bound: six answers did before a green verdict had to be earned; at most ten more may be asked.
TEST(Guided, Everything_AnsweredIsComplete_WithFewAnswersMore) {
  constexpr int before = 6, more = 10;
  Guide guide;
  Answering answers(guide);
  answers.choose("allowed");
  answers.type("Permit", "RD-4711");
  answers.type("How a stuck tool is got out", "lane closed, dug from above");
  answers.type("With whom that is agreed", "road authority");
  answers.take("Agreed on");
  answers.choose("36 in for ducts under a road");
  guide.dialog.go_to(2);
  answers.choose("seen");
  answers.type("Depth of the water", "4");
  guide.dialog.go_to(3);
  guide.dialog.findChild<QCheckBox*>()->setChecked(true);
  ++answers.given;
  answers.type("Reference", "T-12");
  answers.take("Date of the answer");
  answers.take("Valid from");
  answers.type("Valid to", "2026-03-30");
  answers.choose("can be seen");
  answers.choose("none here");
  EXPECT_LE(answers.given, before + more);
  const Site& site = guide.dialog.crossing().site;
  EXPECT_EQ(site.surface.front().permit, "RD-4711");
  EXPECT_EQ(site.utility_search.reference, "T-12");
  EXPECT_EQ(site.utility_search.date, "2026-03-02") << "the day by which the tests judge";
  EXPECT_EQ(site.utility_search.valid_from, "2026-03-02");
  EXPECT_EQ(site.utility_search.valid_to, "2026-03-30");
  EXPECT_EQ(site.utility_search.marks_visible, true);
  guide.dialog.go_to(5);
  EXPECT_FALSE(guide.outcome().contains(QStringLiteral("Still open"))) << guide.outcome().toStdString();
  EXPECT_EQ(guide.dialog.assessment().verdict, Verdict::within_limits) << guide.outcome().toStdString();
  for (QRadioButton* way : guide.dialog.findChildren<QRadioButton*>())
    if (!way->isChecked()) QTest::mouseClick(way, Qt::LeftButton, Qt::NoModifier, QPoint(10, way->height() / 2));
  guide.type(QStringLiteral("Depth of the axis"), QStringLiteral("0.5"));
  EXPECT_NEAR(guide.dialog.crossing().bore.launch.elevation.m, 99.5, 1e-9);
  EXPECT_EQ(guide.dialog.assessment().verdict, Verdict::stop) << "half a metre under a road whose owner wants 36 in";
}

TEST(Guided, WhatDoesNotMatter_IsNotAsked) {
  Guide guide;
  const auto asked = [&](const char* name) { return !guide.named<QLineEdit>(QLatin1String(name))->isHidden(); };
  EXPECT_FALSE(asked("Permit")) << "the owner was not asked";
  EXPECT_FALSE(asked("Who says that nothing is on top"));
  EXPECT_FALSE(asked("Date of the answer")) << "the locating service was not asked";
  EXPECT_FALSE(asked("Exposed ones measured by"));
  Answering answers(guide);
  answers.choose("nothing but ground");
  EXPECT_TRUE(asked("Who says that nothing is on top"));
  answers.type("Who says that nothing is on top", "E. Walker");
  answers.take("Nothing on top, as seen on");
  EXPECT_EQ(guide.dialog.crossing().site.nothing_above, (Statement{{}, "E. Walker", "2026-03-02", {}}));
  guide.dialog.go_to(3);
  guide.dialog.findChild<QCheckBox*>()->setChecked(true);
  EXPECT_TRUE(asked("Date of the answer"));
  answers.type("Valid to", "2026-02-31");
  EXPECT_TRUE(guide.fault().contains(QStringLiteral("is no day")));
  EXPECT_FALSE(guide.button(QStringLiteral("Next"))->isEnabled());
  guide.dialog.findChild<QCheckBox*>()->setChecked(false);
  EXPECT_TRUE(guide.button(QStringLiteral("Next"))->isEnabled()) << "a mistake in what is not asked any more";
  guide.dialog.findChild<QCheckBox*>()->setChecked(true);
  EXPECT_TRUE(guide.named<QLineEdit>(QStringLiteral("Valid to"))->text().isEmpty());
  answers.type("Valid to", "2026-03-31");
  EXPECT_TRUE(guide.button(QStringLiteral("Next"))->isEnabled());
}

TEST(Guided, ExposedLine_BringsItsTestHole) {
  Guide guide;
  guide.dialog.go_to(3);
  guide.click(guide.button(QStringLiteral("Add a line")));
  Answering answers(guide);
  answers.type("Depth of line 1", "0.9");
  EXPECT_TRUE(guide.dialog.crossing().site.test_holes.empty());
  auto* how = guide.named<QComboBox>(QStringLiteral("How line 1 was found"));
  how->setCurrentIndex(how->findText(QStringLiteral("exposed")));
  answers.type("Exposed ones measured by", "B. Spade");
  answers.take("Exposed ones measured on");
  ASSERT_EQ(guide.dialog.crossing().site.test_holes.size(), 1U);
  const TestHole& hole = guide.dialog.crossing().site.test_holes.front();
  EXPECT_EQ(hole.utility, guide.dialog.crossing().site.utilities.front().id);
  EXPECT_NEAR(hole.elevation->m, 100 - 0.9, 1e-9) << "its crown";
  EXPECT_EQ(hole.by, "B. Spade");
  EXPECT_EQ(hole.date, "2026-03-02");
}

TEST(Guided, FeetAndInches_BeginWithRoundNumbers) {
  Guide guide(UnitSystem::us);
  EXPECT_NEAR(guide.dialog.crossing().bore.exit.station.m, 40 * 0.3048, 1e-9);
  EXPECT_EQ(guide.named<QLineEdit>(QStringLiteral("Length of the bore"))->text(), QStringLiteral("40 ft 0.0 in"));
}

}  // namespace
}  // namespace burrow

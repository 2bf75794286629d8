/// The page of limits and the page of the sheet: what is typed there is in the file, and nothing loose looks safe.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "burrow/check/limits.h"
#include "burrow/document/limit_fields.h"
#include "burrow/file/crossing_file.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "burrow/sheet/sheet.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct LimitsWindow : TestWindow {
  explicit LimitsWindow(const char* sample = "house-service") : TestWindow(sample) {
    window.side().show_page(SideColumn::Page::limits);
    settle(window);
  }
  LimitsPanel& page() { return window.side().limits(); }
  const Assessment& judged() { return window.document().assessment(); }
  bool told(std::string_view code) {
    return std::any_of(judged().findings.begin(), judged().findings.end(),
                       [&](const Finding& f) { return f.code == code; });
  }
  void type_value(const char* id, const char* text) {
    page().pick(id);
    settle(window);
    QLineEdit* entry = page().value()->entry(0);
    entry->setFocus();
    entry->selectAll();
    QTest::keyClick(entry, Qt::Key_Delete);
    QTest::keyClicks(entry, QString::fromUtf8(text));
    QTest::keyClick(entry, Qt::Key_Return);
    settle(window);
  }
  void type_reason(const char* text) {
    QLineEdit* entry = page().reason()->entry(QStringLiteral("why, and by which document"));
    ASSERT_TRUE(entry->isVisible());
    entry->setFocus();
    QTest::keyClicks(entry, QString::fromUtf8(text));
    QTest::keyClick(entry, Qt::Key_Return);
    settle(window);
  }
};

TEST(LimitsPage, HoldsEveryLimitOfTheTable) {
  LimitsWindow w;
  EXPECT_EQ(w.page().list()->cards().size(), tables_for_tests().limits.size());
  w.page().words()->setText(QStringLiteral("gas"));
  for (const Card& card : w.page().list()->cards()) EXPECT_TRUE(card.title.contains(QStringLiteral("gas")));
  EXPECT_LT(w.page().list()->cards().size(), tables_for_tests().limits.size());
  EXPECT_GT(w.page().list()->cards().size(), 0u);
}

// The test of the promise: looser without a reason changes nothing but a caution; with one it counts and is named.
TEST(LimitsPage, Looser_CountsOnlyWithAReason) {
  LimitsWindow w;
  const double table = limit_of(w.crossing(), tables_for_tests(), "separation_gas_m").value;
  w.type_value("separation_gas_m", "0.1 m");
  ASSERT_EQ(w.crossing().limits.at("separation_gas_m").value, 0.1);
  EXPECT_EQ(limit_of(w.crossing(), tables_for_tests(), "separation_gas_m").value, table) << "no reason yet";
  EXPECT_TRUE(w.told("limit.no-reason"));
  EXPECT_TRUE(w.page().visible_text().contains(QStringLiteral("until a reason")));
  w.type_reason("letter of the owner");
  EXPECT_EQ(w.crossing().limits.at("separation_gas_m").why, "letter of the owner");
  EXPECT_EQ(limit_of(w.crossing(), tables_for_tests(), "separation_gas_m").value, 0.1);
  EXPECT_TRUE(w.told("limit.loosened"));
  EXPECT_FALSE(w.judged().loosened.empty()) << "named in the verdict, on sheet and card";
  w.page().set_only()->setChecked(true);
  ASSERT_EQ(w.page().list()->cards().size(), 1u);
  EXPECT_EQ(w.page().list()->cards().front().tag, QStringLiteral("looser"));
  const Result<Crossing> again = read_crossing(write_crossing(w.crossing()), tables_for_tests());
  ASSERT_TRUE(again);
  EXPECT_EQ(again->limits, w.crossing().limits);
  w.window.document().undo_stack().undo();
  w.window.document().undo_stack().undo();
  EXPECT_TRUE(w.crossing().limits.empty()) << "one step each";
}

TEST(LimitsPage, Empty_GoesBackToTheTable) {
  LimitsWindow w;
  w.type_value("heave_road_stop_m", "8");
  EXPECT_NEAR(w.crossing().limits.at("heave_road_stop_m").value, 0.008, 1e-12) << "millimetres, as it is shown";
  EXPECT_TRUE(w.page().visible_text().contains(QStringLiteral("stricter")));
  w.type_value("heave_road_stop_m", "");
  EXPECT_TRUE(w.crossing().limits.empty());
}

TEST(LimitsPage, WhatNobodyMaySet_IsNotTaken) {
  LimitsWindow w;
  w.type_value("contact_stop", "60 %");
  EXPECT_TRUE(w.crossing().limits.empty());
  EXPECT_FALSE(w.page().value()->complaint(0).isEmpty());
  w.type_value("separation_gas_m", "-0.2 m");
  EXPECT_TRUE(w.crossing().limits.empty());
}

// Every limit can be typed as it is shown and comes back as the same number, in both systems of units.
TEST(LimitFields, EachLimit_TypedAsShown_IsTheSame) {
  const Crossing crossing;
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const LimitRow& row : tables_for_tests().limits) {
      const Field field = limit_field(crossing, row, units);
      EXPECT_FALSE(field.entered);
      const std::string shown = format(*field.value, field.dimension, units);
      const auto typed = read_field(field, shown, units);
      ASSERT_TRUE(typed) << row.id << ": " << shown;
      Crossing with = crossing;
      field.apply(with, *typed);
      const double set = with.limits.at(row.id).value;
      // As many digits as are shown: a hundredth of an inch, a tenth of a millimetre.
      const double digits_m = field.dimension != Dimension::small_length ? 0
                              : units == UnitSystem::us                  ? 0.13e-3
                                                                         : 0.06e-3;
      const double digits_Pa = field.dimension == Dimension::air_pressure ? 5100 : 0;
      EXPECT_NEAR(set, row.value, 0.012 * std::abs(row.value) + digits_m + digits_Pa + 1e-9) << row.id << ": " << shown;
      const bool chance = row.name.english().find("chance") != std::string::npos;
      if (row.unit.empty() && chance) {
        EXPECT_EQ(limit_dimension(row), Dimension::chance) << row.id;
      }
      field.apply(with, std::nullopt);
      EXPECT_TRUE(with.limits.empty()) << row.id;
    }
}

TEST(SheetPage, WhatIsTyped_IsInTheFile_EachOneStep) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::sheet);
  settle(w.window);
  SheetPanel& page = w.window.side().sheet();
  const auto type = [&](const QString& label, const char* text) {
    QLineEdit* entry = page.texts()->entry(label);
    ASSERT_TRUE(entry) << label.toStdString();
    entry->setFocus();
    entry->selectAll();
    QTest::keyClicks(entry, QString::fromUtf8(text));
    QTest::keyClick(entry, Qt::Key_Return);
  };
  type(QStringLiteral("name of the crossing"), "Mill Lane 7");
  type(QStringLiteral("number of the sheet"), "P-12");
  type(QStringLiteral("revision"), "B");
  type(QStringLiteral("drawn by"), "A. M.");
  type(QStringLiteral("checked by"), "C. D.");
  type(QStringLiteral("date"), "2026-03-02");
  page.notes()->setFocus();
  page.notes()->selectAll();
  QTest::keyClicks(page.notes(), QStringLiteral("first line"));
  QTest::keyClick(page.notes(), Qt::Key_Return);
  QTest::keyClicks(page.notes(), QStringLiteral("second line"));
  page.paper()->setFocus();
  settle(w.window);
  page.paper()->setCurrentIndex(1);
  Q_EMIT page.paper()->activated(1);
  QLineEdit* scale = page.values()->entry(0);
  scale->setFocus();
  scale->selectAll();
  QTest::keyClicks(scale, QStringLiteral("100"));
  QTest::keyClick(scale, Qt::Key_Return);
  const Crossing& c = w.crossing();
  EXPECT_EQ(c.name, "Mill Lane 7");
  EXPECT_EQ(c.sheet.number, "P-12");
  EXPECT_EQ(c.sheet.revision, "B");
  EXPECT_EQ(c.sheet.drawn_by, "A. M.");
  EXPECT_EQ(c.sheet.checked_by, "C. D.");
  EXPECT_EQ(c.sheet.date, "2026-03-02");
  EXPECT_EQ(c.notes, "first line\nsecond line");
  EXPECT_EQ(c.sheet.paper, "a4");
  EXPECT_EQ(c.sheet.scale, 100.0);
  EXPECT_EQ(w.window.document().undo_stack().index(), 9) << "one step each";
  type(QStringLiteral("date"), "yesterday");
  EXPECT_EQ(w.crossing().sheet.date, "2026-03-02") << "no day is not taken";
}

TEST(SheetPage, EveryPaperOffered_CanBePrinted) {
  for (const QString& paper : offered_papers()) EXPECT_TRUE(paper_size(paper)) << paper.toStdString();
}

}  // namespace
}  // namespace burrow

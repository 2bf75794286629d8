/// The page of the permit to bore: every line with its state, and what is entered there is one undo step each.

#include "burrow/panels/permit_panel.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>

#include "support/panel_for_tests.h"

namespace burrow {
namespace {

struct PermitPage : PanelBeside<PermitPanel> {
  QDate day{2026, 3, 2};
  explicit PermitPage(const char* sample = "day-under-way") : PanelBeside<PermitPanel>(sample, UnitSystem::metric) {
    panel.set_clock([this] { return day; });
    panel.refresh_now();
  }
  int open() {
    return open_lines(
        permit_lines(document.crossing(), document.assessment(), Date{day.year(), day.month(), day.day()}));
  }
};

TEST(PermitPage, AllAnswered_SaysSo_AndNextDayNoMore) {
  PermitPage w;
  ASSERT_TRUE(w.opened);
  EXPECT_EQ(w.open(), 0);
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("Every line holds today")));
  EXPECT_TRUE(w.panel.daily(DailyItem::oil)->isChecked());
  w.day = w.day.addDays(1);
  w.panel.refresh_now();
  EXPECT_GT(w.open(), 0);
  EXPECT_FALSE(w.panel.visible_text().contains(QStringLiteral("Every line holds today")));
  EXPECT_FALSE(w.panel.daily(DailyItem::oil)->isChecked()) << "looked at yesterday";
}

// The first tick of a day begins anew: nothing of yesterday is carried on.
TEST(PermitPage, DailyCheck_OneStepATick) {
  PermitPage w;
  w.day = w.day.addDays(1);
  w.panel.refresh_now();
  const int before = w.steps();
  w.panel.daily(DailyItem::hoses)->click();
  EXPECT_EQ(w.steps(), before + 1);
  EXPECT_EQ(w.crossing().permit.daily.date, "2026-03-03");
  EXPECT_EQ(w.crossing().permit.daily.done, std::vector<std::string>{"hoses"});
  w.panel.daily(DailyItem::hoses)->click();
  EXPECT_TRUE(w.crossing().permit.daily.done.empty());
  EXPECT_GE(w.panel.daily(DailyItem::oil)->minimumHeight(), 48);
  w.expect_opens_again();
}

TEST(PermitPage, NoGo_IsSaidFirst) {
  PermitPage w;
  w.choose("crew says", "NO-GO");
  EXPECT_EQ(w.crossing().permit.crew.decision, GoDecision::no_go);
  EXPECT_EQ(w.crossing().permit.crew.date, "2026-03-02");
  w.panel.refresh_now();
  const QString text = w.panel.visible_text();
  EXPECT_TRUE(text.startsWith(QStringLiteral("Do not bore"))) << text.toStdString();
  EXPECT_LT(text.indexOf(QStringLiteral("NO-GO")), text.indexOf(QStringLiteral("Locate ticket")));
  w.expect_opens_again();
}

// An owner without an entry of his own gets one with the first word typed.
TEST(PermitPage, Owners_NumberAnswerValve) {
  PermitPage w;
  w.document.change(QStringLiteral("none"), [](Crossing& c) { c.permit.owners.clear(); });
  w.panel.refresh_now();
  const int open = w.open();
  const auto field = [&](const char* name) {
    for (QLineEdit* one : w.panel.findChildren<QLineEdit*>())
      if (one->accessibleName() == QLatin1String(name)) return one;
    return static_cast<QLineEdit*>(nullptr);
  };
  ASSERT_TRUE(field("number") && field("answered") && field("who answered") && field("answered on"));
  w.type_into(field("number"), "0100 1");
  w.type_into(field("answered"), "marked");
  w.type_into(field("who answered"), "B. Nobody");
  w.type_into(field("answered on"), "2026-02-20");
  ASSERT_EQ(w.crossing().permit.owners.size(), 1u);
  EXPECT_EQ(w.crossing().permit.owners[0].owner, w.crossing().site.utilities[0].owner);
  EXPECT_EQ(w.open(), open - 2) << "number and answer of one owner";
  w.expect_opens_again();
}

TEST(PermitPage, Paper_IsAskedFor) {
  PermitPage w;
  QSignalSpy wanted(&w.panel, &PermitPanel::paper_wanted);
  QTest::mouseClick(w.panel.button(QStringLiteral("As PDF")), Qt::LeftButton);
  QTest::mouseClick(w.panel.button(QStringLiteral("Print")), Qt::LeftButton);
  ASSERT_EQ(wanted.count(), 2);
  EXPECT_EQ(wanted[0][0], false);
  EXPECT_EQ(wanted[1][0], true);
}

TEST(PermitPage, Narrow_NothingBeyondTheEdge) {
  PermitPage w;
  for (const int width : {260, 340, 440}) w.expect_inside(width);
}

}  // namespace
}  // namespace burrow

// Three walks through the whole workbench, each as one of its users, by the events a hand makes. With BURROW_KEEP_WALKS
// naming a folder each step leaves a picture there.

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QSlider>
#include <QTemporaryDir>

#include "burrow/charts/launch_map_view.h"
#include "burrow/crossing/find.h"
#include "burrow/sheet/sheet.h"
#include "burrow/window/import_screen.h"
#include "burrow/window/what_if_bar.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

class Walk : public TestWindow {
 public:
  Walk(const char* name, const char* sample) : TestWindow(sample), name_(QLatin1String(name)) {}

  void keep(const char* step) {
    settle(window);
    const QString folder = qEnvironmentVariable("BURROW_KEEP_WALKS");
    if (folder.isEmpty()) return;
    QDir().mkpath(folder);
    window.grab().save(
        QDir(folder).filePath(QStringLiteral("%1-%2-%3.png").arg(name_).arg(++step_).arg(QLatin1String(step))));
  }
  QPointF grip(ItemKind kind, const std::string& id = {}) { return window.drawing().place_of({kind, id, -1}); }
  const Finding* finding(std::string_view code, std::string_view subject) {
    for (const Finding& f : window.document().assessment().findings)
      if (f.code == code && f.subject == subject) return &f;
    return nullptr;
  }
  void click_finding(std::string_view code, std::string_view subject) {
    const auto& all = window.document().assessment().findings;
    QListView* list = window.findings().list();
    settle(window);
    for (int row = 0; row < list->model()->rowCount(); ++row) {
      const QModelIndex index = list->model()->index(row, 0);
      list->scrollTo(index);
      QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::NoModifier, list->visualRect(index).center());
      QCoreApplication::processEvents();
      const int shown = picked_;
      if (shown >= 0 && all[static_cast<std::size_t>(shown)].code == code &&
          all[static_cast<std::size_t>(shown)].subject == subject)
        return;
    }
    ADD_FAILURE() << "no finding " << code << " of " << subject;
  }
  void listen() {
    QObject::connect(&window.findings(), &FindingsPanel::picked, &window, [this](int row) { picked_ = row; });
  }

 private:
  QString name_;
  int step_ = 0;
  int picked_ = -1;
};

// The engineer: drags the gas main, sees the flag turn red, checks the working by hand, takes the best launch, prints.
TEST(Walks, Engineer_FromTheGasMainToTheSheet) {
  Walk w("engineer", "house-service");
  ASSERT_TRUE(w.opened);
  w.listen();
  w.keep("opened");
  const std::string gas = "u2";
  // Up first, so that the walk begins with room; then down again by hand.
  const Finding* broken = w.finding("utility.separation", gas);
  ASSERT_TRUE(broken);
  const double wanted = *broken->limit, had = *broken->measured;
  const QPointF main = w.grip(ItemKind::utility, gas);
  const double px_per_m = w.window.drawing().frame().px_per_m;
  w.click(main);
  w.drag(main, main - QPointF(0, 0.3 * px_per_m));
  EXPECT_FALSE(w.finding("utility.separation", gas)) << "0.3 m more are enough";
  w.keep("main-moved-up");
  const QPointF up = w.grip(ItemKind::utility, gas);
  w.drag(up, up + QPointF(0, 0.35 * px_per_m));
  const Finding* red = w.finding("utility.separation", gas);
  ASSERT_TRUE(red);
  EXPECT_EQ(red->severity, Severity::stop);
  EXPECT_NEAR(*red->measured, had - 0.05, 0.03) << "the gap follows the hand";
  EXPECT_NEAR(*red->limit, wanted, 0.02);
  w.keep("main-moved-down");

  // The working, checked by hand: the gap is the distance of the axes less both radii.
  w.click_finding("utility.separation", gas);
  const QString working = w.window.findings().working();
  EXPECT_TRUE(working.contains(QStringLiteral("from:"))) << working.toStdString();
  const UtilityAnswer* answer = nullptr;
  for (const UtilityAnswer& u : w.window.document().assessment().utilities)
    if (u.id == gas) answer = &u;
  ASSERT_TRUE(answer && answer->on_bore && answer->on_utility);
  const Point3 &a = *answer->on_bore, &b = *answer->on_utility;
  const double axes = std::hypot(a.x_m - b.x_m, a.y_m - b.y_m, a.z_m - b.z_m);
  double diameter = 0;
  for (const Utility& u : w.crossing().site.utilities)
    if (u.id == gas) diameter = u.outside_diameter->m;
  const double tool = resolve_tool(w.crossing().bore.tool, tables_for_tests()).diameter.m;
  EXPECT_NEAR(*red->measured, axes - diameter / 2 - tool / 2, 0.02);
  w.keep("working");

  // The best launch, with one click.
  w.window.side().launch_job().set_full_cells(10);
  w.window.side().show_page(SideColumn::Page::launch);
  LaunchSearchJob& job = w.window.side().launch_job();
  ASSERT_TRUE(comes([&] { return job.map() && !job.running() && job.current(); }));
  w.keep("launches");
  QTest::mouseClick(w.window.side().launch().take_best(), Qt::LeftButton);
  EXPECT_FALSE(w.finding("utility.separation", gas));
  EXPECT_NE(w.window.document().assessment().verdict, Verdict::stop);
  w.keep("best-launch");

  // The sheet, as a file that the road authority gets.
  const QTemporaryDir folder;
  const auto sheet = sheet_of(w.crossing(), w.window.document().assessment(), tables_for_tests(), UnitSystem::metric);
  ASSERT_TRUE(sheet);
  const QString path = folder.filePath(QStringLiteral("sheet.pdf"));
  ASSERT_TRUE(write_sheet_pdf(*sheet, path, SheetPart::all));
  EXPECT_GT(QFileInfo(path).size(), 20000);
  // All of it can be taken back.
  while (w.window.document().undo_stack().canUndo()) w.window.document().undo_stack().undo();
  EXPECT_NEAR(*w.finding("utility.separation", gas)->measured, had, 1e-12);
}

// The contractor: brings in the survey, says what the marks are, opens a hole, drives with readings.
TEST(Walks, Contractor_FromTheSurveyToTheReadings) {
  Walk w("contractor", "first-lesson");
  const QTemporaryDir folder;
  const QString survey = folder.filePath(QStringLiteral("street.csv"));
  {
    QFile file(survey);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    int number = 0;
    const auto point = [&](double x, double y, double z, const char* code) {
      file.write(
          QStringLiteral("%1,%2,%3,%4,%5\n").arg(++number).arg(y).arg(x).arg(z).arg(QLatin1String(code)).toUtf8());
    };
    for (int i = -4; i <= 10; ++i)
      for (int k = -4; k <= 4; ++k) point(1000 + 2 * i, 2000 + 2 * k, 55 + 0.01 * i, "GND");
    for (int k = -4; k <= 4; ++k) point(1005, 2000 + 2 * k, 54.2, "GAS");
  }
  ImportScreen screen(tables_for_tests(), Theme::light(), UnitSystem::metric, QString(), nullptr);
  screen.show();
  screen.add_file(survey);
  ASSERT_TRUE(comes([&] { return !screen.busy(); }));
  for (int row = 0; row < screen.layers().rowCount({}); ++row) {
    if (screen.layers().index(row, 0).data() != QLatin1String("GAS")) continue;
    screen.layers().setData(screen.layers().index(row, LayerModel::join), Qt::Checked, Qt::CheckStateRole);
    screen.layers().setData(screen.layers().index(row, LayerModel::heights), 1, Qt::EditRole);
    screen.layers().setData(screen.layers().index(row, LayerModel::diameter), QStringLiteral("110 mm"), Qt::EditRole);
  }
  for (const PlanPoint& p : {PlanPoint{1000, 2000}, PlanPoint{1010, 2000}})
    QTest::mouseClick(&screen.preview(), Qt::LeftButton, Qt::NoModifier, screen.preview().to_screen(p).toPoint());
  ASSERT_TRUE(comes([&] { return !screen.busy(); }));
  QPushButton* as_new = nullptr;
  for (QPushButton* b : screen.findChildren<QPushButton*>())
    if (b->text().remove(QLatin1Char('&')) == QLatin1String("New crossing from this")) as_new = b;
  ASSERT_TRUE(as_new && as_new->isEnabled()) << "the survey gave a crossing";
  w.window.take_import(screen.imported(), true);
  w.keep("imported");
  ASSERT_EQ(w.crossing().site.utilities.size(), 1U);
  EXPECT_NEAR(w.crossing().bore.exit.station.m, 10, 0.2);
  EXPECT_TRUE(w.finding("missing.utility-location-error", w.crossing().site.utilities.front().id))
      << "nobody said how well it is located";

  // Located by two methods, and opened: the wanted gap shrinks with each.
  const auto wanted = [&] { return w.window.document().assessment().utilities.front().required_m; };
  Utility gas = w.crossing().site.utilities.front();
  gas.outside_diameter = Length{0.11};
  gas.status.set(UtilityStatus::live);
  gas.located.how.set(LocatedHow::traced);
  gas.located.lateral_sd = gas.located.vertical_sd = Length{0.15};
  const auto edit = [&](const Utility& u) {
    ASSERT_TRUE(w.window.document().change(QStringLiteral("Edit"),
                                           [&](Crossing& to) { *find_by_id(to.site.utilities, u.id) = u; }));
  };
  edit(gas);
  const auto traced = wanted();
  ASSERT_TRUE(traced);
  w.window.side().show_page(SideColumn::Page::utilities);
  w.keep("traced");
  gas.located.how.set(LocatedHow::exposed);
  gas.located.lateral_sd = gas.located.vertical_sd = Length{0.02};
  edit(gas);
  ASSERT_TRUE(wanted());
  EXPECT_LT(*wanted(), *traced);
  w.keep("exposed");

  // On the day: what nobody has finished entering does not start by itself.
  DayPanel& day = w.window.side().day();
  QDateTime now(QDate(2026, 3, 14), QTime(8, 0), Qt::UTC);
  day.set_clock([&now] { return now; });
  w.window.side().show_page(SideColumn::Page::day);
  day.refresh_now();
  const Verdict verdict = w.window.document().assessment().verdict;
  EXPECT_TRUE(verdict == Verdict::stop || verdict == Verdict::incomplete);
  EXPECT_FALSE(day.advice_text().isEmpty());
  EXPECT_FALSE(day.advice_text().startsWith(QStringLiteral("Go on"))) << day.advice_text().toStdString();
  EXPECT_TRUE(w.crossing().record.empty());
  w.keep("readings");
}

// The trainer: a lesson, an error tried with a slider, a practice bore to its debrief.
TEST(Walks, Trainer_FromTheLessonToTheDebrief) {
  Walk w("trainer", "lesson-level");
  ASSERT_TRUE(w.opened);
  w.window.side().show_page(SideColumn::Page::practice);
  PracticePanel& practice = w.window.side().practice();
  practice.refresh_now();
  w.keep("lesson");
  QTest::mouseClick(practice.button(QStringLiteral("Try it on the drawing")), Qt::LeftButton);
  ASSERT_TRUE(w.window.what_if().isVisible());
  QSlider* level = w.window.what_if().slider(WhatIfBar::level);
  level->setFocus();
  for (int i = 0; i < 10; ++i) QTest::keyClick(level, Qt::Key_Right);
  EXPECT_TRUE(w.window.what_if().visible_text().contains(QStringLiteral("high")));
  w.keep("error-tried");
  QTest::keyClick(level, Qt::Key_Escape);
  EXPECT_FALSE(w.window.what_if().isVisible());
  const auto click = [&](const char* begins) {
    QPushButton* button = practice.button(QString::fromUtf8(begins));
    ASSERT_TRUE(button && button->isEnabled()) << begins;
    QTest::mouseClick(button, Qt::LeftButton);
  };
  click("Start boring");
  ASSERT_TRUE(practice.run());
  w.keep("set-out");
  for (int i = 0; i < 30 && !practice.run()->over(); ++i) click("Drive");
  ASSERT_TRUE(practice.run()->over());
  practice.finish_reveal();
  w.keep("revealed");
  EXPECT_TRUE(practice.visible_text().contains(QStringLiteral("Missed the predicted arrival")));
  click("Enter in the table");
  EXPECT_EQ(w.window.document().undo_stack().index(), 1);
}

}  // namespace
}  // namespace burrow

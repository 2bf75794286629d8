// Settings: what a new crossing begins with is kept and taken; a damaged or unwritable file loses nothing.

#include "burrow/window/settings_dialog.h"

#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "burrow/crossing/blank.h"
#include "burrow/crossing/crew_defaults.h"
#include "burrow/panels/findings_panel.h"
#include "burrow/window/guided_crossing.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

QPushButton* button(QWidget& in, const QString& begins) {
  for (QPushButton* b : in.findChildren<QPushButton*>())
    if (b->text().remove(QLatin1Char('&')).startsWith(begins)) return b;
  ADD_FAILURE() << begins.toStdString();
  return nullptr;
}

QString translated(const QWidget& in) {
  for (const QLabel* l : in.findChildren<QLabel*>())
    if (l->accessibleName() == QLatin1String("What new crossings begin with")) return l->text();
  ADD_FAILURE();
  return {};
}

TEST(Settings, OwnStart_TakenKeptForgotten) {
  const QTemporaryDir folder;
  const CrewDefaults own(folder.filePath(QStringLiteral("made/when wanted")), tables_for_tests());
  EXPECT_FALSE(own.kept());
  Crossing open = blank_crossing();
  open.bore.tool.tool_class = "tool-95";
  open.limits["separation_gas_m"] = {0.8, "own handbook", {}};
  {
    SettingsDialog dialog({}, own, open, nullptr);
    dialog.show();
    EXPECT_FALSE(button(dialog, QStringLiteral("Forget"))->isEnabled());
    QTest::mouseClick(button(dialog, QStringLiteral("Take tool")), Qt::LeftButton);
    EXPECT_TRUE(translated(dialog).contains(QStringLiteral("the 95 mm tool"))) << translated(dialog).toStdString();
    EXPECT_TRUE(translated(dialog).contains(QStringLiteral("one limit of your own")));
  }
  ASSERT_TRUE(own.kept());
  EXPECT_EQ(*own.kept(), own_start_of(open));
  GuidedCrossing guide(tables_for_tests(), Theme::light(), UnitSystem::metric, own.kept(), nullptr);
  EXPECT_EQ(guide.crossing().bore.tool.tool_class, "tool-95");
  EXPECT_EQ(guide.crossing().limits.at("separation_gas_m").value, 0.8);
  SettingsDialog again({}, own, open, nullptr);
  QTest::mouseClick(button(again, QStringLiteral("Forget")), Qt::LeftButton);
  EXPECT_FALSE(own.kept());
}

TEST(Settings, OwnStart_DamagedOrNowhere) {
  const QTemporaryDir folder;
  const CrewDefaults own(folder.path(), tables_for_tests());
  QFile file(folder.filePath(QStringLiteral("own-start.crossing")));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("{\"format\": \"burrowline-cr");
  file.close();
  EXPECT_FALSE(own.kept());
  EXPECT_TRUE(file.exists()) << "left for a person to look at";
  EXPECT_FALSE(CrewDefaults(QString(), tables_for_tests()).keep(blank_crossing())) << "tests keep nothing";
  // A folder that is a file cannot hold one; the dialog says so.
  const CrewDefaults nowhere(file.fileName(), tables_for_tests());
  SettingsDialog dialog({}, nowhere, blank_crossing(), nullptr);
  dialog.show();
  QTest::mouseClick(button(dialog, QStringLiteral("Take tool")), Qt::LeftButton);
  bool reported = false;
  for (const QLabel* l : dialog.findChildren<QLabel*>())
    reported = reported || (l->isVisible() && l->text().contains(QStringLiteral("own-start")));
  EXPECT_TRUE(reported);
}

TEST(Settings, UnitsAndColours_AtOnce) {
  TestWindow test("house-service");
  const CrewDefaults own(QString(), tables_for_tests());
  SettingsDialog dialog({UnitSystem::metric, Colours::light}, own, test.crossing(), &test.window);
  QObject::connect(&dialog, &SettingsDialog::units_wanted, &test.window, &MainWindow::set_units);
  QObject::connect(&dialog, &SettingsDialog::colours_wanted, &test.window, &MainWindow::set_colours);
  const auto boxes = dialog.findChildren<QComboBox*>();
  ASSERT_GE(boxes.size(), 2);
  for (QComboBox* box : boxes) {
    for (const char* word : {"US customary", "dark"})
      if (const int at = box->findText(QLatin1String(word)); at >= 0) box->setCurrentIndex(at);
  }
  EXPECT_EQ(test.window.drawing().style().units, UnitSystem::us);
  EXPECT_TRUE(test.window.drawing().style().theme.dark);
  test.window.set_colours(Colours::as_desktop);
  EXPECT_FALSE(test.window.drawing().style().theme.dark) << "the desktop of the tests is light";
}

TEST(Settings, Language_IsAskedForAndCountsFromTheNextStart) {
  const CrewDefaults nowhere(QString(), tables_for_tests());
  SettingsNow now;
  now.language = QStringLiteral("de");
  SettingsDialog dialog(now, nowhere, blank_crossing(), nullptr);
  QComboBox* language = nullptr;
  for (QComboBox* box : dialog.findChildren<QComboBox*>())
    if (box->findData(QStringLiteral("as-desktop")) >= 0) language = box;
  ASSERT_NE(language, nullptr);
  EXPECT_EQ(language->currentText(), QStringLiteral("Deutsch"));
  EXPECT_EQ(language->count(), 4);
  EXPECT_EQ(language->itemText(3), QStringLiteral("Español (traducido sin segunda lectura)"));
  QString wanted;
  QObject::connect(&dialog, &SettingsDialog::language_wanted, &dialog, [&](const QString& l) { wanted = l; });
  language->setCurrentIndex(1);
  EXPECT_EQ(language->currentText(), QStringLiteral("English"));
  EXPECT_EQ(wanted, QStringLiteral("en"));
  bool reported = false;
  for (const QLabel* label : dialog.findChildren<QLabel*>())
    reported = reported || (label->text().contains(QStringLiteral("next time")) && !label->isHidden());
  EXPECT_TRUE(reported);
}

TEST(Settings, Fineness_ChangesEveryTextAtOnce) {
  TestWindow test("house-service");
  const CrewDefaults nowhere(QString(), tables_for_tests());
  SettingsDialog dialog({}, nowhere, blank_crossing(), &test.window);
  QObject::connect(&dialog, &SettingsDialog::fineness_wanted, &test.window, &MainWindow::set_fineness);
  QComboBox* numbers = nullptr;
  for (QComboBox* box : dialog.findChildren<QComboBox*>())
    if (box->itemText(0).startsWith(QStringLiteral("usual"))) numbers = box;
  ASSERT_NE(numbers, nullptr);
  const auto headline = [&] {
    const auto* list = test.window.findChild<FindingsPanel*>()->findChild<QAbstractItemView*>();
    return list->model()->index(0, 0).data().toString();
  };
  EXPECT_TRUE(headline().contains(QStringLiteral("0.61 m clear of gas main"))) << headline().toStdString();
  numbers->setCurrentIndex(1);
  EXPECT_EQ(shown_fineness(), DisplayPrecision::fine);
  EXPECT_FALSE(headline().contains(QStringLiteral("0.61 m clear of gas main")));
  EXPECT_TRUE(headline().contains(QRegularExpression(QStringLiteral("0\\.6[01]\\d m clear of gas main"))));
  numbers->setCurrentIndex(0);
  EXPECT_TRUE(headline().contains(QStringLiteral("0.61 m clear of gas main")));
}

}  // namespace
}  // namespace burrow

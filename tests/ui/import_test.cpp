// The import screen, driven as a person does: a file, two clicks, what things mean, one step of undo.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QTableView>
#include <QTemporaryDir>
#include <QTimer>
#include <QTreeWidget>

#include "burrow/window/import_screen.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

class Import : public testing::Test {
 protected:
  QString write(const QString& name, const QByteArray& text) {
    QFile file(folder_.filePath(name));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
    return file.fileName();
  }
  QString survey() {
    QByteArray text;
    for (int i = -5; i <= 15; ++i)
      for (int k = -5; k <= 5; ++k)
        text += QByteArray::number(text.size()) + ',' + QByteArray::number(2000 + 4 * k) + ',' +
                QByteArray::number(1000 + 4 * i) + ",55.5,GND\n";
    return write(QStringLiteral("a.csv"), text + "9001,1990,1006,54.5,XQ\n9002,2010,1006,54.4,XQ\nbroken\n");
  }
  std::unique_ptr<ImportScreen> open(const QString& path) {
    auto screen = std::make_unique<ImportScreen>(tables_for_tests(), Theme::light(), UnitSystem::metric,
                                                 folder_.filePath(QStringLiteral("own/layers.json")), nullptr);
    screen->show();
    screen->add_file(path);
    settle(*screen);
    return screen;
  }
  static void settle(ImportScreen& screen) {
    EXPECT_TRUE(comes([&] { return !screen.busy(); }));
    QCoreApplication::processEvents();
  }
  static void click(ImportScreen& screen, const PlanPoint& p) {
    QTest::mouseClick(&screen.preview(), Qt::LeftButton, Qt::NoModifier, screen.preview().to_screen(p).toPoint());
  }
  static QModelIndex cell(ImportScreen& screen, const char* layer, int column) {
    for (int row = 0; row < screen.layers().rowCount({}); ++row)
      if (screen.layers().index(row, 0).data() == QLatin1String(layer)) return screen.layers().index(row, column);
    ADD_FAILURE() << layer;
    return {};
  }
  static QPushButton* button(ImportScreen& screen, const char* text) {
    for (QPushButton* b : screen.findChildren<QPushButton*>())
      if (b->text().remove(QLatin1Char('&')) == QLatin1String(text)) return b;
    ADD_FAILURE() << text;
    return nullptr;
  }
  QTemporaryDir folder_;
};

TEST_F(Import, TwoClicks_LayTheLine) {
  const auto screen = open(survey());
  ASSERT_EQ(screen->files().size(), 1u);
  EXPECT_FALSE(button(*screen, "New crossing from this")->isEnabled());
  click(*screen, {1000, 2000});
  click(*screen, {1020, 2000});
  settle(*screen);
  EXPECT_TRUE(button(*screen, "New crossing from this")->isEnabled());
  EXPECT_NEAR(screen->imported().length.m, 20, 0.5) << "a click is a pixel";
  EXPECT_NEAR(screen->imported().ground.front().elevation_m, 55.5, 1e-9);
  const auto* list = screen->findChild<QTreeWidget*>();
  ASSERT_GT(list->topLevelItemCount(), 0);
  QStringList places;
  for (int i = 0; i < list->topLevelItemCount(); ++i) places << list->topLevelItem(i)->text(0);
  EXPECT_TRUE(places.contains(QLatin1String("line 234"))) << places.join(QLatin1Char(';')).toStdString();
  EXPECT_TRUE(places.front().contains(QLatin1String("XQ"))) << "what is asked stands first";
}

// All of it, its buttons at the lower edge too, lies on the screen; what it says first is in the language spoken.
TEST_F(Import, FitsOnTheScreen) {
  const auto screen = open(survey());
  const QSize available = screen->screen()->availableSize();
  EXPECT_LE(screen->width(), available.width());
  EXPECT_LE(screen->height(), available.height());
  EXPECT_LE(screen->minimumSizeHint().height(), 700) << "a small screen of 768 lines, less its bars";
}

TEST_F(Import, MeaningAndHeights_ChangeWhatComesOut) {
  const auto screen = open(survey());
  screen->set_line({{1000, 2000}, {1020, 2000}});
  settle(*screen);
  ASSERT_EQ(screen->imported().utilities.size(), 1u) << "a code that nobody decided: a service nobody drew";
  EXPECT_EQ(screen->imported().utilities[0].kind, UtilityKind::unknown);
  LayerModel& model = screen->layers();
  EXPECT_TRUE(model.setData(cell(*screen, "XQ", LayerModel::meaning), static_cast<int>(Meaning::gas), Qt::EditRole));
  EXPECT_TRUE(model.setData(cell(*screen, "XQ", LayerModel::join), Qt::Checked, Qt::CheckStateRole));
  settle(*screen);
  ASSERT_EQ(screen->imported().utilities.size(), 1u);
  EXPECT_FALSE(screen->imported().utilities[0].path[0].z_m) << "nobody said what the heights are";
  EXPECT_TRUE(model.setData(cell(*screen, "XQ", LayerModel::heights), 1, Qt::EditRole));
  EXPECT_TRUE(model.setData(cell(*screen, "XQ", LayerModel::diameter), QStringLiteral("200 mm"), Qt::EditRole));
  EXPECT_FALSE(model.setData(cell(*screen, "XQ", LayerModel::diameter), QStringLiteral("nonsense"), Qt::EditRole));
  settle(*screen);
  EXPECT_NEAR(*screen->imported().utilities.at(0).path[0].z_m, 54.4, 1e-9);
  // What was said is kept for the next file.
  QTest::mouseClick(button(*screen, "New crossing from this"), Qt::LeftButton);
  EXPECT_EQ(screen->result(), QDialog::Accepted);
  const auto next = open(survey());
  EXPECT_EQ(next->files().at(0).layers.back().meaning, Meaning::gas);
}

// One file says its system, the other lies where that one lies: one click, and both are in it.
TEST_F(Import, LikelySystem_ByOneClick) {
  const auto screen = open(write(QStringLiteral("a.csv"),
                                 "1,5540000,500000,100,GND\n2,5540010,500010,100,GND\n"
                                 "3,5540020,500000,100,GND\n4,5540000,500020,100,GND\n"));
  auto* same = screen->findChild<QPushButton*>(QStringLiteral("sameSystem"));
  ASSERT_NE(same, nullptr);
  EXPECT_FALSE(same->isVisibleTo(screen.get()));
  screen->add_file(write(QStringLiteral("b.csv"), "1,5540005,500005,100,GAS\n2,5540015,500005,100,GAS\n"));
  settle(*screen);
  EXPECT_FALSE(same->isVisibleTo(screen.get())) << "nobody says any";
  screen->state_system(QStringLiteral("EPSG:25832"));
  EXPECT_TRUE(same->isVisibleTo(screen.get()));
  EXPECT_TRUE(same->text().contains(QLatin1String("a.csv"))) << same->text().toStdString();
  QTest::mouseClick(same, Qt::LeftButton);
  for (const ImportFile& file : screen->files()) EXPECT_EQ(frame_of(file).crs, "EPSG:25832");
  EXPECT_FALSE(same->isVisibleTo(screen.get()));
}

// How finely a drawing's curves are cut follows its unit: stated as millimetres, drawn in metres.
TEST_F(Import, OtherUnit_ReadsTheDrawingAgain) {
  const auto screen =
      open(write(QStringLiteral("plan.dxf"),
                 "0\nSECTION\n2\nHEADER\n9\n$"
                 "INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nARC\n8\nGAS\n10\n0\n20\n0\n40\n500\n"
                 "50\n0\n51\n90\n0\nENDSEC\n0\nEOF\n"));
  const std::size_t coarse = screen->files().at(0).found->vertices.size();
  QComboBox* unit = nullptr;
  for (QComboBox* box : screen->findChildren<QComboBox*>())
    if (box->findText(QStringLiteral("millimetres")) >= 0 && !unit) unit = box;
  ASSERT_NE(unit, nullptr);
  unit->setCurrentIndex(unit->findData(static_cast<int>(FileUnit::metre)));
  Q_EMIT unit->activated(unit->currentIndex());
  settle(*screen);
  EXPECT_EQ(screen->files().at(0).unit, FileUnit::metre);
  EXPECT_GT(screen->files().at(0).found->vertices.size(), 2 * coarse);
}

// What the colours mean stands in the picture, and a row of the table shows where its layer lies.
TEST_F(Import, LegendAndChosenLayer) {
  const auto screen = open(survey());
  using Rows = std::vector<ImportPreview::LegendRow>;
  EXPECT_EQ(screen->preview().legend(), (Rows{{Meaning::ground, 231}, {Meaning::undecided, 2}}));
  auto* table = screen->findChild<QTableView*>();
  ASSERT_TRUE(table);
  const QImage before = screen->preview().grab().toImage();
  table->selectRow(cell(*screen, "XQ", LayerModel::layer).row());
  const QImage chosen = screen->preview().grab().toImage();
  EXPECT_NE(before, chosen);
  const QPoint at = screen->preview().to_screen({1006, 1990}).toPoint();
  EXPECT_NE(before.copy(QRect(at - QPoint(6, 6), QSize(12, 12))), chosen.copy(QRect(at - QPoint(6, 6), QSize(12, 12))))
      << "there it lies";
  table->clearSelection();
  EXPECT_EQ(before, screen->preview().grab().toImage());
}

// A second drawing in millimetres that says nothing, beside a plan in metres: it is asked, whichever file is shown.
TEST_F(Import, SecondFile_MustFitToo) {
  const auto screen = open(survey());
  screen->set_line({{1000, 2000}, {1020, 2000}});
  screen->add_file(
      write(QStringLiteral("b.dxf"),
            "0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nGAS\n10\n0\n20\n0\n11\n40000\n21\n0\n0\nENDSEC\n0\nEOF\n"));
  settle(*screen);
  ASSERT_TRUE(screen->doubt());
  EXPECT_NE(screen->doubt()->find("b.dxf"), std::string::npos);
  EXPECT_FALSE(button(*screen, "New crossing from this")->isEnabled());
  auto* files = screen->findChild<QComboBox*>();
  files->setCurrentIndex(0);
  Q_EMIT files->activated(0);
  screen->findChild<QCheckBox*>(QStringLiteral("confirmUnit"))->click();
  EXPECT_FALSE(screen->doubt());
  EXPECT_TRUE(screen->files().at(1).unit_is_confirmed);
}

// A plan that would make the crossing 400 m long is not taken over before somebody says that it is so.
TEST_F(Import, Unit_MustBeConfirmed) {
  const auto screen = open(survey());
  screen->set_line({{1000, 2000}, {1050, 2000}});
  settle(*screen);
  EXPECT_FALSE(screen->doubt());
  EXPECT_TRUE(button(*screen, "New crossing from this")->isEnabled());
  screen->set_line({{1000, 2000}, {1400, 2000}});
  settle(*screen);
  EXPECT_TRUE(screen->doubt());
  EXPECT_FALSE(button(*screen, "New crossing from this")->isEnabled());
  auto* confirm = screen->findChild<QCheckBox*>(QStringLiteral("confirmUnit"));
  ASSERT_TRUE(confirm && confirm->isVisibleTo(screen.get()));
  EXPECT_TRUE(confirm->text().contains(QLatin1String("400.00 m")));
  confirm->click();
  EXPECT_FALSE(screen->doubt());
  EXPECT_TRUE(button(*screen, "New crossing from this")->isEnabled());
}

// Mains in degrees beside a survey of which nobody said the system: an error, until it is stated.
TEST_F(Import, System_IsStated) {
  const auto screen = open(write(QStringLiteral("zone.csv"),
                                 "1,5538630,500000,100,GND\n2,5538640,500010,100,GND\n"
                                 "3,5538650,500000,100,GND\n4,5538630,500020,100,GND\n"));
  screen->set_line({{500000, 5538630}, {500020, 5538630}});
  screen->add_file(write(QStringLiteral("m.geojson"),
                         R"({"type":"Feature","properties":{"layer":"gas","DIAMETER":4},"geometry":)"
                         R"({"type":"LineString","coordinates":[[9,50],[9.0001,50]]}})"));
  settle(*screen);
  EXPECT_FALSE(button(*screen, "New crossing from this")->isEnabled());
  auto* files = screen->findChild<QComboBox*>();
  files->setCurrentIndex(0);
  Q_EMIT files->activated(0);
  screen->state_system(QStringLiteral("25832"));
  settle(*screen);
  EXPECT_EQ(screen->files().at(0).said_frame->crs, "EPSG:25832");
  EXPECT_TRUE(button(*screen, "New crossing from this")->isEnabled());
  screen->state_system(QStringLiteral("nonsense"));
  EXPECT_EQ(screen->files().at(0).said_frame->crs, "EPSG:25832") << "what is wrong changes nothing";
}

// What the columns of a file are is said once.
TEST_F(Import, Attributes_AreRememberedForThatShape) {
  const QString mains =
      write(QStringLiteral("m.geojson"),
            R"({"type":"Feature","properties":{"layer":"gas","DIAMETER":4,"MATERIAL":"PE"},"geometry":)"
            R"({"type":"LineString","coordinates":[[9,49.9999],[9,50.0001]]}})");
  const auto screen = open(mains);
  screen->set_line({{8.9999, 50}, {9.0001, 50}});
  settle(*screen);
  ASSERT_EQ(screen->imported().utilities.size(), 1u);
  EXPECT_FALSE(screen->imported().utilities[0].outside_diameter) << "a guess by its values is no decision";
  std::vector<FieldChoice> choices = screen->files().at(0).fields;
  for (FieldChoice& choice : choices) choice.is_decided = true;
  screen->set_fields(choices);
  settle(*screen);
  ASSERT_TRUE(screen->imported().utilities.at(0).outside_diameter);
  EXPECT_GT(screen->imported().utilities[0].outside_diameter->m, 0.1);
  QTest::mouseClick(button(*screen, "New crossing from this"), Qt::LeftButton);
  const auto next = open(mains);
  EXPECT_EQ(next->files().at(0).fields, choices);
}

TEST_F(Import, OrderAndUnit_HaveLiveConsequence) {
  const auto screen = open(survey());
  auto* order = [&]() -> QComboBox* {
    for (QComboBox* box : screen->findChildren<QComboBox*>())
      if (box->isEditable()) return box;
    return nullptr;
  }();
  ASSERT_NE(order, nullptr);
  EXPECT_EQ(order->currentText(), QLatin1String("PNEZD"));
  order->setEditText(QStringLiteral("PENZD"));
  Q_EMIT order->lineEdit()->editingFinished();
  settle(*screen);
  EXPECT_EQ(screen->files().at(0).found->order, "penzd");
  const auto extent = extent_of(*screen->files().at(0).found);
  EXPECT_EQ(extent->low_x, 1980);
  order->setEditText(QStringLiteral("PQ"));
  Q_EMIT order->lineEdit()->editingFinished();
  bool reported = false;
  for (const QLabel* label : screen->findChildren<QLabel*>())
    reported = reported || label->text().contains(QLatin1String("n and e"));
  EXPECT_TRUE(reported);
}

TEST_F(Import, BadFile_IsSaidAndTheScreenStays) {
  const auto screen = open(write(QStringLiteral("b.dxf"), "not a drawing"));
  EXPECT_TRUE(screen->files().empty());
  bool reported = false;
  for (const QLabel* label : screen->findChildren<QLabel*>())
    reported = reported || label->text().startsWith(QLatin1String("Not read."));
  EXPECT_TRUE(reported);
  screen->add_file(survey());
  settle(*screen);
  EXPECT_EQ(screen->files().size(), 1u);
}

// A file in degrees over one in metres of a map: 45 degrees north on the central meridian of zone 32 lie 0.9996 of the
// meridian arc of 4984944.378 m (Snyder 1987, equation 3-21, GRS 80) to the north, at easting 500 000.
TEST_F(Import, OtherCoordinateSystem_IsSeenInItsPlace) {
  const auto line = [&](const char* name, const QByteArray& crs, const QByteArray& coordinates) {
    return write(QString::fromLatin1(name), R"({"type":"FeatureCollection",)" + crs +
                                                R"("features":[{"type":"Feature","properties":{"kind":"X"},)" +
                                                R"("geometry":{"type":"LineString","coordinates":)" + coordinates +
                                                "}}]}");
  };
  const auto screen = open(line("map.geojson", R"("crs":{"type":"name","properties":{"name":"EPSG:25832"}},)",
                                "[[499990,4982940],[499990,4982961],[500010,4982961]]"));
  const QPoint middle = screen->preview().to_screen({500000, 0.9996 * 4984944.378}).toPoint();
  const auto inked = [&] {
    const QImage image = screen->preview().grab().toImage();
    const double ratio = image.devicePixelRatio();
    int dark = 0;
    for (int y = -2; y <= 2; ++y)
      dark += image.pixelColor((QPointF(middle.x(), middle.y() + y) * ratio).toPoint()).lightnessF() < 0.75;
    return dark > 0;
  };
  EXPECT_FALSE(inked());
  screen->add_file(line("degrees.geojson", "", "[[8.99995,45],[9.00005,45]]"));
  settle(*screen);
  ASSERT_EQ(screen->files().size(), 2u);
  EXPECT_TRUE(screen->files()[1].seen);
  EXPECT_TRUE(inked());
}

// Feet beside metres, neither with a coordinate system: each by the unit that is said of it.
TEST_F(Import, OtherUnit_IsSeenInItsPlace) {
  const auto screen = open(write(QStringLiteral("m.csv"), "1,1000,1000,5,A\n2,1000,1020,5,A\n3,1020,1000,5,A\n"));
  screen->add_file(write(QStringLiteral("ft.csv"), "1,3313.648,3313.648,5,B\n2,3313.648,3313.648,5,B\n"));
  settle(*screen);
  const QPoint middle = screen->preview().to_screen({1010, 1010}).toPoint();
  const auto inked = [&] {
    return screen->preview().grab().toImage().pixelColor(middle * screen->devicePixelRatioF()).lightnessF() < 0.75;
  };
  EXPECT_FALSE(inked());
  // The second unit box is that of the file shown, which is the one added last.
  QComboBox* unit = nullptr;
  for (QComboBox* box : screen->findChildren<QComboBox*>())
    if (box->findData(static_cast<int>(FileUnit::foot)) >= 0 && !unit) unit = box;
  ASSERT_TRUE(unit);
  unit->setCurrentIndex(unit->findData(static_cast<int>(FileUnit::foot)));
  Q_EMIT unit->activated(unit->currentIndex());
  settle(*screen);
  EXPECT_TRUE(inked());
}

// From a survey, a drawing and records of utilities to a judged crossing: each step has its guess, few are decided.
TEST_F(Import, ThreeFiles_ToAJudgedCrossingInEightDecisions) {
  QByteArray points;
  for (int i = -5; i <= 10; ++i)
    for (int k = -5; k <= 5; ++k)
      points += QByteArray::number(points.size()) + ',' + QByteArray::number(5538630 + 4 * k) + ',' +
                QByteArray::number(500000 + 4 * i) + ",55.5,GND\n";
  TestWindow w("house-service");
  int decisions = 0;
  const auto screen = open(write(QStringLiteral("survey.csv"), points));
  screen->add_file(write(QStringLiteral("plan.dxf"),
                         "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n6\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n"
                         "0\nLINE\n8\nKERB\n10\n500002\n20\n5538610\n11\n500002\n21\n5538650\n"
                         "0\nLINE\n8\nKERB\n10\n500009\n20\n5538610\n11\n500009\n21\n5538650\n0\nENDSEC\n0\nEOF\n"));
  screen->add_file(write(
      QStringLiteral("mains.geojson"),
      R"({"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:25832"}},"features":[{"type":"Feature",)"
      R"("properties":{"layer":"gas","OD_MM":110,"MATERIAL":"PE","COVER_M":0.9},"geometry":{"type":"LineString",)"
      R"("coordinates":[[500006,5538610],[500006,5538650]]}}]})"));
  settle(*screen);
  ASSERT_EQ(screen->files().size(), 3u);
  auto* same = screen->findChild<QPushButton*>(QStringLiteral("sameSystem"));
  ASSERT_TRUE(same->isVisibleTo(screen.get())) << "the guess: all in the system that the records state";
  QTest::mouseClick(same, Qt::LeftButton);
  ++decisions;
  settle(*screen);
  for (const PlanPoint& p : {PlanPoint{500000, 5538630}, PlanPoint{500012, 5538630}}) {
    click(*screen, p);
    ++decisions;
  }
  settle(*screen);
  QPushButton* as_new = button(*screen, "New crossing from this");
  ASSERT_TRUE(as_new->isEnabled());
  QTest::mouseClick(as_new, Qt::LeftButton);
  ++decisions;
  w.window.take_import(screen->imported(), true);
  EXPECT_LE(decisions, 8);
  ASSERT_EQ(w.crossing().site.utilities.size(), 1u);
  const Utility& gas = w.crossing().site.utilities.front();
  ASSERT_TRUE(gas.outside_diameter && gas.path.front().z_m);
  EXPECT_NEAR(*gas.path.front().z_m, 55.5 - 0.9 - 0.055, 1e-6);
  EXPECT_EQ(w.crossing().site.surface.size(), 1u) << "the road between two kerbs";
  const Assessment& answer = w.window.document().assessment();
  ASSERT_EQ(answer.utilities.size(), 1u);
  EXPECT_TRUE(answer.utilities.front().on_bore) << "judged: how near the bore passes it";
}

TEST_F(Import, TypedLine_ByKeyboardAlone) {
  const auto screen = open(survey());
  const auto edits = screen->findChildren<QLineEdit*>();
  QLineEdit *launch = nullptr, *exit = nullptr;
  for (QLineEdit* edit : edits)
    if (edit->placeholderText() == QLatin1String("east, north")) (launch ? exit : launch) = edit;
  ASSERT_TRUE(launch && exit);
  launch->setText(QStringLiteral("1000, 2000"));
  exit->setText(QStringLiteral("1012.5 2000"));
  Q_EMIT exit->editingFinished();
  settle(*screen);
  EXPECT_NEAR(screen->imported().length.m, 12.5, 1e-9);
}

// A ground line is read in the program itself: not one of a size that the screen would wait for.
TEST_F(Import, GroundLine_TooLargeIsRefused) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  QByteArray text;
  for (int i = 0; text.size() <= 4 << 20; ++i) text += QByteArray::number(i) + ", 101.5\n";
  bool refused = false;
  QTimer::singleShot(0, [&refused] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    refused = box && box->informativeText().contains(QLatin1String("4 MB"));
    if (box) box->accept();
  });
  EXPECT_FALSE(w.window.import_ground(write(QStringLiteral("large.csv"), text)));
  EXPECT_TRUE(refused);
  EXPECT_EQ(w.crossing(), before);
}

TEST_F(Import, IntoTheOpenCrossing_OneStepOfUndo) {
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  const auto screen = open(survey());
  screen->set_line({{1000, 2000}, {1020, 2000}});
  settle(*screen);
  w.window.take_import(screen->imported(), false);
  EXPECT_NE(w.crossing().site.ground, before.site.ground);
  EXPECT_EQ(w.crossing().bore, before.bore);
  ASSERT_TRUE(w.crossing().site.georeference);
  EXPECT_EQ(w.crossing().site.georeference->origin, (PlanPoint{1000, 2000}));
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
  w.window.document().undo_stack().redo();
  EXPECT_NE(w.crossing(), before);
  w.window.document().undo_stack().undo();
  w.window.take_import(screen->imported(), true);
  EXPECT_EQ(w.crossing().bore.exit.station.m, 20);
  EXPECT_TRUE(w.window.document().modified());
}

}  // namespace
}  // namespace burrow

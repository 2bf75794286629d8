/// The panels for tool, ground and set-up: real widgets, one undo step each, nothing taken that could not be reopened.

#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QTemporaryDir>

#include "burrow/crossing/blank.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/setup_panel.h"
#include "burrow/panels/soil_panel.h"
#include "burrow/panels/tool_panel.h"
#include "burrow/words/trials_text.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

template <class Panel>
using VisibleLayers = PanelBeside<Panel>;

QLineEdit* entry_of(EntryForm* form, const char* label) {
  return form->entry(form->find(QString::fromUtf8(label)));
}

void choose(QComboBox* combo, int row) {
  combo->setCurrentIndex(row);
  Q_EMIT combo->activated(row);
}

TEST(ToolPanel, AnotherClass_IsOneStepAndAnotherAnswer) {
  VisibleLayers<ToolPanel> w("house-service");
  ASSERT_TRUE(w.opened);
  const Assessment before = w.document.assessment();
  const Crossing crossing_before = w.crossing();
  EXPECT_EQ(w.panel.classes()->count(), 10) << "nine classes and the plate";
  EXPECT_EQ(w.panel.classes()->currentText(), QStringLiteral("75 mm class"));
  choose(w.panel.classes(), w.panel.classes()->findText(QStringLiteral("110 mm class")));
  EXPECT_EQ(w.crossing().bore.tool.tool_class, "tool-110");
  EXPECT_EQ(w.steps(), 1);
  EXPECT_NE(w.document.assessment(), before);
  EXPECT_EQ(entry_of(w.panel.plate(), "diameter")->placeholderText(), QStringLiteral("110 mm"));
  w.document.undo_stack().undo();
  w.panel.refresh_now();
  EXPECT_EQ(w.crossing(), crossing_before);
  EXPECT_EQ(w.panel.classes()->currentText(), QStringLiteral("75 mm class"));
}

TEST(ToolPanel, PlateIsTypedInAnyUnit_AndEmptyGoesBackToTheClass) {
  VisibleLayers<ToolPanel> w("house-service");
  const double class_length = find_tool(tables_for_tests(), "tool-75")->length.m;
  w.type(w.panel.plate(), "length", "4' 6\"");
  ASSERT_TRUE(w.crossing().bore.tool.length);
  EXPECT_NEAR(w.crossing().bore.tool.length->m, 1.3716, 1e-12);
  EXPECT_EQ(entry_of(w.panel.plate(), "length")->text(), QStringLiteral("1.37 m"));
  w.type(w.panel.plate(), "blow rate", "420");
  EXPECT_NEAR(w.crossing().bore.tool.blow_rate->Hz, 7, 1e-12);
  w.type(w.panel.plate(), "blow rate", "8 Hz");
  EXPECT_NEAR(w.crossing().bore.tool.blow_rate->Hz, 8, 1e-12);
  w.type(w.panel.plate(), "air pressure", "90 psi");
  EXPECT_NEAR(w.crossing().bore.tool.pressure->Pa, 90 * 6894.757293168361, 1e-6);
  w.type(w.panel.plate(), "mass", "60 lb");
  EXPECT_NEAR(w.crossing().bore.tool.mass->kg, 60 * 0.45359237, 1e-9);
  EXPECT_EQ(w.steps(), 5);
  w.expect_opens_again();

  w.type(w.panel.plate(), "length", "");
  EXPECT_FALSE(w.crossing().bore.tool.length);
  EXPECT_EQ(entry_of(w.panel.plate(), "length")->text(), QString());
  EXPECT_EQ(entry_of(w.panel.plate(), "length")->placeholderText().toStdString(),
            format(class_length, Dimension::length, UnitSystem::metric));
  QTest::mouseClick(w.panel.back_to_class(), Qt::LeftButton);
  ToolChoice class_alone;
  class_alone.tool_class = "tool-75";
  EXPECT_EQ(w.crossing().bore.tool, class_alone);
  EXPECT_FALSE(w.panel.back_to_class()->isEnabled());
}

TEST(ToolPanel, WrongValue_IsToldAndNothingChanges) {
  VisibleLayers<ToolPanel> w("house-service");
  const Crossing before = w.crossing();
  for (const auto& [label, text] :
       std::initializer_list<std::pair<const char*, const char*>>{{"length", "5 kg"},
                                                                  {"length", "-1 m"},
                                                                  {"diameter", "0"},
                                                                  {"diameter", "40 mm"},
                                                                  {"mass", "nan"},
                                                                  {"mass", "1 kg"},
                                                                  {"piston diameter", "80 mm"},
                                                                  {"stroke", "long"},
                                                                  {"blow rate", "8 min"},
                                                                  {"air pressure", "-1 bar"},
                                                                  {"free air", "-2"},
                                                                  {"mass of the striker", "90 kg"}}) {
    EntryForm* form = w.panel.plate();
    const int row = form->find(QString::fromUtf8(label));
    w.type(form, label, text);
    EXPECT_EQ(w.crossing(), before) << label << " " << text;
    EXPECT_FALSE(form->complaint(row).isEmpty()) << label << " " << text;
    EXPECT_EQ(form->entry(row)->text(), QString::fromUtf8(text)) << "what was typed stays";
    QTest::keyClick(form->entry(row), Qt::Key_Escape);
    EXPECT_EQ(form->entry(row)->text(), QString());
    EXPECT_TRUE(form->complaint(row).isEmpty());
  }
  EXPECT_EQ(w.steps(), 0);
}

// What an empty entry goes back to must stand as well: a class mass below the striker that was typed.
TEST(ToolPanel, EmptyMass_IsNotTakenUnderAHeavyStriker) {
  VisibleLayers<ToolPanel> w("house-service");
  w.type(w.panel.plate(), "mass", "60 kg");
  w.type(w.panel.plate(), "mass of the striker", "40 kg");
  ASSERT_TRUE(w.crossing().bore.tool.striker_mass);
  const ToolChoice before = w.crossing().bore.tool;
  w.type(w.panel.plate(), "mass", "");
  EXPECT_EQ(w.crossing().bore.tool, before);
  EXPECT_TRUE(
      w.panel.plate()->complaint(w.panel.plate()->find(QStringLiteral("mass"))).contains(QStringLiteral("lighter")))
      << w.panel.plate()->complaint(w.panel.plate()->find(QStringLiteral("mass"))).toStdString();
  w.expect_opens_again();
}

TEST(ToolPanel, ByThePlate_TheDiameterCannotBeEmpty) {
  VisibleLayers<ToolPanel> w("house-service");
  choose(w.panel.classes(), 9);
  EXPECT_TRUE(w.crossing().bore.tool.tool_class.empty());
  ASSERT_TRUE(w.crossing().bore.tool.diameter);
  EXPECT_DOUBLE_EQ(w.crossing().bore.tool.diameter->m, 0.075);
  EXPECT_EQ(w.steps(), 1);
  w.expect_opens_again();
  const Crossing before = w.crossing();
  w.type(w.panel.plate(), "diameter", "");
  EXPECT_EQ(w.crossing(), before);
  EXPECT_FALSE(w.panel.plate()->complaint(w.panel.plate()->find(QStringLiteral("diameter"))).isEmpty());
  w.type(w.panel.plate(), "diameter", "2 in");
  EXPECT_NEAR(w.crossing().bore.tool.diameter->m, 0.0508, 1e-12) << "what only follows from it holds nothing back";
}

// Whole kind: the ends of every range are taken by the reader and by everything that is computed.
TEST(PlateFields, EndsOfEveryRange_OpenAgainAndAreAnswered) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const Crossing& start = document.crossing();
  const auto try_all = [&](const std::vector<Field>& fields) {
    EXPECT_FALSE(fields.empty());
    for (const Field& field : fields)
      for (const double end : {field.low, field.high}) {
        Crossing changed = start;
        field.apply(changed, end);
        const Result<Crossing> again = read_crossing(write_crossing(changed), tables_for_tests());
        ASSERT_TRUE(again) << field.label << ": " << again.error().english();
        EXPECT_FALSE(assess(*again, tables_for_tests()).findings.empty()) << field.label << " " << end;
      }
  };
  try_all(plate_fields(start, tables_for_tests()));
  try_all(soil_fields(start, "l2", tables_for_tests()));
  try_all(model_fields(start));
  try_all(setting_fields(start));
}

TEST(ToolPanel, UndoRestoresTheShownText) {
  VisibleLayers<ToolPanel> w("house-service");
  w.type(w.panel.plate(), "stroke", "130 mm");
  EXPECT_EQ(entry_of(w.panel.plate(), "stroke")->text(), QStringLiteral("130 mm"));
  w.document.undo_stack().undo();
  w.panel.refresh_now();
  EXPECT_EQ(entry_of(w.panel.plate(), "stroke")->text(), QString());
  w.document.undo_stack().redo();
  w.panel.refresh_now();
  EXPECT_EQ(entry_of(w.panel.plate(), "stroke")->text(), QStringLiteral("130 mm"));
  w.panel.set_units(UnitSystem::us);
  EXPECT_EQ(entry_of(w.panel.plate(), "stroke")->text(), QStringLiteral("5.12 in"));
}

TEST(ToolPanel, SaysTheGenericTrendAndItsLabel) {
  VisibleLayers<ToolPanel> w("house-service");
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("take the maker's plate")));
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("[program's model]")));
  const std::string push =
      format(w.document.assessment().advance.blow.reaction_N, Dimension::force, UnitSystem::metric);
  EXPECT_TRUE(w.panel.visible_text().contains(QString::fromStdString(push))) << push;
}

TEST(Panels, NewerFile_SaysReadOnlyAndTakesNothing) {
  QTemporaryDir folder;
  const auto text = read_text_file(sample_path("house-service").toStdString());
  ASSERT_TRUE(text.has_value());
  std::string newer = *text;
  newer.replace(newer.find("\"version\": 1"), 12, "\"version\": 9");
  const QString path = folder.filePath(QStringLiteral("newer.crossing"));
  {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(QByteArray::fromStdString(newer));
  }
  VisibleLayers<ToolPanel> w("house-service");
  SoilPanel soil(w.document);
  SetupPanel setup(w.document);
  ASSERT_TRUE(w.document.open(path));
  const Crossing before = w.crossing();
  for (FormPanel* panel : std::initializer_list<FormPanel*>{&w.panel, &soil, &setup}) {
    panel->show();
    panel->refresh_now();
    bool reported = false;
    for (const QLabel* label : panel->findChildren<QLabel*>())
      reported = reported || (label->isVisible() && label->text().startsWith(QStringLiteral("Read-only")));
    EXPECT_TRUE(reported);
    for (const QLineEdit* entry : panel->findChildren<QLineEdit*>()) EXPECT_TRUE(entry->isReadOnly());
  }
  EXPECT_FALSE(w.panel.classes()->isEnabled());
  EXPECT_FALSE(soil.classes()->isEnabled());
  choose(w.panel.classes(), 0);
  w.type(setup.line(), "grade", "2 %");
  EXPECT_EQ(w.crossing(), before);
}

TEST(SoilPanel, StrataStandFromTheGroundDown_AndAClassIsOneStep) {
  VisibleLayers<SoilPanel> w("house-service");
  ASSERT_EQ(w.panel.strata()->count(), 2);
  EXPECT_TRUE(w.panel.strata()->item(0)->text().contains(QStringLiteral("made ground")));
  EXPECT_TRUE(w.panel.strata()->item(0)->text().contains(QStringLiteral("from the ground line")));
  w.panel.pick("l2");
  EXPECT_EQ(w.panel.classes()->currentText(), QStringLiteral("firm clay"));
  EXPECT_EQ(entry_of(w.panel.values(), "undrained strength")->text(), QStringLiteral("45.0 kPa"));
  const Assessment before = w.document.assessment();
  choose(w.panel.classes(), w.panel.classes()->findText(QStringLiteral("medium dense sand")));
  EXPECT_EQ(w.crossing().site.strata[1].soil, "medium-sand");
  EXPECT_EQ(w.steps(), 1);
  EXPECT_NE(w.document.assessment(), before);
  EXPECT_TRUE(w.panel.visible_text().contains(
      QString::fromStdString(find_soil(tables_for_tests(), "medium-sand")->thumb.english())));
  EXPECT_GE(w.panel.values()->find(QStringLiteral("friction angle")), 0);
  EXPECT_EQ(entry_of(w.panel.values(), "undrained strength")->text(), QStringLiteral("45.0 kPa"))
      << "typed values stay";
  w.document.undo_stack().undo();
  w.panel.refresh_now();
  EXPECT_EQ(w.panel.classes()->currentText(), QStringLiteral("firm clay"));
}

TEST(SoilPanel, GuessSaysWhatItDoes_AndSeenTakesItAway) {
  VisibleLayers<SoilPanel> w("house-service");
  w.panel.pick("l2");
  choose(w.panel.known(), 2);
  EXPECT_EQ(w.crossing().site.strata[1].known, Given<StratumEvidence>::enter(StratumEvidence::guess));
  const std::vector<GuessEffect>& guesses = w.document.assessment().guesses;
  ASSERT_EQ(guesses.size(), 1u);
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("soft clay or stiff clay")))
      << w.panel.visible_text().toStdString();
  if (guesses[0].chance_of_loss > 0) {
    const std::string chance = format(guesses[0].chance_of_loss, Dimension::chance, UnitSystem::metric);
    EXPECT_TRUE(w.panel.visible_text().contains(QString::fromStdString(chance)));
  }
  const std::string lower = format(-guesses[0].shift_low_m, Dimension::small_length, UnitSystem::metric);
  EXPECT_TRUE(w.panel.visible_text().contains(QString::fromStdString(lower)))
      << lower << w.panel.visible_text().toStdString();
  choose(w.panel.known(), 0);
  EXPECT_FALSE(w.panel.visible_text().contains(QStringLiteral("soft clay or stiff clay")));
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("Seen")));
  EXPECT_EQ(w.steps(), 2);
}

TEST(SoilPanel, TypedValuesWaterAndModel_EachOneStep) {
  VisibleLayers<SoilPanel> w("house-service");
  w.panel.pick("l2");
  w.type(w.panel.values(), "undrained strength", "1 tsf");
  EXPECT_NEAR(w.crossing().site.strata[1].values.undrained_strength->Pa, 95760.5, 0.1);
  w.type(w.panel.values(), "stops by the ground", "0.5");
  EXPECT_NEAR(w.crossing().site.strata[1].values.refusal_rate->per_m, 0.005, 1e-12);
  QTest::mouseClick(w.panel.back_to_class(), Qt::LeftButton);
  EXPECT_EQ(w.crossing().site.strata[1].values, SoilOverrides{});
  w.type(w.panel.model(), "steering constant", "0.06");
  EXPECT_EQ(w.crossing().bore.model.steer_constant, Given<Ratio>::enter(Ratio{0.06}));
  w.type(w.panel.model(), "calibrated", "12");
  EXPECT_TRUE(w.panel.visible_text().contains(QString::fromStdString(model_status(ModelConstants{}))));
  w.type(w.panel.model(), "steering constant", "");
  EXPECT_EQ(w.crossing().bore.model.steer_constant, ModelConstants{}.steer_constant);
  w.type(w.panel.water(), "water level", "99.5 m");
  ASSERT_TRUE(w.crossing().site.water);
  EXPECT_DOUBLE_EQ(elevation_at(*w.crossing().site.water, 0), 99.5);
  w.expect_opens_again();
  w.type(w.panel.water(), "water level", "");
  EXPECT_FALSE(w.crossing().site.water);
  w.expect_opens_again();
}

TEST(SetupPanel, ShowsTheSetUpOfTheCrew) {
  VisibleLayers<SetupPanel> w("car-park-duct");
  const CrewSetup setup = crew_setup(w.crossing(), tables_for_tests());
  const auto says = [&](double value, Dimension dimension) {
    const QString text = QString::fromStdString(format(std::abs(value), dimension, UnitSystem::metric));
    EXPECT_TRUE(w.panel.visible_text().contains(text))
        << text.toStdString() << " in " << w.panel.visible_text().toStdString();
  };
  says(setup.grade.rise.m, Dimension::small_length);
  says(setup.cradle.front_third.above_floor.m, Dimension::length);
  says(setup.cradle.front_third.station.m, Dimension::station);
  says(setup.cradle.tail.elevation.m, Dimension::station);
  says(setup.errors.level_1mm.up_m, Dimension::small_length);
  says(setup.errors.level_1_percent.up_m, Dimension::small_length);
  says(setup.errors.heading_1_degree.left_m, Dimension::small_length);
  if (setup.hold_until_m) says(*setup.hold_until_m, Dimension::length);
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("nose 7 mm lower than the tail")))
      << w.panel.visible_text().toStdString();
  EXPECT_TRUE(w.panel.visible_text().contains(QString::fromStdString(model_status(ModelConstants{}))));
}

TEST(SetupPanel, SightBaseAndErrors_AreTypedHere) {
  VisibleLayers<SetupPanel> w("first-lesson");
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("no stake entered")));
  w.type(w.panel.line(), "distance to the aiming stake", "5 ft");
  EXPECT_NEAR(w.crossing().bore.launch.sight_base->m, 1.524, 1e-12);
  EXPECT_FALSE(w.panel.visible_text().contains(QStringLiteral("no stake entered")));
  w.type(w.panel.line(), "heading", "1 deg");
  const std::string off = format(1.524 * std::tan(pi / 180), Dimension::small_length, UnitSystem::metric);
  EXPECT_TRUE(w.panel.visible_text().contains(QString::fromStdString(off + " left")))
      << w.panel.visible_text().toStdString();
  const double before = *w.document.assessment().arrival.sd_vertical_m;
  w.type(w.panel.errors(), "levelling tolerance", "10 mm/m");
  EXPECT_GT(*w.document.assessment().arrival.sd_vertical_m, before);
  w.type(w.panel.errors(), "levelling tolerance", "");
  EXPECT_FALSE(w.crossing().bore.launch.level_sd.entered);
  EXPECT_DOUBLE_EQ(*w.document.assessment().arrival.sd_vertical_m, before);
  w.expect_opens_again();
}

// Nothing stands beyond the edge of the column, however narrow it is and whatever is wrong.
template <class Panel>
void expect_inside() {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const int width : {240, 340}) {
      VisibleLayers<Panel> w("house-service", units);
      w.panel.resize(width, 700);
      QCoreApplication::processEvents();
      const auto* scroll = w.panel.template findChild<QScrollArea*>();
      EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width()) << width;
      for (const QLineEdit* entry : w.panel.template findChildren<QLineEdit*>()) {
        const QString text = entry->text().isEmpty() ? entry->placeholderText() : entry->text();
        EXPECT_LE(entry->fontMetrics().horizontalAdvance(text) + 8, entry->width())
            << entry->accessibleName().toStdString() << ": " << text.toStdString();
        EXPECT_FALSE(entry->accessibleName().isEmpty());
      }
    }
}
TEST(Panels, NarrowColumn_ClipsNothing) {
  expect_inside<ToolPanel>();
  expect_inside<SoilPanel>();
  expect_inside<SetupPanel>();
}

// Also after the entries were made anew for a soil that drains.
TEST(Panels, Tab_GoesDownTheColumn) {
  VisibleLayers<SoilPanel> w("house-service");
  w.panel.pick("l2");
  choose(w.panel.classes(), w.panel.classes()->findText(QStringLiteral("medium dense sand")));
  QCoreApplication::processEvents();
  w.panel.strata()->setFocus();
  const QWidget* at = w.panel.strata();
  int seen = 0;
  for (const QWidget* next = at->nextInFocusChain(); next != w.panel.strata(); next = next->nextInFocusChain()) {
    const bool here = next->isVisible() && (next->focusPolicy() & Qt::TabFocus) == Qt::TabFocus;
    if (!here || !w.panel.isAncestorOf(next)) continue;
    EXPECT_GT(next->mapTo(&w.panel, QPoint()).y(), at->mapTo(&w.panel, QPoint()).y())
        << next->accessibleName().toStdString() << " after " << at->accessibleName().toStdString();
    at = next;
    ++seen;
  }
  EXPECT_GE(seen, 14);
}

TEST(Panels, AnotherCrossing_TakesTypingAway) {
  VisibleLayers<ToolPanel> w("house-service");
  w.type(w.panel.plate(), "length", "zork");
  w.document.start_from(blank_crossing(), false);
  w.panel.refresh_now();
  EXPECT_EQ(entry_of(w.panel.plate(), "length")->text(), QString());
  EXPECT_TRUE(w.panel.plate()->complaint(w.panel.plate()->find(QStringLiteral("length"))).isEmpty());
}

}  // namespace
}  // namespace burrow

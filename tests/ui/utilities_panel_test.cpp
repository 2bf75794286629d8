/// The page of the utilities: real widgets, one undo step each, nothing taken that could not be reopened.

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>

#include "burrow/crossing/blank.h"
#include "burrow/document/utility_fields.h"
#include "burrow/panels/utilities_panel.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

using Page = PanelBeside<UtilitiesPanel>;

const Utility& utility_of(const Crossing& crossing, const std::string& id) {
  const auto& all = crossing.site.utilities;
  return *std::find_if(all.begin(), all.end(), [&](const Utility& u) { return u.id == id; });
}

QPushButton* button(QWidget& panel, const char* text) {
  for (QPushButton* one : panel.findChildren<QPushButton*>())
    if (one->text() == QString::fromUtf8(text)) return one;
  return nullptr;
}

TEST(UtilitiesPanel, List_WorstFirst_WithItsNumbers) {
  Page w("four-faults");
  ASSERT_TRUE(w.opened);
  const auto& cards = w.panel.list()->cards();
  ASSERT_EQ(cards.size(), 3u);
  double before = -1e9;
  bool ranked = false;
  for (const UtilityAnswer& answer : w.document.assessment().utilities) ranked = ranked || answer.expose_rank;
  for (const Card& card : cards)
    for (const UtilityAnswer& answer : w.document.assessment().utilities) {
      if (answer.id != card.id) continue;
      const double margin = *answer.separation_m - *answer.required_m;
      if (!ranked) {
        EXPECT_GE(margin, before);
      }
      before = margin;
      QString facts = card.facts;
      facts.replace(QChar(QChar::Nbsp), QLatin1Char(' '));
      EXPECT_TRUE(
          facts.contains(QString::fromStdString(format(*answer.separation_m, Dimension::length, UnitSystem::metric))));
      EXPECT_EQ(!card.tag.isEmpty(), answer.expose);
    }
  EXPECT_TRUE(w.panel.list()->item(0)->text().contains(cards[0].title)) << "read out as it is shown";
}

TEST(UtilitiesPanel, ChoicesAndTexts_AreOneStepEach) {
  Page w("house-service");
  w.panel.pick("u2");
  const Crossing before = w.crossing();
  int steps = 0;
  const auto one_more = [&](const char* what) {
    EXPECT_EQ(w.steps(), ++steps) << what;
    w.expect_opens_again();
  };
  w.type(w.panel.names(), "name", "gas main, Larkfold Rise, medium pressure");
  EXPECT_EQ(utility_of(w.crossing(), "u2").name, "gas main, Larkfold Rise, medium pressure");
  one_more("name");
  w.type(w.panel.names(), "owner", "the gas company");
  one_more("owner");
  w.choose("material", "steel");
  EXPECT_EQ(utility_of(w.crossing(), "u2").material, "steel");
  one_more("material");
  w.choose("kind", "W");
  EXPECT_EQ(utility_of(w.crossing(), "u2").kind, UtilityKind::water);
  one_more("kind");
  w.choose("status", "abandoned");
  EXPECT_EQ(utility_of(w.crossing(), "u2").status, Given<UtilityStatus>::enter(UtilityStatus::abandoned));
  one_more("status");
  w.choose("diameter of the record", "nominal");
  EXPECT_EQ(utility_of(w.crossing(), "u2").recorded.diameter, DiameterMeant::nominal);
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("add the walls")));
  one_more("diameter");
  w.choose("level of the record", "not said");
  EXPECT_FALSE(utility_of(w.crossing(), "u2").recorded.level);
  one_more("level");
  w.choose("measured from", "datum");
  one_more("from");
  w.choose("located by", "records");
  EXPECT_EQ(utility_of(w.crossing(), "u2").located.how, Given<LocatedHow>::enter(LocatedHow::records));
  one_more("how");
  w.type(w.panel.dates(), "date", "2026-03-14");
  EXPECT_EQ(utility_of(w.crossing(), "u2").located.date, "2026-03-14");
  one_more("date");
  w.type(w.panel.precautions(), "precaution", "valve at the corner");
  one_more("precaution");
  w.type(w.panel.gap(), "clear gap", "2 ft");
  EXPECT_NEAR(utility_of(w.crossing(), "u2").required_clearance->m, 0.6096, 1e-12);
  one_more("gap");
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

// By hand: the sewer of 175 mm; its invert 0.0875 m below the centre line, its crown as far above.
TEST(UtilitiesPanel, CrownAndInvert_ConvertWithTheDiameter) {
  Page w("house-service");
  w.panel.pick("u4");  // level line at 101.5, 90 mm
  w.choose("measured from", "datum");
  const auto shown = [&] { return w.panel.level()->entry(0)->text(); };
  EXPECT_EQ(w.panel.level()->find(QStringLiteral("level of its crown")), 0);
  EXPECT_EQ(shown(), QString::fromStdString(format(101.545, Dimension::station, UnitSystem::metric)));
  w.choose("level of the record", "invert");
  EXPECT_EQ(shown(), QString::fromStdString(format(101.455, Dimension::station, UnitSystem::metric)));
  EXPECT_DOUBLE_EQ(*utility_of(w.crossing(), "u4").path[0].z_m, 101.5) << "the choice alone moves nothing";
  w.type(w.panel.level(), "level of its invert", "101.20 m");
  for (const PathVertex& p : utility_of(w.crossing(), "u4").path) EXPECT_NEAR(*p.z_m, 101.245, 1e-9);
  w.choose("level of the record", "crown");
  w.type(w.panel.level(), "level of its crown", "101.30 m");
  for (const PathVertex& p : utility_of(w.crossing(), "u4").path) EXPECT_NEAR(*p.z_m, 101.255, 1e-9);
  w.choose("measured from", "ground");
  w.type(w.panel.level(), "depth of its crown", "1.00 m");
  const PassingPlace place =
      passing_place(w.crossing(), utility_of(w.crossing(), "u4"), &w.document.assessment().utilities[3]);
  EXPECT_NEAR(*place.axis_m, *place.ground_m - 1.0 - 0.045, 1e-5) << "its hole now shifts it a little";
  w.expect_opens_again();
}

TEST(UtilitiesPanel, SlopingLine_FollowsAsAWhole) {
  Page w("house-service");
  w.panel.pick("u6");  // three points, falling
  w.choose("measured from", "datum");
  const std::vector<PathVertex> before = utility_of(w.crossing(), "u6").path;
  const UtilityAnswer answer = w.document.assessment().utilities[5];
  w.type(w.panel.level(), "level of its invert", "99.00");
  const std::vector<PathVertex> after = utility_of(w.crossing(), "u6").path;
  const double by = 99.0 + 0.055 - *answer.elevation_m;
  for (std::size_t i = 0; i < after.size(); ++i) EXPECT_NEAR(*after[i].z_m, *before[i].z_m + by, 1e-9);
}

TEST(UtilitiesPanel, UnknownDepthAndDiameter_AreToldAndCanBeEntered) {
  Page w("house-service");
  w.panel.pick("u4");
  w.panel.remove_hole();  // it would tell the depth
  w.choose("measured from", "datum");
  w.type(w.panel.level(), "level of its crown", "");
  for (const PathVertex& p : utility_of(w.crossing(), "u4").path) EXPECT_FALSE(p.z_m);
  EXPECT_TRUE(w.finds("missing.utility-depth", "u4"));
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("not known")));
  w.type(w.panel.size_entry(), "outside diameter", "");
  EXPECT_EQ(w.panel.level()->count(), 0) << "a crown without a diameter cannot be converted";
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("Type the outside diameter first")));
  w.type(w.panel.size_entry(), "outside diameter", "4 in");
  w.type(w.panel.level(), "level of its crown", "101.5508");
  for (const PathVertex& p : utility_of(w.crossing(), "u4").path) EXPECT_NEAR(*p.z_m, 101.5, 1e-9);
  EXPECT_FALSE(w.finds("missing.utility-depth", "u4"));
  w.expect_opens_again();
}

// PAS 128, by hand at a depth d: B1 across max(150 mm, 15 % d), in height 15 % d; B2 max(250 mm, 40 % d) and 40 % d.
TEST(UtilitiesPanel, Preset_FillsErrorsByDepth) {
  Page w("house-service");
  w.panel.pick("u3");  // deep: about 3 m
  const PassingPlace place =
      passing_place(w.crossing(), utility_of(w.crossing(), "u3"), &w.document.assessment().utilities[2]);
  const double d = *place.depth_m();
  ASSERT_GT(d, 2.5);
  const auto shows = [&](int row, double m) {
    QLineEdit* entry = w.panel.location()->entry(row);
    EXPECT_TRUE(entry->text().isEmpty()) << entry->text().toStdString();
    EXPECT_EQ(entry->placeholderText(), QString::fromStdString(format(m, Dimension::small_length, UnitSystem::metric)));
  };
  w.choose("quality level of the survey", "PAS 128 B1");
  EXPECT_EQ(w.steps(), 1);
  shows(0, 0.15 * d);
  shows(1, 0.15 * d);
  w.choose("quality level of the survey", "PAS 128 B2");
  shows(0, 0.40 * d);
  shows(1, 0.40 * d);
  w.choose("its ± is", "95 %");
  EXPECT_NEAR(utility_of(w.crossing(), "u3").located.lateral_sd->m, 0.40 * d / 1.96, 1e-9);
  EXPECT_NEAR(utility_of(w.crossing(), "u3").located.vertical_sd->m, 0.40 * d / 1.96, 1e-9);
  EXPECT_EQ(w.choice("its ± is")->currentIndex(), 1);
  w.choose("quality level of the survey", "PAS 128 A");
  EXPECT_NEAR(utility_of(w.crossing(), "u3").located.lateral_sd->m, 0.05 / 1.96, 1e-9) << "still read as 95 %";
  w.choose("its ± is", "1σ");
  shows(0, 0.05);
  shows(1, 0.025);
  w.choose("quality level of the survey", "PAS 128 B1");
  w.choose("measured from", "datum");
  w.type(w.panel.level(), "level of its invert", "101.9");  // the least across holds near the surface
  const double shallow = *place.ground_m - 101.9 - 0.0875;
  shows(0, 0.15);
  shows(1, 0.15 * shallow);
  w.expect_opens_again();
}

TEST(UtilitiesPanel, PresetWithoutNumbers_SaysSo_AndTypedValuesStay) {
  Page w("house-service");
  w.panel.pick("u2");
  w.choose("quality level of the survey", "ASCE 38 B");
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("carries no number")));
  EXPECT_NEAR(utility_of(w.crossing(), "u2").located.lateral_sd->m, 0.08, 1e-12);
  w.type(w.panel.location(), "location error across", "");
  EXPECT_TRUE(w.finds("missing.utility-location-error", "u2"));
  w.type(w.panel.location(), "location error across", "4 in");
  EXPECT_NEAR(utility_of(w.crossing(), "u2").located.lateral_sd->m, 0.1016, 1e-12);
  EXPECT_FALSE(w.finds("missing.utility-location-error", "u2"));
  w.choose("quality level of the survey", "PAS 128 B3");
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("no number in height")));
  EXPECT_FALSE(utility_of(w.crossing(), "u2").located.lateral_sd) << "gives way to the ± 500 mm";
  EXPECT_TRUE(utility_of(w.crossing(), "u2").located.vertical_sd);
  w.choose("quality level of the survey", "none");
  EXPECT_FALSE(utility_of(w.crossing(), "u2").located.level);
}

TEST(UtilitiesPanel, WrongValues_AreToldAndNothingChanges) {
  Page w("house-service");
  w.panel.pick("u2");
  w.choose("measured from", "datum");
  const Crossing before = w.crossing();
  const int steps = w.steps();
  for (const auto& [form, text] :
       std::initializer_list<std::pair<EntryForm*, const char*>>{{w.panel.size_entry(), "0"},
                                                                 {w.panel.size_entry(), "6 m"},
                                                                 {w.panel.size_entry(), "5 kg"},
                                                                 {w.panel.level(), "10000 m"},
                                                                 {w.panel.level(), "nan"},
                                                                 {w.panel.location(), "-1 mm"},
                                                                 {w.panel.gap(), "-1 m"},
                                                                 {w.panel.gap(), "wide"}}) {
    w.type_into(form->entry(0), text);
    EXPECT_EQ(w.crossing(), before) << text;
    EXPECT_FALSE(form->complaint(0).isEmpty()) << text;
    QTest::keyClick(form->entry(0), Qt::Key_Escape);
  }
  w.type_into(w.panel.measured(), "deep");
  EXPECT_EQ(w.crossing(), before);
  w.type_into(w.panel.measured(), "");
  EXPECT_EQ(w.crossing(), before) << "a hole without a measured level tells nothing";
  EXPECT_EQ(w.steps(), steps);
}

TEST(UtilitiesPanel, TestHole_AtThePlaceNearestTheBore) {
  Page w("house-service");
  w.panel.pick("u2");
  const UtilityAnswer answer = w.document.assessment().utilities[1];
  ASSERT_EQ(w.crossing().site.test_holes.size(), 1u);
  w.choose("measured from", "datum");
  const Crossing before = w.crossing();
  const int steps = w.steps();
  w.type_into(w.panel.measured(), "101.70 m");
  ASSERT_EQ(w.crossing().site.test_holes.size(), 2u);
  EXPECT_EQ(w.steps(), steps + 1);
  const TestHole hole = w.crossing().site.test_holes.back();
  EXPECT_EQ(hole.utility, "u2");
  EXPECT_NEAR(hole.station.m, *answer.station_m, 1e-12);
  EXPECT_NEAR(hole.offset.m, *answer.offset_m, 1e-12);
  EXPECT_EQ(*hole.level, LevelMeant::crown);
  EXPECT_NEAR(hole.elevation->m, 101.70, 1e-12);
  EXPECT_TRUE(w.panel.measured()->text().isEmpty());
  ASSERT_EQ(w.panel.holes()->cards().size(), 1u);
  w.expect_opens_again();
  w.type(w.panel.hole_entries(), "measured level", "101.65");
  EXPECT_NEAR(w.crossing().site.test_holes.back().elevation->m, 101.65, 1e-12);
  w.document.undo_stack().undo();
  w.panel.refresh_now();
  QTest::mouseClick(button(w.panel, "Remove this test hole"), Qt::LeftButton);
  EXPECT_EQ(w.crossing(), before);
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing().site.test_holes.back(), hole);
}

TEST(UtilitiesPanel, MeasuredBelowGround_BecomesALevel) {
  Page w("house-service");
  w.panel.pick("u2");  // recorded from the ground
  const PassingPlace place =
      passing_place(w.crossing(), utility_of(w.crossing(), "u2"), &w.document.assessment().utilities[1]);
  w.type_into(w.panel.measured(), "0.75 m");
  EXPECT_NEAR(w.crossing().site.test_holes.back().elevation->m, *place.ground_m - 0.75, 1e-12);
}

TEST(UtilitiesPanel, AddDuplicateRemove_EachOneStepAndUndone) {
  Page w("house-service");
  const Crossing before = w.crossing();
  QTest::mouseClick(button(w.panel, "Add"), Qt::LeftButton);
  ASSERT_EQ(w.crossing().site.utilities.size(), 7u);
  EXPECT_EQ(w.panel.picked_id(), w.crossing().site.utilities.back().id);
  EXPECT_FALSE(w.crossing().site.utilities.back().path[0].z_m) << "no depth is made up";
  EXPECT_TRUE(w.finds("missing.utility-depth", w.panel.picked_id()));
  w.expect_opens_again();
  w.panel.pick("u4");
  QTest::mouseClick(button(w.panel, "Duplicate"), Qt::LeftButton);
  ASSERT_EQ(w.crossing().site.utilities.size(), 8u);
  Utility copy = w.crossing().site.utilities.back();
  EXPECT_EQ(copy.name, "water main (copy)");
  EXPECT_NEAR(copy.path[0].x_m, 11.64, 1e-12);
  EXPECT_EQ(w.crossing().site.test_holes.size(), 1u) << "a copy was not looked at";
  w.expect_opens_again();
  w.panel.pick("u4");
  QTest::mouseClick(button(w.panel, "Remove"), Qt::LeftButton);
  EXPECT_EQ(w.crossing().site.utilities.size(), 7u);
  EXPECT_TRUE(w.crossing().site.test_holes.empty()) << "its hole goes with it";
  EXPECT_NE(w.panel.picked_id(), "u4");
  w.expect_opens_again();
  EXPECT_EQ(w.steps(), 3);
  for (int i = 0; i < 3; ++i) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(UtilitiesPanel, SearchAnswers_TakeTheMissingFindingsAway) {
  Page w("house-service");
  Crossing bare = w.crossing();
  bare.site.utility_search = {};
  w.document.start_from(bare, false);
  w.panel.refresh_now();
  EXPECT_TRUE(w.finds("missing.utility-search", "site"));
  EXPECT_TRUE(w.finds("missing.laterals", "site"));
  w.choose("asked for and searched", "yes");
  EXPECT_FALSE(w.finds("missing.utility-search", "site"));
  w.choose("house connections", "none here");
  EXPECT_FALSE(w.finds("missing.laterals", "site"));
  w.choose("house connections", "not checked");
  EXPECT_TRUE(w.finds("missing.laterals", "site"));
  w.type(w.panel.search_texts(), "reference", "request 4711");
  w.type(w.panel.search_texts(), "date of the search", "2026-03-14");
  w.type(w.panel.unknown_rate(), "services nobody", "0.5");
  const UtilitySearch& search = w.crossing().site.utility_search;
  EXPECT_EQ(search.reference, "request 4711");
  EXPECT_EQ(search.date, "2026-03-14");
  EXPECT_NEAR(search.unknown_rate->per_m2, 0.005, 1e-12);
  EXPECT_EQ(w.steps(), 6);
  w.expect_opens_again();

  Crossing blank = blank_crossing();
  w.document.start_from(blank, false);
  w.panel.refresh_now();
  w.choose("asked for and searched", "yes");
  EXPECT_TRUE(w.finds("missing.utilities", "site"));
  w.choose("and found", "nothing there");
  EXPECT_FALSE(w.finds("missing.utilities", "site"));
}

TEST(UtilitiesPanel, PickingGoesBothWays) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::utilities);
  UtilitiesPanel& panel = w.window.side().utilities();
  QCoreApplication::processEvents();
  w.window.drawing().pick({ItemKind::utility, "u5", 1});
  EXPECT_EQ(panel.picked_id(), "u5");
  EXPECT_EQ(w.window.drawing().picked(), (ItemRef{ItemKind::utility, "u5", 1})) << "the vertex stays picked";
  ASSERT_FALSE(panel.list()->cards().empty());
  for (int row = 0; row < panel.list()->count(); ++row) {
    panel.list()->setCurrentRow(row);
    const std::string id = panel.list()->cards()[static_cast<std::size_t>(row)].id;
    EXPECT_EQ(w.window.drawing().picked(), (ItemRef{ItemKind::utility, id, -1}));
    EXPECT_EQ(panel.picked_id(), id);
  }
  w.window.drawing().pick({});
  EXPECT_FALSE(panel.picked_id().empty()) << "the page keeps what it shows";
}

TEST(UtilitiesPanel, NewerFile_TakesNothing) {
  Page w("house-service");
  Crossing newer = w.crossing();
  newer.version = known_file_version + 1;
  w.document.start_from(newer, false);
  w.panel.refresh_now();
  for (QPushButton* one : w.panel.findChildren<QPushButton*>())
    EXPECT_FALSE(one->isEnabled()) << one->text().toStdString();
  for (const QComboBox* combo : w.panel.findChildren<QComboBox*>()) EXPECT_FALSE(combo->isEnabled());
  for (const QLineEdit* entry : w.panel.findChildren<QLineEdit*>()) EXPECT_TRUE(entry->isReadOnly());
  w.panel.add();
  w.panel.remove();
  w.panel.add_hole();
  EXPECT_EQ(w.crossing(), newer);
}

TEST(UtilitiesPanel, WholeBore_AnyOfThemAndWhatNobodyDrew) {
  Page w("four-faults");
  QString shown_text = w.panel.visible_text();
  shown_text.replace(QChar(0x00a0), QLatin1Char(' '));
  const QString any = QString::fromStdString(
      format(*w.document.assessment().contact_chance_any, Dimension::chance, UnitSystem::metric));
  EXPECT_TRUE(shown_text.contains(QStringLiteral("Touching any of them: %1.").arg(any))) << shown_text.toStdString();
  EXPECT_TRUE(shown_text.contains(QStringLiteral("not counted")));
  w.type(w.panel.unknown_rate(), "services nobody knows of", "2");
  shown_text = w.panel.visible_text();
  shown_text.replace(QChar(0x00a0), QLatin1Char(' '));
  const Assessment& now = w.document.assessment();
  EXPECT_NEAR(*now.chance_unknown_service, 1 - std::exp(-0.02 * now.bore.length_m * 0.130), 1e-9) << "130 mm tool";
  EXPECT_TRUE(shown_text.contains(QStringLiteral("Meeting one that nobody drew: ")));
  EXPECT_TRUE(w.finds("site.unknown-service", "site"));
}

TEST(UtilitiesPanel, Trench_TakenAndLeftOut_OneStepEach) {
  Page w("house-service");
  w.panel.pick("u2");
  const Crossing before = w.crossing();
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("Laid in a trench?")));
  QTest::mouseClick(w.panel.trench_button(), Qt::LeftButton);
  w.panel.refresh_now();
  ASSERT_EQ(w.crossing().site.strips.size(), before.site.strips.size() + 1);
  const Strip& strip = w.crossing().site.strips.back();
  EXPECT_EQ(strip.soil, "trench-backfill");
  EXPECT_EQ(w.steps(), 1);
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("is taken as a strip")));
  w.expect_opens_again();
  QTest::mouseClick(w.panel.trench_button(), Qt::LeftButton);
  EXPECT_EQ(w.crossing(), before);
  EXPECT_EQ(w.steps(), 2);
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing().site.strips.size(), before.site.strips.size() + 1);
}

TEST(UtilitiesPanel, Camera_AnswersAndTheirFindings) {
  Page w("house-service");
  const Crossing before = w.crossing();
  EXPECT_TRUE(w.finds("site.camera-before", "site"));
  w.choose("before the bore", "all clear");
  EXPECT_FALSE(w.finds("site.camera-before", "site"));
  EXPECT_TRUE(w.finds("site.camera-after", "site"));
  w.choose("after the bore", "not clear");
  EXPECT_TRUE(w.finds("site.camera-after-found", "site"));
  w.type(w.panel.camera_texts()[1], "report after", "film 12");
  w.type(w.panel.camera_texts()[0], "date before", "2026-04-01");
  EXPECT_EQ(w.crossing().site.utility_search.camera_after.reference, "film 12");
  EXPECT_EQ(w.crossing().site.utility_search.camera_before.date, "2026-04-01");
  EXPECT_EQ(w.steps(), 4);
  w.expect_opens_again();
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(UtilitiesPanel, WhatAHoleBuys_IsSaidInNumbers) {
  Page w("house-service");
  w.panel.pick("u2");
  const UtilityAnswer& answer = w.document.assessment().utilities[1];
  ASSERT_EQ(answer.expose_rank, 1);
  EXPECT_EQ(w.panel.list()->cards().front().tag, QStringLiteral("expose 1"));
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("Hole number 1")));
  const auto shows = [&](double value, Dimension dimension) {
    const QString text = QString::fromStdString(format(value, dimension, UnitSystem::metric));
    QString shown_text = w.panel.visible_text();
    shown_text.replace(QChar(0x00a0), QLatin1Char(' '));
    EXPECT_TRUE(shown_text.contains(text)) << text.toStdString() << " in " << shown_text.toStdString();
  };
  shows(*answer.chance_to_go_on, Dimension::chance);
  shows(*answer.hole_depth_low_m, Dimension::length);
  shows(*answer.hole_depth_high_m, Dimension::length);
}

TEST(UtilitiesPanel, NarrowColumn_ClipsNothing) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const int width : {240, 260, 370}) {
      Page w("house-service", units);
      w.panel.pick("u4");
      w.expect_inside(width);
    }
}

}  // namespace
}  // namespace burrow

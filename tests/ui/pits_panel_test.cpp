/// The page of the pits: real widgets, one undo step each, nothing taken that could not be reopened.

#include <gtest/gtest.h>

#include <QPushButton>
#include <cmath>
#include <iterator>

#include "burrow/check/assess.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/pits_panel.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

using Page = PanelBeside<PitsPanel>;

TEST(PitsPanel, EntriesAndChoices_AreOneStepEach) {
  Page w("house-service");
  ASSERT_TRUE(w.opened);
  const Crossing before = w.crossing();
  const auto pit = [&]() -> const Pit& { return w.crossing().pits.launch; };
  int steps = 0;
  const auto one_more = [&](const char* what) {
    EXPECT_EQ(w.steps(), ++steps) << what;
    w.expect_opens_again();
  };
  w.type(w.panel.floor(), "floor, along the line", "2.6 m");
  EXPECT_NEAR(pit().floor_length->m, 2.6, 1e-12);
  one_more("length");
  w.type(w.panel.floor(), "floor, across", "4 ft");
  EXPECT_NEAR(pit().floor_width->m, 1.2192, 1e-12);
  one_more("width");
  w.type(w.panel.floor(), "sump below the floor", "0.3");
  EXPECT_NEAR(pit().sump_depth->m, 0.3, 1e-12);
  one_more("sump");
  w.choose("back", "sloped");
  EXPECT_EQ(*pit().sides.back.kind, SideKind::sloped);
  ++steps;
  if (w.steps() != steps) steps = w.steps();  // it may have been so before
  w.type(w.panel.sides(), "back, run for each unit of rise", "2");
  EXPECT_NEAR(pit().sides.back.run_per_rise->v, 2, 1e-12);
  one_more("run");
  w.choose("left side", "shielded");
  EXPECT_EQ(*pit().sides.left.kind, SideKind::shielded);
  one_more("left");
  w.type(w.panel.sides(), "shield, rated depth", "2.4 m");
  EXPECT_NEAR(pit().shield.depth->m, 2.4, 1e-12);
  one_more("rated depth");
  w.choose("shield rated for", "C");
  EXPECT_EQ(pit().shield.soil_type, ExcavationType::c);
  one_more("rated soil");
  w.type(w.panel.shield(), "rating stands in", "plate 4711");
  EXPECT_EQ(pit().shield.source, "plate 4711");
  one_more("rating");
  w.choose("right side", "as proposed");
  EXPECT_FALSE(pit().sides.right.kind.entered);
  steps = w.steps();  // it may have been so before
  w.choose("water seeps in", "yes");
  EXPECT_EQ(pit().signs.seeping, true);
  one_more("seeps");
  w.choose("taken", "B");
  EXPECT_EQ(pit().soil_type, ExcavationType::b);
  one_more("type");
  w.type(w.panel.confirmed(), "confirmed by", "the foreman");
  EXPECT_EQ(pit().confirmed_by, "the foreman");
  one_more("confirmed");
  w.choose("faults or joints", "no");
  EXPECT_EQ(pit().signs.joints, false);
  one_more("joints");
  w.type(w.panel.conditions(), "none of these seen, says", "the foreman");
  EXPECT_EQ(pit().signs.none_seen.by, "the foreman");
  one_more("none seen, says");
  w.type(w.panel.conditions(), "none seen on", "2026-02-27");
  EXPECT_EQ(pit().signs.none_seen.date, "2026-02-27");
  one_more("none seen on");
  w.type(w.panel.load_design(), "sized by", "A. Muster");
  EXPECT_EQ(pit().load_design.by, "A. Muster");
  one_more("sized by");
  w.choose("berms", "only walked on");
  EXPECT_EQ(pit().sides.left.benches_only_walked, true);
  one_more("berms");
  w.type(w.panel.soil(), "open for", "20 h");
  EXPECT_NEAR(pit().open_time->s, 20 * 3600, 1e-9);
  one_more("open");
  w.type(w.panel.spoil(), "heap, off the edge", "1");
  EXPECT_EQ(pit().spoil.setback->m, 1);
  one_more("setback");
  w.choose("heap beside", "right");
  EXPECT_EQ(*pit().spoil.side, PitSideName::right);
  one_more("heap");
  w.choose("rules for both", "DIN");
  EXPECT_EQ(*w.crossing().pits.rules, ExcavationRules::din_4124);
  one_more("rules");
  EXPECT_EQ(w.crossing().pits.exit, before.pits.exit) << "the other pit stays as it was";
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(PitsPanel, Empty_GoesBackToWhatIsProposed) {
  Page w("house-service");
  const double proposed = w.document.assessment().exit_pit.floor_length_m;
  w.panel.show_pit(WhichPit::exit);
  ASSERT_FALSE(w.crossing().pits.exit.floor_length);
  w.type(w.panel.floor(), "floor, along the line", "4");
  EXPECT_NEAR(w.document.assessment().exit_pit.floor_length_m, 4, 1e-9);
  w.type(w.panel.floor(), "floor, along the line", "");
  EXPECT_FALSE(w.crossing().pits.exit.floor_length);
  EXPECT_NEAR(w.document.assessment().exit_pit.floor_length_m, proposed, 1e-9);
}

TEST(PitsPanel, SaysEarthSoilAndDuties_InBothUnits) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    Page w("house-service", units);
    QString shown_text = w.panel.visible_text();
    shown_text.replace(QChar(0x00a0), QLatin1Char(' '));
    const Assessment& now = w.document.assessment();
    const auto shows = [&](double value, Dimension dimension) {
      const QString text = QString::fromStdString(format(value, dimension, units));
      EXPECT_TRUE(shown_text.contains(text)) << text.toStdString() << " in " << shown_text.toStdString();
    };
    shows(now.launch_pit.depth_m, Dimension::length);
    shows(now.launch_pit.volume_m3, Dimension::volume);
    shows(*now.launch_pit_work.loose_m3, Dimension::volume);
    EXPECT_TRUE(shown_text.contains(QStringLiteral("the competent person decides")));
    EXPECT_TRUE(shown_text.contains(QStringLiteral("looks at it each day"))) << shown_text.toStdString();
    for (const PitDuty& duty : now.launch_pit_work.duties)
      if (duty.code == "ladder") {
        EXPECT_EQ(duty.applies, shown_text.contains(QStringLiteral("A ladder"))) << "from 4 ft";
      }
  }
}

// Whatever an entry accepts can be written, read again and judged.
TEST(PitFields, EndsOfEveryRange_OpenAgainAndAreAnswered) {
  Page w("house-service");
  Crossing crossing = w.crossing();
  crossing.pits.launch.sides.back.kind.set(SideKind::sloped);
  crossing.pits.exit.sides.left.kind.set(SideKind::sloped);
  for (const WhichPit which : {WhichPit::launch, WhichPit::exit}) {
    const Assessment& now = w.document.assessment();
    const PitShape& shape = which == WhichPit::launch ? now.launch_pit : now.exit_pit;
    std::vector<Field> all = pit_floor_fields(crossing, which, shape);
    for (std::vector<Field> more :
         {pit_side_fields(crossing, which, shape), pit_soil_fields(crossing, which), pit_spoil_fields(crossing, which)})
      std::move(more.begin(), more.end(), std::back_inserter(all));
    ASSERT_GE(all.size(), 13u);
    for (const Field& field : all)
      for (const std::optional<double>& typed :
           {std::optional(field.low), std::optional(field.high), std::optional<double>()}) {
        Crossing changed = crossing;
        field.apply(changed, typed);
        const Result<Crossing> again = read_crossing(write_crossing(changed), tables_for_tests());
        ASSERT_TRUE(again) << field.label << ": " << again.error().english();
        EXPECT_EQ(*again, changed) << field.label;
        const Assessment answer = assess(*again, tables_for_tests());
        const PitShape& pit = which == WhichPit::launch ? answer.launch_pit : answer.exit_pit;
        EXPECT_TRUE(std::isfinite(pit.depth_m) && std::isfinite(pit.volume_m3)) << field.label;
      }
  }
}

TEST(PitsPanel, NarrowColumn_ClipsNothing) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const int width : {240, 260, 370}) {
      Page w("house-service", units);
      w.expect_inside(width);
    }
}

QPushButton* button_of(PitsPanel& panel, const char* words) {
  for (QPushButton* button : panel.findChildren<QPushButton*>())
    if (button->text() == QLatin1String(words)) return button;
  return nullptr;
}

// A floor gets corners, begins as the rectangle it was, is shaped by typing, and goes back; each is one undo step.
TEST(PitsPanel, Corners_FromRectangleAndBack) {
  Page w("house-service");
  ASSERT_TRUE(w.opened);
  w.panel.refresh_now();
  const auto outline = [&]() -> const PlanLine& { return w.crossing().pits.launch.floor_outline; };
  const auto click = [&](const char* words) {
    QPushButton* button = button_of(w.panel, words);
    ASSERT_TRUE(button) << words;
    ASSERT_TRUE(button->isVisibleTo(&w.panel) && button->isEnabled()) << words;
    QTest::mouseClick(button, Qt::LeftButton);
  };
  const PitShape rectangle = w.document.assessment().launch_pit;
  EXPECT_FALSE(w.panel.corners()->isVisibleTo(&w.panel));
  click("Give it corners");
  ASSERT_EQ(outline().size(), 4U);
  EXPECT_EQ(w.steps(), 1);
  w.expect_opens_again();
  const PitShape outlined = w.document.assessment().launch_pit;
  EXPECT_TRUE(outlined.outlined);
  EXPECT_NEAR(outlined.volume_m3, rectangle.volume_m3, 1e-6) << "the same pit by another way";
  EXPECT_NEAR(outlined.depth_m, rectangle.depth_m, 1e-9);
  // Corner 3 is the far left one; a corner more before it makes the far end wider.
  Q_EMIT w.panel.corners()->chosen(QStringLiteral("1"));
  click("Add a corner");
  ASSERT_EQ(outline().size(), 5U);
  w.type(w.panel.corner_values(), "left of the middle of the floor", "1.1");
  EXPECT_NEAR(outline()[2].y_m, 1.1, 1e-9);
  EXPECT_GT(w.document.assessment().launch_pit.volume_m3, rectangle.volume_m3);
  w.expect_opens_again();
  const int steps = w.steps();
  w.type(w.panel.corner_values(), "left of the middle of the floor", "-30");  // across the other side
  EXPECT_EQ(w.steps(), steps) << "edges would cross";
  EXPECT_NEAR(outline()[2].y_m, 1.1, 1e-9);
  w.panel.refresh_now();
  click("Remove this corner");
  EXPECT_EQ(outline().size(), 4U);
  click("Back to a rectangle");
  EXPECT_TRUE(outline().empty());
  EXPECT_EQ(w.document.assessment().launch_pit, rectangle);
  for (const int width : {260, 400}) w.expect_inside(width);
}

}  // namespace
}  // namespace burrow

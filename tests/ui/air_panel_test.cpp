/// The pages of the air line and of the run sheet: real widgets, one undo step each.

#include <gtest/gtest.h>

#include <QPushButton>

#include "burrow/check/assess.h"
#include "burrow/panels/air_panel.h"
#include "burrow/panels/air_view.h"
#include "burrow/panels/run_panel.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

using AirPage = PanelBeside<AirPanel>;
using RunPage = PanelBeside<RunPanel>;

void click(AirPage& w, std::size_t which) {
  QTest::mouseClick(w.panel.button(which), Qt::LeftButton);
  w.panel.refresh_now();
}

TEST(AirPanel, Entries_AreOneStepEach) {
  AirPage w("house-service");
  ASSERT_TRUE(w.opened);
  const Crossing before = w.crossing();
  const auto air = [&]() -> const Air& { return w.crossing().air; };
  int steps = 0;
  const auto one_more = [&](const char* what) {
    EXPECT_EQ(w.steps(), ++steps) << what;
    w.expect_opens_again();
  };
  w.type(w.panel.compressor(), "free air it gives", "90 ft3/min");
  EXPECT_NEAR(air().compressor.free_air->m3_s, 90 * 0.028316846592 / 60, 1e-12);
  one_more("free air");
  w.type(w.panel.compressor(), "pressure it holds", "100 psi");
  EXPECT_NEAR(air().compressor.pressure->Pa, 689475.7, 0.1);
  one_more("pressure");
  w.type(w.panel.compressor(), "regulator set to", "6 bar");
  EXPECT_NEAR(air().compressor.regulator->Pa, 6e5, 1e-6);
  one_more("regulator");
  w.type(w.panel.name(), "name", "No. 3");
  EXPECT_EQ(air().compressor.name, "No. 3");
  one_more("name");
  w.type(w.panel.site(), "height above the sea", "1500");
  EXPECT_EQ(air().altitude->m, 1500);
  one_more("height");
  w.type(w.panel.site(), "air temperature", "-4 °C");
  EXPECT_NEAR(air().air_temperature->K, 269.15, 1e-9);
  one_more("temperature");
  EXPECT_TRUE(w.finds("air.icing", "air"));
  w.type(w.panel.site(), "relative humidity", "40 %");
  EXPECT_NEAR(air().relative_humidity->v, 0.4, 1e-12);
  one_more("humidity");
  w.type(w.panel.oil(), "first fill", "4 fl oz");
  EXPECT_NEAR(air().oil.first_fill->m3, 118.29e-6, 0.01e-6);
  one_more("fill");
  w.type(w.panel.oil(), "consumption", "20 mL/h");
  EXPECT_NEAR(air().oil.rate->m3_s, 20e-6 / 3600, 1e-15);
  one_more("rate");
  w.type(w.panel.oil(), "consumption", "");
  EXPECT_FALSE(air().oil.rate);
  one_more("no rate");
  w.type(w.panel.marks(), "a mark every", "5 ft");
  EXPECT_NEAR(air().mark_spacing->m, 1.524, 1e-12);
  one_more("marks");
  w.type(w.panel.marks(), "tail fitting", "0.2");
  EXPECT_NEAR(air().tail_fitting->m, 0.2, 1e-12);
  one_more("fitting");
  w.panel.pick(0);
  w.type(w.panel.part(), "length", "30 m");
  EXPECT_EQ(air().line[0].length->m, 30);
  one_more("hose length");
  w.type(w.panel.part(), "bore", "1 in");
  EXPECT_NEAR(air().line[0].bore->m, 0.0254, 1e-12);
  one_more("hose bore");
  w.type(w.panel.part(), "roughness", "80");
  EXPECT_NEAR(air().line[0].roughness->m, 80e-6, 1e-12);
  one_more("roughness");
  w.type(w.panel.part(), "rated for", "5 bar");
  EXPECT_NEAR(air().line[0].rating->Pa, 5e5, 1e-6);
  one_more("rating");
  EXPECT_TRUE(w.finds("air.rating", "air"));
  w.panel.pick(1);
  w.type(w.panel.part(), "how many", "4");
  EXPECT_EQ(*air().line[1].count, 4);
  one_more("count");
  w.type(w.panel.part(), "each resists", "0.9");
  EXPECT_EQ(air().line[1].equivalent_length->m, 0.9);
  one_more("equivalent");
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(AirPanel, Parts_AddMoveRemove) {
  AirPage w("house-service");
  const Air before = w.crossing().air;
  ASSERT_EQ(before.line.size(), 3u);
  EXPECT_EQ(w.panel.picked(), 0);
  click(w, 1);  // a coupling behind the hose
  ASSERT_EQ(w.crossing().air.line.size(), 4u);
  EXPECT_EQ(w.crossing().air.line[1].kind, AirPartKind::coupling);
  EXPECT_EQ(w.panel.picked(), 1);
  click(w, 0);  // a hose behind it, of the same bore as the other
  EXPECT_EQ(w.crossing().air.line[2].kind, AirPartKind::hose);
  EXPECT_EQ(w.crossing().air.line[2].bore, w.crossing().air.line[0].bore);
  click(w, 3);  // up
  EXPECT_EQ(w.crossing().air.line[1].kind, AirPartKind::hose);
  EXPECT_EQ(w.panel.picked(), 1);
  click(w, 3);
  EXPECT_EQ(w.panel.picked(), 0);
  EXPECT_FALSE(w.panel.button(3)->isEnabled());
  click(w, 5);  // out again
  EXPECT_EQ(w.crossing().air.line.size(), 4u);
  EXPECT_EQ(w.steps(), 5);
  w.expect_opens_again();
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing().air, before);
  w.panel.refresh_now();
  // All out, one after the other: what is said follows, nothing breaks.
  for (int i = 0; i < 3; ++i) click(w, 5);
  EXPECT_TRUE(w.crossing().air.line.empty());
  EXPECT_FALSE(w.panel.button(5)->isEnabled());
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("enter a hose")));
  EXPECT_TRUE(w.panel.view()->bars().empty());
  click(w, 0);
  EXPECT_EQ(w.crossing().air.line.size(), 1u);
  EXPECT_FALSE(w.panel.view()->bars().empty());
}

TEST(AirPanel, ListPick_ShowsThatPart) {
  AirPage w("house-service");
  QTest::mouseClick(w.panel.list()->viewport(), Qt::LeftButton, Qt::NoModifier,
                    w.panel.list()->visualItemRect(w.panel.list()->item(1)).center());
  EXPECT_EQ(w.panel.picked(), 1);
  EXPECT_GE(w.panel.part()->find(QStringLiteral("how many")), 0);
  QTest::keyClick(w.panel.list(), Qt::Key_Up);
  EXPECT_EQ(w.panel.picked(), 0);
  EXPECT_GE(w.panel.part()->find(QStringLiteral("length")), 0);
}

TEST(AirPanel, SaysPressureAndChanges_InBothUnits) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    AirPage w("car-park-duct", units);
    QString shown_text = w.panel.visible_text();
    const AirAnswer& air = w.document.assessment().air;
    const auto shows = [&](double value, Dimension dimension) {
      const QString text = QString::fromStdString(format(value, dimension, units));
      EXPECT_TRUE(shown_text.contains(text)) << text.toStdString() << " in " << shown_text.toStdString();
    };
    const double at_tool = *air.pressure_at_tool_Pa;
    EXPECT_TRUE(shown_text.contains(units == UnitSystem::us
                                        ? QString::number(at_tool / 6894.757, 'f', 1) + QStringLiteral(" psi")
                                        : QString::number(at_tool / 1e5, 'f', 2) + QStringLiteral(" bar")))
        << shown_text.toStdString();
    shows(*air.free_air_m3_s, Dimension::flow);
    shows(air.oil.for_nine_in_ten->m3, Dimension::small_volume);
    EXPECT_TRUE(shown_text.contains(QStringLiteral("wider hose"))) << shown_text.toStdString();
    // Compressor, each part, tool.
    EXPECT_EQ(w.panel.view()->bars().size(), w.crossing().air.line.size() + 2);
    EXPECT_GE(w.panel.view()->bars().front().share, w.panel.view()->bars().back().share);
  }
}

TEST(AirPanel, NarrowColumn_NothingHidden) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    AirPage w("house-service", units);
    for (const int width : {260, 300, 420}) w.expect_inside(width);
  }
}

// Whatever an entry accepts can be written, read again and judged.
TEST(AirFields, EndsOfEveryRange_OpenAgainAndAreAnswered) {
  AirPage w("house-service");
  const Crossing crossing = w.crossing();
  std::vector<Field> all = compressor_fields(crossing);
  for (std::vector<Field> more :
       {site_air_fields(crossing), air_part_fields(crossing, 0), air_part_fields(crossing, 1),
        air_part_fields(crossing, 2), oil_fields(crossing, w.document.assessment().air), hose_mark_fields(crossing)})
    std::move(more.begin(), more.end(), std::back_inserter(all));
  EXPECT_GE(all.size(), 18u);
  for (const Field& field : all)
    for (const std::optional<double> value :
         {std::optional(field.low), std::optional(field.high), std::optional<double>()}) {
      Crossing changed = crossing;
      field.apply(changed, value);
      const auto again = read_crossing(write_crossing(changed), tables_for_tests());
      ASSERT_TRUE(again) << field.label << ": " << again.error().english();
      EXPECT_EQ(*again, changed) << field.label;
      const Assessment answer = assess(changed, tables_for_tests());
      EXPECT_TRUE(answer.air.supply || !answer.air.not_judged.empty()) << field.label;
      EXPECT_NE(answer.air.not_judged, "altitude") << field.label;
    }
  EXPECT_TRUE(air_part_fields(crossing, 3).empty());
}

TEST(RunPanel, ShowsEveryMarkAndList_InBothUnits) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    RunPage w("house-service", units);
    const QString shown_text = w.panel.visible_text();
    for (const Mark& mark : w.document.assessment().marks) {
      const QString nose = QString::fromStdString(format(*mark.nose_m, Dimension::length, units));
      EXPECT_TRUE(shown_text.contains(nose)) << nose.toStdString();
    }
    for (const char* words : {"check line and level", "exit pit empty", "Nobody in the exit pit", "Call the locating",
                              "a restraint on every coupling", "No flame", "Take it as live"})
      EXPECT_TRUE(shown_text.contains(QString::fromUtf8(words)) ||
                  shown_text.contains(QStringLiteral("locating reference")))
          << words;
  }
}

// Live: a lower launch is a deeper mark.
TEST(RunPanel, FollowsTheCrossing) {
  RunPage w("house-service");
  const QString before = w.panel.visible_text();
  Launch launch = w.crossing().bore.launch;
  launch.elevation.m -= 0.5;
  ASSERT_TRUE(w.document.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; }));
  w.panel.refresh_now();
  EXPECT_NE(w.panel.visible_text(), before);
}

TEST(RunPanel, NarrowColumn_NothingHidden) {
  RunPage w("sixty-utilities");
  for (const int width : {260, 300, 420}) w.expect_inside(width);
}

}  // namespace
}  // namespace burrow

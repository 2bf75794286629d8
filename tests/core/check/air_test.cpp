// The air line in the assessment: findings, the pressure that the advance is computed with, water, oil.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/check/tool_at_work.h"
#include "burrow/crew/crew_setup.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Crossing with_air() {
  Crossing crossing = clean_crossing();
  give_air(crossing);
  return crossing;
}

TEST(CheckAir, NothingEntered_IsANoteAndTheToolsOwnPressureStands) {
  const Assessment answer = judged(clean_crossing());
  const Finding* finding = find(answer, "air.not-entered", "air");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::note);
  EXPECT_EQ(finding_text(*finding, UnitSystem::metric), "pressure at the tool is not judged: compressor not entered");
  EXPECT_FALSE(answer.air.pressure_at_tool_Pa || answer.air.supply || answer.air.water);
  EXPECT_EQ(*answer.air.pressure_worked_with_Pa, 6.9e5);
  EXPECT_EQ(answer.verdict, Verdict::within_limits);
  Crossing crossing = with_air();
  crossing.air.line.clear();
  EXPECT_EQ(find(judged(crossing), "air.not-entered")->name, "hose");
  crossing = with_air();
  crossing.air.altitude.set(Length{-9000});
  EXPECT_EQ(find(judged(crossing), "air.outside-method")->name, "altitude");
}

TEST(CheckAir, UsualLine_NoComplaint) {
  const Assessment answer = judged(with_air());
  for (const Finding& f : answer.findings) EXPECT_NE(f.code.substr(0, 4), "air.") << f.code;
  ASSERT_TRUE(answer.air.supply);
  EXPECT_GT(*answer.air.pressure_at_tool_Pa, 6.5e5);
  EXPECT_LT(*answer.air.pressure_at_tool_Pa, 6.9e5);
  EXPECT_EQ(answer.air.free_air_m3_s, answer.air.supply->free_air.m3_s);
  EXPECT_GT(*answer.air.loss_harris_Pa, answer.air.supply->at_compressor.Pa - answer.air.supply->at_tool.Pa);
  EXPECT_EQ(answer.air.water->icing, Icing::possible);
}

// The advance takes the pressure that stands at the tool: the same as with that pressure typed.
TEST(CheckAir, Advance_TakesThePressureAtTheTool) {
  Crossing crossing = with_air();
  crossing.air.line.front().length = Length{80};
  const Assessment line = judged(crossing);
  EXPECT_LT(*line.air.pressure_worked_with_Pa, 6.8e5);
  EXPECT_EQ(line.air.pressure_worked_with_Pa, line.air.pressure_at_tool_Pa);
  EXPECT_GT(*line.advance_time_s.p50, *judged(with_air()).advance_time_s.p50);
  Crossing typed = clean_crossing();
  typed.bore.tool.pressure = Pressure{*line.air.pressure_at_tool_Pa};
  EXPECT_EQ(judged(typed).advance_time_s, line.advance_time_s);
  EXPECT_EQ(judged(typed).advance.least_grip, line.advance.least_grip);
}

// A pressure typed for the tool wins over the line, and the line is still judged against it.
TEST(ToolAtWork, TypedPressure_Wins) {
  Crossing crossing = with_air();
  crossing.bore.tool.pressure = Pressure{5.5e5};
  const ToolAtWork work = tool_at_work(crossing, tables());
  EXPECT_EQ(work.tool.pressure.Pa, 5.5e5);
  EXPECT_TRUE(work.air.pressure_typed);
  EXPECT_GT(*work.air.pressure_at_tool_Pa, 5.5e5);
  EXPECT_FALSE(find(judged(crossing), "air.pressure-low"));
  EXPECT_EQ(crew_setup(crossing, tables()).tool.pressure.Pa, 5.5e5);
  crossing.air.line.front().bore = Length{0.007};  // now the line gives less than typed
  const Assessment starved = judged(crossing);
  EXPECT_EQ(*starved.air.pressure_worked_with_Pa, 5.5e5);
  ASSERT_TRUE(find(starved, "air.pressure-low")) << listed(starved);
  EXPECT_NEAR(*find(starved, "air.pressure-low")->limit, 0.85 * 5.5e5, 1);
}

// A class's free air belongs to the class's pressure, a plate's to the plate's.
TEST(ToolAtWork, Rated_PressureOfTheFreeAir) {
  ToolChoice choice;
  choice.tool_class = "tool-65";
  choice.pressure = Pressure{5e5};
  EXPECT_EQ(rated_tool(choice, tables()).pressure.Pa, 6.9e5);
  choice.free_air = VolumeFlow{0.01};
  EXPECT_EQ(rated_tool(choice, tables()).pressure.Pa, 5e5);
  EXPECT_EQ(rated_tool(choice, tables()).free_air.m3_s, 0.01);
}

// More than the class's pressure is turned down; none at all still gives an answer.
TEST(ToolAtWork, Bounds) {
  Crossing crossing = with_air();
  crossing.air.compressor.pressure = Pressure{9e5};
  EXPECT_EQ(tool_at_work(crossing, tables()).tool.pressure.Pa, 6.9e5);
  crossing.air.compressor.free_air = VolumeFlow{1e-6};
  EXPECT_EQ(tool_at_work(crossing, tables()).tool.pressure.Pa, 1e4);
  const Assessment answer = judged(crossing);
  EXPECT_EQ(*answer.air.pressure_at_tool_Pa, 0);
  EXPECT_EQ(find(answer, "air.pressure-low")->severity, Severity::stop);
  EXPECT_TRUE(std::isfinite(answer.advance.least_grip));
}

TEST(CheckAir, PressureLow_CautionThenStop) {
  Crossing crossing = with_air();
  crossing.air.compressor.pressure = Pressure{5.8e5};
  const Assessment caution = judged(crossing);
  ASSERT_TRUE(find(caution, "air.pressure-low", "air")) << listed(caution);
  EXPECT_EQ(find(caution, "air.pressure-low")->severity, Severity::caution);
  EXPECT_EQ(caution.verdict, Verdict::caution);
  crossing.air.compressor.pressure = Pressure{3.4e5};
  EXPECT_EQ(find(judged(crossing), "air.pressure-low")->severity, Severity::stop);
  crossing.limits["air_pressure_share_stop"] = {0.3, "maker's word", ""};
  crossing.limits["air_pressure_share_caution"] = {0.4, "maker's word", ""};
  EXPECT_FALSE(find(judged(crossing), "air.pressure-low"));
}

// 6.9 bar (100 psi) at the tool at most: common practice, no source.
TEST(CheckAir, PressureHigh_IsACaution) {
  Crossing crossing = with_air();
  crossing.air.compressor.pressure = Pressure{8e5};
  const Assessment answer = judged(crossing);
  const Finding* high = find(answer, "air.pressure-high", "air");
  ASSERT_TRUE(high) << listed(answer);
  EXPECT_EQ(high->severity, Severity::caution);
  EXPECT_EQ(high->source.label, SourceLabel::common_practice);
  EXPECT_EQ(*high->limit, 690000);
  crossing.bore.tool.pressure = Pressure{6.9e5};  // turned down
  EXPECT_FALSE(find(judged(crossing), "air.pressure-high"));
  Crossing typed = clean_crossing();
  typed.bore.tool.pressure = Pressure{7e5};
  EXPECT_TRUE(find(judged(typed), "air.pressure-high"));
}

// 8.6 bar at the compressor, 6.8 at the running tool: 8.6 stand at it when it stalls. 55 bar were a caution once.
TEST(CheckAir, Standing_CountsAndStops) {
  Crossing crossing = with_air();
  crossing.air.compressor.pressure = Pressure{8.6e5};
  while (*judged(crossing).air.pressure_at_tool_Pa > 6.8e5) crossing.air.line.front().bore->m *= 0.97;
  const Assessment answer = judged(crossing);
  EXPECT_GT(*answer.air.pressure_at_tool_Pa, 6e5);
  EXPECT_FALSE(find(answer, "air.pressure-high"));  // running it keeps its limit
  const Finding* standing = find(answer, "air.standing", "air");
  ASSERT_TRUE(standing) << listed(answer);
  EXPECT_EQ(standing->severity, Severity::stop);
  EXPECT_EQ(*standing->measured, 8.6e5);
  EXPECT_EQ(*standing->limit, 7.6e5);
  Crossing usual = crossing;  // set to 7 bar, as is common
  usual.air.compressor.pressure = Pressure{7e5};
  const Assessment cautious = judged(usual);
  ASSERT_TRUE(find(cautious, "air.standing"));
  EXPECT_EQ(find(cautious, "air.standing")->severity, Severity::caution);
  EXPECT_EQ(*find(cautious, "air.standing")->limit, 6.9e5);
  EXPECT_EQ(answer.verdict, Verdict::stop);
  EXPECT_EQ(input(*working(answer, "air.standing"), "p_compressor"), 8.6e5);
  crossing.air.compressor.pressure = Pressure{55e5};
  EXPECT_EQ(judged(crossing).verdict, Verdict::stop);
  // Nobody entered how much air it gives: what it is set to stands all the same.
  crossing.air.compressor.free_air.reset();
  EXPECT_TRUE(find(judged(crossing), "air.standing"));
  crossing.air.line.clear();
  EXPECT_TRUE(find(judged(crossing), "air.standing"));
  // A typed pressure of the tool is what it works with, not what can stand at it.
  crossing.bore.tool.pressure = Pressure{6e5};
  EXPECT_TRUE(find(judged(crossing), "air.standing"));
  crossing.limits["air_pressure_most_pa"] = {56e5, "maker's plate", ""};
  EXPECT_FALSE(find(judged(crossing), "air.standing"));
}

// A regulator brings it down, for the running tool as well; one that is set too high does not.
TEST(CheckAir, Regulator_BringsItDown) {
  Crossing crossing = with_air();
  crossing.air.compressor.pressure = Pressure{8.6e5};
  crossing.air.compressor.regulator = Pressure{6.8e5};
  const Assessment answer = judged(crossing);
  EXPECT_FALSE(find(answer, "air.standing")) << listed(answer);
  EXPECT_EQ(*answer.air.standing_Pa, 6.8e5);
  EXPECT_EQ(answer.air.supply->line_most.Pa, 6.8e5);
  EXPECT_LT(*answer.air.pressure_at_tool_Pa, 6.8e5);
  EXPECT_EQ(input(*working(answer, "air.standing"), "p_regulator"), 6.8e5);
  Crossing lowered = with_air();
  lowered.air.compressor.pressure = Pressure{6.8e5};
  EXPECT_NEAR(*judged(lowered).air.pressure_at_tool_Pa, *answer.air.pressure_at_tool_Pa, 1);
  crossing.air.compressor.regulator = Pressure{9e5};
  EXPECT_EQ(*find(judged(crossing), "air.standing")->measured, 8.6e5);
  crossing.air.compressor.pressure.reset();  // then the regulator is all that is known
  EXPECT_EQ(*find(judged(crossing), "air.standing")->measured, 9e5);
}

// Each part bears what it is rated for: below what can stand in it a stop, not entered a question.
TEST(CheckAir, Ratings_StopAndAsk) {
  Crossing crossing = with_air();
  crossing.air.line[1].rating = Pressure{6e5};
  const Assessment weak = judged(crossing);
  const Finding* rating = find(weak, "air.rating", "air");
  ASSERT_TRUE(rating) << listed(weak);
  EXPECT_EQ(rating->severity, Severity::stop);
  EXPECT_EQ(*rating->measured, 6e5);
  EXPECT_EQ(*rating->limit, 6.9e5);
  EXPECT_EQ(rating->name, "coupling 1");
  EXPECT_EQ(*working(weak, "air.rating")->limit, 6.9e5);
  crossing.air.compressor.regulator = Pressure{5.9e5};
  EXPECT_FALSE(find(judged(crossing), "air.rating"));
  crossing = with_air();
  crossing.air.line[1].count.set(0);  // none there
  crossing.air.line[1].rating = Pressure{1};
  EXPECT_FALSE(find(judged(crossing), "air.rating"));
  for (std::size_t part = 0; part < 3; ++part) {
    crossing = with_air();
    crossing.air.line[part].rating.reset();
    const Assessment asked = judged(crossing);
    ASSERT_TRUE(find(asked, "air.rating-unknown")) << listed(asked);
    EXPECT_EQ(find(asked, "air.rating-unknown")->severity, Severity::caution);
    EXPECT_EQ(asked.verdict, Verdict::caution);
  }
  crossing.air.line[0].rating = Pressure{1e5};  // one weak, one not known: both are said
  EXPECT_TRUE(find(judged(crossing), "air.rating") && find(judged(crossing), "air.rating-unknown"));
}

TEST(CheckAir, LossCompressorAndChoke_AreTold) {
  Crossing crossing = with_air();
  crossing.air.line.front().length = Length{200};
  const Assessment loss = judged(crossing);
  ASSERT_TRUE(find(loss, "air.loss")) << listed(loss);
  EXPECT_EQ(find(loss, "air.loss")->severity, Severity::caution);
  crossing = with_air();
  crossing.air.compressor.free_air = VolumeFlow{0.010};
  const Assessment small = judged(crossing);
  ASSERT_TRUE(find(small, "air.compressor-small")) << listed(small);
  EXPECT_EQ(*find(small, "air.compressor-small")->measured, 0.010);
  EXPECT_EQ(find(small, "air.compressor-small")->severity, Severity::caution);
  EXPECT_FALSE(working(small, "air.demand"));
  crossing = with_air();
  crossing.bore.tool.tool_class = "tool-180";
  crossing.air.compressor.free_air = VolumeFlow{1};
  crossing.air.line.resize(1);
  crossing.air.line.front().length = Length{0.05};
  crossing.air.line.front().bore = Length{0.004};
  const Assessment choked = judged(crossing);
  ASSERT_TRUE(find(choked, "air.choked")) << listed(choked);
  EXPECT_EQ(choked.air.supply->held_by, AirHeldBy::choked);
}

// About 5 °C (40 °F): common practice, no source. Air known to be dry does not freeze.
TEST(CheckAir, Icing_ColdWetAir) {
  Crossing crossing = with_air();
  crossing.air.air_temperature.set(Temperature{274.15});
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "air.icing")) << listed(answer);
  EXPECT_EQ(finding_text(*find(answer, "air.icing"), UnitSystem::metric),
            "wet air at 1 °C is likely to freeze in the exhaust, 5 °C or warmer is safer");
  crossing.air.relative_humidity = Ratio{0.1};
  EXPECT_FALSE(find(judged(crossing), "air.icing"));
}

TEST(CheckAir, Oil_ForThePlannedTime) {
  Crossing crossing = with_air();
  const Assessment answer = judged(crossing);
  EXPECT_NEAR(answer.air.oil.for_nine_in_ten->m3, answer.air.oil.rate.m3_s * *answer.advance_time_s.p90, 1e-12);
  EXPECT_NEAR(answer.air.oil.rate.m3_s, oil_for_free_air * *answer.air.free_air_m3_s, 1e-18);
  crossing.air.oil.rate = VolumeFlow{1e-9};
  EXPECT_EQ(judged(crossing).air.oil.rate.m3_s, 1e-9);
  EXPECT_TRUE(judged(clean_crossing()).air.oil.rate.m3_s > 0);  // by the tool's own free air
}

// Whatever the file accepts: an answer without NaN.
TEST(CheckAir, OddEntries_NeverAnAbort) {
  for (const double bore : {1e-300, 0.001, 0.019, 5.0})
    for (const double length : {0.0, 1e5})
      for (const double pressure : {0.0, 1e-300, 1e5, 1e300})
        for (const double flow : {0.0, 1e-300, 1.0, 1e300})
          for (const double height : {-1e4, -5000.0, 11000.0, 1e4}) {
            Crossing crossing = with_air();
            crossing.air.line[0].bore = Length{bore};
            crossing.air.line[0].length = Length{length};
            crossing.air.line[1].count.set(0);
            crossing.air.compressor.pressure = Pressure{pressure};
            crossing.air.compressor.free_air = VolumeFlow{flow};
            crossing.air.altitude.set(Length{height});
            crossing.air.tail_fitting.set(Length{length});
            crossing.air.mark_spacing.set(Length{bore});
            const Assessment answer = judged(crossing);
            EXPECT_TRUE(std::isfinite(*answer.air.pressure_worked_with_Pa));
            if (answer.air.pressure_at_tool_Pa) {
              EXPECT_TRUE(std::isfinite(*answer.air.pressure_at_tool_Pa) && *answer.air.pressure_at_tool_Pa >= 0);
            }
            EXPECT_LE(answer.marks.size(), 410u);
          }
}

// The card: levels from the surface down to the floor, by hand on the clean crossing (ground 100, axis 98.60, D 65 mm).
TEST(CrewSetup, Levels_OfTheLaunchPit) {
  Crossing crossing = clean_crossing();
  crossing.pits.launch.slab_thickness.set(Length{0.05});
  crossing.pits.launch.cradle_height.set(Length{0.10});
  crossing.bore.launch.grade = Ratio{0.02};
  crossing.bore.launch.heading.set(Angle{0.01});
  crossing.bore.launch.sight_base = Length{5};
  const CrewSetup setup = crew_setup(crossing, tables());
  EXPECT_NEAR(setup.levels.axis_depth.m, 1.40, 1e-12);
  EXPECT_NEAR(setup.levels.underside.m, 98.5675, 1e-12);
  EXPECT_NEAR(setup.levels.bed.m, setup.levels.floor.m + 0.15, 1e-12);
  EXPECT_NEAR(setup.levels.slab.m, setup.levels.floor.m + 0.05, 1e-12);
  EXPECT_NEAR(setup.levels.packing.m, setup.levels.underside.m - setup.levels.bed.m, 1e-12);
  ASSERT_EQ(setup.level_rises.size(), 4u);
  EXPECT_NEAR(setup.level_rises[1].rise.m, 1.2 * 0.02 / std::hypot(1, 0.02), 1e-12);
  EXPECT_NEAR(setup.sight.at_exit.m, 8 * std::tan(0.01), 1e-12);
  EXPECT_NEAR(setup.sight.at_stake->m, 5 * std::tan(0.01), 1e-12);
}

}  // namespace
}  // namespace burrow::test

// Advance, grip and refusal along a bore. The blow itself: tests/published/advance_test.cpp.
#include "burrow/bore/advance.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/classes_for_tests.h"

namespace burrow {
namespace {

constexpr AdvanceAsk at_full{{6.9e5}, {0.3}, {0.0002}};

/// A level 65 mm tool through strata, in order from the top.
struct Case {
  Site site;
  Bore bore;
  Tool tool;
  explicit Case(const char* soil, double length = 10, double z = -1.5) {
    site.ground = {{-5, 0}, {60, 0}};
    add(soil);
    bore.launch.elevation = {z};
    bore.exit.station = {length};
    bore.model.steer_constant.set(Ratio{0});
    ToolChoice choice;
    choice.diameter = Length{0.065};
    tool = resolve_tool(choice, {});
  }
  void add(const char* soil, std::optional<LevelLine> top = std::nullopt) {
    Stratum stratum;
    stratum.soil = soil;
    stratum.top = std::move(top);
    site.strata.push_back(std::move(stratum));
  }
  [[nodiscard]] Ground ground() const { return {site, for_tests::tables()}; }
  [[nodiscard]] BorePath path() const { return predict_path(ground(), tool, bore); }
  [[nodiscard]] Advance advance(const AdvanceAsk& ask = at_full) const {
    return advance_along(ground(), tool, path(), ask);
  }
};

// Closed form in uniform clay: friction grows straight until the whole body is in, then nothing changes.
TEST(Advance, ClosedForm_UniformClay) {
  const Case c("firm-clay", 12);
  const Advance advance = c.advance();
  ASSERT_TRUE(advance.time);
  EXPECT_FALSE(advance.stop_s_m);
  const double friction = pi * 0.065 * 0.2 * 40e3;
  for (const AdvancePoint& p : advance.points)
    EXPECT_NEAR(p.side_N, friction * std::min(p.s_m, c.tool.length.m), 1e-6 * friction);
  // Set of the full body; the time over the last 10 m is 10 m over the rate.
  const double limit = 0.85 * 18e3 * 1.5 + 40e3 * (1 + std::log(100.0));
  const double nose = pi * 0.065 * 0.065 / 4 * (limit + 0.5 * 40e3 / std::tan(15 * pi / 180));
  const Blow blow = blow_of(c.tool, at_full.gauge);
  const double set = blow.efficiency * blow.energy_J / ((nose + friction * c.tool.length.m) * 1.6) - 0.00125;
  EXPECT_NEAR(advance.points.back().set_m, set, 1e-9);
  const double rate = set * c.tool.blow_rate.Hz * 0.3;
  const auto at = [&](double s) {
    for (const AdvancePoint& p : advance.points)
      if (p.s_m > s - 1e-9) return p.time.p50_s;
    return 0.0;
  };
  EXPECT_NEAR(at(12) - at(2), 10 / rate, 1e-6);
  EXPECT_NEAR(advance.least_grip, friction * c.tool.length.m / blow.reaction_N, 1e-9);
}

// Our model: P90/P50 = P50/P10 = √5; a field factor twice as large halves all of them.
TEST(Advance, Model_TimeSpreadOfTheFieldFactor) {
  const Case c("firm-clay");
  const TimeSpread time = *c.advance().time;
  EXPECT_NEAR(time.p90_s / time.p50_s, std::sqrt(5.0), 1e-12);
  EXPECT_NEAR(time.p50_s / time.p10_s, std::sqrt(5.0), 1e-12);
  AdvanceAsk quicker = at_full;
  quicker.field_factor = {0.6};
  EXPECT_NEAR(c.advance(quicker).time->p50_s, time.p50_s / 2, 1e-9);
}

// Where hard ground rises to the bore the tool would stop, after the station where it meets it.
TEST(Advance, Model_StopsInHardGround) {
  Case c("firm-clay", 12);
  c.add("hard-clay", LevelLine{{0, -2.5}, {10, -0.5}});
  const Advance advance = c.advance();
  EXPECT_FALSE(advance.time);
  ASSERT_TRUE(advance.stop_station_m);
  EXPECT_GE(*advance.stop_station_m, 5 - 1e-9);  // at the latest when the whole body is in it
  EXPECT_LE(*advance.stop_station_m, 5 + c.tool.length.m + 0.25);
  EXPECT_EQ(advance.points.back().rate_m_s, 0);
  for (const AdvancePoint& p : advance.points) EXPECT_EQ(p.rate_m_s > 0, p.s_m < *advance.stop_s_m) << p.s_m;
}

// By hand: friction per metre π D 0.2 s_u against p A_p; friction equals the push at s = p A_p/(π D 0.2 s_u), whatever
// the spacing of the points.
TEST(Advance, Hand_HeldUntilFrictionEqualsThePush) {
  for (const auto& [soil, strength] : {std::pair{"firm-clay", 40e3}, {"stiff-clay", 80e3}}) {
    const Case c(soil, 12);
    const double push = 6.9e5 * pi / 4 * std::pow(c.tool.piston_diameter.m, 2);
    ASSERT_TRUE(c.advance().held_until_m) << soil;
    EXPECT_NEAR(*c.advance().held_until_m, push / (pi * 0.065 * 0.2 * strength), 1e-6) << soil;
  }
}

// A tool with more friction than air reaction is held by the ground from some length on; in soft clay by none.
TEST(Advance, Grip_SoftGroundDoesNotHold) {
  const Advance soft = Case("very-soft-clay").advance(), stiff = Case("stiff-clay").advance();
  EXPECT_LT(soft.least_grip, 0.5);
  EXPECT_FALSE(soft.held_until_m);
  EXPECT_GT(stiff.least_grip, 1);
  ASSERT_TRUE(stiff.held_until_m);
  EXPECT_LT(*stiff.held_until_m, 1.2);
  // A bore shorter than the tool is judged at its end.
  const Advance brief = Case("stiff-clay", 0.6).advance();
  EXPECT_EQ(brief.least_grip_station_m, 0.6);
}

// Water lowers what rubs in sand but not what the nose opens against.
TEST(Advance, Water_PorePressureDoesNotRub) {
  const Case dry("loose-sand");
  Case wet = dry;
  wet.site.water = LevelLine{{0, 0}};
  const Soil soil = for_tests::soil("loose-sand");
  const GroundAtTool with{soil, 150e3, 50e3}, without{soil, 100e3, 0};
  EXPECT_EQ(side_resistance_N_m(with, dry.tool), side_resistance_N_m(without, dry.tool));
  EXPECT_NEAR(nose_resistance_N(with, dry.tool) - nose_resistance_N(without, dry.tool), pi * 0.065 * 0.065 / 4 * 50e3,
              1e-9);
  EXPECT_LT(wet.advance().points.back().side_N, dry.advance().points.back().side_N);
}

TEST(Advance, Pressure_MoreIsQuickerAndGripsLess) {
  const Case c("stiff-clay");
  const auto effects =
      pressure_effects(c.ground(), c.tool, c.path(), at_full, {Pressure{1.5e5}, Pressure{5e5}, Pressure{6.9e5}});
  ASSERT_EQ(effects.size(), 3u);
  EXPECT_TRUE(effects[0].stop_station_m);
  EXPECT_FALSE(effects[0].time_p50_s);
  ASSERT_TRUE(effects[2].time_p50_s);
  EXPECT_EQ(*effects[2].time_p50_s, c.advance().time->p50_s);
  EXPECT_GT(effects[1].least_grip, effects[2].least_grip);
  EXPECT_NEAR(effects[1].least_grip * 5, effects[2].least_grip * 6.9, 1e-9);
}

// The working holds the numbers of the answer, and they give it again.
TEST(Advance, Working_GivesTheSetAgain) {
  const Case c("firm-clay");
  const Advance advance = c.advance();
  const auto working = working_of(advance, c.tool, at_full);
  ASSERT_EQ(working.size(), 4u);
  EXPECT_EQ(working[1].code, "bore.efficiency");
  EXPECT_EQ(working[1].value, advance.blow.efficiency);
  const auto value = [&](std::string_view symbol) {
    for (const WorkingInput& input : working[0].inputs)
      if (input.symbol == symbol) return input.value;
    ADD_FAILURE() << symbol;
    return 0.0;
  };
  const double again =
      value("η") * value("E") / ((value("R_nose") + value("R_side")) * (1 + value("J") * value("v"))) - value("r_e");
  EXPECT_NEAR(again, working[0].value, 1e-12);
  EXPECT_EQ(working[3].value, advance.time->p50_s);
}

}  // namespace
}  // namespace burrow

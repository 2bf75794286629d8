// The mean path, its spread, the neutral cover, the tool.
#include "burrow/bore/path.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/bore/neutral_cover.h"
#include "burrow/bore/spread.h"
#include "burrow/bore/steering.h"
#include "support/classes_for_tests.h"

namespace burrow {
namespace {

Stratum stratum(const char* soil, std::optional<LevelLine> top = std::nullopt) {
  Stratum s;
  s.soil = soil;
  s.top = std::move(top);
  return s;
}

Tool tool(double diameter) {
  ToolChoice choice;
  choice.diameter = Length{diameter};
  return resolve_tool(choice, {});
}

/// One soil under level ground at 0, a level 65 mm tool with the axis at `z`, exit at `length`.
struct Case {
  Site site;
  Bore bore;
  Tool used = tool(0.065);
  explicit Case(const char* soil, double z, double length = 15) {
    site.ground = {{-5, 0}, {60, 0}};
    site.strata = {stratum(soil)};
    bore.launch.elevation = {z};
    bore.exit.station = {length};
  }
  [[nodiscard]] BorePath path(PathSteps steps = {}) const {
    return predict_path(Ground(site, for_tests::tables()), used, bore, steps);
  }
};

void no_steer(Bore& bore) {
  bore.model.steer_constant.set(Ratio{0});
  bore.model.steer_constant_sd.set(Ratio{0});
}

// Limit: c = 0 gives a straight line through launch point, grade and heading, ending on the exit face.
TEST(PredictPath, Limit_StraightWithoutSteering) {
  Case c("medium-sand", -1.5);
  no_steer(c.bore);
  c.bore.launch.grade = {-0.02};
  c.bore.launch.heading.set(Angle{0.03});
  c.bore.launch.offset.set(Length{0.2});
  const BorePath path = c.path();
  ASSERT_EQ(path.ends, PathEnd::exit);
  EXPECT_EQ(path.points.front().s_m, 0);
  EXPECT_EQ(path.points.back().x_m, 15);
  EXPECT_NEAR(path.length_m, 15 / (std::cos(std::atan(0.02)) * std::cos(0.03)), 1e-12);
  for (const PathPoint& p : path.points) {
    EXPECT_NEAR(p.z_m, -1.5 - std::sin(std::atan(0.02)) * p.s_m, 1e-12);
    EXPECT_NEAR(p.y_m, 0.2 + std::tan(0.03) * p.x_m, 1e-12);
    EXPECT_NEAR(p.cover_m, -p.z_m - 0.0325, 1e-12);
  }
}

TEST(PredictPath, Points_CloseTogetherAndExactEnds) {
  for (const double length : {0.01, 0.25, 3.1, 15.0, 45.0}) {
    const BorePath path = Case("firm-clay", -1, length).path();
    EXPECT_EQ(path.points.front().s_m, 0);
    EXPECT_EQ(path.points.back().s_m, path.length_m);
    EXPECT_EQ(path.points.back().x_m, length);
    for (std::size_t i = 1; i < path.points.size(); ++i) {
      EXPECT_GT(path.points[i].s_m, path.points[i - 1].s_m);
      EXPECT_LE(path.points[i].s_m - path.points[i - 1].s_m, 0.25 + 1e-12);
    }
  }
}

// Our model: sag in soft clay grows with the weight.
TEST(PredictPath, Model_SagInSoftClayGrowsWithWeight) {
  Case c("soft-clay", -1.2);
  double before = 0;
  for (const double mass : {8.0, 15.0, 30.0}) {
    c.used.mass = {mass};
    const double sag = -1.2 - c.path().points.back().z_m;
    EXPECT_GT(sag, before);
    before = sag;
  }
}

// Our model: above the neutral cover a level tool climbs, below it sags.
TEST(PredictPath, Model_ClimbAboveNeutralCoverSagBelow) {
  const double neutral = *neutral_cover(for_tests::soil("medium-sand"), tool(0.065));
  const double D = 0.065;
  EXPECT_GT(Case("medium-sand", -(0.8 * neutral + 0.5) * D).path().points.back().z_m, -(0.8 * neutral + 0.5) * D);
  EXPECT_LT(Case("medium-sand", -(1.2 * neutral + 0.5) * D).path().points.back().z_m, -(1.2 * neutral + 0.5) * D);
}

// Our model: at the neutral cover, and level, the tool begins without curvature.
TEST(PredictPath, Model_NoCurvatureAtNeutralCover) {
  const double neutral = *neutral_cover(for_tests::soil("loose-sand"), tool(0.065));
  const BorePath path = Case("loose-sand", -(neutral + 0.5) * 0.065).path();
  EXPECT_NEAR(path.points.front().curvature_1_m, 0, 1e-8);
}

TEST(PredictPath, Model_ShallowBoreDaylights) {
  Case c("dense-sand", -0.25, 40);
  c.bore.launch.grade = {0.01};
  const BorePath path = c.path();
  ASSERT_EQ(path.ends, PathEnd::daylight);
  EXPECT_LT(path.points.back().x_m, 40);
  EXPECT_NEAR(path.points.back().cover_m, 0, 1e-9);
  EXPECT_EQ(path.points.back().roof_cap_Pa, 0);
  for (std::size_t i = 0; i + 1 < path.points.size(); ++i) EXPECT_GT(path.points[i].cover_m, 0);
}

TEST(PredictPath, Ends_LaunchInTheAirOrExitBehind) {
  const BorePath in_air = Case("firm-clay", 0.5).path();
  EXPECT_EQ(in_air.ends, PathEnd::daylight);
  EXPECT_EQ(in_air.length_m, 0);
  ASSERT_EQ(in_air.points.size(), 1u);
  for (const double exit : {0.0, -3.0}) {
    const BorePath behind = Case("firm-clay", -1, exit).path();
    EXPECT_EQ(behind.ends, PathEnd::longest);
    EXPECT_EQ(behind.length_m, 0);
    ASSERT_EQ(behind.points.size(), 1u);
    EXPECT_TRUE(std::isfinite(behind.points[0].sd_vertical_m));
  }
}

TEST(PredictPath, Ends_SidewaysIsTheLongest) {
  Case c("firm-clay", -1, 10);
  c.bore.launch.heading.set(Angle{1.5});
  const BorePath path = c.path();
  EXPECT_EQ(path.ends, PathEnd::longest);
  EXPECT_NEAR(path.length_m, 20, 1e-9);  // 1.5 × 10 + 5
}

Case layered() {
  Case c("made-ground", -1.05, 45);
  c.site.ground = {{-5, 0}, {10, 0.2}, {45, 0.1}};
  c.site.strata = {stratum("made-ground"), stratum("firm-clay", LevelLine{{0, -0.6}, {45, -0.9}}),
                   stratum("loose-sand", LevelLine{{0, -1.2}, {45, -1.0}}), stratum("medium-sand", LevelLine{{0, -2}})};
  c.site.water = LevelLine{{0, -1.5}};
  return c;
}

// Limit: halving the step moves the arrival by less than 1 mm, in one sand and through layers.
TEST(PredictPath, Limit_HalvingTheStep) {
  const Case cases[] = {Case("loose-sand", -1.0, 45), Case("soft-clay", -1.0, 45), layered()};
  for (const Case& c : cases) {
    const PathPoint coarse = c.path().points.back(), fine = c.path({{0.025}}).points.back();
    EXPECT_NEAR(coarse.z_m, fine.z_m, 1e-3);
    EXPECT_NEAR(coarse.y_m, fine.y_m, 1e-3);
    EXPECT_NEAR(coarse.sd_vertical_m, fine.sd_vertical_m, 1e-3);
  }
}

// Independent route: constant curvature in deep clay is nearly a parabola; compare with κ L²/2 from `Steering`.
TEST(PredictPath, Parabola_DeepClay) {
  const Case c("soft-clay", -3, 12);
  const Ground ground(c.site, for_tests::tables());
  const double curvature = 0.04 * Steering(ground, c.used).pitch(ground.column(0, 0), -3, 0).pitch_1_m;
  EXPECT_NEAR(c.path().points.back().z_m + 3, curvature * 12 * 12 / 2, 0.02 * std::abs(curvature) * 72);
}

Case beside_trench(double side) {
  Case c("dense-sand", -1.2, 12);
  Strip strip;
  strip.soil = "trench-backfill";
  strip.outline = {{2, side * 0.08}, {9, side * 0.05}, {9, side * 0.7}, {2, side * 0.7}};
  strip.bottom_elevation = {-2};
  c.site.strips = {strip};
  return c;
}

// Our model: the tool turns toward the trench, whose fill resists less. Symmetry: mirrored trench, mirrored path.
TEST(PredictPath, Symmetry_MirroredTrench) {
  const BorePath left = beside_trench(1).path(), right = beside_trench(-1).path();
  ASSERT_EQ(left.points.size(), right.points.size());
  EXPECT_GT(left.points.back().y_m, 1e-3);
  for (std::size_t i = 0; i < left.points.size(); ++i) {
    EXPECT_NEAR(left.points[i].y_m, -right.points[i].y_m, 1e-12);
    EXPECT_NEAR(left.points[i].z_m, right.points[i].z_m, 1e-12);
    EXPECT_NEAR(left.points[i].sd_lateral_m, right.points[i].sd_lateral_m, 1e-12);
  }
}

TEST(PredictPath, Limit_NoTrenchNoTurn) {
  const BorePath path = Case("dense-sand", -1.2).path();
  EXPECT_EQ(path.points.back().y_m, 0);
  EXPECT_EQ(path.points.back().heading_rad, 0);
}

// Derived: uniform ground, level, c = 0: Var = s₀² + θ₀² L² + σ_e² L³/3 with σ_e² = σ² + λ s_J², to 1e-9.
TEST(PathSpread, Derived_UniformClosedForm) {
  Case c("medium-sand", -1.5, 20);
  no_steer(c.bore);
  const double noise = 0.0040 * 0.0040 + 0.01 * 0.003 * 0.003;
  for (const PathPoint& p : c.path().points) {
    const double L = p.s_m;
    const double variance = 0.005 * 0.005 + 0.005 * 0.005 * L * L + noise * L * L * L / 3;
    EXPECT_NEAR(p.sd_vertical_m * p.sd_vertical_m / variance, 1, 1e-9);
    EXPECT_NEAR(p.sd_lateral_m * p.sd_lateral_m / variance, 1, 1e-9);
  }
}

// Derived: noise of a stone of variance s_J² at a rate λ adds λ s_J² L³/3.
TEST(PathSpread, Derived_StonesAdd) {
  Case c("medium-sand", -1.5, 10);
  no_steer(c.bore);
  const double plain = std::pow(c.path().points.back().sd_lateral_m, 2);
  c.site.strata[0].values.stone_rate = RatePerLength{0.4};
  c.site.strata[0].values.stone_kick = Angle{0.01};
  const double stony = std::pow(c.path().points.back().sd_lateral_m, 2);
  EXPECT_NEAR(stony - plain, (0.4 * 1e-4 - 0.01 * 9e-6) * 1000 / 3, 1e-9);
}

// Second route: the spread by the constant against two paths with c moved.
TEST(PathSpread, Differences_SpreadOfConstant) {
  Case c("soft-clay", -1.0, 15);
  c.bore.launch.level_sd.set(Angle{0});
  c.bore.launch.position_sd.set(Length{0});
  c.site.strata[0].values.wander = Wander{0};
  const double sd = c.path().points.back().sd_vertical_m;
  const auto z_for = [&](double constant) {
    Case moved = c;
    moved.bore.model.steer_constant.set(Ratio{constant});
    return moved.path().points.back().z_m;
  };
  EXPECT_NEAR(sd / (0.03 * std::abs(z_for(0.0401) - z_for(0.0399)) / 0.0002), 1, 5e-3);
}

// Second route: the spread by the level at the start, with the path's own sensitivity, against two paths.
TEST(PathSpread, Differences_LevelError) {
  Case c("loose-sand", -0.6, 20);  // climbs: errors grow faster than in a straight line
  c.bore.launch.level_sd.set(Angle{0.005});
  c.bore.launch.position_sd.set(Length{0});
  c.bore.model.steer_constant_sd.set(Ratio{0});
  c.site.strata[0].values.wander = Wander{0};
  const double sd = c.path().points.back().sd_vertical_m;
  const auto z_for = [&](double grade) {
    Case moved = c;
    moved.bore.launch.grade = {grade};
    return moved.path().points.back().z_m;
  };
  EXPECT_GT(sd, 0.005 * 20 * 1.01);
  EXPECT_NEAR(sd / (0.005 * (z_for(1e-4) - z_for(-1e-4)) / 2e-4), 1, 5e-3);
}

// help page Method (our model), by hand: clay, roof not governing. q falls by 0.85 γ r upward; with u = 1/r the mean of
// r from a to 4a is a ln 4/(3/4).
TEST(Steering, Hand_DeepClay) {
  const Tool used = tool(0.065);
  const Ground ground = Ground::uniform(for_tests::soil("firm-clay"));
  const Steer steer = Steering(ground, used).pitch(ground.column(0, 0), -2, 0.1);
  const double q = 0.85 * 18e3 * 2 + 40e3 * (1 + std::log(100)), mean_r = 0.0325 * std::log(4.0) / 0.75;
  const double asymmetry = 0.85 * 18e3 * mean_r / q, lever = 3 * 0.065 / used.length.m;
  const double sag = used.mass.kg * gravity_m_s2 * std::cos(0.1) / (q * 0.065 * used.length.m);
  EXPECT_NEAR(steer.limit_Pa, q, 1e-6);
  EXPECT_NEAR(steer.pitch_1_m, (asymmetry * lever - sag) / used.length.m, 1e-12);
  EXPECT_NEAR(steer.cap_Pa, 18e3 * (2 - 0.0325) + 2 * 40e3 * (2 - 0.0325) / 0.065, 1e-6);
}

// help page Method (our model): close under the surface the side reaches to the surface only, and the roof counts.
TEST(Steering, Model_RoofGovernsNearTheSurface) {
  const Tool used = tool(0.065);
  const Ground ground = Ground::uniform(for_tests::soil("firm-clay"));
  const Steer steer = Steering(ground, used).pitch(ground.column(0, 0), -0.10, 0);
  EXPECT_EQ(steer.above_Pa, steer.cap_Pa);
  EXPECT_GT(steer.pitch_1_m, 0);
  const Steer in_air = Steering(ground, used).pitch(ground.column(0, 0), 0.2, 0);
  EXPECT_EQ(in_air.above_Pa, 0);
  EXPECT_TRUE(std::isfinite(in_air.pitch_1_m));
}

// Our model (help page Method): neutral cover C/D, uniform dry ground, class values, tools 45 to 180 mm. Tolerance:
// half the last digit of the table.
TEST(NeutralCover, Method_Table) {
  const std::pair<const char*, std::array<double, 5>> rows[] = {
      {"soft-clay", {2.2, 2.1, 2.0, 1.9, 1.7}},        {"firm-clay", {2.5, 2.5, 2.4, 2.3, 2.2}},
      {"stiff-clay", {2.7, 2.6, 2.6, 2.6, 2.5}},       {"loose-sand", {13.4, 12.3, 11.2, 10.2, 9.2}},
      {"medium-sand", {19.8, 17.9, 16.1, 14.7, 13.4}}, {"dense-sand", {29.9, 27.6, 30.1, 29.3, 25.6}}};
  const double diameters[] = {0.045, 0.065, 0.095, 0.130, 0.180};
  for (const auto& [soil, expected] : rows)
    for (std::size_t i = 0; i < 5; ++i) {
      const auto cover = neutral_cover(for_tests::soil(soil), tool(diameters[i]));
      ASSERT_TRUE(cover) << soil;
      EXPECT_NEAR(*cover, expected[i], 0.05) << soil << ' ' << diameters[i];
    }
}

// Limit: without weight nothing pulls the tool down, and it climbs at every cover.
TEST(NeutralCover, Limit_NoWeightNoNeutralCover) {
  Tool weightless = tool(0.065);
  weightless.mass = {0};
  EXPECT_FALSE(neutral_cover(for_tests::soil("firm-clay"), weightless));
}

// Derived: ∫ rate over two soils, 4 m at 0.001 and 6 m at 0.05 1/m.
TEST(ChanceOfRefusal, Derived_TwoSoils) {
  Case c("firm-clay", -1.5, 10);
  no_steer(c.bore);
  c.site.strata[0].values.refusal_rate = RatePerLength{0.001};
  Stratum sand = stratum("dense-sand", LevelLine{{0, -5}, {4, -5}, {4 + 1e-9, 0}});
  sand.values.refusal_rate = RatePerLength{0.05};
  c.site.strata.push_back(sand);
  const Ground ground(c.site, for_tests::tables());
  const BorePath path = predict_path(ground, c.used, c.bore);
  EXPECT_NEAR(chance_of_refusal(ground, path), 1 - std::exp(-(4 * 0.001 + 6 * 0.05)), 1e-6);
  EXPECT_NEAR(chance_of_refusal(ground, path, {3}), 1 - std::exp(-0.003), 1e-9);
  EXPECT_EQ(chance_of_refusal(ground, path, {0}), 0);
}

// help page Method (our model): class formulas, here for D = 65 mm.
TEST(ResolveTool, Model_FromDiameter) {
  const Tool t = tool(0.065);
  EXPECT_NEAR(t.length.m, 0.72 + 0.429 + 0.04225, 1e-12);
  EXPECT_NEAR(t.mass.kg, 0.6 * 7850 * pi * 0.065 * 0.065 * 1.19125 / 4, 1e-9);
  EXPECT_NEAR(t.blow_rate.Hz, 8.5 - 4.0 * 20 / 135, 1e-12);
  EXPECT_NEAR(t.striker_mass.kg / t.mass.kg, 0.28, 1e-12);
  EXPECT_NEAR(t.free_air.m3_s, 1.15 * pi * 0.0455 * 0.0455 / 4 * 0.1125 * (6.9e5 + 101325) / 101325 * t.blow_rate.Hz,
              1e-12);
}

TEST(ResolveTool, Plate_OverridesClass) {
  Tables tables;
  ToolClass row;
  row.id = "tool-65";
  row.length = {1.19};
  row.mass = {18};
  tables.tools.push_back(row);
  ToolChoice choice;
  choice.tool_class = "tool-65";
  choice.mass = Mass{21};
  const Tool t = resolve_tool(choice, tables);
  EXPECT_EQ(t.mass.kg, 21);
  EXPECT_EQ(t.length.m, 1.19);
}

}  // namespace
}  // namespace burrow

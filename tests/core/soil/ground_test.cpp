// Layers, water, strips, stresses, roof and side resistance.
#include "burrow/soil/ground.h"

#include <gtest/gtest.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

#include "support/classes_for_tests.h"

namespace burrow {
namespace {

Stratum stratum(const char* soil, std::optional<LevelLine> top = std::nullopt) {
  Stratum s;
  s.soil = soil;
  s.top = std::move(top);
  return s;
}

/// Level ground at 10 m: made ground, firm clay from 9, loose sand from 8.
Site layered() {
  Site site;
  site.ground = {{0, 10}, {20, 10}};
  site.strata = {stratum("made-ground"), stratum("firm-clay", LevelLine{{0, 9}}),
                 stratum("loose-sand", LevelLine{{0, 8}})};
  return site;
}

Strip strip(PlanLine outline, double bottom) {
  Strip s;
  s.soil = "trench-backfill";
  s.outline = std::move(outline);
  s.bottom_elevation = {bottom};
  return s;
}
const PlanLine across_5_to_6{{5, -4}, {6, -4}, {6, 4}, {5, 4}};

TEST(Ground, Layers_StratumAtAndOnABoundary) {
  const Ground ground(layered(), for_tests::tables());
  EXPECT_EQ(ground.stratum_at(1, 0, 9.5), 0u);
  EXPECT_EQ(ground.stratum_at(1, 0, 8.5), 1u);
  EXPECT_EQ(ground.stratum_at(1, 0, 2), 2u);
  EXPECT_EQ(ground.stratum_at(1, 0, 9.0), 1u);  // a boundary belongs to the lower one
  EXPECT_EQ(ground.soil_at(1, 0, 8.5), for_tests::soil("firm-clay"));
  const Column column = ground.column(1, 0);
  for (const double z : {9.5, 9.0, 8.5, 8.0, 3.0}) EXPECT_EQ(column.layer_at(z).soil, ground.stratum_at(1, 0, z)) << z;
}

// Contract: where the top of a lower stratum rises above an upper one, the upper has no thickness.
// Second route: the ground made anew with the other class. Typed values stay; the other strata too.
TEST(Ground, WithClass_AsMadeAnew) {
  Site site = layered();
  site.strata[2].values.unit_weight = UnitWeight{18500};
  const Ground entered(site, for_tests::tables());
  const Ground other = entered.with_class(site, for_tests::tables(), 2, "medium-sand");
  site.strata[2].soil = "medium-sand";
  const Ground anew(site, for_tests::tables());
  for (std::size_t i = 0; i < 3; ++i) EXPECT_EQ(other.stratum_soil(i), anew.stratum_soil(i)) << i;
  EXPECT_NE(other.stratum_soil(2), entered.stratum_soil(2));
  for (double z = 9.9; z > 5; z -= 0.3) {
    const double pressure = anew.column(3, 0).limit_pressure(z);
    EXPECT_NEAR(other.column(3, 0).limit_pressure(z), pressure, 1e-6 * pressure) << z;
  }
}

TEST(Ground, Layers_PinchedOut) {
  Site site = layered();
  site.strata[2].top = LevelLine{{0, 8}, {10, 9.6}};  // sand rises through the clay
  const Ground ground(site, for_tests::tables());
  EXPECT_EQ(ground.stratum_at(10, 0, 9.5), 2u);
  EXPECT_EQ(ground.stratum_at(10, 0, 9.8), 0u);
  EXPECT_EQ(ground.column(10, 0).layers().size(), 2u);
  EXPECT_EQ(ground.column(0, 0).layers().size(), 3u);
}

TEST(Ground, Layers_AboveTheGroundLineAreCutOff) {
  Site site = layered();
  site.strata[1].top = LevelLine{{0, 12}};
  const Ground ground(site, for_tests::tables());
  EXPECT_EQ(ground.stratum_at(0, 0, 9.9), 1u);
  EXPECT_DOUBLE_EQ(ground.column(0, 0).surface_m(), 10);
  EXPECT_DOUBLE_EQ(ground.column(0, 0).vertical_stress(9), 18e3);
}

TEST(Ground, Strips_InsideOnly) {
  Site site = layered();
  site.strips = {strip(across_5_to_6, 8.5)};
  const Ground ground(site, for_tests::tables());
  EXPECT_EQ(ground.soil_at(5.5, 0, 8.7), for_tests::soil("trench-backfill"));
  EXPECT_EQ(ground.soil_at(5.5, 0, 8.4), for_tests::soil("firm-clay"));
  EXPECT_EQ(ground.soil_at(6.5, 0, 8.7), for_tests::soil("firm-clay"));
  EXPECT_EQ(ground.stratum_at(5.5, 0, 8.7), 1u);
  EXPECT_EQ(ground.strip_at(5.5, 0, 8.7), std::optional<std::size_t>(0));
  EXPECT_FALSE(ground.strip_at(5.5, 5, 8.7));
  const Column column = ground.column(5.5, 0);
  ASSERT_EQ(column.layers().size(), 3u);  // backfill, clay, sand
  EXPECT_NEAR(column.vertical_stress(8.0), 1.5 * 17e3 + 0.5 * 18e3, 1e-9);
}

TEST(Ground, Strips_BuriedTopAndTheLaterCounts) {
  Site site = layered();
  Strip low = strip(across_5_to_6, 8.2);
  low.top_elevation = Length{9.5};
  Strip late = strip(across_5_to_6, 8.8);
  late.top_elevation = Length{9.2};
  late.soil = "dense-sand";
  site.strips = {low, late};
  const Ground ground(site, for_tests::tables());
  const Column column = ground.column(5.5, 1);
  for (const double z : {9.8, 9.3, 9.0, 8.5, 8.1, 7.0})
    EXPECT_EQ(*column.layer_at(z).properties, ground.soil_at(5.5, 1, z)) << z;
  EXPECT_EQ(ground.soil_at(5.5, 1, 9.0), for_tests::soil("dense-sand"));
  EXPECT_EQ(ground.soil_at(5.5, 1, 8.5), for_tests::soil("trench-backfill"));
}

TEST(Column, Hand_StressAndPorePressure) {
  Site site = layered();
  site.water = LevelLine{{0, 8.5}};
  const Ground ground(site, for_tests::tables());
  const Column column = ground.column(0, 0);
  // 1 m made ground at 17.5, 0.5 m clay moist at 18, 0.5 m clay wet at 18.5, 1 m sand wet at 19 kN/m³.
  EXPECT_NEAR(column.vertical_stress(7), 17.5e3 + 9e3 + 9.25e3 + 19e3, 1e-9);
  EXPECT_NEAR(column.pore_pressure(7), 1.5 * water_unit_weight_N_m3, 1e-9);
  EXPECT_EQ(column.pore_pressure(9), 0);
  EXPECT_EQ(column.vertical_stress(11), 0);
  EXPECT_EQ(ground.water_m(3), std::optional<double>(8.5));
  EXPECT_EQ(column.layers().size(), 4u);
}

TEST(Column, Hand_WaterStandingOnTheGround) {
  Site site = layered();
  site.water = LevelLine{{0, 11}};
  const Ground ground(site, for_tests::tables());
  const Column column = ground.column(0, 0);
  EXPECT_NEAR(column.vertical_stress(9), water_unit_weight_N_m3 + 19.5e3, 1e-9);
  EXPECT_NEAR(column.pore_pressure(9), 2 * water_unit_weight_N_m3, 1e-9);
}

// Our model: q = (1 + K0)/2 σ_v + s_u (1 + ln G/s_u) in clay; p_L′ + u in sand.
TEST(Column, Model_LimitPressure) {
  Site site = layered();
  site.water = LevelLine{{0, 7.5}};
  const Ground ground(site, for_tests::tables());
  const Column column = ground.column(0, 0);
  EXPECT_NEAR(column.limit_pressure(8.5), 0.85 * (17.5e3 + 9e3) + 40e3 * (1 + std::log(100)), 1e-6);
  const double vertical = 17.5e3 + 18e3 + 8e3 + 19e3 * 0.5, pore = 0.5 * water_unit_weight_N_m3;
  const LimitLaw law(for_tests::soil("loose-sand"), {100e3});
  EXPECT_NEAR(column.limit_pressure(7.0) / (law.effective_limit_Pa(0.75 * (vertical - pore)) + pore), 1, 1e-9);
}

// Majer 1955 (from memory): one dry sand γC (1 + tan φ′ · C/D), one clay γC + 2 s_u C/D.
TEST(RoofCap, Majer1955_OneSoil) {
  const double D = 0.1, C = 0.8, axis = -(C + D / 2);
  const Ground sand = Ground::uniform(for_tests::soil("loose-sand"));
  EXPECT_NEAR(sand.column(0, 0).roof_cap(axis, D), 16e3 * C * (1 + std::tan(pi / 6) * C / D), 1e-6);
  const Ground clay = Ground::uniform(for_tests::soil("firm-clay"));
  EXPECT_NEAR(clay.column(0, 0).roof_cap(axis, D), 18e3 * C + 2 * 40e3 * C / D, 1e-6);
}

TEST(RoofCap, Hand_LayersAndWater) {
  Site site = layered();
  site.water = LevelLine{{0, 8.4}};
  const Ground ground(site, for_tests::tables());
  const double D = 0.2, tan_made = std::tan(pi / 6), tan_sand = std::tan(pi / 6);
  // Crown at 7.5: made ground 1 m, clay 0.6 m moist and 0.4 m wet, sand 0.5 m wet.
  const double at_8 = 17.5e3 + 0.6 * 18e3 + 0.4 * 18.5e3, u_8 = 0.4 * water_unit_weight_N_m3;
  const double slip = tan_made * 17.5e3 / 2 + 40e3 * 1.0 +
                      tan_sand * ((at_8 - u_8) * 0.5 + 0.5 * (19e3 - water_unit_weight_N_m3) * 0.25);
  EXPECT_NEAR(ground.column(0, 0).roof_cap(7.4, D), at_8 + 0.5 * 19e3 + 2 / D * slip, 1e-6);
}

TEST(RoofCap, Limit_NothingAboveNothing) {
  const Ground clay = Ground::uniform(for_tests::soil("firm-clay"));
  EXPECT_EQ(clay.column(0, 0).roof_cap(-0.04, 0.1), 0);
}

/// ∫ q r⁻² dr / ∫ r⁻² dr by adaptive quadrature in r, cut where the caller says.
double by_quadrature(const Column& column, double z, double sign, std::vector<double> cuts) {
  double sum = 0;
  const auto f = [&](double r) { return column.limit_pressure(z + sign * r) / (r * r); };
  for (std::size_t i = 1; i < cuts.size(); ++i)
    sum += boost::math::quadrature::gauss_kronrod<double, 61>::integrate(f, cuts[i - 1], cuts[i], 10, 1e-12);
  return sum / (1 / cuts.front() - 1 / cuts.back());
}

TEST(SideResistance, Quadrature_LayersAndWater) {
  Site site = layered();
  site.water = LevelLine{{0, 7.9}};
  const Ground ground(site, for_tests::tables());
  const Column column = ground.column(0, 0);
  // Axis 0.15 m above the sand; below: clay to 8, dry sand to 7.9, wet sand.
  EXPECT_NEAR(column.resistance_below(8.15, 0.05, 0.4) / by_quadrature(column, 8.15, -1, {0.05, 0.15, 0.25, 0.4}), 1,
              2e-6);
  EXPECT_NEAR(column.resistance_above(7.85, 0.05, 0.4) / by_quadrature(column, 7.85, 1, {0.05, 0.05 + 1e-9, 0.15, 0.4}),
              1, 2e-6);
  EXPECT_NEAR(column.resistance_above(8.15, 0.05, 0.2) / by_quadrature(column, 8.15, 1, {0.05, 0.2}), 1, 1e-9);
}

// Near the surface the stress changes much along the ray and the twelve points come in.
TEST(SideResistance, Quadrature_ShallowSand) {
  const Ground ground = Ground::uniform(for_tests::soil("medium-sand"));
  const Column column = ground.column(0, 0);
  EXPECT_NEAR(column.resistance_above(-0.26, 0.05, 0.2) / by_quadrature(column, -0.26, 1, {0.05, 0.2}), 1, 1e-7);
  EXPECT_NEAR(column.resistance_below(-0.26, 0.05, 0.2) / by_quadrature(column, -0.26, -1, {0.05, 0.2}), 1, 2e-6);
}

TEST(SideResistance, Limit_ThinRayIsThePressureAtTheWall) {
  const Ground ground = Ground::uniform(for_tests::soil("medium-sand"));
  const Column column = ground.column(0, 0);
  EXPECT_DOUBLE_EQ(column.resistance_above(-1, 0.05, 0.05), column.limit_pressure(-0.95));
  EXPECT_DOUBLE_EQ(column.resistance_below(-1, 0.05, 0.02), column.limit_pressure(-1.05));
}

// The short cut (cap plainly governs) never changes the answer.
TEST(SideResistance, Shortcut_IsTheLesserOfTheTwo) {
  const Ground ground(layered(), for_tests::tables());
  const Column column = ground.column(0, 0);
  for (double z = 9.9; z > 6; z -= 0.013)
    for (const double cap : {1e3, 50e3, 150e3, 250e3, 1e6})
      EXPECT_DOUBLE_EQ(column.roof_resistance(z, 0.05, 0.2, cap), std::min(cap, column.resistance_above(z, 0.05, 0.2)));
}

TEST(SideResistance, Hand_BesideATrench) {
  Site site = layered();
  site.strips = {strip({{-10, 0.1}, {10, 0.1}, {10, 0.6}, {-10, 0.6}}, 7)};
  const Ground ground(site, for_tests::tables());
  const Column here = ground.column(0, 0), trench = ground.column(0, 0.3);
  const Point3 axis{0, 0, 8.5};
  const double clay = here.limit_pressure(8.5), fill = trench.limit_pressure(8.5);
  // From 0.05 to 0.1 clay, to 0.2 backfill: weights 10 and 5.
  EXPECT_NEAR(ground.resistance_beside(here, axis, 0, 1, 0.05, 0.2), (10 * clay + 5 * fill) / 15, 1e-6);
  EXPECT_NEAR(ground.resistance_beside(here, axis, 0, -1, 0.05, 0.2), clay, 1e-9);
  EXPECT_TRUE(ground.strip_near(0, 0, 0.2));
  EXPECT_FALSE(ground.strip_near(0, -0.2, 0.2));
}

}  // namespace
}  // namespace burrow

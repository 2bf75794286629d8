// Atmosphere, water in the air, oil.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/air/moisture.h"
#include "burrow/air/oil.h"

namespace burrow::test {
namespace {

SiteAir day(double K = 288.15, double altitude_m = 0) {
  return site_air(Length{altitude_m}, Temperature{K}).value();
}

// Standard atmosphere (from memory): 1000 m 89 875 Pa, 5000 m 54 020 Pa, 11 000 m 22 632 Pa; density at sea
// level 1.225.
TEST(Atmosphere, StandardValues) {
  EXPECT_NEAR(standard_pressure(Length{1000})->Pa, 89875, 2);
  EXPECT_NEAR(standard_pressure(Length{5000})->Pa, 54020, 5);
  EXPECT_NEAR(standard_pressure(Length{11000})->Pa, 22632, 5);
  EXPECT_EQ(standard_pressure(Length{0})->Pa, 101325);
  EXPECT_NEAR(day().density_kg_m3, 1.225, 0.0005);
  // Air at 20 °C: 1.81e-5 to 1.82e-5 Pa s (from memory).
  EXPECT_NEAR(day(293.15).viscosity_Pa_s, 1.815e-5, 0.01e-5);
}

// Second route: hydrostatics with the lapse of 6.5 K/km, integrated step by step, g 9.80665, R 287.053.
TEST(Atmosphere, Hydrostatics) {
  double p = 101325;
  const double step = 0.5;
  for (double h = 0; h < 4000; h += step) {
    const double T = 288.15 - 0.0065 * (h + step / 2);
    p *= std::exp(-9.80665 * step / (287.053 * T));
  }
  EXPECT_NEAR(standard_pressure(Length{4000})->Pa, p, 5);
}

TEST(Atmosphere, Refused) {
  EXPECT_FALSE(standard_pressure(Length{11001}));
  EXPECT_FALSE(standard_pressure(Length{-5001}));
  EXPECT_FALSE(standard_pressure(Length{std::nan("")}));
  EXPECT_FALSE(site_air(Length{0}, Temperature{199}));
  EXPECT_FALSE(site_air(Length{0}, Temperature{341}));
}

// Steam tables (from memory): 0 °C 611 Pa, 20 °C 2339 Pa, 40 °C 7384 Pa; Magnus' form within 0.3 %.
TEST(Moisture, Saturation_SteamTables) {
  EXPECT_NEAR(saturation_pressure({273.15})->Pa, 611, 0.003 * 611);
  EXPECT_NEAR(saturation_pressure({293.15})->Pa, 2339, 0.003 * 2339);
  EXPECT_NEAR(saturation_pressure({313.15})->Pa, 7384, 0.003 * 7384);
  EXPECT_FALSE(saturation_pressure({std::nan("")}));
}

// Below freezing frost forms and less vapour stays than over supercooled water; both meet at 0 °C. Slope of the form
// over ice by Clausius and Clapeyron: d ln p/dT = L/(R_v T²), L 2.835 MJ/kg (from memory).
TEST(Moisture, Saturation_OverIce) {
  EXPECT_DOUBLE_EQ(saturation_pressure({273.15})->Pa, saturation_over_water({273.15})->Pa);
  double before = 0;
  for (double K = 233.15; K < 273; K += 1) {
    const double ice = saturation_pressure({K})->Pa, water = saturation_over_water({K})->Pa;
    EXPECT_LT(ice, water);
    EXPECT_GT(ice, before);
    before = ice;
    const double slope = std::log(saturation_pressure({K + 0.01})->Pa / saturation_pressure({K - 0.01})->Pa) / 0.02;
    EXPECT_NEAR(slope * K * K * 461.52, 2.835e6, 0.01 * 2.835e6) << K;
  }
  for (double K = 273.15; K < 320; K += 1) EXPECT_EQ(saturation_pressure({K})->Pa, saturation_over_water({K})->Pa);
  EXPECT_FALSE(saturation_over_water({199}));
}

// In frost more water comes out than supercooled vapour would leave: nothing looks drier than it is.
TEST(Moisture, Frost_MoreComesOut) {
  const SiteAir air = day(263.15);
  const VolumeFlow flow{0.05};
  const AirWater water = water_in_line(air, Ratio{1}, {6e5}, flow, {278}).value();
  const double w = saturation_over_water({263.15})->Pa, i = saturation_pressure({263.15})->Pa;
  const double R_vapour = 287.05 / 0.62198;
  const double compressed = flow.m3_s * (air.ambient.Pa - w) / (air.ambient.Pa + 6e5 - i);
  EXPECT_NEAR(water.comes_out_kg_s, (w * flow.m3_s - i * compressed) / (R_vapour * 263.15), 1e-12);
  EXPECT_EQ(water.icing, Icing::likely);
}

// Second route: volumes. What stays is the saturated vapour in the volume that the compressed air takes.
TEST(Moisture, ComesOut_ByVolumes) {
  const SiteAir air = day(293.15);
  const VolumeFlow flow{0.05};
  const AirWater water = water_in_line(air, Ratio{0.7}, {5e5}, flow, {278}).value();
  const double saturated = saturation_pressure({293.15})->Pa, R_vapour = 287.05 / 0.62198;
  const double drawn = 0.7 * saturated / (R_vapour * 293.15) * flow.m3_s;
  const double compressed = flow.m3_s * (air.ambient.Pa - 0.7 * saturated) / (air.ambient.Pa + 5e5 - saturated);
  EXPECT_NEAR(water.drawn_in_kg_s, drawn, 1e-9 * drawn);
  EXPECT_NEAR(water.comes_out_kg_s, drawn - saturated / (R_vapour * 293.15) * compressed, 1e-9 * drawn);
  EXPECT_TRUE(water.humidity_known);
}

// Without a humidity the worst; dry air gives no water and no ice; not compressed, none comes out.
TEST(Moisture, Limits) {
  const AirWater worst = water_in_line(day(), std::nullopt, {6e5}, {0.05}, {278}).value();
  EXPECT_EQ(worst.humidity, 1);
  EXPECT_FALSE(worst.humidity_known);
  EXPECT_EQ(worst.icing, Icing::possible);
  const AirWater dry = water_in_line(day(), Ratio{0.1}, {6e5}, {0.05}, {278}).value();
  EXPECT_EQ(dry.comes_out_kg_s, 0);
  EXPECT_EQ(dry.icing, Icing::none);
  EXPECT_NEAR(water_in_line(day(), Ratio{1}, {0}, {0.05}, {278})->comes_out_kg_s, 0, 1e-15);
  EXPECT_EQ(water_in_line(day(275), Ratio{0.9}, {6e5}, {0.05}, {278})->icing, Icing::likely);
  EXPECT_FALSE(water_in_line(day(), Ratio{1.1}, {6e5}, {0.05}, {278}));
  EXPECT_FALSE(water_in_line(day(), std::nullopt, {std::nan("")}, {0.05}, {278}));
}

// A fluid ounce (29.57 mL) an hour for 100 ft³/min (from memory): 100 ft³/min are 0.0471947 m³/s.
TEST(Oil, Rate_FluidOunceAnHour) {
  const OilPlan plan = oil_plan({}, {0.0471947443}, 3600.0, 7200.0);
  EXPECT_NEAR(plan.rate.m3_s * 3600, 29.57e-6, 0.005e-6);
  EXPECT_NEAR(plan.for_half->m3, 29.57e-6, 0.005e-6);
  EXPECT_NEAR(plan.for_nine_in_ten->m3, 2 * 29.57e-6, 0.01e-6);
  EXPECT_NEAR(plan.fill_lasts->s, 0.00012 / 29.57353e-6 * 3600, 1);
  EXPECT_NEAR(plan.look_every->s, plan.fill_lasts->s / 2, 1e-9);
  // Beside it the rule of a drop a minute for 10 to 15 ft³/min, 20 drops a mL (from memory): half of it.
  const double drops = 100 / 12.5 / 20 * 60;
  EXPECT_NEAR(plan.rate.m3_s * 3600 * 1e6, drops, 0.6 * drops);
}

TEST(Oil, OwnRateWins_AndAShiftIsTheLongest) {
  Oil oil;
  oil.rate = VolumeFlow{1e-10};
  const OilPlan plan = oil_plan(oil, {0.05}, std::nullopt, std::nullopt);
  EXPECT_TRUE(plan.rate_entered);
  EXPECT_DOUBLE_EQ(plan.rate.m3_s, 1e-10);
  EXPECT_DOUBLE_EQ(plan.look_every->s, 8 * 3600);
  EXPECT_FALSE(plan.for_half);
  oil.rate = VolumeFlow{0};
  EXPECT_FALSE(oil_plan(oil, {0.05}, 1.0, 2.0).look_every);
  oil.rate = VolumeFlow{1e308};  // accepted by the file; no number comes of it
  EXPECT_FALSE(oil_plan(oil, {0.05}, 1e4, 1e4).for_half);
  oil.first_fill.set(Volume{1e308});
  oil.rate = VolumeFlow{1e-300};
  EXPECT_FALSE(oil_plan(oil, {0.05}, 1e4, 1e4).fill_lasts);
  EXPECT_DOUBLE_EQ(oil_plan(oil, {0.05}, 1e4, 1e4).look_every->s, 8 * 3600);
  oil.first_fill.set(Volume{0});
  oil.rate = VolumeFlow{1};
  EXPECT_FALSE(oil_plan(oil, {0.05}, 1.0, 2.0).fill_lasts);
}

}  // namespace
}  // namespace burrow::test
